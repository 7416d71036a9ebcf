import { describe, expect, it } from "vitest";
import {
  type HoldReading,
  type NitrogenHold,
  nitrogenHold,
  tryNitrogenHold,
} from "../../../src/field/index.js";
import { r32 } from "../../../src/fluids/r-32.js";
import { r728 } from "../../../src/fluids/r-728.js";
import { refrigerantFrom } from "../../../src/state/index.js";
import {
  celsius,
  type InputError,
  type LocalAtmosphere,
  litre,
  megapascalGauge,
} from "../../../src/units/index.js";

const nitrogen = refrigerantFrom(r728);
const site: LocalAtmosphere = { pressure: 101325, standardUncertainty: 0, because: "as in the check value" };

const reading = (time: number, megapascal: number, temperature: number): HoldReading => ({
  time,
  pressure: megapascalGauge(megapascal),
  pipeTemperature: celsius(temperature),
});
const hold: NitrogenHold = {
  nitrogen,
  readings: [reading(0, 4.15, 20), reading(86400, 4.15, 20)],
  gauge: { accuracy: { kind: "half-width", halfWidth: 20e3 }, resolution: 10e3 },
  thermometer: { accuracy: { kind: "standard-uncertainty", standardUncertainty: 0.5 } },
  atmosphere: site,
  maximumAllowablePressure: megapascalGauge(4.15),
};
const between = (first: HoldReading, last: HoldReading, change: Partial<NitrogenHold> = {}) =>
  nitrogenHold({ ...hold, readings: [first, last], ...change });

describe("what a hold test can see", () => {
  it("is a threshold, and a limit that 95 of 100 tests find", () => {
    const result = between(reading(0, 4.15, 20), reading(3600, 4.15, 20), { internalVolume: litre(1.5) });
    // 1.645 is the 95th percentile of the normal distribution, in any table of it.
    expect(result.detectableDrop).toBeWithin((2 + 1.645) * result.standardUncertainty, 1e-12);
    expect(result.smallestVisibleDrop).toBeWithin(2 * result.standardUncertainty, 1e-12);
    expect(result.leak!.detectable / result.leak!.smallestVisible).toBeWithin(3.645 / 2, 1e-12);
    expect(result.because).toContain("could not have been seen");
  });

  it("offers the ideal gas only to compare", () => {
    // p₂ = p₁ T₂/T₁ by hand: 4.251325 MPa × 283.15/293.15 − 0.101325 MPa.
    const { comparison } = between(reading(0, 4.15, 20), reading(3600, 4.15, 10));
    expect(comparison.idealGas / 1e6).toBeWithin((4.251325 * 283.15) / 293.15 - 0.101325, 1e-12);
  });

  it("states no leak without a volume", () => {
    expect(between(reading(0, 4.15, 20), reading(3600, 4.15, 20)).leak).toBeUndefined();
  });
});

