import { estimatePair, type Fluid, findPairIn, type Pair } from "../../src/catalogue/index.js";
import type { PairOf } from "../../src/equation/index.js";
import { MixtureModel } from "../../src/equilibrium/mixture/index.js";
import { InputError } from "../../src/units/index.js";
import { comparedIn, type Difference, differencesOf } from "./differences.js";
import { type FitDescription, parametersOf, reducingOf } from "./fit-schema.js";
import { leastSquares } from "./least-squares.js";
import { type EquilibriumPoint, shiftedPoints } from "./points.js";

/** What a fit is made with. */
export interface FitInput {
  readonly description: Pick<FitDescription, "free" | "assumed">;
  readonly points: readonly EquilibriumPoint[];
  /** Points the result is only compared with. */
  readonly against: readonly EquilibriumPoint[];
  /** The pairs there are; of two fluids without one the pair is estimated from their classes. */
  readonly pairs: readonly Pair[];
}

/** One comparison of the fitted model with a point. */
export interface Comparison extends Difference {
  readonly point: EquilibriumPoint;
  /** Standard uncertainty from those of all that was given. */
  readonly uncertainty: number;
}

/** A parameter as fitted. */
export interface FittedParameter {
  readonly between: readonly [string, string];
  readonly name: string;
  readonly value: number;
  /** Standard error, from the stated uncertainties alone. */
  readonly error: number;
  readonly start: number;
  readonly spread?: number;
}

export interface FitResult {
  readonly parameters: readonly FittedParameter[];
  /** The fitted pairs, with whatever departure function they had. */
  readonly pairs: readonly Pair[];
  readonly comparisons: readonly Comparison[];
  readonly against: readonly Comparison[];
  /** The models with the fitted pairs. */
  readonly models: Models;
  /** Sum of squares over degrees of freedom, priors counted as data; 1 for as many data as parameters. */
  readonly scatter: number;
}

/** Uncertainties depend on the model a little: a fit is repeated with new ones until they settle. */
const mostRounds = 10;
const settled = 1e-3;

/**
 * Fits parameters to points by weighted least squares.
 *
 * Standard errors are those of the stated uncertainties: where the scatter is more than they explain, the true ones are
 * wider by its root.
 *
 * @throws Where the points do not determine the parameters, or the model has no equilibrium at one of them.
 */
export function fitPairs({ description, points, against, pairs }: FitInput): FitResult {
  const { free } = description;
  const unknowns = free.flatMap(({ between, form, fitted }) =>
    parametersOf[form].flatMap(({ name, scale }) => {
      const wanted = fitted[name];
      return wanted === undefined ? [] : [{ between, name, ...wanted, scale }];
    }),
  );
  const trialPairs = (values: readonly number[]): readonly Pair[] =>
    free.map(({ between, form, fixed }) => {
      const own = unknowns.flatMap((unknown, i) =>
        unknown.between === between ? [[unknown.name, values[i]!] as const] : [],
      );
      const reducing = reducingOf(form, { ...fixed, ...Object.fromEntries(own) });
      return withReducing(pairs, between, reducing);
    });
  const assumed = assumedPairs(description, pairs);
  const modelsAt = (values: readonly number[]): Models =>
    modelsWith([...trialPairs(values), ...assumed], pairs);

  let values: readonly number[] = unknowns.map(({ start }) => start);
  let weights = uncertaintiesOf(modelsAt(values), points);
  for (let round = 0; round < mostRounds; round++) {
    const found = leastSquares(
      (trial) => weightedResiduals(modelsAt(trial), points, weights, priorResiduals(unknowns, trial)),
      values,
      unknowns.map(({ scale }) => scale),
    );
    if (found === undefined) {
      const names = unknowns.map(({ between, name }) => `${name} of ${between.join("/")}`);
      throw new Error(`these points do not determine ${names.join(", ")}`);
    }
    values = found.parameters;
    const models = modelsAt(values);
    const before = weights;
    weights = uncertaintiesOf(models, points);
    if (weights.some((weight, i) => Math.abs(weight / before[i]! - 1) > settled)) continue;
    const freedom = found.residuals.length - values.length;
    const squares = found.residuals.reduce((sum, residual) => sum + residual ** 2, 0);
    const scatter = freedom > 0 ? squares / freedom : 1;
    return {
      parameters: unknowns.map(({ scale: _, ...unknown }, i) => ({
        ...unknown,
        value: values[i]!,
        error: Math.sqrt(found.covariance[i]![i]!),
      })),
      pairs: trialPairs(values),
      comparisons: compare(models, points),
      against: compare(models, against),
      models,
      scatter,
    };
  }
  throw new Error("the uncertainties of the points do not settle");
}

