export * from "./cautions.js";
export * from "./decision.js";
export type { HoldWarningCode } from "./hold-warnings.js";
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
export * from "./job/index.js";
export * from "./leak/index.js";
export * from "./leak-rate.js";
export * from "./line-charge.js";
export type { LineReading, LineResult, LineWarningCode, OperatingMode, ServicePort } from "./line-reading.js";
export * from "./nitrogen-hold.js";
export * from "./rise-test.js";
export * from "./saturation-slope.js";
export * from "./standing-check.js";
export * from "./standing-pressure.js";
export * from "./subcooling.js";
export * from "./superheat.js";
export {
  type Bore,
  findTube,
  listTubes,
  type Tube,
  type TubeSize,
  tryFindTube,
  tubeBore,
  tubeVolume,
} from "./tube.js";
export * from "./uncertainty.js";
export * from "./vacuum.js";
export * from "./water-vapour.js";
