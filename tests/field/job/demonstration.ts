import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import type { LogTable } from "../../../src/field/job/index.js";

const folder = new URL("../../../docs/jobs/", import.meta.url);

/** The demonstration job as parsed JSON; a fresh copy, to be changed at will. */
// biome-ignore lint/suspicious/noExplicitAny: tests break it in every way
export function demonstrationJob(): any {
  return JSON.parse(readFileSync(new URL("weaving-studio.json", folder), "utf8"));
}

/** Its logs. */
export function demonstrationLogs(): Record<string, LogTable> {
  const names = ["weaving-studio-hold.csv", "weaving-studio-rise.csv"];
  return Object.fromEntries(
    names.map((name) => {
      const [header = [], ...rows]: string[][] = parse(readFileSync(new URL(name, folder), "utf8"));
      return [name, { header, rows }];
    }),
  );
}
