import type { ResidualPart } from "../catalogue/index.js";

/** A run of power terms that share one factor exp(−g δ^l). */
export interface PowerGroup {
  readonly l: number;
  readonly g: number;
  readonly start: number;
  readonly end: number;
}

/**
 * Terms n τ^t δ^d exp(−g δ^l − k τ^m), sorted into groups of equal (l, g). After `setTau`, A holds n τ^t exp(−k τ^m),
 * B its logarithmic derivative τ A′/A and C its second one τ² A″/A.
 */
export interface PowerTerms {
  readonly groups: readonly PowerGroup[];
  readonly d: Float64Array;
  readonly A: Float64Array;
  readonly B: Float64Array;
  readonly C: Float64Array;
  /** Highest d, for the table of powers of δ. */
  readonly highestPower: number;
  /** Whether that table serves: all d are whole and none is absurd. */
  readonly integerPowers: boolean;
  setTau(tau: number): void;
}

/** Terms with δ^d exp(−η(δ − ε)²); A, B, C as in {@link PowerTerms}. */
export interface BellTerms {
  readonly count: number;
  readonly d: Float64Array;
  readonly eta: Float64Array;
  readonly epsilon: Float64Array;
  readonly A: Float64Array;
  readonly B: Float64Array;
  readonly C: Float64Array;
  setTau(tau: number): void;
}

/** Sorts the published rows into flat arrays for the kernel. */
export function compileTerms(part: ResidualPart): { readonly power: PowerTerms; readonly bells: BellTerms } {
  return { power: compilePower(part), bells: compileBells(part) };
}

/** Published density exponents end at 15; a table as long as a mistyped one must not be made. */
const longestTable = 64;

function compilePower(part: ResidualPart): PowerTerms {
  const rows = [
    ...part.power.map(([n, t, d, l]) => ({ n, t, d, l, m: 0, g: 1, k: 0 })),
    ...(part.doubleExp ?? []).map(([n, t, d, l, m, g, k]) => ({ n, t, d, l, m, g, k })),
  ].sort((a, b) => a.l - b.l || a.g - b.g);
  const groups: PowerGroup[] = [];
  for (let start = 0; start < rows.length; ) {
    const { l, g } = rows[start]!;
    let end = start;
    while (end < rows.length && rows[end]!.l === l && rows[end]!.g === g) end++;
    groups.push({ l, g, start, end });
    start = end;
  }
  const n = Float64Array.from(rows, (row) => row.n);
  const t = Float64Array.from(rows, (row) => row.t);
  const d = Float64Array.from(rows, (row) => row.d);
  const A = new Float64Array(rows.length);
  const B = Float64Array.from(t);
  const C = Float64Array.from(t, (value) => value * (value - 1));
  const damped = rows.flatMap(({ m, k }, index) => (k === 0 ? [] : [{ index, m, k }]));
  const integerPowers = rows.every((row) => Number.isInteger(row.d) && row.d >= 0 && row.d <= longestTable);
  return {
    groups,
    d,
    A,
    B,
    C,
    highestPower: integerPowers ? Math.max(0, ...rows.map((row) => row.d)) : 0,
    integerPowers,
    setTau(tau: number): void {
      const logTau = Math.log(tau);
      for (let i = 0; i < n.length; i++) A[i] = n[i]! * Math.exp(t[i]! * logTau);
      for (const { index, m, k } of damped) {
        const decay = k * tau ** m;
        const slope = t[index]! - m * decay;
        A[index] = A[index]! * Math.exp(-decay);
        B[index] = slope;
        C[index] = slope * slope - t[index]! - m * (m - 1) * decay;
      }
    },
  };
}

function compileBells(part: ResidualPart): BellTerms {
  // In τ the two kinds of bell differ, in δ they are alike; b tells them apart.
  const rows = [
    ...(part.gaussian ?? []).map(([n, t, d, eta, beta, gamma, epsilon]) => ({
      n,
      t,
      d,
      eta,
      beta,
      gamma,
      epsilon,
      b: undefined as number | undefined,
    })),
    ...(part.reciprocalBell ?? []).map(([n, t, d, eta, beta, gamma, epsilon, b]) => ({
      n,
      t,
      d,
      eta,
      beta,
      gamma,
      epsilon,
      b: b as number | undefined,
    })),
  ];
  const A = new Float64Array(rows.length);
  const B = new Float64Array(rows.length);
  const C = new Float64Array(rows.length);
  return {
    count: rows.length,
    d: Float64Array.from(rows, (row) => row.d),
    eta: Float64Array.from(rows, (row) => row.eta),
    epsilon: Float64Array.from(rows, (row) => row.epsilon),
    A,
    B,
    C,
    setTau(tau: number): void {
      const logTau = Math.log(tau);
      for (let i = 0; i < rows.length; i++) {
        const { n, t, beta, gamma, b } = rows[i]!;
        const shift = tau - gamma;
        let exponent: number;
        let first: number;
        let second: number;
        if (b === undefined) {
          exponent = -beta * shift * shift;
          first = -2 * beta * shift;
          second = -2 * beta;
        } else {
          const q = beta * shift * shift + b;
          exponent = 1 / q;
          first = (-2 * beta * shift) / (q * q);
          second = (-2 * beta) / (q * q) + (8 * beta * beta * shift * shift) / (q * q * q);
        }
        const slope = t + tau * first;
        A[i] = n * Math.exp(t * logTau + exponent);
        B[i] = slope;
        C[i] = slope * slope - t + tau * tau * second;
      }
    },
  };
}
