import {
  estimatePair,
  type Fluid,
  findBlendIn,
  findFluidIn,
  findPairIn,
  type Pair,
  parsePair,
} from "../catalogue/index.js";
import { attempt, InputError, isDewlineError, type Outcome, type Problem } from "../units/index.js";
import {
  type BlendOptions,
  blendOptionNames,
  checkGrade,
  fractionTolerance,
  makeBlend,
} from "./blend-from.js";
import { blends, fluids, pairs } from "./by-name.js";
import { checkOptions } from "./input.js";
import { refrigerantFrom } from "./pure-refrigerant.js";
import type { Refrigerant } from "./types.js";

/** A component of a blend, a pure refrigerant or a designated blend by name, with its fraction. */
export type BlendPart = readonly [name: string, fraction: number];

/** What may be chosen when a blend is put together. */
export interface OwnBlendOptions extends BlendOptions {
  /** What the fractions are of: `mass` if left out, or `amount` for mole fractions. */
  readonly basis?: "mass" | "amount";
  /** What to call it; its components with their percentages by mass if left out. */
  readonly designation?: string;
  /** Parameters to use for pairs of its components instead of those that are known. */
  readonly pairs?: readonly Pair[];
}

/** A fluid with its mass, on whatever scale. */
interface Share {
  readonly fluid: Fluid;
  readonly mass: number;
}

/**
 * A blend of any composition.
 *
 * A component named twice counts once with the sum; one of fraction 0 is left out, and what is left of a blend with a
 * single component is that pure refrigerant. A pair of components without parameters is estimated from the kind of the
 * two substances, and everything computed says so ({@link Refrigerant.mixing}).
 * What is left with one component keeps its own designation.
 *
 * @param parts - Rows [name, fraction], mass fractions unless `basis` says otherwise; they add up to 1. A designated blend
 *   may be a component: it is taken apart.
 * @throws `malformed-input`, with all that is wrong: fractions, options, pairs that nothing is known of or whose grade is
 *   below `lowestGrade`; `unknown-refrigerant` for a name.
 * @source As {@link blendFrom}; what is estimated, and how well that does, stands with each pair.
 *
 * @example
 * ```ts
 * import { bar, blend } from "dewline";
 *
 * const mine = blend([["R-32", 0.6], ["R-1234yf", 0.4]]);
 * mine.dew({ pressure: bar(9) }).temperature // → 281.8 K
 * ```
 */
export function blend(parts: readonly BlendPart[], options: OwnBlendOptions = {}): Refrigerant {
  const expected = "{ basis, designation, pairs, referenceState, lowestGrade }, any of them";
  checkOptions(options, [...blendOptionNames, "basis", "designation", "pairs"], expected);
  const { basis = "mass", designation, pairs: own = [], ...rest } = options;
  checkParts(parts, basis, designation);
  const shares = merged(parts.flatMap((part) => sharesOf(part, basis)));
  const total = shares.reduce((sum, { mass }) => sum + mass, 0);
  const present = shares.filter(({ mass }) => mass > 0);
  checkGrade(rest.lowestGrade);
  const ownPairs = checkedPairs(own, shares);
  const [only, ...others] = present;
  if (only !== undefined && others.length === 0) {
    const { referenceState } = rest;
    return refrigerantFrom(only.fluid, referenceState === undefined ? {} : { referenceState });
  }
  const known = pairs();
  return makeBlend(
    {
      designation: designation ?? describe(present, total),
      fluids: present.map(({ fluid }) => fluid),
      massFractions: present.map(({ mass }) => mass / total),
      isAzeotropic: false,
      tolerances: {},
      sources: [],
      notes: [],
    },
    (first, second) =>
      findPairIn(ownPairs, first.designation, second.designation) ??
      findPairIn(known, first.designation, second.designation) ??
      estimatePair(first, second),
    rest,
  );
}

/** As {@link blend}, without throwing. */
export function tryBlend(parts: readonly BlendPart[], options: OwnBlendOptions = {}): Outcome<Refrigerant> {
  return attempt(() => blend(parts, options));
}

