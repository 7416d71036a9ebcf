import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { findFluid, parseFluid, parseFluidData, parseReferenceData } from "../../src/catalogue/index.js";
import type { Problem } from "../../src/units/index.js";
import { InputError } from "../../src/units/index.js";

// biome-ignore lint/suspicious/noExplicitAny: these copies are damaged on purpose
type Loose = any;

function fluid(): Loose {
  return structuredClone(findFluid("R-125"));
}

function dataFile(path: string): Loose {
  return JSON.parse(readFileSync(new URL(`../../data/${path}`, import.meta.url), "utf8"));
}

function problemsOf(work: () => unknown): readonly Problem[] {
  try {
    work();
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return (error as InputError).problems;
  }
  return [];
}

function paths(work: () => unknown): string[] {
  return problemsOf(work).map(({ path }) => path);
}

describe("parseFluid", () => {
  test("returns an equal copy of a good literal", () => {
    const good = fluid();
    expect(parseFluid(good)).toEqual(good);
    expect(parseFluid(good)).not.toBe(good);
  });

  test("accepts a fluid without formula, CAS number, synonyms and notes", () => {
    expect(
      problemsOf(() => parseFluid({ ...fluid(), formula: "", cas: "", synonyms: [], notes: [] })),
    ).toEqual([]);
  });

  test.each([undefined, null, 7, "R-32", [], () => 1, Number.NaN])("refuses %s", (value) => {
    expect(paths(() => parseFluid(value)).length).toBeGreaterThan(0);
  });

  test("names everything that is missing from an empty object", () => {
    expect(paths(() => parseFluid({}))).toEqual([
      "designation",
      "equation",
      "name",
      "synonyms",
      "formula",
      "cas",
      "molarMass",
      "gasConstant",
      "reducing",
      "critical",
      "limits",
      "acentricFactor",
      "referenceState",
      "ideal",
      "residual",
      "sources",
      "notes",
    ]);
  });

  test("lists all problems at once, with path, value and what would be right", () => {
    const bad = fluid();
    bad.molarMass = 120.0214;
    bad.critical.pressure = Number.NaN;
    bad.ideal.planckEinstein[1] = [5.086];
    bad.residual.power[3][2] = "2";
    bad.residual.gausian = [];
    bad.cas = "354-33-7";
    bad.sources = [];
    expect(problemsOf(() => parseFluid(bad))).toEqual([
      { path: "cas", value: "354-33-7", expected: expect.stringContaining("check digit") },
      { path: "critical.pressure", value: Number.NaN, expected: "a finite number above 0" },
      { path: "ideal.planckEinstein[1]", value: [5.086], expected: "a row [n, theta]" },
      { path: "residual.power[3][2]", value: "2", expected: "a finite number" },
      { path: "residual.gausian", value: [], expected: "no such field" },
      { path: "sources", value: [], expected: "at least one source" },
      { path: "molarMass", value: 120.0214, expected: expect.stringContaining("kg/mol") },
    ]);
  });

  test.each([
    ["a molar mass in g/mol", "molarMass", (bad: Loose) => Object.assign(bad, { molarMass: 120.02 })],
    ["a gas constant per mass", "gasConstant", (bad: Loose) => Object.assign(bad, { gasConstant: 69.27 })],
    ["mol/dm3", "reducing.density", (bad: Loose) => Object.assign(bad.reducing, { density: 4.779 })],
    ["mol/dm3", "critical.density", (bad: Loose) => Object.assign(bad.critical, { density: 4.779 })],
    ["MPa", "critical.pressure", (bad: Loose) => Object.assign(bad.critical, { pressure: 3.6177 })],
    ["MPa", "limits.maximumPressure", (bad: Loose) => Object.assign(bad.limits, { maximumPressure: 60 })],
    [
      "mK",
      "limits.maximumTemperature",
      (bad: Loose) => Object.assign(bad.limits, { maximumTemperature: 500e3 }),
    ],
    [
      "limits out of order",
      "limits.minimumTemperature",
      (bad: Loose) => Object.assign(bad.limits, { maximumTemperature: 170 }),
    ],
    ["an unknown zero", "referenceState", (bad: Loose) => Object.assign(bad, { referenceState: "zero" })],
    ["no terms", "residual.power", (bad: Loose) => Object.assign(bad.residual, { power: [] })],
    ["an unknown form", "ideal.form", (bad: Loose) => Object.assign(bad.ideal, { form: "cp" })],
    ["a term of another form", "residual.doubleExp[0]", (bad: Loose) => bad.residual.doubleExp[0].pop()],
    ["an infinite number", "acentricFactor", (bad: Loose) => Object.assign(bad, { acentricFactor: 1 / 0 })],
    ["a number below zero", "gasConstant", (bad: Loose) => Object.assign(bad, { gasConstant: -8.314 })],
    [
      "a name with space around",
      "designation",
      (bad: Loose) => Object.assign(bad, { designation: " R-125" }),
    ],
    ["an empty name", "name", (bad: Loose) => Object.assign(bad, { name: "" })],
    ["an unknown field", "colour", (bad: Loose) => Object.assign(bad, { colour: "blue" })],
  ])("refuses %s", (_, path, damage) => {
    const bad = fluid();
    damage(bad);
    expect(new Set(paths(() => parseFluid(bad)))).toEqual(new Set([path]));
  });

  test("refuses a lowest temperature above the critical one, and the zero at 0 °C with it", () => {
    const bad = fluid();
    bad.limits.minimumTemperature = 340;
    expect(paths(() => parseFluid(bad))).toEqual(["limits.minimumTemperature", "referenceState"]);
  });

  test("refuses a zero at 0 °C for a fluid that is never liquid there", () => {
    const nitrogen = { ...findFluid("R-728"), referenceState: "iir" };
    expect(paths(() => parseFluid(nitrogen))).toEqual(["referenceState"]);
    const warm = fluid();
    warm.limits.minimumTemperature = 280;
    expect(paths(() => parseFluid(warm))).toEqual(["referenceState"]);
  });
});

