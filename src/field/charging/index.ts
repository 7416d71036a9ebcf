export * from "./charge-phase.js";
export * from "./line-charge.js";
export * from "./weigh-in.js";
