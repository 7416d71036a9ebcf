import { attempt, type Outcome } from "../units/index.js";
import { allFluids } from "./all-fluids.js";
import { type FindOptions, findFluidIn } from "./find-fluid.js";
import type { Fluid } from "./fluid.js";

/** Every fluid of the catalogue, one for each equation; of two equations of one refrigerant the default comes first. */
export function listFluids(): readonly Fluid[] {
  return allFluids();
}

/**
 * Finds a fluid of the catalogue by designation, chemical name, CAS number, or formula; see {@link findFluidIn}.
 *
 * @throws {@link UnknownRefrigerantError} `unknown-refrigerant`, with near designations.
 * @throws {@link InputError} `malformed-input` for an empty name or an equation the refrigerant does not have.
 */
export function findFluid(name: string, options: FindOptions = {}): Fluid {
  return findFluidIn(allFluids(), name, options);
}

/** As {@link findFluid}, without throwing. */
export function tryFindFluid(name: string, options: FindOptions = {}): Outcome<Fluid> {
  return attempt(() => findFluid(name, options));
}
