import { type Area, InputCheck, type Mass } from "../units/index.js";

/**
 * A largest charge as text, rounded down so that the printed number is never above the limit.
 *
 * @param charge - kg, 0 or above.
 * @param decimals - 0 to 9.
 * @throws {@link InputError} `malformed-input`.
 *
 * @example
 * ```ts
 * printedMaximumCharge(1.53295, 2); // → "1.53 kg"
 * ```
 */
export function printedMaximumCharge(charge: Mass, decimals: number): string {
  return `${rounded("charge", charge, decimals, Math.floor)} kg`;
}

/**
 * A smallest floor area as text, rounded up so that the printed number is never below the limit.
 *
 * @param area - m2, 0 or above.
 * @param decimals - 0 to 9.
 * @throws {@link InputError} `malformed-input`.
 *
 * @example
 * ```ts
 * printedMinimumArea(34.0433, 1); // → "34.1 m²"
 * ```
 */
export function printedMinimumArea(area: Area, decimals: number): string {
  return `${rounded("area", area, decimals, Math.ceil)} m²`;
}

/** Rounds one way; a value that is a printed number but for the last bits of binary stays that number. */
function rounded(
  path: string,
  value: number,
  decimals: number,
  direction: (scaled: number) => number,
): string {
  const check = new InputCheck();
  check.notNegative(path, value);
  check.require(
    Number.isInteger(decimals) && decimals >= 0 && decimals <= 9,
    "decimals",
    decimals,
    "a whole number from 0 to 9",
  );
  check.finish();
  const scaled = value * 10 ** decimals;
  const nearest = Math.round(scaled);
  const isPrinted = Math.abs(scaled - nearest) <= 1e-12 * scaled;
  return ((isPrinted ? nearest : direction(scaled)) / 10 ** decimals).toFixed(decimals);
}
