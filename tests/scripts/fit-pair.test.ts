import { execFile } from "node:child_process";
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { parseEquilibria } from "../../scripts/fit-pair/data-schema.js";
import { compare, fitPairs, modelsWith } from "../../scripts/fit-pair/fit.js";
import { type FreePair, parseFit } from "../../scripts/fit-pair/fit-schema.js";
import { leastSquares } from "../../scripts/fit-pair/least-squares.js";
import { pairFiles, pairText } from "../../scripts/fit-pair/pair-file.js";
import { checkReport } from "../../scripts/fit-pair/report.js";
import { reproductionOf } from "../../scripts/fit-pair/reproduction.js";
import { filedPairs, readWorkshop, runFit } from "../../scripts/fit-pair/workshop.js";
import { parsePairData } from "../../src/catalogue/index.js";
import {
  binaryAzeotropes,
  boundaryAtPressure,
  boundaryAtTemperature,
} from "../../src/equilibrium/mixture/index.js";
import { InputError, type Problem } from "../../src/units/index.js";
import { fluidOf, pairOf, systemOf } from "../support/mixtures.js";

const root = fileURLToPath(new URL("../../", import.meta.url));
const workshop = readWorkshop();
const { fluids, pairs, bibliography } = workshop;

/** Fits whose filed pairs do not come out again, each with the cause and how far off its parameters come out. */
const exceptions: Readonly<Record<string, { cause: string; differences: readonly number[] }>> = {
  "r-134a-r-1234yf": {
    cause:
      "The first regression was noted as meeting the azeotrope within 0.0004 in mole fraction, and with the filed pair the vapour of R-513A at 27 °C is that much off: its azeotrope lies at 28 °C. Bubble and dew points do not tell the two apart.",
    differences: [0.00024, -0.00001],
  },
  "r-600-with-r-32-r-1234ze-e": {
    cause:
      "At the first regression R-446A was noted as met within 0.0 and 0.1 K, as it is by the new one; the filed pairs miss it by 0.11 and 0.26 K now. So the third pair in R-446A, R-32/R-1234ze(E), must have been another then; which is not recorded.",
    differences: [-0.00749, -0.01364],
  },
  "r-601a-with-r-125-r-134a": {
    cause:
      "The data, 0.6 % of R-601a in blends whose listings are missed by up to 1 K, pull against the starts the pairs are held to, so the weight of one against the other decides, and it is not recorded. With a listing counted as known to 0.2 K the filed values come out within 0.0012.",
    differences: [0.01867, -0.00961],
  },
};

/** Normal deviates from a fixed seed. */
function normalDeviates(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** A file of measured equilibria of R-32 with R-1234ze(E), made with the catalogue's pair and noise of its uncertainties. */
function madeUpFile(noise: () => number): Record<string, unknown> {
  const system = systemOf("R-32", "R-1234ze(E)");
  const sizes = { temperature: 0.02, pressure: 0.4, liquid: 0.001, vapour: 0.002 };
  const printed = (value: number): string => value.toPrecision(12);
  const composition = (x: number) => ({ "R-32": printed(x), "R-1234ze(E)": printed(1 - Number(printed(x))) });
  const points = [273.15, 293.15, 313.15].flatMap((T) =>
    [0.1, 0.25, 0.4, 0.55, 0.7, 0.85].map((x) => {
      const { concentrations, pressure } = boundaryAtTemperature(
        system,
        "vapour",
        Float64Array.of(x, 1 - x),
        T,
      )!;
      const y = concentrations[0]! / (concentrations[0]! + concentrations[1]!);
      return {
        name: `isotherm of ${T} K`,
        kind: "vle",
        liquid: composition(x + sizes.liquid * noise()),
        vapour: composition(y + sizes.vapour * noise()),
        temperature: printed(T + sizes.temperature * noise()),
        pressure: printed(pressure / 1000 + sizes.pressure * noise()),
      };
    }),
  );
  return {
    title: "made-up equilibria",
    source: "own-computation",
    status: "computed",
    units: { temperature: "K", pressure: "kPa", fractions: "mole" },
    uncertainty: Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, String(size)])),
    points,
    notes: [],
  };
}

