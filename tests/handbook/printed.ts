/** Size of one unit in the last digit of a printed number: 0.01 for `12.50`, 1e-9 for `4.588e-6`. */
export function lastDigit(printed: string): number {
  const parts = /^[-+]?\d+(?:\.(\d+))?(?:e([-+]?\d+))?$/.exec(printed);
  if (parts === null) throw new Error(`not a printed number: ${JSON.stringify(printed)}`);
  const [, decimals = "", exponent = "0"] = parts;
  return 10 ** (Number(exponent) - decimals.length);
}

/**
 * How far a value lies from a printed one, in units of its last digit: up to half a unit is what rounding leaves.
 *
 * @param upTo - Upper end, where a range was printed; anywhere inside it the answer is 0.
 */
export function digitsOff(value: number, printed: string, upTo: string = printed): number {
  const below = Math.min(0, value - Number(printed));
  const above = Math.max(0, value - Number(upTo));
  return (below + above) / lastDigit(printed);
}

/** What another engine's exponentials and roots may do to a value. */
const rounding = 1e-13;

/** True if a value is what was printed: within half a unit of the last digit, and the rounding of doubles. */
export function isPrinted(value: number, printed: string, upTo: string = printed): boolean {
  const slack = (rounding * Math.abs(value)) / lastDigit(printed);
  return Math.abs(digitsOff(value, printed, upTo)) <= 0.5 + slack;
}
