export * from "./constant-volatility.js";
export * from "./draw-from-cylinder.js";
export * from "./leak-and-refill.js";
export * from "./leak-flammability.js";
export * from "./mix-charges.js";
export { type LeakResult, type LeakState, simulateLeak, trySimulateLeak } from "./simulate-leak.js";
export type { LeakSituation, Leaving } from "./situation.js";
export * from "./tolerance.js";
export * from "./top-up.js";
