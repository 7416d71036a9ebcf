import { boundaryAtTemperature } from "./boundary.js";
import type { IncipientPoint } from "./incipient.js";
import type { MixtureModel } from "./mixture-model.js";
import { type Hold, type PhaseSplit, phaseSplit, solveSplit } from "./phase-split.js";
import { setVolumes } from "./split-guess.js";
import { stablePressure } from "./stability.js";

/** What is in a closed vessel: per mole of the whole, in one phase or in two. */
export type VesselContents =
  | { readonly phases: 1; readonly z: Float64Array; readonly density: number; readonly pressure: number }
  | { readonly phases: 2; readonly split: PhaseSplit };

/** Means of both edges that are tried as starts. */
const fractions = [0, 0.1, 0.5, 0.9];

/**
 * What a mixture of any composition does in a volume at a temperature, without its boundary being followed: made for
 * compositions that change step by step.
 *
 * @param z - Mole fractions.
 * @param volume - Of one mole, m3/mol.
 * @param near - Two phases of a composition and volume close by, where the caller has them.
 * @returns Undefined where nothing was found.
 */
export function vesselContents(
  model: MixtureModel,
  z: Float64Array,
  T: number,
  volume: number,
  near: PhaseSplit | undefined,
): VesselContents | undefined {
  const holds: readonly [Hold, Hold] = [
    { what: "temperature", value: T },
    { what: "volume", value: volume },
  ];
  if (near !== undefined) {
    const split = phaseSplit(z);
    split.temperature = T;
    split.liquid.set(near.liquid);
    split.vapour.set(near.vapour);
    split.liquidVolume = near.liquidVolume;
    split.vapourVolume = near.vapourVolume;
    if (solveSplit(model, split, holds)) return { phases: 2, split };
  }
  const P = stablePressure(model, z, T, 1 / volume);
  if (P !== undefined) return { phases: 1, z, density: 1 / volume, pressure: P * model.R * T };
  const bubble = boundaryAtTemperature(model, "vapour", z, T);
  const dew = boundaryAtTemperature(model, "liquid", z, T);
  if (bubble === undefined || dew === undefined) return undefined;
  const lever = (volume - 1 / bubble.density) / (1 / dew.density - 1 / bubble.density);
  for (const fraction of [Math.min(Math.max(lever, 0), 1), ...fractions]) {
    const split = meanOf(z, bubble, dew, T, fraction);
    if (solveSplit(model, split, holds)) return { phases: 2, split };
  }
  return undefined;
}

function meanOf(
  z: Float64Array,
  bubble: IncipientPoint,
  dew: IncipientPoint,
  T: number,
  fraction: number,
): PhaseSplit {
  const split = phaseSplit(z);
  const between = (left: number, right: number): number => left * (right / left) ** fraction;
  split.temperature = T;
  for (let i = 0; i < z.length; i++) {
    split.liquid[i] = between(bubble.density * z[i]!, dew.concentrations[i]!);
    split.vapour[i] = between(bubble.concentrations[i]!, dew.density * z[i]!);
  }
  setVolumes(split);
  return split;
}
