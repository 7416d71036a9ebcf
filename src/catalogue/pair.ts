import type { ResidualPart } from "./fluid.js";

/**
 * How a pair's parameters came about: `published` in the literature, `regressed` to data or listings by us, or
 * `estimated` from the kind of substances alone. From the best to the worst.
 */
export type PairGrade = "published" | "regressed" | "estimated";

/**
 * Reducing temperature and molar volume of a pair of fluids i, j as functions of composition.
 *
 * `kunz-wagner`: the pair's share of Tr is 2 xᵢxⱼ βT γT (xᵢ + xⱼ)/(βT² xᵢ + xⱼ) √(TᵢTⱼ), of 1/ρr the same with βV, γV and
 * (ρᵢ^−⅓ + ρⱼ^−⅓)³/8. `lemmon-jacobsen`: Tr is Σ xᵢTᵢ with xᵢxⱼζ added, 1/ρr is Σ xᵢ/ρᵢ with xᵢxⱼξ added. Exchanging the
 * two fluids turns every β into 1/β.
 */
export type PairReducing =
  | {
      readonly form: "kunz-wagner";
      readonly betaT: number;
      readonly gammaT: number;
      readonly betaV: number;
      readonly gammaV: number;
    }
  | {
      readonly form: "lemmon-jacobsen";
      /** ζ, K. */
      readonly zeta: number;
      /** ξ, m3/mol. */
      readonly xi: number;
    };

/** A departure function αʳ(τ, δ); one may serve several pairs, each with a factor of its own. */
export interface DepartureFunction {
  /** Short name, such as `lemmon-jacobsen-2004-general`. */
  readonly name: string;
  /** Its terms, in the forms of a pure fluid's residual part. */
  readonly residual: ResidualPart;
}

/** Everything needed to mix two fluids: a plain literal. */
export interface Pair {
  /** Designations of both fluids; their order is that of β. */
  readonly between: readonly [string, string];
  /** How the parameters came about. */
  readonly grade: PairGrade;
  /** Reducing functions. */
  readonly reducing: PairReducing;
  /** Departure function with its factor F: xᵢxⱼ F αʳ(τ, δ) is added to the residual part. */
  readonly departure?: { readonly factor: number; readonly function: DepartureFunction };
  /** How far bubble and dew pressures computed with the pair may be off, relative, and on what that rests. */
  readonly deviation: { readonly relative: number; readonly basis: string };
  /** Full citations; empty for an estimate. */
  readonly sources: readonly string[];
  /** Doubts a careful user should know. */
  readonly notes: readonly string[];
}
