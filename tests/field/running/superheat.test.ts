import { describe, expect, it } from "vitest";
import {
  type LineReading,
  saturationSlope,
  subcooling,
  superheat,
  trySubcooling,
  trySuperheat,
} from "../../../src/field/index.js";
import { r32 } from "../../../src/fluids/r-32.js";
import {
  type Refrigerant,
  refrigerantFrom,
  type Saturation,
  refrigerant as toRefrigerant,
} from "../../../src/state/index.js";
import {
  celsius,
  type InputError,
  inCelsius,
  type LocalAtmosphere,
  megapascalGauge,
  pressureAtAltitude,
} from "../../../src/units/index.js";
import { changed } from "../changed.js";

const refrigerant = refrigerantFrom(r32);
const seaLevel: LocalAtmosphere = { pressure: 101325, standardUncertainty: 1732, because: "sea level" };

const suction: LineReading = {
  refrigerant,
  mode: "cooling",
  port: "gas-line",
  pressure: megapascalGauge(0.8),
  lineTemperature: celsius(10),
  atmosphere: seaLevel,
  gauge: { accuracy: { kind: "percent-of-full-scale", percent: 0.5, fullScale: megapascalGauge(3) } },
  thermometer: { accuracy: { kind: "half-width", halfWidth: 1 } },
};
const liquid: LineReading = {
  ...suction,
  port: "liquid-line",
  pressure: megapascalGauge(2.6),
  lineTemperature: celsius(38),
};

const asBlend = (point: Saturation): Saturation => ({
  ...point,
  vapour: changed(point.vapour, { composition: { a: 0.5, b: 0.5 } }),
});
/** R-32 dressed as a blend: takes the route that blends take. */
const dressed = changed(refrigerant, {
  dew: (at) => asBlend(refrigerant.dew(at)),
  bubble: (at) => asBlend(refrigerant.bubble(at)),
});

describe("superheat", () => {
  it("of R-32 at sea level", () => {
    // Another implementation of the same equation: half the last printed digit.
    const result = superheat(suction);
    expect(Math.abs(inCelsius(result.saturationTemperature) - 3.25631)).toBeLessThan(1e-4);
    expect(Math.abs(result.value - 6.74369)).toBeLessThan(1e-4);
    expect(result.pressure).toBe(901325);
    expect(result.saturationEnd).toBe("dew");
    expect(result.warnings).toEqual([]);
  });

  it("of R-32 at 2000 m, and what sea level would get wrong", () => {
    const atmosphere = { ...seaLevel, pressure: pressureAtAltitude(2000) };
    const high = superheat({ ...suction, atmosphere });
    expect(Math.abs(inCelsius(high.saturationTemperature) - 2.473877)).toBeLessThan(1e-4);
    expect(Math.abs(high.value - superheat(suction).value - 0.7824333)).toBeLessThan(1e-4);
  });

  it("carries a budget of thermometer, gauge and atmosphere", () => {
    const { budget, slope, standardUncertainty, expandedUncertainty } = superheat(suction);
    expect(budget.map(({ input }) => input)).toEqual(["thermometer", "gauge", "atmosphere"]);
    const parts = [1 / Math.sqrt(3), (slope * 15e3) / Math.sqrt(3), slope * 1732];
    for (const [index, part] of parts.entries()) expect(budget[index]?.contribution).toBeWithin(part, 1e-12);
    expect(standardUncertainty).toBeWithin(Math.hypot(...parts), 1e-12);
    expect(expandedUncertainty).toBeWithin(2 * standardUncertainty, 1e-12);
  });

  it("counts the equation of state when told how good it is", () => {
    const equationUncertainty = { standardUncertainty: 0.05, source: "stated with the equation" };
    const { budget, assumptions } = superheat({ ...suction, equationUncertainty });
    expect(budget[3]).toMatchObject({ input: "equation-of-state", contribution: 0.05 });
    expect(assumptions.join(" ")).not.toContain("exact");
    expect(superheat(suction).assumptions.join(" ")).toContain("exact");
  });

  it.each([
    [2, "saturated-within-uncertainty"],
    [4, "saturated-within-uncertainty"],
    [0, "check-probe-or-liquid"],
  ])("warns at a pipe of %f °C: %s", (line, code) => {
    const { warnings } = superheat({ ...suction, lineTemperature: celsius(line) });
    expect(warnings.map((warning) => warning.code)).toEqual([code]);
  });

  it("warns of a reading low on the scale and of a clamp pulled by the air", () => {
    const gauge = {
      accuracy: { kind: "accuracy-class", accuracyClass: 1.6, scaleMinimum: -0.1e6, scaleMaximum: 3.8e6 },
    } as const;
    const thermometer = { accuracy: { kind: "pipe-probe", probe: "clamp" } } as const;
    const codes = (change: Partial<LineReading>) =>
      superheat({ ...suction, ...change }).warnings.map((warning) => warning.code);
    expect(codes({ gauge })).toEqual(["low-on-scale"]);
    expect(codes({ thermometer, ambientTemperature: celsius(35) })).toEqual(["clamp-pulled-by-air"]);
    expect(codes({ thermometer, ambientTemperature: celsius(20) })).toEqual([]);
  });

  it("reads the suction side only: in heating the gas line is the discharge", () => {
    expect(superheat({ ...suction, mode: "heating", port: "compressor-suction" }).value).toBeGreaterThan(0);
    expect(() => superheat({ ...suction, mode: "heating" })).toThrow(/discharge/);
    const outcome = trySuperheat({ ...suction, port: "liquid-line" });
    expect(outcome).toMatchObject({
      ok: false,
      error: { code: "malformed-input", problems: [{ path: "port", reason: "port-not-on-low-side" }] },
    });
  });
});

