import { attempt, type Outcome, requireObject } from "../../units/index.js";
import { checkLineReading, evaluateLineReading, type LineReading, type LineResult } from "./line-reading.js";

/**
 * Subcooling, T_bubble(p) − T_line, with its uncertainty.
 *
 * Bubble side of the glide: the last bubble of a blend condenses there.
 *
 * @param reading - Gauge pressure (Pa), pipe temperature (K), site and instruments; at a liquid line upstream of the
 * expansion device.
 * @returns Subcooling in K with expanded uncertainty (k = 2), budget and warnings.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for any other port: small splits with the
 * expansion device outdoors have no port on a liquid line, and subcooling cannot be read on them; the problem then has the
 * reason `no-liquid-port`.
 * @throws {@link OutOfRangeError} `out-of-range` where the refrigerant has no bubble point at that pressure.
 * @source definition; JCGM 100:2008 (GUM) for the uncertainty
 */
export function subcooling(reading: LineReading): LineResult {
  requireObject("", reading, "a line reading");
  checkLineReading(
    reading,
    ["liquid-line"],
    "liquid-line, upstream of the expansion device; a unit without such a port shows no subcooling",
    "no-liquid-port",
  );
  return evaluateLineReading(reading, "subcooling", "bubble", -1);
}

/** As {@link subcooling}, without throwing. */
export function trySubcooling(reading: LineReading): Outcome<LineResult> {
  return attempt(() => subcooling(reading));
}
