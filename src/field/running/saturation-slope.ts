import type { Refrigerant, Saturation } from "../../state/index.js";
import { InputCheck, type Pressure, type Temperature } from "../../units/index.js";

/** Which end of the glide: dew for superheat, bubble for subcooling; a pure refrigerant has one curve. */
export type SaturationEnd = "dew" | "bubble";

/** A point of a saturation curve with its slope. */
export interface SaturationSlope {
  /** Saturation temperature, K. */
  readonly temperature: Temperature;
  /** dT/dp along the curve, K/Pa. */
  readonly slope: number;
}

/** Relative step of the central difference for blends: its error, step², and the noise of the solver stay below 1e-6. */
const STEP = 1e-3;

/**
 * Saturation temperature at a pressure, with dT/dp along the curve.
 *
 * For one component by the Clapeyron equation, dT/dp = T (v″ − v′)/(h″ − h′), which is exact. For a blend the phases
 * in equilibrium differ in composition and Clapeyron does not hold along the dew or bubble line: there it is a
 * central difference.
 *
 * @param refrigerant - Pure or blend.
 * @param end - Which curve.
 * @param pressure - Absolute, Pa.
 * @throws {@link OutOfRangeError} `out-of-range` beyond the curve.
 */
export function saturationSlope(
  refrigerant: Refrigerant,
  end: SaturationEnd,
  pressure: Pressure,
): SaturationSlope {
  const check = new InputCheck();
  check.oneOf("end", end, ["bubble", "dew"]);
  check.finish();
  const at = (p: Pressure): Saturation => refrigerant[end]({ pressure: p });
  const { temperature, liquid, vapour, latentHeat } = at(pressure);
  const isPure = Object.keys(vapour.composition).length === 1;
  const slope = isPure
    ? (temperature * (1 / vapour.density - 1 / liquid.density)) / latentHeat
    : (at(pressure * (1 + STEP)).temperature - at(pressure * (1 - STEP)).temperature) / (2 * STEP * pressure);
  return { temperature, slope };
}
