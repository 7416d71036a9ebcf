import { attempt, type Outcome, requireObject } from "../../units/index.js";
import { checkLineReading, evaluateLineReading, type LineReading, type LineResult } from "./line-reading.js";

/**
 * Superheat, T_line − T_dew(p), with its uncertainty.
 *
 * Dew side of the glide: the last drop of a blend evaporates there. The slope dT/dp turns pressure errors into kelvin.
 *
 * @param reading - Gauge pressure (Pa), pipe temperature (K), site and instruments; at the low side.
 * @returns Superheat in K with expanded uncertainty (k = 2), budget and warnings.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a port that is not on the low side in
 * this mode, as in heating the gas line of a heat pump, which is the discharge; the problem then has the reason
 * `port-not-on-low-side`.
 * @throws {@link OutOfRangeError} `out-of-range` where the refrigerant has no dew point at that pressure.
 * @source definition; JCGM 100:2008 (GUM) for the uncertainty
 *
 * @example
 * ```ts
 * const result = superheat({
 *   refrigerant: refrigerant("R-32"),
 *   mode: "cooling",
 *   port: "gas-line",
 *   pressure: megapascalGauge(0.8),
 *   lineTemperature: celsius(10),
 *   atmosphere: localAtmosphere({ from: "altitude", altitude: 0 }),
 *   gauge: { accuracy: { kind: "percent-of-full-scale", percent: 0.5, fullScale: megapascalGauge(5) } },
 *   thermometer: { accuracy: { kind: "pipe-probe", probe: "clamp" } },
 * });
 * result.value; // → 6.74 K
 * result.expandedUncertainty; // → 1.55 K
 * ```
 */
export function superheat(reading: LineReading): LineResult {
  requireObject("", reading, "a line reading");
  if (reading.mode === "cooling") {
    checkLineReading(
      reading,
      ["compressor-suction", "gas-line"],
      "a port on the suction side: compressor-suction or gas-line",
      "port-not-on-low-side",
    );
  } else {
    checkLineReading(
      reading,
      ["compressor-suction"],
      "compressor-suction: in heating the gas line is on the discharge side",
      "port-not-on-low-side",
    );
  }
  return evaluateLineReading(reading, "superheat", "dew", 1);
}

/** As {@link superheat}, without throwing. */
export function trySuperheat(reading: LineReading): Outcome<LineResult> {
  return attempt(() => superheat(reading));
}
