import {
  compressibility,
  type Evaluation,
  enthalpy,
  entropy,
  idealHeatCapacity,
  internalEnergy,
  isobaricHeatCapacity,
  isochoricHeatCapacity,
  jouleThomson,
  logFugacityCoefficient,
  noDerivatives,
  pressureSlope,
  soundSpeedSquared,
  thermalPressure,
} from "../equation/index.js";
import type { Model } from "../equilibrium/index.js";
import { NoSuchStateError } from "../units/index.js";
import type { Offsets } from "./reference-state.js";
import type { Refrigerant, SinglePhaseState } from "./types.js";

/** Everything a state needs to know about the refrigerant it is a state of. */
export interface Owner {
  readonly refrigerant: Refrigerant;
  readonly model: Model;
  /** Added to enthalpy and entropy so that they count from the reference state; molar. */
  readonly offsets: Offsets;
  readonly composition: Readonly<Record<string, number>>;
}

/** So small a reduced ∂p/∂ρ means the critical point: heat capacity and compressibility run to infinity there. */
const flattest = 1e-10;

/**
 * So thin a gas is ideal to the last digit, yet its φ_δ still shows the second virial coefficient. At 1e-12 a few
 * equations do not yet: one for R-152a has terms of δ^1.5, whose share of φ_δ falls as √δ only.
 */
const thinnest = 1e-40;

/** A state in one phase, all its properties from one evaluation of the equation. */
class SinglePhase implements SinglePhaseState {
  readonly #owner: Owner;
  readonly phase: "liquid" | "vapour" | "supercritical";
  readonly temperature: number;
  readonly pressure: number;
  readonly density: number;
  readonly quality: 0 | 1 | undefined;
  readonly enthalpy: number;
  readonly entropy: number;
  readonly internalEnergy: number;
  readonly gibbsEnergy: number;
  readonly helmholtzEnergy: number;
  readonly cp: number;
  readonly cv: number;
  readonly cp0: number;
  readonly speedOfSound: number;
  readonly compressibilityFactor: number;
  readonly isentropicExponent: number;
  readonly jouleThomson: number;
  readonly isothermalCompressibility: number;
  readonly thermalExpansion: number;
  readonly fugacityCoefficient: number;
  readonly composition: Readonly<Record<string, number>>;
  readonly extrapolated: boolean;

  constructor(
    owner: Owner,
    offsets: Offsets,
    at: Evaluation,
    pressure: number,
    phase: "liquid" | "vapour" | "supercritical",
    quality: 0 | 1 | undefined,
    extrapolated: boolean,
  ) {
    const { equation } = owner.model;
    const M = equation.fluid.molarMass;
    const R = equation.R / M;
    const RT = R * at.T;
    const slope = pressureSlope(at);
    const density = at.rho * M;
    this.#owner = owner;
    this.phase = phase;
    this.temperature = at.T;
    this.pressure = pressure;
    this.density = density;
    this.quality = quality;
    this.enthalpy = RT * enthalpy(at) + offsets.enthalpy / M;
    this.entropy = R * entropy(at) + offsets.entropy / M;
    // h − p/ρ, but from the equation itself: no digits are lost in a liquid.
    this.internalEnergy = RT * internalEnergy(at) + offsets.enthalpy / M;
    this.gibbsEnergy = this.enthalpy - at.T * this.entropy;
    this.helmholtzEnergy = this.internalEnergy - at.T * this.entropy;
    this.cp = R * isobaricHeatCapacity(at);
    this.cv = R * isochoricHeatCapacity(at);
    this.cp0 = R * idealHeatCapacity(at);
    const soundSquared = RT * soundSpeedSquared(at);
    this.speedOfSound = Math.sqrt(soundSquared);
    this.compressibilityFactor = pressure / (density * RT);
    this.isentropicExponent = (soundSquared * density) / pressure;
    this.jouleThomson = jouleThomson(at) / (at.rho * equation.R);
    this.isothermalCompressibility = 1 / (density * RT * slope);
    this.thermalExpansion = thermalPressure(at) / (at.T * slope);
    this.fugacityCoefficient = Math.exp(logFugacityCoefficient(at, this.compressibilityFactor));
    this.composition = owner.composition;
    this.extrapolated = extrapolated;
  }

  get refrigerant(): Refrigerant {
    return this.#owner.refrigerant;
  }

  get secondVirial(): number {
    const { equation } = this.#owner.model;
    const at = noDerivatives();
    equation.evaluateResidual(equation.Tr / this.temperature, thinnest, at);
    return at.phi_d / equation.rhor;
  }

  /** All properties, with the refrigerant by its designation. */
  toJSON(): Record<string, unknown> {
    return {
      refrigerant: this.refrigerant.designation,
      ...(this as object),
      secondVirial: this.secondVirial,
    };
  }
}

/**
 * Makes the state at a temperature and a molar density.
 *
 * @param pressure - Where it was the input it is kept, so that what was asked for is what is returned.
 * @throws {@link NoSuchStateError} where the properties diverge: at the critical point itself.
 */
export function singlePhaseState(
  owner: Owner,
  temperature: number,
  molarDensity: number,
  options: { readonly pressure?: number; readonly quality?: 0 | 1; readonly extrapolated: boolean },
): SinglePhaseState {
  // Taken first: finding the offsets evaluates too, in the same working memory.
  const { model, offsets } = owner;
  const { equation, critical } = model;
  equation.evaluate(temperature, molarDensity, model.at);
  // Far beyond its range an equation can give a heat capacity or a squared sound speed below zero.
  const stable =
    pressureSlope(model.at) > flattest &&
    isochoricHeatCapacity(model.at) > 0 &&
    soundSpeedSquared(model.at) > 0;
  if (!stable) {
    throw new NoSuchStateError(
      { temperature, density: molarDensity * equation.fluid.molarMass },
      "no stable single phase; at the critical point heat capacity and compressibility are infinite",
    );
  }
  const pressure = options.pressure ?? molarDensity * equation.R * temperature * compressibility(model.at);
  const { quality } = options;
  let phase: "liquid" | "vapour" | "supercritical";
  if (quality !== undefined) phase = quality === 0 ? "liquid" : "vapour";
  else if (temperature > critical.temperature)
    phase = pressure > critical.pressure ? "supercritical" : "vapour";
  else phase = molarDensity > critical.density ? "liquid" : "vapour";
  return new SinglePhase(owner, offsets, model.at, pressure, phase, quality, options.extrapolated);
}
