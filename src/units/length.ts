import { attempt, type InputError, type Outcome } from "./errors.js";
import type { Area, Length, Volume } from "./flavour.js";
import { type ParseOptions, parse } from "./parse.js";
import { type FormatOptions, format } from "./print.js";
import { from, into, type Quantity, type Unit, type Units } from "./unit.js";

const LENGTH: Quantity = { name: "a length", si: "m", example: "7.5 m", compound: true, fractions: true };

const METRE: Unit = { symbol: "m", factor: 1, spellings: ["meter", "meters", "metres"] };
const CENTIMETRE: Unit = {
  symbol: "cm",
  factor: 1e-2,
  spellings: ["cm", "centimeter", "centimeters", "centimetres"],
};
const MILLIMETRE: Unit = {
  symbol: "mm",
  factor: 1e-3,
  spellings: ["millimeter", "millimeters", "millimetres"],
};
// Exact by the international yard and pound agreement of 1959.
const FOOT: Unit = { symbol: "ft", factor: 0.3048, spellings: ["ft", "feet", "'"] };
const INCH: Unit = { symbol: "in", factor: 0.0254, spellings: ["in", "ins", "inches", '"'] };

/** A unit of length, by the name of its converter. */
export type LengthUnit = "metre" | "centimetre" | "millimetre" | "foot" | "inch";

const LENGTH_UNITS: Units<LengthUnit> = {
  metre: METRE,
  centimetre: CENTIMETRE,
  millimetre: MILLIMETRE,
  foot: FOOT,
  inch: INCH,
};

/** Length, m, from m. */
export const metre: (value: number) => Length = /* @__PURE__ */ from(LENGTH, METRE);
/** Length, m, from cm. */
export const centimetre: (value: number) => Length = /* @__PURE__ */ from(LENGTH, CENTIMETRE);
/** Length, m, from mm. */
export const millimetre: (value: number) => Length = /* @__PURE__ */ from(LENGTH, MILLIMETRE);
/** Length, m, from ft (0.3048 m, exact). */
export const foot: (value: number) => Length = /* @__PURE__ */ from(LENGTH, FOOT);
/** Length, m, from in (25.4 mm, exact). */
export const inch: (value: number) => Length = /* @__PURE__ */ from(LENGTH, INCH);

/** Length in m. */
export const inMetre: (length: Length) => number = /* @__PURE__ */ into(LENGTH, METRE);
/** Length in cm. */
export const inCentimetre: (length: Length) => number = /* @__PURE__ */ into(LENGTH, CENTIMETRE);
/** Length in mm. */
export const inMillimetre: (length: Length) => number = /* @__PURE__ */ into(LENGTH, MILLIMETRE);
/** Length in ft. */
export const inFoot: (length: Length) => number = /* @__PURE__ */ into(LENGTH, FOOT);
/** Length in in. */
export const inInch: (length: Length) => number = /* @__PURE__ */ into(LENGTH, INCH);

/**
 * Reads a length with its unit, such as `7.5 m`. Fractions as on tube sizes are read, `3/8 in`,
 * and so are feet with inches, `10 ft 6 in`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseLength(text: string, options?: ParseOptions): Length {
  return parse(LENGTH, LENGTH_UNITS, text, options);
}

/** As {@link parseLength}, without throwing. */
export function tryParseLength(text: string, options?: ParseOptions): Outcome<Length> {
  return attempt(() => parseLength(text, options));
}

/**
 * Prints a length with its unit; {@link parseLength} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatLength(length: Length, options: FormatOptions<LengthUnit>): string {
  return format(LENGTH, LENGTH_UNITS, length, options);
}

const AREA: Quantity = { name: "an area", si: "m2", minimum: 0, example: "18 m2" };

const SQUARE_METRE: Unit = {
  symbol: "m²",
  factor: 1,
  spellings: ["sq m", "sqm", "square meter", "square meters", "square metres"],
  exactSpellings: ["m2"],
};
const SQUARE_FOOT: Unit = {
  symbol: "ft²",
  factor: 0.3048 * 0.3048,
  spellings: ["ft2", "sq ft", "sqft", "square feet"],
};

/** A unit of area, by the name of its converter. */
export type AreaUnit = "squareMetre" | "squareFoot";

const AREA_UNITS: Units<AreaUnit> = {
  squareMetre: SQUARE_METRE,
  squareFoot: SQUARE_FOOT,
};

