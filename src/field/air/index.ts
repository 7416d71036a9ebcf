export type { AirFlowReading, AirReading, AirSideReadings, Hygrometer } from "./air-readings.js";
export * from "./air-side-capacity.js";
export * from "./moist-air.js";
export * from "./rating-conditions.js";
