import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  formatGaugePressure,
  formatPressure,
  type GaugePressureUnit,
  InputError,
  type PressureUnit,
  parseAbsolutePressure,
  parseGaugePressure,
  parsePressure,
  tryParseAbsolutePressure,
  tryParseGaugePressure,
  tryParsePressure,
} from "../../src/units/index.js";
import "../support/fuzz-seed.js";

const PSI = 6894.757293168361;

describe("parsePressure", () => {
  it.each([
    ["9.5 bar abs", 950000],
    ["9.5 bar abs.", 950000],
    ["9.5 bara", 950000],
    ["9.5 bar(a)", 950000],
    ["9.5 bar a", 950000],
    ["9.5 BARA", 950000],
    ["9.5 bar absolute", 950000],
    ["9.5bar-a", 950000],
    ["14.7 psia", 14.7 * PSI],
    ["14.7 PSIA", 14.7 * PSI],
    ["0.95 MPa abs", 950000],
    ["0.95 MPaA", 950000],
    ["950 kPa(abs)", 950000],
    ["101325 Pa a", 101325],
    ["101325 Paa", 101325],
    ["760 mmHg abs", 101325.0144354],
    ["1 ata", 98066.5],
    ["1 atm abs", 101325],
    ["500 micron", 66.66118421052632],
    ["500 microns abs", 66.66118421052632],
    ["500 µmHg", 66.66118421052632],
    ["5 Torr", 666.6118421052632],
    ["0 bar abs", 0],
  ])("reads %s as absolute", (text, pressure) => {
    const reading = parsePressure(text);
    expect(reading.kind).toBe("absolute");
    expect(reading.pressure).toBeWithin(pressure, 1e-15);
  });

  it.each([
    ["9.5 bar gauge", 950000],
    ["9.5 barg", 950000],
    ["9.5 bar(g)", 950000],
    ["9.5 bar g", 950000],
    ["9.5 bar ga.", 950000],
    ["115 psig", 115 * PSI],
    ["115 PSIG", 115 * PSI],
    ["115 psi gauge", 115 * PSI],
    ["0.8 MPaG", 800000],
    ["0.8 MPa(G)", 800000],
    ["0.8 MPa-G", 800000],
    ["-0.1 MPa gauge", -100000],
    ["8 kgf/cm2 G", 784532],
    ["8 kg/cm²g", 784532],
    ["800 kPag", 800000],
    ["100 Pag", 100],
    ["-755 mmHg gauge", -100658.40249832501],
    ["-755 mmHgg", -100658.40249832501],
    ["59 cmHg vac", -78660.20857485],
    ["59 cmHg vacuum", -78660.20857485],
    ["28 inHg vac.", -94818.881929548],
    ['28 "Hg vac', -94818.881929548],
    ["0 inHg vac", 0],
  ])("reads %s as gauge", (text, pressure) => {
    const reading = parsePressure(text);
    expect(reading.kind).toBe("gauge");
    expect(reading.pressure).toBeWithin(pressure, 2e-15);
    expect(Object.is(reading.pressure, -0)).toBe(false);
  });

  it.each(["9.5 bar", "115 psi", "-30 inHg", "0.8 MPa", "1 atm", "101325 Pa", "760 mmHg", "8 kg/cm2"])(
    "refuses the bare %s, and takes it where the caller says what it is",
    (text) => {
      expect(() => parsePressure(text)).toThrow("gauge or");
      expect(parsePressure(text, { bare: "gauge" })).toEqual({
        kind: "gauge",
        pressure: parseGaugePressure(text),
      });
      if (text.startsWith("-")) expect(() => parsePressure(text, { bare: "absolute" })).toThrow(InputError);
      else expect(parsePressure(text, { bare: "absolute" }).kind).toBe("absolute");
    },
  );

  it("believes the text rather than the caller", () => {
    expect(parsePressure("9.5 bar abs", { bare: "gauge" }).kind).toBe("absolute");
    expect(parsePressure("9.5 bar gauge", { bare: "absolute" }).kind).toBe("gauge");
  });

  it.each(["500 micron gauge", "5 Torr gauge", "500 microns vacuum", "500 micron vac"])(
    "refuses %s: the scale is absolute",
    (text) => {
      expect(() => parsePressure(text)).toThrow("an absolute pressure, because a scale in");
    },
  );

  it("refuses a negative absolute pressure and a negative vacuum", () => {
    expect(() => parsePressure("-0.1 bar abs")).toThrow("0 or more");
    expect(() => parsePressure("-5 Torr")).toThrow("0 or more");
    expect(() => parsePressure("-28 inHg vac")).toThrow("a vacuum as a positive number");
  });

  it.each([
    ["42 kg gauge", "kgf/cm²"],
    ["42 kg", "kgf/cm²"],
    ["42 kilos", "kgf/cm²"],
    ["4.15 mPa gauge", "MPa with capitals"],
    ["4.15 mpa", "MPa with capitals"],
    ["3 Mbar abs", "mbar with a small m"],
    ["250 lbs", "psi"],
    ["28 in vac", "inHg"],
    ['28" vac', "inHg"],
  ])("refuses %s with a hint", (text, hint) => {
    expect(() => parsePressure(text)).toThrow(hint);
  });

  it.each([
    "",
    "bar",
    "9.5",
    "9.5 gauge",
    "9.5 g",
    "9.5 abs",
    "9.5 barx",
    "9.5 bar d",
    "9,5 barg",
    "9.5 bar gauge abs",
    "9.5 °C",
  ])("refuses %j", (text) => {
    expect(() => parsePressure(text)).toThrow(InputError);
    expect(tryParsePressure(text).ok).toBe(false);
  });

  it("says where and what, with all units", () => {
    expect(() => parsePressure("9.5 smoots", { path: "suction.pressure" })).toThrow(
      "suction.pressure: expected a pressure with its unit, one of Pa, hPa, kPa, MPa, bar, mbar, psi, kgf/cm², atm, Torr, " +
        'micron, mmHg, cmHg, inHg, mH2O, inH2O, such as 9.5 bar gauge or 9.5 bar abs, got "9.5 smoots"',
    );
    expect(() => parsePressure("9.5 bar", { path: "suction.pressure" })).toThrow(
      'suction.pressure: expected a pressure that says what it is: 9.5 bar gauge or 9.5 bar abs, got "9.5 bar"',
    );
  });

  it("never gives anything but a finite pressure or an InputError", () => {
    const marks = fc.constantFrom("abs", "a", "g", "gauge", "vac", "(g)", "", "ga", "x");
    const symbols = fc.constantFrom(
      "bar",
      "Pa",
      "kPa",
      "MPa",
      "psi",
      "kg",
      "kgf/cm2",
      "micron",
      "mmHg",
      '"Hg',
      "k",
      "",
    );
    const texts = fc.oneof(
      fc.string({ unit: "grapheme" }),
      fc.tuple(fc.double().map(String), symbols, marks).map((parts) => parts.join(" ")),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const outcome = tryParsePressure(text);
        if (outcome.ok) expect(Number.isFinite(outcome.value.pressure)).toBe(true);
        else expect(outcome.error).toBeInstanceOf(InputError);
      }),
    );
  });
});

