import { describe, expect, it } from "vitest";
import {
  type AirSideReadings,
  airSideCapacity,
  moistAir,
  tryAirSideCapacity,
} from "../../../src/field/index.js";
import { celsius, type InputError, kelvinDifference, localAtmosphere } from "../../../src/units/index.js";

const readings: AirSideReadings = {
  mode: "cooling",
  flow: { volumeFlow: 600 / 3600, measuredAt: "supply", halfWidthFraction: 0.1 },
  returnAir: { dryBulb: celsius(27), wetBulb: celsius(19) },
  supplyAir: { dryBulb: celsius(14), wetBulb: celsius(13) },
  thermometer: { accuracy: { kind: "half-width", halfWidth: kelvinDifference(0.3) } },
  atmosphere: localAtmosphere({ from: "station-barometer", pressure: 101325 }),
};
const heating: AirSideReadings = {
  ...readings,
  mode: "heating",
  returnAir: { dryBulb: celsius(20), relativeHumidity: 0.4 },
  supplyAir: { dryBulb: celsius(42) },
  hygrometer: { halfWidth: 0.03 },
};
const exact = {
  thermometer: { accuracy: { kind: "standard-uncertainty", standardUncertainty: 0 } },
  atmosphere: { pressure: 101325, standardUncertainty: 0, because: "given" },
} as const;
const codes = (change: Partial<AirSideReadings>) =>
  airSideCapacity({ ...readings, ...change }).warnings.map(({ code }) => code);

describe("cooling", () => {
  const found = airSideCapacity(readings);

  it("is the flow of dry air times the change of what each kilogram holds", () => {
    const air = (t: number, wet: number) =>
      moistAir({ dryBulb: celsius(t), wetBulb: celsius(wet), pressure: 101325 });
    const [warm, cold] = [air(27, 19), air(14, 13)];
    expect(found.dryAirFlow).toBeWithin(600 / 3600 / cold.specificVolume, 1e-12);
    expect(found.total.value).toBeWithin(found.dryAirFlow * (warm.enthalpy - cold.enthalpy), 1e-12);
    expect(found.condensate!.value).toBeWithin(
      found.dryAirFlow * (warm.humidityRatio - cold.humidityRatio),
      1e-12,
    );
    // What condenses gives 2.55 MJ/kg at 27 °C: 2501 + 1.86 · 27.
    expect(found.latent!.value).toBeWithin(found.condensate!.value * 2551.22e3, 1e-9);
    expect(found.sensible.value + found.latent!.value).toBeWithin(found.total.value, 1e-12);
    expect(found.sensibleHeatRatio).toBeWithin(found.sensible.value / found.total.value, 1e-12);
    expect(found.returnAir).toEqual(warm);
    expect(found.supplyAir).toEqual(cold);
  });

  it("does not depend on where the flow was measured, if its volume there is told", () => {
    const { returnAir, supplyAir } = found;
    const volumeFlow = readings.flow.volumeFlow * (returnAir.specificVolume / supplyAir.specificVolume);
    const again = airSideCapacity({
      ...readings,
      flow: { ...readings.flow, volumeFlow, measuredAt: "return" },
    });
    expect(again.total.value).toBeWithin(found.total.value, 1e-12);
    // The same number taken for the other side is 5 % off.
    const mistaken = airSideCapacity({ ...readings, flow: { ...readings.flow, measuredAt: "return" } });
    expect(mistaken.total.value / found.total.value).toBeWithin(0.953, 2e-3);
  });

  it("comes near the quick rules, at sea level and on a mountain", () => {
    for (const pressure of [101325, 80e3]) {
      const here = airSideCapacity({ ...readings, atmosphere: { ...readings.atmosphere, pressure } });
      // 1.2 kg/m3 is the density of dry air at 21 °C; supply air of 14 °C is 1.5 to 2.5 % denser, its water included.
      const { total, sensible } = here.quickRules;
      expect(Math.abs(total / here.total.value - 1)).toBeLessThan(0.025);
      expect(Math.abs(sensible / here.sensible.value - 1)).toBeLessThan(0.03);
      expect(total).toBeGreaterThan(sensible);
    }
  });

  it("takes relative humidities for wet bulbs", () => {
    const { returnAir, supplyAir } = found;
    const again = airSideCapacity({
      ...readings,
      returnAir: { dryBulb: celsius(27), relativeHumidity: returnAir.relativeHumidity },
      supplyAir: { dryBulb: celsius(14), relativeHumidity: supplyAir.relativeHumidity },
      hygrometer: { halfWidth: 0.03 },
    });
    expect(again.total.value).toBeWithin(found.total.value, 1e-10);
    expect(again.total.expandedUncertainty).toBeGreaterThan(found.total.expandedUncertainty);
  });

  it("explains itself", () => {
    expect(found.because).toMatch(
      /^0\.202 kg\/s of dry air from 27 °C to 14 °C: 3475 ± 4\d\d W \(k = 2\) of cooling/,
    );
    expect(found.assumptions.join(" ")).toMatch(/steadily.*condensate/);
    expect(found.warnings).toEqual([]);
  });
});

