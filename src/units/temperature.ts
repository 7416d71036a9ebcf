import { attempt, type InputError, type Outcome } from "./errors.js";
import type { Temperature, TemperatureDifference } from "./flavour.js";
import { type ParseOptions, parse } from "./parse.js";
import { type FormatOptions, format } from "./print.js";
import { from, into, type Quantity, type Unit, type Units } from "./unit.js";

const TEMPERATURE: Quantity = { name: "a temperature", si: "K", minimum: 0, example: "40 °C" };

const KELVIN: Unit = { symbol: "K", factor: 1, spellings: ["kelvins", "°K", "degK", "deg K"] };
const CELSIUS: Unit = {
  symbol: "°C",
  factor: 1,
  zero: -273.15,
  spellings: ["°C", "C", "deg C", "degrees C", "°celsius", "deg celsius", "degrees celsius", "centigrade"],
};
const FAHRENHEIT: Unit = {
  symbol: "°F",
  factor: 5 / 9,
  zero: -459.67,
  spellings: ["°F", "F", "deg F", "degrees F", "°fahrenheit", "deg fahrenheit", "degrees fahrenheit"],
};
const RANKINE: Unit = {
  symbol: "°R",
  factor: 5 / 9,
  spellings: ["°R", "R", "deg R", "degrees R", "°rankine", "deg rankine", "degrees rankine"],
};

/** A unit of temperature, by the name of its converter. */
export type TemperatureUnit = "kelvin" | "celsius" | "fahrenheit" | "rankine";

const TEMPERATURE_UNITS: Units<TemperatureUnit> = {
  kelvin: KELVIN,
  celsius: CELSIUS,
  fahrenheit: FAHRENHEIT,
  rankine: RANKINE,
};

/** Temperature, K, from K, 0 or more. */
export const kelvin: (value: number) => Temperature = /* @__PURE__ */ from(TEMPERATURE, KELVIN);
/** Temperature, K, from °C, −273.15 or more. */
export const celsius: (value: number) => Temperature = /* @__PURE__ */ from(TEMPERATURE, CELSIUS);
/** Temperature, K, from °F: T = (t + 459.67) · 5/9, −459.67 or more. */
export const fahrenheit: (value: number) => Temperature = /* @__PURE__ */ from(TEMPERATURE, FAHRENHEIT);
/** Temperature, K, from °R, 0 or more. */
export const rankine: (value: number) => Temperature = /* @__PURE__ */ from(TEMPERATURE, RANKINE);

/** Temperature in K. */
export const inKelvin: (temperature: Temperature) => number = /* @__PURE__ */ into(TEMPERATURE, KELVIN);
/** Temperature in °C. */
export const inCelsius: (temperature: Temperature) => number = /* @__PURE__ */ into(TEMPERATURE, CELSIUS);
/** Temperature in °F. */
export const inFahrenheit: (temperature: Temperature) => number = /* @__PURE__ */ into(
  TEMPERATURE,
  FAHRENHEIT,
);
/** Temperature in °R. */
export const inRankine: (temperature: Temperature) => number = /* @__PURE__ */ into(TEMPERATURE, RANKINE);

/**
 * Reads a temperature with its unit, such as `40 °C`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseTemperature(text: string, options?: ParseOptions): Temperature {
  return parse(TEMPERATURE, TEMPERATURE_UNITS, text, options);
}

/** As {@link parseTemperature}, without throwing. */
export function tryParseTemperature(text: string, options?: ParseOptions): Outcome<Temperature> {
  return attempt(() => parseTemperature(text, options));
}

/**
 * Prints a temperature with its unit; {@link parseTemperature} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatTemperature(temperature: Temperature, options: FormatOptions<TemperatureUnit>): string {
  return format(TEMPERATURE, TEMPERATURE_UNITS, temperature, options);
}

const TEMPERATURE_DIFFERENCE: Quantity = {
  name: "a temperature difference",
  si: "K",
  difference: true,
  example: "5 K",
};

/** A unit of temperature difference, by the name of its converter without `Difference`. */
export type TemperatureDifferenceUnit = "kelvin" | "celsius" | "fahrenheit";

const TEMPERATURE_DIFFERENCE_UNITS: Units<TemperatureDifferenceUnit> = {
  kelvin: KELVIN,
  celsius: CELSIUS,
  fahrenheit: FAHRENHEIT,
};

/** Temperature difference, K, from K. */
export const kelvinDifference: (value: number) => TemperatureDifference = /* @__PURE__ */ from(
  TEMPERATURE_DIFFERENCE,
  KELVIN,
);
/** Temperature difference, K, from °C. */
export const celsiusDifference: (value: number) => TemperatureDifference = /* @__PURE__ */ from(
  TEMPERATURE_DIFFERENCE,
  CELSIUS,
);
/** Temperature difference, K, from °F: ×5/9, and no 32. */
export const fahrenheitDifference: (value: number) => TemperatureDifference = /* @__PURE__ */ from(
  TEMPERATURE_DIFFERENCE,
  FAHRENHEIT,
);

/** Temperature difference in K. */
export const inKelvinDifference: (difference: TemperatureDifference) => number = /* @__PURE__ */ into(
  TEMPERATURE_DIFFERENCE,
  KELVIN,
);
/** Temperature difference in °C. */
export const inCelsiusDifference: (difference: TemperatureDifference) => number = /* @__PURE__ */ into(
  TEMPERATURE_DIFFERENCE,
  CELSIUS,
);
/** Temperature difference in °F. */
export const inFahrenheitDifference: (difference: TemperatureDifference) => number = /* @__PURE__ */ into(
  TEMPERATURE_DIFFERENCE,
  FAHRENHEIT,
);

/**
 * Reads a temperature difference with its unit, such as `5 K` or `9 °F`. The same text is another thing to
 * {@link parseTemperature}: only the caller knows which is meant.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseTemperatureDifference(text: string, options?: ParseOptions): TemperatureDifference {
  return parse(TEMPERATURE_DIFFERENCE, TEMPERATURE_DIFFERENCE_UNITS, text, options);
}

/** As {@link parseTemperatureDifference}, without throwing. */
export function tryParseTemperatureDifference(
  text: string,
  options?: ParseOptions,
): Outcome<TemperatureDifference> {
  return attempt(() => parseTemperatureDifference(text, options));
}

/**
 * Prints a temperature difference with its unit; {@link parseTemperatureDifference} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatTemperatureDifference(
  difference: TemperatureDifference,
  options: FormatOptions<TemperatureDifferenceUnit>,
): string {
  return format(TEMPERATURE_DIFFERENCE, TEMPERATURE_DIFFERENCE_UNITS, difference, options);
}
