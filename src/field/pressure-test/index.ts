export type { HoldWarningCode } from "./hold-warnings.js";
export * from "./nitrogen-hold.js";
export * from "./stored-energy.js";
export * from "./strength-test.js";
export * from "./test-pressures.js";
export * from "./test-volume.js";
