import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  checkNonCondensables,
  type NonCondensableReading,
  tryCheckNonCondensables,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, type Outcome } from "../../../src/units/index.js";

const pathsOf = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);

const atmosphere = { pressure: 101325, standardUncertainty: 100, because: "barometer" };
const fine = { accuracy: { kind: "half-width", halfWidth: 4e3 } } as const;
const thermometer = { accuracy: { kind: "half-width", halfWidth: 0.3 } } as const;

const reading: NonCondensableReading = {
  refrigerant: refrigerant("R-32"),
  pressure: 1.926e6 - 101325,
  gauge: fine,
  temperature: celsius(30),
  spread: 0.3,
  thermometer,
  atmosphere,
};

describe("other gas in a system at rest", () => {
  it("is seen above what the instruments leave open, and bounded by Dalton", () => {
    const air = checkNonCondensables({ ...reading, pressure: reading.pressure + 1.5e5 });
    expect(air.state).toBe("excess");
    expect(air.partialPressureBound).toBeGreaterThan(1.5e5);
    expect(checkNonCondensables(reading).state).toBe("none-seen");
    expect(checkNonCondensables({ ...reading, pressure: 1.4e6 }).state).toBe("below-saturation");
    expect(checkNonCondensables({ ...reading, spread: 2, pressure: 2.2e6 }).state).toBe("not-uniform");
  });

  it("is held against the bubble point of a blend, whose model counts", () => {
    const r454b = refrigerant("R-454B");
    const { pressure } = r454b.bubble({ temperature: celsius(30) });
    const result = checkNonCondensables({ ...reading, refrigerant: r454b, pressure: pressure - 101325 });
    expect(Math.abs(result.excess)).toBeLessThan(1e-3);
    expect(result.budget.map(({ input }) => input)).toContain("mixture-model");
  });

  it("is a smaller or no finding with a coarser gauge, never a larger one", () => {
    const air = { ...reading, pressure: reading.pressure + 1.0e5 };
    expect(checkNonCondensables(air).state).toBe("excess");
    expect(
      checkNonCondensables({ ...air, gauge: { accuracy: { kind: "half-width", halfWidth: 1e5 } } }).state,
    ).toBe("none-seen");
  });

  it("names everything that is wrong", () => {
    expect(pathsOf(tryCheckNonCondensables(undefined as never))).toEqual([""]);
    const paths = (change: object) => pathsOf(tryCheckNonCondensables({ ...reading, ...change }));
    expect(paths({ spread: -1, temperature: 0 })).toEqual(["temperature", "spread"]);
    expect(paths({ spread: undefined, refrigerant: null })).toEqual(["refrigerant", "spread"]);
    expect(paths({ gauge: { accuracy: null }, pressure: Number.NaN })).toEqual([
      "gauge.accuracy.kind",
      "pressure",
    ]);
    expect(paths({ thermometer: null, atmosphere: {} })).toEqual([
      "thermometer.accuracy.kind",
      "atmosphere.pressure",
      "atmosphere.standardUncertainty",
    ]);
    expect(paths({ pressure: -101325 })).toEqual(["pressure"]);
    for (const nothing of [null, 7, "text", []]) {
      expect(tryCheckNonCondensables(nothing as never).ok).toBe(false);
    }
    // Above the critical temperature, 78 °C, there is no liquid.
    expect(tryCheckNonCondensables({ ...reading, temperature: celsius(90) })).toMatchObject({
      ok: false,
      error: { code: "out-of-range" },
    });
  });

  it("is given in kPa and in K", () => {
    // 122.493 kPa and 2.39483 K at 2050 kPa: the same equation in another implementation, its printed digits.
    const result = checkNonCondensables({ ...reading, pressure: 2.05e6 - 101325 });
    expect(result).toMatchObject({ state: "excess", verdict: "fail", warnings: [] });
    expect(result.excess).toBeWithin(122.493e3, 5e-6);
    expect(result.excessTemperature).toBeWithin(2.39483, 5e-6);
    expect(result.next).toContain("Do not run the compressor");
  });

  it("counts gauge, air, thermometer and spread, the two last through dp/dT", () => {
    const { budget, standardUncertainty, excessTemperatureUncertainty } = checkNonCondensables(reading);
    // dp/dT by a difference over 0.2 K: good to 1e-5.
    const at = (t: number) => reading.refrigerant.saturation({ temperature: celsius(t) }).pressure;
    const slope = (at(30.1) - at(29.9)) / 0.2;
    const kelvin = Math.hypot(0.3, 0.15) / Math.sqrt(3);
    const pascal = Math.hypot(4e3 / Math.sqrt(3), 100);
    expect(standardUncertainty).toBeWithin(Math.hypot(pascal, slope * kelvin), 1e-4);
    // Seen at the pressure read, 1.5 kPa from saturation: the slope there is the same to 1e-3.
    expect(excessTemperatureUncertainty).toBeWithin(2 * Math.hypot(pascal / slope, kelvin), 1e-3);
    expect(budget.map(({ input }) => input)).toEqual(["gauge", "atmosphere", "thermometer", "spread"]);
  });

  it("is not told by a reading below saturation", () => {
    const result = checkNonCondensables({ ...reading, pressure: 1.4e6 });
    expect(result).toMatchObject({ state: "below-saturation", verdict: "inconclusive" });
    expect(result.partialPressureBound).toBeUndefined();
    expect(result.excessTemperature).toBeLessThan(-5);
  });

  it("hides between dew and bubble pressure of a blend, where a blend with liquid stands", () => {
    const blend = refrigerant("R-407C");
    const at30 = { temperature: celsius(30) };
    const [dew, bubble] = [blend.dew(at30).pressure, blend.bubble(at30).pressure];
    const at = (absolute: number) =>
      checkNonCondensables({ ...reading, refrigerant: blend, pressure: absolute - 101325 });
    expect(at(1.05 * bubble).state).toBe("excess");
    expect(at(0.95 * dew).state).toBe("below-saturation");
    // 1 kg in 5 L: two phases, so this is what the gauge shows with no other gas at all.
    const rest = blend.state({ ...at30, density: 200 });
    expect(rest.phase).toBe("two-phase");
    for (const pressure of [dew, rest.pressure, bubble]) expect(at(pressure).state).toBe("none-seen");
    const between = at(rest.pressure);
    expect(between.warnings.map(({ code }) => code)).toEqual(["hidden-by-glide"]);
    expect(between.partialPressureBound).toBeGreaterThan(rest.pressure - dew);
    expect(between.dewPressure).toBeWithin(dew, 1e-12);
    expect(between.bubblePressure).toBeWithin(bubble, 1e-12);
  });

  it("is judged by no gauge that leaves a tenth open, and warned of low on the scale", () => {
    // Class 4 on 5.1 MPa: ± 204 kPa, U = 236 kPa of 1927 kPa.
    const coarse = {
      accuracy: { kind: "accuracy-class", accuracyClass: 4, scaleMinimum: -1e5, scaleMaximum: 5e6 },
    } as const;
    const blind = checkNonCondensables({ ...reading, gauge: coarse });
    expect(blind).toMatchObject({ state: "none-seen", verdict: "inconclusive" });
    expect(blind.warnings.map(({ code }) => code)).toEqual(["blind"]);
    const wide = { accuracy: { kind: "percent-of-full-scale", percent: 0.1, fullScale: 8e6 } } as const;
    const low = checkNonCondensables({ ...reading, gauge: wide });
    expect(low.warnings.map(({ code }) => code)).toEqual(["low-on-scale"]);
    expect(low.verdict).toBe("pass");
  });

  it("has no kelvin above the critical pressure, 5.78 MPa", () => {
    const result = checkNonCondensables({ ...reading, pressure: 6e6 });
    expect(result.state).toBe("excess");
    expect(result.excessTemperature).toBeUndefined();
    expect(result.excessTemperatureUncertainty).toBeUndefined();
  });

  it("of any amount above twice the uncertainty is found, and lies below the bound", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 5e5, noNaN: true }),
        fc.double({ min: -0.99, max: 0.99, noNaN: true }),
        (t, inert, error) => {
          const temperature = celsius(t);
          const { pressure } = reading.refrigerant.saturation({ temperature });
          const at = (absolute: number) =>
            checkNonCondensables({ ...reading, temperature, pressure: absolute - 101325 });
          // A gauge of fixed half-width: U is the same at every reading.
          const U = at(pressure).expandedUncertainty;
          const found = at(pressure + inert + error * U);
          if (inert > 2 * U) expect(found.state).toBe("excess");
          if (found.state === "excess") expect(inert).toBeGreaterThan(0);
          expect(found.state).not.toBe("below-saturation");
          expect(found.partialPressureBound! + 1e-6 * pressure).toBeGreaterThanOrEqual(inert);
        },
      ),
      { numRuns: 200 },
    );
  });
});
