import { attempt, type InputError, type Outcome } from "./errors.js";
import type { Power, SpecificEnergy, SpecificEntropy, Torque } from "./flavour.js";
import { type ParseOptions, parse } from "./parse.js";
import { type FormatOptions, format } from "./print.js";
import { from, into, type Quantity, type Unit, type Units } from "./unit.js";

const SPECIFIC_ENERGY: Quantity = { name: "an energy per mass", si: "J/kg", example: "250 kJ/kg" };

const JOULE_PER_KILOGRAM: Unit = { symbol: "J/kg", factor: 1, spellings: ["J/kg"] };
const KILOJOULE_PER_KILOGRAM: Unit = { symbol: "kJ/kg", factor: 1e3, spellings: ["kJ/kg"] };
// Exact: the International Table Btu is defined so that 1 Btu/lb is 2.326 kJ/kg (Fifth International Conference on
// the Properties of Steam, London 1956; from memory).
const BTU_PER_POUND: Unit = { symbol: "Btu/lb", factor: 2326, spellings: ["Btu/lb", "Btu/lbm"] };

/** A unit of energy per mass, by the name of its converter. */
export type SpecificEnergyUnit = "joulePerKilogram" | "kilojoulePerKilogram" | "btuPerPound";

const SPECIFIC_ENERGY_UNITS: Units<SpecificEnergyUnit> = {
  joulePerKilogram: JOULE_PER_KILOGRAM,
  kilojoulePerKilogram: KILOJOULE_PER_KILOGRAM,
  btuPerPound: BTU_PER_POUND,
};

/** Energy per mass, J/kg, from J/kg. */
export const joulePerKilogram: (value: number) => SpecificEnergy = /* @__PURE__ */ from(
  SPECIFIC_ENERGY,
  JOULE_PER_KILOGRAM,
);
/** Energy per mass, J/kg, from kJ/kg. */
export const kilojoulePerKilogram: (value: number) => SpecificEnergy = /* @__PURE__ */ from(
  SPECIFIC_ENERGY,
  KILOJOULE_PER_KILOGRAM,
);
/** Energy per mass, J/kg, from Btu/lb (International Table, 2326 J/kg, exact). */
export const btuPerPound: (value: number) => SpecificEnergy = /* @__PURE__ */ from(
  SPECIFIC_ENERGY,
  BTU_PER_POUND,
);

/** Energy per mass in J/kg. */
export const inJoulePerKilogram: (energy: SpecificEnergy) => number = /* @__PURE__ */ into(
  SPECIFIC_ENERGY,
  JOULE_PER_KILOGRAM,
);
/** Energy per mass in kJ/kg. */
export const inKilojoulePerKilogram: (energy: SpecificEnergy) => number = /* @__PURE__ */ into(
  SPECIFIC_ENERGY,
  KILOJOULE_PER_KILOGRAM,
);
/** Energy per mass in Btu/lb. */
export const inBtuPerPound: (energy: SpecificEnergy) => number = /* @__PURE__ */ into(
  SPECIFIC_ENERGY,
  BTU_PER_POUND,
);

/**
 * Reads an energy per mass with its unit, such as `250 kJ/kg`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseSpecificEnergy(text: string, options?: ParseOptions): SpecificEnergy {
  return parse(SPECIFIC_ENERGY, SPECIFIC_ENERGY_UNITS, text, options);
}

/** As {@link parseSpecificEnergy}, without throwing. */
export function tryParseSpecificEnergy(text: string, options?: ParseOptions): Outcome<SpecificEnergy> {
  return attempt(() => parseSpecificEnergy(text, options));
}

/**
 * Prints an energy per mass with its unit; {@link parseSpecificEnergy} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatSpecificEnergy(
  energy: SpecificEnergy,
  options: FormatOptions<SpecificEnergyUnit>,
): string {
  return format(SPECIFIC_ENERGY, SPECIFIC_ENERGY_UNITS, energy, options);
}

const SPECIFIC_ENTROPY: Quantity = {
  name: "an entropy or heat capacity per mass",
  si: "J/(kg K)",
  example: "1.75 kJ/(kg K)",
};

const JOULE_PER_KILOGRAM_KELVIN: Unit = {
  symbol: "J/(kg K)",
  factor: 1,
  spellings: ["J/(kg K)", "J/kg/K", "J/(kg °C)"],
};
const KILOJOULE_PER_KILOGRAM_KELVIN: Unit = {
  symbol: "kJ/(kg K)",
  factor: 1e3,
  spellings: ["kJ/(kg K)", "kJ/kg/K", "kJ/(kg °C)"],
};
const BTU_PER_POUND_RANKINE: Unit = {
  symbol: "Btu/(lb °R)",
  factor: 2326 * 1.8,
  spellings: [
    "Btu/(lb °R)",
    "Btu/(lb R)",
    "Btu/(lb °F)",
    "Btu/(lb F)",
    "Btu/lb/R",
    "Btu/lb/F",
    "Btu/(lbm °R)",
    "Btu/(lbm R)",
    "Btu/(lbm °F)",
    "Btu/(lbm F)",
  ],
};

/** A unit of entropy or heat capacity per mass, by the name of its converter. */
export type SpecificEntropyUnit =
  | "joulePerKilogramKelvin"
  | "kilojoulePerKilogramKelvin"
  | "btuPerPoundRankine";

