import type { InputError } from "./errors.js";
import type { Pressure } from "./flavour.js";
import type { parsePressure } from "./parse-pressure.js";
import {
  ABSOLUTE_PRESSURE,
  ATMOSPHERE,
  BAR,
  CENTIMETRE_OF_MERCURY,
  GAUGE_PRESSURE_UNITS,
  HECTOPASCAL,
  INCH_OF_MERCURY,
  INCH_OF_WATER,
  KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE,
  KILOPASCAL,
  MEGAPASCAL,
  METRE_OF_WATER,
  MICRON,
  MILLIBAR,
  MILLIMETRE_OF_MERCURY,
  PASCAL,
  PRESSURE_UNITS,
  type PressureUnit,
  PSI,
  TORR,
} from "./pressure-unit.js";
import { type FormatOptions, format } from "./print.js";
import { from, into } from "./unit.js";

/** Absolute pressure, Pa, from Pa, 0 or more. */
export const pascal: (value: number) => Pressure = /* @__PURE__ */ from(ABSOLUTE_PRESSURE, PASCAL);
/** Absolute pressure, Pa, from hPa, 0 or more. */
export const hectopascal: (value: number) => Pressure = /* @__PURE__ */ from(ABSOLUTE_PRESSURE, HECTOPASCAL);
/** Absolute pressure, Pa, from kPa, 0 or more. */
export const kilopascal: (value: number) => Pressure = /* @__PURE__ */ from(ABSOLUTE_PRESSURE, KILOPASCAL);
/** Absolute pressure, Pa, from MPa, 0 or more. */
export const megapascal: (value: number) => Pressure = /* @__PURE__ */ from(ABSOLUTE_PRESSURE, MEGAPASCAL);
/** Absolute pressure, Pa, from bar, 0 or more. */
export const bar: (value: number) => Pressure = /* @__PURE__ */ from(ABSOLUTE_PRESSURE, BAR);
/** Absolute pressure, Pa, from mbar, 0 or more. */
export const millibar: (value: number) => Pressure = /* @__PURE__ */ from(ABSOLUTE_PRESSURE, MILLIBAR);
/** Absolute pressure, Pa, from psi (pound-force per square inch), 0 or more. */
export const psi: (value: number) => Pressure = /* @__PURE__ */ from(ABSOLUTE_PRESSURE, PSI);
/** Absolute pressure, Pa, from kgf/cm2, the "kilo" of many dials (98 066.5 Pa, exact), 0 or more. */
export const kilogramForcePerSquareCentimetre: (value: number) => Pressure = /* @__PURE__ */ from(
  ABSOLUTE_PRESSURE,
  KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE,
);
/** Absolute pressure, Pa, from standard atmospheres (101 325 Pa), 0 or more. */
export const atmosphere: (value: number) => Pressure = /* @__PURE__ */ from(ABSOLUTE_PRESSURE, ATMOSPHERE);
/** Absolute pressure, Pa, from Torr (1/760 of a standard atmosphere), 0 or more. */
export const torr: (value: number) => Pressure = /* @__PURE__ */ from(ABSOLUTE_PRESSURE, TORR);
/** Absolute pressure, Pa, from micron (1/1000 Torr), the scale of vacuum gauges, 0 or more. */
export const micron: (value: number) => Pressure = /* @__PURE__ */ from(ABSOLUTE_PRESSURE, MICRON);
/** Absolute pressure, Pa, from mmHg (conventional: 13.5951 g/cm3 and 9.80665 m/s2), 0 or more. */
export const millimetreOfMercury: (value: number) => Pressure = /* @__PURE__ */ from(
  ABSOLUTE_PRESSURE,
  MILLIMETRE_OF_MERCURY,
);
/** Absolute pressure, Pa, from cmHg (10 mmHg), 0 or more. */
export const centimetreOfMercury: (value: number) => Pressure = /* @__PURE__ */ from(
  ABSOLUTE_PRESSURE,
  CENTIMETRE_OF_MERCURY,
);
/** Absolute pressure, Pa, from inHg (25.4 mmHg), 0 or more. */
export const inchOfMercury: (value: number) => Pressure = /* @__PURE__ */ from(
  ABSOLUTE_PRESSURE,
  INCH_OF_MERCURY,
);
/** Absolute pressure, Pa, from mH2O (conventional: 1 g/cm3 and 9.80665 m/s2), 0 or more. */
export const metreOfWater: (value: number) => Pressure = /* @__PURE__ */ from(
  ABSOLUTE_PRESSURE,
  METRE_OF_WATER,
);
/** Absolute pressure, Pa, from inH2O (25.4 mm of water), 0 or more. */
export const inchOfWater: (value: number) => Pressure = /* @__PURE__ */ from(
  ABSOLUTE_PRESSURE,
  INCH_OF_WATER,
);

