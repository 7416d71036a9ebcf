export * from "./carnot.js";
export { type Compression, isentropicEfficiency, tryIsentropicEfficiency } from "./compression.js";
export * from "./cycle-arithmetic.js";
export type { CycleInput } from "./cycle-input.js";
export type { CycleSize } from "./cycle-size.js";
export type { CondensingLevel, EvaporatingLevel, GlidePoint, SaturationLevel } from "./saturation-level.js";
export * from "./vapour-compression.js";