describe("verdict of a hold test", () => {
  it("sees a drop that temperature does not explain", () => {
    expect(between(reading(0, 4.15, 20), reading(86400, 4.12, 20))).toMatchObject({
      verdict: "fail",
      state: "drop",
    });
  });

  it("does not take a cooling evening for a leak", () => {
    const result = between(reading(0, 4.15, 25), reading(86400, 3.99, 15));
    expect(result).toMatchObject({ verdict: "pass", state: "no-drop-seen" });
    // The printed rule, 0.01 MPa/K, expects 4.05 MPa and would cry leak.
    expect(result.comparison.printedRule - 3.99e6).toBeGreaterThan(result.expandedUncertainty);
  });

  it("does not let a warming day hide a leak", () => {
    const result = between(reading(0, 4.0, 10), reading(86400, 4.05, 20));
    expect(result.state).toBe("drop");
  });

  it("finds a rise invalid", () => {
    expect(between(reading(0, 4.1, 20), reading(86400, 4.15, 20))).toMatchObject({
      verdict: "inconclusive",
      state: "invalid",
    });
  });

  it("is too short for what is required, unless it has already dropped", () => {
    const requiredDuration = 24 * 3600;
    const short = { requiredDuration };
    expect(between(reading(0, 4.15, 20), reading(7200, 4.15, 20), short)).toMatchObject({
      verdict: "inconclusive",
      state: "too-short",
    });
    expect(between(reading(0, 4.15, 20), reading(7200, 4.0, 20), short).state).toBe("drop");
    expect(between(reading(0, 4.15, 20), reading(86400, 4.15, 20), short).state).toBe("no-drop-seen");
  });

  it("counts the air pressure of both moments", () => {
    const air = (pressure: number): LocalAtmosphere => ({
      pressure,
      standardUncertainty: 115,
      because: "barometer",
    });
    const first = { ...reading(0, 4.15, 20), atmosphere: air(102500) };
    const last = { ...reading(86400, 4.15, 20), atmosphere: air(99500) };
    const result = between(first, last);
    // 3 kPa less air makes the gauge show 3 kPa more for the same gas.
    expect(result.expectedPressure).toBeWithin(4.153e6, 1e-9);
    expect(result.deviation).toBeWithin(-3000, 1e-5);
    expect(result.budget.find(({ input }) => input === "atmosphere")?.contribution).toBeWithin(
      115 * Math.SQRT2,
      1e-9,
    );
    expect(result.warnings.map(({ code }) => code)).toEqual([]);
  });

  it.each([
    ["strength-test-only", { maximumAllowablePressure: 4e6 }, 86400, 20],
    [
      "gauge-range-small",
      {
        gauge: {
          accuracy: { kind: "percent-of-full-scale", percent: 1, fullScale: 5e6 },
          resolution: 10e3,
        } as const,
      },
      86400,
      20,
    ],
    ["gauge-too-coarse", { gauge: { ...hold.gauge, resolution: 0.25e6 } }, 86400, 20],
    ["temperature-changed-much", {}, 86400, 31],
    ["shorter-than-an-hour", {}, 3500, 20],
    ["atmosphere-read-once", {}, 86400, 20],
  ])("warns: %s", (code, change, duration, temperature) => {
    const { warnings } = between(reading(0, 4.15, 20), reading(duration, 4.15, temperature), change);
    expect(warnings.map((warning) => warning.code)).toContain(code);
  });
});

describe("a logged series", () => {
  const series = (count: number, megapascalPerDay: number, noise: (index: number) => number = () => 0) =>
    Array.from({ length: count }, (_, index) => {
      const day = index / (count - 1);
      // The pipes cool by 4 K and warm up again; the gas follows at constant density.
      const temperature = celsius(20 - 4 * Math.sin(Math.PI * day));
      const { density } = nitrogen.state({ temperature: celsius(20), pressure: 4.251325e6 });
      const pressure = nitrogen.state({ temperature, density }).pressure - 101325;
      return {
        time: 86400 * day,
        pressure: pressure + 1e6 * megapascalPerDay * day + noise(index),
        pipeTemperature: temperature,
      };
    });

  it("finds no drop where only the temperature moved", () => {
    const result = nitrogenHold({ ...hold, readings: series(25, 0) });
    expect(result).toMatchObject({ method: "series", verdict: "pass", state: "no-drop-seen" });
    expect(Math.abs(result.deviation)).toBeLessThan(1);
    // Without scatter it is as sure as two readings, no surer.
    const two = nitrogenHold({ ...hold, readings: [series(25, 0)[0]!, series(25, 0)[24]!] });
    expect(result.expandedUncertainty).toBeWithin(two.expandedUncertainty, 1e-6);
  });

  it("finds a steady leak", () => {
    const result = nitrogenHold({ ...hold, readings: series(25, -0.05), internalVolume: litre(2) });
    expect(result.state).toBe("drop");
    // Temperature correction scales the loss by a few parts in a thousand.
    expect(result.deviation).toBeWithin(-50e3, 0.01);
  });

  it("counts its scatter with Student's factor", () => {
    const alternate = (index: number) => (index % 2 === 0 ? 5e3 : -5e3);
    const few = nitrogenHold({ ...hold, readings: series(4, 0, alternate) });
    const many = nitrogenHold({ ...hold, readings: series(100, 0, alternate) });
    const scatter = (result: typeof few) =>
      result.budget.find(({ input }) => input === "scatter")?.contribution ?? Number.NaN;
    expect(scatter(many)).toBeLessThan(scatter(few));
    expect(few.budget.find(({ input }) => input === "scatter")?.because).toContain("4.5");
    // 100 independent readings of ±5 kPa: error of the slope times duration, √12 · 5 kPa/√100, factor 2.03 over 2.
    expect(scatter(many)).toBeWithin(((Math.sqrt(12) * 5e3) / 10) * (2.027 / 2), 0.03);
  });

  it("trusts readings that move together less, and warns of them", () => {
    const swing = (index: number) => 5e3 * Math.sin(index / 8);
    const result = nitrogenHold({ ...hold, readings: series(100, 0, swing) });
    expect(result.warnings.map(({ code }) => code)).toContain("not-settled");
    const independent = nitrogenHold({
      ...hold,
      readings: series(100, 0, (index) => 5e3 * Math.sin(index * 8)),
    });
    expect(independent.warnings.map(({ code }) => code)).not.toContain("not-settled");
    expect(result.expandedUncertainty).toBeGreaterThan(independent.expandedUncertainty);
  });
});

