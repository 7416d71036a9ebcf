import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  airAt20Celsius,
  conductancesInSeries,
  effectivePumpingSpeed,
  type HoseConductanceQuestion,
  hoseConductance,
  tryConductancesInSeries,
  tryEffectivePumpingSpeed,
  tryHoseConductance,
} from "../../../src/field/index.js";
import { InputError, inLitrePerSecond, micron, millimetre } from "../../../src/units/index.js";
import { trackWorst } from "../../support/worst.js";
import { refusedPaths } from "./refused-paths.js";

const air = airAt20Celsius();
const question: HoseConductanceQuestion = {
  element: { innerDiameter: millimetre(4.8), length: 1.5 },
  gas: air,
  meanPressure: micron(500),
};
const worst = trackWorst("hose conductance");

describe("air at 20 °C", () => {
  it("has the viscosity of the dilute gas by Lemmon and Jacobsen, to the three digits kept", () => {
    // Int. J. Thermophys. 25 (2004) 21, equations (2) and (3) (from memory): 103.3 K, 0.360 nm, 28.9586 g/mol. What the
    // density of an atmosphere adds is 0.02 µPa s.
    const b = [0.431, -0.4623, 0.08406, 0.005341, -0.00331];
    const T = Math.log(air.temperature / 103.3);
    const omega = Math.exp(b.reduce((sum, each, power) => sum + each * T ** power, 0));
    const microPascalSecond = (0.0266958 * Math.sqrt(28.9586 * air.temperature)) / (0.36 ** 2 * omega);
    expect(Math.abs(air.viscosity * 1e6 - microPascalSecond)).toBeLessThan(0.05);
  });

  it("says where its numbers are from", () => {
    expect(air.source).toContain("Lemmon");
    expect(air.status).toBe("recalled");
    // Mean of the gases of dry air, CIPM-2007: 28.96546 g/mol.
    expect(air.molarMass).toBe(0.02896546);
  });
});

describe("conductance of a hose", () => {
  it("agrees with the forms of vacuum textbooks for air at 20 °C, in L/s, cm and mbar", () => {
    // 135 d⁴ p̄/L and 12.1 d³/L, three digits (from memory).
    const { viscous, molecular } = hoseConductance({
      element: { innerDiameter: 0.01, length: 1 },
      gas: air,
      meanPressure: 100,
    });
    expect(inLitrePerSecond(viscous)).toBeWithin(135 / 100, 0.5 / 135);
    expect(inLitrePerSecond(molecular)).toBeWithin(12.1 / 100, 0.05 / 12.1);
  });

  it("has the mean free path that the same books print, 6.6 mm at 1 Pa", () => {
    expect(hoseConductance({ ...question, meanPressure: 1 }).meanFreePath * 1000).toRoundTo("6.6");
  });

  it("is never below Knudsen's own formula, and above it by less than a fifth of the molecular part", () => {
    // Knudsen, M., Ann. Phys. 333 (1909) 75 (from memory): C_m counts (1 + x)/(1 + 1.24 x), x = √(M/(R T)) d p̄/η.
    for (let exponent = -4; exponent < 5; exponent += 0.05) {
      const meanPressure = 10 ** exponent;
      const { conductance, viscous, molecular } = hoseConductance({ ...question, meanPressure });
      const x =
        (Math.sqrt(air.molarMass / (8.314462618 * air.temperature)) *
          question.element.innerDiameter *
          meanPressure) /
        air.viscosity;
      const knudsen = viscous + (molecular * (1 + x)) / (1 + 1.24 * x);
      expect(conductance).toBeGreaterThanOrEqual(knudsen);
      worst(
        "above Knudsen, of the molecular part",
        (conductance - knudsen) / molecular,
        0.24 / 1.24,
        `${meanPressure} Pa`,
      );
      // Whatever gas and hose, both depend on x alone: the most there is lies at x = 3.705, 15.0135 %.
      worst("above Knudsen, of the whole", conductance / knudsen - 1, 0.150136, `${meanPressure} Pa`);
    }
  });

  it.each([
    [1e5, "viscous"],
    [micron(500), "transition"],
    [1, "molecular"],
  ])("at %f Pa flow is %s", (meanPressure, regime) => {
    const result = hoseConductance({ ...question, meanPressure });
    expect(result.regime).toBe(regime);
    expect(result.knudsenNumber).toBeWithin(result.meanFreePath / 0.0048, 1e-12);
    expect(result.because).toContain(regime);
  });

  it("grows with the fourth and the third power of the bore, and falls with the length", () => {
    const wide = hoseConductance({ ...question, element: { innerDiameter: millimetre(9.6), length: 3 } });
    const thin = hoseConductance(question);
    expect(wide.viscous).toBeWithin(8 * thin.viscous, 1e-12);
    expect(wide.molecular).toBeWithin(4 * thin.molecular, 1e-12);
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    ["null", null, [""]],
    [
      "a list",
      [],
      [
        "element.innerDiameter",
        "element.length",
        "gas.viscosity",
        "gas.molarMass",
        "gas.temperature",
        "meanPressure",
      ],
    ],
    [
      "numbers that are none",
      {
        element: { innerDiameter: 0, length: -1 },
        gas: { viscosity: Number.NaN, molarMass: "29", temperature: Number.POSITIVE_INFINITY },
        meanPressure: 0,
      },
      [
        "element.innerDiameter",
        "element.length",
        "gas.viscosity",
        "gas.molarMass",
        "gas.temperature",
        "meanPressure",
      ],
    ],
  ])("refuses %s", (_what, input, paths) => {
    expect(refusedPaths(tryHoseConductance(input as HoseConductanceQuestion))).toEqual(paths);
  });
});

describe("in series", () => {
  it("is half for two equal pieces, and below the smallest always", () => {
    expect(conductancesInSeries([2, 2])).toBe(1);
    expect(conductancesInSeries([3])).toBe(3);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1e-9, max: 1e3, noNaN: true }), { minLength: 1, maxLength: 6 }),
        (list) => {
          const together = conductancesInSeries(list);
          expect(together).toBeLessThanOrEqual(Math.min(...list) * (1 + 1e-12));
          expect(together).toBeGreaterThanOrEqual((Math.min(...list) / list.length) * (1 - 1e-12));
        },
      ),
      { numRuns: 200 },
    );
  });

  it("a pump counts as one of them", () => {
    expect(effectivePumpingSpeed(2, 3)).toBeWithin(1.2, 1e-12);
    expect(tryEffectivePumpingSpeed(2, 3)).toMatchObject({ ok: true });
  });

  it("refuses nonsense", () => {
    expect(() => conductancesInSeries([])).toThrow(InputError);
    expect(refusedPaths(tryConductancesInSeries(null as unknown as number[]))).toEqual(["conductances"]);
    expect(refusedPaths(tryConductancesInSeries([1, 0, Number.NaN]))).toEqual([
      "conductances[1]",
      "conductances[2]",
    ]);
    expect(refusedPaths(tryEffectivePumpingSpeed(0, -1))).toEqual(["pumpingSpeed", "conductance"]);
  });
});
