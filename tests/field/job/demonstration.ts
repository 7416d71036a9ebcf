import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { type LogTable, logsOf } from "../../../src/field/job/index.js";

const folder = new URL("../../../docs/jobs/", import.meta.url);

/** The demonstration jobs, that of `npm start` first. */
export type Demonstration =
  | "weaving-studio"
  | "weaving-studio-r-454b"
  | "weaving-studio-refused"
  | "ridge-refuge"
  | "boat-house"
  | "boat-house-second-winter";

/** A demonstration job as parsed JSON; a fresh copy, to be changed at will. */
// biome-ignore lint/suspicious/noExplicitAny: tests break it in every way
export function demonstrationJob(which: Demonstration = "weaving-studio"): any {
  return JSON.parse(readFileSync(new URL(`${which}.json`, folder), "utf8"));
}

/** Its logs. */
export function demonstrationLogs(which: Demonstration = "weaving-studio"): Record<string, LogTable> {
  return Object.fromEntries(
    logsOf(demonstrationJob(which)).map((name) => {
      const [header = [], ...rows]: string[][] = parse(readFileSync(new URL(name, folder), "utf8"));
      return [name, { header, rows }];
    }),
  );
}

/** The record that a demonstration job continues, as parsed JSON. */
// biome-ignore lint/suspicious/noExplicitAny: tests break it in every way
export function demonstrationRecord(): any {
  return JSON.parse(readFileSync(new URL("boat-house.record.json", folder), "utf8"));
}
