import { type Comparison, describeComparison } from "./comparisons.js";
import { type Exceptions, exceptionFor, isStillThere, readExceptions } from "./exceptions.js";
import { type Limits, limitFor, readLimits, sizeOf } from "./limits.js";

/** What is wrong with each of some comparisons, if anything: tolerances, explained exceptions, worst deviations so far. */
export function findProblems(comparisons: readonly Comparison[]): readonly string[] {
  const exceptions = readExceptions();
  const limits = readLimits();
  return comparisons
    .map((comparison) => problemOf(comparison, exceptions, limits))
    .filter((problem) => problem !== undefined);
}

function problemOf(comparison: Comparison, exceptions: Exceptions, limits: Limits): string | undefined {
  const { deviation, allowed } = comparison;
  const isInside = Math.abs(deviation) <= allowed;
  const exception = exceptionFor(exceptions, comparison);
  if (exception !== undefined) {
    if (isInside) return describeComparison(comparison, allowed, "an exception that is none any more");
    if (isStillThere(deviation, exception)) return undefined;
    return describeComparison(comparison, Number(exception.deviation), "as explained in exceptions.json");
  }
  if (!isInside) return describeComparison(comparison, allowed, "tolerance of the source");
  const limit = limitFor(limits, comparison);
  if (limit === undefined)
    return `${describeComparison(comparison, allowed, "of the source")}: no limit kept`;
  if (!(sizeOf(comparison) <= limit)) return describeComparison(comparison, limit, "worst deviation so far");
  return undefined;
}
