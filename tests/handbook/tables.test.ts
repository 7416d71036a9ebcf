import { afterAll, describe, expect, test } from "vitest";
import { type Comparison, compareTable } from "./comparisons.js";
import { exceptionFor, readExceptions } from "./exceptions.js";
import { findProblems } from "./problems.js";
import { readTables } from "./rows.js";
import { worstByFluid } from "./worst-by-fluid.js";

/*
 * Every printed table of this folder, each row with its source; the tolerances are those of the sources. Blends are held to
 * the same: nothing is added for how well their mixing is known, so what lies outside for that is an exception.
 */

const exceptions = readExceptions();
const tables = readTables();
const compared: Comparison[] = [];

describe.each([...new Set(tables.map(({ fluid }) => fluid))])("%s", (fluid) => {
  test.each(tables.filter((table) => table.fluid === fluid).map((table) => [table.source, table] as const))(
    "%s",
    (_, table) => {
      const comparisons = compareTable(table);
      compared.push(...comparisons);
      expect(comparisons.length).toBeGreaterThanOrEqual(table.rows.length);
      expect(findProblems(comparisons)).toEqual([]);
    },
  );
});

test("the tables are of these fluids", () => {
  expect([...new Set(tables.map(({ fluid }) => fluid))]).toEqual([
    ..."R-22 R-32 R-125 R-134a R-143a R-152a R-290 R-404A R-407C R-410A R-448A R-449A R-452B".split(" "),
    ..."R-454B R-454C R-455A R-507A R-513A R-600a R-717 R-744 R-1234yf R-1234ze(E) R-1270".split(" "),
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
