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
  return {
    slope,
    meanY,
    meanX,
    slopeError: n > 2 ? Math.sqrt(squares / (n - 2) / sxx) : Number.NaN,
    correlation: squares > 0 ? products / squares : 0,
  };
}