const free: FreePair = {
  between: ["R-32", "R-1234ze(E)"],
  form: "kunz-wagner",
  fitted: { betaT: { start: 1 }, gammaT: { start: 0.985 } },
  fixed: {},
};
const truth = pairOf(fluidOf("R-32"), fluidOf("R-1234ze(E)")).reducing;
const trueValue = (name: string): number => (truth as unknown as Record<string, number>)[name]!;

function fitOf(json: unknown, own: FreePair = free) {
  const { points } = parseEquilibria(json, fluids, bibliography);
  return fitPairs({ description: { free: [own], assumed: [] }, points, against: [], pairs });
}

/** What a refusal names, by path. */
function refusals(refused: () => unknown): Readonly<Record<string, Problem>> {
  try {
    refused();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return Object.fromEntries(error.problems.map((problem) => [problem.path, problem]));
  }
  return {};
}

describe("least squares", () => {
  test("find the least of a curved valley, and the covariances of a straight line", () => {
    const valley = leastSquares(([x, y]) => [1 - x!, 10 * (y! - x! * x!)], [-1.2, 1], [1, 1]);
    expect(valley?.parameters[0]).toBeCloseTo(1, 9);
    expect(valley?.parameters[1]).toBeCloseTo(1, 9);
    // Mean and slope at −1, 0, 1: the inverse of diag(3, 2).
    const line = leastSquares(([a, b]) => [a! - b! - 1, a! - 2, a! + b! - 6], [0, 0], [1, 0.1]);
    expect(line?.parameters).toEqual([expect.closeTo(3, 9), expect.closeTo(2.5, 9)]);
    expect(line?.covariance.flat()).toEqual([1 / 3, 0, 0, 1 / 2].map((value) => expect.closeTo(value, 9)));
  });

  test("say when the data determine nothing", () => {
    expect(leastSquares(([x, y]) => [x! + y! - 1, 2 * (x! + y!) - 3], [0, 0], [1, 1])).toBeUndefined();
  });
});

describe("a fit to both phases", () => {
  test("recovers the parameters that its data were made with", () => {
    const { parameters, comparisons } = fitOf(madeUpFile(() => 0));
    // The data are printed with twelve digits, so what is left is that of the search for a minimum.
    for (const { name, value } of parameters)
      expect(Math.abs(value - trueValue(name)), name).toBeLessThan(1e-6);
    expect(comparisons).toHaveLength(36);
    for (const { value, uncertainty } of comparisons)
      expect(Math.abs(value / uncertainty)).toBeLessThan(1e-3);
  });

  test("recovers them from noisy data within three standard errors, and finds the noise as large as it is", () => {
    const counts = { inside: 0, all: 0 };
    for (let seed = 1; seed <= 8; seed++) {
      const { parameters, scatter } = fitOf(madeUpFile(normalDeviates(seed)));
      for (const { name, value, error } of parameters) {
        const errors = Math.abs(value - trueValue(name)) / error;
        expect(errors, `${name}, seed ${seed}`).toBeLessThan(3);
        counts.inside += errors < 1 ? 1 : 0;
        counts.all++;
      }
      // 34 degrees of freedom: a mean square of 1 ± 0.24.
      expect(scatter, `seed ${seed}`).toBeGreaterThan(0.28);
      expect(scatter, `seed ${seed}`).toBeLessThan(1.72);
    }
    // Two thirds lie within one standard error; fewer than a third would show that it is too small.
    expect(counts.inside / counts.all).toBeGreaterThan(1 / 3);
  });

  test("holds a parameter to a prior as strongly as its spread says", () => {
    const [loose] = fitOf(madeUpFile(() => 0)).parameters;
    const start = loose!.value + 0.01;
    const fitted = { ...free.fitted, betaT: { start, spread: loose!.error } };
    const [held] = fitOf(
      madeUpFile(() => 0),
      { ...free, fitted },
    ).parameters;
    // Two equally good statements about one number meet half way.
    expect(held!.value).toBeCloseTo(loose!.value + 0.005, 4);
    expect(held!.error).toBeCloseTo(loose!.error / Math.SQRT2, 5);
  });

  test("refuses to name parameters that the data do not determine", () => {
    const { points } = parseEquilibria(
      madeUpFile(() => 0),
      fluids,
      bibliography,
    );
    const input = {
      points: points.slice(0, 1).map((point) => ({ ...point, kind: "bubble" as const })),
      against: [],
      pairs,
    };
    expect(() => fitPairs({ ...input, description: { free: [free], assumed: [] } })).toThrow(
      "these points do not determine betaT of R-32/R-1234ze(E), gammaT of R-32/R-1234ze(E)",
    );
  });
});

