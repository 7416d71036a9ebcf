import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CycleEnthalpies, cyclePerformance, tryCyclePerformance } from "../../src/cycle/index.js";
import type { InputError } from "../../src/units/index.js";

/** Round numbers, worked by hand. */
const enthalpies: CycleEnthalpies = { suction: 400e3, discharge: 450e3, liquid: 250e3 };

describe("cycle arithmetic", () => {
  it("gives heats, work and coefficients of performance", () => {
    const found = cyclePerformance({ ...enthalpies, isentropicDischarge: 440e3, massFlow: 0.02 });
    expect(found).toMatchObject({
      coolingEffect: 150e3,
      compressionWork: 50e3,
      heatRejected: 200e3,
      coolingCop: 3,
      heatingCop: 4,
      isentropicEfficiency: 0.8,
      coolingCapacity: 3000,
      compressorPower: 1000,
      heatingCapacity: 4000,
    });
    expect(found.because).toBe(
      "cooling 150.00 kJ/kg, work 50.00 kJ/kg, heat given off 200.00 kJ/kg: COP 3.000 cooling, 4.000 heating",
    );
  });

  it("says nothing about a size or an efficiency that it was not told", () => {
    expect(cyclePerformance(enthalpies)).toMatchObject({
      isentropicEfficiency: undefined,
      massFlow: undefined,
      coolingCapacity: undefined,
      compressorPower: undefined,
      heatingCapacity: undefined,
    });
  });

  it("takes an evaporator inlet of its own, and then assumes no throttling", () => {
    const warmed = cyclePerformance({ ...enthalpies, evaporatorInlet: 260e3 });
    expect(warmed.coolingEffect).toBe(140e3);
    expect(warmed.heatRejected).toBe(200e3);
    const plain = cyclePerformance(enthalpies);
    expect(plain.assumptions.length).toBe(warmed.assumptions.length + 1);
    expect(plain.assumptions.join(" ")).toMatch(/expansion device/);
  });

  it("does not depend on where enthalpy is counted from", () => {
    fc.assert(
      fc.property(fc.integer({ min: -500_000, max: 500_000 }), (shift) => {
        const moved = cyclePerformance({
          suction: enthalpies.suction + shift,
          discharge: enthalpies.discharge + shift,
          liquid: enthalpies.liquid + shift,
        });
        expect(moved).toEqual(cyclePerformance(enthalpies));
      }),
      { numRuns: 200 },
    );
  });

  it.each<[string, unknown, string[]]>([
    ["no input", undefined, [""]],
    ["null", null, [""]],
    ["a list", [], ["suction", "discharge", "liquid"]],
    [
      "what are no numbers",
      { suction: Number.NaN, discharge: "450e3", liquid: Number.POSITIVE_INFINITY, massFlow: 0 },
      ["suction", "discharge", "liquid", "massFlow"],
    ],
    ["a discharge below the suction", { ...enthalpies, discharge: 399e3 }, ["discharge"]],
    ["no work at all", { ...enthalpies, discharge: 400e3 }, ["discharge"]],
    ["liquid above the vapour", { ...enthalpies, liquid: 401e3 }, ["liquid"]],
    ["an evaporator that gives off heat", { ...enthalpies, evaporatorInlet: 400e3 }, ["evaporatorInlet"]],
    [
      "a compressor better than one without losses",
      { ...enthalpies, isentropicDischarge: 451e3 },
      ["isentropicDischarge"],
    ],
    [
      "a compression without losses and without work",
      { ...enthalpies, isentropicDischarge: 400e3 },
      ["isentropicDischarge"],
    ],
  ])("refuses %s", (_what, input, paths) => {
    const outcome = tryCyclePerformance(input as never);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});
