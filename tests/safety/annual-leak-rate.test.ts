import { describe, expect, it } from "vitest";
import {
  annualLeakRate,
  carbonDioxideEquivalent,
  chargeOfEquivalent,
  tryAnnualLeakRate,
} from "../../src/safety/index.js";
import { InputError } from "../../src/units/index.js";

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

describe("carbon dioxide equivalents", () => {
  it("of 5 t are 7.4 kg of GWP 675 and 2.4 kg of GWP 2088, as printed in a leaflet on leak checks", () => {
    expect(chargeOfEquivalent(5000, 675)).toBeCloseTo(7.4, 1);
    expect(chargeOfEquivalent(5000, 2088)).toBeCloseTo(2.4, 1);
    expect(carbonDioxideEquivalent(chargeOfEquivalent(5000, 675), 675)).toBeWithin(5000, 1e-14);
    expect(() => carbonDioxideEquivalent(-1, 0)).toThrow(InputError);
    expect(() => chargeOfEquivalent(1, Number.NaN)).toThrow(InputError);
  });
});
