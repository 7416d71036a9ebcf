import { attempt, type InputError, type Outcome } from "./errors.js";
import type { Density, LinearDensity, Mass } from "./flavour.js";
import { type ParseOptions, parse } from "./parse.js";
import { type FormatOptions, format } from "./print.js";
import { from, into, type Quantity, type Unit, type Units } from "./unit.js";

const MASS: Quantity = { name: "a mass", si: "kg", example: "850 g", compound: true };

const KILOGRAM: Unit = { symbol: "kg", factor: 1, spellings: ["kg", "kgs", "kilograms"] };
const GRAM: Unit = { symbol: "g", factor: 1e-3, spellings: ["grams", "gm", "gms"] };
// Exact by the international yard and pound agreement of 1959.
const POUND: Unit = { symbol: "lb", factor: 0.45359237, spellings: ["lb", "lbs", "pounds"] };
const OUNCE: Unit = { symbol: "oz", factor: 0.45359237 / 16, spellings: ["oz", "ozs", "ounces"] };

/** A unit of mass, by the name of its converter. */
export type MassUnit = "kilogram" | "gram" | "pound" | "ounce";

const MASS_UNITS: Units<MassUnit> = {
  kilogram: KILOGRAM,
  gram: GRAM,
  pound: POUND,
  ounce: OUNCE,
};

/** Mass, kg, from kg. */
export const kilogram: (value: number) => Mass = /* @__PURE__ */ from(MASS, KILOGRAM);
/** Mass, kg, from g. */
export const gram: (value: number) => Mass = /* @__PURE__ */ from(MASS, GRAM);
/** Mass, kg, from lb (0.45359237 kg, exact). */
export const pound: (value: number) => Mass = /* @__PURE__ */ from(MASS, POUND);
/** Mass, kg, from oz (1/16 lb). */
export const ounce: (value: number) => Mass = /* @__PURE__ */ from(MASS, OUNCE);

/** Mass in kg. */
export const inKilogram: (mass: Mass) => number = /* @__PURE__ */ into(MASS, KILOGRAM);
/** Mass in g. */
export const inGram: (mass: Mass) => number = /* @__PURE__ */ into(MASS, GRAM);
/** Mass in lb. */
export const inPound: (mass: Mass) => number = /* @__PURE__ */ into(MASS, POUND);
/** Mass in oz. */
export const inOunce: (mass: Mass) => number = /* @__PURE__ */ into(MASS, OUNCE);

/**
 * Reads a mass with its unit, such as `850 g`. Several units after each other are added: `2 lb 3 oz`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseMass(text: string, options?: ParseOptions): Mass {
  return parse(MASS, MASS_UNITS, text, options);
}

/** As {@link parseMass}, without throwing. */
export function tryParseMass(text: string, options?: ParseOptions): Outcome<Mass> {
  return attempt(() => parseMass(text, options));
}

/**
 * Prints a mass with its unit; {@link parseMass} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatMass(mass: Mass, options: FormatOptions<MassUnit>): string {
  return format(MASS, MASS_UNITS, mass, options);
}

const LINEAR_DENSITY: Quantity = { name: "a mass per length", si: "kg/m", minimum: 0, example: "20 g/m" };

const KILOGRAM_PER_METRE: Unit = { symbol: "kg/m", factor: 1, spellings: ["kg/m", "kilogram per meter"] };
const GRAM_PER_METRE: Unit = {
  symbol: "g/m",
  factor: 1e-3,
  spellings: ["g/m", "gram per meter", "grams per metre", "grams per meter"],
};
const OUNCE_PER_FOOT: Unit = {
  symbol: "oz/ft",
  factor: 0.45359237 / 16 / 0.3048,
  spellings: ["oz/ft", "ounces per foot"],
};
const POUND_PER_FOOT: Unit = {
  symbol: "lb/ft",
  factor: 0.45359237 / 0.3048,
  spellings: ["lb/ft", "lbs/ft", "pounds per foot"],
};

/** A unit of mass per length, by the name of its converter. */
export type LinearDensityUnit = "kilogramPerMetre" | "gramPerMetre" | "ouncePerFoot" | "poundPerFoot";

const LINEAR_DENSITY_UNITS: Units<LinearDensityUnit> = {
  kilogramPerMetre: KILOGRAM_PER_METRE,
  gramPerMetre: GRAM_PER_METRE,
  ouncePerFoot: OUNCE_PER_FOOT,
  poundPerFoot: POUND_PER_FOOT,
};

/** Mass per length, kg/m, from kg/m, 0 or more. */
export const kilogramPerMetre: (value: number) => LinearDensity = /* @__PURE__ */ from(
  LINEAR_DENSITY,
  KILOGRAM_PER_METRE,
);
/** Mass per length, kg/m, from g/m, 0 or more. */
export const gramPerMetre: (value: number) => LinearDensity = /* @__PURE__ */ from(
  LINEAR_DENSITY,
  GRAM_PER_METRE,
);
/** Mass per length, kg/m, from oz/ft, 0 or more. */
export const ouncePerFoot: (value: number) => LinearDensity = /* @__PURE__ */ from(
  LINEAR_DENSITY,
  OUNCE_PER_FOOT,
);
/** Mass per length, kg/m, from lb/ft, 0 or more. */
export const poundPerFoot: (value: number) => LinearDensity = /* @__PURE__ */ from(
  LINEAR_DENSITY,
  POUND_PER_FOOT,
);

