import { studentFactor } from "./student.js";

/** A straight line through points, with what its residuals say. */
export interface StraightLine {
  /** Rise of y per x. */
  readonly slope: number;
  /** y at the mean of x. */
  readonly meanY: number;
  /** Mean of x. */
  readonly meanX: number;
  /** Standard error of the slope from the scatter of the residuals as if independent; NaN for fewer than 3 points. */
  readonly slopeError: number;
  /** Standard deviation of the residuals, as if independent; NaN for fewer than 3 points. */
  readonly scatter: number;
  /** Correlation of each residual with the next, −1 to 1; 0 when there is no scatter. */
  readonly correlation: number;
}

/**
 * Least-squares line through points; sums are taken about the means, so that large times do no harm.
 *
 * @param points - At least 2, not all at the same x.
 */
export function straightLine(points: readonly { readonly x: number; readonly y: number }[]): StraightLine {
  const n = points.length;
  const meanX = points.reduce((sum, { x }) => sum + x, 0) / n;
  const meanY = points.reduce((sum, { y }) => sum + y, 0) / n;
  let sxx = 0;
  let sxy = 0;
  for (const { x, y } of points) {
    sxx += (x - meanX) * (x - meanX);
    sxy += (x - meanX) * (y - meanY);
  }
  const slope = sxy / sxx;
  let squares = 0;
  let products = 0;
  let before = 0;
  for (const [index, { x, y }] of points.entries()) {
    const residual = y - meanY - slope * (x - meanX);
    squares += residual * residual;
    if (index > 0) products += residual * before;
    before = residual;
  }
  const variance = n > 2 ? squares / (n - 2) : Number.NaN;
  return {
    slope,
    meanY,
    meanX,
    slopeError: Math.sqrt(variance / sxx),
    scatter: Math.sqrt(variance),
    correlation: squares > 0 ? products / squares : 0,
  };
}

/** How sure the slope of a line is, when neighbours move together. */
export interface SlopeScatter {
  /** How many independent points the series is worth. */
  readonly effective: number;
  /** Student's factor for 95 %, with that many points. */
  readonly factor: number;
  /** How much wider the scatter is for that, 1 or above. */
  readonly lost: number;
  /** Half-width that holds the slope in 95 of 100 series. */
  readonly slopeHalfWidth: number;
}

/**
 * Scatter of the slope of a line through `n` points, at least 3: neighbours whose residuals follow one another with
 * correlation r count as n (1 − r)/(1 + r) points, at least 3.
 *
 * @source Santer, B. D., et al., J. Geophys. Res. 105 (2000) 7337 (recalled)
 */
export function slopeScatter(line: StraightLine, n: number): SlopeScatter {
  const r = Math.max(line.correlation, 0);
  const effective = Math.max((n * (1 - r)) / (1 + r), 3);
  const lost = Math.sqrt((n - 2) / (effective - 2));
  const factor = studentFactor(effective - 2);
  return { effective, factor, lost, slopeHalfWidth: factor * lost * line.slopeError };
}
