import type { MixtureEvaluation } from "../../equation/index.js";
import { solveLinear } from "./linear.js";
import type { MixtureModel } from "./mixture-model.js";

/** A critical point of a mixture: K, Pa, mol/m3. */
export interface MixtureCriticalPoint {
  readonly temperature: number;
  readonly pressure: number;
  readonly density: number;
}

/** The two conditions at a critical point; both vanish there. */
export interface CriticalConditions {
  /** Smallest curvature of the Helmholtz energy in scaled amounts, along its own direction. */
  readonly curvature: number;
  /** How that curvature changes along the direction. */
  readonly skewness: number;
}

const mostSteps = 30;
/** Relative step of difference quotients along the direction: their error is its square. */
const along = 1e-4;
/** And of those in temperature and density. */
const across = 1e-6;
const settled = 1e-11;

/**
 * The critical point of a composition, by Newton's method from a close start: the spinodal where its own direction is
 * flat. Undefined where it does not get there.
 *
 * @source Heidemann, R. A., Khalil, A. M., AIChE J. 26 (1980) 769, for the two conditions.
 */
export function solveMixtureCritical(
  model: MixtureModel,
  z: Float64Array,
  start: { readonly temperature: number; readonly density: number },
): MixtureCriticalPoint | undefined {
  let logT = Math.log(start.temperature);
  let logRho = Math.log(start.density);
  let previous = Number.POSITIVE_INFINITY;
  for (let step = 0; step < mostSteps; step++) {
    const at = criticalConditions(model, z, Math.exp(logT), Math.exp(logRho));
    const hot = criticalConditions(model, z, Math.exp(logT + across), Math.exp(logRho));
    const dense = criticalConditions(model, z, Math.exp(logT), Math.exp(logRho + across));
    const matrix = Float64Array.of(
      (hot.curvature - at.curvature) / across,
      (dense.curvature - at.curvature) / across,
      (hot.skewness - at.skewness) / across,
      (dense.skewness - at.skewness) / across,
    );
    const change = Float64Array.of(at.curvature, at.skewness);
    if (!solveLinear(matrix, change, 2)) return undefined;
    const size = Math.max(Math.abs(change[0]!), Math.abs(change[1]!));
    const factor = size > 0.05 ? 0.05 / size : 1;
    logT -= factor * change[0]!;
    logRho -= factor * change[1]!;
    if (size < settled || (size < 1e-7 && size >= previous / 2)) {
      const temperature = Math.exp(logT);
      const density = Math.exp(logRho);
      const { liquid } = model;
      liquid.mixture.setComposition(z);
      liquid.mixture.evaluateFixed(temperature, density, liquid.at);
      return { temperature, density, pressure: liquid.at.pressure * model.R * temperature };
    }
    previous = size;
  }
  return undefined;
}

/** Evaluates both conditions. */
export function criticalConditions(
  model: MixtureModel,
  z: Float64Array,
  T: number,
  rho: number,
): CriticalConditions {
  const { count, liquid, vapour } = model;
  const concentrations = z.map((zi) => zi * rho);
  liquid.mixture.evaluate(T, concentrations, liquid.at);
  const matrix = curvatures(liquid.at, z, liquid.mixture.ratio);
  const direction = flattestDirection(matrix, count);
  const curvature = quadraticForm(matrix, direction, count);
  let skewness = 0;
  for (const side of [1, -1] as const) {
    for (let i = 0; i < count; i++) {
      concentrations[i] = rho * (z[i]! + side * along * direction[i]! * Math.sqrt(z[i]!));
    }
    vapour.mixture.evaluate(T, concentrations, vapour.at);
    // Of the unscaled matrix: the scale belongs to the point, not to the step.
    skewness +=
      side *
      quadraticForm(
        unscaledCurvatures(vapour.at, concentrations, z, rho, vapour.mixture.ratio),
        direction,
        count,
      );
  }
  return { curvature, skewness: skewness / (2 * along) };
}

/** √(zᵢzⱼ) ρ ∂μᵢ/∂ρⱼ with ideal part: the identity for an ideal gas. */
function curvatures(at: MixtureEvaluation, z: Float64Array, ratio: Float64Array): Float64Array {
  const count = z.length;
  const matrix = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      matrix[i * count + j] =
        Math.sqrt(z[i]! * z[j]!) * at.hessian[i * count + j]! + (i === j ? ratio[i]! : 0);
    }
  }
  return matrix;
}

/** The same matrix at neighbouring concentrations, with the scale √(zᵢzⱼ) ρ of the point itself. */
function unscaledCurvatures(
  at: MixtureEvaluation,
  concentrations: Float64Array,
  z: Float64Array,
  rho: number,
  ratio: Float64Array,
): Float64Array {
  const count = z.length;
  const matrix = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const ideal = i === j ? ratio[i]! / concentrations[i]! : 0;
      matrix[i * count + j] = Math.sqrt(z[i]! * z[j]!) * rho * (at.hessian[i * count + j]! / at.rho + ideal);
    }
  }
  return matrix;
}

/** The eigenvector of smallest eigenvalue, by inverse iteration; of length one, its largest entry positive. */
function flattestDirection(matrix: Float64Array, count: number): Float64Array {
  let direction = new Float64Array(count).fill(1 / Math.sqrt(count));
  for (let round = 0; round < 12; round++) {
    const work = Float64Array.from(matrix);
    // A tiny shift: on the spinodal itself the matrix has no inverse.
    for (let i = 0; i < count; i++) work[i * count + i]! += 1e-13;
    const next = Float64Array.from(direction);
    if (!solveLinear(work, next, count)) break;
    let length = 0;
    let largest = 0;
    for (let i = 0; i < count; i++) {
      length += next[i]! * next[i]!;
      if (Math.abs(next[i]!) > Math.abs(next[largest]!)) largest = i;
    }
    const scale = Math.sign(next[largest]!) / Math.sqrt(length);
    let change = 0;
    for (let i = 0; i < count; i++) {
      next[i]! *= scale;
      change = Math.max(change, Math.abs(next[i]! - direction[i]!));
    }
    direction = next;
    if (change < 1e-13) break;
  }
  return direction;
}

function quadraticForm(matrix: Float64Array, direction: Float64Array, count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) sum += direction[i]! * matrix[i * count + j]! * direction[j]!;
  }
  return sum;
}
