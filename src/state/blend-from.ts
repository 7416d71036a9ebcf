import type { Blend, BlendComponent, Fluid, Pair, PairGrade } from "../catalogue/index.js";
import { InputError, type Problem } from "../units/index.js";
import { type BlendRecipe, BlendRefrigerant } from "./blend-refrigerant.js";
import { checkOptions } from "./input.js";
import { checkLiteralForm } from "./literal-form.js";
import { gradesInOrder, isBelow } from "./mixing.js";
import type { ReferenceState, Refrigerant } from "./types.js";

/** What may be chosen when a blend is made. */
export interface BlendOptions {
  /** Zero of enthalpy and entropy; `iir` if left out, or `nbp` for a blend that is never liquid at 0 °C. */
  readonly referenceState?: ReferenceState;
  /** Refuse the blend if any of its pairs has a lower grade than this; `estimated`, the lowest, if left out. */
  readonly lowestGrade?: PairGrade;
}

/** The names of {@link BlendOptions}. */
export const blendOptionNames: readonly string[] = ["referenceState", "lowestGrade"];

/** Fractions are printed with four decimals at most: a sum farther from 1 than this is a slip. */
export const fractionTolerance = 1e-6;

/**
 * Makes a blend from its literal: the small door, which carries no other fluid and no schema.
 *
 * @param blend - A literal of `dewline/blends/*`, or one of your own with its fluids and pairs.
 * @throws `malformed-input` for something else, for a pair of components the literal has no parameters for, and for one
 *   whose grade is below `lowestGrade`.
 * @source The multi-fluid model of Lemmon, E. W., Jacobsen, R. T, J. Phys. Chem. Ref. Data 33 (2004) 593, and Kunz, O.,
 *   Wagner, W., J. Chem. Eng. Data 57 (2012) 3032, with the parameters of each pair as its sources say.
 *
 * @example
 * ```ts
 * import { r454b } from "dewline/blends/r-454b";
 * import { blendFrom } from "dewline/core";
 *
 * blendFrom(r454b).dew({ temperature: 283.15 }).pressure // → 1.0e6 Pa
 * ```
 */
export function blendFrom(blend: Blend, options: BlendOptions = {}): Refrigerant {
  checkBlendForm(blend);
  checkOptions(options, blendOptionNames, "{ referenceState, lowestGrade }, either or both");
  const { designation, components, pairs, sources, notes } = blend;
  return makeBlend(
    {
      designation,
      fluids: components.map(({ fluid }) => fluid),
      massFractions: components.map(({ massFraction }) => massFraction),
      isAzeotropic: isAzeotropeDesignation(designation),
      tolerances: tolerancesOf(components),
      sources,
      notes,
    },
    (first, second) => pairAmong(pairs, first, second),
    options,
  );
}

/** Finds parameters for every pair, checks their grades, and makes the blend. */
export function makeBlend(
  recipe: Omit<BlendRecipe, "pairOf" | "referenceState">,
  find: (first: Fluid, second: Fluid) => Pair | undefined,
  { referenceState, lowestGrade = "estimated" }: BlendOptions,
): Refrigerant {
  checkGrade(lowestGrade);
  const problems: Problem[] = [];
  const found = new Map<string, Pair>();
  recipe.fluids.forEach((first, i) => {
    for (const second of recipe.fluids.slice(i + 1)) {
      const pair = find(first, second);
      const name = `${first.designation} with ${second.designation}`;
      if (pair === undefined) {
        problems.push({
          path: "components",
          value: name,
          expected:
            "a pair with parameters: there are none, and no estimate for such substances; register the pair",
        });
      } else if (isBelow(pair.grade, lowestGrade)) {
        problems.push({
          path: "components",
          value: `${name}, ${pair.grade}`,
          expected: `a pair that is ${lowestGrade} or better, as options.lowestGrade asks`,
        });
      } else {
        found.set(pairKey(first, second), pair);
      }
    }
  });
  if (problems.length > 0) throw new InputError(problems);
  return new BlendRefrigerant({
    ...recipe,
    ...(referenceState === undefined ? {} : { referenceState }),
    pairOf: (first, second) => found.get(pairKey(first, second))!,
  });
}

/** Refuses a grade that is none. */
export function checkGrade(grade: unknown): void {
  if (grade === undefined || (gradesInOrder as readonly unknown[]).includes(grade)) return;
  const expected = `one of ${gradesInOrder.map((each) => `"${each}"`).join(", ")}`;
  throw new InputError([{ path: "options.lowestGrade", value: grade, expected }]);
}

function pairKey(first: Fluid, second: Fluid): string {
  return `${first.designation} ${second.designation}`;
}

/** ISO 817: a designation of the 500 series is an azeotrope. */
function isAzeotropeDesignation(designation: string): boolean {
  return /^R-5\d\d[A-Z]?$/.test(designation);
}

/** The pair of two fluids in a list, in either order. */
function pairAmong(pairs: readonly Pair[], first: Fluid, second: Fluid): Pair | undefined {
  const names = [first.designation, second.designation];
  return pairs.find(({ between }) => between.every((name) => names.includes(name)));
}

/** Tolerances of a designation by component. */
function tolerancesOf(components: readonly BlendComponent[]): BlendRecipe["tolerances"] {
  return Object.fromEntries(
    components.flatMap(({ fluid, tolerance }) =>
      tolerance ? [[fluid.designation, tolerance] as const] : [],
    ),
  );
}

/** Checks that a value has the parts of a blend literal. */
function checkBlendForm(blend: unknown): void {
  const expected = "a blend literal, as in dewline/blends";
  if (typeof blend !== "object" || blend === null) {
    throw new InputError([{ path: "blend", value: blend, expected }]);
  }
  const { designation, components, pairs, sources, notes } = blend as Readonly<Record<string, unknown>>;
  const problems: Problem[] = [];
  const demand = (path: string, value: unknown, isRight: boolean, right: string): void => {
    if (!isRight) problems.push({ path: `blend.${path}`, value, expected: right });
  };
  demand("designation", designation, typeof designation === "string" && designation !== "", "a text");
  demand("pairs", pairs, Array.isArray(pairs), "a list of pairs");
  demand("sources", sources, Array.isArray(sources), "a list");
  demand("notes", notes, Array.isArray(notes), "a list");
  const isList = Array.isArray(components) && components.length >= 2;
  demand("components", components, isList, "a list of two components or more");
  if (problems.length > 0 || !isList) throw new InputError(problems);
  let sum = 0;
  components.forEach((component: unknown, index) => {
    const { fluid, massFraction } = (component ?? {}) as {
      readonly fluid: unknown;
      readonly massFraction: unknown;
    };
    checkLiteralForm(fluid);
    const isFraction = typeof massFraction === "number" && massFraction > 0 && massFraction < 1;
    demand(`components[${index}].massFraction`, massFraction, isFraction, "a number between 0 and 1");
    sum += Number(massFraction);
  });
  demand("components", sum, Math.abs(sum - 1) <= fractionTolerance, "mass fractions that add up to 1");
  if (problems.length > 0) throw new InputError(problems);
}
