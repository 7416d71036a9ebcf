import { refrigerant } from "../../src/state/index.js";
import type { Comparison } from "./comparisons.js";
import { curvePressure, pseudoPure } from "./pseudo-pure.js";

/** Where the published curves come from, as `data/references/` has them. */
const curveSource =
  "Lemmon, E. W., Int. J. Thermophys. 24 (2003) 991, bubble and dew curves of the blends as one fluid";

/**
 * How far bubble and dew pressures from the components may lie from the curves, relative; no source. Worst seen: 0.025 %,
 * the bubble line of R-407C at 347.65 K.
 */
const allowed = 5e-4;

/** −60 °C, K. */
const lowest = 213.15;
/** K. */
const step = 0.25;

/** The temperatures at which a blend is compared, up to 98 % of its published critical temperature, K. */
export function curveTemperatures(designation: string): readonly number[] {
  const highest = 0.98 * pseudoPure(designation).fluid.critical.temperature;
  const steps = Math.ceil((highest - lowest) / step);
  return Array.from({ length: steps + 1 }, (_, index) => Math.min(lowest + index * step, highest));
}

/** Bubble and dew pressures of a blend from its components, beside its published curves. */
export function compareCurves(designation: string): readonly Comparison[] {
  const curves = pseudoPure(designation);
  const asked = refrigerant(designation);
  return (["bubble", "dew"] as const).flatMap((line) =>
    curveTemperatures(designation).map((temperature): Comparison => {
      const computed = asked[line]({ temperature }).pressure;
      const expected = curvePressure(curves[line], temperature);
      return {
        id: `${designation} ${line} curve`,
        fluid: designation,
        equation: asked.equation,
        source: curveSource,
        status: "recalled",
        region: `${line} line`,
        property: "pressure",
        inputs: { temperature },
        expected,
        computed,
        deviation: computed / expected - 1,
        isRelative: true,
        isFitted: false,
        allowed,
      };
    }),
  );
}
