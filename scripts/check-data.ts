/**
 * Checks `data/` as a whole: every file that a literal or a yardstick is made of is well formed, every source key is in
 * `data/sources.json`, every listed source is used, every departure function serves a pair, every regressed pair comes of
 * a described fit to points that there are, and the generated literals are fresh.
 *
 * `tsx scripts/check-data.ts` lists what is wrong and fails when anything is.
 */
import { fileURLToPath } from "node:url";
import type { DepartureFunction, Fluid, Pair } from "../src/catalogue/index.js";
import { sourceKeysOf } from "../src/catalogue/literal.js";
import { parseFluidData, parseReferenceData } from "../src/catalogue/schema.js";
import { parseBlendData } from "../src/catalogue/schema-blend.js";
import { parseClassData, parseDepartureData, parsePairData } from "../src/catalogue/schema-pair.js";
import { readBibliography, readSources, sourceProblems } from "./bibliography.js";
import { staleFiles } from "./build-fluids.js";
import { fitProblems } from "./fit-pair/check-fits.js";
import { parseEquilibria } from "./fit-pair/data-schema.js";
import { parseFit } from "./fit-pair/fit-schema.js";
import { readFolder } from "./read-data.js";

/** Everything that is wrong, one sentence each. */
export function dataProblems(): readonly string[] {
  const bibliography = readBibliography();
  const used = new Set<string>();
  const problems = sourceProblems(readSources());
  /** What the files of a folder are; a file that is not well formed is told of and left out. */
  const parseAll = <Parsed>(
    folder: string,
    parse: (json: unknown, name: string) => Parsed,
  ): readonly Parsed[] =>
    readFolder(folder).flatMap(([file, json]) => {
      for (const key of sourceKeysOf(json)) used.add(key);
      try {
        return [parse(json, file.replace(/\.json$/, ""))];
      } catch (error) {
        problems.push(`data/${folder}/${file}: ${error instanceof Error ? error.message : String(error)}`);
        return [];
      }
    });
  const fluids: readonly Fluid[] = parseAll("fluids", (json) => parseFluidData(json, bibliography));
  parseAll("references", (json) => parseReferenceData(json, bibliography));
  const departures: readonly DepartureFunction[] = parseAll("departures", (json) =>
    parseDepartureData(json, bibliography),
  );
  const pairs: readonly Pair[] = parseAll("pairs", (json) => parsePairData(json, departures, bibliography));
  parseAll("blends", (json) => parseBlendData(json, { fluids, pairs }, bibliography));
  const classes = parseAll("mixing", (json) => parseClassData(json, bibliography));
  const sets = parseAll(
    "equilibria",
    (json, name) => [name, parseEquilibria(json, fluids, bibliography)] as const,
  );
  const fits = parseAll("fits", (json, name) => [name, parseFit(json)] as const);
  problems.push(...fitProblems({ fits: new Map(fits), sets: new Map(sets), pairs }));
  const designations = new Set(fluids.map(({ designation }) => designation));
  problems.push(
    ...unknownFluids(
      "pairs",
      pairs.flatMap(({ between }) => between),
      designations,
    ),
    ...unknownFluids(
      "mixing",
      classes.flatMap((values) => values.classes.flatMap((one) => one.fluids)),
      designations,
    ),
    ...departures
      .filter(({ name }) => !pairs.some(({ departure }) => departure?.function.name === name))
      .map(({ name }) => `data/departures: ${name} is used by no pair`),
    ...Object.keys(bibliography)
      .filter((key) => !used.has(key))
      .map((key) => `data/sources.json: ${key} is used by nothing`),
  );
  // Only well-formed data can be turned into literals.
  return problems.length > 0 ? problems : staleFiles().map((file) => `${file} is stale: run build-fluids`);
}

function unknownFluids(folder: string, named: readonly string[], known: ReadonlySet<string>): string[] {
  return [...new Set(named)]
    .filter((designation) => !known.has(designation))
    .map((designation) => `data/${folder}: ${designation} is no fluid of the catalogue`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const problems = dataProblems();
  for (const problem of problems) process.stderr.write(`${problem}\n`);
  process.exitCode = problems.length === 0 ? 0 : 1;
}
