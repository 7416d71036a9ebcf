import { readFileSync } from "node:fs";
import type { Bibliography } from "../src/catalogue/index.js";

/** One entry of `data/sources.json`. A paper has journal, volume and page; anything else has a text. */
export interface SourceEntry {
  readonly authors: readonly string[];
  readonly journal?: string;
  readonly volume?: string;
  readonly year?: string;
  readonly page?: string;
  readonly text?: string;
  readonly note?: string;
  readonly status: "read" | "recalled" | "computed";
}

/** Reads `data/sources.json`. */
export function readSources(): Readonly<Record<string, SourceEntry>> {
  return JSON.parse(readFileSync(new URL("../data/sources.json", import.meta.url), "utf8"));
}

/** Every entry as one line: authors, journal volume (year) page. */
export function readBibliography(): Bibliography {
  return Object.fromEntries(Object.entries(readSources()).map(([key, entry]) => [key, citation(entry)]));
}

/** One entry as one line. */
export function citation({ authors, journal, volume, year, page, text, note }: SourceEntry): string {
  const where =
    journal === undefined
      ? (text ?? "")
      : [journal, volume, `(${year})`, page].filter((part) => part !== undefined).join(" ");
  return [authors.join(", "), where, note].filter((part) => part !== undefined && part !== "").join(", ");
}
