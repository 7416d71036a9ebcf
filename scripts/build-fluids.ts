/**
 * Writes the literals of `src/fluids/`, `src/pairs/` and `src/blends/` and the catalogue's lists from `data/`.
 *
 * `tsx scripts/build-fluids.ts` writes; with `--check` it only compares and fails when anything is stale.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { expectedFiles } from "./expected-files.js";

/** Folders in which everything is generated. */
const FOLDERS = ["src/fluids", "src/pairs", "src/blends"];

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
  return FOLDERS.filter((folder) => existsSync(path(folder))).flatMap((folder) =>
    readdirSync(path(folder), { recursive: true, encoding: "utf8" })
      .filter((file) => file.endsWith(".ts"))
      .map((file) => `${folder}/${file.split(sep).join("/")}`),
  );
}

function path(file: string): string {
  return fileURLToPath(new URL(`../${file}`, import.meta.url));
}

function write(): void {
  const files = expectedFiles();
  for (const file of presentModules()) if (!files.has(file)) rmSync(path(file));
  for (const [file, text] of files) {
    mkdirSync(dirname(path(file)), { recursive: true });
    writeFileSync(path(file), text);
  }
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
