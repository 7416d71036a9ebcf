import {
  attempt,
  type DewlineError,
  InputError,
  type Problem,
  parseAbsolutePressure,
  parseDuration,
  parseTemperature,
} from "../../../units/index.js";
import type { Stated } from "../form/stated.js";
import { explicitAbsolutePressure, explicitGaugePressure } from "./explicit-pressure.js";

/** A logged series as a table of text: the caller reads the file, in whatever way its format asks for. */
export interface LogTable {
  /** Names of the columns, each with its unit in brackets, such as `pressure (MPa gauge)`. */
  readonly header: readonly string[];
  /** Cells of each row, in the order of the columns. */
  readonly rows: readonly (readonly string[])[];
}

/** What a column may hold: how it is read, and its SI unit. */
interface ColumnKind {
  readonly parse: (text: string) => number;
  readonly unit: string;
}

/** Names of the columns that are understood. */
export type LogColumn = "time" | "pressure" | "pipe temperature" | "temperature" | "barometer";

function columnKinds(kind: "gauge" | "absolute"): Readonly<Record<LogColumn, ColumnKind>> {
  return {
    time: { parse: parseDuration, unit: "s" },
    pressure:
      kind === "gauge"
        ? { parse: explicitGaugePressure, unit: "Pa gauge" }
        : { parse: explicitAbsolutePressure, unit: "Pa" },
    "pipe temperature": { parse: parseTemperature, unit: "K" },
    temperature: { parse: parseTemperature, unit: "K" },
    barometer: { parse: parseAbsolutePressure, unit: "Pa" },
  };
}

/** One row of a log. */
export type LogRow = Readonly<Partial<Record<LogColumn, Stated<number>>>>;

/**
 * Reads the rows of a log: every cell with the unit of its column.
 *
 * A log is taken whole or not at all: an empty or unreadable cell is a problem, never a row that is left out.
 *
 * @param kind - Whether its pressures are gauge or absolute; the unit in the header has to agree.
 * @param problems - Where to add what is wrong.
 */
export function readLog(
  table: LogTable,
  path: string,
  kind: "gauge" | "absolute",
  required: readonly LogColumn[],
  problems: Problem[],
): readonly LogRow[] {
  const kinds = columnKinds(kind);
  const columns = table.header.map((title, index) =>
    readTitle(title, kinds, `${path}.header[${index}]`, problems),
  );
  if (table.header.length === 1 && table.header[0]!.includes(";")) {
    problems.push({
      path: `${path}.header`,
      value: table.header[0],
      expected: "columns separated by commas",
    });
    return [];
  }
  for (const name of required) {
    const count = columns.filter((column) => column?.name === name).length;
    if (count === 0) {
      problems.push({
        path: `${path}.header`,
        value: table.header.join(),
        expected: `a column "${name} (unit)"`,
      });
    }
  }
  columns.forEach((column, index) => {
    if (columns.findIndex((other) => other !== undefined && other.name === column?.name) < index && column) {
      problems.push({
        path: `${path}.header[${index}]`,
        value: table.header[index],
        expected: `one column "${column.name}"`,
      });
    }
  });
  if (table.rows.length < 2) {
    problems.push({ path: `${path}.rows`, value: table.rows.length, expected: "two rows or more" });
  }
  return table.rows.map((cells, row) => {
    const found: Partial<Record<LogColumn, Stated<number>>> = {};
    // Row 0 stands in the second line of the file.
    const line = `(line ${row + 2})`;
    if (cells.length !== columns.length) {
      const expected = `${columns.length} cells ${line}`;
      problems.push({ path: `${path}.rows[${row}]`, value: cells.join(), expected });
    }
    columns.forEach((column, index) => {
      const cell = cells[index];
      if (column === undefined || cell === undefined) return;
      const text = `${cell.trim()} ${column.unit}`;
      const { parse, unit } = kinds[column.name];
      const read = attempt(() => parse(text));
      if (read.ok) {
        found[column.name] = { si: read.value, unit, text };
        return;
      }
      const expected = `${expectedBy(read.error)} ${line}`;
      problems.push({ path: `${path}.rows[${row}].${column.name}`, value: cell, expected });
    });
    return found;
  });
}

function expectedBy(error: DewlineError): string {
  return error instanceof InputError ? error.problems[0]!.expected : error.message;
}

/** The name and unit of a column, or undefined where the title says neither, or not both. */
function readTitle(
  title: string,
  kinds: Readonly<Record<LogColumn, ColumnKind>>,
  path: string,
  problems: Problem[],
): { readonly name: LogColumn; readonly unit: string } | undefined {
  const known = Object.keys(kinds);
  const [, written = "", unit = ""] = /^\s*([^()]+?)\s*\(([^()]+)\)\s*$/.exec(title) ?? [];
  const name = written.toLowerCase();
  if (!known.includes(name)) {
    const expected = `one of ${known.join(", ")}, with its unit in brackets, such as "time (min)"`;
    problems.push({ path, value: title, expected });
    return undefined;
  }
  // A unit that no number can have is one problem here, not one in every cell.
  const trial = attempt(() => kinds[name as LogColumn].parse(`300 ${unit}`));
  if (trial.ok) return { name: name as LogColumn, unit };
  problems.push({ path, value: title, expected: expectedBy(trial.error) });
  return undefined;
}
