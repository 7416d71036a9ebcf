import type { Blend } from "./blend.js";
import type { Fluid } from "./fluid.js";
import { blendKeys, keysOf, nameKey } from "./name-key.js";

const LONGEST_NAME = 60;
const MOST_NAMES = 5;
const SHORTEST_START = 4;

/**
 * Designations of fluids and blends whose designation or name differs from `asked` by a slip or two of the pen, nearest
 * first.
 *
 * A slip is a letter too many, one missing, one wrong, two neighbours swapped, or an end left off. One slip is
 * allowed in a key of up to five characters, two in a longer one.
 */
export function nearNames(
  fluids: readonly Fluid[],
  blends: readonly Blend[],
  asked: string,
): readonly string[] {
  const key = nameKey(asked);
  if (key === "" || key.length > LONGEST_NAME) return [];
  const allowed = key.length <= 5 ? 1 : 2;
  const slips = new Map<string, number>();
  const compare = (designation: string, candidates: readonly string[]): void => {
    for (const candidate of candidates) {
      const unfinished = key.length >= SHORTEST_START && candidate.startsWith(key);
      const count = unfinished ? 1 : slipsBetween(key, candidate);
      if (count <= allowed && count < (slips.get(designation) ?? Number.POSITIVE_INFINITY)) {
        slips.set(designation, count);
      }
    }
  };
  for (const fluid of fluids) {
    const { designations, names } = keysOf(fluid);
    compare(fluid.designation, [...designations, ...names]);
  }
  for (const blend of blends) compare(blend.designation, blendKeys(blend));
  return [...slips]
    .sort(([, left], [, right]) => left - right)
    .slice(0, MOST_NAMES)
    .map(([designation]) => designation);
}

/** Least number of insertions, deletions, replacements and swaps of neighbours that turn one word into the other. */
export function slipsBetween(left: string, right: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: right.length + 1 }, (_, column) => column);
  for (let row = 1; row <= left.length; row++) {
    const current = [row];
    for (let column = 1; column <= right.length; column++) {
      const same = left[row - 1] === right[column - 1];
      let slips = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped = left[row - 1] === right[column - 2] && left[row - 2] === right[column - 1];
      if (row > 1 && column > 1 && swapped) slips = Math.min(slips, (beforeLast[column - 2] ?? 0) + 1);
      current.push(slips);
    }
    beforeLast = last;
    last = current;
  }
  return last[right.length] ?? 0;
}
