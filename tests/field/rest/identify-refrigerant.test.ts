import { describe, expect, it } from "vitest";
import {
  identifyRefrigerant,
  tryIdentifyRefrigerant,
  type UnknownRefrigerant,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError } from "../../../src/units/index.js";

const named = (...names: string[]) => names.map((name) => refrigerant(name));
const classGauge = {
  accuracy: { kind: "accuracy-class", accuracyClass: 1.6, scaleMinimum: -1e5, scaleMaximum: 3.8e6 },
} as const;
const unknown: UnknownRefrigerant = {
  candidates: named("R-22", "R-134a", "R-410A", "R-32", "R-290"),
  pressure: 1.69e6 - 101325,
  gauge: classGauge,
  temperature: celsius(25),
  thermometer: { accuracy: { kind: "half-width", halfWidth: 0.3 } },
  atmosphere: { pressure: 101325, standardUncertainty: 100, because: "barometer" },
};
const at = (absolute: number, change: Partial<UnknownRefrigerant> = {}) => {
  const result = identifyRefrigerant({ ...unknown, pressure: absolute - 101325, ...change });
  const fits = result.candidates.filter((each) => each.fits).map((each) => each.refrigerant.designation);
  return { ...result, fits, codes: result.warnings.map(({ code }) => code) };
};

describe("which refrigerant it may be", () => {
  it("cannot be told between R-32 and R-410A with a class 1.6 gauge: 2 % apart at 25 °C", () => {
    // 1690 kPa, and 1652 to 1657 kPa: printed tables of both.
    for (const [pressure, nearest] of [
      [1690e3, "R-32"],
      [1655e3, "R-410A"],
    ] as const) {
      const result = at(pressure);
      expect(result).toMatchObject({
        state: "tie",
        verdict: "inconclusive",
        codes: ["cannot-be-told-apart"],
      });
      expect([...result.fits].sort()).toEqual(["R-32", "R-410A"]);
      expect(result.fits[0]).toBe(nearest);
      expect(result.candidates).toHaveLength(5);
    }
  });

  it("is one of the two with a fine gauge and thermometer", () => {
    const fine = {
      gauge: { accuracy: { kind: "half-width", halfWidth: 4e3 } },
      thermometer: { accuracy: { kind: "half-width", halfWidth: 0.1 } },
    } as const;
    expect(at(1690e3, fine)).toMatchObject({ state: "one-fits", verdict: "pass", fits: ["R-32"], codes: [] });
    expect(at(1655e3, fine)).toMatchObject({ state: "one-fits", verdict: "pass", fits: ["R-410A"] });
  });

  it("is none of them between all", () => {
    // At 25 °C R-22 makes 1.04 MPa and R-410A 1.65 MPa.
    const result = at(1350e3);
    expect(result).toMatchObject({ state: "none-fits", verdict: "fail", fits: [] });
    const above = result.candidates.filter(({ deviation }) => deviation > 0);
    expect(above.map((each) => each.refrigerant.designation).sort()).toEqual(["R-134a", "R-22", "R-290"]);
    expect(result.because).toContain("none");
  });

  it("is a blend anywhere from its dew to its bubble pressure", () => {
    // R-407C at 25 °C: about 1.01 to 1.19 MPa.
    const { candidates, fits } = at(1100e3, { candidates: named("R-134a", "R-407C") });
    expect(fits).toEqual(["R-407C"]);
    expect(candidates[0]).toMatchObject({ deviation: 0, fits: true });
    expect(candidates[0]!.dewPressure).toBeLessThan(1.1e6);
    expect(candidates[0]!.bubblePressure).toBeGreaterThan(1.1e6);
  });

  it("stays open for one above its critical temperature", () => {
    // 31 °C. R-32 makes 2478 kPa at 40 °C.
    const warm = { temperature: celsius(40), candidates: named("R-32", "R-744") };
    expect(at(1000e3, warm)).toMatchObject({ state: "undecided", verdict: "inconclusive", fits: [] });
    const one = at(2478e3, warm);
    expect(one).toMatchObject({ state: "one-fits", verdict: "inconclusive", fits: ["R-32"] });
    expect(one.undecided.map((each) => each.refrigerant.designation)).toEqual(["R-744"]);
    expect(one.because).toContain("R-744 cannot be judged");
  });

  it("is not told where a tenth stays open, and ranked where nothing does", () => {
    const coarse = { gauge: { accuracy: { kind: "half-width", halfWidth: 2e5 } } } as const;
    expect(at(1690e3, { ...coarse, candidates: named("R-32") })).toMatchObject({
      state: "one-fits",
      verdict: "inconclusive",
      codes: ["blind"],
    });
    const exact = { accuracy: { kind: "standard-uncertainty", standardUncertainty: 0 } } as const;
    const atmosphere = { ...unknown.atmosphere, standardUncertainty: 0 };
    const sure = at(1690e3, {
      gauge: exact,
      thermometer: exact,
      atmosphere,
      candidates: named("R-22", "R-32"),
    });
    expect(sure.candidates.map((each) => each.refrigerant.designation)).toEqual(["R-32", "R-22"]);
  });

  it("names everything that is wrong", () => {
    const paths = (change: object) => {
      const outcome = tryIdentifyRefrigerant({ ...unknown, ...change });
      return outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);
    };
    expect(paths({ candidates: [], temperature: -3, gauge: null })).toEqual([
      "candidates",
      "gauge.accuracy.kind",
      "temperature",
    ]);
    expect(paths({ candidates: "R-32" })).toEqual(["candidates"]);
    expect(paths({ candidates: [null, ...named("R-32", "R-32")] })).toEqual([
      "candidates[0]",
      "candidates[2]",
    ]);
    for (const nothing of [undefined, null, 7, "text", []]) {
      expect(tryIdentifyRefrigerant(nothing as never).ok).toBe(false);
    }
  });
});