describe("a fit to boundaries", () => {
  test("recovers parameters of both forms from bubble and dew temperatures of compositions by mass", () => {
    const cases: readonly (readonly [FreePair, Readonly<Record<string, number>>])[] = [
      [free, { betaT: trueValue("betaT"), gammaT: trueValue("gammaT") }],
      [
        {
          between: ["R-32", "R-125"],
          form: "lemmon-jacobsen",
          fitted: { zeta: { start: 0 } },
          fixed: { xi: -0.006008 },
        },
        { zeta: 28.95 },
      ],
    ];
    for (const [own, wanted] of cases) {
      const components = own.between.map(fluidOf);
      const points = [0.2, 0.5, 0.8].flatMap((w) => {
        const amounts = [w / components[0]!.molarMass, (1 - w) / components[1]!.molarMass];
        const x = Float64Array.from(amounts, (amount) => amount / (amounts[0]! + amounts[1]!));
        const system = systemOf(...own.between);
        return (["bubble", "dew"] as const).map((kind) => ({
          name: "made up",
          kind,
          [kind === "bubble" ? "liquid" : "vapour"]: {
            [own.between[0]]: w.toFixed(1),
            [own.between[1]]: (1 - w).toFixed(1),
          },
          temperature: boundaryAtPressure(
            system,
            kind === "bubble" ? "vapour" : "liquid",
            x,
            101325,
          )!.temperature.toFixed(9),
          pressure: "101.325",
        }));
      });
      const json = {
        ...madeUpFile(() => 0),
        units: { temperature: "K", pressure: "kPa", fractions: "mass" },
        uncertainty: { temperature: "0.05" },
        points,
      };
      const { parameters } = fitOf(json, own);
      expect(parameters.map(({ name }) => name)).toEqual(Object.keys(wanted));
      for (const { name, value } of parameters) {
        expect(Math.abs(value - wanted[name]!) / (name === "zeta" ? 100 : 1), name).toBeLessThan(1e-6);
      }
    }
  });
});

describe("a fit to azeotropes", () => {
  test("recovers parameters from where liquid and vapour are alike", () => {
    const system = systemOf("R-134a", "R-1234yf");
    const points = [290, 310].map((value) => {
      const [found] = binaryAzeotropes(system, { what: "temperature", value });
      const { x, pressure } = found!;
      const liquid = { "R-134a": x[0]!.toFixed(12), "R-1234yf": x[1]!.toFixed(12) };
      return {
        name: "made up",
        kind: "azeotrope",
        liquid,
        temperature: String(value),
        ...(value === 310 && { pressure: (pressure / 1000).toFixed(9) }),
      };
    });
    const units = { temperature: "K", pressure: "kPa", fractions: "mole" };
    const uncertainty = { temperature: "0.05", pressure: "0.5", liquid: "0.01" };
    const json = { ...madeUpFile(() => 0), units, uncertainty, points };
    const { parameters, comparisons } = fitOf(json, { ...free, between: ["R-134a", "R-1234yf"] });
    expect(comparisons.map(({ what }) => what)).toEqual(["vapour", "pressure", "vapour"]);
    const { reducing } = pairOf(fluidOf("R-134a"), fluidOf("R-1234yf"));
    for (const { name, value } of parameters) {
      expect(Math.abs(value - (reducing as unknown as Record<string, number>)[name]!), name).toBeLessThan(
        1e-6,
      );
    }
  });
});

