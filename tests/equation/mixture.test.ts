import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Equation, type Evaluation, noEvaluation, noMixtureEvaluation } from "../../src/equation/index.js";
import { anyCase, type Case, evaluate, knownMixture, stateOf } from "../support/mixture-cases.js";
import { share } from "../support/states.js";
import { trackWorst } from "../support/worst.js";

/* No outside source: what holds for any mixture. Limits are the worst seen in 40 000 cases with a little room. */
const worst = trackWorst("mixtures");

describe("a mixture that becomes pure", () => {
  const names = ["phi", "phi_d", "phi_dd", "phi_t", "phi_tt", "phi_dt"] as const;

  /** All of an evaluation in logarithms, which are of order one. */
  function sizes({ tau, delta, ideal, residual }: Evaluation): readonly number[] {
    const factors = [1, delta, delta ** 2, tau, tau ** 2, tau * delta];
    return [
      ideal.phi,
      tau * ideal.phi_t,
      tau ** 2 * ideal.phi_tt,
      ...names.map((name, k) => residual[name] * factors[k]!),
    ];
  }

  const what = ["α⁰", "α⁰_τ", "α⁰_ττ", ...names];

  /** A component with a trace of each of the others, less the entropy of mixing. */
  function nearlyPure({ fluids, tau, delta }: Case, pure: number, trace: number): readonly number[] {
    const mixture = knownMixture(fluids);
    const { reducing } = fluids[pure]!;
    const x = Float64Array.from(fluids, (_, i) => (i === pure ? 1 - trace * (fluids.length - 1) : trace));
    const at = evaluate(mixture, reducing.temperature / tau, delta * reducing.density, x);
    expect([...at.mu, ...at.muT, ...at.hessian].every(Number.isFinite)).toBe(true);
    const found = noEvaluation();
    mixture.toEvaluation(at, found);
    const mixing = x.reduce((sum, xi) => sum + (xi === 0 ? 0 : xi * Math.log(xi)), 0);
    const [alpha, ...rest] = sizes(found);
    return [alpha! - mixing, ...rest];
  }

  it("is that fluid to rounding, and with 1e-12 of another a thousandth as far from it as with 1e-9", () => {
    fc.assert(
      fc.property(anyCase, share(), (at, pick) => {
        const { fluids, tau, delta, name } = at;
        const pure = Math.floor(pick * 0.999 * fluids.length);
        const fluid = fluids[pure]!;
        const equation = new Equation(fluid);
        const expected = noEvaluation();
        equation.evaluate(equation.Tr / tau, delta * equation.rhor, expected);
        const wanted = sizes(expected);
        const alone = nearlyPure(at, pure, 0);
        const most = nearlyPure(at, pure, 1e-12);
        const nearly = nearlyPure(at, pure, 1e-9);
        const where = `${name} ${fluid.designation} τ ${tau} δ ${delta}`;
        const scale = 1 + Math.max(...wanted.map(Math.abs));
        wanted.forEach((value, k) => {
          worst(`pure: ${what[k]}`, Math.abs(alone[k]! - value) / scale, k < 3 ? 1e-15 : 2e-14, where);
          const deviation = most[k]! - value - (nearly[k]! - value) / 1000;
          worst(`nearly pure: ${what[k]}`, Math.abs(deviation) / scale, 2e-13, where);
        });
      }),
    );
  });
});

describe("Gibbs and Duhem", () => {
  it("Σ ρᵢ dμᵢ = dp at constant temperature along any change of concentrations, by difference quotients", () => {
    fc.assert(
      fc.property(anyCase, fc.array(share(), { minLength: 5, maxLength: 5 }), (at, direction) => {
        const mixture = knownMixture(at.fluids);
        const { T, rho } = stateOf(at);
        const c = at.x.map((xi) => xi * rho);
        const change = c.map((ci, i) => ci * (2 * direction[i]! - 1));
        // The steepest bells of R-744 are 0.04 wide in τ.
        const h = 2e-4;
        const sample = (k: number): { pressure: number; mu: Float64Array } => {
          const out = noMixtureEvaluation(mixture.count);
          const moved = c.map((ci, i) => ci + k * h * change[i]!);
          mixture.evaluate(T, moved, out);
          return {
            pressure: out.pressure,
            mu: out.mu.map((mu, i) => mu + mixture.ratio[i]! * Math.log(moved[i]!)),
          };
        };
        const [a, b, d, e] = [sample(-2), sample(-1), sample(1), sample(2)];
        const slope = (of: (at: ReturnType<typeof sample>) => number): number =>
          (8 * (of(d!) - of(b!)) - of(e!) + of(a!)) / (12 * h);
        const dp = slope(({ pressure }) => pressure);
        let sum = 0;
        let size = rho;
        for (let i = 0; i < mixture.count; i++) {
          const part = c[i]! * slope(({ mu }) => mu[i]!);
          sum += part;
          size += Math.abs(part);
        }
        const where = `${at.name} ${[...at.x]} ${T} K ${rho} mol/m3`;
        worst("Σ ρᵢ dμᵢ = dp", Math.abs(sum - dp) / size, 5e-10, where);
        // And the analytic derivatives are what the quotients say.
        const out = evaluate(mixture, T, rho, at.x);
        const analytic = change.reduce((total, change_i, i) => total + change_i * out.pressureBy[i]!, 0);
        worst("∂p/∂ρᵢ", Math.abs(analytic - dp) / size, 5e-9, where);
        for (let i = 0; i < mixture.count; i++) {
          for (let j = 0; j < mixture.count; j++) {
            expect(out.hessian[i * mixture.count + j]).toBe(out.hessian[j * mixture.count + i]);
          }
        }
      }),
    );
  });
});
