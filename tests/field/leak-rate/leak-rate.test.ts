import { describe, expect, it } from "vitest";
import { leakMassFlow, leakThroughput } from "../../../src/field/index.js";
import { celsius, type InputError } from "../../../src/units/index.js";

/** One gram a year of 365.25 days, kg/s. */
const GRAM_A_YEAR = 1e-3 / 31557600;

describe("leak rates", () => {
  it.each([
    // Computed independently to six digits; row tolerance 1e-4.
    ["FP-035", 5, 0.052024, 7.42312e-6],
    ["FP-036", 1, 0.102032, 7.56979e-7],
  ])("%s throughput of %f g a year", (_id, grams, molarMass, throughput) => {
    expect(leakThroughput(grams * GRAM_A_YEAR, molarMass, celsius(20))).toBeWithin(throughput, 1e-5);
  });

  it("FP-037 grams a year of a throughput", () => {
    expect(leakMassFlow(1e-6, 0.052024, celsius(20)) / GRAM_A_YEAR).toBeWithin(0.673571, 1e-5);
  });

  it("refuse nonsense, all of it at once", () => {
    for (const convert of [leakMassFlow, leakThroughput]) {
      try {
        convert(-1, 0, Number.NaN);
        expect.unreachable();
      } catch (error) {
        expect((error as InputError).problems).toHaveLength(3);
      }
    }
  });
});
