import { describe, expect, it } from "vitest";
import {
  tryWaterCarriedOff,
  tryWaterLatentHeat,
  tryWaterVapourDensity,
  tryWaterVapourVolume,
  WATER_TRIPLE_POINT,
  type WaterRemoval,
  waterCarriedOff,
  waterLatentHeat,
  waterVapourDensity,
  waterVapourPressure,
  waterVapourVolume,
} from "../../../src/field/index.js";
import {
  celsius,
  gram,
  hour,
  litrePerSecond,
  micron,
  NoSuchStateError,
  OutOfRangeError,
} from "../../../src/units/index.js";
import { trackWorst } from "../../support/worst.js";
import { olderWaterSaturationPressure } from "./older-water-curve.js";
import { refusedPaths } from "./refused-paths.js";

const worst = trackWorst("moisture");
/**
 * Temperature (K), specific volume of saturated vapour (m3/kg), latent heat (J/kg), density of the liquid (kg/m3): steam
 * tables of IAPWS-IF97 (from memory), to five digits.
 */
const STEAM_TABLE = [
  [293.15, 57.757, 2.4535e6, 998],
  [303.15, 32.878, 2.4298e6, 996],
  [313.15, 19.515, 2.406e6, 992],
  [323.15, 12.027, 2.3819e6, 988],
] as const;
/** Gas constant of water, J/(kg K), of IAPWS. */
const R = 461.523;

describe("water vapour", () => {
  it.each(STEAM_TABLE)("at %f K is a little lighter than saturated vapour of the tables", (T, volume) => {
    // An ideal gas: 0.14 % at 20 °C, 0.40 % at 50 °C.
    const off = 1 - waterVapourDensity(waterVapourPressure(T), T) * volume;
    expect(off).toBeGreaterThan(0);
    worst(`density at ${T} K`, off, 1.5e-3 * 2 ** ((T - 293.15) / 20), "the table");
  });

  it("fills the volume that its mass and density give, at any pressure up to that of the curve", () => {
    const T = celsius(20);
    for (const p of [1, 66.66, waterVapourPressure(T)]) {
      expect(waterVapourVolume(gram(1), p, T) * waterVapourDensity(p, T)).toBeWithin(1e-3, 1e-12);
    }
    expect(waterVapourVolume(0, 1, T)).toBe(0);
  });

  it("does not exist above its vapour pressure", () => {
    for (const degrees of [-20, 0, 20]) {
      const p = waterVapourPressure(celsius(degrees));
      expect(() => waterVapourDensity(1.001 * p, celsius(degrees))).toThrow(NoSuchStateError);
      expect(() => waterVapourVolume(1, 1.001 * p, celsius(degrees))).toThrow(NoSuchStateError);
    }
  });

  it("is refused with numbers that are none", () => {
    expect(refusedPaths(tryWaterVapourDensity(0, Number.NaN))).toEqual(["pressure", "temperature"]);
    expect(refusedPaths(tryWaterVapourVolume(-1, Number.NaN, "20" as unknown as number))).toEqual([
      "mass",
      "pressure",
      "temperature",
    ]);
    expect(() => waterVapourDensity(1, 20)).toThrow(OutOfRangeError);
  });
});

