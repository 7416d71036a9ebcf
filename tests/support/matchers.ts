import { expect } from "vitest";

declare module "vitest" {
  // The type parameter must be spelt as in the original for the two declarations to merge.
  // biome-ignore lint/suspicious/noExplicitAny: as above
  interface Matchers<T = any> {
    /** Passes when |actual − expected| ≤ relative · |expected|; for an expected 0 only 0 passes. */
    toBeWithin(expected: number, relative: number): T;
    /** Passes when the number, rounded to the digits of `printed` (such as `"1.47e6"`), is `printed`. */
    toRoundTo(printed: string): T;
  }
}

expect.extend({
  toBeWithin(actual: unknown, expected: number, relative: number) {
    if (!Number.isFinite(expected) || !(relative >= 0 && relative < Number.POSITIVE_INFINITY)) {
      throw new TypeError(
        `toBeWithin needs a finite expected value and tolerance, got ${expected}, ${relative}`,
      );
    }
    if (typeof actual !== "number" || !Number.isFinite(actual)) {
      return { pass: false, message: () => `${String(actual)} is no finite number; expected ${expected}` };
    }
    const deviation = actual === expected ? 0 : Math.abs((actual - expected) / expected);
    return {
      pass: deviation <= relative,
      message: () =>
        `${actual} differs from ${expected} by ${deviation.toExponential(2)} relative; ` +
        `${this.isNot ? "expected more than" : "allowed"} ${relative.toExponential(2)}`,
    };
  },
  toRoundTo(actual: unknown, printed: string) {
    const parts = /^[-+]?\d+(?:\.(\d+))?(?:e([-+]?\d+))?$/.exec(printed);
    if (parts === null)
      throw new TypeError(`toRoundTo needs a printed number, got ${JSON.stringify(printed)}`);
    const [, decimals = "", exponent = "0"] = parts;
    const step = 10 ** (Number(exponent) - decimals.length);
    return {
      pass: typeof actual === "number" && Math.abs(actual - Number(printed)) <= step / 2,
      message: () => `${String(actual)} ${this.isNot ? "rounds" : "does not round"} to ${printed}`,
    };
  },
});
