import { describe, expect, it } from "vitest";
import {
  iceSublimationPressure,
  iceSublimationTemperature,
  tryIceSublimationPressure,
  tryIceSublimationTemperature,
  tryWaterBoilingTemperature,
  tryWaterSaturationPressure,
  tryWaterSaturationTemperature,
  tryWaterVapourPressure,
  WATER_TRIPLE_POINT,
  waterBoilingTemperature,
  waterSaturationPressure,
  waterSaturationTemperature,
  waterVapourPressure,
} from "../../../src/field/index.js";
import { celsius, inCelsius, micron, OutOfRangeError } from "../../../src/units/index.js";
import { trackWorst } from "../../support/worst.js";
import { olderWaterSaturationPressure } from "./older-water-curve.js";

const worst = trackWorst("water vapour curve");

describe("saturation pressure of water", () => {
  it.each([
    // IAPWS R7-97(2012), table 35 (from memory): printed to 9 digits.
    ["R7-97 table 35", 300, 3536.58941, 2e-9],
    ["R7-97 table 35", 500, 2.63889776e6, 2e-9],
    ["R7-97 table 35", 600, 1.23443146e7, 2e-9],
  ])("%s at %f K", (_id, temperature, pressure, tolerance) => {
    expect(waterSaturationPressure(temperature)).toBeWithin(pressure, tolerance);
  });

  it.each([
    // IAPWS R7-97(2012), table 36 (from memory): printed to 9 digits.
    ["R7-97 table 36", 1e5, 372.755919, 2e-9],
    ["R7-97 table 36", 1e6, 453.035632, 2e-9],
    ["R7-97 table 36", 1e7, 584.149488, 2e-9],
  ])("%s temperature at %f Pa", (_id, pressure, temperature, tolerance) => {
    expect(waterSaturationTemperature(pressure)).toBeWithin(temperature, tolerance);
  });

  it("agrees with the older release, an equation of another form, over the whole range", () => {
    // Both releases follow the same measurements; the older one states 0.025 % for itself (from memory).
    for (let T = 273.16; T < 647.096; T += 0.1) {
      const deviation = Math.abs(waterSaturationPressure(T) / olderWaterSaturationPressure(T) - 1);
      worst("R7-97 against SR1-86", deviation, 2.5e-4, `${T.toFixed(2)} K`);
    }
    // Both are made to meet the same critical point, 22.064 MPa at 647.096 K.
    expect(waterSaturationPressure(647.096)).toBeWithin(22.064e6, 1e-6);
    expect(olderWaterSaturationPressure(647.096)).toBe(22.064e6);
  });

  it("is undone by its inverse over the whole range", () => {
    for (let T = 273.15; T < 647.096; T += 0.71) {
      // R7-97 states that its two equations agree to the last digits; near the critical end the curve loses some.
      expect(waterSaturationTemperature(waterSaturationPressure(T))).toBeWithin(T, 1e-10);
    }
  });
});

describe("sublimation pressure of ice", () => {
  it.each([
    // IAPWS R14-08(2011), check value for computer programs.
    [230, "8.94735"],
  ])("at %f K", (temperature, printed) => {
    expect(iceSublimationPressure(temperature)).toRoundTo(printed);
  });

  it("is undone by its inverse over the whole range", () => {
    for (let T = 50; T <= 273.16; T += 0.37) {
      expect(iceSublimationTemperature(iceSublimationPressure(T))).toBeWithin(T, 1e-12);
    }
  });

  it("meets the liquid at the triple point", () => {
    const { temperature, pressure } = WATER_TRIPLE_POINT;
    // The exponents of R14-08 are printed to nine digits: the sum of the coefficients leaves 3e-10.
    expect(iceSublimationPressure(temperature)).toBeWithin(pressure, 1e-9);
    // 611.657 Pa is printed to six digits.
    expect(waterSaturationPressure(temperature)).toBeWithin(pressure, 1e-6);
  });
});

describe("water leaves below", () => {
  it.each([
    [100, -39.67],
    [200, -33.36],
    [300, -29.51],
    [500, -24.48],
    [1000, -17.31],
    [1500, -12.92],
    [2000, -9.71],
    [3000, -5.05],
    [4000, -1.64],
    [5000, 1.2],
    [10000, 11.23],
    [20000, 22.13],
  ])("%f micron, computed independently to 0.01 K", (microns, expected) => {
    expect(Math.abs(inCelsius(waterBoilingTemperature(micron(microns))) - expected)).toBeLessThanOrEqual(
      0.005,
    );
  });

  it("is the inverse of the vapour pressure on either side of the triple point", () => {
    for (let T = 150; T < 640; T += 1.3) {
      expect(waterBoilingTemperature(waterVapourPressure(T))).toBeWithin(T, 1e-10);
    }
  });

  it("rises with pressure, also across the triple point", () => {
    let before = 0;
    for (let p = 600; p < 625; p += 0.01) {
      const T = waterBoilingTemperature(p);
      expect(T).toBeGreaterThan(before);
      before = T;
    }
  });
});

describe("outside their range", () => {
  it.each([
    [waterSaturationPressure, [273.14, 647.2]],
    [waterSaturationTemperature, [611, 22.1e6]],
    [iceSublimationPressure, [49.9, 273.17]],
    [iceSublimationTemperature, [0, 611.7]],
    [waterVapourPressure, [49.9, 647.2]],
    [waterBoilingTemperature, [0, 22.1e6]],
  ])("the functions refuse, NaN included: %o", (convert: (value: number) => number, bad) => {
    for (const value of [...bad, Number.NaN, -1]) expect(() => convert(value)).toThrow(OutOfRangeError);
  });

  it("the twins say so without throwing", () => {
    expect(tryWaterVapourPressure(celsius(20)).ok).toBe(true);
    expect(tryWaterVapourPressure(1).ok).toBe(false);
    expect(tryWaterBoilingTemperature(270).ok).toBe(true);
    expect(tryWaterBoilingTemperature(0).ok).toBe(false);
    expect(tryWaterSaturationPressure(300)).toEqual({ ok: true, value: waterSaturationPressure(300) });
    expect(tryWaterSaturationPressure(200).ok).toBe(false);
    expect(tryWaterSaturationTemperature(1e5)).toEqual({ ok: true, value: waterSaturationTemperature(1e5) });
    expect(tryWaterSaturationTemperature(1).ok).toBe(false);
    expect(tryIceSublimationPressure(230)).toEqual({ ok: true, value: iceSublimationPressure(230) });
    expect(tryIceSublimationPressure(300).ok).toBe(false);
    expect(tryIceSublimationTemperature(10)).toEqual({ ok: true, value: iceSublimationTemperature(10) });
    expect(tryIceSublimationTemperature(1e3).ok).toBe(false);
  });
});
