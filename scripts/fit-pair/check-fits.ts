import { findPairIn, type Pair } from "../../src/catalogue/index.js";
import { selectionProblems, type Workshop } from "./workshop.js";

/** What is wrong with the descriptions of fits among themselves and with the pairs, one sentence each. */
export function fitProblems(workshop: Pick<Workshop, "fits" | "sets" | "pairs">): readonly string[] {
  const { fits, pairs } = workshop;
  const inFits = [...fits].flatMap(([name, { free, data, against }]) => {
    const path = `data/fits/${name}.json`;
    const missing = [
      ...selectionProblems(workshop, "data", data),
      ...selectionProblems(workshop, "against", against),
    ];
    return [
      ...missing.map((problem) => `${path}: ${problem.path} ${problem.value}: expected ${problem.expected}`),
      ...free
        .filter(({ between: [first, second] }) => findPairIn(pairs, first, second)?.between[0] !== first)
        .map(({ between }) => `${path}: ${between.join("+")} is no file of data/pairs`),
    ];
  });
  const made = [...fits.values()]
    .filter(({ superseded }) => superseded === undefined)
    .flatMap(({ free }) => free.map(({ between }) => between.join("+")));
  const inPairs = pairs
    .filter(({ grade, between }) => grade === "regressed" && !isMeasured(workshop, between))
    .flatMap(({ between }) => {
      const count = made.filter((name) => name === between.join("+")).length;
      return count === 1
        ? []
        : [`data/pairs/${between.join("+")}.json: ${count} fits make this pair, not one`];
    });
  return [...inFits, ...inPairs];
}

/** Whether there is a file about this pair alone, which needs no description. */
function isMeasured({ sets }: Pick<Workshop, "sets">, between: Pair["between"]): boolean {
  return [...sets.values()].some(({ points }) =>
    points.every(
      ({ fluids }) => fluids.length === 2 && fluids.every(({ designation }) => between.includes(designation)),
    ),
  );
}
