import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import {
  findCycle,
  type ImportGraph,
  importsOf,
  packagesReached,
  readImportGraph,
  resolveImport,
} from "../../scripts/import-graph.js";

const top = fileURLToPath(new URL("../..", import.meta.url)).replace(/[\\/]$/, "");
const read = (file: string): string => readFileSync(`${top}/${file}`, "utf8");

/** From the top down; a room imports only from rooms further along. */
const ROOMS = [
  "lesson",
  "chart",
  "field",
  "safety",
  "cycle",
  "state",
  "equilibrium",
  "equation",
  "catalogue",
  "units",
];

/** The files that may use zod; nothing of core loads them. */
const SCHEMA = /schema[^/]*\.ts$/;

/** The generated literals are the catalogue's own, in folders that anyone may import from. */
const LITERALS = /^src\/(fluids|pairs|blends)\//;

function roomOf(file: string): string | undefined {
  return LITERALS.test(file) ? "catalogue" : /^src\/([^/]+)\//.exec(file)?.[1];
}

/** What is wrong with how the rooms of a graph import each other, one sentence each. */
function roomProblems(graph: ImportGraph): string[] {
  const problems: string[] = [];
  for (const [file, imports] of graph) {
    const from = roomOf(file);
    if (from === undefined) continue;
    if (!ROOMS.includes(from)) problems.push(`${file}: ${from} is no known room`);
    for (const { specifier } of imports) {
      const target = resolveImport(graph, file, specifier);
      if (target === undefined) {
        const schema = SCHEMA.test(file) && specifier === "zod/mini";
        if (!schema) problems.push(`${file} imports ${specifier}; only zod/mini is allowed, in schema files`);
        continue;
      }
      if (target.startsWith("data/")) continue;
      const to = roomOf(target);
      if (to === undefined) problems.push(`${file} imports ${target}, an entry point`);
      else if (to !== from && ROOMS.indexOf(to) <= ROOMS.indexOf(from)) {
        problems.push(`${file} imports ${target}, a room above it`);
      } else if (to !== from && target !== `src/${to}/index.ts` && !LITERALS.test(target)) {
        problems.push(`${file} imports ${target} past its index`);
      }
    }
  }
  return problems;
}

/** Calls and constructions that run when a module is loaded, which no bundler can drop. */
function workAtModuleLevel(text: string): string[] {
  const source = ts.createSourceFile("source.ts", text, ts.ScriptTarget.ES2022, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node)) return;
    if (ts.isPropertyDeclaration(node) && !(ts.getCombinedModifierFlags(node) & ts.ModifierFlags.Static))
      return;
    if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
      const pure = /@__PURE__/.test(text.slice(node.getFullStart(), node.getStart()));
      if (!pure) found.push(node.getText().split("\n")[0] ?? "");
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** Every file that belongs to the project: all but what .gitignore names. */
function projectFiles(folder = ""): string[] {
  const ignored = new Set([
    ".git",
    ...read(".gitignore")
      .split("\n")
      .map((line) => line.replace(/\/$/, "")),
  ]);
  return readdirSync(`${top}/${folder}`, { withFileTypes: true }).flatMap((entry) => {
    const path = folder + entry.name;
    if (ignored.has(path) || ignored.has(path.replace(/^.*(?=\.[^.]+$)/, "*"))) return [];
    return entry.isDirectory() ? projectFiles(`${path}/`) : [path];
  });
}

describe("the lock file", () => {
  test("holds no addresses that packages were fetched from", () => {
    const { packages } = JSON.parse(read("package-lock.json")) as {
      packages: Record<string, { resolved?: string }>;
    };
    expect(Object.keys(packages).length).toBeGreaterThan(10);
    expect(Object.keys(packages).filter((name) => packages[name]?.resolved !== undefined)).toEqual([]);
  });
});

describe("the files", () => {
  const MACHINE_PATH = /(?<![\w.*\]}])\/(work|tmp|home|root|Users|opt|mnt)\/|\b[A-Z]:\\\\?Users/;
  const REGISTRY = /registry\.[a-z]|\bnpmjs\.[a-z]/;

  test("name no path of anybody's machine and no registry", () => {
    const files = projectFiles();
    expect(files).toContain("package.json");
    const found = files.flatMap((file) =>
      read(file)
        .split("\n")
        .flatMap((line, index) =>
          MACHINE_PATH.test(line) || REGISTRY.test(line)
            ? [`${file}:${index + 1}: ${line.slice(0, 200)}`]
            : [],
        ),
    );
    expect(found).toEqual([]);
  });

  test("would be found out if they did", () => {
    expect(["cat /", "work/main"].join("")).toMatch(MACHINE_PATH);
    expect(["'/", "home/ann/x'"].join("")).toMatch(MACHINE_PATH);
    expect(["https://registry", ".example.org"].join("")).toMatch(REGISTRY);
    expect("the field/work/ folder; src/home/page").not.toMatch(MACHINE_PATH);
  });
});

