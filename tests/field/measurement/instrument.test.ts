import { describe, expect, it } from "vitest";
import {
  combineUncertainties,
  gaugeUncertainty,
  type PressureAccuracy,
  type PressureGauge,
  type Thermometer,
  thermometerUncertainty,
} from "../../../src/field/index.js";
import { fullScale, scalePosition } from "../../../src/field/measurement/instrument.js";
import { straightLine } from "../../../src/field/measurement/straight-line.js";
import { studentFactor } from "../../../src/field/measurement/student.js";
import { InputError } from "../../../src/units/index.js";

const compound: PressureAccuracy = {
  kind: "accuracy-class",
  accuracyClass: 1.6,
  scaleMinimum: -0.1e6,
  scaleMaximum: 3.8e6,
};
const digital: PressureAccuracy = { kind: "percent-of-full-scale", percent: 0.5, fullScale: 5e6 };
const clamp: Thermometer = { accuracy: { kind: "half-width", halfWidth: 1 } };

describe("standard uncertainty of a reading", () => {
  it("gives the budget its shares", () => {
    const part = { unit: "", because: "" };
    const { budget } = combineUncertainties([
      { ...part, input: "gauge", standardUncertainty: 3, sensitivity: -1 },
      {
        ...part,
        input: "thermometer",
        standardUncertainty: 4 * thermometerUncertainty(clamp).standardUncertainty,
        sensitivity: Math.sqrt(3),
      },
    ]);
    // 3² and 4² of 5²: half-width 1 K is 1/√3 K.
    expect(budget.map(({ share }) => share)).toEqual([expect.closeTo(0.36, 12), expect.closeTo(0.64, 12)]);
  });

  it("adds resolution and the temperature of the case", () => {
    const cold: PressureGauge = { accuracy: { ...compound, caseTemperature: 273.15 }, resolution: 10e3 };
    const { standardUncertainty, parts } = gaugeUncertainty(cold, 0.8e6);
    expect(parts.map(({ name }) => name)).toEqual(["accuracy", "case-temperature", "resolution"]);
    // EN 837-1: 0.04 % of span for each kelvin from 20 °C: 20 K on 3.9 MPa is 31.2 kPa.
    expect(parts[1]?.standardUncertainty).toBeWithin(31.2e3 / Math.sqrt(3), 1e-12);
    expect(parts[2]?.standardUncertainty).toBeWithin(10e3 / Math.sqrt(12), 1e-12);
    expect(standardUncertainty).toBeWithin(
      Math.hypot(...parts.map((part) => part.standardUncertainty)),
      1e-12,
    );
  });

  it("follows the reading where the maker states per cent of it", () => {
    const accuracy: PressureAccuracy = { kind: "percent-of-reading", percent: 10, plus: 1 };
    expect(gaugeUncertainty({ accuracy }, 60).standardUncertainty).toBeWithin(7 / Math.sqrt(3), 1e-12);
    expect(gaugeUncertainty({ accuracy }, -60).standardUncertainty).toBeWithin(7 / Math.sqrt(3), 1e-12);
  });

  it("takes stated half-widths and certificates", () => {
    expect(
      gaugeUncertainty({ accuracy: { kind: "half-width", halfWidth: 3 } }, 0).standardUncertainty,
    ).toBeWithin(Math.sqrt(3), 1e-12);
    const certified = { kind: "standard-uncertainty", standardUncertainty: 2 } as const;
    expect(gaugeUncertainty({ accuracy: certified }, 0).standardUncertainty).toBe(2);
    expect(thermometerUncertainty({ accuracy: certified, resolution: 0.1 }).standardUncertainty).toBeWithin(
      Math.hypot(2, 0.1 / Math.sqrt(12)),
      1e-12,
    );
  });

  it("knows two pipe probes by common practice, no source", () => {
    const probe = (kind: "clamp" | "insulated-or-immersed") =>
      thermometerUncertainty({ accuracy: { kind: "pipe-probe", probe: kind } }).standardUncertainty;
    expect(probe("clamp")).toBeWithin(1 / Math.sqrt(3), 1e-12);
    expect(probe("insulated-or-immersed")).toBeWithin(0.5 / Math.sqrt(3), 1e-12);
  });

  it("knows where on the scale a reading lies", () => {
    expect(scalePosition({ accuracy: compound }, 0.8e6)).toBeWithin(0.9 / 3.9, 1e-12);
    expect(scalePosition({ accuracy: digital }, 1e6)).toBe(0.2);
    expect(scalePosition({ accuracy: { kind: "half-width", halfWidth: 1 } }, 1)).toBeUndefined();
    expect([compound, digital].map((accuracy) => fullScale({ accuracy }))).toEqual([3.8e6, 5e6]);
  });

  it.each<[string, PressureGauge, number]>([
    ["no accuracy", {} as PressureGauge, 0],
    ["an unknown kind", { accuracy: { kind: "good" } as unknown as PressureAccuracy }, 0],
    ["class 5", { accuracy: { ...compound, accuracyClass: 5 } as PressureAccuracy }, 0],
    ["class NaN", { accuracy: { ...compound, accuracyClass: Number.NaN } as PressureAccuracy }, 0],
    ["a scale of nothing", { accuracy: { ...compound, scaleMaximum: -0.1e6 } as PressureAccuracy }, -0.1e6],
    ["a case at 0 K", { accuracy: { ...compound, caseTemperature: 0 } as PressureAccuracy }, 0],
    ["0 per cent", { accuracy: { ...digital, percent: 0 } as PressureAccuracy }, 0],
    ["0 per cent of reading", { accuracy: { kind: "percent-of-reading", percent: 0 } }, 1],
    ["a negative fixed part", { accuracy: { kind: "percent-of-reading", percent: 1, plus: -1 } }, 1],
    ["a negative half-width", { accuracy: { kind: "half-width", halfWidth: -1 } }, 0],
    ["a certificate below 0", { accuracy: { kind: "standard-uncertainty", standardUncertainty: -1 } }, 0],
    ["steps of 0", { accuracy: digital, resolution: 0 }, 0],
    ["a reading above the dial", { accuracy: compound }, 3.9e6],
    ["a reading below the dial", { accuracy: compound }, -0.11e6],
    ["a reading above full scale", { accuracy: digital }, 5.1e6],
    ["a reading that is none", { accuracy: digital }, Number.NaN],
  ])("refuses %s", (_what, gauge, reading) => {
    expect(() => gaugeUncertainty(gauge, reading)).toThrow(InputError);
  });

  it.each<[string, Thermometer]>([
    ["no accuracy", {} as Thermometer],
    ["an unknown probe", { accuracy: { kind: "pipe-probe", probe: "nail" as "clamp" } }],
    ["half-width 0", { accuracy: { kind: "half-width", halfWidth: 0 } }],
    ["a certificate of NaN", { accuracy: { kind: "standard-uncertainty", standardUncertainty: Number.NaN } }],
    ["steps below 0", { accuracy: { kind: "half-width", halfWidth: 1 }, resolution: -1 }],
  ])("refuses a thermometer with %s", (_what, thermometer) => {
    expect(() => thermometerUncertainty(thermometer)).toThrow(InputError);
  });
});

