import { answers, type Region } from "./answers.js";
import { isFittedTo } from "./listings.js";
import type { Row, Table, Values } from "./rows.js";

/** One printed value beside what Dewline gives. */
export interface Comparison {
  readonly id: string;
  readonly fluid: string;
  readonly equation: string;
  readonly source: string;
  readonly status: Row["status"];
  readonly region: Region;
  readonly property: string;
  /** What was looked up, SI. */
  readonly inputs: Values;
  readonly expected: number;
  readonly computed: number;
  /** Computed less expected: over the expected if relative, else in the SI unit of the property. */
  readonly deviation: number;
  readonly isRelative: boolean;
  /** True if a mixing parameter of the blend was fitted to this number: that it is met proves nothing. */
  readonly isFitted: boolean;
  /** What the source's rounding and uncertainty allow. */
  readonly allowed: number;
}

/** Every value of a table, by every equation of the fluid. */
export function compareTable({ rows }: Table): readonly Comparison[] {
  return rows.flatMap((row) => {
    const { id, fluid, source, status, inputs, tolerance = {}, absTolerance = {} } = row;
    return answers(row).flatMap(({ equation, region, value }) =>
      Object.entries(row.expected).map(([property, expected]): Comparison => {
        const [relative, absolute] = [tolerance[property], absTolerance[property]];
        const allowed = relative ?? absolute;
        if (allowed === undefined || (relative !== undefined && absolute !== undefined)) {
          throw new Error(`${id}: ${property} wants one tolerance, relative or absolute`);
        }
        const computed = value(property);
        const difference = computed - expected;
        return {
          ...{ id, fluid, equation, source, status, inputs, property, expected, computed, allowed },
          region: region(property),
          deviation: relative === undefined ? difference : difference / expected,
          isRelative: relative !== undefined,
          isFitted: isFittedTo(row),
        };
      }),
    );
  });
}

/** What a failing comparison says: all that is needed to look into it. */
export function describeComparison(comparison: Comparison, allowed: number, why: string): string {
  const { id, equation, property, inputs, computed, expected, deviation, isRelative } = comparison;
  const at = Object.entries(inputs).map(([name, value]) => ` ${name} ${value}`);
  return (
    `${id} by ${equation}: ${property}${at.length === 0 ? "" : ` at${at.join(",")}`}: ` +
    `got ${computed}, expected ${expected}, deviates by ${deviation.toExponential(3)}` +
    `${isRelative ? "" : " (SI unit)"}, allowed ${allowed} (${why})`
  );
}
