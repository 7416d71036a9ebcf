import { attempt, InputError, type Outcome, type Problem } from "./errors.js";
import type { GaugePressure, Pressure, PressureDifference } from "./flavour.js";

/**
 * Absolute pressure behind a gauge reading, p = p_gauge + p_local.
 *
 * @param reading - What the gauge shows, Pa; negative in a vacuum. A needle with a vented case and a digital manifold
 * zeroed in open air both read relative to the atmosphere of the place and the hour.
 * @param localAtmosphere - Pressure of the air around the gauge, Pa, above 0; the function of that name finds it. There
 * is no default: taking sea level on a mountain is a mistake worth 20 kPa at 2000 m.
 * @returns Absolute pressure, Pa, 0 or more.
 * @throws {@link InputError} `malformed-input`: not finite, or a vacuum deeper than the local atmosphere, as a scale for
 * sea level or an unset zero shows it.
 */
export function toAbsolute(reading: GaugePressure, localAtmosphere: Pressure): Pressure {
  refuseAny([...notFinite("reading", reading), ...notPositive("localAtmosphere", localAtmosphere)]);
  return above("reading", reading, reading, localAtmosphere, `${-localAtmosphere} Pa or more`);
}

/** As {@link toAbsolute}, without throwing. */
export function tryToAbsolute(reading: GaugePressure, localAtmosphere: Pressure): Outcome<Pressure> {
  return attempt(() => toAbsolute(reading, localAtmosphere));
}

/**
 * What a gauge shows at an absolute pressure, p_gauge = p − p_local.
 *
 * @param pressure - Absolute pressure, Pa, 0 or more.
 * @param localAtmosphere - Pressure of the air around the gauge, Pa, above 0.
 * @returns Gauge pressure, Pa; negative in a vacuum.
 * @throws {@link InputError} `malformed-input`: not finite, or a pressure that cannot be.
 */
export function toGauge(pressure: Pressure, localAtmosphere: Pressure): GaugePressure {
  const problems = notFinite("pressure", pressure);
  if (problems.length === 0 && pressure < 0) {
    problems.push({ path: "pressure", value: pressure, expected: "an absolute pressure in Pa, 0 or more" });
  }
  refuseAny([...problems, ...notPositive("localAtmosphere", localAtmosphere)]);
  return pressure - localAtmosphere;
}

/** As {@link toGauge}, without throwing. */
export function tryToGauge(pressure: Pressure, localAtmosphere: Pressure): Outcome<GaugePressure> {
  return attempt(() => toGauge(pressure, localAtmosphere));
}

/**
 * Absolute pressure behind a vacuum printed as a positive number, p = p_local − v: compound dials and old scales in
 * cmHg or inHg count downwards from the atmosphere.
 *
 * @param vacuum - How far below the atmosphere, Pa, 0 or more.
 * @param localAtmosphere - Pressure of the air around the gauge, Pa, above 0; the deepest vacuum there is.
 * @returns Absolute pressure, Pa, 0 or more.
 * @throws {@link InputError} `malformed-input`: not finite, negative, or deeper than the local atmosphere.
 */
export function fromVacuumReading(vacuum: PressureDifference, localAtmosphere: Pressure): Pressure {
  const problems = notFinite("vacuum", vacuum);
  if (problems.length === 0 && vacuum < 0) {
    problems.push({ path: "vacuum", value: vacuum, expected: "a depth in Pa, 0 or more" });
  }
  refuseAny([...problems, ...notPositive("localAtmosphere", localAtmosphere)]);
  return above("vacuum", vacuum, -vacuum, localAtmosphere, `0 to ${localAtmosphere} Pa`);
}

/** As {@link fromVacuumReading}, without throwing. */
export function tryFromVacuumReading(
  vacuum: PressureDifference,
  localAtmosphere: Pressure,
): Outcome<Pressure> {
  return attempt(() => fromVacuumReading(vacuum, localAtmosphere));
}

/**
 * Rounding of a unit conversion can carry a full vacuum this far below nothing, relative to the atmosphere. No reading
 * is as fine as that.
 */
const ROUNDING = 1e-13;

function above(path: string, received: number, gauge: number, atmosphere: number, range: string): Pressure {
  const absolute = gauge + atmosphere;
  if (absolute >= 0) return absolute;
  if (absolute >= -ROUNDING * atmosphere) return 0;
  const expected = `${range}: no vacuum is deeper than the local atmosphere (check its value and the zero of the gauge)`;
  throw new InputError([{ path, value: received, expected, reason: "vacuum-deeper-than-atmosphere" }]);
}

function notFinite(path: string, value: number): Problem[] {
  return Number.isFinite(value) ? [] : [{ path, value, expected: "a finite number of Pa" }];
}

function notPositive(path: string, value: number): Problem[] {
  const good = Number.isFinite(value) && value > 0;
  return good ? [] : [{ path, value, expected: "an absolute pressure in Pa, above 0" }];
}

function refuseAny(problems: readonly Problem[]): void {
  if (problems.length > 0) throw new InputError(problems);
}
