import type { Evaluation } from "./equation.js";

/*
 * Properties as functions of one evaluation, divided by R or RT so that they have no unit. The relations are the
 * standard ones; see for instance Span, R., Multiparameter Equations of State, Springer 2000, table 3.10.
 */

/** Compressibility factor Z = p/(ρRT). */
export function compressibility({ delta, residual }: Evaluation): number {
  return 1 + delta * residual.phi_d;
}

/** (∂p/∂ρ)_T/(RT). */
export function pressureSlope({ delta, residual }: Evaluation): number {
  return 1 + delta * (2 * residual.phi_d + delta * residual.phi_dd);
}

/** (∂p/∂T)_ρ/(ρR). */
export function thermalPressure({ delta, tau, residual }: Evaluation): number {
  return 1 + delta * (residual.phi_d - tau * residual.phi_dt);
}

/** u/(RT), without integration constant. */
export function internalEnergy({ tau, ideal, residual }: Evaluation): number {
  return tau * (ideal.phi_t + residual.phi_t);
}

/** h/(RT), without integration constant. */
export function enthalpy(at: Evaluation): number {
  return internalEnergy(at) + compressibility(at);
}

/** s/R, without integration constant. */
export function entropy(at: Evaluation): number {
  return internalEnergy(at) - at.ideal.phi - Math.log(at.delta) - at.residual.phi;
}

/** cv/R. */
export function isochoricHeatCapacity({ tau, ideal, residual }: Evaluation): number {
  return -tau * tau * (ideal.phi_tt + residual.phi_tt);
}

/** cp⁰/R of the ideal gas. */
export function idealHeatCapacity({ tau, ideal }: Evaluation): number {
  return 1 - tau * tau * ideal.phi_tt;
}

/** cp/R. */
export function isobaricHeatCapacity(at: Evaluation): number {
  const thermal = thermalPressure(at);
  return isochoricHeatCapacity(at) + (thermal * thermal) / pressureSlope(at);
}

/** M w²/(RT). */
export function soundSpeedSquared(at: Evaluation): number {
  const thermal = thermalPressure(at);
  return pressureSlope(at) + (thermal * thermal) / isochoricHeatCapacity(at);
}

/** Joule–Thomson coefficient times ρR. */
export function jouleThomson(at: Evaluation): number {
  const { delta, tau, residual } = at;
  const thermal = thermalPressure(at);
  const numerator = -delta * (residual.phi_d + delta * residual.phi_dd + tau * residual.phi_dt);
  return numerator / (thermal * thermal + isochoricHeatCapacity(at) * pressureSlope(at));
}

/**
 * ln of the fugacity coefficient.
 *
 * @param Z - p/(ρRT), from the pressure where it is known: in a cold liquid {@link compressibility} is a difference
 *   of large numbers with no digits left, or even below zero.
 */
export function logFugacityCoefficient({ residual }: Evaluation, Z: number): number {
  return residual.phi + Z - 1 - Math.log(Z);
}

/**
 * T (ds − v dp)/dT along the edge of the two-phase region, over R, for the phase evaluated: its share in the
 * isochoric heat capacity of a two-phase mixture.
 *
 * @param saturationSlope - dp/dT of the saturation curve over ρR, with ρ the density of this phase.
 */
export function edgeHeatCapacity(at: Evaluation, saturationSlope: number): number {
  const thermal = thermalPressure(at);
  return isobaricHeatCapacity(at) + (saturationSlope * (saturationSlope - 2 * thermal)) / pressureSlope(at);
}
