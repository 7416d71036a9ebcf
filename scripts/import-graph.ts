import { readdirSync, readFileSync } from "node:fs";
import { posix, sep } from "node:path";
import ts from "typescript";

/** One import or re-export, as written. */
export interface Import {
  /** What stands between the quotes. */
  readonly specifier: string;
  /** True when nothing of it is left after compilation. */
  readonly typeOnly: boolean;
}

/** The imports of each source file, by path from the top of the project with `/`, such as `src/units/index.ts`. */
export type ImportGraph = ReadonlyMap<string, readonly Import[]>;

/** Reads all TypeScript or JavaScript files below `folder`. */
export function readImportGraph(top: string, folder: string): ImportGraph {
  const files = readdirSync(`${top}/${folder}`, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(ts|js|cjs)$/.test(name) && !/\.d\.c?ts$/.test(name))
    .map((name) => `${folder}/${name.split(sep).join("/")}`)
    .sort();
  return new Map(files.map((file) => [file, importsOf(readFileSync(`${top}/${file}`, "utf8"))]));
}

/** All imports of one source text: static, re-exports, `import(…)` of values and of types, `require(…)`. */
export function importsOf(text: string): Import[] {
  const imports: Import[] = [];
  const add = (specifier: ts.Node | undefined, typeOnly: boolean) => {
    if (specifier !== undefined && ts.isStringLiteralLike(specifier)) {
      imports.push({ specifier: specifier.text, typeOnly });
    }
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) {
      add(node.moduleSpecifier, node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword);
    } else if (ts.isExportDeclaration(node)) {
      add(node.moduleSpecifier, node.isTypeOnly);
    } else if (ts.isImportTypeNode(node)) {
      add(ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined, true);
    } else if (ts.isCallExpression(node) && /^(import|require)$/.test(node.expression.getText())) {
      add(node.arguments[0], false);
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile("source.ts", text, ts.ScriptTarget.ES2022, true));
  return imports;
}

/** The file that a relative import names, from the top of the project; undefined for a package. */
export function resolveImport(graph: ImportGraph, file: string, specifier: string): string | undefined {
  if (!specifier.startsWith(".")) return undefined;
  const path = posix.join(posix.dirname(file), specifier);
  // Data has no imports of its own; that it is there, the compiler checks.
  if (path.endsWith(".json")) return path;
  const found = [path, path.replace(/\.js$/, ".ts")].find((candidate) => graph.has(candidate));
  if (found === undefined) throw new Error(`${file} imports ${specifier}, which is not there`);
  return found;
}

/** Every package that is loaded with `start`, with the chain of files that leads to it. */
export function packagesReached(graph: ImportGraph, start: string): Map<string, readonly string[]> {
  const packages = new Map<string, readonly string[]>();
  const seen = new Set<string>();
  const follow = (file: string, chain: readonly string[]): void => {
    if (seen.has(file)) return;
    seen.add(file);
    for (const { specifier, typeOnly } of graph.get(file) ?? []) {
      if (typeOnly) continue;
      const next = resolveImport(graph, file, specifier);
      if (next !== undefined) follow(next, [...chain, next]);
      else if (!packages.has(specifier)) packages.set(specifier, [...chain, specifier]);
    }
  };
  follow(start, [start]);
  return packages;
}

/** The first ring of files that load each other; undefined when there is none. Types alone load nothing. */
export function findCycle(graph: ImportGraph): readonly string[] | undefined {
  const done = new Set<string>();
  const visit = (file: string, chain: readonly string[]): readonly string[] | undefined => {
    if (chain.includes(file)) return [...chain.slice(chain.indexOf(file)), file];
    if (done.has(file)) return undefined;
    for (const { specifier, typeOnly } of graph.get(file) ?? []) {
      const next = typeOnly ? undefined : resolveImport(graph, file, specifier);
      const cycle = next === undefined ? undefined : visit(next, [...chain, file]);
      if (cycle !== undefined) return cycle;
    }
    done.add(file);
    return undefined;
  };
  for (const file of graph.keys()) {
    const cycle = visit(file, []);
    if (cycle !== undefined) return cycle;
  }
  return undefined;
}