describe("the fits of data/fits", () => {
  const checked = [...workshop.fits].map(([name, description]) => {
    const result = runFit(workshop, description);
    const filed = filedPairs(workshop, description);
    return [name, reproductionOf(description, result, filed, pairs), result] as const;
  });

  test("bring out the filed pairs again, but for exceptions that are told", () => {
    console.log(checkReport(checked.map(([name, reproduction]) => [name, reproduction])));
    expect(checked).toHaveLength(16);
    // Every parameter within its standard error, or every point within half its uncertainty, which is the rounding.
    const notReproduced = checked.filter(([, reproduction]) => !reproduction!.isReproduced);
    expect(notReproduced.map(([name]) => name).sort()).toEqual(Object.keys(exceptions).sort());
    for (const [name, reproduction] of notReproduced) {
      const { differences } = exceptions[name]!;
      reproduction!.parameters.forEach(({ value, filed, name: parameter }, i) => {
        expect(Math.abs(value - filed - differences[i]!), `${name}, ${parameter}`).toBeLessThan(2e-5);
      });
    }
  });

  test("are as the exceptions say", () => {
    const residuals = (name: string): readonly number[] =>
      checked.find(([one]) => one === name)![2].comparisons.map(({ value }) => value);
    const filedResiduals = (name: string): readonly number[] => {
      const points = checked.find(([one]) => one === name)![2].comparisons.map(({ point }) => point);
      return compare(modelsWith([], pairs), [...new Set(points)]).map(({ value }) => value);
    };
    // Mole fraction of R-1234yf, vapour less liquid, at 27 °C.
    expect(filedResiduals("r-134a-r-1234yf")[2]).toBeCloseTo(0.0004, 4);
    const r446a = "r-600-with-r-32-r-1234ze-e";
    expect(residuals(r446a).map((value) => value.toFixed(1))).toEqual(["0.0", "0.1"]);
    expect(filedResiduals(r446a).map((value) => value.toFixed(2))).toEqual(["0.11", "0.26"]);
    const r601a = workshop.fits.get("r-601a-with-r-125-r-134a")!;
    const points = checked
      .find(([name]) => name === "r-601a-with-r-125-r-134a")![2]
      .comparisons.map(({ point }) => ({
        ...point,
        uncertainty: { ...point.uncertainty, temperature: 0.2 },
      }));
    const counted = fitPairs({ description: r601a, points, against: [], pairs });
    const reproduction = reproductionOf(r601a, counted, pairs, pairs)!;
    for (const { value, filed } of reproduction.parameters)
      expect(Math.abs(value - filed)).toBeLessThan(0.0012);
  });

  test("say so where the data scatter beyond what they are known to", () => {
    // The older listings of R-454A and R-454C pull in opposite directions, those of blends with hydrocarbons contradict
    // each other, and the dew point of R-445A asks for more than the spreads of its pair allow.
    const scattered = checked.filter(([, , { scatter }]) => scatter > 2).map(([name]) => name);
    expect(scattered).toEqual([
      "r-32-r-1234yf-earlier",
      "r-600-with-r-125-r-134a",
      "r-600-with-r-32-r-1234ze-e",
      "r-600a-with-r-125-r-134a",
      "r-601a-with-r-125-r-134a",
      "r-744-r-1234ze-e",
    ]);
  });
});

