/**
 * Ideal-gas part of a Helmholtz equation, in one of the two forms found in the literature.
 *
 * `alpha0`: α⁰ = ln δ + logTau ln τ + Σ n τ^t + Σ n ln(1 − exp(−θ τ)), with θ already divided by the reducing
 * temperature. `cp0`: cp⁰/R = constant + Σ n T^e + Σ n (θ/T)² exp(θ/T)/(exp(θ/T) − 1)², with θ in K.
 */
export type IdealPart =
  | {
      readonly form: "alpha0";
      /** Coefficient of ln τ. */
      readonly logTau: number;
      /** Rows [n, t]. */
      readonly power: readonly (readonly [n: number, t: number])[];
      /** Rows [n, θ/Tr]. */
      readonly planckEinstein: readonly (readonly [n: number, theta: number])[];
    }
  | {
      readonly form: "cp0";
      /** Constant part of cp⁰/R. */
      readonly constant: number;
      /** Rows [n, e], T in K. */
      readonly power: readonly (readonly [n: number, e: number])[];
      /** Rows [n, θ], θ in K. */
      readonly planckEinstein: readonly (readonly [n: number, theta: number])[];
    };

/** Residual part of a Helmholtz equation: rows of coefficients for each form of term. */
export interface ResidualPart {
  /** `[n, t, d, l]`: n τ^t δ^d exp(−δ^l); l = 0 means no exponential. */
  readonly power: readonly (readonly [n: number, t: number, d: number, l: number])[];
  /** `[n, t, d, l, m, g, k]`: n τ^t δ^d exp(−g δ^l − k τ^m); l = 0 leaves the factor of δ out. */
  readonly doubleExp?: readonly (readonly [
    n: number,
    t: number,
    d: number,
    l: number,
    m: number,
    g: number,
    k: number,
  ])[];
  /** `[n, t, d, η, β, γ, ε]`: n τ^t δ^d exp(−η(δ − ε)² − β(τ − γ)²). */
  readonly gaussian?: readonly (readonly [
    n: number,
    t: number,
    d: number,
    eta: number,
    beta: number,
    gamma: number,
    epsilon: number,
  ])[];
  /** `[n, t, d, η, β, γ, ε, b]`: n τ^t δ^d exp(−η(δ − ε)² + 1/(β(τ − γ)² + b)). */
  readonly reciprocalBell?: readonly (readonly [
    n: number,
    t: number,
    d: number,
    eta: number,
    beta: number,
    gamma: number,
    epsilon: number,
    b: number,
  ])[];
  /** `[n, a, b, B, C, D, A, β]`: n Δ^b δ ψ, the terms that bend isotherms at a critical point. */
  readonly nonAnalytic?: readonly (readonly [
    n: number,
    a: number,
    b: number,
    B: number,
    C: number,
    D: number,
    A: number,
    beta: number,
  ])[];
}

/**
 * Everything needed to compute with one pure refrigerant: a plain literal, so that a bundler can drop the others.
 * The literals of `dewline/fluids/*` are made from `data/fluids/` by `scripts/build-fluids`.
 */
export interface Fluid {
  /** Designation of ISO 817, such as `R-32`. */
  readonly designation: string;
  /** Short name of the equation of state: first author and year, such as `tillner-roth-1997`. */
  readonly equation: string;
  /** Chemical name. */
  readonly name: string;
  /** Other names it is asked for by. */
  readonly synonyms: readonly string[];
  /** Chemical formula. */
  readonly formula: string;
  /** CAS registry number. */
  readonly cas: string;
  /** Molar mass, kg/mol. */
  readonly molarMass: number;
  /** The molar gas constant that the equation was fitted with, J/(mol K); not today's value. */
  readonly gasConstant: number;
  /** Reducing point of the equation: temperature in K, density in mol/m3. */
  readonly reducing: { readonly temperature: number; readonly density: number };
  /** Critical point as published: K, mol/m3, Pa. */
  readonly critical: { readonly temperature: number; readonly density: number; readonly pressure: number };
  /** Range of validity: lowest temperature (triple point, or the paper's limit) and highest, K; highest pressure, Pa. */
  readonly limits: {
    readonly minimumTemperature: number;
    readonly maximumTemperature: number;
    readonly maximumPressure: number;
  };
  /** Acentric factor as published. */
  readonly acentricFactor: number;
  /** Zero of enthalpy and entropy used unless the caller asks for another. */
  readonly referenceState: "iir" | "nbp";
  /** Ideal-gas part. */
  readonly ideal: IdealPart;
  /** Residual part. */
  readonly residual: ResidualPart;
  /** Full citations, the equation of state first. */
  readonly sources: readonly string[];
  /** What a careful user should know: doubts, corrected digits, limits of trust. */
  readonly notes: readonly string[];
}
