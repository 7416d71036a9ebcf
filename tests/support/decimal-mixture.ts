import { Decimal } from "decimal.js";
import type { Fluid, Pair } from "../../src/catalogue/index.js";
import type { PairOf } from "../../src/equation/index.js";
import { type Long, residualPrecisely } from "./decimal-terms.js";

const Precise = Decimal.clone({ precision: 60 });
/** Of 60 digits a second difference keeps 20; a trace of 1e-9 is still far larger than the step. */
const step = new Precise("1e-20");
const long = (value: Decimal.Value): Long => new Precise(value);

/** Value, gradient and second derivatives of a 60-digit function of several variables, by central differences. */
export interface Expansion {
  readonly value: Long;
  readonly first: readonly Long[];
  readonly second: readonly (readonly Long[])[];
}

/** Second derivatives across are taken along both variables together, so that odd terms cancel. */
export function expand(f: (at: readonly Long[]) => Long, at: readonly Long[]): Expansion {
  const moved = (sign: 1 | -1, ...which: readonly number[]): Long =>
    f(at.map((x, k) => (which.includes(k) ? x.plus(step.times(sign)) : x)));
  const value = f(at);
  const ups = at.map((_, k) => moved(1, k));
  const downs = at.map((_, k) => moved(-1, k));
  const twice = (up: Long, down: Long): Long => up.plus(down).minus(value.times(2));
  const own = at.map((_, k) => twice(ups[k]!, downs[k]!));
  const second = at.map(() => new Array<Long>(at.length).fill(long(0)));
  for (let i = 0; i < at.length; i++) {
    second[i]![i] = own[i]!.div(step.pow(2));
    for (let j = 0; j < i; j++) {
      const across = twice(moved(1, i, j), moved(-1, i, j))
        .minus(own[i]!)
        .minus(own[j]!);
      second[i]![j] = second[j]![i] = across.div(step.pow(2).times(2));
    }
  }
  return { value, first: ups.map((up, k) => up.minus(downs[k]!).div(step.times(2))), second };
}

/** What one pair does to a reducing quantity: β (of the order asked for) and γ with a mean, or an excess. */
export type PreciseRule =
  | { readonly kind: "quotient"; readonly beta: Long; readonly gamma: Long; readonly mean: Long }
  | { readonly kind: "excess"; readonly excess: Long };

/** A reducing quantity as printed: the sum over squares and pairs of Kunz and Wagner. */
export function reducePrecisely(
  x: readonly Long[],
  pure: readonly Long[],
  ruleOf: (i: number, j: number) => PreciseRule,
): Long {
  let Y = long(0);
  for (let i = 0; i < x.length; i++) {
    Y = Y.plus(x[i]!.pow(2).times(pure[i]!));
    for (let j = i + 1; j < x.length; j++) {
      const product = x[i]!.times(x[j]!);
      const rule = ruleOf(i, j);
      if (rule.kind === "excess") {
        Y = Y.plus(product.times(pure[i]!.plus(pure[j]!).plus(rule.excess)));
        continue;
      }
      const { beta, gamma, mean } = rule;
      const quotient = x[i]!.plus(x[j]!).div(beta.pow(2).times(x[i]!).plus(x[j]!));
      Y = Y.plus(product.times(2).times(beta).times(gamma).times(mean).times(quotient));
    }
  }
  return Y;
}

function rulesOf(first: Fluid, second: Fluid, pair: Pair): { temperature: PreciseRule; volume: PreciseRule } {
  const { reducing } = pair;
  if (reducing.form === "lemmon-jacobsen") {
    return {
      temperature: { kind: "excess", excess: long(reducing.zeta) },
      volume: { kind: "excess", excess: long(reducing.xi) },
    };
  }
  const [a, b] = [first.reducing, second.reducing];
  const isTurned = pair.between[0] !== first.designation;
  const turn = (beta: number): Long => (isTurned ? long(1).div(beta) : long(beta));
  const root = (density: number): Long => long(1).div(density).cbrt();
  return {
    temperature: {
      kind: "quotient",
      beta: turn(reducing.betaT),
      gamma: long(reducing.gammaT),
      mean: long(a.temperature).times(b.temperature).sqrt(),
    },
    volume: {
      kind: "quotient",
      beta: turn(reducing.betaV),
      gamma: long(reducing.gammaV),
      mean: root(a.density).plus(root(b.density)).pow(3).div(8),
    },
  };
}