describe("a data file", () => {
  const good = madeUpFile(() => 0) as { points: Record<string, unknown>[] };
  const refused = (change: object): Readonly<Record<string, Problem>> =>
    refusals(() => parseEquilibria({ ...good, ...change }, fluids, bibliography));
  const point = (change: object): object => ({ points: [{ ...good.points[0]!, ...change }] });

  test("is taken if nothing is wrong", () => {
    expect(refused({})).toEqual({});
    expect(refused(point({}))).toEqual({});
  });

  test("is refused by path, value and what would have been right", () => {
    expect(refused(point({ kind: "boiling" }))["points[0].kind"]).toEqual({
      path: "points[0].kind",
      value: "boiling",
      expected: 'a point of kind "bubble", "dew", "vle" or "azeotrope"',
    });
    expect(refused(point({ liquid: { "R-32": "0.5", "R-1234ze(E)": "0.6" } }))).toEqual({
      "points[0].liquid": { path: "points[0].liquid", value: 1.1, expected: "fractions that add up to 1" },
    });
    expect(refused(point({ vapour: { "R-32": "0.5", "R-134a": "0.5" } }))["points[0].vapour"]).toEqual({
      path: "points[0].vapour",
      value: "R-32, R-134a",
      expected: "the components of the liquid, R-32, R-1234ze(E)",
    });
    expect(refused(point({ liquid: { "R-32": "0.5", "R-0": "0.5" } }))["points[0].liquid.R-0"]).toEqual({
      path: "points[0].liquid.R-0",
      value: "R-0",
      expected: "a fluid of the catalogue",
    });
    expect(refused(point({ pressure: "-3" }))["points[0].pressure"]).toEqual({
      path: "points[0].pressure",
      value: "-3",
      expected: "a pressure above 0",
    });
    expect(refused(point({ temperature: "-1" }))["points[0].temperature"]).toEqual({
      path: "points[0].temperature",
      value: "-1",
      expected: "a temperature above absolute zero",
    });
    expect(refused({ source: "hearsay" })["source"]).toEqual({
      path: "source",
      value: "hearsay",
      expected: "a key of the bibliography",
    });
    expect(refused({ units: { temperature: "F", pressure: "kPa", fractions: "mole" } })).toEqual({
      "units.temperature": { path: "units.temperature", value: "F", expected: '"K" or "°C"' },
    });
    expect(refused({ uncertainty: {}, ...point({}) })).toEqual({
      "points[0].uncertainty": {
        path: "points[0].uncertainty",
        value: undefined,
        expected: "an uncertainty of temperature or pressure above 0, here or for the whole file",
      },
      "points[0].uncertainty.vapour": {
        path: "points[0].uncertainty.vapour",
        value: undefined,
        expected: "an uncertainty of the vapour's fractions above 0, here or for the whole file",
      },
    });
    expect(refused(point({ temprature: "3" }))["points[0].temprature"]?.expected).toBe("no such field");
    expect(refused(point({ pressure: 300 }))["points[0].pressure"]?.value).toBe(300);
    expect(refused({ points: [] })["points"]?.expected).toBe("at least one point");
    expect(refused(point({ liquid: { "R-32": "1", "R-1234ze(E)": "0" } }))).toMatchObject({
      "points[0].liquid.R-32": { value: "1", expected: "a fraction above 0 and below 1" },
      "points[0].liquid.R-1234ze(E)": { value: "0", expected: "a fraction above 0 and below 1" },
    });
  });

  test("may have fractions that are rounded", () => {
    const third = { "R-32": "0.333", "R-125": "0.333", "R-134a": "0.333" };
    expect(refused(point({ liquid: third, vapour: third }))).toEqual({});
    const slip = { "R-32": "0.333", "R-125": "0.333", "R-134a": "0.332" };
    expect(refused(point({ liquid: slip, vapour: slip }))).toHaveProperty(["points[0].liquid"]);
  });
});