/** Finds the model of a set of fluids. */
export type Models = (fluids: readonly Fluid[]) => MixtureModel;

/** The pairs that a fit takes to be something else than the catalogue does. */
export function assumedPairs(
  { assumed }: Pick<FitDescription, "assumed">,
  pairs: readonly Pair[],
): readonly Pair[] {
  return assumed.map(({ between, reducing }) => withReducing(pairs, between, reducing));
}

/** Models with pairs of which the first ones come before the catalogue's; made once for each set of fluids. */
export function modelsWith(substitutes: readonly Pair[], pairs: readonly Pair[]): Models {
  const pairOf: PairOf = (first, second) => {
    const names = [first.designation, second.designation] as const;
    const found =
      findPairIn(substitutes, ...names) ?? findPairIn(pairs, ...names) ?? estimatePair(first, second);
    if (found === undefined) {
      throw new InputError([
        { path: "free", value: names.join("/"), expected: "this pair too, for nothing is known of it" },
      ]);
    }
    return found;
  };
  const made = new Map<string, MixtureModel>();
  return (fluids) => {
    const key = fluids.map(({ designation }) => designation).join();
    const known = made.get(key) ?? new MixtureModel(fluids, pairOf);
    made.set(key, known);
    return known;
  };
}

/**
 * Every comparison of points with a model, with uncertainties.
 *
 * @param inPressure - Whether bubble and dew points are compared in pressure, whatever is uncertain of them.
 */
export function compare(
  models: Models,
  points: readonly EquilibriumPoint[],
  inPressure = false,
): readonly Comparison[] {
  return points.flatMap((point) => {
    const compared = inPressure ? "pressure" : comparedIn(point);
    const differences = existing(models, point, compared);
    const shifted = shiftedPoints(point).map((beside) => existing(models, beside, compared));
    return differences.map((difference, k) => ({
      ...difference,
      point,
      uncertainty: Math.hypot(...shifted.map((beside) => beside[k]!.value - difference.value)),
    }));
  });
}

function uncertaintiesOf(models: Models, points: readonly EquilibriumPoint[]): readonly number[] {
  return compare(models, points).map(({ uncertainty }) => uncertainty);
}

function existing(
  models: Models,
  point: EquilibriumPoint,
  compared: "temperature" | "pressure",
): readonly Difference[] {
  const found = differencesOf(models(point.fluids), point, compared);
  if (found === undefined)
    throw new Error(`the model has no equilibrium like the ${point.kind} of ${point.name}`);
  return found;
}

function weightedResiduals(
  models: Models,
  points: readonly EquilibriumPoint[],
  weights: readonly number[],
  more: readonly number[],
): readonly number[] | undefined {
  const differences: Difference[] = [];
  for (const point of points) {
    const found = differencesOf(models(point.fluids), point);
    if (found === undefined) return undefined;
    differences.push(...found);
  }
  return [...differences.map(({ value }, k) => value / weights[k]!), ...more];
}

function priorResiduals(
  unknowns: readonly { readonly start: number; readonly spread?: number }[],
  values: readonly number[],
): readonly number[] {
  return unknowns.flatMap(({ start, spread }, i) =>
    spread === undefined ? [] : [(values[i]! - start) / spread],
  );
}

/** A pair with other reducing functions, and the departure function it has, if any. */
function withReducing(pairs: readonly Pair[], between: Pair["between"], reducing: Pair["reducing"]): Pair {
  const { departure } = findPairIn(pairs, ...between) ?? {};
  return {
    between,
    grade: "regressed",
    reducing,
    ...(departure && { departure }),
    deviation: { relative: 1, basis: "a trial" },
    sources: [],
    notes: [],
  };
}
