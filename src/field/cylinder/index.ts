export * from "./fill-limit.js";
export * from "./filling-ratio.js";
export * from "./liquid-full.js";
