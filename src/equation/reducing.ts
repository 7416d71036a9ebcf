/** One pair's share in a reducing function: `B` is β², `size` the coefficient of the rest. */
type PairShare =
  | {
      readonly kind: "quotient";
      readonly i: number;
      readonly j: number;
      readonly B: number;
      readonly size: number;
    }
  | { readonly kind: "product"; readonly i: number; readonly j: number; readonly size: number };

/** What a pair does to one reducing quantity Y: β and γ with a mean of both fluids, or an excess over the linear mean. */
export type PairRule =
  | { readonly kind: "quotient"; readonly beta: number; readonly gamma: number; readonly mean: number }
  | { readonly kind: "excess"; readonly excess: number };

/**
 * A reducing quantity Y(x) of a mixture, temperature or molar volume, and its derivatives.
 *
 * Y = Σ xᵢ²Yᵢ + Σ pairs, where a pair adds 2 βγ Ȳ xᵢxⱼ(xᵢ + xⱼ)/(β²xᵢ + xⱼ), or xᵢxⱼ(Yᵢ + Yⱼ + excess). The second is the
 * linear mean Σ xᵢYᵢ with an excess, written so that it is of degree two in x as the first is: both can stand in one mixture,
 * and Σ xₖ ∂Y/∂xₖ = 2Y whatever x adds up to.
 *
 * @source Kunz, O., Wagner, W., J. Chem. Eng. Data 57 (2012) 3032, eqs. (16) and (17); Lemmon, E. W., Jacobsen, R. T,
 *   J. Phys. Chem. Ref. Data 33 (2004) 593, for the excess form.
 */
export class ReducingFunction {
  /** Y at the composition set last. */
  value = 0;
  /** ∂Y/∂xᵢ, every x taken as independent. */
  readonly first: Float64Array;
  /** ∂²Y/∂xᵢ∂xⱼ, row by row. */
  readonly second: Float64Array;
  readonly #pure: Float64Array;
  readonly #shares: readonly PairShare[];

  constructor(pure: readonly number[], ruleOf: (i: number, j: number) => PairRule) {
    const count = pure.length;
    this.#pure = Float64Array.from(pure);
    this.first = new Float64Array(count);
    this.second = new Float64Array(count * count);
    const shares: PairShare[] = [];
    for (let i = 0; i < count; i++) {
      for (let j = i + 1; j < count; j++) {
        const rule = ruleOf(i, j);
        if (rule.kind === "excess") {
          shares.push({ kind: "product", i, j, size: pure[i]! + pure[j]! + rule.excess });
        } else if (rule.beta === 1) {
          shares.push({ kind: "product", i, j, size: 2 * rule.gamma * rule.mean });
        } else {
          const { beta, gamma, mean } = rule;
          shares.push({ kind: "quotient", i, j, B: beta * beta, size: 2 * beta * gamma * mean });
        }
      }
    }
    this.#shares = shares;
  }

  /** Computes Y and its derivatives at a composition. */
  setComposition(x: Float64Array): void {
    const { first, second } = this;
    const pure = this.#pure;
    const count = pure.length;
    let value = 0;
    second.fill(0);
    for (let i = 0; i < count; i++) {
      const xY = x[i]! * pure[i]!;
      value += x[i]! * xY;
      first[i] = 2 * xY;
      second[i * count + i] = 2 * pure[i]!;
    }
    for (const share of this.#shares) {
      const { i, j, size } = share;
      const xi = x[i]!;
      const xj = x[j]!;
      if (share.kind === "product") {
        value += size * xi * xj;
        first[i]! += size * xj;
        first[j]! += size * xi;
        second[i * count + j] = size;
        second[j * count + i] = size;
        continue;
      }
      // Where both are absent the quotient has no second derivatives; nothing asks for them there.
      if (xi === 0 && xj === 0) continue;
      const { B } = share;
      const q = 1 / (B * xi + xj);
      const product = xi * xj * (xi + xj);
      const byI = xj * (2 * xi + xj);
      const byJ = xi * (xi + 2 * xj);
      value += size * product * q;
      first[i]! += size * q * (byI - B * product * q);
      first[j]! += size * q * (byJ - product * q);
      second[i * count + i]! += 2 * size * q * (xj - B * q * (byI - B * product * q));
      second[j * count + j]! += 2 * size * q * (xi - q * (byJ - product * q));
      const mixed = size * q * (2 * (xi + xj) - q * (byI + B * byJ - 2 * B * product * q));
      second[i * count + j] = mixed;
      second[j * count + i] = mixed;
    }
    this.value = value;
  }
}
