import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type TargetSuperheatQuestion,
  targetSuperheat,
  tryTargetSuperheat,
} from "../../../src/field/index.js";
import {
  celsius,
  fahrenheit,
  type InputError,
  inCelsius,
  inFahrenheitDifference,
} from "../../../src/units/index.js";
import "../../support/fuzz-seed.js";

const thermometer = { accuracy: { kind: "half-width", halfWidth: 0.5 } } as const;
const question: TargetSuperheatQuestion = {
  meteringDevice: "fixed-orifice",
  mode: "cooling",
  returnAirWetBulb: fahrenheit(67),
  outdoorDryBulb: fahrenheit(95),
  wetBulbThermometer: thermometer,
  dryBulbThermometer: thermometer,
};
const at = (wetBulb: number, dryBulb: number) =>
  targetSuperheat({
    ...question,
    returnAirWetBulb: fahrenheit(wetBulb),
    outdoorDryBulb: fahrenheit(dryBulb),
  });

describe("target superheat of a fixed orifice (common practice formula, no source)", () => {
  it("is that of the formula at the usual rating point", () => {
    const result = at(67, 95);
    // (3 · 67 − 80 − 95)/2 = 13 °F.
    expect(result.state).toBe("usable");
    expect(inFahrenheitDifference(result.target ?? Number.NaN)).toBeWithin(13, 1e-9);
    expect(result.raw).toBe(result.target);
    expect(result.because).toContain("WB 67 °F (19.4 °C) and DB 95 °F (35 °C)");
    expect(result.assumptions.join(" ")).toContain("chart on the unit");
  });

  it("is the same by the formula for °C, (5.4 WB − 1.8 DB − 16)/3.6", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 283.2, max: 297.5, noNaN: true }),
        fc.double({ min: 286, max: 319, noNaN: true }),
        (returnAirWetBulb, outdoorDryBulb) => {
          const { raw } = targetSuperheat({ ...question, returnAirWetBulb, outdoorDryBulb });
          const expected = (5.4 * inCelsius(returnAirWetBulb) - 1.8 * inCelsius(outdoorDryBulb) - 16) / 3.6;
          expect(Math.abs(raw - expected)).toBeLessThan(1e-8);
        },
      ),
      { numRuns: 200 },
    );
  });

  it("counts both thermometers and the fit", () => {
    const { budget, expandedUncertainty } = at(67, 95);
    const parts = [(1.5 * 0.5) / Math.sqrt(3), (0.5 * 0.5) / Math.sqrt(3), (2 * 5) / 9 / Math.sqrt(3)];
    expect(budget.map(({ input }) => input)).toEqual(["wet bulb", "dry bulb", "fit"]);
    for (const [index, part] of parts.entries()) expect(budget[index]?.contribution).toBeWithin(part, 1e-12);
    expect(expandedUncertainty).toBeWithin(2 * Math.hypot(...parts), 1e-12);
  });

  it.each([
    [63, 99, 5, "usable"],
    [63, 99.1, 4.95, "below-usable-range"],
    [60, 105, -2.5, "below-usable-range"],
    [73, 59, 40, "usable"],
    [73.1, 59, 40.15, "check-inputs"],
    [76, 55, 46.5, "check-inputs"],
  ])("with %f °F wet and %f °F outdoors is %f °F: %s", (wetBulb, dryBulb, expected, state) => {
    const result = at(wetBulb, dryBulb);
    expect(inFahrenheitDifference(result.raw)).toBeWithin(expected, 1e-9);
    expect(result.state).toBe(state);
    expect(result.target === undefined).toBe(state !== "usable");
  });

  it("takes the ends of its range in either unit", () => {
    expect(() => at(50, 55)).not.toThrow();
    expect(() => at(76, 115)).not.toThrow();
    // 10 °C is 50 °F, whatever the last bit says.
    expect(targetSuperheat({ ...question, returnAirWetBulb: celsius(10) }).state).toBe("below-usable-range");
  });

  it.each([
    [49.9, 95],
    [76.1, 95],
    [67, 54.9],
    [67, 115.1],
  ])("is out of range at %f °F wet and %f °F outdoors", (wetBulb, dryBulb) => {
    const outcome = tryTargetSuperheat({
      ...question,
      returnAirWetBulb: fahrenheit(wetBulb),
      outdoorDryBulb: fahrenheit(dryBulb),
    });
    expect(outcome).toMatchObject({ ok: false, error: { code: "out-of-range", unit: "K" } });
  });

  it.each([
    ["thermostatic-valve", "cooling", ["no-target-for-valve"]],
    ["electronic-valve", "cooling", ["no-target-for-valve"]],
    ["fixed-orifice", "heating", ["no-target-in-heating"]],
    ["electronic-valve", "heating", ["no-target-for-valve", "no-target-in-heating"]],
  ] as const)("is refused for %s in %s", (meteringDevice, mode, reasons) => {
    const outcome = tryTargetSuperheat({ ...question, meteringDevice, mode });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) {
      expect((outcome.error as InputError).problems.map(({ reason }) => reason)).toEqual(reasons);
    }
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    [
      "an empty question",
      {},
      [
        "meteringDevice",
        "mode",
        "returnAirWetBulb",
        "outdoorDryBulb",
        "wetBulbThermometer.accuracy.kind",
        "dryBulbThermometer.accuracy.kind",
      ],
    ],
    ["a device that is none", { ...question, meteringDevice: "tap" }, ["meteringDevice"]],
    ["air of NaN", { ...question, outdoorDryBulb: Number.NaN }, ["outdoorDryBulb"]],
  ])("refuses %s", (_what, input, paths) => {
    const outcome = tryTargetSuperheat(input as TargetSuperheatQuestion);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});
