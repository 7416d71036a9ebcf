import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  evaluateStrengthTest,
  printedStages,
  type StrengthTest,
  storedGasEnergy,
  testPressures,
  testVolume,
  tryEvaluateStrengthTest,
  tryStoredGasEnergy,
  tryTestVolume,
} from "../../../src/field/index.js";
import { InputError, type Outcome } from "../../../src/units/index.js";

const pathsOf = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);

const gauge = {
  accuracy: { kind: "accuracy-class", accuracyClass: 1, scaleMinimum: 0, scaleMaximum: 6e6 },
  resolution: 1e4,
} as const;

const good: StrengthTest = {
  gauge,
  maximumAllowablePressure: 4.15e6,
  plan: [
    { pressure: 0.3e6, holdFor: 180 },
    { pressure: 1.5e6, holdFor: 180 },
    { pressure: 4.15e6, holdFor: 600 },
  ],
  stages: [
    { pressure: 0.3e6, heldFor: 200, jointsInspected: true },
    { pressure: 1.52e6, heldFor: 200, jointsInspected: true },
    { pressure: 4.15e6, heldFor: 700, jointsInspected: true },
  ],
};

const withStage = (index: number, change: object): StrengthTest => ({
  ...good,
  stages: good.stages.map((stage, at) => (at === index ? { ...stage, ...change } : stage)),
});

describe("a strength test in stages", () => {
  it("passes when every stage was reached, held and looked at", () => {
    const { verdict, stages, warnings } = evaluateStrengthTest(good);
    expect(verdict).toBe("pass");
    expect(stages).toHaveLength(3);
    expect(warnings).toEqual([]);
  });

  it("fails for a stage left out, too short or surely too low, and leaves open what nobody looked at", () => {
    expect(evaluateStrengthTest({ ...good, stages: good.stages.slice(0, 2) }).verdict).toBe("fail");
    expect(evaluateStrengthTest(withStage(1, { heldFor: 100 })).verdict).toBe("fail");
    expect(evaluateStrengthTest(withStage(2, { pressure: 3.9e6 })).verdict).toBe("fail");
    expect(evaluateStrengthTest(withStage(0, { jointsInspected: false })).verdict).toBe("inconclusive");
    // Class 1 of 6 MPa: 60 kPa/√3 and the resolution make U = 70 kPa.
    expect(evaluateStrengthTest(withStage(2, { pressure: 4.1e6 })).verdict).toBe("inconclusive");
  });

  it("warns above PS and of a gauge that ends too soon", () => {
    const above: StrengthTest = {
      ...good,
      plan: [...good.plan.slice(0, 2), { pressure: 4.5e6, holdFor: 600 }],
      stages: [...good.stages.slice(0, 2), { pressure: 4.52e6, heldFor: 700, jointsInspected: true }],
      gauge: { accuracy: { kind: "percent-of-full-scale", percent: 1, fullScale: 5e6 } },
    };
    expect(evaluateStrengthTest(above).warnings.map(({ code }) => code)).toEqual([
      "strength-test-only",
      "gauge-range-small",
    ]);
  });

  it("refuses pressures above 1.1 PS, plans that do not rise, and what is malformed", () => {
    // 1.1 × 4.15 MPa = 4.565 MPa.
    expect(pathsOf(tryEvaluateStrengthTest(withStage(2, { pressure: 4.57e6 })))).toEqual([
      "stages[2].pressure",
    ]);
    const plan = [...good.plan.slice(0, 2), { pressure: 1.5e6, holdFor: 1 }];
    expect(pathsOf(tryEvaluateStrengthTest({ ...good, plan }))).toEqual(["plan[2].pressure"]);
    expect(pathsOf(tryEvaluateStrengthTest({ ...good, plan: [], stages: [] }))).toEqual(["plan"]);
    expect(pathsOf(tryEvaluateStrengthTest(undefined as never))).toEqual([""]);
    expect(pathsOf(tryEvaluateStrengthTest(withStage(1, { jointsInspected: "yes", heldFor: -1 })))).toEqual([
      "stages[1].heldFor",
      "stages[1].jointsInspected",
    ]);
  });

  it("never gets better with less pressure or less time", () => {
    const rank = { fail: 0, inconclusive: 1, pass: 2 };
    fc.assert(
      fc.property(
        fc.double({ min: 3.5e6, max: 4.5e6, noNaN: true }),
        fc.double({ min: 0, max: 1200, noNaN: true }),
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        (pressure, heldFor, less) => {
          const of = (p: number, t: number) =>
            rank[evaluateStrengthTest(withStage(2, { pressure: p, heldFor: t })).verdict];
          expect(of(pressure - less, heldFor)).toBeLessThanOrEqual(of(pressure, heldFor));
          expect(of(pressure, heldFor / 2)).toBeLessThanOrEqual(of(pressure, heldFor));
        },
      ),
      { numRuns: 300 },
    );
  });

  it("has printed stages below the final one, from a manual", () => {
    expect(printedStages().map(({ pressure, holdFor }) => [pressure, holdFor])).toEqual([
      [0.3e6, 180],
      [1.5e6, 180],
    ]);
  });
});

describe("pressures, energy and volume of a test", () => {
  it("follow from PS, and ask for a gauge that goes further", () => {
    const { tightness, assembledSystem, gaugeFullScale } = testPressures(4e6);
    expect(tightness).toBe(4e6);
    expect(gaugeFullScale).toBeWithin(1.25 * assembledSystem, 1e-12);
    expect(() => testPressures(0)).toThrow(InputError);
  });

  it("store no energy at the pressure of the air, and refuse an impossible gas", () => {
    expect(pathsOf(tryStoredGasEnergy({ pressure: 0, volume: -1, heatCapacityRatio: 1 }))).toEqual([
      "pressure",
      "volume",
      "heatCapacityRatio",
    ]);
    const argon = storedGasEnergy({ pressure: 1e6, volume: 1e-3, heatCapacityRatio: 5 / 3 });
    expect(argon).toBeWithin(1500, 1e-12);
  });

  it("add up tubes and coil; 10 % of the wall moves the bore of 6.35 × 0.8 mm by 6.6 to 6.9 %", () => {
    const tube = { outerDiameter: 6.35e-3, wall: 0.8e-3 };
    const { volume, expandedUncertainty } = testVolume({
      tubes: [{ tube, length: 10 }],
      coil: { volume: 0, halfWidth: 0 },
    });
    expect(volume).toBeWithin(1.772055e-4, 1e-6);
    // Half-width over √3, times k = 2; to first order between the two exact sides.
    const halfWidth = (expandedUncertainty * Math.sqrt(3)) / 2 / volume;
    expect(halfWidth).toBeGreaterThan(0.066);
    expect(halfWidth).toBeLessThan(0.069);
    expect(pathsOf(tryTestVolume({ tubes: [{ tube, length: -1 }], coil: undefined as never }))).toEqual([
      "coil.volume",
      "coil.halfWidth",
      "tubes[0].length",
    ]);
  });
});
