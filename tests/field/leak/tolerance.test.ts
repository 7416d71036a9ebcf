import { describe, expect, it } from "vitest";
import { checkComposition } from "../../../src/field/index.js";
import { blend, refrigerant } from "../../../src/state/index.js";
import type { InputError } from "../../../src/units/index.js";

const r454b = refrigerant("R-454B");
/** R-454B with this much R-32. */
const check = (first: number) => checkComposition(r454b, { "R-32": first, "R-1234yf": 1 - first });

describe("a composition beside its designation", () => {
  it("passes up to the tolerance, at it, and no further", () => {
    // 68.9 % and 31.1 %, ± 1 % each: ASHRAE 34 (recalled, in data/blends).
    expect(check(0.689).verdict).toBe("pass");
    expect(check(0.699).verdict).toBe("pass");
    expect(check(0.679).verdict).toBe("pass");
    for (const outside of [0.69901, 0.67899]) {
      const { verdict, shifts, because } = check(outside);
      expect(verdict).toBe("fail");
      expect(shifts.map(({ isWithin }) => isWithin)).toEqual([false, false]);
      expect(because).toContain("lies outside 67.9 to 69.9 %");
      expect(because).toContain("R-1234yf");
    }
  });

  it("has tolerances of its own above and below", () => {
    // R-438A: 1.7 % R-600, + 0.1 − 0.2 (recalled, in data/blends).
    const blend438 = refrigerant("R-438A");
    const moved = (by: number) => {
      const { "R-600": butane, "R-134a": tetra, ...others } = blend438.composition;
      const composition = { ...others, "R-600": butane! + by, "R-134a": tetra! - by };
      return checkComposition(blend438, composition).verdict;
    };
    expect(moved(0.00099)).toBe("pass");
    expect(moved(-0.00199)).toBe("pass");
    expect(moved(0.00101)).toBe("fail");
    expect(moved(-0.00201)).toBe("fail");
  });

  it("cannot be told where tolerances are not known: another designation's, or a blend of one's own", () => {
    const r515b = refrigerant("R-515B");
    const { verdict, because, shifts } = checkComposition(r515b, r515b.composition);
    expect(verdict).toBe("inconclusive");
    expect(because).toBe("no tolerance is known of R-1234ze(E), R-227ea");
    expect(shifts[0]).toMatchObject({ tolerance: undefined, isWithin: undefined });
    const mine = blend([
      ["R-32", 0.6],
      ["R-1234yf", 0.4],
    ]);
    expect(checkComposition(mine, mine.composition).verdict).toBe("inconclusive");
  });

  it("is always that of a pure refrigerant", () => {
    expect(checkComposition(refrigerant("R-32"), { "R-32": 1 }).verdict).toBe("pass");
  });

  it("is refused where it is none", () => {
    const paths = (composition: unknown) => {
      try {
        checkComposition(r454b, composition as Record<string, number>);
      } catch (error) {
        return (error as InputError).problems.map(({ path }) => path);
      }
      throw new Error("nothing was refused");
    };
    expect(paths(undefined)).toEqual(["composition"]);
    expect(paths({ "R-32": 0.7 })).toEqual(["composition.R-1234yf"]);
    expect(paths({ "R-32": Number.NaN, "R-1234yf": -0.1 })).toEqual([
      "composition.R-32",
      "composition.R-1234yf",
    ]);
  });

  it("refuses a component that the designation does not have, and fractions that do not add up to 1", () => {
    const nominal = refrigerant("R-407C");
    const foreign = { ...nominal.composition, "R-290": 0.3 };
    expect(() => checkComposition(nominal, foreign)).toThrow("composition.R-290");
    expect(() => checkComposition(nominal, { "R-32": 0.23, "R-125": 0.25, "R-134a": 0.1 })).toThrow(
      "add up to 1",
    );
  });
});
