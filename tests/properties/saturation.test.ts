import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Fluid } from "../../src/catalogue/index.js";
import { compressibility, noEvaluation, pressureSlope } from "../../src/equation/index.js";
import {
  modelFor,
  saturationAtPressure,
  saturationAtTemperature,
  saturationSlope,
} from "../../src/equilibrium/index.js";
import { anyFluid, refrigerantOf, saturationTemperatureAt, share } from "../support/states.js";
import { trackWorst } from "../support/worst.js";

/* No outside source: the conditions that define phase equilibrium, and the slope that Clausius and Clapeyron give. */
const worst = trackWorst("saturation");

/** From the cold end to 1 mK below the critical point, as promised. */
const margin = 1.001e-3;

/**
 * What rounding can do to p/(ρRT): a liquid's pressure is a small difference of large terms, and each of them brings
 * a few units in the last place. For most equations the sum of the terms is some ten, for a few several thousand.
 */
function pressureRounding({ residual }: Fluid, tau: number, delta: number): number {
  let sum = 1;
  for (const [n, t, d, l] of residual.power) {
    const lead = l === 0 ? 0 : delta ** l;
    sum += Math.abs(n) * tau ** t * delta ** d * Math.exp(-lead) * (d + l * lead);
  }
  return 8 * 2 ** -52 * sum;
}

describe("saturation", () => {
  it("has equal pressure and Gibbs energy in both phases, from the cold end to 1 mK below the critical point", () => {
    fc.assert(
      fc.property(anyFluid(), share(), (fluid, u) => {
        const refrigerant = refrigerantOf(fluid);
        const model = modelFor(fluid);
        const T = saturationTemperatureAt(refrigerant, u, margin);
        const point = saturationAtTemperature(model, T);
        const { equation } = model;
        const where = `${fluid.designation} ${fluid.equation} ${T} K`;
        const [liquid, vapour] = [point.liquidDensity, point.vapourDensity].map((rho) => {
          const at = noEvaluation();
          equation.evaluate(T, rho, at);
          expect(pressureSlope(at)).toBeGreaterThan(0);
          return {
            pressure: rho * equation.R * T * compressibility(at),
            gibbs: compressibility(at) + at.residual.phi + Math.log(at.delta),
          };
        }) as [{ pressure: number; gibbs: number }, { pressure: number; gibbs: number }];
        const rounding =
          pressureRounding(fluid, equation.Tr / T, point.liquidDensity / equation.rhor) *
          point.liquidDensity *
          equation.R *
          T;
        const difference = Math.max(0, Math.abs(liquid.pressure - vapour.pressure) - rounding);
        worst("pressure, beyond a liquid's rounding", difference / point.pressure, 1e-10, where);
        worst("Gibbs energy over RT", Math.abs(liquid.gibbs - vapour.gibbs), 1e-10, where);
        expect(point.liquidDensity).toBeGreaterThan(model.critical.density);
        expect(point.vapourDensity).toBeLessThan(model.critical.density);
      }),
    );
  });

  it("is found again by its pressure", () => {
    fc.assert(
      fc.property(anyFluid(), share(), (fluid, u) => {
        const model = modelFor(fluid);
        const T = saturationTemperatureAt(refrigerantOf(fluid), u, margin);
        const { pressure } = saturationAtTemperature(model, T);
        const found = saturationAtPressure(model, pressure).temperature;
        worst("T(p(T))", Math.abs(found / T - 1), 1e-10, `${fluid.designation} ${fluid.equation} ${T} K`);
      }),
    );
  });

  it("rises as Clausius and Clapeyron say", () => {
    fc.assert(
      fc.property(anyFluid(), share(), (fluid, u) => {
        const refrigerant = refrigerantOf(fluid);
        const model = modelFor(fluid);
        // Half a per cent of room for the difference quotient, whose own error is of fourth order in its step.
        const T = saturationTemperatureAt(refrigerant, u, 5e-3 * refrigerant.critical.temperature);
        const h = 2e-4 * T;
        fc.pre(T - 2 * h > fluid.limits.minimumTemperature);
        const lnp = (at: number): number => Math.log(saturationAtTemperature(model, at).pressure);
        const quotient = (8 * (lnp(T + h) - lnp(T - h)) - lnp(T + 2 * h) + lnp(T - 2 * h)) / (12 * h);
        const point = saturationAtTemperature(model, T);
        const slope = saturationSlope(model, point) / point.pressure;
        worst(
          "Clausius–Clapeyron",
          Math.abs(quotient / slope - 1),
          1e-8,
          `${fluid.designation} ${fluid.equation} ${T} K`,
        );
      }),
    );
  });
});
