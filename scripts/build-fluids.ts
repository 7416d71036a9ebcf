/**
 * Writes `src/fluids/*.ts` and `src/catalogue/all-fluids.ts` from `data/fluids/*.json`.
 *
 * `tsx scripts/build-fluids.ts` writes; with `--check` it only compares and fails when anything is stale.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Fluid } from "../src/catalogue/fluid.js";
import { parseFluidData } from "../src/catalogue/schema.js";
import { readBibliography } from "./bibliography.js";
import { fluidModule, listModule, moduleName } from "./fluid-module.js";

/** Reads every file of `data/fluids/`, checked, in the order of the catalogue. */
export function readFluidFiles(): readonly (readonly [dataName: string, fluid: Fluid])[] {
  const bibliography = readBibliography();
  const directory = new URL("../data/fluids/", import.meta.url);
  const entries = readdirSync(directory)
    .filter((file) => file.endsWith(".json"))
    .map((file) => {
      const dataName = file.slice(0, -".json".length);
      const fluid = parseFluidData(
        JSON.parse(readFileSync(new URL(encodeURIComponent(file), directory), "utf8")),
        bibliography,
      );
      const { designation, equation } = fluid;
      if (dataName !== designation && dataName !== `${designation}-${equation}`) {
        throw new Error(
          `data/fluids/${file} should be named after ${designation} or ${designation}-${equation}`,
        );
      }
      return [dataName, fluid] as const;
    });
  return entries.sort(([leftName, left], [rightName, right]) =>
    left.designation === right.designation
      ? leftName.length - rightName.length
      : compareDesignations(left.designation, right.designation),
  );
}

/** Every file this script is responsible for, with the text it should have. */
export function expectedFiles(): ReadonlyMap<string, string> {
  const entries = readFluidFiles();
  const files = new Map(
    entries.map(([dataName, fluid]) => [
      `src/fluids/${moduleName(dataName)}.ts`,
      fluidModule(dataName, fluid),
    ]),
  );
  files.set("src/catalogue/all-fluids.ts", listModule(entries));
  return files;
}

/** Names of generated files that are missing, stale, or no longer wanted. */
export function staleFiles(): readonly string[] {
  const wanted = expectedFiles();
  const stale = [...wanted].filter(
    ([file, text]) => !existsSync(path(file)) || readFileSync(path(file), "utf8") !== text,
  );
  const leftOver = presentModules().filter((file) => !wanted.has(file));
  return [...stale.map(([file]) => file), ...leftOver];
}

function presentModules(): string[] {
  if (!existsSync(path("src/fluids"))) return [];
  return readdirSync(path("src/fluids")).map((file) => `src/fluids/${file}`);
}

function path(file: string): string {
  return fileURLToPath(new URL(`../${file}`, import.meta.url));
}

/** By number, then by letters: R-32, R-134a, R-1234ze(E); letters before digits (R-E170) come last. */
function compareDesignations(left: string, right: string): number {
  const key = (designation: string): number =>
    Number(/^R-(\d+)/.exec(designation)?.[1] ?? Number.POSITIVE_INFINITY);
  const difference = key(left) - key(right);
  if (difference !== 0 && !Number.isNaN(difference)) return difference;
  return left < right ? -1 : 1;
}

function write(): void {
  const files = expectedFiles();
  mkdirSync(path("src/fluids"), { recursive: true });
  for (const file of presentModules()) if (!files.has(file)) rmSync(path(file));
  for (const [file, text] of files) writeFileSync(path(file), text);
  process.stdout.write(`${files.size} files written\n`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  if (process.argv.includes("--check")) {
    const stale = staleFiles();
    for (const file of stale) process.stderr.write(`stale: ${file}\n`);
    process.exitCode = stale.length === 0 ? 0 : 1;
  } else {
    write();
  }
}
