export * from "./rise-test.js";
export * from "./vacuum.js";
export * from "./water-vapour.js";
