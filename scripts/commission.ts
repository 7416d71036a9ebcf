import { readFile } from "node:fs/promises";
import { basename, dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { CsvError, parse as parseCsv } from "csv-parse/sync";
import { type JSONPath, visit } from "jsonc-parser";
import {
  type CommissioningRecord,
  commission,
  type LogTable,
  logsOf,
  readJob,
  recordAsMarkdown,
  recordAsText,
  recordNameOf,
  tryReadRecord,
} from "../src/field/job/index.js";
import { InputError, isDewlineError } from "../src/units/index.js";

const demonstration = fileURLToPath(new URL("../docs/jobs/weaving-studio.json", import.meta.url));

/** A file full of mistakes is put right from the top. */
const mostProblems = 40;

const printers = {
  text: recordAsText,
  markdown: recordAsMarkdown,
  json: (record: unknown) => `${JSON.stringify(record, undefined, 2)}\n`,
} as const;

const usage = `Prints the commissioning record of an installation job.

  npm start                                  the demonstration job
  npm start -- path/to/job.json              another job; its logs, and the record it continues, lie beside it
  npm start -- path/to/job.json --format F   F is text, markdown or json

The form of a job is described in docs/guides/installation-job.md.`;

/** A mistake of the person at the keyboard: said in plain words, without a stack. */
class UsageError extends Error {}

async function main(): Promise<void> {
  const wanted = readArguments();
  if (wanted === "help") {
    console.log(usage);
    return;
  }
  const { path, format } = wanted;
  const document = await readJson("job", path);
  const logs: Record<string, LogTable> = {};
  for (const name of logsOf(document)) {
    const table = await readLogFile(resolve(dirname(path), name));
    if (table !== undefined) logs[name] = table;
  }
  const name = recordNameOf(document);
  const earlier = name === undefined ? undefined : await readRecordFile(resolve(dirname(path), name));
  process.stdout.write(printers[format](commission(readJob(document, logs, earlier))));
}

function readArguments(): "help" | { readonly path: string; readonly format: keyof typeof printers } {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse();
  } catch (error) {
    throw new UsageError(`${(error as Error).message}\n\n${usage}`);
  }
  const { values, positionals } = parsed;
  if (values.help === true) return "help";
  const { format } = values;
  if (!Object.hasOwn(printers, format)) {
    throw new UsageError(`--format ${format}: expected one of ${Object.keys(printers).join(", ")}`);
  }
  if (positionals.length > 1) throw new UsageError(`One job at a time.\n\n${usage}`);
  return { path: resolve(positionals[0] ?? demonstration), format: format as keyof typeof printers };
}

function parse() {
  return parseArgs({
    allowPositionals: true,
    options: { format: { type: "string", default: "text" }, help: { type: "boolean" } },
  });
}

/** The record that a job continues; what is wrong with it is said by its file. */
async function readRecordFile(path: string): Promise<CommissioningRecord> {
  const record = tryReadRecord(await readJson("record", path));
  if (record.ok) return record.value;
  if (!(record.error instanceof InputError)) throw record.error;
  const problems = record.error.problems.map((problem) => ({
    ...problem,
    path: `${basename(path)}: ${problem.path}`,
  }));
  throw new InputError(problems);
}

async function readJson(kind: "job" | "record", path: string): Promise<unknown> {
  const raw = await readFile(path, "utf8").catch((error: Error) => {
    throw new UsageError(`The ${kind} cannot be read: ${error.message}`);
  });
  // Some editors begin a file with a mark of its byte order.
  const text = raw.replace(/^\uFEFF/, "");
  if (text.trim() === "") throw new UsageError(`${path} is empty.`);
  const twice = fieldsWrittenTwice(text);
  if (twice.length > 0) throw new InputError(twice);
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new UsageError(`${path} is not JSON: ${(error as Error).message}`);
  }
}

/** JSON.parse keeps the last of two fields of one name in silence: which of them was meant is not for us to say. */
function fieldsWrittenTwice(text: string): { path: string; value: string; expected: string }[] {
  const seen = new Set<string>();
  const problems: { path: string; value: string; expected: string }[] = [];
  visit(text, {
    onObjectProperty: (name, _offset, _length, line, _column, pathSupplier: () => JSONPath) => {
      const path = [...pathSupplier(), name].join(".");
      if (seen.has(path))
        problems.push({ path, value: `line ${line + 1}`, expected: "a field that is written once" });
      seen.add(path);
    },
  });
  return problems;
}

/** The table of a log, or undefined where there is no such file: the job's check then says so. */
async function readLogFile(path: string): Promise<LogTable | undefined> {
  const text = await readFile(path, "utf8").catch(() => undefined);
  if (text === undefined) return undefined;
  try {
    // Ragged rows are kept: the job's check names them.
    const rows: string[][] = parseCsv(text, { bom: true, relax_column_count: true, skip_empty_lines: true });
    const [header = [], ...cells] = rows;
    return { header, rows: cells };
  } catch (error) {
    if (error instanceof CsvError) throw new UsageError(`${path} is not CSV: ${error.message}`);
    throw error;
  }
}

main().catch((error: unknown) => {
  if (error instanceof UsageError) {
    console.error(error.message);
  } else if (error instanceof InputError) {
    console.error(`The job cannot be computed; ${error.problems.length} to put right:`);
    for (const { path, value, expected } of error.problems.slice(0, mostProblems)) {
      const shown = value === undefined ? "missing" : JSON.stringify(value);
      console.error(`  ${path === "" ? "the job" : path}: ${shown}; expected ${expected}`);
    }
    const more = error.problems.length - mostProblems;
    if (more > 0) console.error(`  and ${more} more`);
  } else if (isDewlineError(error)) {
    console.error(error.message);
  } else {
    throw error;
  }
  process.exitCode = 1;
});
