import { describe, expect, it } from "vitest";
import {
  annualLeakRate,
  rollingLeakRate,
  tryAnnualLeakRate,
  tryRollingLeakRate,
} from "../../src/safety/index.js";
import type { InputError } from "../../src/units/index.js";

describe("a yearly loss", () => {
  const addition = { added: 0.1, fullCharge: 1, daysSinceLastAddition: 365 };

  it("counts an addition after more than a year as that of one year: 40 CFR 82.152, recalled", () => {
    expect(annualLeakRate(addition).percentPerYear).toBeWithin(10, 1e-12);
    expect(annualLeakRate({ ...addition, daysSinceLastAddition: 1000 }).percentPerYear).toBeWithin(10, 1e-12);
    expect(annualLeakRate({ ...addition, daysSinceLastAddition: 73 }).percentPerYear).toBeWithin(50, 1e-12);
    expect(annualLeakRate({ ...addition, added: 0 }).percentPerYear).toBe(0);
  });

  it("names everything that is wrong", () => {
    const outcome = tryAnnualLeakRate({ added: 2, fullCharge: 1, daysSinceLastAddition: 0 });
    expect(outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path)).toEqual([
      "daysSinceLastAddition",
      "added",
    ]);
    expect(tryAnnualLeakRate(undefined as never).ok).toBe(false);
  });
});

describe("a loss over a period", () => {
  const history = {
    additions: [
      { added: 0.1, daysAgo: 0 },
      { added: 0.05, daysAgo: 365 },
      { added: 0.2, daysAgo: 366 },
    ],
    fullCharge: 1,
    periodDays: 365,
  };

  it("sums what was added in it, and stretches nothing: 40 CFR 82.152, recalled", () => {
    const year = rollingLeakRate(history);
    expect(year.percent).toBeWithin(15, 1e-12);
    expect(year).toMatchObject({ counted: 2, leftOut: 1 });
    expect(rollingLeakRate({ ...history, periodDays: 100 }).percent).toBeWithin(10, 1e-12);
    expect(rollingLeakRate({ ...history, additions: [] })).toMatchObject({
      percent: 0,
      counted: 0,
      leftOut: 0,
    });
  });

  it("is that of the other method for one addition a year after another", () => {
    const additions = [{ added: 0.07, daysAgo: 10 }];
    expect(rollingLeakRate({ ...history, additions }).percent).toBeWithin(
      annualLeakRate({ added: 0.07, fullCharge: 1, daysSinceLastAddition: 365 }).percentPerYear,
      1e-12,
    );
  });

  it("names everything that is wrong", () => {
    const paths = (change: object) => {
      const outcome = tryRollingLeakRate({ ...history, ...change });
      return outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);
    };
    expect(paths({ additions: [{ added: -1, daysAgo: Number.NaN }, null], fullCharge: 0 })).toEqual([
      "additions[0].added",
      "additions[0].daysAgo",
      "additions[1].added",
      "additions[1].daysAgo",
      "fullCharge",
    ]);
    expect(paths({ additions: 7, periodDays: 366 })).toEqual(["additions", "periodDays"]);
    expect(tryRollingLeakRate(null as never).ok).toBe(false);
  });
});
