export type { HoldWarningCode } from "./hold-warnings.js";
export * from "./nitrogen-hold.js";