describe("a description of a fit", () => {
  const good = {
    title: "a fit",
    free: [{ between: ["R-32", "R-125"], form: "kunz-wagner", fitted: { betaT: { start: "1" } }, fixed: {} }],
    assumed: [],
    data: [{ file: "ashrae-34-listings", points: ["R-513A"] }],
    against: [],
    notes: [],
  };
  const refused = (change: object): Readonly<Record<string, Problem>> =>
    refusals(() => parseFit({ ...good, ...change }));
  const [pair] = good.free;

  test("is refused by path, value and what would have been right", () => {
    expect(refused({})).toEqual({});
    expect(refused({ free: [{ ...pair, fitted: { zeta: { start: "1" } } }] })).toEqual({
      "free[0].fitted.zeta": {
        path: "free[0].fitted.zeta",
        value: { start: "1" },
        expected: "parameters of the form: betaT, gammaT, betaV, gammaV, each fitted or fixed",
      },
    });
    expect(refused({ free: [{ ...pair, fixed: { betaT: "1" } }] })).toHaveProperty(["free[0].fixed.betaT"]);
    expect(refused({ free: [{ ...pair, fitted: {} }] })).toHaveProperty(["free[0].fitted"]);
    expect(refused({ free: [{ ...pair, fitted: { betaT: { start: "1", spread: "0" } } }] })).toMatchObject({
      "free[0].fitted.betaT.spread": { value: "0", expected: "a spread above 0" },
    });
    expect(refused({ data: [] })["data"]?.expected).toBe("at least one file");
  });

  test("is refused if it names data that there are not, or a pair in the other order", () => {
    const description = parseFit(good);
    const run = (change: object): Readonly<Record<string, Problem>> =>
      refusals(() => runFit(workshop, { ...description, ...change }));
    expect(run({ data: [{ file: "none" }] })["data[0].file"]?.expected).toMatch(
      /^one of .*ashrae-34-listings/,
    );
    expect(run({ data: [{ file: "ashrae-34-listings", points: ["R-0"] }] })).toMatchObject({
      "data[0].points[0]": { value: "R-0", expected: "the name of a point of ashrae-34-listings" },
    });
    expect(run({ free: [{ ...description.free[0], between: ["R-125", "R-32"] }] })).toMatchObject({
      "free[0].between": { expected: "the order R-32, R-125" },
    });
  });
});

describe("a pair file", () => {
  test("is written as those of data/pairs are laid out", async () => {
    const names = await readdir(join(root, "data/pairs"));
    const texts = await Promise.all(names.map((name) => readFile(join(root, "data/pairs", name), "utf8")));
    const written = texts.map((text) => pairText(JSON.parse(text)));
    const squeezed = (text: string): string => text.replaceAll(/\s+/g, "");
    expect(written.map(squeezed)).toEqual(texts.map(squeezed));
    // A few were broken into more lines by hand.
    const same = written.filter((text, i) => text === texts[i]);
    expect(same.length).toBeGreaterThan(0.9 * names.length);
  });

  test("of a fit says what it was fitted to and how far it is off", () => {
    const set = parseEquilibria(madeUpFile(normalDeviates(3)), fluids, bibliography);
    const description = { ...parseFit(fitDescription), free: [free] };
    const input = { points: set.points, against: [], pairs };
    const result = fitPairs({ ...input, description });
    const [filed] = pairFiles(description, result, [set], () => undefined);
    expect(filed!.file).toBe("R-32+R-1234ze(E).json");
    const data = JSON.parse(filed!.text);
    const pair = parsePairData(data, [], bibliography);
    expect(pair.grade).toBe("regressed");
    expect(data.fittedTo).toEqual({
      source: "own-computation",
      status: "computed",
      remark: "isotherm of 273.15 K, isotherm of 293.15 K, isotherm of 313.15 K: both phases in equilibrium",
    });
    for (const { name, value } of result.parameters)
      expect(data.reducing[name]).toBe(String(Number(value.toFixed(5))));
    const inPressure = result.comparisons.filter(({ what }) => what === "pressure");
    const most = Math.max(...inPressure.flatMap(({ value, uncertainty }) => [Math.abs(value), uncertainty]));
    expect(pair.deviation.relative).toBeGreaterThanOrEqual(most);
    expect(pair.deviation.relative).toBeLessThan(1.1 * most);
    expect(pair.deviation.basis).toMatch(
      /^The pressures it was fitted to are missed by up to 0\.\d+ % and known to 0\.\d+ %\.$/,
    );
  });

  test("keeps its notes, its departure function and a larger deviation", () => {
    const existing = (): never => JSON.parse(pairText(before as never)) as never;
    const before = {
      between: ["R-32", "R-1234ze(E)"],
      grade: "published",
      reducing: {
        form: "kunz-wagner",
        betaT: "1",
        gammaT: "1",
        betaV: "1",
        gammaV: "1",
        source: "kunz-2012",
        status: "recalled",
      },
      departure: {
        factor: "1",
        function: "lemmon-jacobsen-2004-general",
        source: "lemmon-2004",
        status: "recalled",
      },
      deviation: { relative: "0.5", basis: "a guess" },
      notes: ["a note"],
    };
    const set = parseEquilibria(
      madeUpFile(() => 0),
      fluids,
      bibliography,
    );
    const description = { ...parseFit(fitDescription), free: [free] };
    const result = fitPairs({ points: set.points, against: [], pairs, description });
    const [filed] = pairFiles(description, result, [set], existing);
    const { grade, departure, deviation, notes } = JSON.parse(filed!.text);
    expect({ grade, departure, deviation, notes }).toEqual({
      grade: "regressed",
      departure: before.departure,
      deviation: before.deviation,
      notes: before.notes,
    });
  });

  const fitDescription = {
    title: "a fit",
    free: [
      { between: ["R-32", "R-1234ze(E)"], form: "kunz-wagner", fitted: { betaT: { start: "1" } }, fixed: {} },
    ],
    assumed: [],
    data: [{ file: "made-up" }],
    against: [],
    notes: [],
  };
});