describe("bad hold tests", () => {
  it.each<[string, Partial<NitrogenHold>, string[]]>([
    ["another gas", { nitrogen: refrigerantFrom(r32) }, ["nitrogen"]],
    ["no gas", { nitrogen: undefined as unknown as NitrogenHold["nitrogen"] }, ["nitrogen"]],
    ["one reading", { readings: [reading(0, 4, 20)] }, ["readings"]],
    ["no readings", { readings: undefined as unknown as HoldReading[] }, ["readings"]],
    [
      "nothing for a reading",
      { readings: [reading(0, 4, 20), null as unknown as HoldReading] },
      ["readings[1].time", "readings[1].time", "readings[1].pressure", "readings[1].pipeTemperature"],
    ],
    ["time that stands still", { readings: [reading(5, 4, 20), reading(5, 4, 20)] }, ["readings[1].time"]],
    [
      "time that runs back in a series",
      { readings: [reading(0, 4, 20), reading(60, 4, 20), reading(30, 4, 20)] },
      ["readings[2].time"],
    ],
    [
      "a pressure above 1.1 PS",
      { readings: [reading(0, 4.57, 20), reading(60, 4.5, 20)] },
      ["readings[0].pressure"],
    ],
    ["no pressure", { readings: [reading(0, 0, 20), reading(60, 4, 20)] }, ["readings[0].pressure"]],
    ["no resolution", { gauge: { accuracy: { kind: "half-width", halfWidth: 1 } } }, ["gauge.resolution"]],
    [
      "numbers that are none",
      {
        maximumAllowablePressure: Number.NaN,
        requiredDuration: -1,
        internalVolume: 0,
        atmosphere: { ...site, pressure: 0 },
      },
      ["atmosphere.pressure", "maximumAllowablePressure", "requiredDuration", "internalVolume"],
    ],
    [
      "an air pressure that is none",
      {
        readings: [
          { ...reading(0, 4, 20), atmosphere: { ...site, standardUncertainty: -1 } },
          reading(60, 4, 20),
        ],
      },
      ["readings[0].atmosphere.standardUncertainty"],
    ],
  ])("are refused: %s", (_what, change, paths) => {
    const outcome = tryNitrogenHold({ ...hold, ...change });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });

  it("take 1.1 PS itself", () => {
    // 1.1 × 4.15 MPa = 4.565 MPa; EN 378-2 factor from memory.
    const { warnings } = between(reading(0, 4.565, 20), reading(86400, 4.565, 20));
    expect(warnings.map(({ code }) => code)).toContain("strength-test-only");
  });
});
