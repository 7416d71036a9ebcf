import { describe, it } from "vitest";
import type { ResidualPart } from "../../src/catalogue/index.js";
import { Mixture, noMixtureEvaluation } from "../../src/equation/index.js";
import { expandMixture } from "../support/decimal-mixture.js";
import type { Long } from "../support/decimal-terms.js";
import { blendModelOf, mixtureOf, pairOf } from "../support/mixtures.js";
import { trackWorst } from "../support/worst.js";
import { equationWith, evaluateAt, singleTerms, sizeOf } from "./term-sums.js";

/*
 * The reference is the model as printed, summed in 60 digits, with difference quotients good to 20 of them for its
 * derivatives. A limit is the worst seen with a little room: a few units in the last place of the terms summed.
 */
const limit = 1e-15;
const worst = trackWorst("mixtures against 60 digits");

const mixtures = [
  ["R-454B", blendModelOf("R-454B")],
  ["R-448A", blendModelOf("R-448A")],
  // Three pairs, one departure function between them.
  ["R-404A", blendModelOf("R-404A")],
  ["R-455A", blendModelOf("R-455A")],
  ["R-438A", blendModelOf("R-438A")],
  ["four hydrocarbons", mixtureOf({ "R-170": 0.045, "R-290": 0.545, "R-600": 0.365, "R-600a": 0.045 })],
  ["a trace of R-744", mixtureOf({ "R-32": 1, "R-744": 1e-9 })],
] as const;

/** Reduced by the reducing functions: thin and dense gas, beside the critical point, liquid, compressed cold liquid. */
const states = [
  ["gas", 0.9, 0.02],
  ["hot gas", 1.4, 0.6],
  ["near-critical state", 1.01, 1.03],
  ["liquid", 0.8, 2.4],
  ["cold liquid", 0.6, 3],
] as const;

/** What the terms of a part add up to without their signs, in all orders of ln δ and ln τ: rounding is counted in it. */
function termsOf(residual: ResidualPart, tau: number, delta: number): number {
  const parts = singleTerms({ residual }).map((part) => evaluateAt(equationWith(part), tau, delta));
  const { phi, phi_d, phi_dd, phi_t, phi_tt, phi_dt } = sizeOf(parts, tau, delta);
  return Math.max(
    phi,
    delta * phi_d,
    delta ** 2 * phi_dd,
    tau * phi_t,
    tau ** 2 * phi_tt,
    delta * tau * phi_dt,
  );
}

describe.each(mixtures)("%s", (name, { system: { fluids }, z }) => {
  const mixture = new Mixture(fluids, pairOf);
  const { count, ratio } = mixture;

  it.each(states)(
    "has the value and the derivatives of its printed form as a %s",
    (state, reduced, delta) => {
      mixture.setComposition(z);
      const T = reduced * mixture.Tr;
      const concentrations = z.map((zi) => zi * delta * mixture.rhor);
      const at = noMixtureEvaluation(count);
      mixture.evaluate(T, concentrations, at);
      const { rho } = at;
      // Variables 0 for ln T and 1 … N for ρᵢ/ρ; F = ρφ/ρ₀.
      const { value, first, second } = expandMixture(fluids, pairOf, T, [...concentrations]);

      const own = fluids.map(({ residual }) => termsOf(residual, at.tau, at.delta));
      let whole = 1 + own.reduce((sum, size, i) => sum + z[i]! * size, 0);
      for (const { departure } of mixture.pairs) {
        if (departure === undefined) continue;
        whole += departure.factor * termsOf(departure.function.residual, at.tau, at.delta);
      }
      const check = (what: string, found: number, expected: Long, ...components: readonly number[]): void => {
        const scale = components.reduce((sum, i) => sum + own[i]!, whole);
        worst(what, Math.abs(found - expected.toNumber()) / scale, limit, `${name}, ${state}`);
      };

      const zero = value.minus(value);
      const weighted = (of: readonly Long[]): Long =>
        of.slice(1).reduce((sum, each, i) => sum.plus(each.times(concentrations[i]!).div(rho)), zero);
      const gradient = weighted(first);
      const twice = weighted(second.map(weighted));
      check("φ", at.phi, value);
      check("L φ", at.phiL, gradient.minus(value));
      check("L² φ", at.phiLL, twice.minus(gradient).plus(value));
      check("τ φ_τ", at.phiT, first[0]!.neg());
      check("(τ ∂/∂τ)² φ", at.phiTT, second[0]![0]!);
      const hot = weighted(second[0]!).minus(first[0]!);
      check("L τ φ_τ", at.phiLT, hot.neg());
      // p/(RT) = Σ ρᵢ(ratioᵢ + ∂F/∂ρᵢ) − F.
      const ideal = weighted([zero, ...Array.from(ratio, (r) => zero.plus(r))]);
      check("p", at.pressure / rho, ideal.plus(gradient).minus(value));
      check("∂p/∂T", at.pressureT / rho, hot);
      for (let i = 0; i < count; i++) {
        check("μ", at.mu[i]!, first[1 + i]!, i);
        check("∂μ/∂T", at.muT[i]!, second[0]![1 + i]!, i);
        check("∂p/∂ρᵢ", at.pressureBy[i]!, weighted(second[1 + i]!).plus(ratio[i]!), i);
        for (let j = 0; j < count; j++) {
          check("∂μ/∂ρⱼ", at.hessian[i * count + j]!, second[1 + i]![1 + j]!, i, j);
        }
      }
    },
  );
});
