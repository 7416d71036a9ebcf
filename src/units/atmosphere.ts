import { attempt, InputError, type Outcome, OutOfRangeError, type Problem, requireFinite } from "./errors.js";
import type { Length, Pressure, PressureDifference } from "./flavour.js";
import { formatNumber } from "./print.js";

/*
 * ISO 2533:1975, Standard Atmosphere: the layer in which temperature falls evenly with altitude. The constants were
 * written down from memory of the standard, not re-read; the table values in tests/units/atmosphere.test.ts agree.
 */

/** Pressure at mean sea level, Pa. */
const SEA_LEVEL_PRESSURE = 101325;
/** Temperature at mean sea level, K. */
const SEA_LEVEL_TEMPERATURE = 288.15;
/** Fall of temperature with geopotential altitude, K/m. */
const LAPSE_RATE = 0.0065;
/** Standard gravity over the gas constant of air and the lapse rate, g/(R β): 9.80665 m/s2, 287.05287 J/(kg K). */
const EXPONENT = 9.80665 / (287.05287 * LAPSE_RATE);
/** Nominal radius of the earth, m. */
const EARTH_RADIUS = 6356766;
/** Ends of the layer, geopotential m. */
const LOWEST_ALTITUDE = -5000;
const HIGHEST_ALTITUDE = 11000;

/*
 * Half-widths of rectangular distributions, Pa: common practice, no source. The weather moves the pressure of a place by
 * 1 to 3 kPa about the standard; a barometer read on the spot is trusted to 0.2 kPa.
 */
const WEATHER_HALF_WIDTH = 3000;
const BAROMETER_HALF_WIDTH = 200;
/** How far the air may be from the temperature of the standard atmosphere, K; common practice, no source. */
const AIR_OFF_STANDARD = 20;

/*
 * What a barometer can show, Pa; it is there to catch hPa, mmHg or psi handed over as Pa. Station: ISO 2533 at 9000 m
 * and at −4000 m, higher than the highest mountain and deeper than the deepest mine, rounded outwards. Sea level: a
 * little outside the extremes on record, 870 hPa and 1085 hPa (from memory of the archive of weather extremes of the
 * World Meteorological Organization).
 */
const STATION_RANGE = [30e3, 160e3] as const;
const SEA_LEVEL_RANGE = [85e3, 110e3] as const;

/**
 * Geopotential altitude of a height above mean sea level, H = r h/(r + h): the one that ISO 2533 counts in.
 *
 * @param geometricAltitude - As maps and satellite receivers give it, m. The two differ by 0.16 m at 1000 m.
 * @throws {@link InputError} `malformed-input`: not finite.
 * @throws {@link OutOfRangeError} `out-of-range`: outside −5000 to 11 000 m geopotential.
 * @source ISO 2533:1975, Standard Atmosphere
 */
export function geopotentialAltitude(geometricAltitude: Length): Length {
  requireFinite("geometricAltitude", geometricAltitude);
  return inLayer((EARTH_RADIUS * geometricAltitude) / (EARTH_RADIUS + geometricAltitude));
}

/**
 * Height above mean sea level of a geopotential altitude, h = r H/(r − H).
 *
 * @param altitude - Geopotential, −5000 to 11 000 m.
 * @throws {@link InputError} `malformed-input`: not finite.
 * @throws {@link OutOfRangeError} `out-of-range`: outside that range.
 * @source ISO 2533:1975, Standard Atmosphere
 */
export function geometricAltitude(altitude: Length): Length {
  requireFinite("altitude", altitude);
  const H = inLayer(altitude);
  return (EARTH_RADIUS * H) / (EARTH_RADIUS - H);
}

/**
 * Pressure of the standard atmosphere at an altitude, p = p₀ (1 − β H/T₀)^n with n = g/(R β).
 *
 * @param altitude - Geopotential, −5000 to 11 000 m; for a height from a map see {@link geopotentialAltitude}.
 * @returns Absolute pressure, Pa. The weather moves the true one by 1 to 3 kPa: see {@link localAtmosphere}.
 * @throws {@link InputError} `malformed-input`: not finite.
 * @throws {@link OutOfRangeError} `out-of-range`: outside the layer.
 * @source ISO 2533:1975, Standard Atmosphere
 * @example
 * ```ts
 * pressureAtAltitude(1000) // → 89874.56 Pa
 * ```
 */
export function pressureAtAltitude(altitude: Length): Pressure {
  requireFinite("altitude", altitude);
  return layerPressure(inLayer(altitude));
}

/** As {@link pressureAtAltitude}, without throwing. */
export function tryPressureAtAltitude(altitude: Length): Outcome<Pressure> {
  return attempt(() => pressureAtAltitude(altitude));
}

/**
 * Altitude at which the standard atmosphere has a pressure, H = (T₀/β) (1 − (p/p₀)^(1/n)).
 *
 * @param pressure - Absolute, Pa: 22.63 to 177.7 kPa, the ends of the layer.
 * @returns Geopotential altitude, m.
 * @throws {@link InputError} `malformed-input`: not finite.
 * @throws {@link OutOfRangeError} `out-of-range`: outside the layer.
 * @source ISO 2533:1975, Standard Atmosphere
 */