describe("parseFluidData", () => {
  const bibliography = { "lemmon-2005": "The paper", "own-computation": "Ours" };

  test("fills in what a row may leave out and puts citations for keys", () => {
    const r125 = parseFluidData(dataFile("fluids/R-125.json"), bibliography);
    expect(r125.sources).toEqual(["The paper"]);
    expect(r125.residual.power[0]).toEqual([5.28076, 0.669, 1, 0]);
    expect(r125.residual.doubleExp?.[0]).toEqual([-1.532005, 4.5, 2, 2, 1.7, 1, 1]);
    expect(parseFluidData(dataFile("fluids/R-125.json")).sources).toEqual(["lemmon-2005"]);
  });

  test("keeps the value of the digits when grams become kilograms", () => {
    // 44.09562/1000 is 0.044095619999999995.
    expect(parseFluidData(dataFile("fluids/R-290.json")).molarMass).toBe(0.04409562);
  });

  test("lists all problems at once", () => {
    const bad = dataFile("fluids/R-125.json");
    bad.molarMass.unit = "kg/mol";
    bad.gasConstant.value = 8.314472;
    bad.critical.temperature.status = "guessed";
    bad.limits.maximumPressure.value = "60 MPa";
    bad.residual.power[0] = ["5.28", "0.669"];
    bad.residual.source = "nobody-1999";
    bad.ideal.planckEinstein[2][1] = "17O7";
    bad.curves = { boilingPoint: {} };
    bad.notes = "none";
    delete bad.cas;
    expect(new Set(paths(() => parseFluidData(bad, bibliography)))).toEqual(
      new Set([
        "molarMass.unit",
        "gasConstant.value",
        "critical.temperature.status",
        "limits.maximumPressure.value",
        "residual.power[0]",
        "ideal.planckEinstein[2][1]",
        "curves.boilingPoint",
        "notes",
        "cas",
        "source",
      ]),
    );
  });

  test("checks sizes in the units of the file", () => {
    const bad = dataFile("fluids/R-125.json");
    bad.molarMass.value = "0.1200214";
    bad.reducing.density.value = "4.779";
    expect(paths(() => parseFluidData(bad))).toEqual(["molarMass", "reducing.density"]);
  });

  test.each([undefined, null, 7, "R-32", [], {}])("refuses %s", (value) => {
    expect(paths(() => parseFluidData(value)).length).toBeGreaterThan(0);
    expect(paths(() => parseReferenceData(value)).length).toBeGreaterThan(0);
  });
});

describe("parseReferenceData", () => {
  test("gives fluid, composition and both curves", () => {
    const {
      fluid: r410a,
      composition,
      bubblePressure,
      dewPressure,
    } = parseReferenceData(dataFile("references/R-410A.json"));
    expect(r410a.cas).toBe("");
    expect(composition).toEqual({ "R-32": 0.5, "R-125": 0.5 });
    expect(bubblePressure.terms).toHaveLength(4);
    expect(dewPressure.form).toBe("log-over-temperature");
  });

  test("refuses a composition that is not whole, together with the rest", () => {
    const bad = dataFile("references/R-410A.json");
    bad.composition[0][1] = "0.4";
    bad.curves.dewPressure.terms = [];
    expect(problemsOf(() => parseReferenceData(bad))).toEqual([
      { path: "curves.dewPressure.terms", value: [], expected: "at least one row [n, t]" },
      { path: "composition", value: 0.9, expected: "mass fractions that add up to 1" },
    ]);
  });
});
