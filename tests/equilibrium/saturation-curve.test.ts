import { describe, expect, it, test } from "vitest";
import type { Fluid } from "../../src/catalogue/index.js";
import { noDerivatives } from "../../src/equation/index.js";
import { criticalMargin, modelFor, saturationAtTemperature } from "../../src/equilibrium/index.js";
import { guessCoexistence, guessPressure, guessTemperature } from "../../src/equilibrium/saturation-curve.js";
import { fluids } from "../../src/state/index.js";
import { trackWorst } from "../support/worst.js";

const worst = trackWorst("series of the saturation curve");
const everyFluid = fluids().map((fluid) => [`${fluid.designation} ${fluid.equation}`, fluid] as const);

/** Temperatures from the cold end to 1 mK below the critical point, evenly in √(1 − T/Tc). */
function temperatures(fluid: Fluid, count: number): number[] {
  const Tc = modelFor(fluid).critical.temperature;
  const { minimumTemperature } = fluid.limits;
  const nearest = Math.sqrt((1.0001 * criticalMargin) / Tc);
  const farthest = Math.sqrt(1 - minimumTemperature / Tc);
  return Array.from({ length: count + 1 }, (_, k) => {
    const s = nearest + ((farthest - nearest) * k) / count;
    return Math.max(minimumTemperature, Tc * (1 - s * s));
  });
}

describe("the series of the saturation curve", () => {
  // What src/equilibrium/density.ts and flash-temperature-density.ts take for granted, with the factor they keep.
  test.each(everyFluid)("start every search for %s closer than the solvers assume", (name, fluid) => {
    const model = modelFor(fluid);
    const { equation, curve } = model;
    for (const T of temperatures(fluid, 2000)) {
      const point = saturationAtTemperature(model, T);
      const pair = { liquid: 0, vapour: 0, pressure: 0 };
      guessCoexistence(curve, T, pair);
      const where = `${name} ${T} K`;
      const off = (guess: number, value: number): number => Math.abs(guess / value - 1);
      worst("pressure (pressureDoubt 1e-5)", off(guessPressure(curve, T), point.pressure), 1e-8, where);
      worst("liquid (edgeDoubt 1e-3)", off(pair.liquid * equation.rhor, point.liquidDensity), 2e-4, where);
      worst("vapour (edgeDoubt 1e-3)", off(pair.vapour * equation.rhor, point.vapourDensity), 2e-4, where);
      worst("temperature", off(guessTemperature(curve, point.pressure), T), 1e-7, where);
    }
  });

  it("leave room before the spinodals: no search that begins a thousandth inside the dome meets a falling isotherm", () => {
    const out = noDerivatives();
    for (const [name, fluid] of everyFluid) {
      const model = modelFor(fluid);
      const { equation } = model;
      for (const T of temperatures(fluid, 200)) {
        const { liquidDensity, vapourDensity } = saturationAtTemperature(model, T);
        const slope = (rho: number): number => {
          const delta = rho / equation.rhor;
          equation.evaluateResidual(equation.Tr / T, delta, out);
          return 1 + delta * (2 * out.phi_d + delta * out.phi_dd);
        };
        // Twice edgeDoubt, in steps, on both sides.
        for (let k = 0; k <= 10; k++) {
          const inside = (2e-3 * k) / 10;
          expect(slope(liquidDensity * (1 - inside)), `liquid of ${name} at ${T} K`).toBeGreaterThan(0);
          expect(slope(vapourDensity * (1 + inside)), `vapour of ${name} at ${T} K`).toBeGreaterThan(0);
        }
      }
    }
  });

  it("begin and end where the curve does", () => {
    for (const [, fluid] of everyFluid) {
      const { curve, critical, coldCurve } = modelFor(fluid);
      expect(curve.minimumTemperature).toBe(fluid.limits.minimumTemperature);
      expect(curve.critical).toBe(critical);
      expect(coldCurve.minimumTemperature).toBeLessThan(curve.minimumTemperature);
      expect(guessTemperature(curve, critical.pressure)).toBeWithin(critical.temperature, 1e-6);
    }
  });
});
