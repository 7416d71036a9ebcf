import type { Fluid } from "./fluid.js";
import type { Pair } from "./pair.js";

/** One component of a designated blend. */
export interface BlendComponent {
  /** The fluid, with the equation in use. */
  readonly fluid: Fluid;
  /** Mass fraction as designated. */
  readonly massFraction: number;
  /** How far a mass fraction may lie above and below, as the designation allows; left out where unknown. */
  readonly tolerance?: { readonly above: number; readonly below: number };
}

/**
 * Everything needed to compute with one blend: a plain literal.
 * The literals of `dewline/blends/*` are made from `data/blends/` by `scripts/build-fluids`.
 */
export interface Blend {
  /** Designation of ISO 817, such as `R-454B`. */
  readonly designation: string;
  /** Other names it is asked for by. */
  readonly synonyms: readonly string[];
  /** Components, in the order of the designation. */
  readonly components: readonly BlendComponent[];
  /** The pairs among them that have parameters; a pair that is not here is estimated. */
  readonly pairs: readonly Pair[];
  /** Full citations, the composition's first. */
  readonly sources: readonly string[];
  /** What a careful user should know. */
  readonly notes: readonly string[];
}
