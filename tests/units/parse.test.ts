import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as units from "../../src/units/index.js";
import { convertersOf } from "./converters.js";
import "../support/fuzz-seed.js";

type Parse = (text: string, options?: units.ParseOptions) => number;
type TryParse = (text: string, options?: units.ParseOptions) => units.Outcome<number>;
type Format = (value: number, options: { unit: string; digits: number }) => string;

/** Every quantity that is read and printed, its units, and the texts of the trade with their SI values. */
const QUANTITIES: Readonly<
  Record<string, { units: readonly string[]; texts: readonly (readonly [string, number])[] }>
> = {
  Temperature: {
    units: ["kelvin", "celsius", "fahrenheit", "rankine"],
    texts: [
      ["40 °C", 313.15],
      ["40°C", 313.15],
      ["40 C", 313.15],
      ["40c", 313.15],
      ["40 degC", 313.15],
      ["40 deg C", 313.15],
      ["40 degrees C", 313.15],
      ["40 degrees Celsius", 313.15],
      ["40 celsius", 313.15],
      ["40 ℃", 313.15],
      ["40 ºC", 313.15],
      ["40 ° C", 313.15],
      ["\u00a040\u202f°C ", 313.15],
      ["-40 °F", 233.15],
      ["−40 °F", 233.15],
      ["-40F", 233.15],
      ["+104 deg. F", 313.15],
      ["104 ℉", 313.15],
      ["313.15 K", 313.15],
      ["313.15 kelvin", 313.15],
      ["3.1315e2 K", 313.15],
      ["563.67 °R", 313.15],
      ["563.67 R", 313.15],
    ],
  },
  TemperatureDifference: {
    units: ["kelvin", "celsius", "fahrenheit"],
    texts: [
      ["5 K", 5],
      ["-5 K", -5],
      ["5 °C", 5],
      ["9 °F", 5],
      ["9F", 5],
    ],
  },
  PressureDifference: {
    units: [
      ["pascal", "hectopascal", "kilopascal", "megapascal", "bar", "millibar", "psi"],
      ["kilogramForcePerSquareCentimetre", "atmosphere", "torr", "micron", "millimetreOfMercury"],
      ["centimetreOfMercury", "inchOfMercury", "metreOfWater", "inchOfWater"],
    ].flat(),
    texts: [
      ["0.2 bar", 20000],
      ["-0.2 bar", -20000],
      ["1 kgf/cm2", 98066.5],
      ["1 kgf/cm²", 98066.5],
      ["1 kgf/cm^2", 98066.5],
      ["1 kg/cm2", 98066.5],
      ["1 kgf / cm2", 98066.5],
      ["760 µmHg", 101.325],
      ["760 μmHg", 101.325],
      ["760 um Hg", 101.325],
      ["760 microns", 101.325],
      ["760 Micron", 101.325],
      ["760 mTorr", 101.325],
      ["760 torr", 101325],
      ["10 inHg", 33863.88640341],
      ["10 in. Hg", 33863.88640341],
      ['10 "Hg', 33863.88640341],
      ["10 ”Hg", 33863.88640341],
      ["10 ″Hg", 33863.88640341],
      ["10 in Hg", 33863.88640341],
      ["1 inWC", 249.08891],
      ["1 in. W.C.", 249.08891],
      ["1 psi", 6894.757293168361],
      ["1 PSI", 6894.757293168361],
      ["1 lbf/in²", 6894.757293168361],
      ["1 MPa", 1e6],
      ["1 Mpa", 1e6],
      ["1 MPA", 1e6],
      ["1 kpa", 1e3],
      ["1 ㎪", 1e3],
      ["1 mbar", 100],
      ["1 cm Hg", 1333.22387415],
      ["1 mmhg", 133.322387415],
      ["1 mH2O", 9806.65],
      ["1 mH₂O", 9806.65],
    ],
  },
  Mass: {
    units: ["kilogram", "gram", "pound", "ounce"],
    texts: [
      ["850 g", 0.85],
      ["0.85kg", 0.85],
      ["0.85 KG", 0.85],
      [".85 kg", 0.85],
      ["1. kg", 1],
      ["850 grams", 0.85],
      ["-50 g", -0.05],
      ["2 lbs", 0.90718474],
      ["2 lb 3 oz", 0.992233309375],
      ["2lb3oz", 0.992233309375],
      ["2 lbs. 3 oz.", 0.992233309375],
      ["2 pounds 3.0 ounces", 0.992233309375],
      ["35 oz", 0.992233309375],
    ],
  },
  LinearDensity: {
    units: ["kilogramPerMetre", "gramPerMetre", "ouncePerFoot", "poundPerFoot"],
    texts: [
      ["20 g/m", 0.02],
      ["0.02 kg/m", 0.02],
      ["16 oz/ft", 1.4881639435695537],
      ["1 lb/ft", 1.4881639435695537],
    ],
  },
  Density: {
    units: ["kilogramPerCubicMetre", "kilogramPerLitre", "poundPerCubicFoot"],
    texts: [
      ["960 kg/m3", 960],
      ["960 kg/m³", 960],
      ["0.96 kg/L", 960],
      ["0.96 g/cm3", 960],
      ["1 lb/ft3", 16.018463373960142],
      ["1 lb/cu. ft", 16.018463373960142],
    ],
  },
  Length: {
    units: ["metre", "centimetre", "millimetre", "foot", "inch"],
    texts: [
      ["7.5 m", 7.5],
      ["7.5 meters", 7.5],
      ["9.52 mm", 0.00952],
      ["3 cm", 0.03],
      ["3/8 in", 0.009525],
      ['3/8"', 0.009525],
      ["3/8″", 0.009525],
      ["1/4 inch", 0.00635],
      ['1 1/8"', 0.028575],
      ["1-1/8 in", 0.028575],
      ["-1/8 in", -0.003175],
      ["25 ft", 7.62],
      ["25'", 7.62],
      ["10 ft 6 in", 3.2004],
      ["10' 6\"", 3.2004],
      ["10’6”", 3.2004],
      ["10' 6 1/2\"", 3.2131],
      ["1 m 50 cm", 1.5],
    ],
  },
  Area: {
    units: ["squareMetre", "squareFoot"],
    texts: [
      ["18 m2", 18],
      ["18 m²", 18],
      ["18 ㎡", 18],
      ["18 sq m", 18],
      ["100 ft2", 9.290304],
      ["100 sq. ft.", 9.290304],
      ["100 sqft", 9.290304],
    ],
  },
  Volume: {
    units: ["cubicMetre", "litre", "millilitre", "cubicFoot"],
    texts: [
      ["2.4 L", 0.0024],
      ["2.4 l", 0.0024],
      ["2.4 liters", 0.0024],
      ["350 mL", 0.00035],
      ["350 ml", 0.00035],
      ["350 cc", 0.00035],
      ["45 m3", 45],
      ["45 m³", 45],
      ["1 cu ft", 0.028316846592],
      ["1 ft³", 0.028316846592],
    ],
  },
  SpecificEnergy: {
    units: ["joulePerKilogram", "kilojoulePerKilogram", "btuPerPound"],
    texts: [
      ["250 kJ/kg", 250000],
      ["250000 J/kg", 250000],
      ["100 Btu/lb", 232600],
      ["100 BTU/lb", 232600],
    ],
  },
  SpecificEntropy: {
    units: ["joulePerKilogramKelvin", "kilojoulePerKilogramKelvin", "btuPerPoundRankine"],
    texts: [
      ["1.75 kJ/(kg K)", 1750],
      ["1.75 kJ/(kg·K)", 1750],
      ["1.75 kJ/kg⋅K", 1750],
      ["1.75 kJ/kg/K", 1750],
      ["1750 J/(kg K)", 1750],
      ["1 Btu/(lb °R)", 4186.8],
      ["1 Btu/(lb·°F)", 4186.8],
      ["1 BTU/lb R", 4186.8],
    ],
  },
  Power: {
    units: ["watt", "kilowatt", "btuPerHour", "tonOfRefrigeration"],
    texts: [
      ["3.5 kW", 3500],
      ["3500 W", 3500],
      ["3600 Btu/h", 1055.05585262],
      ["3600 BTU/hr", 1055.05585262],
      ["1 TR", 3516.852842066667],
      ["1 ton", 3516.852842066667],
    ],
  },
  Torque: {
    units: ["newtonMetre", "kilogramForceCentimetre", "poundForceFoot"],
    texts: [
      ["34 N m", 34],
      ["34 N·m", 34],
      ["34 Nm", 34],
      ["100 kgf·cm", 9.80665],
      ["100 kgf cm", 9.80665],
      ["1 lbf·ft", 1.3558179483314],
      ["1 ft-lbf", 1.3558179483314],
      ["1 ft-lb", 1.3558179483314],
    ],
  },
  Duration: {
    units: ["second", "minute", "hour", "day", "year"],
    texts: [
      ["30 min", 1800],
      ["30 minutes", 1800],
      ["1 h 30 min", 5400],
      ["1h30min", 5400],
      ["1.5 hours", 5400],
      ["24 h", 86400],
      ["1 d", 86400],
      ["1 yr", 31557600],
      ["45 s", 45],
    ],
  },
  Speed: {
    units: ["metrePerSecond", "footPerMinute"],
    texts: [
      ["7.5 m/s", 7.5],
      ["1500 fpm", 7.62],
      ["1500 ft/min", 7.62],
    ],
  },
  VolumeFlow: {
    units: [
      ["cubicMetrePerSecond", "cubicMetrePerHour", "litrePerSecond"],
      ["litrePerMinute", "cubicFootPerMinute"],
    ].flat(),
    texts: [
      ["3 CFM", 0.0014158423296],
      ["3 cfm", 0.0014158423296],
      ["84 L/min", 0.0014],
      ["1.4 L/s", 0.0014],
      ["36 m³/h", 0.01],
      ["36 m3/h", 0.01],
    ],
  },
};

