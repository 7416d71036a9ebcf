import { describe, expect, test } from "vitest";
import { blend, pairs, refrigerant, registerPair, tryBlend, tryRegisterPair } from "../../src/state/index.js";
import { InputError } from "../../src/units/index.js";

/* No outside source: what registering promises. The numbers of the pair are made up for the test. */

/** Ammonia belongs to no class that pairs are estimated for, so nothing is known of this pair. */
const own = {
  between: ["R-717", "R-290"],
  grade: "regressed",
  reducing: { form: "kunz-wagner", betaT: 1, gammaT: 0.95, betaV: 1, gammaV: 1 },
  deviation: { relative: 0.05, basis: "made up for a test" },
  sources: ["none: made up for a test"],
  notes: [],
};

function problemsOf(pair: unknown): InputError["problems"] {
  const outcome = tryRegisterPair(pair);
  if (outcome.ok) throw new Error("was not refused");
  if (!(outcome.error instanceof InputError)) throw outcome.error;
  return outcome.error.problems;
}

describe("a pair of one's own", () => {
  test("opens blends that were refused, in either order, and then the name is taken", () => {
    const parts = [
      ["R-290", 0.9],
      ["R-717", 0.1],
    ] as const;
    expect(tryBlend(parts).ok).toBe(false);
    const before = pairs().length;
    const checked = registerPair(own);
    expect(pairs()).toHaveLength(before + 1);
    const made = blend(parts);
    expect(made.blend?.pairs).toEqual([checked]);
    // Both boil near 0.5 MPa at 0 °C; a γT below 1 makes them boil higher together.
    const together = made.bubble({ temperature: 273.15 }).pressure;
    expect(together).toBeGreaterThan(refrigerant("R-290").saturation({ temperature: 273.15 }).pressure);
    expect(problemsOf(own)[0]).toMatchObject({ path: "between", value: "R-717 with R-290" });
  });

  test.each<[string, object, string]>([
    ["a fluid nobody knows", { ...own, between: ["R-717", "R-9999"] }, "between[1]"],
    ["one fluid twice", { ...own, between: ["R-717", "R-717"] }, "between"],
    ["a pair of the catalogue", { ...own, between: ["R-32", "R-125"] }, "between"],
    ["another form", { ...own, reducing: { form: "other" } }, "reducing"],
    ["β as a text", { ...own, reducing: { ...own.reducing, betaT: "1" } }, "reducing.betaT"],
    ["a field too many", { ...own, remark: "x" }, "remark"],
    ["no deviation", { ...own, deviation: { relative: 0, basis: "x" } }, "deviation.relative"],
  ])("is refused for %s", (_, pair, path) => {
    expect(
      problemsOf(pair)
        .map((problem) => problem.path)
        .join(),
    ).toContain(path);
  });

  test("cannot change a designated blend: another set is given to one blend alone", () => {
    const known = blend([
      ["R-32", 0.5],
      ["R-125", 0.5],
    ]).blend!.pairs[0]!;
    expect(tryRegisterPair(known).ok).toBe(false);
    const other = { ...known, reducing: { form: "lemmon-jacobsen", zeta: 0, xi: 0 } } as typeof known;
    const parts = [["R-410A", 1]] as const;
    const changed = blend(parts, { pairs: [other] }).bubble({ temperature: 280 }).pressure;
    const usual = refrigerant("R-410A").bubble({ temperature: 280 }).pressure;
    expect(Math.abs(changed / usual - 1)).toBeGreaterThan(0.01);
    expect(blend(parts).bubble({ temperature: 280 }).pressure).toBeWithin(usual, 1e-12);
  });
});
