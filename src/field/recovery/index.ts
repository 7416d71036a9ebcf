export * from "./pump-down.js";
export * from "./recovered.js";
export * from "./residual-vapour.js";
export * from "./watch-pump-down.js";