const doors = (quantity: string) => {
  const {
    [`parse${quantity}`]: parse,
    [`tryParse${quantity}`]: tryParse,
    [`format${quantity}`]: format,
  } = units as Readonly<Record<string, unknown>>;
  return { parse: parse as Parse, tryParse: tryParse as TryParse, format: format as Format };
};

/** Texts that no quantity takes. */
const NEVER = [
  "",
  " ",
  "5",
  "m",
  "°C",
  "five m",
  "5 furlongs",
  "5 %",
  "5 °",
  "~5 m",
  "<5 m",
  "± 5 m",
  "+-5 m",
  "- 5 m",
  "5.5.5 m",
  "0x10 m",
  "Infinity m",
  "NaN m",
  "1e999 K",
  "1 000 kg",
  "1'000 kg",
  "5 m m",
  "5 kg,",
  "5 constructor",
  "5 __proto__",
  "5 toString",
  "½ in",
  "3/0 in",
  "0/0 in",
  "3/8/2 in",
  "1.5/8 in",
];

describe.each(Object.entries(QUANTITIES))("parse%s", (quantity, { units: names, texts }) => {
  const { parse, tryParse, format } = doors(quantity);

  it.each(texts)("reads %s", (text, expected) => {
    expect(parse(text)).toBeWithin(expected, 1e-15);
    expect(tryParse(text)).toEqual({ ok: true, value: parse(text) });
  });

  it("reads every unit by the name of its converter", () => {
    const suffix =
      quantity === "TemperatureDifference" || quantity === "PressureDifference" ? "Difference" : "";
    for (const name of names) {
      expect(parse(`12 ${name}`)).toBe(convertersOf(`${name}${suffix}`).from(12));
      expect(parse(`12 ${name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)}`)).toBe(
        parse(`12 ${name}`),
      );
    }
  });

  it("reads back what is printed, to half of the last digit", () => {
    for (const unit of names) {
      const oneUnit = parse(`2 ${unit}`) - parse(`1 ${unit}`);
      const zero = parse(`0 ${unit}`);
      fc.assert(
        fc.property(
          fc.double({ min: 0, max: 1e6, noNaN: true }),
          fc.integer({ min: 0, max: 9 }),
          (number, digits) => {
            const value = zero + number * oneUnit;
            const back = parse(format(value, { unit, digits }));
            // The sixteenth digit of what is printed, and of the zero it is counted from, is lost.
            const rounding = 1e-15 * (number + 1000);
            expect(Math.abs(back - value) / oneUnit).toBeLessThanOrEqual(0.5 * 10 ** -digits + rounding);
          },
        ),
        { numRuns: 200 },
      );
    }
  });

  it.each([...NEVER, "1,5 kg", "1,500 g", "1.234,5 K", "20,5 °C"])("refuses %j", (text) => {
    expect(() => parse(text)).toThrow(units.InputError);
    expect(tryParse(text).ok).toBe(false);
  });

  it("refuses what is no text", () => {
    for (const bad of [5, null, undefined, {}, ["5 m"], Number.NaN]) {
      expect(() => parse(bad as unknown as string)).toThrow(units.InputError);
    }
  });

  it("never gives anything but a finite number or an InputError", () => {
    const symbols = fc.constantFrom(
      "kg",
      "g",
      "lb",
      "oz",
      "m",
      "ft",
      "in",
      "'",
      '"',
      "°C",
      "bar",
      "h",
      "min",
      "L/s",
      "",
      "/",
    );
    const numbers = fc.oneof(
      fc.double().map(String),
      fc.constantFrom("3/8", "1 1/8", "1,5", "-", "1e400", "０.５", "."),
    );
    const texts = fc.oneof(
      fc.string({ unit: "grapheme" }),
      fc.tuple(numbers, symbols, numbers, symbols).map((parts) => parts.join(" ")),
      fc.tuple(numbers, symbols).map((parts) => parts.join("")),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const outcome = tryParse(text);
        if (outcome.ok) expect(Number.isFinite(outcome.value)).toBe(true);
        else expect(outcome.error).toBeInstanceOf(units.InputError);
      }),
      { numRuns: 500 },
    );
  });

  it("lists the units and the path when it refuses", () => {
    const outcome = tryParse("5 furlongs", { path: "readings.first" });
    const error = outcome.ok ? undefined : outcome.error;
    expect(error).toBeInstanceOf(units.InputError);
    const [problem] = (error as units.InputError).problems;
    expect(problem).toMatchObject({ path: "readings.first", value: "5 furlongs" });
    for (const unit of names) {
      const symbol = format(1, { unit, digits: 0 }).replace(/^\S+ /, "");
      expect(problem?.expected).toContain(symbol);
    }
  });
});