describe("subcooling", () => {
  it("is counted from the bubble point down", () => {
    const result = subcooling(liquid);
    expect(result.saturationEnd).toBe("bubble");
    expect(result.value).toBeWithin(result.saturationTemperature - celsius(38), 1e-12);
    expect(result.value).toBeGreaterThan(0);
    expect(result.because).toMatch(/subcooling .* bubble point .* of R-32 at 2701 kPa absolute/);
  });

  it("warns of flash gas", () => {
    const { saturationTemperature } = subcooling(liquid);
    const codes = (line: number) =>
      subcooling({ ...liquid, lineTemperature: line }).warnings.map((warning) => warning.code);
    expect(codes(saturationTemperature + 5)).toEqual(["check-probe-or-flash-gas"]);
    expect(codes(saturationTemperature + 0.1)).toEqual(["saturated-within-uncertainty"]);
  });

  it("warns near the critical point", () => {
    const gauge = { accuracy: { kind: "half-width", halfWidth: 1e4 } } as const;
    const hot = { ...liquid, gauge, pressure: megapascalGauge(5.2), lineTemperature: celsius(60) };
    expect(subcooling(hot).warnings.map((warning) => warning.code)).toEqual(["near-critical"]);
  });

  it("is refused where there is no port on a liquid line", () => {
    for (const port of ["after-expansion", "gas-line", "compressor-suction"] as const) {
      const outcome = trySubcooling({ ...liquid, port });
      expect(outcome.ok).toBe(false);
      if (outcome.ok) continue;
      expect((outcome.error as InputError).problems).toMatchObject([
        { path: "port", value: port, reason: "no-liquid-port" },
      ]);
    }
  });
});

describe("ends of the glide", () => {
  const never = () => {
    throw new Error("wrong end of the glide");
  };

  it("are not mixed up: superheat asks for dew points alone, subcooling for bubble points alone", () => {
    expect(
      superheat({ ...suction, refrigerant: changed(refrigerant, { bubble: never, saturation: never }) })
        .value,
    ).toBe(superheat(suction).value);
    expect(
      subcooling({ ...liquid, refrigerant: changed(refrigerant, { dew: never, saturation: never }) }).value,
    ).toBe(subcooling(liquid).value);
  });
});

describe("slope of the saturation curve", () => {
  it.each([
    // Computed from an independent implementation of the same equation, K/MPa to 0.01.
    [0, 38.4],
    [5, 34.09],
    [10, 30.4],
    [20, 24.49],
    [30, 20.01],
    [40, 16.55],
    [45, 15.1],
    [50, 13.81],
  ])("of R-32 at %f °C", (temperature, expected) => {
    const { pressure } = refrigerant.saturation({ temperature: celsius(temperature) });
    const point = saturationSlope(refrigerant, "dew", pressure);
    expect(Math.abs(point.slope * 1e6 - expected)).toBeLessThanOrEqual(0.005);
    expect(point.temperature).toBeWithin(celsius(temperature), 1e-9);
  });

  it("by Clapeyron agrees with the difference that blends use", () => {
    for (const pressure of [0.2e6, 0.9e6, 2e6, 4e6]) {
      for (const end of ["dew", "bubble"] as const) {
        // Step 1e-3: truncation is below its square times the curvature of ln p over 1/T, 1e-6.
        expect(saturationSlope(dressed, end, pressure).slope).toBeWithin(
          saturationSlope(refrigerant, end, pressure).slope,
          1e-6,
        );
      }
    }
  });
});

