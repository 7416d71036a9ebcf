export * from "./fill-limit.js";
export { type FillingRatio, type FillingRule, fillingRatio, fillingRule } from "./filling-ratio.js";
export * from "./liquid-full.js";
