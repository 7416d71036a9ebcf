import { describe, expect, it, test } from "vitest";
import type { Fluid, ResidualPart } from "../../src/catalogue/index.js";
import {
  compressibility,
  Equation,
  idealHeatCapacity,
  isobaricHeatCapacity,
  isochoricHeatCapacity,
  jouleThomson,
  logFugacityCoefficient,
  noDerivatives,
  noEvaluation,
  pressureSlope,
  soundSpeedSquared,
  thermalPressure,
} from "../../src/equation/index.js";
import { r32 } from "../../src/fluids/r-32.js";
import { r744 } from "../../src/fluids/r-744.js";
import { fluids } from "../../src/state/index.js";
import { differentiate, residualPrecisely } from "../support/decimal-terms.js";
import { trackWorst } from "../support/worst.js";
import {
  equationWith,
  evaluateAt,
  largestDeviation,
  residualAt,
  singleTerms,
  sizeOf,
  sumOf,
} from "./term-sums.js";

const worst = trackWorst("whole equations");
const everyFluid = fluids().map((fluid) => [`${fluid.designation} ${fluid.equation}`, fluid] as const);

/** Gas, dense fluid beside the critical point, and cold liquid: reduced temperature and density. */
const points: readonly (readonly [string, tau: number, delta: number])[] = [
  ["gas", 0.83, 0.07],
  ["near the critical point", 1.03, 1.15],
  ["liquid", 1.6, 2.8],
];

describe("all derivatives of an equation", () => {
  /*
   * Reference: every term in 60-digit arithmetic, added up. Scale: the sum of the sizes of the terms, because they
   * cancel. 1e-13 is the rounding of the largest exponents, some hundred, over the few hundred operations.
   */
  test.each(everyFluid)("%s", { timeout: 60_000 }, (name, fluid) => {
    const equation = new Equation(fluid);
    for (const [where, tau, delta] of points) {
      const terms = singleTerms(fluid).map((part) =>
        differentiate((t, d) => residualPrecisely(part, t, d), tau, delta),
      );
      const deviation = largestDeviation(
        evaluateAt(equation, tau, delta),
        sumOf(terms),
        sizeOf(terms, tau, delta),
      );
      worst(where, deviation, 2e-14, name);
    }
  });
});

describe("towards zero density", () => {
  test.each(everyFluid)("%s is an ideal gas, and still shows its second virial coefficient", (_, fluid) => {
    const equation = new Equation(fluid);
    const at = noEvaluation();
    // A term of δ^1.5, in one equation for R-152a, leaves √δ beside B in φ_δ.
    const root = fluid.residual.power.some(([, , d]) => d === 1.5) ? 1 : 0;
    // Equations converted from the older pressure-explicit form have terms of δ⁰ that cancel one another; seen: 1e-9.
    const noise = fluid.residual.power.some(([, , d]) => d === 0) ? 2e-9 : 0;
    for (const T of [
      fluid.limits.minimumTemperature,
      fluid.critical.temperature,
      fluid.limits.maximumTemperature,
    ]) {
      equation.evaluate(T, equation.rhor * 1e-100, at);
      const B = at.residual.phi_d;
      const jouleThomsonThin = jouleThomson(at) / at.delta;
      for (let exponent = 10; exponent <= 290; exponent += 5) {
        const delta = 10 ** -exponent;
        equation.evaluate(T, equation.rhor * delta, at);
        // What follows B: the third virial coefficient, up to a million B in the coldest vapour.
        const next = 1e6 * delta + root * Math.sqrt(delta) + 1e-13;
        expect(Math.abs(at.residual.phi_d / B - 1), `B at ${T} K, δ ${delta}`).toBeLessThan(next);
        expect(Math.abs(at.residual.phi - B * delta)).toBeLessThan(Math.abs(B) * delta * next + noise);
        // What is left of each beside 1 is some Bδ.
        const rest = 3 * Math.abs(B) * delta + noise + 1e-15;
        expect(Math.abs(compressibility(at) - 1)).toBeLessThan(rest);
        expect(Math.abs(pressureSlope(at) - 1)).toBeLessThan(rest);
        expect(Math.abs(logFugacityCoefficient(at, compressibility(at)))).toBeLessThan(rest);
        if (exponent >= 20) {
          const cp0 = idealHeatCapacity(at);
          expect(thermalPressure(at)).toBeWithin(1, 1e-7);
          expect(isochoricHeatCapacity(at)).toBeWithin(cp0 - 1, 1e-5);
          expect(isobaricHeatCapacity(at)).toBeWithin(cp0, 1e-5);
          expect(soundSpeedSquared(at)).toBeWithin(cp0 / (cp0 - 1), 1e-5);
          expect(jouleThomson(at) / delta).toBeWithin(jouleThomsonThin, 1e-5);
        }
      }
    }
  });
});

