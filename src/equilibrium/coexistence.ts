import { type Derivatives, type Equation, noDerivatives } from "../equation/index.js";

/**
 * Liquid and vapour densities, reduced, that have equal pressure and Gibbs energy at one temperature.
 * Mutable: the solver improves it in place, so that a solve allocates nothing.
 */
export interface Coexistence {
  /** Reduced density of the liquid, δ′. */
  liquid: number;
  /** Reduced density of the vapour, δ″. */
  vapour: number;
  /** p/(ρr R T), taken from the vapour, where no large numbers cancel. */
  pressure: number;
}

/** Working memory of the solver, for one equation or many. */
export interface CoexistenceScratch {
  readonly liquid: Derivatives;
  readonly vapour: Derivatives;
}

/** Fresh working memory. */
export function coexistenceScratch(): CoexistenceScratch {
  return { liquid: noDerivatives(), vapour: noDerivatives() };
}

/** More steps than any known equation takes from a fair start. */
const mostSteps = 40;
/**
 * Steps this small, relative, shrink by far more than half each time until they show the noise of the equation. 1 mK
 * below a critical point that noise is 3e-7 where large terms cancel, as in the equation of R-22.
 */
const fine = 1e-5;
/** A step this small is the last: the error that is left is its square, times a thousand at most near a critical point. */
const last = 1e-10;

/**
 * Improves `pair` to equilibrium at τ by Newton's method in (δ′, δ″) and says whether it got there.
 *
 * The two conditions are J(δ′) = J(δ″) and K(δ′) = K(δ″), with J = δ(1 + δφ_δ) the pressure and
 * K = δφ_δ + φ + ln δ the chemical potential; K_δ = J_δ/δ, so the 2 × 2 system has a closed solution.
 * Stops when the error left is at rounding level or steps no longer shrink.
 *
 * @source Akasaka, R., J. Therm. Sci. Technol. 3 (2008) 442, for the form of the two conditions.
 */
export function solveCoexistence(
  equation: Equation,
  tau: number,
  pair: Coexistence,
  scratch: CoexistenceScratch,
): boolean {
  const { liquid: L, vapour: V } = scratch;
  let { liquid, vapour } = pair;
  let previous = Number.POSITIVE_INFINITY;
  for (let step = 0; step < mostSteps; step++) {
    equation.evaluateResidual(tau, liquid, L);
    equation.evaluateResidual(tau, vapour, V);
    const JL = liquid * (1 + liquid * L.phi_d);
    const JV = vapour * (1 + vapour * V.phi_d);
    const slopeL = 1 + liquid * (2 * L.phi_d + liquid * L.phi_dd);
    const slopeV = 1 + vapour * (2 * V.phi_d + vapour * V.phi_dd);
    // Between the spinodals a Newton step leads away from equilibrium.
    if (!(slopeL > 0 && slopeV > 0)) return false;
    const dJ = JV - JL;
    const dK = vapour * V.phi_d + V.phi + Math.log(vapour) - liquid * L.phi_d - L.phi - Math.log(liquid);
    const span = liquid - vapour;
    let stepL = (liquid / (slopeL * span)) * (vapour * dK - dJ) * -1;
    let stepV = (vapour / (slopeV * span)) * (liquid * dK - dJ) * -1;
    const relative = Math.max(Math.abs(stepL) / liquid, Math.abs(stepV) / vapour);
    if (!Number.isFinite(relative)) return false;
    if (relative > 0.3) {
      stepL *= 0.3 / relative;
      stepV *= 0.3 / relative;
    }
    liquid += stepL;
    vapour += stepV;
    if (!(liquid > vapour && vapour > 0)) return false;
    if (relative < last || (relative < fine && relative >= previous / 2)) {
      equation.evaluateResidual(tau, vapour, V);
      pair.liquid = liquid;
      pair.vapour = vapour;
      pair.pressure = vapour * (1 + vapour * V.phi_d);
      return true;
    }
    previous = relative;
  }
  return false;
}
