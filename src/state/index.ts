export { type RefrigerantOptions, refrigerantFrom } from "./pure-refrigerant.js";
export type * from "./types.js";
