import { attempt, type Outcome } from "../units/index.js";
import { allBlends } from "./all-blends.js";
import { allFluids } from "./all-fluids.js";
import { allPairs } from "./all-pairs.js";
import type { Blend } from "./blend.js";
import { type FindOptions, findFluidIn } from "./find-fluid.js";
import type { Fluid } from "./fluid.js";
import type { Pair } from "./pair.js";

/** Every fluid of the catalogue, one for each equation; of two equations of one refrigerant the default comes first. */
export function listFluids(): readonly Fluid[] {
  return allFluids();
}

/** Every pair of fluids of the catalogue that has parameters of its own, by the designations of both. */
export function listPairs(): readonly Pair[] {
  return allPairs();
}

/** Every blend of the catalogue, by number of the designation. */
export function listBlends(): readonly Blend[] {
  return allBlends();
}

/**
 * Finds a fluid of the catalogue by designation, chemical name, CAS number, or formula; see {@link findFluidIn}.
 *
 * @throws {@link UnknownRefrigerantError} `unknown-refrigerant`, with near designations.
 * @throws {@link InputError} `malformed-input` for an empty name or an equation the refrigerant does not have.
 */
export function findFluid(name: string, options: FindOptions = {}): Fluid {
  return findFluidIn(allFluids(), name, options, allBlends());
}

/** As {@link findFluid}, without throwing. */
export function tryFindFluid(name: string, options: FindOptions = {}): Outcome<Fluid> {
  return attempt(() => findFluid(name, options));
}
