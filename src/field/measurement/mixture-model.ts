import type { Mixing, Refrigerant } from "../../state/index.js";
import type { Pressure } from "../../units/index.js";
import { halfWidthUncertainty } from "./instrument.js";
import { shownUncertainty } from "./shown.js";
import type { UncertainInput } from "./uncertainty.js";

/** How well a blend's mixture model is known, in words: `regressed, bubble and dew pressures may be 1.4 % off`. */
export function mixtureModelWords({ grade, deviation }: Mixing): string {
  return `${grade}, bubble and dew pressures may be ${shownUncertainty(100 * deviation)} % off`;
}

/**
 * What the mixture model of a blend adds to the uncertainty of what follows from a bubble or dew pressure. Its stated
 * deviation is taken as the half-width of a rectangle.
 *
 * @param sensitivity - Of the result, for each Pa of that pressure.
 */
export function mixtureModelInput(
  { designation }: Refrigerant,
  mixing: Mixing,
  pressure: Pressure,
  sensitivity: number,
): UncertainInput {
  return {
    input: "mixture-model",
    standardUncertainty: halfWidthUncertainty(mixing.deviation * pressure),
    unit: "Pa",
    sensitivity,
    because: `mixture model of ${designation}: ${mixtureModelWords(mixing)}`,
  };
}
