/** A Chebyshev series on an interval. */
export interface ChebyshevSeries {
  readonly low: number;
  readonly high: number;
  readonly coefficients: Float64Array;
}

/** The points at which {@link chebyshevThrough} wants values: from `high` down to `low`, both included. */
export function chebyshevNodes(low: number, high: number, count: number): Float64Array {
  const nodes = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    nodes[k] = (high + low) / 2 + ((high - low) / 2) * Math.cos((Math.PI * k) / (count - 1));
  }
  return nodes;
}

/** The series that passes through values given at {@link chebyshevNodes}. */
export function chebyshevThrough(low: number, high: number, values: Float64Array): ChebyshevSeries {
  const last = values.length - 1;
  const coefficients = new Float64Array(values.length);
  for (let j = 0; j <= last; j++) {
    let sum = (values[0]! + values[last]! * (j % 2 === 0 ? 1 : -1)) / 2;
    for (let k = 1; k < last; k++) sum += values[k]! * Math.cos((Math.PI * j * k) / last);
    coefficients[j] = ((j === 0 || j === last ? 1 : 2) / last) * sum;
  }
  return { low, high, coefficients };
}

/** Sums a series by Clenshaw's recurrence. */
export function chebyshevAt({ low, high, coefficients }: ChebyshevSeries, x: number): number {
  const twice = (4 * x - 2 * (low + high)) / (high - low);
  let next = 0;
  let nextButOne = 0;
  for (let j = coefficients.length - 1; j > 0; j--) {
    const sum = coefficients[j]! + twice * next - nextButOne;
    nextButOne = next;
    next = sum;
  }
  return coefficients[0]! + (twice / 2) * next - nextButOne;
}
