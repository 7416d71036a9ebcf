import type { Pair } from "./pair.js";

/**
 * The pair of two fluids, whichever of them it names first; undefined when the list has none.
 *
 * Its β belongs to the order in `between`, which need not be that of the call.
 *
 * @param pairs - Where to look; of several pairs of the same fluids the first listed is taken.
 * @param first - Designation of one fluid.
 * @param second - Designation of the other.
 */
export function findPairIn(pairs: readonly Pair[], first: string, second: string): Pair | undefined {
  return pairs.find(
    ({ between: [one, other] }) => (one === first && other === second) || (one === second && other === first),
  );
}
