import { classValues } from "./class-values.js";
import type { Fluid } from "./fluid.js";
import type { Pair, PairReducing } from "./pair.js";

/** What is taken for pairs of which nothing is known, by the classes of the two fluids. */
export interface ClassValues {
  /** Classes of substances, with the designations of the fluids that belong to them. */
  readonly classes: readonly { readonly name: string; readonly fluids: readonly string[] }[];
  /** Reducing functions for two classes, in any order, and how far they are off. */
  readonly estimates: readonly {
    readonly between: readonly [string, string];
    readonly reducing: PairReducing;
    readonly deviation: { readonly relative: number; readonly basis: string };
  }[];
}

/**
 * A pair estimated from the kind of the two substances; undefined where one has no class, as a registered fluid has
 * none, and where nothing is known of their classes together.
 *
 * @param first - One fluid.
 * @param second - The other; all β are 1, so their order does not matter.
 */
export function estimatePair(first: Fluid, second: Fluid): Pair | undefined {
  if (first.designation === second.designation) return undefined;
  const { estimates } = classValues;
  const one = classOf(first);
  const other = classOf(second);
  const estimate = estimates.find(
    ({ between: [left, right] }) => (left === one && right === other) || (left === other && right === one),
  );
  if (estimate === undefined) return undefined;
  return {
    between: [first.designation, second.designation],
    grade: "estimated",
    reducing: estimate.reducing,
    deviation: estimate.deviation,
    sources: [],
    notes: ["Estimated from the kind of the two substances: nothing about this pair was at hand."],
  };
}

function classOf({ designation }: Fluid): string | undefined {
  return classValues.classes.find(({ fluids }) => fluids.includes(designation))?.name;
}
