export type * from "./caution.js";
export * from "./charge-cautions.js";
export * from "./flammability.js";
export * from "./iec-60335-2-40/index.js";
export * from "./input-check.js";
export * from "./mixture-flammability.js";
export * from "./printed-limits.js";
export * from "./safety-class.js";
