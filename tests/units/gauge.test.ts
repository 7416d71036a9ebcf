import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  attempt,
  barGauge,
  centimetreOfMercury,
  centimetreOfMercuryDifference,
  centimetreOfMercuryGauge,
  fromVacuumReading,
  InputError,
  inBarGauge,
  inPsiGauge,
  pascalDifference,
  pressureAtAltitude,
  psi,
  psiGauge,
  toAbsolute,
  toGauge,
  tryFromVacuumReading,
  tryToAbsolute,
  tryToGauge,
} from "../../src/units/index.js";
import "../support/fuzz-seed.js";

const atmospheres = fc.double({ min: 30e3, max: 110e3, noNaN: true });
const pressures = fc.double({ min: 0, max: 6e6, noNaN: true });

const problemsOf = (work: () => unknown) => {
  const outcome = attempt(work);
  return outcome.ok ? [] : (outcome.error as InputError).problems;
};

describe("gauge and absolute", () => {
  it("undo each other from a full vacuum to 60 bar at any altitude", () => {
    fc.assert(
      fc.property(pressures, atmospheres, (pressure, local) => {
        // Rounding of the two sums, at the size of the larger term.
        expect(Math.abs(toAbsolute(toGauge(pressure, local), local) - pressure)).toBeLessThan(2e-9);
      }),
    );
  });

  it("a vacuum reading is a gauge reading without its sign", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), atmospheres, (part, local) => {
        const depth = part * local;
        expect(fromVacuumReading(depth, local)).toBe(toAbsolute(-depth, local));
      }),
    );
  });

  it("zero on the gauge is the local atmosphere", () => {
    expect(toAbsolute(barGauge(0), 79495)).toBe(79495);
    expect(toGauge(79495, 79495)).toBe(0);
    expect(fromVacuumReading(0, 79495)).toBe(79495);
  });

  it("the deepest vacuum is no pressure at all, and nothing is deeper", () => {
    fc.assert(
      fc.property(atmospheres, (local) => {
        expect(toAbsolute(-local, local)).toBe(0);
        expect(fromVacuumReading(local, local)).toBe(0);
        expect(tryToAbsolute(-local * (1 + 1e-9), local).ok).toBe(false);
        expect(tryFromVacuumReading(local * (1 + 1e-9), local).ok).toBe(false);
      }),
    );
  });

  it("a full vacuum stays one when its number went through another unit", () => {
    fc.assert(
      fc.property(atmospheres, (local) => {
        // 1e-13 of the atmosphere, as stated in src/.
        expect(toAbsolute(psiGauge(inPsiGauge(-local)), local)).toBeLessThan(2e-8);
        expect(toAbsolute(barGauge(inBarGauge(-local)), local)).toBeGreaterThanOrEqual(0);
      }),
    );
    expect(toAbsolute(psiGauge(-14.5), psi(14.5))).toBe(0);
  });

  it("60 cmHg of vacuum cannot be at 2000 m, where 59.63 cmHg is all there is", () => {
    const local = pressureAtAltitude(2000);
    expect(() => fromVacuumReading(centimetreOfMercuryDifference(60), local)).toThrow(InputError);
    expect(() => toAbsolute(centimetreOfMercuryGauge(-60), local)).toThrow(InputError);
    expect(fromVacuumReading(centimetreOfMercuryDifference(59), local)).toBeWithin(
      local - centimetreOfMercury(59),
      1e-15,
    );
  });

  it("the refusal names the reading, its value and the deepest vacuum", () => {
    expect(problemsOf(() => toAbsolute(-80000, 79495))).toEqual([
      {
        path: "reading",
        value: -80000,
        expected:
          "-79495 Pa or more: no vacuum is deeper than the local atmosphere (check its value and the zero of the gauge)",
        reason: "vacuum-deeper-than-atmosphere",
      },
    ]);
    expect(problemsOf(() => fromVacuumReading(pascalDifference(80000), 79495))).toMatchObject([
      {
        path: "vacuum",
        value: 80000,
        expected: expect.stringMatching(/^0 to 79495 Pa/),
        reason: "vacuum-deeper-than-atmosphere",
      },
    ]);
  });

  it("lists everything that is wrong at once", () => {
    const bad = Number.NaN;
    expect(problemsOf(() => toAbsolute(bad, bad)).map(({ path }) => path)).toEqual([
      "reading",
      "localAtmosphere",
    ]);
    expect(problemsOf(() => toGauge(-1, 0)).map(({ path }) => path)).toEqual(["pressure", "localAtmosphere"]);
    expect(problemsOf(() => fromVacuumReading(-1, -1)).map(({ path }) => path)).toEqual([
      "vacuum",
      "localAtmosphere",
    ]);
  });

  it("has no default atmosphere", () => {
    const withoutAtmosphere = toAbsolute as unknown as (reading: number) => number;
    expect(() => withoutAtmosphere(5e5)).toThrow(
      "localAtmosphere: expected an absolute pressure in Pa, above 0",
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, "5", null, undefined])(
    "refuses %s",
    (bad) => {
      const value = bad as number;
      for (const outcome of [
        tryToAbsolute(value, 1e5),
        tryToAbsolute(0, value),
        tryToGauge(value, 1e5),
        tryToGauge(0, value),
        tryFromVacuumReading(value, 1e5),
        tryFromVacuumReading(0, value),
      ]) {
        expect(outcome).toMatchObject({ ok: false, error: { code: "malformed-input" } });
      }
    },
  );

  it("try twins give the value", () => {
    expect(tryToAbsolute(8e5, 1e5)).toEqual({ ok: true, value: 9e5 });
    expect(tryToGauge(9e5, 1e5)).toEqual({ ok: true, value: 8e5 });
    expect(tryFromVacuumReading(6e4, 1e5)).toEqual({ ok: true, value: 4e4 });
  });
});
