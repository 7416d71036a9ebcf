import type { Evaluation } from "../equation/index.js";
import type { Model } from "./model.js";
import type { SaturationPoint } from "./saturation.js";

/** A solved state, molar basis: one phase by (T, ρ), or liquid and vapour with the molar fraction of vapour. */
export type Equilibrium =
  | { readonly phases: 1; readonly temperature: number; readonly density: number }
  | { readonly phases: 2; readonly saturation: SaturationPoint; readonly quality: number };

/** Where a search may look: temperatures in K, and no pressure above the highest, Pa. */
export interface SearchRange {
  readonly minimum: number;
  readonly maximum: number;
  readonly highestPressure: number;
  /** What the caller asked for, as given: errors repeat it. */
  readonly inputs: Readonly<Record<string, number>>;
}

/** One phase, at a temperature and a density. */
export function onePhase(temperature: number, density: number): Equilibrium {
  return { phases: 1, temperature, density };
}

/** Two phases, with a molar fraction of vapour. */
export function twoPhase(saturation: SaturationPoint, quality: number): Equilibrium {
  return { phases: 2, saturation, quality };
}

/** Evaluates a model in its own working memory. */
export function evaluate(model: Model, temperature: number, density: number): Evaluation {
  model.equation.evaluate(temperature, density, model.at);
  return model.at;
}

/**
 * A search that ended without its target, at an edge or at a jump, misses it by more than this in units of RT or R;
 * one that reached it misses by a millionth of that.
 */
export const sameness = 1e-6;
