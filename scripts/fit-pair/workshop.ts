import { type Fluid, findPairIn, type Pair } from "../../src/catalogue/index.js";
import type { Bibliography } from "../../src/catalogue/literal.js";
import { InputError, type Problem } from "../../src/units/index.js";
import { readBibliography } from "../bibliography.js";
import { readCatalogueData, readFolder } from "../read-data.js";
import { parseEquilibria } from "./data-schema.js";
import { assumedPairs, type FitResult, fitPairs } from "./fit.js";
import { type FitDescription, parseFit, type Selection } from "./fit-schema.js";
import type { EquilibriumPoint, EquilibriumSet } from "./points.js";

/** All that fits are made of. */
export interface Workshop {
  readonly fluids: readonly Fluid[];
  readonly pairs: readonly Pair[];
  readonly bibliography: Bibliography;
  /** The files of `data/equilibria/`, by name without extension. */
  readonly sets: ReadonlyMap<string, EquilibriumSet>;
  /** The files of `data/fits/`. */
  readonly fits: ReadonlyMap<string, FitDescription>;
}

/** Reads and checks `data/`. */
export function readWorkshop(): Workshop {
  const { fluids: fluidEntries, pairs } = readCatalogueData();
  const bibliography = readBibliography();
  const fluids = fluidEntries.map(([, fluid]) => fluid);
  return {
    fluids,
    pairs: pairs.map(([, pair]) => pair),
    bibliography,
    sets: readAll("equilibria", (json) => parseEquilibria(json, fluids, bibliography)),
    fits: readAll("fits", parseFit),
  };
}

function readAll<Parsed>(folder: string, parse: (json: unknown) => Parsed): ReadonlyMap<string, Parsed> {
  const parsed = readFolder(folder).map(([file, json]) => {
    try {
      return [file.replace(/\.json$/, ""), parse(json)] as const;
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      throw new InputError(
        error.problems.map((problem) => ({ ...problem, path: `data/${folder}/${file}: ${problem.path}` })),
      );
    }
  });
  return new Map(parsed);
}

/**
 * Makes a fit.
 *
 * @param asOfNow - Whether pairs that the description assumes are taken as they are in `data/pairs/` instead.
 */
export function runFit(workshop: Workshop, description: FitDescription, asOfNow = false): FitResult {
  const { free, assumed, data, against } = description;
  const reversed = orderProblems(workshop.pairs, free);
  if (reversed.length > 0) throw new InputError(reversed);
  return fitPairs({
    description: { free, assumed: asOfNow ? [] : assumed },
    points: pointsOf(workshop, "data", data),
    against: pointsOf(workshop, "against", against),
    pairs: workshop.pairs,
  });
}

/** What is written of the pairs of a fit: in `data/pairs/`, or for a superseded one as what other fits assume. */
export function filedPairs({ pairs, fits }: Workshop, { superseded }: FitDescription): readonly Pair[] {
  return superseded === undefined
    ? pairs
    : [...fits.values()].flatMap((description) => assumedPairs(description, pairs));
}

/** Pairs that are filed in the other order, to which β belongs. */
function orderProblems(pairs: readonly Pair[], free: FitDescription["free"]): readonly Problem[] {
  return free.flatMap(({ between }, index) => {
    const filed = findPairIn(pairs, ...between);
    return filed === undefined || filed.between[0] === between[0]
      ? []
      : [
          {
            path: `free[${index}].between`,
            value: between,
            expected: `the order ${filed.between.join(", ")}`,
          },
        ];
  });
}

/** What a description names and there is not. */
export function selectionProblems(
  { sets }: Pick<Workshop, "sets">,
  list: "data" | "against",
  selections: readonly Selection[],
): readonly Problem[] {
  return selections.flatMap(({ file, points }, index): Problem[] => {
    const path = `${list}[${index}]`;
    const set = sets.get(file);
    if (set === undefined) {
      return [{ path: `${path}.file`, value: file, expected: `one of ${[...sets.keys()].join(", ")}` }];
    }
    const names = set.points.map(({ name }) => name);
    return (points ?? []).flatMap((name, k) =>
      names.includes(name)
        ? []
        : [{ path: `${path}.points[${k}]`, value: name, expected: `the name of a point of ${file}` }],
    );
  });
}

function pointsOf(
  workshop: Workshop,
  list: "data" | "against",
  selections: readonly Selection[],
): readonly EquilibriumPoint[] {
  const problems = selectionProblems(workshop, list, selections);
  if (problems.length > 0) throw new InputError(problems);
  return selections.flatMap(({ file, points }) =>
    workshop.sets.get(file)!.points.filter(({ name }) => points === undefined || points.includes(name)),
  );
}