/** Mass per length in kg/m. */
export const inKilogramPerMetre: (linearDensity: LinearDensity) => number = /* @__PURE__ */ into(
  LINEAR_DENSITY,
  KILOGRAM_PER_METRE,
);
/** Mass per length in g/m. */
export const inGramPerMetre: (linearDensity: LinearDensity) => number = /* @__PURE__ */ into(
  LINEAR_DENSITY,
  GRAM_PER_METRE,
);
/** Mass per length in oz/ft. */
export const inOuncePerFoot: (linearDensity: LinearDensity) => number = /* @__PURE__ */ into(
  LINEAR_DENSITY,
  OUNCE_PER_FOOT,
);
/** Mass per length in lb/ft. */
export const inPoundPerFoot: (linearDensity: LinearDensity) => number = /* @__PURE__ */ into(
  LINEAR_DENSITY,
  POUND_PER_FOOT,
);

/**
 * Reads a mass per length with its unit, such as `20 g/m`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseLinearDensity(text: string, options?: ParseOptions): LinearDensity {
  return parse(LINEAR_DENSITY, LINEAR_DENSITY_UNITS, text, options);
}

/** As {@link parseLinearDensity}, without throwing. */
export function tryParseLinearDensity(text: string, options?: ParseOptions): Outcome<LinearDensity> {
  return attempt(() => parseLinearDensity(text, options));
}

/**
 * Prints a mass per length with its unit; {@link parseLinearDensity} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatLinearDensity(
  linearDensity: LinearDensity,
  options: FormatOptions<LinearDensityUnit>,
): string {
  return format(LINEAR_DENSITY, LINEAR_DENSITY_UNITS, linearDensity, options);
}

const DENSITY: Quantity = { name: "a density", si: "kg/m3", minimum: 0, example: "960 kg/m3" };

const KILOGRAM_PER_CUBIC_METRE: Unit = {
  symbol: "kg/m³",
  factor: 1,
  spellings: ["kg/m3", "kilogram per cubic meter"],
};
const KILOGRAM_PER_LITRE: Unit = {
  symbol: "kg/L",
  factor: 1e3,
  spellings: ["kg/L", "kg/dm3", "g/cm3", "g/mL", "kilogram per liter"],
};
const POUND_PER_CUBIC_FOOT: Unit = {
  symbol: "lb/ft³",
  factor: 0.45359237 / (0.3048 * 0.3048 * 0.3048),
  spellings: ["lb/ft3", "lbs/ft3", "lb/cu ft", "lbs/cu ft", "pounds per cubic foot"],
};

/** A unit of density, by the name of its converter. */
export type DensityUnit = "kilogramPerCubicMetre" | "kilogramPerLitre" | "poundPerCubicFoot";

const DENSITY_UNITS: Units<DensityUnit> = {
  kilogramPerCubicMetre: KILOGRAM_PER_CUBIC_METRE,
  kilogramPerLitre: KILOGRAM_PER_LITRE,
  poundPerCubicFoot: POUND_PER_CUBIC_FOOT,
};

/** Density, kg/m3, from kg/m3, 0 or more. */
export const kilogramPerCubicMetre: (value: number) => Density = /* @__PURE__ */ from(
  DENSITY,
  KILOGRAM_PER_CUBIC_METRE,
);
/** Density, kg/m3, from kg/L, 0 or more. */
export const kilogramPerLitre: (value: number) => Density = /* @__PURE__ */ from(DENSITY, KILOGRAM_PER_LITRE);
/** Density, kg/m3, from lb/ft3, 0 or more. */
export const poundPerCubicFoot: (value: number) => Density = /* @__PURE__ */ from(
  DENSITY,
  POUND_PER_CUBIC_FOOT,
);

/** Density in kg/m3. */
export const inKilogramPerCubicMetre: (density: Density) => number = /* @__PURE__ */ into(
  DENSITY,
  KILOGRAM_PER_CUBIC_METRE,
);
/** Density in kg/L. */
export const inKilogramPerLitre: (density: Density) => number = /* @__PURE__ */ into(
  DENSITY,
  KILOGRAM_PER_LITRE,
);
/** Density in lb/ft3. */
export const inPoundPerCubicFoot: (density: Density) => number = /* @__PURE__ */ into(
  DENSITY,
  POUND_PER_CUBIC_FOOT,
);

/**
 * Reads a density with its unit, such as `960 kg/m3`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseDensity(text: string, options?: ParseOptions): Density {
  return parse(DENSITY, DENSITY_UNITS, text, options);
}

/** As {@link parseDensity}, without throwing. */
export function tryParseDensity(text: string, options?: ParseOptions): Outcome<Density> {
  return attempt(() => parseDensity(text, options));
}

/**
 * Prints a density with its unit; {@link parseDensity} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatDensity(density: Density, options: FormatOptions<DensityUnit>): string {
  return format(DENSITY, DENSITY_UNITS, density, options);
}
