export { clashesOf } from "./clashes.js";
export { UnknownRefrigerantError } from "./errors.js";
export { type FindOptions, findFluidIn } from "./find-fluid.js";
export type * from "./fluid.js";
export type * from "./fluid-data.js";
export { findFluid, listFluids, tryFindFluid } from "./lookup.js";
export { problemsOf } from "./problems.js";
export { parseFluid, parseFluidData, parseReferenceData } from "./schema.js";
