import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readBibliography, readSources, sourceProblems } from "../../scripts/bibliography.js";
import { staleFiles } from "../../scripts/build-fluids.js";
import { dataProblems } from "../../scripts/check-data.js";
import { readCatalogueData } from "../../scripts/read-data.js";
import type { Fluid, FluidData, ReferenceData } from "../../src/catalogue/index.js";
import { listFluids, parseFluid, parseFluidData, parseReferenceData } from "../../src/catalogue/index.js";

function readFolder<Data>(folder: string): [name: string, data: Data][] {
  const directory = new URL(`../../data/${folder}/`, import.meta.url);
  return readdirSync(directory).map((file) => [
    file.slice(0, -".json".length),
    JSON.parse(readFileSync(new URL(encodeURIComponent(file), directory), "utf8")),
  ]);
}

const fluidFiles = readFolder<FluidData>("fluids");
const referenceFiles = readFolder<ReferenceData>("references");

/** The literal that belongs to a data file. */
function literalOf(name: string, data: FluidData): Fluid {
  const found = listFluids().filter(
    ({ designation, equation }) => designation === data.designation && equation === data.equation,
  );
  expect(found, name).toHaveLength(1);
  return found[0] as Fluid;
}

/** Columns missing at the end of a row: no exponential in `power`, factors of 1 in `doubleExp`. */
const FULL_ROWS: Record<string, number[]> = { power: [0, 0, 0, 0], doubleExp: [0, 0, 0, 0, 0, 1, 1] };

function numbers(table: readonly (readonly string[])[], full: readonly number[] = []): number[][] {
  return table.map((row) => [...row.map(Number), ...full.slice(row.length)]);
}

describe("data/fluids", () => {
  test("holds every refrigerant whose equation passed its checks, and none that did not", () => {
    expect(fluidFiles.map(([name]) => name).sort()).toEqual(
      [
        ..."R-11 R-12 R-13I1 R-22 R-23 R-32 R-41 R-116 R-123 R-125 R-134a R-143a R-152a R-161 R-170".split(
          " ",
        ),
        ..."R-218 R-227ea R-236fa R-245fa R-290 R-600 R-600a R-601a R-717 R-728 R-744".split(" "),
        ..."R-1233zd(E) R-1234yf R-1234ze(E) R-1234ze(Z) R-1270 R-1336mzz(Z) R-E170".split(" "),
        ..."R-152a-outcalt-1996 R-717-gao-2023".split(" "),
      ].sort(),
    );
  });

  test.each(fluidFiles)("%s is well formed and named after its refrigerant", (name, data) => {
    const fluid = parseFluidData(data, readBibliography());
    const alternative = `${fluid.designation}-${fluid.equation}`;
    expect([fluid.designation, alternative]).toContain(name);
    expect(parseFluid(fluid)).toEqual(fluid);
  });

  // The numbers are taken from the text here by another way than in the build.
  test.each(fluidFiles)("%s has a literal with the numbers of its text", (name, data) => {
    const fluid = literalOf(name, data);
    expect(fluid.name).toBe(data.name);
    expect(fluid.synonyms).toEqual(data.synonyms);
    expect(fluid.formula).toBe(data.formula);
    expect(fluid.cas).toBe(data.cas);
    expect(fluid.referenceState).toBe(data.referenceState);
    expect(fluid.notes).toEqual(data.notes);
    expect(fluid.molarMass).toBeWithin(Number(data.molarMass.value) / 1000, 1e-15);
    expect(fluid.gasConstant).toBe(Number(data.gasConstant.value));
    expect(fluid.acentricFactor).toBe(Number(data.acentricFactor.value));
    for (const part of ["reducing", "critical", "limits"] as const) {
      const facts = Object.entries(data[part]).map(([field, fact]) => [field, Number(fact.value)]);
      expect(fluid[part]).toEqual(Object.fromEntries(facts));
    }
    const { source, status, remark, power, planckEinstein, ...rest } = data.ideal;
    expect({ source, status, remark }).toBeDefined();
    expect(fluid.ideal).toEqual({
      ...Object.fromEntries(
        Object.entries(rest).map(([field, text]) => [field, field === "form" ? text : Number(text)]),
      ),
      power: numbers(power),
      planckEinstein: numbers(planckEinstein),
    });
    const tables = Object.entries(data.residual).filter(([, table]) => Array.isArray(table));
    expect(fluid.residual).toEqual(
      Object.fromEntries(
        tables.map(([field, table]) => [field, numbers(table as string[][], FULL_ROWS[field] ?? [])]),
      ),
    );
  });

  test.each(fluidFiles)("%s has a source and a status for every number, and a note", (_, data) => {
    const sources = readSources();
    const facts = [
      data.molarMass,
      data.gasConstant,
      data.acentricFactor,
      ...Object.values(data.reducing),
      ...Object.values(data.critical),
      ...Object.values(data.limits),
      data.ideal,
      data.residual,
      ...Object.values(data.curves ?? {}),
    ];
    for (const { source, status } of facts) {
      expect(sources).toHaveProperty([source]);
      expect(["read", "recalled", "computed"]).toContain(status);
    }
    expect(data.notes.length).toBeGreaterThan(0);
  });

  // Where both are given, a molar density was converted from the printed density.
  test.each(fluidFiles)("%s has molar densities that follow from the printed ones", (_, data) => {
    for (const fact of [data.reducing.density, data.critical.density]) {
      const [, printed, mass] = /^([\d.]+) kg\/m3 over ([\d.]+) g\/mol$/.exec(fact.remark ?? "") ?? [];
      if (printed === undefined) continue;
      expect(mass).toBe(data.molarMass.value);
      const converted = (Number(printed) / Number(mass)) * 1000;
      // Some papers print the molar density, rounded; elsewhere it was converted here, to the last place of a double.
      if (fact.value.length < 15) expect(converted).toRoundTo(fact.value);
      else expect(Number(fact.value)).toBeWithin(converted, 4e-16);
    }
  });

  test("counts enthalpy from the boiling point only where there is no liquid at 0 °C", () => {
    const nbp = listFluids().filter(({ referenceState }) => referenceState === "nbp");
    expect(nbp.map(({ designation }) => designation)).toEqual(["R-728"]);
  });
});

