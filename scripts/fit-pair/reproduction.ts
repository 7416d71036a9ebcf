import { findPairIn, type Pair } from "../../src/catalogue/index.js";
import { assumedPairs, compare, type FitResult, type FittedParameter, modelsWith } from "./fit.js";
import { type FitDescription, parametersIn } from "./fit-schema.js";

/** How far a fit comes out from what is filed of its pairs. */
export interface Reproduction {
  readonly parameters: readonly (FittedParameter & {
    readonly filed: number;
    /** Fitted less filed, in standard errors. */
    readonly errors: number;
  })[];
  /** Where fitted and filed pairs differ most in what they were fitted to, in the uncertainty of that. */
  readonly change: { readonly where: string; readonly uncertainties: number };
  /** Whether that is rounding: every parameter within its standard error, or every point within half its uncertainty. */
  readonly isReproduced: boolean;
}

/**
 * Compares a fit with what is filed of its pairs.
 *
 * @param filed - Where to look for its pairs first.
 * @param pairs - All others.
 * @returns Undefined where nothing is filed of one of its pairs, or another form of reducing functions.
 */
export function reproductionOf(
  description: Pick<FitDescription, "free" | "assumed">,
  { parameters, comparisons }: FitResult,
  filed: readonly Pair[],
  pairs: readonly Pair[],
): Reproduction | undefined {
  const filedFree = description.free.map(({ between, form }) => {
    const found = findPairIn(filed, ...between);
    return found?.reducing.form === form ? found : undefined;
  });
  if (filedFree.includes(undefined)) return undefined;
  const known = filedFree as readonly Pair[];
  const compared = parameters.map((parameter) => {
    const pair = findPairIn(known, ...parameter.between)!;
    const value = parametersIn(pair)[parameter.name]!;
    return { ...parameter, filed: value, errors: (parameter.value - value) / parameter.error };
  });
  const models = modelsWith([...known, ...assumedPairs(description, pairs)], pairs);
  const points = [...new Set(comparisons.map(({ point }) => point))];
  const changes = compare(models, points).map(({ point, value }, k) => ({
    where: `${point.name} ${point.kind}`,
    uncertainties: (comparisons[k]!.value - value) / comparisons[k]!.uncertainty,
  }));
  const [change] = changes.sort((a, b) => Math.abs(b.uncertainties) - Math.abs(a.uncertainties));
  return {
    parameters: compared,
    change: change!,
    isReproduced:
      compared.every(({ errors }) => Math.abs(errors) <= 1) || Math.abs(change!.uncertainties) <= 0.5,
  };
}
