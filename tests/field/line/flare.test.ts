import { describe, expect, it } from "vitest";
import data from "../../../data/field/flares.json" with { type: "json" };
import {
  checkTorque,
  flareFacts,
  flareProtrusions,
  tryCheckTorque,
  tryFlareFacts,
} from "../../../src/field/index.js";
import {
  InputError,
  inPoundForceFoot,
  kilogramForceCentimetre,
  millimetre,
  newtonMetre,
} from "../../../src/units/index.js";

describe("printed flares", () => {
  it("give a range for every size, never one number, and say where each is from", () => {
    for (const { outerDiameter } of data.flares) {
      const { printed, union, flareDiameter, nut } = flareFacts(outerDiameter);
      expect(printed.length).toBeGreaterThan(1);
      for (const { minimum, maximum, source, status } of printed) {
        expect(minimum).toBeLessThan(maximum);
        expect(source).not.toBe("");
        expect(["read", "recalled"]).toContain(status);
      }
      expect(union.minimum).toBeLessThan(union.maximum);
      // A flare is wider than its tube and fits its nut.
      expect(flareDiameter.minimum).toBeGreaterThan(outerDiameter);
      expect(flareDiameter.maximum).toBeLessThan(nut);
    }
  });

  it("of 15.88 mm disagree: 61.8 to 75.4, 63 to 77, 69 to 82 N m in print", () => {
    const { overlap, union } = flareFacts(millimetre(15.88));
    expect(overlap).toEqual({ minimum: 69, maximum: 75.4 });
    expect(union).toEqual({ minimum: 61.8, maximum: 82 });
  });

  it("of 9.52 mm are wider for R-32 and R-410A than the 13.0 mm of older refrigerants", () => {
    expect(flareFacts(millimetre(9.52)).flareDiameter.maximum).toBeCloseTo(13.2e-3, 12);
  });

  it("print 1420 to 1720 N cm in one manual: the same in kgf cm and lbf ft", () => {
    // 14.2 N m is 144.8 kgf cm and 10.47 lbf ft by the exact definitions.
    expect(kilogramForceCentimetre(144.8)).toBeWithin(14.2, 1e-4);
    expect(inPoundForceFoot(newtonMetre(14.2))).toBeWithin(10.4734, 1e-5);
  });

  it("stand out of the block by tool", () => {
    for (const { minimum, maximum } of flareProtrusions()) expect(minimum).toBeLessThan(maximum);
  });

  it("are refused for sizes that nobody prints", () => {
    expect(tryFlareFacts(millimetre(22.2))).toMatchObject({ ok: false });
    expect(() => flareFacts(Number.NaN)).toThrow(InputError);
  });
});

describe("a tightened joint", () => {
  const manual = { minimum: 34, maximum: 42 };

  it("passes inside the range by more than the error of the wrench, and only there", () => {
    const at = (applied: number) => checkTorque({ applied, wrenchPercent: 4, by: { manual } }).verdict;
    expect([at(30), at(33), at(35), at(38), at(41.5), at(45)]).toEqual([
      "fail",
      "inconclusive",
      "inconclusive",
      "pass",
      "inconclusive",
      "fail",
    ]);
  });

  it("without a manual is held against what the lists have in common, with a warning", () => {
    const { range, warnings } = checkTorque({
      applied: 36,
      wrenchPercent: 2,
      by: { outerDiameter: millimetre(9.53) },
    });
    expect(range).toEqual({ minimum: 34, maximum: 39.9 });
    expect(warnings.map(({ code }) => code)).toContain("no-manual");
  });

  it("cannot be judged with a wrench coarser than the range", () => {
    const { verdict, canPass } = checkTorque({
      applied: 16,
      wrenchPercent: 25,
      by: { outerDiameter: millimetre(6.35) },
    });
    expect([verdict, canPass]).toEqual(["inconclusive", false]);
  });

  it("names everything that is wrong", () => {
    const pathsOf = (joint: unknown) => {
      const outcome = tryCheckTorque(joint as never);
      return outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);
    };
    expect(pathsOf(undefined)).toEqual([""]);
    expect(pathsOf({ applied: -1, wrenchPercent: 0, by: {} })).toEqual(["applied", "wrenchPercent", "by"]);
    expect(pathsOf({ applied: 1, wrenchPercent: 1, by: { manual: { minimum: 3, maximum: 2 } } })).toEqual([
      "by.manual.minimum",
    ]);
    expect(pathsOf({ applied: 1, wrenchPercent: 1, by: { outerDiameter: 1 } })).toEqual(["outerDiameter"]);
  });
});
