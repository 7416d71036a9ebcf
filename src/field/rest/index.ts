export * from "./standing-check.js";
export * from "./standing-pressure.js";
