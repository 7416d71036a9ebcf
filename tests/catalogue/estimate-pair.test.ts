import { describe, expect, test } from "vitest";
import { classValues } from "../../src/catalogue/class-values.js";
import { estimatePair, findFluid, listFluids, parsePair } from "../../src/catalogue/index.js";

const estimate = (first: string, second: string) => estimatePair(findFluid(first), findFluid(second));

/** What a class value of gammaT makes. */
const kunzWagner = (gammaT: number) => ({ form: "kunz-wagner", betaT: 1, gammaT, betaV: 1, gammaV: 1 });

describe("estimatePair", () => {
  // Class values and spreads are our own: means over the pairs of the catalogue.
  test.each([
    ["R-32", "R-23", 1, 0.03],
    ["R-161", "R-1234ze(Z)", 0.985, 0.051],
    ["R-1234yf", "R-1336mzz(Z)", 1, 0.03],
    ["R-245fa", "R-601a", 0.92, 0.084],
    ["R-1234ze(E)", "R-1270", 0.92, 0.084],
    ["R-744", "R-601a", 0.91, 0.026],
    ["R-744", "R-161", 1, 0.057],
    ["R-744", "R-1234ze(Z)", 1, 0.057],
    ["R-13I1", "R-134a", 0.945, 0.129],
    ["R-12", "R-152a", 1, 0.06],
    ["R-22", "R-123", 1, 0.06],
    ["R-1233zd(E)", "R-1234ze(E)", 0.985, 0.102],
    ["R-22", "R-290", 0.92, 0.168],
    ["R-744", "R-22", 1, 0.114],
  ])("%s with %s has gammaT %d and is off by %d", (first, second, gammaT, relative) => {
    for (const pair of [estimate(first, second), estimate(second, first)]) {
      expect(pair?.reducing).toEqual(kunzWagner(gammaT));
      expect(pair?.deviation.relative).toBe(relative);
      expect(pair?.departure).toBeUndefined();
    }
    expect(estimate(first, second)?.between).toEqual([first, second]);
    expect(estimate(second, first)?.between).toEqual([second, first]);
  });

  test("mixes two hydrocarbons linearly", () => {
    const pair = estimate("R-1270", "R-600");
    expect(pair?.reducing).toEqual({ form: "lemmon-jacobsen", zeta: 0, xi: 0 });
    expect(pair?.deviation.relative).toBe(0.043);
  });

  test.each([
    ["R-717", "R-32"],
    ["R-E170", "R-152a"],
    ["R-728", "R-744"],
    ["R-218", "R-134a"],
    ["R-116", "R-23"],
    ["R-13I1", "R-1234yf"],
    ["R-13I1", "R-744"],
    ["R-32", "R-32"],
  ])("knows nothing of %s with %s", (first, second) => {
    expect(estimate(first, second)).toBeUndefined();
    expect(estimate(second, first)).toBeUndefined();
  });

  test("knows nothing of a fluid that somebody registered, but of another equation of a known one", () => {
    const r32 = findFluid("R-32");
    expect(estimatePair({ ...r32, designation: "R-9999" }, r32)).toBeUndefined();
    expect(estimatePair({ ...findFluid("R-152a"), equation: "nobody-2030" }, r32)?.grade).toBe("estimated");
  });

  test("gives pairs that say what they are and pass the check of a pair", () => {
    const fluids = listFluids();
    const pairs = fluids.flatMap((first) => fluids.flatMap((second) => estimatePair(first, second) ?? []));
    expect(pairs.length).toBeGreaterThan(600);
    for (const pair of pairs) {
      expect(parsePair(pair)).toEqual(pair);
      expect(pair.grade).toBe("estimated");
      expect(pair.sources).toEqual([]);
      expect(pair.notes.join()).toContain("Estimated from the kind");
      expect(pair.deviation.basis).not.toBe("");
    }
  });
});

describe("the classes", () => {
  test("hold fluids of the catalogue, each in one class, and all but those of which nothing is known", () => {
    const classed = classValues.classes.flatMap(({ fluids }) => fluids);
    expect(new Set(classed).size).toBe(classed.length);
    const designations = [...new Set(listFluids().map(({ designation }) => designation))];
    for (const designation of classed) expect(designations).toContain(designation);
    expect(designations.filter((designation) => !classed.includes(designation))).toEqual([
      "R-116",
      "R-218",
      "R-717",
      "R-728",
      "R-E170",
    ]);
  });

  test("have one estimate for two of them, by names that exist", () => {
    const names = classValues.classes.map(({ name }) => name);
    const seen = classValues.estimates.map(({ between }) => [...between].sort().join(" + "));
    expect(new Set(seen).size).toBe(seen.length);
    for (const { between } of classValues.estimates) {
      for (const name of between) expect(names).toContain(name);
    }
  });
});
