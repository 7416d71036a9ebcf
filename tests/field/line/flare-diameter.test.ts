import { describe, expect, it } from "vitest";
import data from "../../../data/field/flares.json" with { type: "json" };
import { flareDiameter, flareFacts, tryFlareDiameter } from "../../../src/field/index.js";
import { type InputError, millimetre } from "../../../src/units/index.js";

describe("the width of a flare", () => {
  it("is larger for R-32 and R-410A than for older refrigerants, in every size", () => {
    for (const { outerDiameter } of data.flares) {
      const wide = flareDiameter(outerDiameter, "R-410A");
      const older = flareDiameter(outerDiameter, "R-22");
      expect(flareDiameter(outerDiameter, "R-32")).toEqual(wide);
      expect(flareDiameter(outerDiameter, "R-407C")).toEqual(older);
      expect(flareFacts(outerDiameter).flareDiameter).toEqual({
        minimum: wide.minimum,
        maximum: wide.maximum,
      });
      expect(wide.maximum).toBeGreaterThan(older.maximum);
      for (const { minimum, maximum, source, status } of [wide, older]) {
        // Every list prints a tolerance of 0.4 mm, all of it downward.
        expect(maximum - minimum).toBeCloseTo(0.4e-3, 12);
        expect(minimum).toBeGreaterThan(outerDiameter);
        expect(source).not.toBe("");
        expect(["read", "recalled"]).toContain(status);
      }
    }
  });

  it("of 9.52 mm is 13.2 mm against 13.0 mm: printed service manuals (read), JIS B 8607 (recalled)", () => {
    expect(flareDiameter(millimetre(9.53), "R-32").maximum).toBe(0.0132);
    expect(flareDiameter(millimetre(9.53), "R-22").maximum).toBe(0.013);
  });

  it.each<[string, unknown, unknown, string[]]>([
    ["a refrigerant that no list names", millimetre(9.52), "R-290", ["designation"]],
    ["a size that no list has", millimetre(22.2), "R-32", ["outerDiameter"]],
    ["nothing at all", undefined, null, ["outerDiameter", "designation"]],
  ])("refuses %s", (_what, outerDiameter, designation, paths) => {
    const outcome = tryFlareDiameter(outerDiameter as number, designation as string);
    expect(outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});
