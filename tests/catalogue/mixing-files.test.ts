import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readSources } from "../../scripts/bibliography.js";
import { readCatalogueData } from "../../scripts/read-data.js";
import type { Blend, BlendData, DepartureData, Pair, PairData } from "../../src/catalogue/index.js";
import {
  findPairIn,
  listBlends,
  listFluids,
  listPairs,
  parsePair,
  parsePairData,
} from "../../src/catalogue/index.js";

function readFolder<Data>(folder: string): [name: string, data: Data][] {
  const directory = new URL(`../../data/${folder}/`, import.meta.url);
  return readdirSync(directory).map((file) => [
    file.slice(0, -".json".length),
    JSON.parse(readFileSync(new URL(encodeURIComponent(file), directory), "utf8")),
  ]);
}

const pairFiles = readFolder<PairData>("pairs");
const departureFiles = readFolder<DepartureData>("departures");
const blendFiles = readFolder<BlendData>("blends");
const designations = new Set(listFluids().map(({ designation }) => designation));

function pairOf(first: string, second: string): Pair {
  const pair = findPairIn(listPairs(), first, second);
  expect(pair, `${first} with ${second}`).toBeDefined();
  return pair as Pair;
}

describe("data/pairs", () => {
  test("holds pairs of two different fluids of the catalogue, each once", () => {
    const seen = pairFiles.map(([, { between }]) => [...between].sort().join(" "));
    expect(new Set(seen).size).toBe(pairFiles.length);
    expect(listPairs()).toHaveLength(pairFiles.length);
    for (const [name, { between }] of pairFiles) {
      expect(name).toBe(between.join("+"));
      for (const designation of between) expect(designations).toContain(designation);
    }
  });

  // The numbers are taken from the text here by another way than in the build.
  test.each(pairFiles)("%s has a literal with the numbers of its text", (_, data) => {
    const pair = pairOf(...data.between);
    const { reducing } = data;
    expect(pair.between).toEqual(data.between);
    expect(pair.grade).toBe(data.grade);
    expect(pair.notes).toEqual(data.notes);
    expect(pair.deviation).toEqual({ ...data.deviation, relative: Number(data.deviation.relative) });
    if (reducing.form === "lemmon-jacobsen") {
      const { zeta, xi } = pair.reducing as Extract<Pair["reducing"], { form: "lemmon-jacobsen" }>;
      expect(zeta).toBe(Number(reducing.zeta.value));
      expect(xi).toBeWithin(Number(reducing.xi.value) / 1000, 1e-15);
    } else {
      const { source, status, remark, form, ...numbers } = reducing;
      expect({ source, status, remark }).toBeDefined();
      expect(pair.reducing).toEqual({
        form,
        ...Object.fromEntries(Object.entries(numbers).map(([field, text]) => [field, Number(text)])),
      });
    }
    expect(pair.departure?.factor).toBe(data.departure && Number(data.departure.factor));
    expect(pair.departure?.function.name).toBe(data.departure?.function);
  });

  test.each(pairFiles)("%s passes the check of a user's own pair", (_, { between }) => {
    const pair = pairOf(...between);
    expect(parsePair(pair)).toEqual(pair);
  });

  test.each(pairFiles)("%s says where it comes from and what it is worth", (_, data) => {
    const sources = readSources();
    const pair = pairOf(...data.between);
    for (const { source, status } of [data.reducing, data.departure, data.fittedTo].flatMap(
      (part) => part ?? [],
    )) {
      expect(sources).toHaveProperty([source]);
      expect(["read", "recalled", "computed"]).toContain(status);
    }
    expect(data.notes.length).toBeGreaterThan(0);
    expect(data.deviation.basis).toMatch(/^\S.*\.$/);
    expect(pair.sources.length === 0).toBe(data.grade === "estimated");
    // Nothing that was not published is trusted beyond half a per cent: the listings are rounded to 0.1 K.
    expect(pair.deviation.relative).toBeGreaterThanOrEqual(data.grade === "published" ? 0.0005 : 0.005);
    expect(pair.deviation.relative).toBeLessThan(0.1);
    if (data.notes.some((note) => note.startsWith("Doubtful"))) {
      expect(pair.deviation.relative).toBeGreaterThanOrEqual(0.05);
    }
  });

  test("takes each form from its paper", () => {
    for (const { grade, reducing, sources, departure } of listPairs()) {
      if (grade !== "published") {
        expect(reducing.form).toBe("kunz-wagner");
        expect(departure).toBeUndefined();
        continue;
      }
      expect(sources).toHaveLength(1);
      expect(sources[0]).toMatch(
        reducing.form === "kunz-wagner" ? /^Kunz, O\., Wagner/ : /^Lemmon.*Jacobsen/,
      );
    }
  });
});

describe("data/departures", () => {
  test("holds four functions, with the numbers of their texts", () => {
    expect(departureFiles.map(([name]) => name).sort()).toEqual([
      "kunz-wagner-2012-general",
      "lemmon-jacobsen-2004-general",
      "lemmon-jacobsen-2004-r-32-r-125",
      "lemmon-jacobsen-2004-r-32-r-134a",
    ]);
    const inUse = new Map(
      listPairs().flatMap(({ departure }) => (departure ? [[departure.function.name, departure]] : [])),
    );
    for (const [file, { name, residual }] of departureFiles) {
      expect(name).toBe(file);
      // Three columns mean no exponential.
      const rows = residual.power.map((row) => [...row.map(Number), ...[0].slice(row.length - 3)]);
      expect(inUse.get(name)?.function).toEqual({ name, residual: { power: rows } });
    }
  });

  test("serve several pairs as one object, so that it is evaluated once", () => {
    const functions = listPairs().flatMap(({ departure }) => departure?.function ?? []);
    expect(functions).toHaveLength(12);
    expect(new Set(functions).size).toBe(4);
  });
});

