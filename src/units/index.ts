export * from "./errors.js";
export type * from "./flavour.js";
