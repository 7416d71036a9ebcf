import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Fluid, Pair } from "../../src/catalogue/index.js";
import { Mixture, type MixtureEvaluation } from "../../src/equation/index.js";
import { anyCase, type Case, evaluate, knownMixture, stateOf } from "../support/mixture-cases.js";
import { pairOf } from "../support/mixtures.js";
import { share } from "../support/states.js";
import { trackWorst } from "../support/worst.js";

/* No outside source: what holds for any mixture. Limits are the worst seen in 40 000 cases with a little room. */
const worst = trackWorst("components of mixtures");

/** Compares two evaluations, each times the gas constant it is divided by, component by component. */
function compareAs(
  check: string,
  limit: number,
  where: string,
  one: readonly [MixtureEvaluation, Mixture],
  other: readonly [MixtureEvaluation, Mixture],
  /** Component of the other for each of the one. */
  map: readonly number[],
): void {
  const [a, { R: Ra, count }] = one;
  const [b, { R: Rb, count: otherCount }] = other;
  // Second derivatives are of the size of the largest of them.
  const scale = 1 + Math.max(...a.hessian.map(Math.abs), Math.abs(a.phiTT));
  const see = (what: string, x: number, y: number): void =>
    worst(`${check}: ${what}`, Math.abs(x - (y * Rb) / Ra) / scale, limit, where);
  for (const what of ["phi", "phiL", "phiLL", "phiT", "phiTT", "phiLT"] as const) see("φ", a[what], b[what]);
  see("p", a.pressure / a.rho, b.pressure / b.rho);
  see("p", a.pressureT / a.rho, b.pressureT / b.rho);
  for (let i = 0; i < count; i++) {
    see("μ", a.mu[i]!, b.mu[map[i]!]!);
    see("∂μ/∂T", a.muT[i]!, b.muT[map[i]!]!);
    see("∂p/∂ρᵢ", a.pressureBy[i]!, b.pressureBy[map[i]!]!);
    for (let j = 0; j < count; j++) {
      see("∂μ/∂ρⱼ", a.hessian[i * count + j]!, b.hessian[map[i]! * otherCount + map[j]!]!);
    }
  }
}

describe("the components of a mixture", () => {
  it("may stand in any order", () => {
    fc.assert(
      fc.property(anyCase, fc.array(share(), { minLength: 5, maxLength: 5 }), (at, keys) => {
        const { fluids, x, name } = at;
        const { T, rho } = stateOf(at);
        const order = fluids.map((_, i) => i).sort((i, j) => keys[i]! - keys[j]!);
        const other = new Mixture(
          order.map((i) => fluids[i]!),
          pairOf,
        );
        const mixture = knownMixture(fluids);
        compareAs(
          "order",
          1e-13,
          `${name} ${[...x]} ${T} K ${rho} mol/m3`,
          [evaluate(mixture, T, rho, x), mixture],
          [
            evaluate(
              other,
              T,
              rho,
              Float64Array.from(order, (i) => x[i]!),
            ),
            other,
          ],
          fluids.map((_, i) => order.indexOf(i)),
        );
      }),
    );
  });

  /** One fluid beside itself: linear means. */
  const withItself =
    (pairs: (first: Fluid, second: Fluid) => Pair) =>
    (first: Fluid, second: Fluid): Pair =>
      first.designation === second.designation
        ? {
            between: [first.designation, second.designation],
            grade: "estimated",
            reducing: { form: "lemmon-jacobsen", zeta: 0, xi: 0 },
            deviation: { relative: 0, basis: "one fluid" },
            sources: [],
            notes: [],
          }
        : pairs(first, second);

  /** The same with every β set to 1. */
  const symmetric = (first: Fluid, second: Fluid): Pair => {
    const pair = pairOf(first, second);
    const { reducing } = pair;
    return reducing.form === "lemmon-jacobsen"
      ? pair
      : { ...pair, reducing: { ...reducing, betaT: 1, betaV: 1 } };
  };

  /** The state with the first component as it is, and as two of the same fluid, a part of it in each. */
  function whole(at: Case, part: number, pairs: (first: Fluid, second: Fluid) => Pair) {
    const { fluids, x } = at;
    const { T, rho } = stateOf(at);
    const one = new Mixture(fluids, pairs);
    const other = new Mixture([fluids[0]!, ...fluids], withItself(pairs));
    const split = Float64Array.of(part * x[0]!, (1 - part) * x[0]!, ...x.slice(1));
    return { one, other, a: evaluate(one, T, rho, x), b: evaluate(other, T, rho, split), T, rho };
  }

  it("may be named twice where no β asks which is which", () => {
    fc.assert(
      fc.property(anyCase, share(), (at, part) => {
        const { one, other, a, b, T, rho } = whole(at, part, symmetric);
        const where = `${at.name} ${[...at.x]} ${T} K ${rho} mol/m3`;
        const second = at.fluids.map((_, i) => i + 1);
        compareAs("named twice", 2e-13, where, [a, one], [b, other], second);
        compareAs("named twice", 2e-13, where, [a, one], [b, other], [0, ...second.slice(1)]);
      }),
    );
  });

  /*
   * With β ≠ 1 the quotient (xᵢ + xⱼ)/(β²xᵢ + xⱼ) is no longer one of the sums of the halves: Kunz and Wagner's form is
   * not invariant when a component is divided (Michelsen, M. L., Kistenmacher, H., Fluid Phase Equilib. 58 (1990) 229).
   * Nobody divides one: the public door adds up components named twice. How large it is, of the pairs as they are:
   */
  it("must not be named twice where β does", () => {
    let largest = 0;
    fc.assert(
      fc.property(anyCase, (at) => {
        const { one, other } = whole(at, 0.5, pairOf);
        largest = Math.max(largest, Math.abs(other.Tr / one.Tr - 1));
        const hasBeta = one.pairs.some(
          ({ reducing: r }) => r.form === "kunz-wagner" && (r.betaT !== 1 || r.betaV !== 1),
        );
        if (!hasBeta) expect(other.Tr).toBeWithin(one.Tr, 1e-14);
      }),
    );
    console.log(
      `a component named twice moves the reducing temperature by up to ${largest.toExponential(1)}`,
    );
    expect(largest).toBeGreaterThan(1e-5);
    expect(largest).toBeLessThan(0.02);
  });
});
