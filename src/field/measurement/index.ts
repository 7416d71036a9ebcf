export * from "./absolute-pressure.js";
export * from "./decision.js";
export * from "./dial-label.js";
export {
  gaugeUncertainty,
  halfWidthUncertainty,
  type PressureAccuracy,
  type PressureGauge,
  type ReadingUncertainty,
  resolutionUncertainty,
  type Thermometer,
  type ThermometerAccuracy,
  thermometerUncertainty,
} from "./instrument.js";
export * from "./steady-series.js";
export * from "./steady-series.js";
export * from "./uncertainty.js";
