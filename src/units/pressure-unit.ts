import type { Quantity, Unit, Units } from "./unit.js";

/** A unit of absolute pressure or of a pressure difference, by the name of its converter. */
export type PressureUnit =
  | "pascal"
  | "hectopascal"
  | "kilopascal"
  | "megapascal"
  | "bar"
  | "millibar"
  | "psi"
  | "kilogramForcePerSquareCentimetre"
  | "atmosphere"
  | "torr"
  | "micron"
  | "millimetreOfMercury"
  | "centimetreOfMercury"
  | "inchOfMercury"
  | "metreOfWater"
  | "inchOfWater";

/** A unit of gauge pressure; Torr and micron are left out, because their scales begin at nothing. */
export type GaugePressureUnit = Exclude<PressureUnit, "torr" | "micron">;

/** Pa */
export const PASCAL: Unit = { symbol: "Pa", factor: 1, spellings: ["Pa", "pascals"] };

/** hPa, as on barometers. */
export const HECTOPASCAL: Unit = { symbol: "hPa", factor: 1e2, spellings: ["hPa", "hectopascals"] };

/** kPa */
export const KILOPASCAL: Unit = { symbol: "kPa", factor: 1e3, spellings: ["kPa", "kilopascals"] };

/** MPa */
export const MEGAPASCAL: Unit = {
  symbol: "MPa",
  factor: 1e6,
  spellings: ["megapascals"],
  exactSpellings: ["Mpa", "MPA"],
};

/** bar */
export const BAR: Unit = { symbol: "bar", factor: 1e5, spellings: ["bar", "bars"] };

/** mbar: the same size as hPa. */
export const MILLIBAR: Unit = {
  symbol: "mbar",
  factor: 1e2,
  spellings: ["millibars"],
  exactSpellings: ["mBar", "mBAR", "mb"],
};

/** One pound-force on a square inch; pound, standard gravity and inch are exact. */
export const PSI: Unit = {
  symbol: "psi",
  factor: (0.45359237 * 9.80665) / (0.0254 * 0.0254),
  spellings: ["psi", "lbf/in2", "lb/in2", "lbs/in2", "lbf/sq in", "lb/sq in", "lbs/sq in"],
};

/** Also called technical atmosphere, at; dials print kg/cm² as well. */
export const KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE: Unit = {
  symbol: "kgf/cm²",
  factor: 98066.5,
  spellings: ["kgf/cm2", "kg/cm2", "kp/cm2", "at"],
};

/** The standard atmosphere, exact. */
export const ATMOSPHERE: Unit = { symbol: "atm", factor: 101325, spellings: ["atm", "atmospheres"] };

/** 1/760 of a standard atmosphere, exact; read on absolute scales only. */
export const TORR: Unit = { symbol: "Torr", factor: 101325 / 760, spellings: ["torr"] };

/** The trade's micron of mercury, taken as 1/1000 Torr; the conventional µmHg is 1.4e-7 larger. Absolute scales only. */
export const MICRON: Unit = {
  symbol: "micron",
  factor: 101325 / 760e3,
  spellings: ["microns", "µmHg", "umHg", "millitorr"],
  exactSpellings: ["mTorr", "mtorr"],
};

/** Conventional: a millimetre of mercury of 13.5951 g/cm3 under 9.80665 m/s2, exact. */
export const MILLIMETRE_OF_MERCURY: Unit = {
  symbol: "mmHg",
  factor: 133.322387415,
  spellings: ["mmHg", "millimetres of mercury", "millimeters of mercury"],
};

/** Ten conventional millimetres of mercury. */
export const CENTIMETRE_OF_MERCURY: Unit = {
  symbol: "cmHg",
  factor: 1333.22387415,
  spellings: ["cmHg", "centimetres of mercury", "centimeters of mercury"],
};

/** 25.4 conventional millimetres of mercury. */
export const INCH_OF_MERCURY: Unit = {
  symbol: "inHg",
  factor: 25.4 * 133.322387415,
  spellings: ["inHg", '"Hg', "inches Hg", "inches of mercury"],
};

/** Conventional: a metre of water of 1 g/cm3 under 9.80665 m/s2, exact. */
export const METRE_OF_WATER: Unit = {
  symbol: "mH2O",
  factor: 9806.65,
  spellings: ["metres of water", "meters of water"],
  exactSpellings: ["mWC", "mWG"],
};

/** 25.4 conventional millimetres of water. */
export const INCH_OF_WATER: Unit = {
  symbol: "inH2O",
  factor: 0.0254 * 9806.65,
  spellings: ["inH2O", "inWC", "inWG", '"H2O', '"WC', '"WG', "inches of water"],
};

/** Pressure above nothing. */
export const ABSOLUTE_PRESSURE: Quantity = {
  name: "an absolute pressure",
  si: "Pa",
  minimum: 0,
  example: "9.5 bar abs",
};
/** Pressure above, or below, the local atmosphere; how far below depends on the place, so there is no minimum here. */
export const GAUGE_PRESSURE: Quantity = { name: "a gauge pressure", si: "Pa", example: "9.5 bar gauge" };

/** All units of pressure. */
export const PRESSURE_UNITS: Units<PressureUnit> = {
  pascal: PASCAL,
  hectopascal: HECTOPASCAL,
  kilopascal: KILOPASCAL,
  megapascal: MEGAPASCAL,
  bar: BAR,
  millibar: MILLIBAR,
  psi: PSI,
  kilogramForcePerSquareCentimetre: KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE,
  atmosphere: ATMOSPHERE,
  torr: TORR,
  micron: MICRON,
  millimetreOfMercury: MILLIMETRE_OF_MERCURY,
  centimetreOfMercury: CENTIMETRE_OF_MERCURY,
  inchOfMercury: INCH_OF_MERCURY,
  metreOfWater: METRE_OF_WATER,
  inchOfWater: INCH_OF_WATER,
};

/** All units of gauge pressure. */
export const GAUGE_PRESSURE_UNITS: Units<GaugePressureUnit> = {
  pascal: PASCAL,
  hectopascal: HECTOPASCAL,
  kilopascal: KILOPASCAL,
  megapascal: MEGAPASCAL,
  bar: BAR,
  millibar: MILLIBAR,
  psi: PSI,
  kilogramForcePerSquareCentimetre: KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE,
  atmosphere: ATMOSPHERE,
  millimetreOfMercury: MILLIMETRE_OF_MERCURY,
  centimetreOfMercury: CENTIMETRE_OF_MERCURY,
  inchOfMercury: INCH_OF_MERCURY,
  metreOfWater: METRE_OF_WATER,
  inchOfWater: INCH_OF_WATER,
};
