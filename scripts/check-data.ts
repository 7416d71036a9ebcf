/**
 * Checks `data/` as a whole: every file of fluids and references is well formed, every source key is in
 * `data/sources.json`, every listed source is used, and the generated literals are fresh.
 *
 * `tsx scripts/check-data.ts` lists what is wrong and fails when anything is.
 */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { sourceKeysOf } from "../src/catalogue/literal.js";
import { parseFluidData, parseReferenceData } from "../src/catalogue/schema.js";
import { readBibliography, readSources, sourceProblems } from "./bibliography.js";
import { staleFiles } from "./build-fluids.js";

/** Everything that is wrong, one sentence each. */
export function dataProblems(): readonly string[] {
  const bibliography = readBibliography();
  const used = new Set<string>();
  const problems = sourceProblems(readSources());
  const parsers = { fluids: parseFluidData, references: parseReferenceData };
  for (const [folder, parse] of Object.entries(parsers)) {
    for (const [file, json] of readFolder(folder)) {
      for (const key of sourceKeysOf(json)) used.add(key);
      try {
        parse(json, bibliography);
      } catch (error) {
        problems.push(`data/${folder}/${file}: ${error instanceof Error ? error.message : String(error)}`);
      }
    }
  }
  for (const key of Object.keys(bibliography)) {
    if (!used.has(key)) problems.push(`data/sources.json: ${key} is used by no fluid and no reference`);
  }
  // Only well-formed data can be turned into literals.
  return problems.length > 0 ? problems : staleFiles().map((file) => `${file} is stale: run build-fluids`);
}

function readFolder(folder: string): readonly (readonly [file: string, json: unknown])[] {
  const directory = new URL(`../data/${folder}/`, import.meta.url);
  return readdirSync(directory).map((file) => [
    file,
    JSON.parse(readFileSync(new URL(encodeURIComponent(file), directory), "utf8")),
  ]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const problems = dataProblems();
  for (const problem of problems) process.stderr.write(`${problem}\n`);
  process.exitCode = problems.length === 0 ? 0 : 1;
}
