// Packs the package and looks at the tarball as a stranger would: with two linters for packages, then installed in a
// folder far from this project, loaded as ES module and as CommonJS, and type-checked. Wants `npm run build` first.

import { execFileSync } from "node:child_process";
import { copyFileSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { packagesReached, readImportGraph } from "./import-graph.js";

/** Folders of `src/` of which every file is an entry point. */
const LITERALS = ["fluids", "blends"];

const root = fileURLToPath(new URL("..", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "dewline-package-"));
try {
  checkCore();
  const tarball = pack();
  lint(tarball);
  install(tarball);
  loadEveryEntry();
  compareAnswers();
  checkTypes();
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** Small apps come in through core; shared chunks must not bring the schemas along. */
function checkCore(): void {
  const graph = readImportGraph(root, "dist");
  for (const entry of ["dist/core.js", "dist/core.cjs"]) {
    if (!graph.has(entry)) throw new Error(`${entry} is missing: run "npm run build" first`);
    const chains = [...packagesReached(graph, entry).values()];
    if (chains.length > 0) throw new Error(`core loads packages: ${chains[0]?.join(" > ")}`);
  }
  report("core loads no package");
}

function pack(): string {
  const made = run(root, "npm", ["pack", "--ignore-scripts", "--json", "--pack-destination", folder]);
  const [tarball] = JSON.parse(made) as readonly { filename: string; size: number; entryCount: number }[];
  if (tarball === undefined) throw new Error("npm pack made nothing");
  report(`packed ${tarball.entryCount} files, ${Math.round(tarball.size / 1000)} kB`);
  return join(folder, tarball.filename);
}

function lint(tarball: string): void {
  run(root, tool("publint"), ["run", tarball, "--strict"]);
  report("publint finds nothing");
  // attw does not expand the wildcards of `exports`: unless listed, the literals would not be looked at.
  const wildcards = LITERALS.map((name) => `${name}/*`);
  const list = ["--exclude-entrypoints", ...wildcards, "--include-entrypoints", ...literals()];
  run(root, tool("attw"), [tarball, "--no-definitely-typed", "--profile", "node16", ...list]);
  report(`attw finds nothing at ${literals().length + 2} entry points`);
}

function install(tarball: string): void {
  writeFileSync(join(folder, "package.json"), JSON.stringify({ name: "stranger", private: true }));
  run(folder, "npm", ["install", "--prefer-offline", "--no-audit", "--no-fund", tarball]);
  report("installs");
}

function loadEveryEntry(): void {
  const entries = ["dewline", "dewline/core", ...literals().map((literal) => `dewline/${literal}`)];
  const compare = `
    const names = (loaded) => Object.keys(loaded).filter((name) => !/^(default|__esModule|module\\.exports)$/.test(name)).sort().join();
    for (const entry of ${JSON.stringify(entries)}) {
      const [module, commonjs] = [names(await import(entry)), names(require(entry))];
      if (module === "" || module !== commonjs) throw new Error(entry + ": " + module + " as module, " + commonjs + " as CommonJS");
    }`;
  const program = `import { createRequire } from "node:module"; const require = createRequire(import.meta.url); ${compare}`;
  writeFileSync(join(folder, "load.mjs"), program);
  run(folder, process.execPath, ["load.mjs"]);
  report(`${entries.length} entry points export the same names as module and as CommonJS`);
}

function compareAnswers(): void {
  const answers = ["use-module.mjs", "use-commonjs.cjs"].map((file) => {
    copyFileSync(join(root, "tests", "package", file), join(folder, file));
    const printed = run(folder, process.execPath, [file]);
    return JSON.parse(printed) as { byName: number; byLiteral: number; recognised: boolean };
  });
  const pressures = answers.flatMap(({ byName, byLiteral }) => [byName, byLiteral]);
  const [pressure = Number.NaN] = pressures;
  if (!(pressure > 0) || !pressures.every((other) => other === pressure)) {
    throw new Error(`saturation pressures that should be one: ${pressures.join(", ")} Pa`);
  }
  if (!answers.every(({ recognised }) => recognised)) {
    throw new Error("an error of the other copy is not recognised");
  }
  report("runs as module and as CommonJS, by name and by literal, with the same answer");
}

function checkTypes(): void {
  for (const file of ["use-types.mts", "use-types.cts"]) {
    copyFileSync(join(root, "tests", "package", "use-types.mts"), join(folder, file));
  }
  const settings = {
    compilerOptions: {
      module: "NodeNext",
      target: "ES2022",
      strict: true,
      noEmit: true,
      skipLibCheck: true,
      types: [],
    },
    files: ["use-types.mts", "use-types.cts"],
  };
  writeFileSync(join(folder, "tsconfig.json"), JSON.stringify(settings));
  run(folder, process.execPath, [join(root, "node_modules", "typescript", "bin", "tsc")]);
  report("type-checks from a module and from CommonJS");
}

/** Entry points of the literals, such as `fluids/r-32` and `blends/r-410a`. */
function literals(): string[] {
  return LITERALS.flatMap((folder) =>
    readdirSync(join(root, "src", folder))
      .filter((name) => name.endsWith(".ts"))
      .map((name) => `${folder}/${name.slice(0, -".ts".length)}`),
  );
}

function tool(name: string): string {
  return join(root, "node_modules", ".bin", name);
}

/** What the command prints; on failure everything it said goes into the error. */
function run(cwd: string, command: string, args: readonly string[]): string {
  try {
    return execFileSync(command, args, { cwd, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });
  } catch (error) {
    const { stdout = "", stderr = "" } = error as { stdout?: string; stderr?: string };
    throw new Error(`${command} ${args.join(" ")} failed\n${stdout}${stderr}`);
  }
}

function report(what: string): void {
  console.log(`package: ${what}`);
}
