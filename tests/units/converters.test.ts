import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  celsius,
  celsiusDifference,
  fahrenheit,
  fahrenheitDifference,
  InputError,
  inCelsius,
  inFahrenheit,
  inFahrenheitDifference,
  inKelvin,
  inRankine,
  kelvin,
  kelvinDifference,
  rankine,
} from "../../src/units/index.js";
import { CONVERTER_NAMES, convertersOf, WAYS_BACK } from "./converters.js";
import "../support/fuzz-seed.js";

/*
 * Second computation of every factor, in decimal arithmetic and, where there is a choice, from another definition than
 * the one in src/. Sources: ISO 80000-1:2009 and NIST Special Publication 811 (2008), appendix B, for the units of
 * mechanics; ISO 80000-5:2019 for the International Table Btu, 1055.05585262 J. All from memory; all exact.
 */
const d = (value: string | number): Decimal => new Decimal(value);
const FOOT = d("0.3048");
const INCH = d("0.0254");
const POUND = d("0.45359237");
const OUNCE = d("0.028349523125");
const POUND_FORCE = d("4.4482216152605");
const BTU = d("1055.05585262");
const MERCURY = d("13595.1").times("9.80665");
const WATER = d(1000).times("9.80665");

const PRESSURES: Readonly<Record<string, Decimal>> = {
  pascal: d(1),
  hectopascal: d(100),
  kilopascal: d(1000),
  megapascal: d(1000000),
  bar: d(100000),
  millibar: d(100),
  psi: POUND_FORCE.dividedBy(INCH.times(INCH)),
  kilogramForcePerSquareCentimetre: d("9.80665").dividedBy("0.0001"),
  atmosphere: d(101325),
  torr: d(101325).dividedBy(760),
  micron: d(101325).dividedBy(760).dividedBy(1000),
  millimetreOfMercury: MERCURY.times("0.001"),
  centimetreOfMercury: MERCURY.times("0.01"),
  inchOfMercury: MERCURY.times(INCH),
  metreOfWater: WATER,
  inchOfWater: WATER.times(INCH),
};

const OTHERS: Readonly<Record<string, Decimal>> = {
  kelvinDifference: d(1),
  celsiusDifference: d(1),
  fahrenheitDifference: d(5).dividedBy(9),
  kilogram: d(1),
  gram: d("0.001"),
  pound: OUNCE.times(16),
  ounce: OUNCE,
  kilogramPerMetre: d(1),
  gramPerMetre: d("0.001"),
  ouncePerFoot: OUNCE.dividedBy(FOOT),
  poundPerFoot: OUNCE.times(16).dividedBy(FOOT),
  kilogramPerCubicMetre: d(1),
  kilogramPerLitre: d(1000),
  poundPerCubicFoot: POUND.dividedBy(INCH.times(12).pow(3)),
  metre: d(1),
  centimetre: d("0.01"),
  millimetre: d("0.001"),
  foot: INCH.times(12),
  inch: FOOT.dividedBy(12),
  squareMetre: d(1),
  squareFoot: INCH.times(12).pow(2),
  cubicMetre: d(1),
  litre: d("0.001"),
  millilitre: d("0.000001"),
  cubicFoot: INCH.pow(3).times(1728),
  joulePerKilogram: d(1),
  kilojoulePerKilogram: d(1000),
  btuPerPound: BTU.dividedBy(POUND),
  joulePerKilogramKelvin: d(1),
  kilojoulePerKilogramKelvin: d(1000),
  btuPerPoundRankine: BTU.dividedBy(POUND).times(9).dividedBy(5),
  watt: d(1),
  kilowatt: d(1000),
  btuPerHour: BTU.dividedBy(3600),
  tonOfRefrigeration: BTU.times(200).dividedBy(60),
  newtonMetre: d(1),
  kilogramForceCentimetre: d("0.0980665"),
  poundForceFoot: POUND_FORCE.times(FOOT),
  second: d(1),
  minute: d(60),
  hour: d(3600),
  day: d(86400),
  year: d("365.25").times(86400),
  metrePerSecond: d(1),
  footPerMinute: FOOT.dividedBy(60),
  cubicMetrePerSecond: d(1),
  cubicMetrePerHour: d(1).dividedBy(3600),
  litrePerSecond: d("0.001"),
  litrePerMinute: d("0.001").dividedBy(60),
  cubicFootPerMinute: FOOT.pow(3).dividedBy(60),
};

const GAUGES = Object.keys(PRESSURES).filter((name) => name !== "torr" && name !== "micron");
const FACTORS: Readonly<Record<string, Decimal>> = {
  ...PRESSURES,
  ...Object.fromEntries(GAUGES.map((name) => [`${name}Gauge`, PRESSURES[name] ?? d(Number.NaN)])),
  ...Object.fromEntries(Object.entries(PRESSURES).map(([name, factor]) => [`${name}Difference`, factor])),
  ...OTHERS,
};
const TEMPERATURES = ["kelvin", "celsius", "fahrenheit", "rankine"];

/** A factor may be the product of five doubles, each rounded by at most 1.1e-16. */
const ROUNDING = 6e-16;

