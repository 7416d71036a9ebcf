import ts from "typescript";
import type { Block } from "./find-blocks.js";

/** What one block became. */
export interface WrittenTest {
  /** Source of one Vitest test. */
  readonly code: string;
  /** Printed results it checks. */
  readonly checks: number;
}

/** The entry points and the names each exports, for blocks that leave their imports out. */
export type Doors = Readonly<Record<string, readonly string[]>>;

/**
 * Turns a block into a test. Imports become `await import(…)`, so that blocks can share names; a printed result,
 * `expression // → 697724 Pa`, becomes a check. A name that the block neither imports nor declares comes from the
 * first of `doors` that exports it.
 *
 * A result may follow an expression, `console.log(expression)` or `const name = expression`, on its last line or
 * alone on the next. A number stands for every value that rounds to the digits printed; anything
 * else is a literal, in which numbers are meant the same way. Words after a number, array or object are its unit.
 */
export function writeTest(block: Block, doors: Doors = {}): WrittenTest {
  const where = `${block.file}:${block.line}`;
  const source = ts.createSourceFile("block.ts", block.code, ts.ScriptTarget.ES2022, true, ts.ScriptKind.TS);
  const results = findResults(source);
  if (/\/\/ *=>/.test(block.code)) throw new Error(`${where}: a result is printed behind "// →", not "=>"`);
  const written = block.code.match(/\/\/ *→/g)?.length ?? 0;
  if (written !== results.size) {
    throw new Error(`${where}: ${written} results are printed but ${results.size} follow a statement`);
  }

  const lines = implicitImports(source, doors).concat(
    source.statements.map((statement) => {
      const text = source.text.slice(statement.pos, statement.end);
      const result = results.get(statement);
      try {
        if (ts.isImportDeclaration(statement)) return writeImport(statement);
        if (result === undefined) return text;
        return writeCheck(statement, text, result, `${block.file}:${lineOf(source, statement, block)}`);
      } catch (error) {
        throw new Error(`${block.file}:${lineOf(source, statement, block)}: ${(error as Error).message}`);
      }
    }),
  );
  const test = block.runs ? "test" : "test.skip";
  const name = JSON.stringify(block.runs ? where : `${where} (types only)`);
  return { code: `${test}(${name}, async () => {\n${lines.join("\n")}\n});\n`, checks: results.size };
}

function lineOf(source: ts.SourceFile, statement: ts.Statement, block: Block): number {
  return block.line + source.getLineAndCharacterOfPosition(statement.getStart()).line;
}

/** The text behind each `// →`, by the statement that it follows. */
function findResults(source: ts.SourceFile): Map<ts.Statement, string> {
  const results = new Map<ts.Statement, string>();
  const lineAt = (position: number) => source.getLineAndCharacterOfPosition(position).line;
  for (const statement of source.statements) {
    const after = [
      ...(ts.getTrailingCommentRanges(source.text, statement.end) ?? []),
      ...(ts.getLeadingCommentRanges(source.text, statement.end) ?? []),
    ];
    for (const { pos, end } of after) {
      const printed = /^\/\/ *→(.*)$/.exec(source.text.slice(pos, end))?.[1];
      if (printed === undefined || lineAt(pos) > lineAt(statement.end) + 1) continue;
      results.set(statement, printed.trim());
    }
  }
  return results;
}

function writeImport(statement: ts.ImportDeclaration): string {
  const door = statement.moduleSpecifier.getText();
  const clause = statement.importClause;
  if (clause === undefined) return `await import(${door});`;
  const bindings = clause.namedBindings;
  if (bindings !== undefined && ts.isNamespaceImport(bindings)) {
    return `const ${bindings.name.text} = await import(${door});`;
  }
  const types: string[] = [];
  const values = clause.name === undefined ? [] : [`default: ${clause.name.text}`];
  for (const { name, propertyName = name, isTypeOnly } of bindings?.elements ?? []) {
    if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword || isTypeOnly) {
      types.push(`type ${name.text} = import(${door}).${propertyName.text};`);
    } else {
      values.push(propertyName === name ? name.text : `${propertyName.text}: ${name.text}`);
    }
  }
  const value = values.length > 0 ? [`const { ${values.join(", ")} } = await import(${door});`] : [];
  return [...types, ...value].join("\n");
}

