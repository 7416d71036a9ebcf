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
import { refusedPaths } from "./refused-paths.js";

const worst = trackWorst("moisture");
/** Second virial coefficient of water, m3/mol: Harvey and Lemmon, J. Phys. Chem. Ref. Data 33 (2004) 369 (from memory). */
const virial = (T: number) => {
  const t = T / 100;
  return 1e-3 * (0.34404 * t ** -0.5 - 0.75826 * t ** -0.8 - 24.219 * t ** -3.35 - 3978.2 * t ** -8.3);
};

describe("water vapour", () => {
  it.each([
    // Density of saturated vapour, g/m3, steam tables of IAPWS-IF97 (from memory), with the compressibility that the ideal
    // gas leaves out: 1 + B p/(R T).
    [10, 9.41, 5e-4],
    [20, 17.31, 5e-4],
    [30, 30.42, 5e-4],
    [40, 51.24, 5e-4],
  ])("at %f °C has the density of the tables", (degrees, printed, rounding) => {
    const T = celsius(degrees);
    const p = waterVapourPressure(T);
    const Z = 1 + (virial(T) * p) / (8.314462618 * T);
    expect((1000 * waterVapourDensity(p, T)) / Z).toBeWithin(printed, rounding);
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
    // MJ/kg: 2.5009 at 0.01 °C and the rest by the steam tables of IAPWS-IF97; 2.8344 of ice by IAPWS R10-06 (all from
    // memory). Deviation seen: 0.06 %, 0.13 %, 0.29 %, 0.55 %; ice 0.06 %. It is the ideal vapour.
    [0.01, 2.5009e6, 7e-4],
    [20, 2.4535e6, 1.4e-3],
    [40, 2.406e6, 3e-3],
    [60, 2.3577e6, 6e-3],
    [0.01 - 1e-9, 2.8344e6, 7e-4],
    // Smithsonian Meteorological Tables, 6th ed. (from memory), −20 and −40 °C.
    [-20, 2.8383e6, 3e-4],
    [-40, 2.8387e6, 3e-4],
  ])("at %f °C is that of the tables, a little high", (degrees, published, limit) => {
    const found = waterLatentHeat(celsius(degrees));
    worst(
      "against tables, never more than the docs say",
      Math.abs(found / published - 1),
      limit,
      `${degrees} °C`,
    );
  });

  it("is that of the tables to their rounding, once the vapour is real and the liquid has a volume", () => {
    for (const [degrees, published] of [
      [0.01, 2.5009e6],
      [10, 2.4772e6],
      [20, 2.4535e6],
      [30, 2.4298e6],
      [40, 2.406e6],
      [50, 2.3819e6],
    ] as const) {
      const T = celsius(degrees);
      const p = waterVapourPressure(T);
      const Z = 1 + (virial(T) * p) / (8.314462618 * T);
      // Volume of the liquid over that of the vapour.
      const liquid = p / (461.523 * T * 995);
      const real = waterLatentHeat(T) * (Z - liquid);
      // Half of the last digit is 2e-5; the virial coefficient is sure to 1 % or so, of at most 0.4 %.
      worst("with real vapour", Math.abs(real / published - 1), 1e-4, `${degrees} °C`);
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
      // Differences lose the square of the step; measured 5e-8.
      worst(
        "against differences",
        Math.abs((-waterLatentHeat(T) * 0.018015268) / (8.314462618 * slope) - 1),
        2e-7,
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