describe("data/blends", () => {
  const blendOf = (name: string): Blend =>
    listBlends().find(({ designation }) => designation === name) as Blend;

  test("holds the blends in the order of their numbers, then letters", () => {
    const listed = listBlends().map(({ designation }) => designation);
    expect(listed).toEqual([...listed].sort());
    expect([...listed].sort()).toEqual(blendFiles.map(([name]) => name).sort());
    expect(listed).toEqual(
      [
        "404A 407A 407C 407F 410A 417A 422D 427A 438A 444B 447A 448A 449A 450A 452A 452B 454A 454B 454C 455A 457A",
        "459A 466A 507A 513A 515B",
      ]
        .join(" ")
        .split(" ")
        .map((number) => `R-${number}`),
    );
  });

  test.each(blendFiles)("%s has a literal with the numbers of its text", (name, data) => {
    const blend = blendOf(name);
    expect(blend.designation).toBe(data.designation);
    expect(blend.synonyms).toEqual(data.synonyms);
    expect(blend.notes).toEqual(data.notes);
    expect(blend.sources.length).toBe(data.composition.length);
    expect(
      blend.components.map(({ fluid, massFraction, tolerance }) => [
        fluid.designation,
        massFraction,
        tolerance,
      ]),
    ).toEqual(
      data.components.map(({ fluid, massFraction, tolerance }) => [
        fluid,
        Number(massFraction),
        tolerance && { above: Number(tolerance.above), below: Number(tolerance.below) },
      ]),
    );
  });

  test.each(blendFiles)("%s is whole, of default fluids, with every pair among them", (name) => {
    const { components, pairs } = blendOf(name);
    const whole = components.reduce((sum, { massFraction }) => sum + massFraction, 0);
    expect(whole).toBeWithin(1, 1e-12);
    const inOrder = components.map(({ fluid }) => fluid);
    for (const fluid of inOrder) {
      expect(listFluids().find(({ designation }) => designation === fluid.designation)).toBe(fluid);
    }
    const wanted = inOrder.flatMap((first, index) =>
      inOrder.slice(index + 1).map((second) => pairOf(first.designation, second.designation)),
    );
    expect(pairs).toHaveLength(wanted.length);
    expect(new Set(pairs)).toEqual(new Set(wanted));
    for (const [index, pair] of pairs.entries()) expect(pair).toBe(wanted[index]);
  });

  test.each(blendFiles)(
    "%s has tolerances that leave every component in it, or none at all",
    (name, data) => {
      const { components } = blendOf(name);
      const tolerances = components.flatMap(({ tolerance }) => tolerance ?? []);
      expect([0, components.length]).toContain(tolerances.length);
      expect(tolerances.length > 0).toBe(data.tolerances !== undefined);
      for (const { massFraction, tolerance } of components) {
        if (tolerance === undefined) continue;
        expect(tolerance.below).toBeLessThan(massFraction);
        expect(massFraction + tolerance.above).toBeLessThan(1);
        expect(Math.max(tolerance.above, tolerance.below)).toBeLessThanOrEqual(0.02);
      }
    },
  );

  test("leaves tolerances out where they are not known", () => {
    const without = listBlends().filter(({ components }) => components[0]?.tolerance === undefined);
    expect(without.map(({ designation }) => designation)).toEqual(["R-459A", "R-466A", "R-507A", "R-515B"]);
  });

  test("names nobody's product", () => {
    const words = [...listPairs(), ...listBlends()].flatMap(({ notes, sources }) => [...notes, ...sources]);
    for (const text of words) expect(text).not.toMatch(/[®™]|distributor/i);
  });
});

describe("the catalogue's lists", () => {
  test("are in the order of the data, and built from it alone", () => {
    const { pairs, blends } = readCatalogueData();
    expect(listPairs()).toEqual(pairs.map(([, pair]) => pair));
    expect(listBlends()).toEqual(blends.map(([, blend]) => blend));
    expect(
      listPairs()
        .slice(0, 3)
        .map(({ between }) => between),
    ).toEqual([
      ["R-32", "R-13I1"],
      ["R-32", "R-125"],
      ["R-32", "R-134a"],
    ]);
  });

  test("keep the value of the digits when cubic decimetres become cubic metres", () => {
    // -0.0004452/1000 is -4.4519999999999995e-7.
    const { reducing } = pairOf("R-125", "R-143a");
    expect(reducing).toMatchObject({ xi: -4.452e-7 });
    const [, data] = pairFiles.find(([name]) => name === "R-125+R-143a") as [string, PairData];
    const departures = readCatalogueData().departures.map(([, departure]) => departure);
    const scientific = structuredClone(data) as { reducing: { xi: { value: string } } };
    scientific.reducing.xi.value = "-4.452e-4";
    expect(parsePairData(scientific, departures).reducing).toEqual(reducing);
  });
});
