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
  const below = value - Number(printed);
  const above = value - Number(upTo);
  const outside = below < 0 ? below : above > 0 ? above : 0;
  return outside / lastDigit(printed);
}