/** Imports of the names that a block uses as if they were there. */
function implicitImports(source: ts.SourceFile, doors: Doors): string[] {
  const declared = new Set<string>();
  const used = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) (isDeclarationName(node) ? declared : used).add(node.text);
    ts.forEachChild(node, visit);
  };
  visit(source);
  const missing = [...used].filter((name) => !declared.has(name));
  const taken = new Set<string>();
  return Object.entries(doors).flatMap(([door, exported]) => {
    const names = missing.filter((name) => exported.includes(name) && !taken.has(name));
    for (const name of names) taken.add(name);
    return names.length === 0
      ? []
      : [`const { ${names.join(", ")} } = await import(${JSON.stringify(door)});`];
  });
}

function isDeclarationName(node: ts.Identifier): boolean {
  const parent = node.parent;
  return (
    (ts.isVariableDeclaration(parent) ||
      ts.isBindingElement(parent) ||
      ts.isParameter(parent) ||
      ts.isFunctionDeclaration(parent) ||
      ts.isImportSpecifier(parent) ||
      ts.isNamespaceImport(parent) ||
      ts.isImportClause(parent)) &&
    parent.name === node
  );
}

function writeCheck(statement: ts.Statement, text: string, result: string, where: string): string {
  const expected = writeExpected(result);
  const check = (value: string) => `expect(${value}, ${JSON.stringify(where)}).toEqual(${expected});`;
  if (ts.isVariableStatement(statement)) {
    const [declaration, ...others] = statement.declarationList.declarations;
    if (declaration !== undefined && others.length === 0 && ts.isIdentifier(declaration.name)) {
      return `${text}\n${check(declaration.name.text)}`;
    }
  }
  if (ts.isExpressionStatement(statement)) return check(printedValue(statement.expression).getText());
  throw new Error("a printed result must follow an expression or the declaration of one name");
}

/** What `console.log(value)` prints is its value. */
function printedValue(expression: ts.Expression): ts.Expression {
  if (!ts.isCallExpression(expression) || expression.expression.getText() !== "console.log")
    return expression;
  const [value, ...others] = expression.arguments;
  if (value === undefined || others.length > 0) throw new Error("one value for each printed result");
  return value;
}

const NUMBER = String.raw`[-−+]?\d+(?:\.\d+)?(?:e[-−+]?\d+)?`;
const IS_NUMBER = new RegExp(`^${NUMBER}$`, "u");
/** A number, array or object and, after a space, its unit; `4.2 m3/s` but not `12 345`. */
const MEASURED = new RegExp(String.raw`^(${NUMBER}|[[{].*[\]}])(?: [^\d\s].*)?$`, "u");

function writeExpected(result: string): string {
  const value = MEASURED.exec(result)?.[1] ?? result;
  if (IS_NUMBER.test(value)) return writeNumber(value);
  const source = ts.createSourceFile("result.ts", `(${value})`, ts.ScriptTarget.ES2022, true);
  const statement = source.statements[0];
  const { parseDiagnostics = [] } = source as { parseDiagnostics?: readonly unknown[] };
  if (
    parseDiagnostics.length > 0 ||
    source.statements.length !== 1 ||
    statement === undefined ||
    !ts.isExpressionStatement(statement) ||
    !ts.isParenthesizedExpression(statement.expression)
  ) {
    throw new Error(`expected a number with its unit or a literal, got ${result}`);
  }
  return writeLiteral(statement.expression.expression, result);
}

function writeLiteral(node: ts.Expression, result: string): string {
  if (ts.isNumericLiteral(node) || ts.isPrefixUnaryExpression(node)) {
    if (IS_NUMBER.test(node.getText())) return writeNumber(node.getText());
  }
  if (ts.isArrayLiteralExpression(node)) {
    return `[${node.elements.map((element) => writeLiteral(element, result)).join(", ")}]`;
  }
  if (ts.isObjectLiteralExpression(node)) {
    const properties = node.properties.map((property) => {
      if (!ts.isPropertyAssignment(property)) throw new Error(`expected a literal, got ${result}`);
      return `${property.name.getText()}: ${writeLiteral(property.initializer, result)}`;
    });
    return `{ ${properties.join(", ")} }`;
  }
  if (ts.isStringLiteral(node) || /^(true|false|null|undefined)$/.test(node.getText())) return node.getText();
  throw new Error(`expected a number with its unit or a literal, got ${result}`);
}

function writeNumber(digits: string): string {
  return `expect.toRoundTo(${JSON.stringify(digits.replaceAll("−", "-"))})`;
}
