export { fluids, refrigerant, registerFluid, tryRefrigerant, tryRegisterFluid } from "./by-name.js";
export { type RefrigerantOptions, refrigerantFrom } from "./pure-refrigerant.js";
export type * from "./types.js";
