import { InputCheck } from "../../units/index.js";

/** Coverage factor of every expanded uncertainty: about 95 % for a normal distribution. */
export const COVERAGE_FACTOR = 2;

/** One input of a result with what it is not sure of. */
export interface UncertainInput {
  /** Which input, such as `gauge` or `thermometer`. */
  readonly input: string;
  /** Standard uncertainty of the input, in its own SI unit. */
  readonly standardUncertainty: number;
  /** SI unit of the input. */
  readonly unit: string;
  /** How far the result moves with the input: ∂result/∂input. */
  readonly sensitivity: number;
  /** Where the standard uncertainty comes from. */
  readonly because: string;
}

/** A line of an uncertainty budget. */
export interface Contribution extends UncertainInput {
  /** Standard uncertainty that this input gives to the result, in the unit of the result. */
  readonly contribution: number;
  /** Its part of the variance of the result, 0 to 1. */
  readonly share: number;
}

/** How sure a result is, and why. */
export interface Uncertainty {
  /** Standard uncertainty, in the unit of the result. */
  readonly standardUncertainty: number;
  /** Expanded uncertainty, in the unit of the result. */
  readonly expandedUncertainty: number;
  /** Factor between the two. */
  readonly coverageFactor: typeof COVERAGE_FACTOR;
  /** Each contribution, as given. */
  readonly budget: readonly Contribution[];
}

/**
 * Combines independent inputs: u² = Σ (cᵢ uᵢ)², U = 2 u.
 *
 * @throws {@link InputError} `malformed-input` for numbers that are not finite or an uncertainty below 0.
 * @source JCGM 100:2008 (GUM), equation (10), first order
 */
export function combineUncertainties(inputs: readonly UncertainInput[]): Uncertainty {
  const check = new InputCheck();
  for (const [index, { standardUncertainty, sensitivity }] of inputs.entries()) {
    check.notNegative(`inputs[${index}].standardUncertainty`, standardUncertainty);
    check.finite(`inputs[${index}].sensitivity`, sensitivity);
  }
  check.finish();
  const contributions = inputs.map((input) => Math.abs(input.sensitivity) * input.standardUncertainty);
  const variance = contributions.reduce((sum, each) => sum + each * each, 0);
  const standardUncertainty = Math.sqrt(variance);
  return {
    standardUncertainty,
    expandedUncertainty: COVERAGE_FACTOR * standardUncertainty,
    coverageFactor: COVERAGE_FACTOR,
    budget: inputs.map((input, index) => {
      const contribution = contributions[index]!;
      return { ...input, contribution, share: variance === 0 ? 0 : (contribution * contribution) / variance };
    }),
  };
}