function checkParts(parts: unknown, basis: unknown, designation: unknown): void {
  const problems: Problem[] = [];
  const demand = (path: string, value: unknown, isRight: boolean, right: string): void => {
    if (!isRight) problems.push({ path, value, expected: right });
  };
  demand("options.basis", basis, basis === "mass" || basis === "amount", '"mass" or "amount"');
  const isName = designation === undefined || (typeof designation === "string" && designation.trim() !== "");
  demand("options.designation", designation, isName, "a text that is not empty");
  // Safety facts are looked up by it: nothing may go by the name of something else.
  const isTaken = typeof designation === "string" && isName && isKnown(designation);
  demand("options.designation", designation, !isTaken, "a name that no refrigerant of the catalogue has");
  const isList = Array.isArray(parts) && parts.length > 0;
  demand("components", parts, isList, 'rows [name, fraction], such as [["R-32", 0.6], ["R-1234yf", 0.4]]');
  if (isList) {
    let sum = 0;
    parts.forEach((part: unknown, index) => {
      const [name, fraction, ...more] = Array.isArray(part) ? (part as readonly unknown[]) : [];
      const isRow = typeof name === "string" && more.length === 0;
      demand(`components[${index}]`, part, isRow, "a row [name, fraction]");
      const isFraction = typeof fraction === "number" && fraction >= 0 && fraction <= 1;
      demand(`components[${index}][1]`, fraction, isFraction, "a fraction from 0 to 1; 60 % is 0.6");
      sum += Number(fraction);
    });
    const isWhole = problems.length > 0 || Math.abs(sum - 1) <= fractionTolerance;
    demand("components", sum, isWhole, "fractions that add up to 1");
  }
  if (problems.length > 0) throw new InputError(problems);
}

function isKnown(name: string): boolean {
  return findBlendIn(blends(), name) !== undefined || attempt(() => findFluidIn(fluids(), name)).ok;
}

function sharesOf([name, fraction]: BlendPart, basis: "mass" | "amount"): readonly Share[] {
  const designated = findBlendIn(blends(), name);
  const parts = designated?.components ?? [
    { fluid: findFluidIn(fluids(), name, {}, blends()), massFraction: 1 },
  ];
  // Of a mole of the part, its molar mass is what its mole fraction weighs.
  const molarMass =
    1 / parts.reduce((sum, { fluid, massFraction }) => sum + massFraction / fluid.molarMass, 0);
  const weight = basis === "mass" ? fraction : fraction * molarMass;
  return parts.map(({ fluid, massFraction }) => ({ fluid, mass: weight * massFraction }));
}

function merged(shares: readonly Share[]): readonly Share[] {
  const masses = new Map<Fluid, number>();
  for (const { fluid, mass } of shares) masses.set(fluid, (masses.get(fluid) ?? 0) + mass);
  return [...masses].map(([fluid, mass]) => ({ fluid, mass }));
}

/** `R-32/R-1234yf (60/40)`: names and percentages by mass, as designations are explained in ISO 817. */
function describe(shares: readonly Share[], total: number): string {
  const names = shares.map(({ fluid }) => fluid.designation).join("/");
  const percentages = shares.map(({ mass }) => Number(((100 * mass) / total).toPrecision(4))).join("/");
  return `${names} (${percentages})`;
}

function checkedPairs(own: unknown, shares: readonly Share[]): readonly Pair[] {
  if (!Array.isArray(own)) {
    throw new InputError([{ path: "options.pairs", value: own, expected: "a list of pairs" }]);
  }
  const problems: Problem[] = [];
  const checked = own.flatMap((pair: unknown, index) => {
    try {
      const checked = parsePair(pair);
      const { between } = checked;
      const isUsed = between.every((name) => shares.some(({ fluid }) => fluid.designation === name));
      if (!isUsed) {
        const path = `options.pairs[${index}].between`;
        problems.push({
          path,
          value: between.join(" with "),
          expected: "two components of this blend, by designation",
        });
      }
      return [checked];
    } catch (error) {
      if (!isDewlineError(error) || !(error instanceof InputError)) throw error;
      problems.push(
        ...error.problems.map((problem) => ({ ...problem, path: `options.pairs[${index}].${problem.path}` })),
      );
      return [];
    }
  });
  if (problems.length > 0) throw new InputError(problems);
  return checked;
}
