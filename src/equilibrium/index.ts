export { checkEquation } from "./check-equation.js";
export { criticalResidual } from "./critical.js";
export { densityAt } from "./density.js";
export { type Equilibrium, onePhase, type SearchRange } from "./flash.js";
export { flashDensityEnergy } from "./flash-density-energy.js";
export { flashEnthalpyEntropy } from "./flash-enthalpy-entropy.js";
export { flashPressureEnthalpy, flashPressureEntropy } from "./flash-pressure.js";
export { flashTemperatureDensity } from "./flash-temperature-density.js";
export * from "./mixture/index.js";
export { criticalMargin, type Model, modelFor } from "./model.js";
export {
  type SaturationPoint,
  saturationAtEnd,
  saturationAtPressure,
  saturationAtTemperature,
  saturationSlope,
} from "./saturation.js";
