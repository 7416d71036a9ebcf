import { describe, expect, it } from "vitest";
import {
  airAt20Celsius,
  type RiseAsLeak,
  riseAsLeak,
  riseTest,
  tryRiseAsLeak,
} from "../../../src/field/index.js";
import { celsius, litre, micron, micronDifference, minute, year } from "../../../src/units/index.js";
import { refusedPaths } from "./refused-paths.js";

const question: RiseAsLeak = {
  internalVolume: litre(1.5),
  rise: micronDifference(1000),
  duration: minute(10),
  airPressure: 101325,
  air: airAt20Celsius(),
  refrigerant: { pressure: 1474.6e3, viscosity: 12.4e-6, molarMass: 0.052024 },
};

describe("a rise taken for a leak", () => {
  it("is tens of kilograms of refrigerant a year: the rise that a standard allows shows no tightness", () => {
    const { viscousMassFlow, molecularMassFlow, assumptions } = riseAsLeak(question);
    // 13.4 times the air that comes in: √(M_A/M_B) Δp_B/Δp_A = 0.7462 × 13.553 = 10.11, by hand.
    expect(molecularMassFlow * year(1)).toBeWithin((3.33306e-4 * 10.113 * 0.673571) / 1e-6 / 1000, 1e-3);
    expect(viscousMassFlow * year(1)).toBeGreaterThan(10);
    expect(assumptions.join()).toMatch(/none of it is water/);
  });

  it("has the throughput of the rise test", () => {
    const test = riseTest({
      samples: [
        { time: 0, pressure: micron(500) },
        { time: 600, pressure: micron(1500) },
      ],
      gauge: { accuracy: { kind: "percent-of-reading", percent: 10 } },
      repeatability: 0.5,
      startMaximum: 66.7,
      settlingTime: 60,
      coldestTemperature: celsius(15),
      warmestTemperature: celsius(25),
      internalVolume: litre(1.5),
    });
    expect(riseAsLeak(question).throughput).toBeWithin(test.throughput!, 1e-12);
    expect(riseAsLeak({ ...question, rise: 0 }).viscousMassFlow).toBe(0);
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", null, [""]],
    [
      "a list",
      [],
      [
        "internalVolume",
        "rise",
        "duration",
        "airPressure",
        "air.viscosity",
        "air.molarMass",
        "air.temperature",
        "refrigerant.pressure",
        "refrigerant.viscosity",
        "refrigerant.molarMass",
      ],
    ],
    ["a fall", { ...question, rise: -1 }, ["rise"]],
    [
      "refrigerant below the air",
      { ...question, refrigerant: { ...question.refrigerant, pressure: 1e5 } },
      ["refrigerant.pressure"],
    ],
  ])("refuses %s", (_what, input, paths) => {
    expect(refusedPaths(tryRiseAsLeak(input as RiseAsLeak))).toEqual(paths);
  });
});