describe("data/references", () => {
  test("holds the four designated blends that were published as one fluid", () => {
    expect(referenceFiles.map(([name]) => name).sort()).toEqual(["R-404A", "R-407C", "R-410A", "R-507A"]);
  });

  test.each(referenceFiles)("%s is well formed, and no fluid of the catalogue", (name, data) => {
    const { fluid, composition } = parseReferenceData(data, readBibliography());
    expect(fluid.designation).toBe(name);
    expect(listFluids().map(({ designation }) => designation)).not.toContain(name);
    for (const component of Object.keys(composition)) {
      expect(listFluids().map(({ designation }) => designation)).toContain(component);
    }
  });

  // Molar mass of a blend: 1/M = Σ w/M. The paper prints six digits, the components' masses are of other years.
  test.each(referenceFiles)("%s has the molar mass of its composition", (_, data) => {
    const { fluid, composition } = parseReferenceData(data);
    const inverse = Object.entries(composition).reduce((sum, [component, fraction]) => {
      const { molarMass } = listFluids().find(({ designation }) => designation === component) as Fluid;
      return sum + fraction / molarMass;
    }, 0);
    expect(fluid.molarMass).toBeWithin(1 / inverse, 1e-5);
  });
});

describe("data as a whole", () => {
  test("has a source for every key, a use for every source, and fresh literals", () => {
    expect(dataProblems()).toEqual([]);
  });

  test("has a well-formed bibliography, and would be told otherwise", () => {
    expect(sourceProblems(readSources())).toEqual([]);
    expect(sourceProblems({ empty: { authors: [], status: "read" } })).toEqual([
      "data/sources.json: empty has no authors",
      "data/sources.json: empty has neither journal, volume and year nor a text",
    ]);
  });

  test("is listed in the order of the catalogue: by number, the default equation first", () => {
    const listed = listFluids().map(({ designation, equation }) => [designation, equation]);
    const { fluids } = readCatalogueData();
    expect(fluids.map(([, { designation, equation }]) => [designation, equation])).toEqual(listed);
    expect(listed.slice(0, 3).map(([designation]) => designation)).toEqual(["R-11", "R-12", "R-13I1"]);
    expect(listed.filter(([designation]) => designation === "R-717")).toEqual([
      ["R-717", "tillner-roth-1993"],
      ["R-717", "gao-2023"],
    ]);
  });

  test("has no stale file among the generated ones", () => {
    expect(staleFiles()).toEqual([]);
  });
});