export function altitudeAtPressure(pressure: Pressure): Length {
  requireFinite("pressure", pressure);
  const minimum = layerPressure(HIGHEST_ALTITUDE);
  const maximum = layerPressure(LOWEST_ALTITUDE);
  if (!(pressure >= minimum && pressure <= maximum)) {
    throw new OutOfRangeError({
      quantity: "pressure",
      value: pressure,
      minimum,
      maximum,
      unit: "Pa",
      subject: LAYER,
    });
  }
  return (SEA_LEVEL_TEMPERATURE / LAPSE_RATE) * (1 - (pressure / SEA_LEVEL_PRESSURE) ** (1 / EXPONENT));
}

/** As {@link altitudeAtPressure}, without throwing. */
export function tryAltitudeAtPressure(pressure: Pressure): Outcome<Length> {
  return attempt(() => altitudeAtPressure(pressure));
}

/**
 * Pressure of a place from the pressure that the weather service reports for it, which is reduced to sea level:
 * p = p₀ ((p_sea/p₀)^(1/n) − β H/T₀)^n.
 *
 * This undoes the reduction of aviation (QNH), which uses the standard atmosphere. A forecast may use the true
 * temperature of the air (QFF); 20 K away from the standard, that is worth 1 kPa at 1500 m.
 *
 * @param seaLevelPressure - As reported, Pa, 85 to 110 kPa.
 * @param altitude - Geopotential altitude of the place, −5000 to 11 000 m.
 * @throws {@link InputError} `malformed-input`: not finite, or no pressure ever seen at sea level.
 * @throws {@link OutOfRangeError} `out-of-range`: altitude outside the layer.
 * @source ISO 2533:1975, Standard Atmosphere, solved for the pressure of the station
 */
export function stationPressure(seaLevelPressure: Pressure, altitude: Length): Pressure {
  const problems = [
    ...outside("seaLevelPressure", seaLevelPressure, SEA_LEVEL_RANGE),
    ...notFinite("altitude", altitude, "m"),
  ];
  if (problems.length > 0) throw new InputError(problems);
  return reducedBack(seaLevelPressure, inLayer(altitude));
}

/** As {@link stationPressure}, without throwing. */
export function tryStationPressure(seaLevelPressure: Pressure, altitude: Length): Outcome<Pressure> {
  return attempt(() => stationPressure(seaLevelPressure, altitude));
}

/** What is known about the air pressure of a place. Altitudes are heights above mean sea level, as on a map, m. */
export type SiteAtmosphere =
  | {
      /** Only the altitude is known; the weather is not. */
      readonly from: "altitude";
      readonly altitude: Length;
      /** Half-width of the weather about the standard atmosphere, Pa; 3 kPa unless given. */
      readonly halfWidth?: PressureDifference;
    }
  | {
      /** A barometer was read on the spot. */
      readonly from: "station-barometer";
      /** As read, absolute, Pa. */
      readonly pressure: Pressure;
      /** Limit of error of the barometer, Pa; 0.2 kPa unless given. */
      readonly halfWidth?: PressureDifference;
    }
  | {
      /** A pressure reduced to sea level, as weather services publish it, and the altitude. */
      readonly from: "sea-level-barometer";
      /** As reported, absolute, Pa. */
      readonly pressure: Pressure;
      readonly altitude: Length;
      /** Limit of error of the report and its reduction, Pa; unless given 0.2 kPa, and more with the altitude. */
      readonly halfWidth?: PressureDifference;
    };

/** The air pressure of a place, how sure it is, and why. */
export interface LocalAtmosphere {
  /** Absolute, Pa. */
  readonly pressure: Pressure;
  /** Standard uncertainty, Pa: half-width over √3. */
  readonly standardUncertainty: PressureDifference;
  /** The rule and the numbers that it rests on, in words. */
  readonly because: string;
}

/**
 * Air pressure of a place from what is known about it. There is no default site: whoever means sea level says so.
 *
 * @returns Pressure and standard uncertainty, Pa, and the reason. Half-widths not given are common practice, without a
 * source: ±3 kPa from altitude alone, ±0.2 kPa from a barometer, and from sea level besides what air 20 K off the
 * standard makes of the column in between, p (g₀ H/(R T₀)) 20 K/T₀; all are taken as rectangular.
 * @throws {@link InputError} `malformed-input`: every field that is missing or cannot be; among them a barometer
 * reading in hPa or mmHg where Pa belong.
 * @throws {@link OutOfRangeError} `out-of-range`: altitude outside the layer.
 * @example
 * ```ts
 * localAtmosphere({ from: "altitude", altitude: 2000 }).pressure // → 79501.4 Pa
 * ```
 */
