import { describe, expect, it } from "vitest";
import { printedMaximumCharge, printedMinimumArea } from "../../src/safety/index.js";
import { InputError } from "../../src/units/index.js";

describe("printed limits", () => {
  it("round the charge down and the area up", () => {
    expect(printedMaximumCharge(1.53295, 2)).toBe("1.53 kg");
    expect(printedMaximumCharge(1.5399, 2)).toBe("1.53 kg");
    expect(printedMinimumArea(34.0433, 1)).toBe("34.1 m²");
    expect(printedMinimumArea(0, 2)).toBe("0.00 m²");
  });

  it("keep a number that is already round, whatever its binary tail", () => {
    // 6 × 0.307 is 1.8419999999999999 in binary.
    expect(printedMaximumCharge(6 * 0.307, 3)).toBe("1.842 kg");
    expect(printedMinimumArea(0.1 + 0.2, 1)).toBe("0.3 m²");
  });

  it("never print past the limit", () => {
    for (let value = 0.001; value < 60; value *= 1.0137) {
      for (const decimals of [0, 1, 2, 3]) {
        // The slack is the binary tail that counts as round.
        expect(Number.parseFloat(printedMaximumCharge(value, decimals))).toBeLessThanOrEqual(
          value * (1 + 2e-12),
        );
        expect(Number.parseFloat(printedMinimumArea(value, decimals))).toBeGreaterThanOrEqual(
          value * (1 - 2e-12),
        );
      }
    }
  });

  it("refuse nonsense", () => {
    for (const [value, decimals] of [
      [-1, 2],
      [Number.NaN, 2],
      [1, 1.5],
      [1, -1],
    ] as const) {
      expect(() => printedMaximumCharge(value, decimals)).toThrow(InputError);
      expect(() => printedMinimumArea(value, decimals)).toThrow(InputError);
    }
  });
});
