/**
 * The small door: everything that computes with a fluid literal, without the catalogue and its schemas.
 *
 * @packageDocumentation
 */
export type * from "./catalogue/blend.js";
export type * from "./catalogue/fluid.js";
export type * from "./catalogue/pair.js";
export * from "./cycle/index.js";
export { type BlendOptions, blendFrom } from "./state/blend-from.js";
export { type RefrigerantOptions, refrigerantFrom } from "./state/pure-refrigerant.js";
export type * from "./state/types.js";
export { ZeotropeError } from "./state/zeotrope-error.js";
export * from "./units/index.js";