const SPECIFIC_ENTROPY_UNITS: Units<SpecificEntropyUnit> = {
  joulePerKilogramKelvin: JOULE_PER_KILOGRAM_KELVIN,
  kilojoulePerKilogramKelvin: KILOJOULE_PER_KILOGRAM_KELVIN,
  btuPerPoundRankine: BTU_PER_POUND_RANKINE,
};

/** Entropy or heat capacity per mass, J/(kg K), from J/(kg K). */
export const joulePerKilogramKelvin: (value: number) => SpecificEntropy = /* @__PURE__ */ from(
  SPECIFIC_ENTROPY,
  JOULE_PER_KILOGRAM_KELVIN,
);
/** Entropy or heat capacity per mass, J/(kg K), from kJ/(kg K). */
export const kilojoulePerKilogramKelvin: (value: number) => SpecificEntropy = /* @__PURE__ */ from(
  SPECIFIC_ENTROPY,
  KILOJOULE_PER_KILOGRAM_KELVIN,
);
/** Entropy or heat capacity per mass, J/(kg K), from Btu/(lb °R), the same size as Btu/(lb °F): 4186.8 J/(kg K), exact. */
export const btuPerPoundRankine: (value: number) => SpecificEntropy = /* @__PURE__ */ from(
  SPECIFIC_ENTROPY,
  BTU_PER_POUND_RANKINE,
);

/** Entropy or heat capacity per mass in J/(kg K). */
export const inJoulePerKilogramKelvin: (entropy: SpecificEntropy) => number = /* @__PURE__ */ into(
  SPECIFIC_ENTROPY,
  JOULE_PER_KILOGRAM_KELVIN,
);
/** Entropy or heat capacity per mass in kJ/(kg K). */
export const inKilojoulePerKilogramKelvin: (entropy: SpecificEntropy) => number = /* @__PURE__ */ into(
  SPECIFIC_ENTROPY,
  KILOJOULE_PER_KILOGRAM_KELVIN,
);
/** Entropy or heat capacity per mass in Btu/(lb °R), the same size as Btu/(lb °F): 4186.8 J/(kg K), exact. */
export const inBtuPerPoundRankine: (entropy: SpecificEntropy) => number = /* @__PURE__ */ into(
  SPECIFIC_ENTROPY,
  BTU_PER_POUND_RANKINE,
);

/**
 * Reads an entropy or heat capacity per mass with its unit, such as `1.75 kJ/(kg K)`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseSpecificEntropy(text: string, options?: ParseOptions): SpecificEntropy {
  return parse(SPECIFIC_ENTROPY, SPECIFIC_ENTROPY_UNITS, text, options);
}

/** As {@link parseSpecificEntropy}, without throwing. */
export function tryParseSpecificEntropy(text: string, options?: ParseOptions): Outcome<SpecificEntropy> {
  return attempt(() => parseSpecificEntropy(text, options));
}

/**
 * Prints an entropy or heat capacity per mass with its unit; {@link parseSpecificEntropy} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatSpecificEntropy(
  entropy: SpecificEntropy,
  options: FormatOptions<SpecificEntropyUnit>,
): string {
  return format(SPECIFIC_ENTROPY, SPECIFIC_ENTROPY_UNITS, entropy, options);
}

const POWER: Quantity = { name: "a power", si: "W", example: "3.5 kW" };

const WATT: Unit = { symbol: "W", factor: 1, spellings: ["w", "watts"] };
const KILOWATT: Unit = { symbol: "kW", factor: 1e3, spellings: ["kW", "kilowatts"] };
const BTU_PER_HOUR: Unit = {
  symbol: "Btu/h",
  factor: (2326 * 0.45359237) / 3600,
  spellings: ["Btu/h", "Btu/hr", "Btuh", "BtuH"],
};
const TON_OF_REFRIGERATION: Unit = {
  symbol: "TR",
  factor: (12000 * 2326 * 0.45359237) / 3600,
  spellings: ["TR", "ton", "tons", "tons of refrigeration", "RT"],
};

/** A unit of power, by the name of its converter. */
export type PowerUnit = "watt" | "kilowatt" | "btuPerHour" | "tonOfRefrigeration";

const POWER_UNITS: Units<PowerUnit> = {
  watt: WATT,
  kilowatt: KILOWATT,
  btuPerHour: BTU_PER_HOUR,
  tonOfRefrigeration: TON_OF_REFRIGERATION,
};