describe("refusals worth a word", () => {
  it("a decimal comma is not guessed at", () => {
    expect(() => units.parseMass("1,5 kg", { path: "charge" })).toThrow(
      'charge: expected a decimal point and no other mark among the digits; a mass with its unit, one of kg, g, lb, oz, such as 850 g, got "1,5 kg"',
    );
  });

  it("below absolute zero", () => {
    expect(() => units.parseTemperature("-300 °C", { path: "outdoor" })).toThrow(
      'outdoor: expected a temperature in °C, a finite number, -273.15 or more, got "-300 °C"',
    );
    expect(() => units.parseTemperature("-1 K")).toThrow(units.InputError);
  });

  it("negative where nature has none", () => {
    for (const parse of [units.parseArea, units.parseVolume, units.parseDensity, units.parseDuration]) {
      expect(() => parse("-1 m2")).toThrow(units.InputError);
    }
    expect(() => units.parseVolume("-1 L")).toThrow("0 or more");
    expect(() => units.parseDuration("-1 h")).toThrow("0 or more");
  });

  it("capitals that change the meaning", () => {
    for (const text of ["5 mPa", "5 mpa", "5 Mbar", "5 MTorr"]) {
      expect(() => units.parsePressureDifference(text)).toThrow(units.InputError);
    }
    for (const text of ["5 ML", "5 Ml"]) expect(() => units.parseVolume(text)).toThrow(units.InputError);
    for (const text of ["5 Mm", "5 MM", "5 M"])
      expect(() => units.parseLength(text)).toThrow(units.InputError);
  });

  it.each(["3 oz 2 lb", "2 lb 2 lb", "2 lb -3 oz", "-2 lb 3 oz", "2 lb 3", "2 lb 3 m", "2 lb, 3 oz"])(
    "parts of a mass out of order or with signs: %s",
    (text) => {
      expect(() => units.parseMass(text)).toThrow(units.InputError);
    },
  );

  it("a second word that would turn one unit into another", () => {
    for (const text of ["5 m m", "5 m 3", "5 m2"]) {
      expect(() => units.parseLength(text)).toThrow(units.InputError);
    }
    expect(() => units.parsePressureDifference("5 at m")).toThrow(units.InputError);
    expect(() => units.parsePressure("5 at m", { bare: "gauge" })).toThrow(units.InputError);
  });

  it("fractions and parts elsewhere than the trade writes them", () => {
    expect(() => units.parseMass("1/2 kg")).toThrow(units.InputError);
    expect(() => units.parseTemperature("5 °C 3 K")).toThrow(units.InputError);
    expect(() => units.parseVolume("1 m3 2 L")).toThrow(units.InputError);
  });
});
