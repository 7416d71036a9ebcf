import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { slipsBetween } from "../../src/catalogue/near-names.js";

describe("slipsBetween", () => {
  test.each([
    ["", "", 0],
    ["", "abc", 3],
    ["r23a", "r23", 1],
    ["r23", "r32", 1],
    ["r23a", "r32", 2],
    ["kitten", "sitting", 3],
    ["propan", "propene", 2],
  ])("of %j and %j are %i", (left, right, slips) => {
    expect(slipsBetween(left, right)).toBe(slips);
    expect(slipsBetween(right, left)).toBe(slips);
  });

  test("are none only for equal words, and no more than the longer word has letters", () => {
    const word = fc.string({ unit: fc.constantFrom("r", "1", "2", "a"), maxLength: 8 });
    fc.assert(
      fc.property(word, word, (left, right) => {
        const slips = slipsBetween(left, right);
        expect(slips === 0).toBe(left === right);
        expect(slips).toBeLessThanOrEqual(Math.max(left.length, right.length));
        expect(slips).toBeGreaterThanOrEqual(Math.abs(left.length - right.length));
        expect(slips).toBe(slipsBetween(right, left));
      }),
    );
  });
});
