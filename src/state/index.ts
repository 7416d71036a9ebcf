export * from "./azeotropes.js";
export * from "./blend.js";
export { type BlendOptions, blendFrom } from "./blend-from.js";
export * from "./by-name.js";
export * from "./glide.js";
export { type RefrigerantOptions, refrigerantFrom } from "./pure-refrigerant.js";
export type * from "./types.js";
export {
  type Masses,
  type Vessel,
  type VesselPhase,
  VesselSearch,
} from "./vessel.js";
export { ZeotropeError } from "./zeotrope-error.js";
