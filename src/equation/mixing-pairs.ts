import type { Fluid, Pair } from "../catalogue/index.js";
import { type Derivatives, noDerivatives } from "./derivatives.js";
import type { PairRule } from "./reducing.js";
import { Residual } from "./residual.js";

/** A pair of a mixture, first and second as in its `between`. */
export type PairOf = (first: Fluid, second: Fluid) => Pair;

/** A departure function and the pairs it serves, with their factors. */
export interface Departure {
  readonly residual: Residual;
  readonly at: Derivatives;
  readonly pairs: readonly (readonly [i: number, j: number, factor: number])[];
}

/** Every pair of a mixture's fluids: in row i those with the fluids after it. */
export function pairTable(fluids: readonly Fluid[], pairOf: PairOf): readonly (readonly Pair[])[] {
  return fluids.map((first, i) => fluids.slice(i + 1).map((second) => pairOf(first, second)));
}

/** The departure functions of a mixture, each once, with the pairs it serves. */
export function departuresOf(
  fluids: readonly Fluid[],
  ratio: Float64Array,
  of: (i: number, j: number) => Pair,
): readonly Departure[] {
  const found = new Map<
    unknown,
    { residual: Residual; at: Derivatives; pairs: [number, number, number][] }
  >();
  for (let i = 0; i < fluids.length; i++) {
    for (let j = i + 1; j < fluids.length; j++) {
      const { departure } = of(i, j);
      if (departure === undefined || departure.factor === 0) continue;
      const { function: departureFunction } = departure;
      // With the mean of both fluids' gas constants, so that the order of components changes nothing.
      const factor = (departure.factor * (ratio[i]! + ratio[j]!)) / 2;
      const entry = found.get(departureFunction) ?? {
        residual: new Residual(departureFunction.residual),
        at: noDerivatives(),
        pairs: [],
      };
      entry.pairs.push([i, j, factor]);
      found.set(departureFunction, entry);
    }
  }
  return [...found.values()];
}

/** A pair's β belongs to the order in which it names its fluids. */
function oriented(first: Fluid, pair: Pair, beta: number): number {
  return pair.between[0] === first.designation ? beta : 1 / beta;
}

/** What a pair does to the reducing temperature. */
export function temperatureRule(first: Fluid, second: Fluid, pair: Pair): PairRule {
  const { reducing } = pair;
  if (reducing.form === "lemmon-jacobsen") return { kind: "excess", excess: reducing.zeta };
  return {
    kind: "quotient",
    beta: oriented(first, pair, reducing.betaT),
    gamma: reducing.gammaT,
    mean: Math.sqrt(first.reducing.temperature * second.reducing.temperature),
  };
}

/** What a pair does to the reducing volume. */
export function volumeRule(first: Fluid, second: Fluid, pair: Pair): PairRule {
  const { reducing } = pair;
  if (reducing.form === "lemmon-jacobsen") return { kind: "excess", excess: reducing.xi };
  return {
    kind: "quotient",
    beta: oriented(first, pair, reducing.betaV),
    gamma: reducing.gammaV,
    mean: (Math.cbrt(1 / first.reducing.density) + Math.cbrt(1 / second.reducing.density)) ** 3 / 8,
  };
}
