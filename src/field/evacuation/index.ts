export * from "./evacuation-time.js";
export * from "./hose.js";
export * from "./moisture.js";
export * from "./multiple-evacuation.js";
export {
  type HoseWarningCode,
  type PumpAndHose,
  type PumpThroughHoseQuestion,
  type PumpThroughHoseResult,
  pumpThroughHose,
  tryPumpThroughHose,
} from "./pump-through-hose.js";
export * from "./rise-as-leak.js";
export * from "./rise-test.js";
export * from "./vacuum.js";
export * from "./vacuum-limits.js";
export {
  iceSublimationPressure,
  iceSublimationTemperature,
  tryIceSublimationPressure,
  tryIceSublimationTemperature,
  tryWaterBoilingTemperature,
  tryWaterSaturationPressure,
  tryWaterSaturationTemperature,
  tryWaterVapourPressure,
  WATER_TRIPLE_POINT,
  waterBoilingTemperature,
  waterSaturationPressure,
  waterSaturationTemperature,
  waterVapourPressure,
} from "./water-vapour.js";