/**
 * ρφ of the whole model in 60 digits, over the density ρ of the state, expanded in ln T and the concentrations over ρ:
 * variables 0, and 1 … N.
 *
 * In each fluid's part and each departure function the quadratic in (τ, δ) around the state stands for the whole: second
 * differences see nothing else of it, and it need be evaluated nine times only.
 */
export function expandMixture(
  fluids: readonly Fluid[],
  pairOf: PairOf,
  T: number,
  concentrations: readonly number[],
): Expansion {
  const rho = concentrations.reduce((sum, c) => sum.plus(c), long(0));
  const pairs = fluids.map((first, i) => fluids.slice(i + 1).map((second) => pairOf(first, second)));
  const rules = pairs.map((row, i) => row.map((pair, k) => rulesOf(fluids[i]!, fluids[i + 1 + k]!, pair)));
  const reduced = (t: Long, x: readonly Long[], density: Long): readonly [tau: Long, delta: Long] => {
    const ruleOf = (what: "temperature" | "volume") => (i: number, j: number) => rules[i]![j - i - 1]![what];
    const Tr = reducePrecisely(
      x,
      fluids.map(({ reducing }) => long(reducing.temperature)),
      ruleOf("temperature"),
    );
    const vr = reducePrecisely(
      x,
      fluids.map(({ reducing }) => long(1).div(reducing.density)),
      ruleOf("volume"),
    );
    return [Tr.div(Precise.exp(t).times(T)), density.times(vr)];
  };
  const at = [long(0), ...concentrations.map((c) => long(c).div(rho))];
  const centre = reduced(long(0), at.slice(1), rho);
  const parts = [
    ...fluids.map(({ residual, gasConstant }, i) => ({
      residual,
      weight: (x: readonly Long[]) => x[i]!.times(gasConstant).div(fluids[0]!.gasConstant),
    })),
    ...pairs.flatMap((row, i) =>
      row.flatMap(({ departure }, k) =>
        departure === undefined
          ? []
          : [
              {
                residual: departure.function.residual,
                // As every part, over the first fluid's gas constant; it has the mean of its pair's.
                weight: (x: readonly Long[]) =>
                  x[i]!.times(x[i + 1 + k]!)
                    .times(departure.factor)
                    .times(long(fluids[i]!.gasConstant).plus(fluids[i + 1 + k]!.gasConstant))
                    .div(2 * fluids[0]!.gasConstant),
              },
            ],
      ),
    ),
  ].map(({ residual, weight }) => ({
    weight,
    quadratic: quadraticOf(
      expand(([tau, delta]) => residualPrecisely(residual, tau!, delta!), centre),
      centre,
    ),
  }));
  return expand(([t, ...amounts]) => {
    const total = amounts.reduce((sum, amount) => sum.plus(amount), long(0));
    const x = amounts.map((amount) => amount.div(total));
    const here = reduced(t!, x, total.times(rho));
    return parts
      .reduce((sum, { weight, quadratic }) => sum.plus(weight(x).times(quadratic(here))), long(0))
      .times(total);
  }, at);
}

function quadraticOf(
  { value, first, second }: Expansion,
  centre: readonly Long[],
): (at: readonly Long[]) => Long {
  return (at) => {
    const d = at.map((x, k) => x.minus(centre[k]!));
    let sum = value;
    for (let i = 0; i < d.length; i++) {
      sum = sum.plus(first[i]!.times(d[i]!));
      for (let j = 0; j < d.length; j++) sum = sum.plus(second[i]![j]!.times(d[i]!).times(d[j]!).div(2));
    }
    return sum;
  };
}