/** Absolute pressure in Pa. */
export const inPascal: (pressure: Pressure) => number = /* @__PURE__ */ into(ABSOLUTE_PRESSURE, PASCAL);
/** Absolute pressure in hPa. */
export const inHectopascal: (pressure: Pressure) => number = /* @__PURE__ */ into(
  ABSOLUTE_PRESSURE,
  HECTOPASCAL,
);
/** Absolute pressure in kPa. */
export const inKilopascal: (pressure: Pressure) => number = /* @__PURE__ */ into(
  ABSOLUTE_PRESSURE,
  KILOPASCAL,
);
/** Absolute pressure in MPa. */
export const inMegapascal: (pressure: Pressure) => number = /* @__PURE__ */ into(
  ABSOLUTE_PRESSURE,
  MEGAPASCAL,
);
/** Absolute pressure in bar. */
export const inBar: (pressure: Pressure) => number = /* @__PURE__ */ into(ABSOLUTE_PRESSURE, BAR);
/** Absolute pressure in mbar. */
export const inMillibar: (pressure: Pressure) => number = /* @__PURE__ */ into(ABSOLUTE_PRESSURE, MILLIBAR);
/** Absolute pressure in psi. */
export const inPsi: (pressure: Pressure) => number = /* @__PURE__ */ into(ABSOLUTE_PRESSURE, PSI);
/** Absolute pressure in kgf/cm2. */
export const inKilogramForcePerSquareCentimetre: (pressure: Pressure) => number = /* @__PURE__ */ into(
  ABSOLUTE_PRESSURE,
  KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE,
);
/** Absolute pressure in standard atmospheres. */
export const inAtmosphere: (pressure: Pressure) => number = /* @__PURE__ */ into(
  ABSOLUTE_PRESSURE,
  ATMOSPHERE,
);
/** Absolute pressure in Torr. */
export const inTorr: (pressure: Pressure) => number = /* @__PURE__ */ into(ABSOLUTE_PRESSURE, TORR);
/** Absolute pressure in micron. */
export const inMicron: (pressure: Pressure) => number = /* @__PURE__ */ into(ABSOLUTE_PRESSURE, MICRON);
/** Absolute pressure in mmHg. */
export const inMillimetreOfMercury: (pressure: Pressure) => number = /* @__PURE__ */ into(
  ABSOLUTE_PRESSURE,
  MILLIMETRE_OF_MERCURY,
);
/** Absolute pressure in cmHg. */
export const inCentimetreOfMercury: (pressure: Pressure) => number = /* @__PURE__ */ into(
  ABSOLUTE_PRESSURE,
  CENTIMETRE_OF_MERCURY,
);
/** Absolute pressure in inHg. */
export const inInchOfMercury: (pressure: Pressure) => number = /* @__PURE__ */ into(
  ABSOLUTE_PRESSURE,
  INCH_OF_MERCURY,
);
/** Absolute pressure in mH2O. */
export const inMetreOfWater: (pressure: Pressure) => number = /* @__PURE__ */ into(
  ABSOLUTE_PRESSURE,
  METRE_OF_WATER,
);
/** Absolute pressure in inH2O. */
export const inInchOfWater: (pressure: Pressure) => number = /* @__PURE__ */ into(
  ABSOLUTE_PRESSURE,
  INCH_OF_WATER,
);

/**
 * Prints an absolute pressure with its unit and kind, `9.50 bar abs`; {@link parsePressure} reads it back. Torr and
 * micron stand without `abs`, because their scales are absolute anyway.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatPressure(pressure: Pressure, options: FormatOptions<PressureUnit>): string {
  const text = format(ABSOLUTE_PRESSURE, PRESSURE_UNITS, pressure, options);
  return Object.hasOwn(GAUGE_PRESSURE_UNITS, options.unit) ? `${text} abs` : text;
}
