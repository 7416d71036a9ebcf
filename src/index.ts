/**
 * The front door: refrigerants by name, their states, quantities, and the arithmetic of installing and servicing.
 *
 * @packageDocumentation
 */
export {
  type FindOptions,
  type Fluid,
  type IdealPart,
  type ResidualPart,
  UnknownRefrigerantError,
} from "./catalogue/index.js";
export * from "./state/index.js";
export * from "./units/index.js";