/** Power, W, from W. */
export const watt: (value: number) => Power = /* @__PURE__ */ from(POWER, WATT);
/** Power, W, from kW. */
export const kilowatt: (value: number) => Power = /* @__PURE__ */ from(POWER, KILOWATT);
/** Power, W, from Btu/h (International Table). */
export const btuPerHour: (value: number) => Power = /* @__PURE__ */ from(POWER, BTU_PER_HOUR);
/** Power, W, from tons of refrigeration (12 000 Btu/h). */
export const tonOfRefrigeration: (value: number) => Power = /* @__PURE__ */ from(POWER, TON_OF_REFRIGERATION);

/** Power in W. */
export const inWatt: (power: Power) => number = /* @__PURE__ */ into(POWER, WATT);
/** Power in kW. */
export const inKilowatt: (power: Power) => number = /* @__PURE__ */ into(POWER, KILOWATT);
/** Power in Btu/h. */
export const inBtuPerHour: (power: Power) => number = /* @__PURE__ */ into(POWER, BTU_PER_HOUR);
/** Power in tons of refrigeration. */
export const inTonOfRefrigeration: (power: Power) => number = /* @__PURE__ */ into(
  POWER,
  TON_OF_REFRIGERATION,
);

/**
 * Reads a power with its unit, such as `3.5 kW`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parsePower(text: string, options?: ParseOptions): Power {
  return parse(POWER, POWER_UNITS, text, options);
}

/** As {@link parsePower}, without throwing. */
export function tryParsePower(text: string, options?: ParseOptions): Outcome<Power> {
  return attempt(() => parsePower(text, options));
}

/**
 * Prints a power with its unit; {@link parsePower} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatPower(power: Power, options: FormatOptions<PowerUnit>): string {
  return format(POWER, POWER_UNITS, power, options);
}

const TORQUE: Quantity = { name: "a torque", si: "N m", example: "34 N m" };

const NEWTON_METRE: Unit = {
  symbol: "N m",
  factor: 1,
  spellings: ["newton meter", "newton meters", "newton metres"],
  exactSpellings: ["N-m"],
};
const KILOGRAM_FORCE_CENTIMETRE: Unit = {
  symbol: "kgf cm",
  factor: 9.80665e-2,
  spellings: ["kgf cm", "kgf-cm", "kg cm", "kg-cm"],
};
const POUND_FORCE_FOOT: Unit = {
  symbol: "lbf ft",
  factor: 0.45359237 * 9.80665 * 0.3048,
  spellings: ["lbf ft", "lbf-ft", "ft lbf", "ft-lbf", "lb ft", "lb-ft", "ft lb", "ft-lb", "ft lbs", "ft-lbs"],
};

/** A unit of torque, by the name of its converter. */
export type TorqueUnit = "newtonMetre" | "kilogramForceCentimetre" | "poundForceFoot";

const TORQUE_UNITS: Units<TorqueUnit> = {
  newtonMetre: NEWTON_METRE,
  kilogramForceCentimetre: KILOGRAM_FORCE_CENTIMETRE,
  poundForceFoot: POUND_FORCE_FOOT,
};

/** Torque, N m, from N m. */
export const newtonMetre: (value: number) => Torque = /* @__PURE__ */ from(TORQUE, NEWTON_METRE);
/** Torque, N m, from kgf cm (9.80665 N cm, exact). */
export const kilogramForceCentimetre: (value: number) => Torque = /* @__PURE__ */ from(
  TORQUE,
  KILOGRAM_FORCE_CENTIMETRE,
);
/** Torque, N m, from lbf ft. */
export const poundForceFoot: (value: number) => Torque = /* @__PURE__ */ from(TORQUE, POUND_FORCE_FOOT);

/** Torque in N m. */
export const inNewtonMetre: (torque: Torque) => number = /* @__PURE__ */ into(TORQUE, NEWTON_METRE);
/** Torque in kgf cm. */
export const inKilogramForceCentimetre: (torque: Torque) => number = /* @__PURE__ */ into(
  TORQUE,
  KILOGRAM_FORCE_CENTIMETRE,
);
/** Torque in lbf ft. */
export const inPoundForceFoot: (torque: Torque) => number = /* @__PURE__ */ into(TORQUE, POUND_FORCE_FOOT);

/**
 * Reads a torque with its unit, such as `34 N m`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseTorque(text: string, options?: ParseOptions): Torque {
  return parse(TORQUE, TORQUE_UNITS, text, options);
}

/** As {@link parseTorque}, without throwing. */
export function tryParseTorque(text: string, options?: ParseOptions): Outcome<Torque> {
  return attempt(() => parseTorque(text, options));
}

/**
 * Prints a torque with its unit; {@link parseTorque} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatTorque(torque: Torque, options: FormatOptions<TorqueUnit>): string {
  return format(TORQUE, TORQUE_UNITS, torque, options);
}
