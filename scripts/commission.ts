import { readFile } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { parseArgs } from "node:util";
import { parse as parseCsv } from "csv-parse/sync";
import {
  commission,
  type LogTable,
  logsOf,
  readJob,
  recordAsMarkdown,
  recordAsText,
} from "../src/field/job/index.js";
import { InputError, isDewlineError } from "../src/units/index.js";

const demonstration = new URL("../docs/jobs/weaving-studio.json", import.meta.url).pathname;

const printers = {
  text: recordAsText,
  markdown: recordAsMarkdown,
  json: (record: unknown) => `${JSON.stringify(record, undefined, 2)}\n`,
} as const;

const usage = `Prints the commissioning record of an installation job.

  npm start                                  the demonstration job
  npm start -- path/to/job.json              another job; its logs are read from the same folder
  npm start -- path/to/job.json --format F   F is text, markdown or json

The form of a job is described in docs/guides/installation-job.md.`;

/** A mistake of the person at the keyboard: said in plain words, without a stack. */
class UsageError extends Error {}

async function main(): Promise<void> {
  const { path, format } = readArguments();
  const document = await readJson(path);
  const logs: Record<string, LogTable> = {};
  for (const name of logsOf(document)) {
    const table = await readLogFile(resolve(dirname(path), name));
    if (table !== undefined) logs[name] = table;
  }
  process.stdout.write(printers[format](commission(readJob(document, logs))));
}

function readArguments(): { readonly path: string; readonly format: keyof typeof printers } {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse();
  } catch (error) {
    throw new UsageError(`${(error as Error).message}\n\n${usage}`);
  }
  const { values, positionals } = parsed;
  if (values.help === true) throw new UsageError(usage);
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

async function readJson(path: string): Promise<unknown> {
  const text = await readFile(path, "utf8").catch((error: Error) => {
    throw new UsageError(`The job cannot be read: ${error.message}`);
  });
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new UsageError(`${path} is not JSON: ${(error as Error).message}`);
  }
}

/** The table of a log, or undefined where there is no such file: the job's check then says so. */
async function readLogFile(path: string): Promise<LogTable | undefined> {
  const text = await readFile(path, "utf8").catch(() => undefined);
  if (text === undefined) return undefined;
  // Ragged rows are kept: the job's check names them.
  const rows: string[][] = parseCsv(text, { bom: true, relax_column_count: true, skip_empty_lines: true });
  const [header = [], ...cells] = rows;
  return { header, rows: cells };
}

main().catch((error: unknown) => {
  if (error instanceof UsageError) {
    console.error(error.message);
  } else if (error instanceof InputError) {
    console.error(`The job cannot be computed; ${error.problems.length} to put right:`);
    for (const { path, value, expected } of error.problems) {
      console.error(`  ${path === "" ? "the job" : path}: ${JSON.stringify(value)}; expected ${expected}`);
    }
  } else if (isDewlineError(error)) {
    console.error(error.message);
  } else {
    throw error;
  }
  process.exitCode = 1;
});
