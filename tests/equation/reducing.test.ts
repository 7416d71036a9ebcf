import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type PairRule, ReducingFunction } from "../../src/equation/reducing.js";
import { expand, type PreciseRule, reducePrecisely } from "../support/decimal-mixture.js";
import { share } from "../support/states.js";
import { trackWorst } from "../support/worst.js";

/* The printed forms in 60 digits, and what follows from them; limits are the worst seen, units in the last place. */
const worst = trackWorst("reducing functions");
const Precise = Decimal.clone({ precision: 60 });

/** A reducing quantity: what each component has alone, a rule for each pair, and a composition. */
interface Case {
  readonly pure: readonly number[];
  readonly rules: readonly PairRule[];
  readonly x: Float64Array;
}

/** β and γ reach farther than any published; a third of the pairs have the other form, some have β = 1. */
const anyRule: fc.Arbitrary<PairRule> = fc
  .tuple(share(), share(), share(), share())
  .map(([form, a, b, c]) =>
    form < 1 / 3
      ? { kind: "excess", excess: 120 * a - 60 }
      : { kind: "quotient", beta: form < 0.5 ? 1 : 0.7 + 0.6 * a, gamma: 0.7 + 0.6 * b, mean: 200 + 250 * c },
  );

/** Two to five components; one in four fractions is a trace. */
const anyCase: fc.Arbitrary<Case> = fc.integer({ min: 2, max: 5 }).chain((count) =>
  fc
    .tuple(
      fc.array(share(), { minLength: count, maxLength: count }),
      fc.array(anyRule, { minLength: (count * (count - 1)) / 2, maxLength: (count * (count - 1)) / 2 }),
      fc.array(fc.tuple(share(), share()), { minLength: count, maxLength: count }),
    )
    .map(([pure, rules, amounts]) => ({
      pure: pure.map((u) => 200 + 250 * u),
      rules,
      x: Float64Array.from(amounts, ([u, v]) => (v < 0.25 ? 10 ** (-9 * u) : u + 1e-9)),
    })),
);

const ruleIndex = (count: number, i: number, j: number): number => (i * (2 * count - i - 1)) / 2 + j - i - 1;

function functionOf({ pure, rules }: Omit<Case, "x">): ReducingFunction {
  return new ReducingFunction(pure, (i, j) => rules[ruleIndex(pure.length, i, j)]!);
}

/** Mole fractions need not add up to 1 for the form; they do here, as where they are used. */
function normal(x: Float64Array): Float64Array {
  const sum = x.reduce((total, xi) => total + xi, 0);
  return x.map((xi) => xi / sum);
}

function largest(values: Float64Array): number {
  return Math.max(...values.map(Math.abs));
}

describe("a reducing function", () => {
  it("has the derivatives of its printed form", () => {
    fc.assert(
      fc.property(anyCase, ({ pure, rules, x: amounts }) => {
        const x = normal(amounts);
        const Y = functionOf({ pure, rules });
        Y.setComposition(x);
        const precise = rules.map((rule): PreciseRule => {
          if (rule.kind === "excess") return { kind: "excess", excess: new Precise(rule.excess) };
          const { beta, gamma, mean } = rule;
          return {
            kind: "quotient",
            beta: new Precise(beta),
            gamma: new Precise(gamma),
            mean: new Precise(mean),
          };
        });
        const count = pure.length;
        const { value, first, second } = expand(
          (at) =>
            reducePrecisely(
              at,
              pure.map((Yi) => new Precise(Yi)),
              (i, j) => precise[ruleIndex(count, i, j)]!,
            ),
          Array.from(x, (xi) => new Precise(xi)),
        );
        const where = `${[...x]}`;
        worst("Y", Math.abs(Y.value / value.toNumber() - 1), 2e-15, where);
        for (let i = 0; i < count; i++) {
          worst("∂Y", Math.abs(Y.first[i]! / first[i]!.toNumber() - 1), 2e-15, where);
          for (let j = 0; j < count; j++) {
            const deviation = Math.abs(Y.second[i * count + j]! - second[i]![j]!.toNumber());
            worst("∂²Y", deviation / largest(Y.second), 4e-15, where);
          }
        }
      }),
    );
  });

  it("is of degree two whatever the fractions add up to: Σ xᵢ∂Y = 2Y, Σ xⱼ∂²Y = ∂Y", () => {
    fc.assert(
      fc.property(anyCase, ({ x, ...rest }) => {
        const Y = functionOf(rest);
        Y.setComposition(x);
        const count = x.length;
        const where = `${[...x]}`;
        const twice = Y.first.reduce((sum, slope, i) => sum + x[i]! * slope, 0);
        worst("Σ xᵢ∂Y = 2Y", Math.abs(twice / Y.value / 2 - 1), 2e-15, where);
        for (let i = 0; i < count; i++) {
          const once = x.reduce((sum, xj, j) => sum + xj * Y.second[i * count + j]!, 0);
          worst("Σ xⱼ∂²Y = ∂Y", Math.abs(once / Y.first[i]! - 1), 4e-15, where);
        }
      }),
    );
  });

  it("does not see in which order a pair is named, with β turned into 1/β", () => {
    fc.assert(
      fc.property(anyCase, ({ pure: [a, b], rules: [rule], x }) => {
        const [xa, xb] = x as unknown as [number, number];
        const turned: PairRule = rule!.kind === "excess" ? rule! : { ...rule!, beta: 1 / rule!.beta };
        const one = functionOf({ pure: [a!, b!], rules: [rule!] });
        const other = functionOf({ pure: [b!, a!], rules: [turned] });
        one.setComposition(Float64Array.of(xa, xb));
        other.setComposition(Float64Array.of(xb, xa));
        const where = `${xa}, ${xb}`;
        worst("order: Y", Math.abs(one.value / other.value - 1), 2e-15, where);
        for (let i = 0; i < 2; i++) {
          worst("order: ∂Y", Math.abs(one.first[i]! / other.first[1 - i]! - 1), 2e-15, where);
          for (let j = 0; j < 2; j++) {
            const difference = Math.abs(one.second[2 * i + j]! - other.second[2 * (1 - i) + 1 - j]!);
            worst("order: ∂²Y", difference / largest(one.second), 4e-15, where);
          }
        }
      }),
    );
  });

  it("is finite with any components absent, and exact for one alone", () => {
    fc.assert(
      fc.property(anyCase, fc.integer({ min: 1, max: 31 }), ({ pure, rules, x }, present) => {
        const count = pure.length;
        const left = x.map((xi, i) => (present & (1 << i) ? xi : 0));
        fc.pre(left.some((xi) => xi > 0));
        const Y = functionOf({ pure, rules });
        Y.setComposition(normal(left));
        expect([Y.value, ...Y.first, ...Y.second].every(Number.isFinite)).toBe(true);
        for (let i = 0; i < count; i++) {
          Y.setComposition(left.map((_, j) => (i === j ? 1 : 0)));
          expect(Y.value).toBe(pure[i]);
          expect(Y.first[i]).toBe(2 * pure[i]!);
        }
      }),
    );
  });
});
