import { attempt, type InputError, type Outcome } from "./errors.js";
import type { PressureDifference } from "./flavour.js";
import { type ParseOptions, parse } from "./parse.js";
import {
  ATMOSPHERE,
  BAR,
  CENTIMETRE_OF_MERCURY,
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
import { from, into, type Quantity } from "./unit.js";

const PRESSURE_DIFFERENCE: Quantity = {
  name: "a pressure difference",
  si: "Pa",
  difference: true,
  example: "0.2 bar",
};

/** Pressure difference, Pa, from Pa. */
export const pascalDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  PASCAL,
);
/** Pressure difference, Pa, from hPa. */
export const hectopascalDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  HECTOPASCAL,
);
/** Pressure difference, Pa, from kPa. */
export const kilopascalDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  KILOPASCAL,
);
/** Pressure difference, Pa, from MPa. */
export const megapascalDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  MEGAPASCAL,
);
/** Pressure difference, Pa, from bar. */
export const barDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  BAR,
);
/** Pressure difference, Pa, from mbar. */
export const millibarDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  MILLIBAR,
);
/** Pressure difference, Pa, from psi (pound-force per square inch). */
export const psiDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  PSI,
);
/** Pressure difference, Pa, from kgf/cm2, the "kilo" of many dials (98 066.5 Pa, exact). */
export const kilogramForcePerSquareCentimetreDifference: (value: number) => PressureDifference =
  /* @__PURE__ */ from(PRESSURE_DIFFERENCE, KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE);
/** Pressure difference, Pa, from standard atmospheres (101 325 Pa). */
export const atmosphereDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  ATMOSPHERE,
);
/** Pressure difference, Pa, from Torr (1/760 of a standard atmosphere). */
export const torrDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  TORR,
);
/** Pressure difference, Pa, from micron (1/1000 Torr), the scale of vacuum gauges. */
export const micronDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  MICRON,
);
/** Pressure difference, Pa, from mmHg (conventional: 13.5951 g/cm3 and 9.80665 m/s2). */
export const millimetreOfMercuryDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  MILLIMETRE_OF_MERCURY,
);
/** Pressure difference, Pa, from cmHg (10 mmHg). */
export const centimetreOfMercuryDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  CENTIMETRE_OF_MERCURY,
);
/** Pressure difference, Pa, from inHg (25.4 mmHg). */
export const inchOfMercuryDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  INCH_OF_MERCURY,
);
/** Pressure difference, Pa, from mH2O (conventional: 1 g/cm3 and 9.80665 m/s2). */
export const metreOfWaterDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  METRE_OF_WATER,
);
/** Pressure difference, Pa, from inH2O (25.4 mm of water). */
export const inchOfWaterDifference: (value: number) => PressureDifference = /* @__PURE__ */ from(
  PRESSURE_DIFFERENCE,
  INCH_OF_WATER,
);

/** Pressure difference in Pa. */
export const inPascalDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  PASCAL,
);
/** Pressure difference in hPa. */
export const inHectopascalDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  HECTOPASCAL,
);
/** Pressure difference in kPa. */
export const inKilopascalDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  KILOPASCAL,
);
/** Pressure difference in MPa. */
export const inMegapascalDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  MEGAPASCAL,
);
/** Pressure difference in bar. */
export const inBarDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  BAR,
);
/** Pressure difference in mbar. */
export const inMillibarDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  MILLIBAR,
);
/** Pressure difference in psi. */
export const inPsiDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  PSI,
);
/** Pressure difference in kgf/cm2. */
export const inKilogramForcePerSquareCentimetreDifference: (difference: PressureDifference) => number =
  /* @__PURE__ */ into(PRESSURE_DIFFERENCE, KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE);
/** Pressure difference in standard atmospheres. */
export const inAtmosphereDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  ATMOSPHERE,
);
/** Pressure difference in Torr. */
export const inTorrDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  TORR,
);
/** Pressure difference in micron. */
export const inMicronDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  MICRON,
);
/** Pressure difference in mmHg. */
export const inMillimetreOfMercuryDifference: (difference: PressureDifference) => number =
  /* @__PURE__ */ into(PRESSURE_DIFFERENCE, MILLIMETRE_OF_MERCURY);
/** Pressure difference in cmHg. */
export const inCentimetreOfMercuryDifference: (difference: PressureDifference) => number =
  /* @__PURE__ */ into(PRESSURE_DIFFERENCE, CENTIMETRE_OF_MERCURY);
/** Pressure difference in inHg. */
export const inInchOfMercuryDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  INCH_OF_MERCURY,
);
/** Pressure difference in mH2O. */
export const inMetreOfWaterDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  METRE_OF_WATER,
);
/** Pressure difference in inH2O. */
export const inInchOfWaterDifference: (difference: PressureDifference) => number = /* @__PURE__ */ into(
  PRESSURE_DIFFERENCE,
  INCH_OF_WATER,
);

/**
 * Reads a pressure difference with its unit, such as `0.2 bar` or `500 micron`: neither gauge nor absolute, so it
 * may not say so.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parsePressureDifference(text: string, options?: ParseOptions): PressureDifference {
  return parse(PRESSURE_DIFFERENCE, PRESSURE_UNITS, text, options);
}

/** As {@link parsePressureDifference}, without throwing. */
export function tryParsePressureDifference(
  text: string,
  options?: ParseOptions,
): Outcome<PressureDifference> {
  return attempt(() => parsePressureDifference(text, options));
}

/**
 * Prints a pressure difference with its unit; {@link parsePressureDifference} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatPressureDifference(
  difference: PressureDifference,
  options: FormatOptions<PressureUnit>,
): string {
  return format(PRESSURE_DIFFERENCE, PRESSURE_UNITS, difference, options);
}
