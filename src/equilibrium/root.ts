/** A function's value and slope at a point; a slope that means nothing, beside an infinite value, is NaN. */
export interface Sample {
  value: number;
  slope: number;
}

/** More steps than bisection alone needs on doubles would be 1074; a bracketed search is over long before this. */
const mostSteps = 200;

/** A Newton step this small, relative, is rounding. */
const finest = 2 ** -52;
/** Below this a Newton step that no longer shrinks shows the noise of the function, and the search is over. */
const fine = 1e-12;
/** A root that lies beyond an end by less than this, relative, lies at the end: the function's rounding put it there. */
const endRounding = 1e-10;

/**
 * The root of a rising function between `low` and `high`: Newton's method where it makes good progress, bisection
 * where it does not.
 *
 * Where only one side of the root has been seen the search widens step by step towards the other end, because far
 * from its range an equation may be nonsense. Returns −Infinity when the function is above zero even at `low`,
 * +Infinity when it is below zero even at `high`, NaN when the steps run out. A finite answer is always the point
 * that was sampled last, so a caller may keep what it found there.
 */
export function findRoot(
  sample: (x: number, out: Sample) => void,
  low: number,
  high: number,
  start: number,
): number {
  const at: Sample = { value: 0, slope: 0 };
  let below = low;
  let above = high;
  let belowSeen = false;
  let aboveSeen = false;
  let widening = (high - low) / 32;
  let x = Math.min(Math.max(start, low), high);
  let lastStep = Number.POSITIVE_INFINITY;
  for (let count = 0; count < mostSteps; count++) {
    sample(x, at);
    const { value } = at;
    if (value === 0) return x;
    const step = at.slope > 0 ? -value / at.slope : Number.NaN;
    const size = Math.abs(step);
    if (value < 0) {
      if (x >= high) return size <= endRounding * Math.abs(x) ? x : Number.POSITIVE_INFINITY;
      below = x;
      belowSeen = true;
    } else {
      if (x <= low) return size <= endRounding * Math.abs(x) ? x : Number.NEGATIVE_INFINITY;
      above = x;
      aboveSeen = true;
    }
    if (size <= finest * Math.abs(x)) return x;
    if (size < fine * Math.abs(x) && size >= Math.abs(lastStep) / 2) return x;
    let next = x + step;
    const bracketed = belowSeen && aboveSeen;
    if (!(next > below && next < above) || (bracketed && size > Math.abs(lastStep) / 2)) {
      if (bracketed) {
        next = below + (above - below) / 2;
      } else {
        widening *= 2;
        next = value < 0 ? Math.min(high, x + widening) : Math.max(low, x - widening);
      }
    }
    if (bracketed && (next === below || next === above)) return x;
    lastStep = next - x;
    x = next;
  }
  return Number.NaN;
}
