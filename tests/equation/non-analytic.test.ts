import { describe, expect, it } from "vitest";
import {
  Equation,
  isobaricHeatCapacity,
  isochoricHeatCapacity,
  noEvaluation,
  pressureSlope,
  soundSpeedSquared,
} from "../../src/equation/index.js";
import { r744 } from "../../src/fluids/r-744.js";
import { differentiate, residualPrecisely } from "../support/decimal-terms.js";
import { evaluateAt, names, residualAt } from "./term-sums.js";

/** Distances from 1: the nearest are the neighbours of 1 among the doubles. */
const distances = [0, 2 ** -53, 2 ** -52, 1e-15, 1e-12, 1e-10, 1e-9, 3e-9, 1e-7, 1e-5, 1e-3];
const sides = [...new Set(distances.flatMap((distance) => [1 - distance, 1 + distance]))];

const rows = r744.residual.nonAnalytic ?? [];

describe("the non-analytic terms of R-744", () => {
  it("are finite with all their derivatives at the critical point and around it", () => {
    expect(rows).toHaveLength(3);
    const equation = new Equation(r744);
    let points = 0;
    for (const tau of sides) {
      for (const delta of sides) {
        points++;
        const found = evaluateAt(equation, tau, delta);
        for (const name of names)
          expect(found[name], `${name} at τ ${tau} δ ${delta}`).toSatisfy(Number.isFinite);
      }
    }
    expect(points).toBe(sides.length ** 2);
  });

  it("vanish at the critical point, with their first derivatives and the second in δ", () => {
    for (const row of rows) {
      const found = residualAt({ power: [], nonAnalytic: [row] }, 1, 1);
      for (const name of names) expect(found[name]).toBe(0);
      // Coming nearer they go to zero, so the value at the point is the limit. Δ^b ∝ |1 − τ|^(2b), 2b = 1.75 or more.
      for (const [tau, delta] of [
        [1 + 1e-9, 1],
        [1 - 1e-9, 1],
        [1, 1 + 1e-9],
        [1, 1 - 1e-9],
        [1 + 1e-9, 1 - 1e-9],
      ] as const) {
        const near = residualAt({ power: [], nonAnalytic: [row] }, tau, delta);
        for (const name of ["phi", "phi_d", "phi_dd"] as const)
          expect(Math.abs(near[name])).toBeLessThan(1e-14);
        // d/dτ of |1 − τ|^1.75 falls as |1 − τ|^0.75 = 1.8e-7.
        for (const name of ["phi_t", "phi_dt"] as const) expect(Math.abs(near[name])).toBeLessThan(1e-6);
      }
    }
  });

  it("have a second derivative in τ that diverges as |1 − τ|^(2b − 2)", () => {
    for (const row of rows) {
      const [, , b] = row;
      const at = (y: number): number => residualAt({ power: [], nonAnalytic: [row] }, 1 + y, 1).phi_tt;
      for (const y of [1e-6, -1e-6]) {
        const slope = Math.log(at(y / 100) / at(y)) / Math.log(1 / 100);
        expect(slope).toBeCloseTo(2 * b - 2, 5);
      }
    }
  });

  it("have the derivatives of their printed form close to the critical point", () => {
    // The step of the 60-digit differences, 1e-12, is a millionth of the distance: they are good to its square.
    for (const x of [1e-6, -1e-6, 1e-4, -1e-4]) {
      for (const y of [1e-6, -1e-6, 1e-4, -1e-4]) {
        for (const row of rows) {
          const part = { power: [], nonAnalytic: [row] };
          const found = residualAt(part, 1 + y, 1 + x);
          const reference = differentiate((t, d) => residualPrecisely(part, t, d), 1 + y, 1 + x);
          for (const name of names) {
            // 1 ± 1e-6 as a double has ten digits of the distance from 1, and third derivatives lose a few of them.
            const deviation = Math.abs(found[name] - reference[name]) / Math.abs(reference[name]);
            expect(deviation, `${name} at 1 + ${x}, 1 + ${y}`).toBeLessThan(1e-9);
          }
        }
      }
    }
  });

  it("give properties of both signs of T − Tc that meet, and a heat capacity that grows towards the point", () => {
    const equation = new Equation(r744);
    const at = noEvaluation();
    let last = 0;
    for (const distance of [1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9]) {
      equation.evaluate(r744.critical.temperature * (1 + distance), r744.critical.density, at);
      const cv = isochoricHeatCapacity(at);
      expect(cv).toBeGreaterThan(last);
      last = cv;
      for (const value of [isobaricHeatCapacity(at), pressureSlope(at), soundSpeedSquared(at)]) {
        expect(value).toSatisfy(Number.isFinite);
      }
    }
  });
});

describe("the point τ = δ = 1", () => {
  it("adds nothing but is no trap for terms beside the non-analytic ones", () => {
    const { nonAnalytic: _, ...others } = r744.residual;
    const whole = residualAt(r744.residual, 1, 1);
    expect(whole).toEqual(residualAt(others, 1, 1));
  });
});