export function localAtmosphere(site: SiteAtmosphere): LocalAtmosphere {
  const problems = siteProblems(site);
  if (problems.length > 0) throw new InputError(problems);
  const { pressure, because } = pressureOf(site);
  const halfWidth = site.halfWidth ?? usualHalfWidth(site, pressure);
  const whose = site.halfWidth === undefined ? "common practice, no source" : "as given";
  return {
    pressure,
    standardUncertainty: halfWidth / Math.sqrt(3),
    because: `${because}: ${kilopascals(pressure)}, ±${kilopascals(halfWidth)} (rectangular; ${whose})`,
  };
}

/** As {@link localAtmosphere}, without throwing. */
export function tryLocalAtmosphere(site: SiteAtmosphere): Outcome<LocalAtmosphere> {
  return attempt(() => localAtmosphere(site));
}

function usualHalfWidth(site: SiteAtmosphere, pressure: number): number {
  if (site.from === "altitude") return WEATHER_HALF_WIDTH;
  if (site.from === "station-barometer") return BAROMETER_HALF_WIDTH;
  // The exponent of the layer is g₀/(Rβ), so g₀ H/(R T₀) is EXPONENT · β H/T₀.
  const column =
    (EXPONENT * LAPSE_RATE * Math.abs(geopotentialAltitude(site.altitude))) / SEA_LEVEL_TEMPERATURE;
  return BAROMETER_HALF_WIDTH + (pressure * column * AIR_OFF_STANDARD) / SEA_LEVEL_TEMPERATURE;
}

const LAYER = "the lower layer of ISO 2533";

function pressureOf(site: SiteAtmosphere): { pressure: number; because: string } {
  if (site.from === "station-barometer") {
    return { pressure: site.pressure, because: "read on a barometer on the spot" };
  }
  const place = `${formatNumber(site.altitude, 0)} m above sea level`;
  const H = geopotentialAltitude(site.altitude);
  if (site.from === "altitude") {
    return { pressure: layerPressure(H), because: `standard atmosphere of ISO 2533, ${place}` };
  }
  return {
    pressure: reducedBack(site.pressure, H),
    because: `${kilopascals(site.pressure)} at sea level taken up by ISO 2533 to ${place}`,
  };
}

// From here on the symbols of ISO 2533: H is the geopotential altitude, m.

function layerPressure(H: number): number {
  return SEA_LEVEL_PRESSURE * (1 - (LAPSE_RATE * H) / SEA_LEVEL_TEMPERATURE) ** EXPONENT;
}

function reducedBack(seaLevelPressure: number, H: number): number {
  const warmth = (seaLevelPressure / SEA_LEVEL_PRESSURE) ** (1 / EXPONENT);
  return SEA_LEVEL_PRESSURE * (warmth - (LAPSE_RATE * H) / SEA_LEVEL_TEMPERATURE) ** EXPONENT;
}

function inLayer(H: number): number {
  if (H >= LOWEST_ALTITUDE && H <= HIGHEST_ALTITUDE) return H;
  throw new OutOfRangeError({
    quantity: "geopotential altitude",
    value: H,
    minimum: LOWEST_ALTITUDE,
    maximum: HIGHEST_ALTITUDE,
    unit: "m",
    subject: LAYER,
  });
}

function siteProblems(site: SiteAtmosphere): Problem[] {
  if (typeof site !== "object" || site === null) {
    return [{ path: "", value: site, expected: "the description of a site" }];
  }
  const problems: Problem[] = [];
  switch (site.from) {
    case "altitude":
      problems.push(...notFinite("altitude", site.altitude, "m"));
      break;
    case "station-barometer":
      problems.push(...outside("pressure", site.pressure, STATION_RANGE));
      break;
    case "sea-level-barometer":
      problems.push(...outside("pressure", site.pressure, SEA_LEVEL_RANGE));
      problems.push(...notFinite("altitude", site.altitude, "m"));
      break;
    default: {
      const { from } = site as { readonly from?: unknown };
      return [{ path: "from", value: from, expected: "altitude, station-barometer or sea-level-barometer" }];
    }
  }
  const fields = {
    altitude: ["altitude"],
    "station-barometer": ["pressure"],
    "sea-level-barometer": ["pressure", "altitude"],
  };
  const known = ["from", "halfWidth", ...fields[site.from]];
  for (const [name, value] of Object.entries(site)) {
    if (!known.includes(name))
      problems.push({ path: name, value, expected: `no such field; one of ${known.join(", ")}` });
  }
  const { halfWidth } = site;
  if (halfWidth !== undefined && !(Number.isFinite(halfWidth) && halfWidth >= 0)) {
    problems.push({
      path: "halfWidth",
      value: halfWidth,
      expected: "a pressure difference in Pa, 0 or more",
    });
  }
  return problems;
}

function notFinite(path: string, value: number, unit: string): Problem[] {
  return Number.isFinite(value) ? [] : [{ path, value, expected: `a finite number of ${unit}` }];
}

function outside(path: string, value: number, [low, high]: readonly [number, number]): Problem[] {
  const good = typeof value === "number" && value >= low && value <= high;
  return good ? [] : [{ path, value, expected: `an absolute air pressure in Pa, ${low} to ${high}` }];
}

function kilopascals(pressure: number): string {
  return `${formatNumber(pressure / 1000, 2)} kPa`;
}
