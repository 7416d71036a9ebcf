import { describe, expect, it } from "vitest";
import {
  airSideCapacity,
  compareWithNameplate,
  type NameplateQuestion,
  tryCompareWithNameplate,
} from "../../../src/field/index.js";
import { celsius, type InputError } from "../../../src/units/index.js";

const common = {
  flow: { volumeFlow: 600 / 3600, measuredAt: "supply", halfWidthFraction: 0.05 },
  thermometer: { accuracy: { kind: "half-width", halfWidth: 0.2 } },
  hygrometer: { halfWidth: 0.02 },
  atmosphere: { pressure: 101325, standardUncertainty: 100, because: "given" },
} as const;
const cooling = (dry = 27, wet = 19, supply = 13) =>
  airSideCapacity({
    ...common,
    mode: "cooling",
    returnAir: { dryBulb: celsius(dry), wetBulb: celsius(wet) },
    supplyAir: { dryBulb: celsius(14), wetBulb: celsius(supply) },
  });
const heating = airSideCapacity({
  ...common,
  mode: "heating",
  returnAir: { dryBulb: celsius(20), relativeHumidity: 0.4 },
  supplyAir: { dryBulb: celsius(42) },
});
/** 3475 W measured, ± 7 % (k = 2). */
const question: NameplateQuestion = {
  measured: cooling(),
  ratedCapacity: 3500,
  allowedShortfall: 0.1,
  outdoorAir: { dryBulb: celsius(35) },
  fullLoad: "yes",
};

describe("a capacity against the nameplate", () => {
  it.each([
    [3500, "pass"],
    // The least allowed, 3330 W and 3600 W, lie within the uncertainty.
    [3700, "inconclusive"],
    [4000, "inconclusive"],
    [4500, "fail"],
  ])("of %f W at rating conditions: %s", (ratedCapacity, verdict) => {
    const found = compareWithNameplate({ ...question, ratedCapacity });
    expect(found.verdict).toBe(verdict);
    expect(found.isComparable).toBe(true);
    expect(found.conditions.map(({ name }) => name)).toEqual([
      "return-dry-bulb",
      "return-wet-bulb",
      "outdoor-dry-bulb",
    ]);
    expect(found.ratio).toBeWithin(question.measured.total.value / ratedCapacity, 1e-12);
    expect(found.because).toMatch(/cooling capacity 3475 ± \d+ W .* of which 10 % may be missing/);
  });

  it.each<[string, Partial<NameplateQuestion>, RegExp]>([
    [
      "outdoors too cool",
      { outdoorAir: { dryBulb: celsius(31.9) } },
      /outdoor-dry-bulb 31\.9 °C is more than 3 K from the 35 °C/,
    ],
    ["indoors too warm", { measured: cooling(29.1, 19) }, /return-dry-bulb/],
    ["indoors too dry", { measured: cooling(27, 17.9) }, /return-wet-bulb/],
    ["at part load", { fullLoad: "no" }, /full load: no/],
    ["at a load nobody knows", { fullLoad: "unknown" }, /full load: unknown/],
  ])("says nothing %s", (_what, change, reason) => {
    const found = compareWithNameplate({ ...question, ratedCapacity: 9000, ...change });
    expect(found).toMatchObject({ verdict: "inconclusive", isComparable: false, decision: undefined });
    expect(found.because).toMatch(reason);
  });

  it("says nothing while the probes contradict each other", () => {
    const measured = airSideCapacity({
      ...common,
      mode: "cooling",
      returnAir: { dryBulb: celsius(27), wetBulb: celsius(19) },
      supplyAir: { dryBulb: celsius(18), wetBulb: celsius(17.5) },
    });
    const found = compareWithNameplate({ ...question, measured });
    expect(found.verdict).toBe("inconclusive");
    expect(found.because).toMatch(/cannot be held against the nameplate 3500 W: check-probes/);
  });

  it("fails a unit that hardly cools, though the capacity is below its uncertainty", () => {
    const measured = airSideCapacity({
      ...common,
      mode: "cooling",
      returnAir: { dryBulb: celsius(27), wetBulb: celsius(19) },
      supplyAir: { dryBulb: celsius(26.5), wetBulb: celsius(18.8) },
    });
    expect(measured.warnings.map(({ code }) => code)).toEqual(["below-uncertainty"]);
    expect(compareWithNameplate({ ...question, measured }).verdict).toBe("fail");
  });

  it("takes the edge of what is close enough", () => {
    const at = (dry: number, wet: number, outdoor: number) =>
      compareWithNameplate({
        ...question,
        measured: cooling(dry, wet),
        outdoorAir: { dryBulb: celsius(outdoor) },
      });
    expect(at(29, 20, 38).isComparable).toBe(true);
    expect(at(25, 18, 32).isComparable).toBe(true);
  });

  it("of heating looks at the outdoor wet bulb too, and not at the humidity indoors", () => {
    const ofHeating: NameplateQuestion = {
      ...question,
      measured: heating,
      ratedCapacity: 4000,
      outdoorAir: { dryBulb: celsius(7), wetBulb: celsius(6) },
    };
    const found = compareWithNameplate(ofHeating);
    expect(found.verdict).toBe("pass");
    expect(found.conditions.map(({ name }) => name)).toEqual([
      "return-dry-bulb",
      "outdoor-dry-bulb",
      "outdoor-wet-bulb",
    ]);
    const frosty = { dryBulb: celsius(4), wetBulb: celsius(2) };
    expect(compareWithNameplate({ ...ofHeating, outdoorAir: frosty }).because).toMatch(
      /outdoor-wet-bulb 2 °C/,
    );
  });

  it.each<[string, unknown, string[]]>([
    ["no input", undefined, [""]],
    ["null", null, [""]],
    [
      "a list",
      [],
      [
        "measured.mode",
        "measured.total.value",
        "measured.total.expandedUncertainty",
        "measured.returnAir.dryBulb",
        "measured.returnAir.wetBulb",
        "measured.warnings",
        "ratedCapacity",
        "allowedShortfall",
        "outdoorAir.dryBulb",
        "fullLoad",
      ],
    ],
    ["a nameplate that is none", { ...question, ratedCapacity: 0 }, ["ratedCapacity"]],
    ["a shortfall in per cent", { ...question, allowedShortfall: 10 }, ["allowedShortfall"]],
    ["a guess at the load", { ...question, fullLoad: true }, ["fullLoad"]],
    ["heating without the wet bulb outdoors", { ...question, measured: heating }, ["outdoorAir.wetBulb"]],
    [
      "a wet bulb above the dry one",
      { ...question, outdoorAir: { dryBulb: celsius(35), wetBulb: celsius(36) } },
      ["outdoorAir.wetBulb"],
    ],
  ])("refuses %s", (_what, input, paths) => {
    const outcome = tryCompareWithNameplate(input as NameplateQuestion);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});
