import fc from "fast-check";
import { describe, it } from "vitest";
import type { Fluid, ResidualPart } from "../../src/catalogue/index.js";
import { Equation, noDerivatives } from "../../src/equation/index.js";
import {
  differentiate,
  differentiateInTau,
  idealPrecisely,
  residualPrecisely,
} from "../support/decimal-terms.js";
import { anyFluid, share } from "../support/states.js";
import { trackWorst } from "../support/worst.js";

/*
 * Source of the reference: the printed term forms, summed and differenced in 60-digit arithmetic by a general-purpose
 * library (decimal.js). Each derivative is compared on the scale of the largest number that enters it. The limit
 * is the rounding of doubles, 1.1e-16, times the largest exponent that an exponential can have before it underflows,
 * about 700, times the few operations on it.
 */
const limit = 3e-13;
const names = ["phi", "phi_d", "phi_dd", "phi_ddd", "phi_t", "phi_tt", "phi_dt"] as const;
const worst = trackWorst("analytic derivatives against 60-digit differences");

/** How fast the factors of a term can change: every derivative multiplies by no more than about this. */
function steepness(part: ResidualPart, tau: number, delta: number): { byTau: number; byDelta: number } {
  let byTau = 1;
  let byDelta = 1;
  for (const [, t, d, l] of part.power) {
    byTau = Math.max(byTau, Math.abs(t) / tau);
    byDelta = Math.max(byDelta, d / delta, l === 0 ? 0 : l * delta ** (l - 1));
  }
  for (const [, t, d, l, m] of part.doubleExp ?? []) {
    byTau = Math.max(byTau, Math.abs(t) / tau, m * tau ** (m - 1));
    byDelta = Math.max(byDelta, d / delta, l * delta ** (l - 1));
  }
  for (const [, t, d, eta, beta, gamma, epsilon] of part.gaussian ?? []) {
    byTau = Math.max(byTau, Math.abs(t) / tau, 2 * beta * Math.abs(tau - gamma), Math.sqrt(2 * beta));
    byDelta = Math.max(byDelta, d / delta, 2 * eta * Math.abs(delta - epsilon), Math.sqrt(2 * eta));
  }
  for (const [, t, d, eta, , , epsilon] of part.reciprocalBell ?? []) {
    byTau = Math.max(byTau, Math.abs(t) / tau, 10);
    byDelta = Math.max(byDelta, d / delta, 2 * eta * Math.abs(delta - epsilon), Math.sqrt(2 * eta));
  }
  for (const [, , , , C, D] of part.nonAnalytic ?? []) {
    byTau = Math.max(byTau, 1 / Math.abs(1 - tau), 2 * D * Math.abs(tau - 1), Math.sqrt(2 * D));
    byDelta = Math.max(byDelta, 1 / Math.abs(1 - delta), 2 * C * Math.abs(delta - 1), 1 / Math.abs(1 - tau));
  }
  return { byTau, byDelta };
}

/** All terms of a fluid, each as an equation of its own. */
function singleTerms(fluid: Fluid): { readonly kind: string; readonly part: ResidualPart }[] {
  const { power, doubleExp = [], gaussian = [], reciprocalBell = [], nonAnalytic = [] } = fluid.residual;
  const none = { power: [] };
  return [
    ...power.map((row) => ({ kind: "power", part: { power: [row] } })),
    ...doubleExp.map((row) => ({ kind: "doubleExp", part: { ...none, doubleExp: [row] } })),
    ...gaussian.map((row) => ({ kind: "gaussian", part: { ...none, gaussian: [row] } })),
    ...reciprocalBell.map((row) => ({ kind: "reciprocalBell", part: { ...none, reciprocalBell: [row] } })),
    ...nonAnalytic.map((row) => ({ kind: "nonAnalytic", part: { ...none, nonAnalytic: [row] } })),
  ];
}

describe("one term at a time", () => {
  it("has the derivatives of its printed form", () => {
    fc.assert(
      fc.property(anyFluid(), share(), share(), share(), (fluid, pick, u, v) => {
        const terms = singleTerms(fluid);
        // One in four cases takes the rarest form the fluid has, which stands last.
        const { kind, part } =
          terms[pick > 0.75 ? terms.length - 1 : Math.floor((pick / 0.75) * (terms.length - 1))]!;
        const tau = 0.6 + 2 * u;
        const delta = 0.01 + 3.3 * v;
        // Next to the critical isochore or isotherm non-analytic terms have no finite scale to compare on.
        fc.pre(kind !== "nonAnalytic" || (Math.abs(tau - 1) > 0.01 && Math.abs(delta - 1) > 0.01));
        const equation = new Equation({ ...fluid, residual: part });
        const found = noDerivatives();
        equation.evaluateResidual(tau, delta, found);
        const reference = differentiate((t, d) => residualPrecisely(part, t, d), tau, delta);
        const { byTau, byDelta } = steepness(part, tau, delta);
        const size = Math.abs(reference.phi);
        const scale = {
          phi: size,
          phi_d: size * byDelta,
          phi_dd: size * byDelta ** 2,
          phi_ddd: size * byDelta ** 3,
          phi_t: size * byTau,
          phi_tt: size * byTau ** 2,
          phi_dt: size * byDelta * byTau,
        };
        for (const name of names) {
          const largest = Math.max(scale[name], Math.abs(reference[name]));
          // A term that has died away to nothing has no digits to compare.
          if (largest < 1e-280) continue;
          const deviation = Math.abs(found[name] - reference[name]) / largest;
          const row = JSON.stringify(Object.values(part).flat(1));
          worst(`${kind} ${name}`, deviation, limit, `${fluid.designation} ${row} τ ${tau} δ ${delta}`);
        }
      }),
    );
  });
});

describe("the ideal part", () => {
  it("has the derivatives of its printed form", () => {
    fc.assert(
      fc.property(anyFluid(), share(), (fluid, u) => {
        const { minimumTemperature, maximumTemperature } = fluid.limits;
        const T = minimumTemperature + u * (maximumTemperature - minimumTemperature);
        const tau = fluid.reducing.temperature / T;
        const equation = new Equation(fluid);
        const found = { phi: 0, phi_t: 0, phi_tt: 0 };
        equation.evaluateIdeal(tau, found);
        const reference = differentiateInTau(
          (t) => idealPrecisely(fluid.ideal, fluid.reducing.temperature, t),
          tau,
        );
        for (const name of ["phi", "phi_t", "phi_tt"] as const) {
          const deviation = Math.abs(found[name] - reference[name]) / (1 + Math.abs(reference[name]));
          worst(`ideal ${name}`, deviation, limit, `${fluid.designation} ${fluid.equation} ${T} K`);
        }
      }),
    );
  });
});