describe("bad line readings", () => {
  it.each<[string, Partial<LineReading>, string[]]>([
    ["no refrigerant", { refrigerant: undefined as unknown as Refrigerant }, ["refrigerant"]],
    ["no mode", { mode: undefined as unknown as "cooling" }, ["mode", "port"]],
    ["no port", { port: "tap" as "gas-line" }, ["port"]],
    ["a pipe at 0 K", { lineTemperature: 0 }, ["lineTemperature"]],
    ["no pressure", { pressure: Number.NaN }, ["pressure"]],
    ["more than a full vacuum", { pressure: -101400 }, ["pressure"]],
    ["a pressure off the scale", { pressure: 3.1e6 }, ["pressure"]],
    [
      "no atmosphere",
      { atmosphere: undefined as unknown as LocalAtmosphere },
      ["atmosphere.pressure", "atmosphere.standardUncertainty"],
    ],
    ["air at 0 K", { ambientTemperature: 0 }, ["ambientTemperature"]],
    [
      "an equation worse than nothing",
      { equationUncertainty: { standardUncertainty: -1, source: "" } },
      ["equationUncertainty.standardUncertainty"],
    ],
    [
      "no instruments",
      { gauge: undefined as unknown as LineReading["gauge"], thermometer: {} as LineReading["thermometer"] },
      ["gauge.accuracy.kind", "thermometer.accuracy.kind"],
    ],
  ])("are refused: %s", (_what, change, paths) => {
    const outcome = trySuperheat({ ...suction, ...change });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });

  it("are out of range above the critical pressure", () => {
    const gauge = { accuracy: { kind: "half-width", halfWidth: 1e4 } } as const;
    const outcome = trySuperheat({ ...suction, gauge, pressure: megapascalGauge(5.9) });
    expect(outcome.ok).toBe(false);
  });
});

describe("readings of a blend", () => {
  const r407c = toRefrigerant("R-407C");
  const low = {
    ...suction,
    refrigerant: r407c,
    pressure: megapascalGauge(0.45),
    lineTemperature: celsius(14),
  };
  const high = {
    ...liquid,
    refrigerant: r407c,
    pressure: megapascalGauge(1.7),
    lineTemperature: celsius(37),
  };

  it("count superheat from the dew point and subcooling from the bubble point", () => {
    const warm = superheat(low);
    const dew = r407c.dew({ pressure: warm.pressure }).temperature;
    expect(warm.saturationEnd).toBe("dew");
    expect(warm.saturationTemperature).toBe(dew);
    expect(warm.value).toBeWithin(celsius(14) - dew, 1e-12);
    const cold = subcooling(high);
    const bubble = r407c.bubble({ pressure: cold.pressure }).temperature;
    expect(cold.saturationEnd).toBe("bubble");
    expect(cold.saturationTemperature).toBe(bubble);
    expect(cold.value).toBeWithin(bubble - celsius(37), 1e-12);
    // The other end lies five or six kelvin away.
    expect(dew - r407c.bubble({ pressure: warm.pressure }).temperature).toBeGreaterThan(5);
    expect(r407c.dew({ pressure: cold.pressure }).temperature - bubble).toBeGreaterThan(4);
  });

  it("count the stated deviation of the mixture model as half-width, unless told better", () => {
    const { budget, assumptions, pressure, slope } = superheat(low);
    const model = budget.find(({ input }) => input === "mixture-model")!;
    const { deviation } = r407c.mixing!;
    expect(model.contribution).toBeWithin((slope * deviation * pressure) / Math.sqrt(3), 1e-12);
    expect(model.because).toContain("R-407C");
    expect(assumptions.join()).not.toContain("exact");
    const told = superheat({ ...low, equationUncertainty: { standardUncertainty: 0.1, source: "measured" } });
    expect(told.budget.map(({ input }) => input)).toEqual([
      "thermometer",
      "gauge",
      "atmosphere",
      "equation-of-state",
    ]);
  });
});
