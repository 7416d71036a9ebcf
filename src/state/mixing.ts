import type { Pair, PairGrade } from "../catalogue/index.js";
import type { Mixing } from "./types.js";

/** From the best to the worst. */
export const gradesInOrder: readonly PairGrade[] = ["published", "regressed", "estimated"];

/** Whether a grade is worse than another. */
export function isBelow(grade: PairGrade, lowest: PairGrade): boolean {
  return gradesInOrder.indexOf(grade) > gradesInOrder.indexOf(lowest);
}

/** The mixing of a composition, mole fractions by designation, with the pairs in use. */
export function mixingOf(pairs: readonly Pair[], moleFractions: Readonly<Record<string, number>>): Mixing {
  let grade: PairGrade = "published";
  let deviation = 0;
  for (const pair of pairs) {
    const [first, second] = pair.between;
    if (isBelow(pair.grade, grade)) grade = pair.grade;
    deviation += 4 * (moleFractions[first] ?? 0) * (moleFractions[second] ?? 0) * pair.deviation.relative;
  }
  // An estimate: two digits, as uncertainties are given.
  return { grade, deviation: Number(deviation.toPrecision(2)) };
}
