import { edgeHeatCapacity, internalEnergy, isochoricHeatCapacity } from "../equation/index.js";
import { NoSuchStateError, NotConvergedError } from "../units/index.js";
import { type Equilibrium, evaluate, type SearchRange, sameness } from "./flash.js";
import { flashTemperatureDensity } from "./flash-temperature-density.js";
import { criticalMargin, type Model } from "./model.js";
import { findRoot } from "./root.js";
import { saturationSlope } from "./saturation.js";

/**
 * The state at a molar density and a molar internal energy (without integration constant), J/mol.
 *
 * At constant volume the energy rises with temperature through both phases, so one search serves all.
 */
export function flashDensityEnergy(model: Model, rho: number, u: number, range: SearchRange): Equilibrium {
  const { R } = model.equation;
  let miss = Number.NaN;
  const energyAt = (T: number, density: number): number =>
    R * T * internalEnergy(evaluate(model, T, density));
  const sample = (T: number, out: { value: number; slope: number }): void => {
    const found = flashTemperatureDensity(model, T, rho);
    if (found.phases === 1) {
      out.value = energyAt(T, rho) - u;
      miss = Math.abs(out.value) / (R * T);
      out.slope = R * isochoricHeatCapacity(model.at);
      return;
    }
    const { saturation, quality } = found;
    const { liquidDensity, vapourDensity } = saturation;
    const slope = saturationSlope(model, saturation) / R;
    const liquid = energyAt(T, liquidDensity);
    const liquidShare = edgeHeatCapacity(model.at, slope / liquidDensity);
    const vapour = energyAt(T, vapourDensity);
    const vapourShare = edgeHeatCapacity(model.at, slope / vapourDensity);
    out.value = liquid + quality * (vapour - liquid) - u;
    miss = Math.abs(out.value) / (R * T);
    out.slope = R * (liquidShare + quality * (vapourShare - liquidShare));
  };
  const middle = Math.min(model.critical.temperature, (range.minimum + range.maximum) / 2);
  const T = findRoot(sample, range.minimum, range.maximum, middle);
  const { inputs } = range;
  if (Number.isFinite(T)) {
    if (miss <= sameness) return flashTemperatureDensity(model, T, rho);
    throw new NoSuchStateError(
      inputs,
      `it lies less than ${criticalMargin} K below the critical temperature, where phases are not told apart`,
    );
  }
  if (T === Number.NEGATIVE_INFINITY) {
    throw new NoSuchStateError(inputs, `its temperature would lie below ${range.minimum} K`);
  }
  if (T === Number.POSITIVE_INFINITY) {
    throw new NoSuchStateError(inputs, `its temperature would lie above ${range.maximum} K`);
  }
  throw new NotConvergedError(`the temperature of ${model.equation.fluid.designation}`, inputs);
}