describe("converters", () => {
  it("are all in the tables of this file, each with its way back", () => {
    expect([...CONVERTER_NAMES].sort()).toEqual([...Object.keys(FACTORS), ...TEMPERATURES].sort());
    expect(WAYS_BACK.length).toBe(CONVERTER_NAMES.length);
  });

  it.each(Object.entries(FACTORS))("%s has the factor of its definition", (name, factor) => {
    const { from, into } = convertersOf(name);
    expect(from(1)).toBeWithin(factor.toNumber(), ROUNDING);
    expect(into(1)).toBeWithin(d(1).dividedBy(factor).toNumber(), ROUNDING);
    expect(from(0)).toBe(0);
  });

  it.each(Object.keys(FACTORS))("%s is undone by its way back", (name) => {
    const { from, into } = convertersOf(name);
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (value) => {
        expect(into(from(value))).toBeWithin(value, 4e-16);
      }),
    );
  });

  it.each(TEMPERATURES)("%s is undone by its way back", (name) => {
    const { from, into } = convertersOf(name);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3000, noNaN: true }), (temperature) => {
        // Two roundings at the size of the absolute temperature in the smaller degree, at most 5400 °R.
        expect(Math.abs(from(into(temperature)) - temperature)).toBeLessThan(2e-12);
      }),
    );
  });
});

/*
 * Fixed points by definition: ISO 80000-5:2019, t/°C = T/K − 273.15; t/°F = (9/5) T/K − 459.67. Tolerance: rounding of
 * doubles near 700, 1.1e-13.
 */
const FIXED_POINTS = [
  { K: 0, C: -273.15, F: -459.67, R: 0, why: "absolute zero" },
  { K: 233.15, C: -40, F: -40, R: 419.67, why: "the two scales meet" },
  { K: 255.3722222222222, C: -17.77777777777778, F: 0, R: 459.67, why: "zero of °F" },
  { K: 273.15, C: 0, F: 32, R: 491.67, why: "zero of °C" },
  { K: 273.16, C: 0.01, F: 32.018, R: 491.688, why: "triple point of water" },
  { K: 310.15, C: 37, F: 98.6, R: 558.27, why: "a human body" },
  { K: 373.15, C: 100, F: 212, R: 671.67, why: "a hundred degrees" },
];

describe("temperature scales", () => {
  it.each(FIXED_POINTS)("agree at $K K: $why", ({ K, C, F, R }) => {
    for (const temperature of [kelvin(K), celsius(C), fahrenheit(F), rankine(R)]) {
      expect(Math.abs(temperature - K)).toBeLessThan(3e-13);
    }
    expect(Math.abs(inKelvin(K) - K)).toBeLessThan(3e-13);
    expect(Math.abs(inCelsius(K) - C)).toBeLessThan(3e-13);
    expect(Math.abs(inFahrenheit(K) - F)).toBeLessThan(3e-13);
    expect(Math.abs(inRankine(K) - R)).toBeLessThan(3e-13);
  });

  it("give the difference of two temperatures without an offset", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 300, noNaN: true }),
        fc.double({ min: -50, max: 50, noNaN: true }),
        (t, step) => {
          expect(Math.abs(fahrenheit(t + step) - fahrenheit(t) - fahrenheitDifference(step))).toBeLessThan(
            1e-12,
          );
          expect(Math.abs(celsius(t + step) - celsius(t) - celsiusDifference(step))).toBeLessThan(1e-12);
        },
      ),
    );
    expect(inFahrenheitDifference(kelvinDifference(-5))).toBeWithin(-9, ROUNDING);
  });
});

const NOT_FINITE = [
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  "9",
  null,
  undefined,
  {},
  9n,
];
/** Lowest number each converter takes; not listed: any finite number. */
const LOWEST: Readonly<Record<string, number>> = {
  ...Object.fromEntries(Object.keys(PRESSURES).map((name) => [name, 0])),
  ...Object.fromEntries(
    [
      ["kilogramPerMetre", "gramPerMetre", "ouncePerFoot", "poundPerFoot"],
      ["kilogramPerCubicMetre", "kilogramPerLitre", "poundPerCubicFoot"],
      ["squareMetre", "squareFoot", "cubicMetre", "litre", "millilitre", "cubicFoot"],
      ["second", "minute", "hour", "day", "year"],
    ]
      .flat()
      .map((name) => [name, 0]),
  ),
  kelvin: 0,
  celsius: -273.15,
  fahrenheit: -459.67,
  rankine: 0,
};

describe("what converters refuse", () => {
  it.each(CONVERTER_NAMES)("%s and its way back refuse what is no finite number", (name) => {
    const { from, into } = convertersOf(name);
    for (const bad of NOT_FINITE) {
      expect(() => from(bad as number)).toThrow(InputError);
      expect(() => into(bad as number)).toThrow(InputError);
    }
  });

  it.each(Object.entries(LOWEST))("%s takes %f and nothing below", (name, lowest) => {
    const { from, into } = convertersOf(name);
    expect(from(lowest)).toBe(0);
    expect(into(0)).toBe(lowest);
    expect(() => from(lowest - 1e-9)).toThrow(InputError);
    expect(() => into(-1e-9)).toThrow(InputError);
  });

  it.each(CONVERTER_NAMES.filter((name) => !(name in LOWEST)))("%s takes a negative number", (name) => {
    const { from, into } = convertersOf(name);
    expect(into(from(-3))).toBeWithin(-3, 4e-16);
  });

  it("refuse a number that is finite only before the conversion", () => {
    expect(() => convertersOf("megapascal").from(1e305)).toThrow(InputError);
  });

  it("say what would be right", () => {
    expect(() => celsius(-300)).toThrow(
      "input: expected a temperature in °C, a finite number, -273.15 or more, got -300",
    );
    expect(() => inCelsius(-1)).toThrow(
      "input: expected a temperature in K, a finite number, 0 or more, got -1",
    );
    expect(() => fahrenheitDifference(Number.NaN)).toThrow(
      "input: expected a temperature difference in °F, a finite number, got NaN",
    );
  });
});
