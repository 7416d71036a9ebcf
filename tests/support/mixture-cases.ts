import fc from "fast-check";
import { type Fluid, listBlends, listPairs } from "../../src/catalogue/index.js";
import { Mixture, type MixtureEvaluation, noMixtureEvaluation } from "../../src/equation/index.js";
import { fluidOf, fractionsOf, moleFractionsOf, pairOf } from "./mixtures.js";
import { share } from "./states.js";

/** A mixture at random: components of a blend or of a pair, any composition and state, reduced. */
export interface Case {
  readonly name: string;
  readonly fluids: readonly Fluid[];
  readonly x: Float64Array;
  readonly tau: number;
  readonly delta: number;
}

const systems = [
  ...listBlends().map((blend) => ({
    name: blend.designation,
    fluids: blend.components.map(({ fluid }) => fluid),
    z: moleFractionsOf(blend),
  })),
  ...listPairs().map(({ between }) => ({
    name: between.join("/"),
    fluids: between.map(fluidOf),
    z: Float64Array.of(0.5, 0.5),
  })),
];

/**
 * From thin gas to cold liquid, not inside the dome, where terms as steep as τ⁵⁰ of R-134a grow without bound;
 * compositions lie around the designated one.
 */
export const anyCase: fc.Arbitrary<Case> = fc
  .tuple(fc.constantFrom(...systems), fc.array(share(), { minLength: 7, maxLength: 7 }))
  .map(([{ name, fluids, z }, [u, v, ...shares]]) => {
    const x = fractionsOf(Array.from(z, (zi, i) => zi * (0.02 + shares[i]!)));
    const tau = 0.7 + v!;
    const isGas = u! < 0.5;
    // The gas ends where it would condense, about.
    const highest = tau > 1.02 ? 10 ** (-4 * (tau - 1.02) - 1) : 2;
    const delta = isGas ? 1e-4 * (highest / 1e-4) ** (2 * u!) : (tau > 1.02 ? 2.3 : 2) + 2 * u! - 1;
    return { name, fluids, x, tau, delta };
  });

const made = new Map<readonly Fluid[], Mixture>();

/** The equation of a list of fluids; each is made once. */
export function knownMixture(fluids: readonly Fluid[]): Mixture {
  const known = made.get(fluids) ?? new Mixture(fluids, pairOf);
  made.set(fluids, known);
  return known;
}

/** T and ρ of a case; the mixture's composition is set. */
export function stateOf({ fluids, x, tau, delta }: Case): { readonly T: number; readonly rho: number } {
  const mixture = knownMixture(fluids);
  mixture.setComposition(x);
  return { T: mixture.Tr / tau, rho: delta * mixture.rhor };
}

/** An evaluation of its own. */
export function evaluate(mixture: Mixture, T: number, rho: number, x: Float64Array): MixtureEvaluation {
  const at = noMixtureEvaluation(mixture.count);
  mixture.evaluate(
    T,
    x.map((xi) => xi * rho),
    at,
  );
  return at;
}
