import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type MultipleEvacuation,
  multipleEvacuation,
  tryMultipleEvacuation,
} from "../../../src/field/index.js";
import { refusedPaths } from "./refused-paths.js";

const triple: MultipleEvacuation = { pulls: [199.98, 199.98, 66.66], breaks: [101325, 101325] };

describe("several evacuations", () => {
  it("leave what counting moles leaves", () => {
    // 1 m3 at 300 K: air and nitrogen as amounts, mixed at each break, both thinned alike by each pull.
    const RT = 8.314462618 * 300;
    let air = 101325 / RT;
    let nitrogen = 0;
    for (const [index, pull] of triple.pulls.entries()) {
      const kept = pull / RT / (air + nitrogen);
      air *= kept;
      nitrogen *= kept;
      const fill = triple.breaks[index];
      if (fill !== undefined) nitrogen += fill / RT - air - nitrogen;
    }
    const { residualAir, dilution } = multipleEvacuation(triple);
    expect(residualAir).toBeWithin(air * RT, 1e-9);
    expect(dilution).toBeWithin((199.98 / 101325) * (66.66 / 101325), 1e-12);
  });

  it("leave all of the last pressure after one pull, and less after each more", () => {
    expect(multipleEvacuation({ pulls: [300], breaks: [] })).toMatchObject({ residualAir: 300, dilution: 1 });
    const pull = fc.double({ min: 1, max: 5000, noNaN: true });
    const fill = fc.double({ min: 20_000, max: 3e5, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(pull, fill), { minLength: 2, maxLength: 6 }), (steps) => {
        const { residualAirAfterPulls, residualAir } = multipleEvacuation({
          pulls: steps.map(([each]) => each),
          breaks: steps.slice(1).map(([, each]) => each),
        });
        expect(residualAirAfterPulls).toHaveLength(steps.length);
        expect(residualAirAfterPulls.at(-1)).toBe(residualAir);
        for (let i = 1; i < steps.length; i++) {
          expect(residualAirAfterPulls[i]).toBeLessThan(residualAirAfterPulls[i - 1]!);
          // Never more air than there is gas.
          expect(residualAirAfterPulls[i]).toBeLessThanOrEqual(steps[i]![0]);
        }
      }),
      { numRuns: 200 },
    );
  });

  it("say nothing about water, and that", () => {
    const { assumptions, because } = multipleEvacuation(triple);
    expect(assumptions.join()).toMatch(/nothing about liquid water/);
    expect(because).toContain("101.3 kPa");
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    ["a list", [], ["pulls", "breaks"]],
    ["no pulls", { pulls: [], breaks: [] }, ["pulls"]],
    ["one break for all", { ...triple, breaks: 101325 }, ["breaks"]],
    ["a break too few", { ...triple, breaks: [101325] }, ["breaks"]],
    ["a break in gauge pressure", { ...triple, breaks: [0, 101325] }, ["breaks[0]"]],
    ["a break not above the pull before", { ...triple, breaks: [199.98, 101325] }, ["breaks[0]"]],
    ["a break not above the pull after", { pulls: [100, 300], breaks: [200] }, ["breaks[0]"]],
    [
      "pulls that are none",
      { ...triple, pulls: [Number.NaN, -1, "66"] },
      ["pulls[0]", "pulls[1]", "pulls[2]"],
    ],
  ])("refuse %s", (_what, input, paths) => {
    expect(refusedPaths(tryMultipleEvacuation(input as MultipleEvacuation))).toEqual(paths);
  });
});