describe("the command", () => {
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "dewline-fit-"));
  });
  afterAll(() => rm(folder, { recursive: true }));

  /** Runs what `npm run fit-pair` runs. */
  function run(...args: string[]): Promise<{ code: number; out: string; err: string }> {
    return new Promise((resolve) => {
      execFile(
        process.execPath,
        ["--import", "tsx", "scripts/fit-pair/run.ts", ...args],
        { cwd: root },
        (error, out, err) => resolve({ code: Number(error?.code ?? 0), out, err }),
      );
    });
  }

  test("fits a file of measured equilibria that nothing describes", async () => {
    const path = join(folder, "measured.json");
    await writeFile(path, JSON.stringify(madeUpFile(normalDeviates(1))));
    const { code, out } = await run(path, "--free", "betaT,gammaT");
    expect(code).toBe(0);
    expect(out).toMatch(/R-32\/R-1234ze\(E\) +betaT +1\.00\d{3} +0\.00\d{3} +1\.00164/);
    expect(out).toMatch(
      /isotherm of 313.15 K vle, R-32 in the vapour +40\.0\d °C at \d+\.\d+ kPa +[+−]0\.\d{3} mol %/,
    );
    expect(out).toMatch(/root mean square: 0\.\d+ %, 0\.\d+ mol %/);
  });

  test("fits what is described, also with the pairs of now", async () => {
    const { out } = await run("r-125-r-1234yf", "--as-of-now");
    expect(out).toMatch(/R-125\/R-1234yf +betaT +1\.0\d{4} +0\.00\d{3} +0\.99468/);
    expect(out).toMatch(/not fitted to\n.*\nR-449A bubble/);
  });

  test("says in plain words what is wrong", async () => {
    const path = join(folder, "wrong.json");
    await writeFile(path, JSON.stringify({ ...madeUpFile(() => 0), source: "hearsay" }));
    const [file, fit] = await Promise.all([run(path), run("no-fit")]);
    expect(file).toMatchObject({ code: 1, err: 'source: "hearsay"; expected a key of the bibliography\n' });
    expect(fit.err).toMatch(
      /^There is neither a fit nor a file no-fit; expected one of\n {2}r-1234ze-e-r-227ea\n/,
    );
  });
});
