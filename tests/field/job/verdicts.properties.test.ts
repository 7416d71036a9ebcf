import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { commission, decide, nitrogenHold, readJob, type Verdict } from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { demonstrationJob, demonstrationLogs } from "./demonstration.js";

/** Ways to write an amount: unit, and the number in it. Factors are exact definitions. */
const gaugeUnits = [
  ["MPa gauge", (pascal: number) => pascal / 1e6],
  ["kPa gauge", (pascal: number) => pascal / 1e3],
  ["bar gauge", (pascal: number) => pascal / 1e5],
  ["psig", (pascal: number) => pascal / 6894.757293168361],
  ["kgf/cm2 gauge", (pascal: number) => pascal / 98066.5],
] as const;
const temperatureUnits = [
  ["°C", (kelvin: number) => kelvin - 273.15],
  ["K", (kelvin: number) => kelvin],
  ["°F", (kelvin: number) => (kelvin - 273.15) * 1.8 + 32],
] as const;
const massUnits = [
  ["kg", (kilogram: number) => kilogram],
  ["g", (kilogram: number) => kilogram * 1e3],
  ["oz", (kilogram: number) => kilogram / 0.028349523125],
  ["lb", (kilogram: number) => kilogram / 0.45359237],
] as const;
type Ways = readonly (readonly [string, (si: number) => number])[];

/** Readings of the demonstration, where they stand and what they are in SI. */
const readings: readonly (readonly [step: string, field: string, si: number, ways: Ways])[] = [
  ["superheat", "pressure", 0.862e6, gaugeUnits],
  ["superheat", "lineTemperature", 291.55, temperatureUnits],
  ["subcooling", "pressure", 2.618e6, gaugeUnits],
  ["subcooling", "lineTemperature", 313.55, temperatureUnits],
  ["standing", "pressure", 1.452e6, gaugeUnits],
  ["standing", "temperature", 294.75, temperatureUnits],
  ["opening", "pressure", 1.448e6, gaugeUnits],
  ["lineSet", "added", 0.125, massUnits],
  ["running", "outdoorTemperature", 305.15, temperatureUnits],
  ["unit", "nameplateCharge", 1.75, massUnits],
];

describe("the verdict of a whole job", () => {
  const logs = demonstrationLogs();
  const verdicts = (job: unknown): readonly Verdict[] =>
    commission(readJob(job, logs)).steps.map(({ verdict }) => verdict);
  const same = verdicts(demonstrationJob());

  it("does not depend on the unit in which anything is entered", () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(59), { minLength: readings.length, maxLength: readings.length }),
        (choices) => {
          const job = demonstrationJob();
          readings.forEach(([step, field, si, ways], index) => {
            const [unit, into] = ways[choices[index]! % ways.length]!;
            job[step][field] = `${Number(into(si).toPrecision(13))} ${unit}`;
          });
          expect(verdicts(job)).toEqual(same);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("a verdict against one limit", () => {
  const rank: Readonly<Record<Verdict, number>> = { fail: 0, inconclusive: 1, pass: 2 };

  it("never gets worse as the reading moves to the good side", () => {
    const number = fc.double({ min: -100, max: 100, noNaN: true });
    const positive = fc.double({ min: 0, max: 50, noNaN: true });
    fc.assert(
      fc.property(number, positive, positive, number, (value, step, U, limit) => {
        const least = (x: number) => rank[decide(x, U, { minimum: limit }).verdict];
        const most = (x: number) => rank[decide(x, U, { maximum: limit }).verdict];
        expect(least(value + step)).toBeGreaterThanOrEqual(least(value));
        expect(most(value - step)).toBeGreaterThanOrEqual(most(value));
      }),
      { numRuns: 2000 },
    );
  });

  it("of a hold test never gets better as the last reading falls below what is expected", () => {
    const nitrogen = refrigerant("R-728");
    const hold = (last: number) =>
      nitrogenHold({
        nitrogen,
        readings: [
          { time: 0, pressure: 3.9e6, pipeTemperature: 293.15 },
          { time: 7200, pressure: last, pipeTemperature: 290.15 },
        ],
        gauge: { accuracy: { kind: "half-width", halfWidth: 2e4 }, resolution: 5e3 },
        thermometer: { accuracy: { kind: "half-width", halfWidth: 0.5 } },
        atmosphere: { pressure: 101325, standardUncertainty: 200, because: "barometer" },
        maximumAllowablePressure: 4.15e6,
      });
    const { expectedPressure } = hold(3.9e6);
    const below = fc.double({ min: 0, max: 2e5, noNaN: true });
    fc.assert(
      fc.property(below, below, (one, more) => {
        const near = rank[hold(expectedPressure - one).verdict];
        expect(rank[hold(expectedPressure - one - more).verdict]).toBeLessThanOrEqual(near);
      }),
      { numRuns: 300 },
    );
  });
});
