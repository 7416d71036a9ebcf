import { readdirSync, readFileSync } from "node:fs";
import type { Blend, ClassValues, DepartureFunction, Fluid, Pair } from "../src/catalogue/index.js";
import type { Bibliography } from "../src/catalogue/literal.js";
import { parseFluidData } from "../src/catalogue/schema.js";
import { parseBlendData } from "../src/catalogue/schema-blend.js";
import { parseClassData, parseDepartureData, parsePairData } from "../src/catalogue/schema-pair.js";
import { readBibliography } from "./bibliography.js";
import { compareDesignations } from "./designation-order.js";

/** The literal of each file of a folder, beside the name of the file without extension. */
export type Entries<Literal> = readonly (readonly [dataName: string, literal: Literal])[];

/** Everything that literals are made of, checked, in the order of the catalogue. */
export interface CatalogueData {
  /** By designation; of two equations of one refrigerant the default comes first. */
  readonly fluids: Entries<Fluid>;
  readonly departures: Entries<DepartureFunction>;
  /** By the first designation, then by the second. */
  readonly pairs: Entries<Pair>;
  readonly blends: Entries<Blend>;
  readonly classValues: ClassValues;
}

/** Reads and checks the catalogue's folders of `data/`. */
export function readCatalogueData(): CatalogueData {
  const bibliography = readBibliography();
  const fluids = readFluids(bibliography);
  const departures = readEntries(
    "departures",
    (json) => parseDepartureData(json, bibliography),
    ({ name }) => [name],
  );
  const pairs = readEntries(
    "pairs",
    (json) => parsePairData(json, literals(departures), bibliography),
    ({ between }) => [between.join("+")],
  );
  const catalogue = { fluids: literals(fluids), pairs: literals(pairs) };
  const blends = readEntries(
    "blends",
    (json) => parseBlendData(json, catalogue, bibliography),
    ({ designation }) => [designation],
  );
  return {
    fluids,
    departures,
    pairs: sorted(pairs, ({ between }) => between),
    blends: sorted(blends, ({ designation }) => [designation]),
    classValues: parseClassData(readJson("mixing", "class-values.json"), bibliography),
  };
}

/** Names and contents of the files of a folder of `data/`. */
export function readFolder(folder: string): readonly (readonly [file: string, json: unknown])[] {
  return readdirSync(new URL(`../data/${folder}/`, import.meta.url))
    .filter((file) => file.endsWith(".json"))
    .map((file) => [file, readJson(folder, file)]);
}

function readFluids(bibliography: Bibliography): Entries<Fluid> {
  const fluids = readEntries(
    "fluids",
    (json) => parseFluidData(json, bibliography),
    ({ designation, equation }) => [designation, `${designation}-${equation}`],
  );
  // The default equation's file is named after the designation alone, which is the shorter name.
  const byName = [...fluids].sort(([left], [right]) => left.length - right.length);
  return sorted(byName, ({ designation }) => [designation]);
}

/** Reads a folder; every file has one of the names that belong to what is in it. */
function readEntries<Literal>(
  folder: string,
  parse: (json: unknown) => Literal,
  namesOf: (literal: Literal) => readonly string[],
): Entries<Literal> {
  return readFolder(folder).map(([file, json]) => {
    const dataName = file.slice(0, -".json".length);
    const literal = parse(json);
    const names = namesOf(literal);
    if (!names.includes(dataName)) {
      throw new Error(`data/${folder}/${file} should be named after ${names.join(" or ")}`);
    }
    return [dataName, literal];
  });
}

function readJson(folder: string, file: string): unknown {
  const url = new URL(`../data/${folder}/${encodeURIComponent(file)}`, import.meta.url);
  return JSON.parse(readFileSync(url, "utf8"));
}

/** In the order of the designations; what has the same ones keeps its place. */
function sorted<Literal>(
  entries: Entries<Literal>,
  designationsOf: (literal: Literal) => readonly string[],
): Entries<Literal> {
  return [...entries].sort(([, left], [, right]) => {
    const others = designationsOf(right);
    const differences = designationsOf(left).map((name, index) =>
      compareDesignations(name, others[index] ?? ""),
    );
    return differences.find((difference) => difference !== 0) ?? 0;
  });
}

function literals<Literal>(entries: Entries<Literal>): readonly Literal[] {
  return entries.map(([, literal]) => literal);
}