describe("uncertainty", () => {
  it("of the flow alone is 2/√3 of its half-width", () => {
    const { total, sensible, condensate } = airSideCapacity({ ...readings, ...exact });
    for (const { value, expandedUncertainty } of [total, sensible, condensate!]) {
      expect(expandedUncertainty / value).toBeWithin(0.2 / Math.sqrt(3), 1e-9);
    }
  });

  it("is mostly that of the flow", () => {
    const { budget } = airSideCapacity(readings).total;
    expect(budget.map(({ input }) => input)).toEqual([
      "air-flow",
      "return-dry-bulb",
      "return-humidity",
      "supply-dry-bulb",
      "supply-humidity",
      "atmosphere",
    ]);
    // More than all others together.
    expect(budget[0]!.share).toBeGreaterThan(0.5);
    // The enthalpy of moist air hangs on the wet bulb; the dry bulb at the same wet bulb hardly moves it.
    expect(budget[1]!.share).toBeLessThan(0.05 * budget[2]!.share);
  });

  it("is the spread of what comes out of scattered readings", () => {
    // Rectangular errors of the same half-widths, drawn by a linear congruential generator; 4000 of them know a standard
    // deviation to 1/√8000 = 1.1 %, tried at four times that.
    let seed = 1;
    const draw = (): number => {
      seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
      return (2 * seed) / 2 ** 32 - 1;
    };
    const { flow, returnAir, supplyAir, atmosphere } = readings;
    const near = (temperature: number): number => temperature + 0.3 * draw();
    const values = Array.from({ length: 4000 }, () => {
      const scattered = airSideCapacity({
        ...readings,
        flow: { ...flow, volumeFlow: flow.volumeFlow * (1 + 0.1 * draw()) },
        returnAir: { dryBulb: near(returnAir.dryBulb), wetBulb: near(returnAir.wetBulb!) },
        supplyAir: { dryBulb: near(supplyAir.dryBulb), wetBulb: near(supplyAir.wetBulb!) },
        atmosphere: { ...atmosphere, pressure: atmosphere.pressure + 200 * draw() },
      });
      return [scattered.total.value, scattered.sensible.value, scattered.condensate!.value] as const;
    });
    const { total, sensible, condensate } = airSideCapacity(readings);
    for (const [index, { standardUncertainty }] of [total, sensible, condensate!].entries()) {
      const mean = values.reduce((sum, each) => sum + each[index]!, 0) / values.length;
      const variance =
        values.reduce((sum, each) => sum + (each[index]! - mean) ** 2, 0) / (values.length - 1);
      expect(Math.sqrt(variance) / standardUncertainty).toBeWithin(1, 0.045);
    }
  });

  it("keeps to one equation of the wick beside 0 °C", () => {
    const cold = airSideCapacity({
      ...readings,
      returnAir: { dryBulb: celsius(4), wetBulb: celsius(2) },
      supplyAir: { dryBulb: celsius(1), wetBulb: celsius(0) },
    });
    const beside = airSideCapacity({
      ...readings,
      returnAir: { dryBulb: celsius(4), wetBulb: celsius(2) },
      supplyAir: { dryBulb: celsius(1), wetBulb: celsius(0.1) },
    });
    // Across the step of 2e-4 kg/kg between water and ice a difference over 0.02 K would be seven times too steep.
    expect(cold.total.standardUncertainty).toBeWithin(beside.total.standardUncertainty, 0.05);
  });
});

describe("heating", () => {
  it("is sensible only, at the humidity of the return", () => {
    const found = airSideCapacity(heating);
    const { humidityRatio } = found.returnAir;
    expect(found.supplyAir.humidityRatio).toBeWithin(humidityRatio, 1e-12);
    const capacity = found.dryAirFlow * (1006 + 1860 * humidityRatio) * 22;
    expect(found.total.value).toBeWithin(capacity, 1e-10);
    expect(found.sensible.value).toBeWithin(capacity, 1e-10);
    expect(found.latent).toBeUndefined();
    expect(found.condensate).toBeUndefined();
    expect(found.sensibleHeatRatio).toBeWithin(1, 1e-10);
    expect(found.quickRules.total).toBe(found.quickRules.sensible);
    expect(found.assumptions.join(" ")).toMatch(/No water/);
    expect(found.warnings).toEqual([]);
    // Hot supply air is thin: the rule for 20 °C counts too much.
    expect(found.quickRules.total).toBeGreaterThan(1.05 * found.total.value);
  });

  it("hardly hangs on the humidity", () => {
    const { budget } = airSideCapacity(heating).total;
    expect(budget.find(({ input }) => input === "return-humidity")!.share).toBeLessThan(1e-3);
  });
});

