import { afterAll, describe, expect, test } from "vitest";
import type { Fluid } from "../../src/catalogue/index.js";
import { compressibility, noEvaluation, pressureSlope } from "../../src/equation/index.js";
import {
  criticalMargin,
  densityAt,
  type Model,
  modelFor,
  saturationAtTemperature,
} from "../../src/equilibrium/index.js";
import { fluids } from "../../src/state/index.js";

/* No outside source: what "the right branch" means, looked at everywhere. */
const everyFluid = fluids().map((fluid) => [`${fluid.designation} ${fluid.equation}`, fluid] as const);

/** Equations with a second loop inside the dome, which a careless search falls into. */
const withSecondLoop = ["R-1234yf", "R-1234ze(E)", "R-1233zd(E)", "R-161", "R-1234ze(Z)", "R-601a"];

/** Distances from saturation, relative in pressure: from just beside it to far away. */
const beside = [1e-10, 1e-8, 1e-6, 1e-4, 1e-3, 1e-2, 0.05];

let states = 0;
afterAll(() => console.log(`densities looked at: ${states}`));

/** Above its melting curve, which no equation here carries, the liquid equation of cold nitrogen folds. */
function highestPressure(fluid: Fluid, critical: number): number {
  const { designation, limits } = fluid;
  return designation === "R-728" ? limits.maximumPressure / 10 : Math.max(limits.maximumPressure, critical);
}

function upwards(from: number, to: number, count: number): number[] {
  return Array.from({ length: count + 1 }, (_, k) => from * (to / from) ** (k / count));
}

const at = noEvaluation();

/** Walks an isotherm in rising pressure; every density must be stable, belong to its pressure, and exceed the last. */
function walk(
  model: Model,
  T: number,
  pressures: readonly number[],
  inside: (density: number) => boolean,
  where: string,
): void {
  const { equation } = model;
  const RT = equation.R * T;
  let last = 0;
  let lastPressure = 0;
  for (const p of pressures) {
    const density = densityAt(model, T, p);
    states++;
    equation.evaluate(T, density, at);
    const slope = pressureSlope(at);
    // A cold liquid gives way by less than its own last digits over a small step of pressure.
    const rise = (p - lastPressure) / (RT * slope * density);
    const isAbove = rise > 1e-10 ? density > last : density >= last * (1 - 1e-11);
    // The pressure of a liquid is a small difference of terms several thousand times as large, in the equation of R-22.
    const miss = Math.abs(density * RT * compressibility(at) - p) / (p + density * RT);
    // Tested without `expect`, which costs more than the density.
    if (!(inside(density) && isAbove && slope > 0 && miss < 1e-11)) {
      expect({ density, isInside: inside(density), last, slope, miss }, `${where} ${p} Pa`).toBe(
        "inside its branch, above the last, rising and of its pressure",
      );
    }
    last = density;
    lastPressure = p;
  }
}

describe("no density lies on the wrong branch", () => {
  test.each(everyFluid)("%s", { timeout: 60_000 }, (name, fluid) => {
    const model = modelFor(fluid);
    const { critical } = model;
    const { minimumTemperature, maximumTemperature } = fluid.limits;
    const highest = highestPressure(fluid, critical.pressure);
    const count = withSecondLoop.includes(fluid.designation) ? 400 : 120;
    const nearest = Math.sqrt((1.0001 * criticalMargin) / critical.temperature);
    const farthest = Math.sqrt(1 - minimumTemperature / critical.temperature);
    const looked = states;
    for (let k = 0; k <= count; k++) {
      const s = nearest + ((farthest - nearest) * k) / count;
      const T = Math.max(minimumTemperature, critical.temperature * (1 - s * s));
      const { pressure, liquidDensity, vapourDensity } = saturationAtTemperature(model, T);
      const below = [...upwards(1e-6, 0.9, 25), ...[...beside].reverse().map((x) => 1 - x)].map(
        (x) => x * pressure,
      );
      // Beside saturation a density may lie inside by the rounding with which saturation itself is known.
      walk(model, T, below, (rho) => rho <= vapourDensity * (1 + 1e-9), `vapour of ${name} at ${T} K,`);
      if (pressure * 1.06 < highest) {
        const above = [...beside.map((x) => (1 + x) * pressure), ...upwards(pressure * 1.06, highest, 30)];
        walk(model, T, above, (rho) => rho >= liquidDensity * (1 - 1e-9), `liquid of ${name} at ${T} K,`);
      }
    }
    for (let k = 0; k <= count / 2; k++) {
      const T =
        critical.temperature * 1.0001 +
        (maximumTemperature - critical.temperature * 1.0001) * (k / (count / 2)) ** 2;
      walk(model, T, upwards(1e-3, highest, 60), () => true, `${name} at ${T} K,`);
    }
    expect(states - looked).toBeGreaterThan(8000);
  });
});