describe("latent heat", () => {
  it.each([
    // K and J/kg: steam tables of IAPWS-IF97 for liquid, IAPWS R10-06 for ice at the triple point (from memory). What is
    // left is the ideal vapour: 0.06 %, 0.13 %, 0.29 %, 0.55 %.
    [273.16, 2.5009e6, 7e-4],
    [293.15, 2.4535e6, 1.4e-3],
    [313.15, 2.406e6, 3e-3],
    [333.15, 2.3577e6, 6e-3],
    [273.16 - 1e-9, 2.8344e6, 7e-4],
    // Rogers, R. R., Yau, M. K., A Short Course in Cloud Physics, 3rd ed. (1989), table 2.1 (from memory), to 1 kJ/kg.
    [253.15, 2.838e6, 3.3e-4],
    [233.15, 2.839e6, 3.3e-4],
  ])("at %f K is that of the tables, a little high", (temperature, published, limit) => {
    const deviation = Math.abs(waterLatentHeat(temperature) / published - 1);
    worst(`latent heat at ${temperature.toFixed(2)} K`, deviation, limit, "the table");
  });

  it("is that of the tables once the vapour is real: T dp/dT (v'' − v') with their volumes", () => {
    for (const [T, volume, published, liquidDensity] of STEAM_TABLE) {
      const real = (waterVapourPressure(T) * (volume - 1 / liquidDensity)) / (R * T);
      const h = 1e-5 * T;
      const rise = Math.log(olderWaterSaturationPressure(T + h) / olderWaterSaturationPressure(T - h));
      const byOlderCurve = (-R * rise) / (1 / (T + h) - 1 / (T - h));
      // Half of the last digit of both columns. The older release meets it.
      const rounding = 5e-5;
      worst("by the curve of SR1-86", Math.abs((byOlderCurve * real) / published - 1), rounding, `${T} K`);
      // R7-97 swings about it: 1e-4 in pressure over some 20 K, which is 1.1e-4 in the slope.
      const slopes = Math.abs(waterLatentHeat(T) / byOlderCurve - 1);
      worst("slope of R7-97 against SR1-86", slopes, 1.2e-4, `${T} K`);
      worst(
        "by the curve of R7-97",
        Math.abs((waterLatentHeat(T) * real) / published - 1),
        slopes + rounding,
        `${T} K`,
      );
    }
  });

  it("jumps by the heat of melting at the triple point", () => {
    const T = WATER_TRIPLE_POINT.temperature;
    // 333.4 kJ/kg, IAPWS R10-06 and handbooks; both sides are 0.06 % high.
    const melting = waterLatentHeat(T - 1e-9) - waterLatentHeat(T);
    expect(melting).toBeWithin(333.4e3, 1e-3);
  });

  it("is the slope of the curve: Clausius and Clapeyron, by differences", () => {
    for (let T = 60; T < 333; T += 1.7) {
      const h = 1e-4 * T;
      if (Math.abs(T - 273.16) < h) continue;
      const rise = Math.log(waterVapourPressure(T + h) / waterVapourPressure(T - h));
      const slope = rise / (1 / (T + h) - 1 / (T - h));
      // Differences lose the square of the step; seen 2.3e-9.
      worst(
        "against differences",
        Math.abs((-waterLatentHeat(T) * 0.018015268) / (8.314462618 * slope) - 1),
        1e-8,
        `${T} K`,
      );
    }
  });

  it("is refused where the vapour is no ideal gas, or water is none", () => {
    expect(tryWaterLatentHeat(333.15).ok).toBe(true);
    for (const bad of [333.2, 700, 49, Number.NaN])
      expect(() => waterLatentHeat(bad)).toThrow(OutOfRangeError);
    expect(refusedPaths(tryWaterLatentHeat(undefined as unknown as number))).toEqual(["temperature"]);
  });
});

describe("water that a pump carries off", () => {
  const removal: WaterRemoval = {
    effectiveSpeed: litrePerSecond(0.05),
    vapourPressure: micron(2000),
    temperature: celsius(20),
    duration: hour(1),
  };

  it("is the vapour in the volume that it draws", () => {
    const result = waterCarriedOff(removal);
    // 180 L at 266.6 Pa and 293.15 K: n = p V/(R T), 18.015 g/mol.
    const grams = ((266.6447 * 0.18) / (8.314462618 * 293.15)) * 18.015268;
    expect(result.mass * 1000).toBeWithin(grams, 1e-6);
    expect(result.massFlow * 3600).toBeWithin(result.mass, 1e-12);
    // About 2.5 kJ for each gram.
    expect(result.heat / result.mass).toBeWithin(2.5e6, 0.02);
    expect(result.assumptions.join()).toMatch(/At most/);
    expect(waterCarriedOff({ ...removal, duration: 0 }).mass).toBe(0);
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    ["a list", [], ["effectiveSpeed", "vapourPressure", "temperature", "duration"]],
    [
      "numbers that are none",
      { effectiveSpeed: 0, vapourPressure: -1, temperature: Number.NaN, duration: -1 },
      ["effectiveSpeed", "vapourPressure", "temperature", "duration"],
    ],
  ])("refuses %s", (_what, input, paths) => {
    expect(refusedPaths(tryWaterCarriedOff(input as WaterRemoval))).toEqual(paths);
  });

  it("refuses a vapour that cannot be", () => {
    expect(() => waterCarriedOff({ ...removal, vapourPressure: 3000 })).toThrow(NoSuchStateError);
    expect(() => waterCarriedOff({ ...removal, temperature: celsius(70) })).toThrow(OutOfRangeError);
  });
});
