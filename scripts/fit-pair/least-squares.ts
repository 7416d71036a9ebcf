/** Where a sum of squares is least. */
export interface Minimum {
  readonly parameters: readonly number[];
  readonly residuals: readonly number[];
  /** Inverse of JᵀJ there: covariances of the parameters if the residuals have unit variance. */
  readonly covariance: readonly (readonly number[])[];
}

const mostSteps = 100;
/** A step this small, in units of the scales, is the last. */
const last = 1e-9;
/** Half a difference, in units of the scales. */
const half = 1e-3;
const firstDamping = 1e-3;
const mostDamping = 1e8;

/**
 * Least squares by the method of Levenberg and Marquardt with central differences.
 *
 * @param residualsAt - Residuals at a set of parameters, undefined where there are none; they must exist around the start.
 * @param start - First parameters.
 * @param scales - A change of each parameter that is small and yet makes a difference.
 * @returns The minimum, or undefined where the residuals do not determine the parameters.
 */
export function leastSquares(
  residualsAt: (parameters: readonly number[]) => readonly number[] | undefined,
  start: readonly number[],
  scales: readonly number[],
): Minimum | undefined {
  let parameters = start;
  let residuals = existing(residualsAt(parameters), parameters);
  let damping = firstDamping;
  for (let step = 0; step < mostSteps; step++) {
    const columns = jacobian(residualsAt, parameters, scales);
    const normal = columns.map((left) => columns.map((right) => product(left, right)));
    const gradient = columns.map((column) => product(column, residuals));
    let length: number;
    do {
      const damped = normal.map((row, i) => row.map((value, j) => (i === j ? value * (1 + damping) : value)));
      const inverse = inverseOf(damped);
      if (inverse === undefined) return undefined;
      const change = inverse.map((row) => -product(row, gradient));
      length = Math.max(...change.map(Math.abs));
      const trial = parameters.map((value, i) => value + change[i]! * scales[i]!);
      const found = residualsAt(trial);
      if (found !== undefined && product(found, found) <= product(residuals, residuals)) {
        parameters = trial;
        residuals = found;
        damping /= 10;
        break;
      }
      damping *= 10;
    } while (length > last && damping < mostDamping);
    if (length <= last || damping >= mostDamping) {
      const inverse = inverseOf(normal);
      const covariance = inverse?.map((row, i) => row.map((value, j) => value * scales[i]! * scales[j]!));
      return covariance && { parameters, residuals, covariance };
    }
  }
  throw new Error(`the fit did not settle within ${mostSteps} steps, at ${parameters.join(", ")}`);
}

/** Derivatives by each parameter in units of its scale. */
function jacobian(
  residualsAt: (parameters: readonly number[]) => readonly number[] | undefined,
  parameters: readonly number[],
  scales: readonly number[],
): readonly (readonly number[])[] {
  return parameters.map((_, moved) => {
    const [above, below] = [half, -half].map((by) => {
      const beside = parameters.map((value, i) => (i === moved ? value + by * scales[i]! : value));
      return existing(residualsAt(beside), beside);
    });
    return above!.map((value, k) => (value - below![k]!) / (2 * half));
  });
}

function existing(residuals: readonly number[] | undefined, at: readonly number[]): readonly number[] {
  if (residuals === undefined) throw new Error(`some point has no equilibrium at ${at.join(", ")}`);
  return residuals;
}

function product(left: readonly number[], right: readonly number[]): number {
  return left.reduce((sum, value, i) => sum + value * right[i]!, 0);
}

/** Inverse of a symmetric positive matrix by way of its triangular root; undefined where it is singular. */
function inverseOf(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] | undefined {
  const root: number[][] = matrix.map(() => []);
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      const rest = matrix[i]![j]! - product(root[i]!.slice(0, j), root[j]!);
      // What is left of a diagonal after rounding is nothing.
      if (i === j && !(rest > 1e-12 * matrix[i]![i]!)) return undefined;
      root[i]![j] = i === j ? Math.sqrt(rest) : rest / root[j]![j]!;
    }
  }
  return matrix.map((_, column) => {
    const solution = matrix.map((_, i) => (i === column ? 1 : 0));
    for (let i = 0; i < solution.length; i++) {
      for (let j = 0; j < i; j++) solution[i]! -= root[i]![j]! * solution[j]!;
      solution[i]! /= root[i]![i]!;
    }
    for (let i = solution.length - 1; i >= 0; i--) {
      for (let j = i + 1; j < solution.length; j++) solution[i]! -= root[j]![i]! * solution[j]!;
      solution[i]! /= root[i]![i]!;
    }
    return solution;
  });
}