describe("warnings of the air side", () => {
  it("check-probes: the supply is wetter than the return", () => {
    expect(codes({ supplyAir: { dryBulb: celsius(18), wetBulb: celsius(17.5) } })).toEqual(["check-probes"]);
    const message = (wetBulb: number) =>
      airSideCapacity({ ...readings, supplyAir: { dryBulb: celsius(18), wetBulb } }).warnings[0]!.message;
    expect(message(celsius(17.5))).toMatch(/more than the readings can be off/);
    // The return holds 10.45 g/kg, saturated at 14.7 °C; air of 18 °C with as much has a wet bulb of 15.9 °C.
    expect(message(celsius(15.95))).toMatch(/coil may be dry/);
  });

  it("wrong-direction: the unit does the other thing", () => {
    expect(codes({ supplyAir: { dryBulb: celsius(29), wetBulb: celsius(19) } })).toEqual(
      expect.arrayContaining(["wrong-direction"]),
    );
    const colder = airSideCapacity({ ...heating, supplyAir: { dryBulb: celsius(15) } });
    expect(colder.warnings.map(({ code }) => code)).toEqual(["wrong-direction"]);
    expect(colder.total.value).toBeLessThan(0);
    expect(colder.sensibleHeatRatio).toBeUndefined();
  });

  it("below-uncertainty: the difference is too small to see", () => {
    expect(codes({ supplyAir: { dryBulb: celsius(26.5), wetBulb: celsius(18.8) } })).toEqual([
      "below-uncertainty",
    ]);
  });
});

describe("refusals of the air side", () => {
  it.each<[string, unknown, string[]]>([
    ["no input", undefined, [""]],
    ["null", null, [""]],
    [
      "a list",
      [],
      [
        "mode",
        "flow.volumeFlow",
        "flow.measuredAt",
        "flow.halfWidthFraction",
        "atmosphere.pressure",
        "atmosphere.standardUncertainty",
        "returnAir.dryBulb",
        "returnAir",
        "thermometer.accuracy.kind",
      ],
    ],
    [
      "a flow that is none",
      { ...readings, flow: { volumeFlow: 0, measuredAt: "duct", halfWidthFraction: 10 } },
      ["flow.volumeFlow", "flow.measuredAt", "flow.halfWidthFraction"],
    ],
    [
      "a flow taken for exact",
      { ...readings, flow: { ...readings.flow, halfWidthFraction: 0 } },
      ["flow.halfWidthFraction"],
    ],
    ["an unknown mode", { ...readings, mode: "drying" }, ["mode"]],
    ["cooling without humidity", { ...readings, supplyAir: { dryBulb: celsius(14) } }, ["supplyAir"]],
    [
      "two humidities",
      { ...readings, returnAir: { dryBulb: 300, wetBulb: 290, relativeHumidity: 0.5 } },
      ["returnAir", "hygrometer.halfWidth"],
    ],
    ["a humidity of heated air", { ...heating, supplyAir: { dryBulb: 315, wetBulb: 295 } }, ["supplyAir"]],
    [
      "a wet bulb above the dry one",
      { ...readings, supplyAir: { dryBulb: 287, wetBulb: 288 } },
      ["supplyAir.wetBulb"],
    ],
    [
      "relative humidity without a hygrometer",
      { ...heating, hygrometer: undefined },
      ["hygrometer.halfWidth"],
    ],
    ["a hygrometer in per cent", { ...heating, hygrometer: { halfWidth: 3 } }, ["hygrometer.halfWidth"]],
    [
      "a pipe probe in air",
      { ...readings, thermometer: { accuracy: { kind: "pipe-probe", probe: "clamp" } } },
      ["thermometer.accuracy.kind"],
    ],
    [
      "an air pressure in hPa",
      { ...readings, atmosphere: { ...readings.atmosphere, pressure: 1013 } },
      ["atmosphere.pressure"],
    ],
    [
      "a heating supply colder than the dew point of the return",
      { ...heating, supplyAir: { dryBulb: celsius(2) } },
      ["supplyAir.dryBulb"],
    ],
  ])("%s", (_what, input, paths) => {
    const outcome = tryAirSideCapacity(input as AirSideReadings);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });

  it("air out of the range of the equations", () => {
    const outcome = tryAirSideCapacity({ ...heating, supplyAir: { dryBulb: celsius(95) } });
    expect(outcome.ok ? {} : outcome.error).toMatchObject({
      code: "out-of-range",
      quantity: "supplyAir.dryBulb",
    });
  });
});