describe("parseAbsolutePressure and parseGaugePressure", () => {
  it("take a bare value as what they are asked for", () => {
    expect(parseAbsolutePressure("9.5 bar")).toBe(950000);
    expect(parseGaugePressure("9.5 bar")).toBe(950000);
    expect(tryParseAbsolutePressure("9.5 bara")).toEqual({ ok: true, value: 950000 });
    expect(tryParseGaugePressure("9.5 barg")).toEqual({ ok: true, value: 950000 });
  });

  it("refuse the other kind", () => {
    expect(() => parseAbsolutePressure("9.5 barg", { path: "p" })).toThrow(
      "p: expected an absolute pressure, not",
    );
    expect(() => parseGaugePressure("9.5 bara", { path: "p" })).toThrow("p: expected a gauge pressure, not");
    expect(() => parseGaugePressure("500 micron")).toThrow(InputError);
    expect(tryParseAbsolutePressure("28 inHg vac").ok).toBe(false);
    expect(tryParseGaugePressure("500 micron").ok).toBe(false);
  });
});

const GAUGE_UNITS: readonly GaugePressureUnit[] = [
  ...(["pascal", "hectopascal", "kilopascal", "megapascal", "bar", "millibar", "psi", "atmosphere"] as const),
  ...(["kilogramForcePerSquareCentimetre", "millimetreOfMercury", "centimetreOfMercury"] as const),
  ...(["inchOfMercury", "metreOfWater", "inchOfWater"] as const),
];
const UNITS: readonly PressureUnit[] = [...GAUGE_UNITS, "torr", "micron"];
const pressures = fc.double({ min: 0, max: 1e7, noNaN: true });
const digitCounts = fc.integer({ min: 0, max: 9 });

describe("printed pressures are read back, with their kind, to half of the last digit", () => {
  it.each(UNITS)("absolute in %s", (unit) => {
    fc.assert(
      fc.property(pressures, digitCounts, (pressure, digits) => {
        const reading = parsePressure(formatPressure(pressure, { unit, digits }));
        const oneUnit = parseAbsolutePressure(`1 ${unit}`);
        expect(reading.kind).toBe("absolute");
        expect(Math.abs(reading.pressure - pressure)).toBeLessThanOrEqual(
          0.5 * 10 ** -digits * oneUnit + 1e-14 * pressure,
        );
      }),
      { numRuns: 300 },
    );
  });

  it.each(GAUGE_UNITS)("gauge in %s", (unit) => {
    fc.assert(
      fc.property(pressures, digitCounts, (distance, digits) => {
        const pressure = distance - 101325;
        const reading = parsePressure(formatGaugePressure(pressure, { unit, digits }));
        const oneUnit = parseGaugePressure(`1 ${unit}`);
        expect(reading.kind).toBe("gauge");
        expect(Math.abs(reading.pressure - pressure)).toBeLessThanOrEqual(
          0.5 * 10 ** -digits * oneUnit + 1e-14 * Math.abs(pressure),
        );
      }),
      { numRuns: 300 },
    );
  });
});
