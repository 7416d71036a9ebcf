export type { LineReading, LineResult, LineWarningCode, OperatingMode, ServicePort } from "./line-reading.js";
export * from "./saturation-slope.js";
export * from "./subcooling.js";
export * from "./superheat.js";
