export * from "./line-charge.js";
