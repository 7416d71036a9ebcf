import { readdirSync, readFileSync } from "node:fs";

/** Values by name of property, SI. */
export type Values = Readonly<Record<string, number>>;

/** One row of a printed table, as kept in the JSON files of this folder; everything in SI. */
export interface Row {
  readonly id: string;
  readonly fluid: string;
  readonly kind: "saturation" | "bubble" | "dew" | "single-phase" | "constants";
  /** What the row is looked up by; empty for constants. */
  readonly inputs: Values;
  readonly expected: Values;
  /** Relative, from the rounding of the print and the uncertainty the source gives or shows. */
  readonly tolerance?: Values;
  /** In the unit of the property, where the zero of the scale is arbitrary. */
  readonly absTolerance?: Values;
  /** Zero of enthalpy and entropy of the table; null where the row has neither. */
  readonly referenceState: "iir" | "ashrae" | null;
  readonly source: string;
  readonly status: "read" | "recalled";
}

/** All rows of one fluid from one source. */
export interface Table {
  readonly fluid: string;
  readonly source: string;
  readonly status: Row["status"];
  readonly rows: readonly Row[];
}

/** Every table of this folder; the sub-folders have readers of their own. */
export function readTables(): readonly Table[] {
  const here = new URL("./", import.meta.url);
  const rows = readdirSync(here)
    .filter((file) => /^R-.*\.json$/.test(file))
    .sort((left, right) => numberOf(left) - numberOf(right) || (left < right ? -1 : 1))
    .flatMap((file): Row[] => JSON.parse(readFileSync(new URL(encodeURIComponent(file), here), "utf8")));
  const tables = new Map<string, Row[]>();
  for (const row of rows) {
    const key = `${row.fluid}: ${row.source}`;
    const table = tables.get(key);
    if (table === undefined) tables.set(key, [row]);
    else table.push(row);
  }
  return [...tables.values()].map((group) => {
    const [{ fluid, source, status }] = group as [Row];
    return { fluid, source, status, rows: group };
  });
}

/** The number in a designation: R-32 comes before R-134a. */
function numberOf(designation: string): number {
  return Number(/\d+/.exec(designation)?.[0]);
}