describe("Student's factor for 95.45 %", () => {
  it.each([
    // JCGM 100:2008 (GUM), table G.2, column 95.45 % (from memory): printed to 0.01.
    [1, 13.97],
    [2, 4.53],
    [3, 3.31],
    [4, 2.87],
    [5, 2.65],
    [6, 2.52],
    [10, 2.28],
    [20, 2.13],
    [50, 2.05],
    [100, 2.025],
  ])("for %i degrees of freedom", (nu, printed) => {
    expect(Math.abs(studentFactor(nu) - printed)).toBeLessThanOrEqual(0.00501);
  });

  it("falls towards 2 and cuts fractions off", () => {
    for (let nu = 2; nu < 290; nu++) expect(studentFactor(nu)).toBeLessThan(studentFactor(nu - 1));
    expect(studentFactor(1e9)).toBeWithin(2, 0.01);
    expect(studentFactor(4.9)).toBe(studentFactor(4));
    expect(studentFactor(0.5)).toBeNaN();
  });
});

describe("straight line", () => {
  it("finds an exact line", () => {
    const line = straightLine([1e6, 1e6 + 1, 1e6 + 5].map((x) => ({ x, y: 3 * x - 7 })));
    expect(line.slope).toBeWithin(3, 1e-9);
    expect(Math.abs(line.slopeError)).toBeLessThan(1e-8);
  });

  it("finds the line of a textbook", () => {
    // x 1…5, y 2 4 5 4 5: slope 0.6, residual sum 2.4, standard error √(2.4/3/10), worked by hand.
    const line = straightLine([2, 4, 5, 4, 5].map((y, index) => ({ x: index + 1, y })));
    expect(line.slope).toBeWithin(0.6, 1e-12);
    expect(line.meanY).toBe(4);
    expect(line.slopeError).toBeWithin(Math.sqrt(0.08), 1e-12);
    // Residuals −0.8 0.6 1.0 −0.6 −0.2: products −0.48 + 0.6 − 0.6 + 0.12 over 2.4.
    expect(line.correlation).toBeWithin(-0.15, 1e-9);
  });

  it("has no error to tell from two points", () => {
    expect(
      straightLine([
        { x: 0, y: 0 },
        { x: 2, y: 1 },
      ]),
    ).toMatchObject({ slope: 0.5, slopeError: Number.NaN });
  });
});
