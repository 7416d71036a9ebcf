import type { MixtureModel } from "./mixture-model.js";
import { guessLiquidDensity, guessVapourDensity, liquidRoot, vapourRoot } from "./phase-density.js";
import { densityOf, type Hold, type PhaseSplit, phaseSplit, solveSplit } from "./phase-split.js";
import type { Trial } from "./stability.js";

const substitutionRounds = 60;
/** Newton's method is tried after so many rounds of substitution, and again after so many more. */
const newtonAfter = 3;

/**
 * The vapour fraction β by amount at which Σ (yᵢ − xᵢ) = 0 for given ratios Kᵢ = yᵢ/xᵢ: the one root between the poles,
 * kept to 0 … 1.
 *
 * @source Rachford, H. H., Rice, J. D., J. Pet. Technol. 4 (1952) 19.
 */
function vapourFraction(z: Float64Array, K: Float64Array): number {
  const balance = (beta: number): number => {
    let sum = 0;
    for (let i = 0; i < z.length; i++) sum += (z[i]! * (K[i]! - 1)) / (1 + beta * (K[i]! - 1));
    return sum;
  };
  if (balance(0) <= 0) return 0;
  if (balance(1) >= 0) return 1;
  let low = 0;
  let high = 1;
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (balance(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Sets both phases' volumes from their concentrations by the lever rule. */
export function setVolumes(split: PhaseSplit): void {
  const liquidDensity = densityOf(split.liquid);
  const vapourDensity = densityOf(split.vapour);
  const K = split.liquid.map((c, i) => split.vapour[i]! / vapourDensity / (c / liquidDensity));
  const beta = Math.min(Math.max(vapourFraction(split.whole, K), 1e-6), 1 - 1e-6);
  split.liquidVolume = (1 - beta) / liquidDensity;
  split.vapourVolume = beta / vapourDensity;
}

/** Splits a composition that a trial has shown to be unstable at (T, p): substitution, then Newton's method. */
export function splitFromTrial(
  model: MixtureModel,
  z: Float64Array,
  T: number,
  pressure: number,
  { root, amounts }: Trial,
): PhaseSplit | undefined {
  const { count, liquid, vapour, scratch } = model;
  const { ratio } = liquid.mixture;
  const P = pressure / (model.R * T);
  const K = Float64Array.from(z, (zi, i) => (root === "vapour" ? amounts[i]! / zi : zi / amounts[i]!));
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  const holds: readonly [Hold, Hold] = [
    { what: "temperature", value: T },
    { what: "pressure", value: pressure },
  ];
  for (let round = 1; round <= substitutionRounds; round++) {
    // At the first round a trace of the new phase: Σ zᵢKᵢ exceeds 1 there by what the trial gained.
    const beta = Math.min(Math.max(vapourFraction(z, K), 1e-8), 1 - 1e-8);
    let sumX = 0;
    let sumY = 0;
    for (let i = 0; i < count; i++) {
      x[i] = z[i]! / (1 + beta * (K[i]! - 1));
      y[i] = K[i]! * x[i]!;
      sumX += x[i]!;
      sumY += y[i]!;
    }
    for (let i = 0; i < count; i++) {
      x[i]! /= sumX;
      y[i]! /= sumY;
    }
    liquid.mixture.setComposition(x);
    const dense = liquidRoot(liquid.mixture, T, P, guessLiquidDensity(model, liquid, x, T), liquid.at);
    vapour.mixture.setComposition(y);
    const thin = vapourRoot(vapour.mixture, T, P, guessVapourDensity(vapour, P), vapour.at);
    if (!(dense > 0 && thin > 0)) return undefined;
    if (round % newtonAfter === 0) {
      const split = phaseSplit(z);
      split.temperature = T;
      split.pressure = pressure;
      for (let i = 0; i < count; i++) {
        split.liquid[i] = x[i]! * dense;
        split.vapour[i] = y[i]! * thin;
      }
      split.liquidVolume = (1 - beta) / dense;
      split.vapourVolume = beta / thin;
      if (solveSplit(model, split, holds)) return split;
    }
    for (let i = 0; i < count; i++) scratch[i] = x[i]! * dense;
    liquid.mixture.evaluate(T, scratch, liquid.at);
    for (let i = 0; i < count; i++) scratch[i] = y[i]! * thin;
    vapour.mixture.evaluate(T, scratch, vapour.at);
    for (let i = 0; i < count; i++) {
      K[i] = (dense / thin) * Math.exp((liquid.at.mu[i]! - vapour.at.mu[i]!) / ratio[i]!);
    }
  }
  return undefined;
}
