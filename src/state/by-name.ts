import {
  type Blend,
  clashesOf,
  type FindOptions,
  type Fluid,
  findBlendIn,
  findFluidIn,
  findPairIn,
  listBlends,
  listFluids,
  listPairs,
  type Pair,
  parseFluid,
  parsePair,
} from "../catalogue/index.js";
import { checkEquation } from "../equilibrium/index.js";
import { attempt, InputError, type Outcome, type Problem } from "../units/index.js";
import { type BlendOptions, blendFrom, checkGrade } from "./blend-from.js";
import { checkOptions } from "./input.js";
import { type RefrigerantOptions, refrigerantFrom } from "./pure-refrigerant.js";
import type { Refrigerant } from "./types.js";

/** Fluids and pairs that the program using Dewline has added, in order. */
let registered: readonly Fluid[] = [];
let registeredPairs: readonly Pair[] = [];

/**
 * A refrigerant by its name: designation of ISO 817, pure or blend, chemical name, CAS number, or formula.
 *
 * @param name - Spelling is forgiven: `R-32`, `r32`, `HFC-32`, `difluoromethane`, `75-10-5` are one refrigerant.
 * @param options - `referenceState` moves the zero of enthalpy and entropy; `equation` picks another published
 *   equation of the same pure refrigerant, such as `gao-2023` for R-717; `lowestGrade` refuses a blend any of whose
 *   pairs is worse, and means nothing for a pure refrigerant.
 * @throws `unknown-refrigerant`, with near names; `malformed-input` for an equation that it does not have.
 *
 * @example
 * ```ts
 * import { celsius, refrigerant } from "dewline";
 *
 * refrigerant("r32").saturation({ temperature: celsius(25) }).pressure // → 1.6896e6 Pa
 * ```
 */
export function refrigerant(
  name: string,
  options: RefrigerantOptions & BlendOptions & FindOptions = {},
): Refrigerant {
  checkOptions(
    options,
    ["referenceState", "equation", "lowestGrade"],
    "{ referenceState, equation, lowestGrade }, any of them",
  );
  const { equation, lowestGrade, ...rest } = options;
  checkGrade(lowestGrade);
  const found = typeof name === "string" ? findBlendIn(listBlends(), name) : undefined;
  if (found === undefined) return refrigerantFrom(findFluidIn(fluids(), name, options, listBlends()), rest);
  if (equation !== undefined) {
    const expected = `no such option: ${found.designation} is a blend, computed from its components' equations`;
    throw new InputError([{ path: "equation", value: equation, expected }]);
  }
  return blendFrom(found, { ...rest, ...(lowestGrade === undefined ? {} : { lowestGrade }) });
}

/** As {@link refrigerant}, without throwing. */
export function tryRefrigerant(
  name: string,
  options: RefrigerantOptions & BlendOptions & FindOptions = {},
): Outcome<Refrigerant> {
  return attempt(() => refrigerant(name, options));
}

/**
 * Adds a fluid of your own to those that {@link refrigerant} finds, after the checks that the catalogue's fluids
 * passed: the shape of the literal, the conditions at the critical point, the saturation curve, the acentric factor.
 *
 * @param fluid - A literal of the form of {@link Fluid}.
 * @returns The fluid, checked; {@link refrigerantFrom} accepts it too.
 * @throws `malformed-input`, with everything that is wrong; also names that lead to another refrigerant already.
 */
export function registerFluid(fluid: unknown): Fluid {
  const checked = parseFluid(fluid);
  const problems = [...clashesOf(fluids(), checked), ...clashesWithBlends(checked)];
  if (problems.length > 0) throw new InputError(problems);
  checkEquation(checked);
  registered = [...registered, checked];
  return checked;
}

/** A designated blend is found first: under its name a fluid would never be. */
function clashesWithBlends({ designation, name, synonyms }: Fluid): readonly Problem[] {
  const names = [
    ["designation", designation],
    ["name", name],
    ...synonyms.map((s, i) => [`synonyms[${i}]`, s]),
  ];
  return names.flatMap(([path = "", value = ""]) => {
    const blend = findBlendIn(listBlends(), value);
    return blend === undefined
      ? []
      : [{ path, value, expected: `a name that does not lead to ${blend.designation}` }];
  });
}

/** As {@link registerFluid}, without throwing. */
export function tryRegisterFluid(fluid: unknown): Outcome<Fluid> {
  return attempt(() => registerFluid(fluid));
}

/** Every pure fluid that {@link refrigerant} can find: the catalogue, then what was registered. */
export function fluids(): readonly Fluid[] {
  return [...listFluids(), ...registered];
}

/** Every designated blend that {@link refrigerant} can find. */
export function blends(): readonly Blend[] {
  return listBlends();
}

/**
 * Adds parameters for two fluids that have none yet to those that {@link blend} finds.
 *
 * @param pair - A literal of the form of {@link Pair}; both designations must be known.
 * @returns The pair, checked.
 * @throws `malformed-input`, with everything that is wrong; also for a pair that the catalogue has: give another set of
 *   parameters to `blend(…, { pairs })` instead, so that no designated blend changes behind anyone's back.
 */
export function registerPair(pair: unknown): Pair {
  const checked = parsePair(pair);
  const [first, second] = checked.between;
  const problems = checked.between.flatMap((name, index) =>
    fluids().some(({ designation }) => designation === name)
      ? []
      : [{ path: `between[${index}]`, value: name, expected: "the designation of a fluid that is known" }],
  );
  if (findPairIn(pairs(), first, second) !== undefined) {
    const expected = "two fluids without parameters; others for these are given to blend(…, { pairs })";
    problems.push({ path: "between", value: `${first} with ${second}`, expected });
  }
  if (problems.length > 0) throw new InputError(problems);
  registeredPairs = [...registeredPairs, checked];
  return checked;
}

/** As {@link registerPair}, without throwing. */
export function tryRegisterPair(pair: unknown): Outcome<Pair> {
  return attempt(() => registerPair(pair));
}

/** Every pair of fluids with parameters of its own: the catalogue, then what was registered. */
export function pairs(): readonly Pair[] {
  return [...listPairs(), ...registeredPairs];
}