describe("the order of terms", () => {
  /** Shuffles rows the same way every time; the generator is that of `scripts/bench`. */
  function shuffled<Row>(rows: readonly Row[], seed: number): Row[] {
    const result = [...rows];
    let state = seed;
    for (let k = result.length - 1; k > 0; k--) {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      const other = state % (k + 1);
      [result[k], result[other]] = [result[other]!, result[k]!];
    }
    return result;
  }

  function shuffledPart({ power, ...others }: ResidualPart, seed: number): ResidualPart {
    const tables = Object.entries(others as Record<string, readonly unknown[]>).map(
      ([name, rows]) => [name, shuffled(rows, seed)] as const,
    );
    return { power: shuffled(power, seed), ...Object.fromEntries(tables) };
  }

  test.each(everyFluid)("of %s changes nothing but rounding", (name, fluid) => {
    const terms = singleTerms(fluid);
    for (const [, tau, delta] of points) {
      const expected = residualAt(fluid.residual, tau, delta);
      const scale = sizeOf(
        terms.map((part) => residualAt(part, tau, delta)),
        tau,
        delta,
      );
      for (let seed = 1; seed <= 5; seed++) {
        const found = residualAt(shuffledPart(fluid.residual, seed), tau, delta);
        // A few dozen additions of numbers no larger than the sum of their sizes.
        worst("order of terms", largestDeviation(found, expected, scale), 2e-15, name);
      }
    }
  });

  it("is the sum of the terms", () => {
    for (const fluid of fluids()) {
      const [tau, delta] = [1.03, 1.15];
      const terms = singleTerms(fluid).map((part) => residualAt(part, tau, delta));
      const whole = residualAt(fluid.residual, tau, delta);
      worst(
        "sum of terms",
        largestDeviation(whole, sumOf(terms), sizeOf(terms, tau, delta)),
        1e-14,
        fluid.designation,
      );
    }
  });
});

describe("what an equation remembers", () => {
  it("does not show: the same temperature later gives the same, bit for bit", () => {
    for (const fluid of fluids()) {
      const equation = new Equation(fluid);
      const first = evaluateAt(equation, 1.1, 0.5);
      const other = evaluateAt(equation, 0.9, 0.5);
      expect(other).not.toEqual(first);
      expect(evaluateAt(equation, 1.1, 0.5)).toEqual(first);
      expect(evaluateAt(equation, 1.1, 2.5)).not.toEqual(first);
      expect(evaluateAt(equation, 1.1, 0.5)).toEqual(first);
      expect(evaluateAt(new Equation(fluid), 1.1, 0.5)).toEqual(first);
    }
  });

  it("is its own: equations that take turns do not disturb one another", () => {
    const alone = (fluid: Fluid): ReturnType<typeof evaluateAt>[] => {
      const equation = new Equation(fluid);
      return [0.9, 1.1, 1.1, 1.3].map((tau, k) => evaluateAt(equation, tau, 0.4 + k));
    };
    const [one, two] = [new Equation(r32), new Equation(r744)];
    const turns: [ReturnType<typeof evaluateAt>[], ReturnType<typeof evaluateAt>[]] = [[], []];
    for (const [k, tau] of [0.9, 1.1, 1.1, 1.3].entries()) {
      turns[0].push(evaluateAt(one, tau, 0.4 + k));
      turns[1].push(evaluateAt(two, tau, 0.4 + k));
    }
    expect(turns).toEqual([alone(r32), alone(r744)]);
  });

  it("is not the place the caller hands in", () => {
    const equation = equationWith(r32.residual);
    const out = noDerivatives();
    equation.evaluateResidual(1.1, 0.5, out);
    const kept = { ...out };
    for (const name of Object.keys(out) as (keyof typeof out)[]) out[name] = Number.NaN;
    equation.evaluateResidual(1.1, 0.5, out);
    expect(out).toEqual(kept);
  });
});