describe("the rooms of src", () => {
  const graph = readImportGraph(top, "src");

  test("import downward only, through the index of another room, and no package but zod/mini", () => {
    expect(graph.size).toBeGreaterThan(5);
    expect(roomProblems(graph)).toEqual([]);
  });

  test("let the cycle know nothing but states and units", () => {
    const reached = [...graph]
      .filter(([file]) => roomOf(file) === "cycle")
      .flatMap(([file, imports]) => imports.map(({ specifier }) => resolveImport(graph, file, specifier)))
      .flatMap((target) => (target === undefined ? ["a package"] : (roomOf(target) ?? [])));
    expect([...new Set(reached)].sort()).toEqual(["cycle", "state", "units"]);
  });

  test("have no files that load each other in a ring", () => {
    expect(findCycle(graph)).toBeUndefined();
  });

  test("have an index that only re-exports", () => {
    for (const file of graph.keys()) {
      if (!/\/(index|core)\.ts$/.test(file)) continue;
      const { statements } = ts.createSourceFile(file, read(file), ts.ScriptTarget.ES2022, true);
      const others = statements.filter((statement) => !ts.isExportDeclaration(statement));
      expect(others.map((statement) => `${file}: ${statement.getText()}`)).toEqual([]);
    }
  });

  test("do no work when they are loaded, schemas apart", () => {
    const found = [...graph.keys()]
      .filter((file) => !SCHEMA.test(file))
      .flatMap((file) => workAtModuleLevel(read(file)).map((work) => `${file}: ${work}`));
    expect(found).toEqual([]);
  });

  test("do not lead from core to zod", () => {
    expect([...graph.keys()]).toContain("src/core.ts");
    expect(Object.fromEntries(packagesReached(graph, "src/core.ts"))).toEqual({});
  });

  test("say of each literal that it is generated, and by what", () => {
    const literals = [...graph.keys()].filter((file) => LITERALS.test(file));
    for (const folder of ["fluids", "pairs", "pairs/departures", "blends"]) {
      expect(literals.filter((file) => file.startsWith(`src/${folder}/`)).length).toBeGreaterThan(0);
    }
    for (const file of literals) {
      expect(read(file).split("\n")[0], file).toMatch(/generated.*scripts\/build-fluids/i);
    }
  });
});

describe("the checks of this file", () => {
  const graphOf = (files: Record<string, string>): ImportGraph =>
    new Map(Object.entries(files).map(([file, text]) => [file, importsOf(text)]));

  test("see every way of importing", () => {
    const text = [
      'import { a } from "a";',
      'import type { b } from "b";',
      'import { type c } from "c";',
      'export * from "d";',
      'export type * from "e";',
      'type F = import("f").F;',
      'const g = await import("g");',
      'const h = require("h");',
      '// import "i";',
    ];
    expect(
      importsOf(text.join("\n")).map(({ specifier, typeOnly }) => specifier + (typeOnly ? " type" : "")),
    ).toEqual(["a", "b type", "c", "d", "e type", "f type", "g", "h"]);
  });

  test("find imports that go up, past an index, to an entry point or to a package", () => {
    const graph = graphOf({
      "src/index.ts": 'export * from "./state/index.js";',
      "src/state/index.ts": 'export * from "./point.js";',
      "src/state/point.ts":
        'import "../equation/ideal.js"; import "../units/index.js"; import "../index.js";',
      "src/equation/index.ts": 'import "../state/index.js"; import "zod/mini";',
      "src/equation/ideal.ts": 'import "zod";',
      "src/field/index.ts": 'import "../fluids/r-32.js";',
      "src/fluids/r-32.ts": 'import "../catalogue/index.js";',
      "src/catalogue/index.ts": 'import "../fluids/r-32.js";',
      "src/units/index.ts": 'import "../fluids/r-32.js";',
      "src/units/schema.ts": 'import "zod/mini";',
      "src/pantry/index.ts": "",
    });
    expect(roomProblems(graph)).toEqual([
      "src/state/point.ts imports src/equation/ideal.ts past its index",
      "src/state/point.ts imports src/index.ts, an entry point",
      "src/equation/index.ts imports src/state/index.ts, a room above it",
      "src/equation/index.ts imports zod/mini; only zod/mini is allowed, in schema files",
      "src/equation/ideal.ts imports zod; only zod/mini is allowed, in schema files",
      "src/units/index.ts imports src/fluids/r-32.ts, a room above it",
      "src/pantry/index.ts: pantry is no known room",
    ]);
  });

  test("find a ring and the way to a package, types apart", () => {
    const graph = graphOf({
      "src/a.ts": 'import "./b.js"; import type {} from "typed";',
      "src/b.ts": 'export * from "./c.js"; import "loaded";',
      "src/c.ts": 'export { c } from "./b.js"; import type {} from "./a.js";',
    });
    expect(findCycle(graph)).toEqual(["src/b.ts", "src/c.ts", "src/b.ts"]);
    expect(findCycle(graphOf({ "src/a.ts": 'import type {} from "./a.js";' }))).toBeUndefined();
    expect([...packagesReached(graph, "src/a.ts")]).toEqual([["loaded", ["src/a.ts", "src/b.ts", "loaded"]]]);
  });

  test("find work at module level", () => {
    const text = [
      "const a = new Map();",
      "const b = { c: Object.freeze({}) };",
      "const d = /* @__PURE__ */ make();",
      "const e = () => make();",
      "class F { g = make(); h() { make(); } static j = load(); }",
      "const i = [1, 2];",
    ];
    expect(workAtModuleLevel(text.join("\n"))).toEqual(["new Map()", "Object.freeze({})", "load()"]);
  });
});
