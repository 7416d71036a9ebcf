import { readFileSync } from "node:fs";
import type { Bibliography } from "../src/catalogue/literal.js";

/** One entry of `data/sources.json`. A paper has journal, volume, year and page; anything else has a text. */
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
function citation({ authors, journal, volume, year, page, text, note }: SourceEntry): string {
  const where = journal === undefined ? text : present([journal, volume, `(${year})`, page]).join(" ");
  return present([authors.join(", "), where, note]).join(", ");
}

/** What is wrong with the entries, one sentence each. */
export function sourceProblems(sources: Readonly<Record<string, SourceEntry>>): string[] {
  return Object.entries(sources).flatMap(([key, entry]) => {
    const problems: string[] = [];
    if (!(entry.authors?.length > 0)) problems.push("has no authors");
    if (!["read", "recalled", "computed"].includes(entry.status)) problems.push("has no status");
    const paper = [entry.journal, entry.volume, entry.year].every((part) => part !== undefined);
    if (!paper && entry.text === undefined) {
      problems.push("has neither journal, volume and year nor a text");
    }
    return problems.map((problem) => `data/sources.json: ${key} ${problem}`);
  });
}

function present(parts: readonly (string | undefined)[]): string[] {
  return parts.filter((part) => part !== undefined);
}
