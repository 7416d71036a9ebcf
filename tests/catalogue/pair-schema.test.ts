import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  findPairIn,
  listFluids,
  listPairs,
  parseBlendData,
  parseClassData,
  parseDepartureData,
  parsePair,
  parsePairData,
} from "../../src/catalogue/index.js";
import { InputError, type Problem } from "../../src/units/index.js";

// biome-ignore lint/suspicious/noExplicitAny: these copies are damaged on purpose
type Loose = any;

const pair = (first = "R-32", second = "R-125"): Loose =>
  structuredClone(findPairIn(listPairs(), first, second));

const dataFile = (path: string): Loose =>
  JSON.parse(readFileSync(new URL(`../../data/${path}`, import.meta.url), "utf8"));

function problemsOf(work: () => unknown): readonly Problem[] {
  try {
    work();
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return (error as InputError).problems;
  }
  return [];
}

const paths = (work: () => unknown): string[] => problemsOf(work).map(({ path }) => path);

const NONSENSE = [undefined, null, 7, "R-32", [], () => 1, Number.NaN, {}];

describe("parsePair", () => {
  test("returns an equal copy of a good literal", () => {
    const good = pair();
    expect(parsePair(good)).toEqual(good);
    expect(parsePair(good)).not.toBe(good);
  });

  test.each(NONSENSE)("refuses %s", (value) => {
    expect(paths(() => parsePair(value)).length).toBeGreaterThan(0);
  });

  test("names everything that is missing from an empty object", () => {
    expect(paths(() => parsePair({}))).toEqual([
      "between",
      "grade",
      "reducing",
      "deviation",
      "sources",
      "notes",
    ]);
  });

  test("lists all problems at once, with path, value and what would be right", () => {
    const bad = pair("R-290", "R-600a");
    bad.grade = "guessed";
    bad.reducing.betaT = 0.2;
    bad.reducing.gammaV = Number.NaN;
    bad.departure.factor = 11;
    bad.departure.function.residual.power[2] = [1, 2];
    bad.deviation.relative = 1.5;
    bad.departur = {};
    bad.notes = ["", "fine"];
    expect(problemsOf(() => parsePair(bad))).toEqual([
      { path: "grade", value: "guessed", expected: '"published", "regressed" or "estimated"' },
      { path: "reducing.betaT", value: 0.2, expected: "a number from 0.3 to 3" },
      { path: "reducing.gammaV", value: Number.NaN, expected: "a number from 0.3 to 3" },
      { path: "departure.factor", value: 11, expected: "a factor from -10 to 10" },
      { path: "departure.function.residual.power[2]", value: [1, 2], expected: "a row [n, t, d, l]" },
      { path: "deviation.relative", value: 1.5, expected: "a relative deviation above 0 and below 1" },
      { path: "notes[0]", value: "", expected: "a text that is not empty" },
      { path: "departur", value: {}, expected: "no such field" },
    ]);
  });

  const damages: readonly (readonly [what: string, path: string, damage: (bad: Loose) => void])[] = [
    ["one fluid with itself", "between", (bad) => (bad.between[1] = "R-32")],
    ["one fluid spelt in two ways", "between", (bad) => (bad.between[1] = "r32")],
    ["three fluids", "between", (bad) => bad.between.push("R-134a")],
    ["a designation that is no text", "between[1]", (bad) => (bad.between[1] = 125)],
    ["an unknown form", "reducing.form", (bad) => (bad.reducing.form = "linear")],
    ["a parameter of the other form", "reducing.betaT", (bad) => (bad.reducing.betaT = 1)],
    ["a missing parameter", "reducing.zeta", (bad) => delete bad.reducing.zeta],
    ["dm3/mol", "reducing.xi", (bad) => (bad.reducing.xi *= 1000)],
    ["an infinite number", "reducing.zeta", (bad) => (bad.reducing.zeta = 1 / 0)],
    ["a factor as text", "departure.factor", (bad) => (bad.departure.factor = "1")],
    ["a function without name", "departure.function.name", (bad) => delete bad.departure.function.name],
    [
      "a function without terms",
      "departure.function.residual.power",
      (bad) => (bad.departure.function.residual.power = []),
    ],
    ["a deviation of nothing", "deviation.relative", (bad) => (bad.deviation.relative = 0)],
    ["a deviation in per cent", "deviation.relative", (bad) => (bad.deviation.relative = 5)],
    ["a deviation without basis", "deviation.basis", (bad) => (bad.deviation.basis = "")],
    ["published parameters without source", "sources", (bad) => (bad.sources = [])],
  ];
  test.each(damages)("refuses %s", (_, path, damage) => {
    const bad = pair();
    damage(bad);
    expect(new Set(paths(() => parsePair(bad)))).toEqual(new Set([path]));
  });

  test.each([0.3, 1, 3])("takes a beta of %d", (beta) => {
    const good = pair("R-290", "R-600a");
    good.reducing.betaT = beta;
    expect(parsePair(good)).toEqual(good);
  });

  test("asks an estimate for no source", () => {
    expect(paths(() => parsePair({ ...pair(), grade: "estimated", sources: [] }))).toEqual([]);
  });
});

