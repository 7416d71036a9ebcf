import fc from "fast-check";
import {
  type BlendPart,
  blend,
  blends,
  pairs,
  type Refrigerant,
  refrigerant,
} from "../../src/state/index.js";
import { share } from "./states.js";

const made = new Map<string, Refrigerant>();

/** A designated blend; each is made once, because its bubble and dew lines are followed once. */
function designatedBlend(designation: string): Refrigerant {
  const known = made.get(designation) ?? refrigerant(designation);
  made.set(designation, known);
  return known;
}

/** Every designated blend, one picked at random. */
export function anyDesignatedBlend(): fc.Arbitrary<Refrigerant> {
  return fc.constantFrom(...blends().map(({ designation }) => designation)).map(designatedBlend);
}

/** Groups of fluids all of whose pairs have parameters, so that any composition of a group can be made. */
const groups: readonly (readonly string[])[] = [
  ["R-32", "R-125", "R-134a", "R-1234yf", "R-1234ze(E)"],
  ["R-744", "R-32", "R-125", "R-134a", "R-1234yf", "R-1234ze(E)"],
  ["R-170", "R-290", "R-600", "R-600a"],
  ["R-744", "R-290", "R-600", "R-600a"],
  ["R-32", "R-125", "R-134a", "R-143a"],
];

/** Rows [name, mass fraction] of two components or more, with small fractions as often as large ones. */
export function anyParts(): fc.Arbitrary<readonly BlendPart[]> {
  const fromGroup = fc
    .constantFrom(...groups)
    .chain((group) => fc.shuffledSubarray([...group], { minLength: 2 }));
  const fromPair = fc.constantFrom(...pairs().map(({ between }) => [...between]));
  return fc.oneof(fromGroup, fromPair).chain((names) =>
    fc.array(share(), { minLength: names.length, maxLength: names.length }).map((shares) => {
      const weights = shares.map((u) => 10 ** (-4 * u * u * u));
      const total = weights.reduce((sum, weight) => sum + weight, 0);
      return names.map((name, i) => [name, weights[i]! / total] as const);
    }),
  );
}

/** A blend of any composition. */
export function anyBlend(): fc.Arbitrary<Refrigerant> {
  return fc.oneof(
    { weight: 2, arbitrary: anyDesignatedBlend() },
    { weight: 1, arbitrary: anyParts().map((parts) => blend(parts)) },
  );
}
