export * from "./annual-leak-rate.js";
export * from "./carbon-dioxide-equivalent.js";
export type * from "./caution.js";
export * from "./charge-cautions.js";
export * from "./flammability.js";
export * from "./iec-60335-2-40/index.js";
export * from "./mixture-flammability.js";
export * from "./printed-limits.js";
export * from "./safety-class.js";