describe("the parsers of the data files", () => {
  const bibliography = { "lemmon-2004": "The paper", "own-estimate": "Ours" };
  const departures = [parseDepartureData(dataFile("departures/lemmon-jacobsen-2004-r-32-r-125.json"))];
  const catalogue = { fluids: listFluids(), pairs: listPairs() };

  test("put citations for keys, and none for an estimate", () => {
    const file = dataFile("pairs/R-32+R-125.json");
    expect(parsePairData(file, departures, bibliography).sources).toEqual(["The paper"]);
    expect(parsePairData(file, departures).sources).toEqual(["lemmon-2004"]);
    expect(parsePairData(dataFile("pairs/R-32+R-600a.json"), [], bibliography).sources).toEqual([]);
  });

  test("list all problems of a pair at once", () => {
    const bad = dataFile("pairs/R-32+R-125.json");
    bad.reducing.xi.unit = "m3/mol";
    bad.reducing.zeta.value = 28.95;
    bad.departure.function = "nobodys";
    bad.departure.source = "nobody-1999";
    bad.fittedTo = { source: "lemmon-2004", status: "recalled" };
    expect(new Set(paths(() => parsePairData(bad, departures, bibliography)))).toEqual(
      new Set(["reducing.xi.unit", "reducing.zeta.value", "departure.function", "fittedTo", "source"]),
    );
  });

  test("want of a regression what it was fitted to", () => {
    const bad = dataFile("pairs/R-32+R-1234yf.json");
    delete bad.fittedTo;
    expect(paths(() => parsePairData(bad, []))).toEqual(["fittedTo"]);
  });

  test("hold a pair to the bounds of a literal", () => {
    const bad = dataFile("pairs/R-32+R-1234yf.json");
    bad.reducing.gammaT = "9.5531";
    expect(paths(() => parsePairData(bad, []))).toEqual(["reducing.gammaT"]);
  });

  test("list all problems of a blend at once", () => {
    const bad = dataFile("blends/R-454B.json");
    bad.components[0].fluid = "R-9999";
    bad.components[1].massFraction = "0.3";
    bad.components.push({ fluid: "R-1234yf", massFraction: "0" });
    bad.composition[0].status = "guessed";
    delete bad.tolerances;
    delete bad.synonyms;
    expect(new Set(paths(() => parseBlendData(bad, catalogue)))).toEqual(
      new Set([
        "components[0].fluid",
        "components[2].fluid",
        "components[2].massFraction",
        "components",
        "composition[0].status",
        "tolerances",
        "synonyms",
      ]),
    );
  });

  test("refuse mass fractions that miss the whole by more than a millionth", () => {
    const bad = dataFile("blends/R-454B.json");
    bad.components[0].massFraction = "0.6890009";
    expect(paths(() => parseBlendData(bad, catalogue))).toEqual([]);
    bad.components[0].massFraction = "0.688998";
    expect(paths(() => parseBlendData(bad, catalogue))).toEqual(["components"]);
  });

  test("leave out of a blend the pairs that are not there", () => {
    const file = dataFile("blends/R-407C.json");
    const pairs = listPairs().filter(({ between }) => between[0] === "R-32");
    const blend = parseBlendData(file, { ...catalogue, pairs });
    expect(blend.pairs.map(({ between }) => between[1])).toEqual(["R-125", "R-134a"]);
  });

  test.each(NONSENSE)("refuse %s", (value) => {
    expect(paths(() => parsePairData(value, departures)).length).toBeGreaterThan(0);
    expect(paths(() => parseDepartureData(value)).length).toBeGreaterThan(0);
    expect(paths(() => parseBlendData(value, catalogue)).length).toBeGreaterThan(0);
    expect(paths(() => parseClassData(value)).length).toBeGreaterThan(0);
  });
});
