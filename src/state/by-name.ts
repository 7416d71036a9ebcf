import {
  clashesOf,
  type FindOptions,
  type Fluid,
  findFluidIn,
  listFluids,
  parseFluid,
} from "../catalogue/index.js";
import { checkEquation } from "../equilibrium/index.js";
import { attempt, InputError, type Outcome } from "../units/index.js";
import { checkOptions } from "./input.js";
import { type RefrigerantOptions, refrigerantFrom } from "./pure-refrigerant.js";
import type { Refrigerant } from "./types.js";

/** Fluids that the program using Dewline has added, in order. */
let registered: readonly Fluid[] = [];

/**
 * A refrigerant by its name: designation of ISO 817, chemical name, CAS number, or formula.
 *
 * @param name - Spelling is forgiven: `R-32`, `r32`, `HFC-32`, `difluoromethane`, `75-10-5` are one refrigerant.
 * @param options - `referenceState` moves the zero of enthalpy and entropy; `equation` picks another published
 *   equation of the same refrigerant, such as `gao-2023` for R-717.
 * @throws `unknown-refrigerant`, with near names; `malformed-input` for an equation that it does not have.
 *
 * @example
 * ```ts
 * import { celsius, refrigerant } from "dewline";
 *
 * refrigerant("r32").saturation({ temperature: celsius(25) }).pressure // → 1.6896e6 Pa
 * ```
 */
export function refrigerant(name: string, options: RefrigerantOptions & FindOptions = {}): Refrigerant {
  checkOptions(options, ["referenceState", "equation"], "{ referenceState, equation }, either or both");
  const { equation: _, ...rest } = options;
  return refrigerantFrom(findFluidIn(fluids(), name, options), rest);
}

/** As {@link refrigerant}, without throwing. */
export function tryRefrigerant(
  name: string,
  options: RefrigerantOptions & FindOptions = {},
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
  const problems = clashesOf(fluids(), checked);
  if (problems.length > 0) throw new InputError(problems);
  checkEquation(checked);
  registered = [...registered, checked];
  return checked;
}

/** As {@link registerFluid}, without throwing. */
export function tryRegisterFluid(fluid: unknown): Outcome<Fluid> {
  return attempt(() => registerFluid(fluid));
}

/** Everything that {@link refrigerant} can find: the catalogue, then what was registered. */
export function fluids(): readonly Fluid[] {
  return [...listFluids(), ...registered];
}
