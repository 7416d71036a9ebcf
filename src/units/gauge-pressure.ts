import type { InputError } from "./errors.js";
import type { GaugePressure } from "./flavour.js";
import type { parsePressure } from "./parse-pressure.js";
import {
  ATMOSPHERE,
  BAR,
  CENTIMETRE_OF_MERCURY,
  GAUGE_PRESSURE,
  GAUGE_PRESSURE_UNITS,
  type GaugePressureUnit,
  HECTOPASCAL,
  INCH_OF_MERCURY,
  INCH_OF_WATER,
  KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE,
  KILOPASCAL,
  MEGAPASCAL,
  METRE_OF_WATER,
  MILLIBAR,
  MILLIMETRE_OF_MERCURY,
  PASCAL,
  PSI,
} from "./pressure-unit.js";
import { type FormatOptions, format } from "./print.js";
import { from, into } from "./unit.js";

/** Gauge pressure, Pa, from Pa; negative below the local atmosphere. */
export const pascalGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(GAUGE_PRESSURE, PASCAL);
/** Gauge pressure, Pa, from hPa; negative below the local atmosphere. */
export const hectopascalGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(
  GAUGE_PRESSURE,
  HECTOPASCAL,
);
/** Gauge pressure, Pa, from kPa; negative below the local atmosphere. */
export const kilopascalGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(
  GAUGE_PRESSURE,
  KILOPASCAL,
);
/** Gauge pressure, Pa, from MPa; negative below the local atmosphere. */
export const megapascalGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(
  GAUGE_PRESSURE,
  MEGAPASCAL,
);
/** Gauge pressure, Pa, from bar; negative below the local atmosphere. */
export const barGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(GAUGE_PRESSURE, BAR);
/** Gauge pressure, Pa, from mbar; negative below the local atmosphere. */
export const millibarGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(GAUGE_PRESSURE, MILLIBAR);
/** Gauge pressure, Pa, from psi (pound-force per square inch); negative below the local atmosphere. */
export const psiGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(GAUGE_PRESSURE, PSI);
/** Gauge pressure, Pa, from kgf/cm2, the "kilo" of many dials (98 066.5 Pa, exact); negative below the local atmosphere. */
export const kilogramForcePerSquareCentimetreGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(
  GAUGE_PRESSURE,
  KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE,
);
/** Gauge pressure, Pa, from standard atmospheres (101 325 Pa); negative below the local atmosphere. */
export const atmosphereGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(
  GAUGE_PRESSURE,
  ATMOSPHERE,
);
/** Gauge pressure, Pa, from mmHg (conventional: 13.5951 g/cm3 and 9.80665 m/s2); negative below the local atmosphere. */
export const millimetreOfMercuryGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(
  GAUGE_PRESSURE,
  MILLIMETRE_OF_MERCURY,
);
/** Gauge pressure, Pa, from cmHg (10 mmHg); negative below the local atmosphere. */
export const centimetreOfMercuryGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(
  GAUGE_PRESSURE,
  CENTIMETRE_OF_MERCURY,
);
/** Gauge pressure, Pa, from inHg (25.4 mmHg); negative below the local atmosphere. */
export const inchOfMercuryGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(
  GAUGE_PRESSURE,
  INCH_OF_MERCURY,
);
/** Gauge pressure, Pa, from mH2O (conventional: 1 g/cm3 and 9.80665 m/s2); negative below the local atmosphere. */
export const metreOfWaterGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(
  GAUGE_PRESSURE,
  METRE_OF_WATER,
);
/** Gauge pressure, Pa, from inH2O (25.4 mm of water); negative below the local atmosphere. */
export const inchOfWaterGauge: (value: number) => GaugePressure = /* @__PURE__ */ from(
  GAUGE_PRESSURE,
  INCH_OF_WATER,
);

/** Gauge pressure in Pa. */
export const inPascalGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  PASCAL,
);
/** Gauge pressure in hPa. */
export const inHectopascalGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  HECTOPASCAL,
);
/** Gauge pressure in kPa. */
export const inKilopascalGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  KILOPASCAL,
);
/** Gauge pressure in MPa. */
export const inMegapascalGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  MEGAPASCAL,
);
/** Gauge pressure in bar. */
export const inBarGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(GAUGE_PRESSURE, BAR);
/** Gauge pressure in mbar. */
export const inMillibarGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  MILLIBAR,
);
/** Gauge pressure in psi. */
export const inPsiGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(GAUGE_PRESSURE, PSI);
/** Gauge pressure in kgf/cm2. */
export const inKilogramForcePerSquareCentimetreGauge: (pressure: GaugePressure) => number =
  /* @__PURE__ */ into(GAUGE_PRESSURE, KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE);
/** Gauge pressure in standard atmospheres. */
export const inAtmosphereGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  ATMOSPHERE,
);
/** Gauge pressure in mmHg. */
export const inMillimetreOfMercuryGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  MILLIMETRE_OF_MERCURY,
);
/** Gauge pressure in cmHg. */
export const inCentimetreOfMercuryGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  CENTIMETRE_OF_MERCURY,
);
/** Gauge pressure in inHg. */
export const inInchOfMercuryGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  INCH_OF_MERCURY,
);
/** Gauge pressure in mH2O. */
export const inMetreOfWaterGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  METRE_OF_WATER,
);
/** Gauge pressure in inH2O. */
export const inInchOfWaterGauge: (pressure: GaugePressure) => number = /* @__PURE__ */ into(
  GAUGE_PRESSURE,
  INCH_OF_WATER,
);

/**
 * Prints a gauge pressure with its unit and kind, `9.50 bar gauge`; {@link parsePressure} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatGaugePressure(
  pressure: GaugePressure,
  options: FormatOptions<GaugePressureUnit>,
): string {
  return `${format(GAUGE_PRESSURE, GAUGE_PRESSURE_UNITS, pressure, options)} gauge`;
}
