import { afterAll, describe, expect, test } from "vitest";
import { type Comparison, compareTable, describeComparison } from "./comparisons.js";
import { exceptionFor, isStillThere, readExceptions } from "./exceptions.js";
import { limitFor, readLimits, sizeOf } from "./limits.js";
import { readTables } from "./rows.js";
import { worstByFluid } from "./worst-by-fluid.js";

/* Every printed table of this folder, each row with its source; the tolerances are those of the sources. */

const exceptions = readExceptions();
const limits = readLimits();
const tables = readTables();
const compared: Comparison[] = [];

/** What is wrong with one comparison, if anything. */
function problemOf(comparison: Comparison): string | undefined {
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

describe.each([...new Set(tables.map(({ fluid }) => fluid))])("%s", (fluid) => {
  test.each(tables.filter((table) => table.fluid === fluid).map((table) => [table.source, table] as const))(
    "%s",
    (_, table) => {
      const comparisons = compareTable(table);
      compared.push(...comparisons);
      expect(comparisons.length).toBeGreaterThanOrEqual(table.rows.length);
      expect(comparisons.map(problemOf).filter((problem) => problem !== undefined)).toEqual([]);
    },
  );
});

test("the tables are of these fluids", () => {
  expect([...new Set(tables.map(({ fluid }) => fluid))]).toEqual([
    ..."R-22 R-32 R-125 R-134a R-143a R-152a R-290 R-404A R-407C R-410A R-507A R-600a R-717 R-744".split(" "),
    ..."R-1234yf R-1234ze(E) R-1270".split(" "),
  ]);
});

test("the exceptions are values of these tables, each named once", () => {
  const named = exceptions.tables.flatMap(({ values }) =>
    values.map(({ row, equation, property }) => `${row} ${equation} ${property}`),
  );
  const known = tables
    .flatMap(compareTable)
    .map(({ id, equation, property }) => `${id} ${equation} ${property}`);
  expect(new Set(named).size).toBe(named.length);
  expect(named.filter((name) => !known.includes(name))).toEqual([]);
});

afterAll(() => {
  console.log(worstByFluid(compared.filter((one) => exceptionFor(exceptions, one) === undefined)));
});
