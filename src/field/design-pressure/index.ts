export * from "./design-pressure.js";
export * from "./pressure-equipment.js";