/** Area, m2, from m2, 0 or more. */
export const squareMetre: (value: number) => Area = /* @__PURE__ */ from(AREA, SQUARE_METRE);
/** Area, m2, from ft2, 0 or more. */
export const squareFoot: (value: number) => Area = /* @__PURE__ */ from(AREA, SQUARE_FOOT);

/** Area in m2. */
export const inSquareMetre: (area: Area) => number = /* @__PURE__ */ into(AREA, SQUARE_METRE);
/** Area in ft2. */
export const inSquareFoot: (area: Area) => number = /* @__PURE__ */ into(AREA, SQUARE_FOOT);

/**
 * Reads an area with its unit, such as `18 m2`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseArea(text: string, options?: ParseOptions): Area {
  return parse(AREA, AREA_UNITS, text, options);
}

/** As {@link parseArea}, without throwing. */
export function tryParseArea(text: string, options?: ParseOptions): Outcome<Area> {
  return attempt(() => parseArea(text, options));
}

/**
 * Prints an area with its unit; {@link parseArea} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatArea(area: Area, options: FormatOptions<AreaUnit>): string {
  return format(AREA, AREA_UNITS, area, options);
}

const VOLUME: Quantity = { name: "a volume", si: "m3", minimum: 0, example: "2.4 L" };

const CUBIC_METRE: Unit = {
  symbol: "m³",
  factor: 1,
  spellings: ["cu m", "cubic meter", "cubic meters", "cubic metres"],
  exactSpellings: ["m3"],
};
const LITRE: Unit = { symbol: "L", factor: 1e-3, spellings: ["l", "litres", "liter", "liters", "dm3"] };
const MILLILITRE: Unit = {
  symbol: "mL",
  factor: 1e-6,
  spellings: ["cc", "cm3", "millilitres", "milliliter", "milliliters"],
  exactSpellings: ["ml"],
};
const CUBIC_FOOT: Unit = {
  symbol: "ft³",
  factor: 0.3048 * 0.3048 * 0.3048,
  spellings: ["ft3", "cu ft", "cuft", "cubic feet"],
};

/** A unit of volume, by the name of its converter. */
export type VolumeUnit = "cubicMetre" | "litre" | "millilitre" | "cubicFoot";

const VOLUME_UNITS: Units<VolumeUnit> = {
  cubicMetre: CUBIC_METRE,
  litre: LITRE,
  millilitre: MILLILITRE,
  cubicFoot: CUBIC_FOOT,
};

/** Volume, m3, from m3, 0 or more. */
export const cubicMetre: (value: number) => Volume = /* @__PURE__ */ from(VOLUME, CUBIC_METRE);
/** Volume, m3, from L, 0 or more. */
export const litre: (value: number) => Volume = /* @__PURE__ */ from(VOLUME, LITRE);
/** Volume, m3, from mL, 0 or more. */
export const millilitre: (value: number) => Volume = /* @__PURE__ */ from(VOLUME, MILLILITRE);
/** Volume, m3, from ft3, 0 or more. */
export const cubicFoot: (value: number) => Volume = /* @__PURE__ */ from(VOLUME, CUBIC_FOOT);

/** Volume in m3. */
export const inCubicMetre: (volume: Volume) => number = /* @__PURE__ */ into(VOLUME, CUBIC_METRE);
/** Volume in L. */
export const inLitre: (volume: Volume) => number = /* @__PURE__ */ into(VOLUME, LITRE);
/** Volume in mL. */
export const inMillilitre: (volume: Volume) => number = /* @__PURE__ */ into(VOLUME, MILLILITRE);
/** Volume in ft3. */
export const inCubicFoot: (volume: Volume) => number = /* @__PURE__ */ into(VOLUME, CUBIC_FOOT);

/**
 * Reads a volume with its unit, such as `2.4 L`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseVolume(text: string, options?: ParseOptions): Volume {
  return parse(VOLUME, VOLUME_UNITS, text, options);
}

/** As {@link parseVolume}, without throwing. */
export function tryParseVolume(text: string, options?: ParseOptions): Outcome<Volume> {
  return attempt(() => parseVolume(text, options));
}

/**
 * Prints a volume with its unit; {@link parseVolume} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatVolume(volume: Volume, options: FormatOptions<VolumeUnit>): string {
  return format(VOLUME, VOLUME_UNITS, volume, options);
}
