import { InputError, requireFinite } from "./errors.js";
import { fromSi, type Quantity, type Units } from "./unit.js";

/** How a quantity shall be printed; both must be said, for no choice suits everyone. */
export interface FormatOptions<Name extends string> {
  /** Name of the unit: that of its converter, such as `"celsius"` or `"bar"`. */
  readonly unit: Name;
  /** Digits after the decimal point, 0 to 15. */
  readonly digits: number;
}

/**
 * A number with a fixed count of digits after the point, as a careful person writes it.
 *
 * Halves go away from zero. The sixteenth significant digit is dropped first, because conversions disturb it:
 * 1.005 with two digits is 1.01, although the nearest double lies a little below. Zero never carries a sign, and
 * the sign is the plain hyphen-minus, so that any program reads the text back.
 *
 * @param value - Any finite number.
 * @param digits - Digits after the decimal point, 0 to 15.
 * @throws {@link InputError} `malformed-input`, for a value that is not finite or digits out of range.
 * @example
 * ```ts
 * formatNumber(-0.04, 1) // → "0.0"
 * ```
 */
export function formatNumber(value: number, digits: number): string {
  requireFinite("value", value);
  if (!(Number.isInteger(digits) && digits >= 0 && digits <= 15)) {
    throw new InputError([{ path: "digits", value: digits, expected: "a whole number from 0 to 15" }]);
  }
  const text = rounded(Math.abs(value), digits);
  return value < 0 && /[1-9]/.test(text) ? `-${text}` : text;
}

/** A value with the symbol of its unit: `9.50 bar`. */
export function format<Name extends string>(
  quantity: Quantity,
  units: Units<Name>,
  value: number,
  { unit, digits }: FormatOptions<Name>,
): string {
  if (!Object.hasOwn(units, unit)) {
    throw new InputError([
      { path: "unit", value: unit, expected: `one of ${Object.keys(units).join(", ")}` },
    ]);
  }
  const chosen = units[unit];
  return `${formatNumber(fromSi(quantity, chosen, value), digits)} ${chosen.symbol}`;
}

function rounded(magnitude: number, digits: number): string {
  const [mantissa, exponent] = magnitude.toExponential(14).split("e");
  const shift = Number(exponent) + digits;
  // All fifteen digits stand before the place of rounding: there is nothing to round.
  if (shift >= 14) return magnitude.toFixed(digits);
  // Shifting the point in the text keeps a decimal half exactly half, where a multiplication would not.
  return Number(`${Math.round(Number(`${mantissa}e${shift}`))}e${-digits}`).toFixed(digits);
}
