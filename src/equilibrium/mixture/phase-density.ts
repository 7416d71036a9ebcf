import type { Mixture, MixtureEvaluation } from "../../equation/index.js";
import type { Coexistence } from "../coexistence.js";
import { guessCoexistence } from "../saturation-curve.js";
import type { MixtureModel, PhaseEquation } from "./mixture-model.js";

const mostSteps = 100;
/** A step this small, relative, leaves an error at rounding level: the next one would be its square. */
const last = 1e-9;
/** Nearer to each other than this, two bounds without a root between them enclose an extremum of the isotherm. */
const closed = 1e-11;
/** A liquid's density is approached in steps no larger than this, so that none leaps across the dome. */
const longestDown = 0.08;

/**
 * The highest density at which the isotherm of a fixed composition rises through a pressure, mol/m3: the liquid root, or
 * the only one. The composition has been set.
 *
 * @param P - p/(RT), mol/m3, with the R of the mixture.
 * @param start - A close value; it may lie on either side.
 * @returns NaN where no liquid has so low a pressure. Otherwise `out` holds the evaluation there, as good as the root.
 */
export function liquidRoot(
  mixture: Mixture,
  T: number,
  P: number,
  start: number,
  out: MixtureEvaluation,
): number {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let rho = start;
  for (let step = 0; step < mostSteps; step++) {
    mixture.evaluateFixed(T, rho, out);
    const slope = slopeOf(out);
    const miss = P - out.pressure;
    let next: number;
    if (!(slope > 0)) {
      // Inside the dome, or beyond where the equation folds: the root lies higher, unless that was seen not to be so.
      low = rho;
      next = Number.isFinite(high) ? (low + high) / 2 : 1.03 * rho;
    } else {
      const change = miss / slope;
      if (Math.abs(change) < last * rho) return rho + change;
      if (miss > 0) low = rho;
      else high = rho;
      next = Math.max(rho + change, rho * (1 - longestDown));
      if (next > 1.5 * rho) next = 1.5 * rho;
      if (!(next > low && next < high)) next = Number.isFinite(high) ? (low + high) / 2 : 1.03 * rho;
    }
    if (high - low < closed * high || next > 6 * mixture.rhor) return Number.NaN;
    rho = next;
  }
  return Number.NaN;
}

/**
 * The lowest density at which the isotherm of a fixed composition rises through a pressure, mol/m3: the vapour root, or
 * the only one. As {@link liquidRoot}, from the other side.
 */
export function vapourRoot(
  mixture: Mixture,
  T: number,
  P: number,
  start: number,
  out: MixtureEvaluation,
): number {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let rho = start;
  for (let step = 0; step < mostSteps; step++) {
    mixture.evaluateFixed(T, rho, out);
    const slope = slopeOf(out);
    const miss = P - out.pressure;
    let next: number;
    if (!(slope > 0)) {
      high = rho;
      next = (low + high) / 2;
    } else {
      const change = miss / slope;
      if (Math.abs(change) < last * rho) return rho + change;
      if (miss > 0) low = rho;
      else high = rho;
      next = Math.min(rho + change, 1.3 * rho);
      if (!(next > low && next < high)) next = Number.isFinite(high) ? (low + high) / 2 : 1.3 * rho;
    }
    if (high - low < closed * high) return Number.NaN;
    rho = next;
  }
  return Number.NaN;
}

/** ∂(p/RT)/∂ρ at constant composition. */
export function slopeOf({ rho, pressure, phiLL }: MixtureEvaluation): number {
  return pressure / rho + phiLL;
}

/**
 * Density of a liquid mixture near saturation by the principle of corresponding states, mol/m3: the mean of what its
 * components have at the same reduced temperature. Above the critical region, where none is liquid, somewhat below ρr.
 */
export function guessLiquidDensity(
  model: MixtureModel,
  { mixture }: PhaseEquation,
  x: Float64Array,
  T: number,
): number {
  const edge: Coexistence = { liquid: 0, vapour: 0, pressure: 0 };
  const reduced = T / mixture.Tr;
  let delta = 0;
  for (let i = 0; i < model.count; i++) {
    const { equation, critical, curve } = model.pure[i]!;
    const own = Math.max(reduced * equation.Tr, curve.minimumTemperature);
    if (own < 0.998 * critical.temperature) {
      guessCoexistence(curve, own, edge);
      delta += x[i]! * edge.liquid;
    } else {
      delta += x[i]! * 1.2;
    }
  }
  return delta * mixture.rhor;
}

/** Below this reduced temperature the liquid root is found from outside whatever lies inside the dome. */
const loopFree = 0.95;
/** A search from outside ends at the same root within this, or at another one far away. */
export const sameRoot = 1e-4;

/**
 * Whether the denser of the two phases just evaluated is the densest of its composition at its pressure: some equations have
 * a second loop inside the dome, and a solver that leapt there satisfies every condition of equilibrium.
 */
export function isOuterLiquid(model: MixtureModel, pressure: number): boolean {
  const liquid = model.liquid.at.rho > model.vapour.at.rho ? model.liquid : model.vapour;
  const { T, rho, x } = liquid.at;
  liquid.mixture.setComposition(x);
  // Nearer to the critical point its root lies too near the others for a search: there it has to keep together.
  if (T > loopFree * liquid.mixture.Tr) return isLocallyStable(liquid.at, liquid.mixture.ratio);
  const start = guessLiquidDensity(model, liquid, x, T);
  const found = liquidRoot(liquid.mixture, T, pressure / (model.R * T), Math.max(start, rho), liquid.at);
  return Math.abs(found / rho - 1) < sameRoot;
}

/**
 * Whether a phase just evaluated keeps together: its Helmholtz energy is convex in the concentrations. A vapour in
 * equilibrium always does; inside the dome, within 5 % of the critical temperature of unlike components, there are
 * phases that satisfy every condition of equilibrium and do not.
 */
export function isLocallyStable({ x, hessian }: MixtureEvaluation, ratio: Float64Array): boolean {
  const count = x.length;
  // Cholesky's factors of √(xᵢxⱼ) ρ ∂μᵢ/∂ρⱼ, which exist where all eigenvalues are positive.
  const factor = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = Math.sqrt(x[i]! * x[j]!) * hessian[i * count + j]! + (i === j ? ratio[i]! : 0);
      for (let k = 0; k < j; k++) sum -= factor[i * count + k]! * factor[j * count + k]!;
      if (i === j && !(sum > 0)) return false;
      factor[i * count + j] = i === j ? Math.sqrt(sum) : sum / factor[j * count + j]!;
    }
  }
  return true;
}

/** Start of a search for a vapour: never above its density where an ideal gas would be. */
export function guessVapourDensity({ mixture }: PhaseEquation, P: number): number {
  return Math.min(P, 0.4 * mixture.rhor);
}

/**
 * Gibbs energy per amount over RT, up to what depends on temperature and composition only: the lower of two roots at one
 * pressure is the stable one.
 */
export function gibbsOf({ rho, phi, phiL, pressure }: MixtureEvaluation): number {
  const Z = pressure / rho;
  return phi + Z + (Z - phiL) * Math.log(rho);
}
