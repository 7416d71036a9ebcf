export * from "./identify-refrigerant.js";
export * from "./non-condensables.js";
export * from "./standing-check.js";
export * from "./standing-pressure.js";
