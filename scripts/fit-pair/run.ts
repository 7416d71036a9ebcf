/** Fits the reducing parameters of pairs to data of phase equilibrium; see the usage below. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { estimatePair, findPairIn, type PairData, type PairReducing } from "../../src/catalogue/index.js";
import { InputError } from "../../src/units/index.js";
import { parseEquilibria } from "./data-schema.js";
import { type FitDescription, parametersIn, parametersOf } from "./fit-schema.js";
import { pairFiles } from "./pair-file.js";
import { checkReport, reportOf } from "./report.js";
import { reproductionOf } from "./reproduction.js";
import { filedPairs, readWorkshop, runFit, type Workshop } from "./workshop.js";

const usage = `Fits reducing parameters of pairs to phase equilibria and prints what is left over.

  npm run fit-pair                        the fits there are
  npm run fit-pair -- NAME                the fit data/fits/NAME.json, or else the pair that the file
                                          data/equilibria/NAME.json is about
  npm run fit-pair -- path/to/NAME.json   the same of a file that is elsewhere
  npm run fit-pair -- --check             all fits, and how far they lie from data/pairs/

  --as-of-now      takes the pairs of data/pairs/ in place of what a fit assumes
  --free NAMES     which parameters a file is fitted with; betaT,gammaT if left out
  --write          writes data/pairs/; then run npm run fluids

DEVELOPERS.md says more.`;

/** A mistake of the person at the keyboard: said in plain words, without a stack. */
class UsageError extends Error {}

const options = {
  check: { type: "boolean" },
  write: { type: "boolean" },
  "as-of-now": { type: "boolean" },
  free: { type: "string" },
  help: { type: "boolean" },
} as const;

function main(): void {
  const { values, positionals } = readArguments();
  const [name, ...more] = positionals;
  if (more.length > 0) throw new UsageError(`One fit at a time.\n\n${usage}`);
  if (values.help === true) {
    console.log(usage);
    return;
  }
  const workshop = readWorkshop();
  if (values.check === true) {
    console.log(checkReport(checkAll(workshop)));
  } else if (name === undefined) {
    console.log([usage, "", ...namesAndTitles(workshop)].join("\n"));
  } else {
    const write = values.write === true;
    const isElsewhere = name.endsWith(".json");
    if (isElsewhere && write)
      throw new UsageError("Put the file into data/equilibria/ before its pair is written.");
    const complete = isElsewhere ? withFile(workshop, name) : workshop;
    const description = workshop.fits.get(name) ?? fitOfFile(complete, name, values.free);
    fitAndReport(complete, description, { asOfNow: values["as-of-now"] === true, write });
  }
}

function readArguments() {
  try {
    return parseArgs({ allowPositionals: true, options });
  } catch (error) {
    throw new UsageError(`${(error as Error).message}\n\n${usage}`);
  }
}

function checkAll(workshop: Workshop) {
  return [...workshop.fits].map(([name, description]) => {
    const filed = filedPairs(workshop, description);
    const result = runFit(workshop, description);
    return [name, reproductionOf(description, result, filed, workshop.pairs)] as const;
  });
}

function namesAndTitles({ fits }: Workshop): readonly string[] {
  return [...fits].map(([name, { title }]) => `${name}: ${title}`);
}

function withFile(workshop: Workshop, path: string): Workshop {
  const set = parseEquilibria(readJson(path), workshop.fluids, workshop.bibliography);
  return { ...workshop, sets: new Map([...workshop.sets, [path, set]]) };
}

/** The fit of a data file that nothing describes: of one pair, held by no prior. */
function fitOfFile({ sets, fits, pairs }: Workshop, name: string, free = "betaT,gammaT"): FitDescription {
  const set = sets.get(name);
  if (set === undefined) {
    const names = [...fits.keys(), ...sets.keys()].join("\n  ");
    throw new UsageError(`There is neither a fit nor a file ${name}; expected one of\n  ${names}`);
  }
  const fluids = [...new Set(set.points.flatMap((point) => point.fluids))];
  const [first, second, ...others] = fluids;
  if (first === undefined || second === undefined || others.length > 0) {
    const about = fluids.map(({ designation }) => designation).join(", ");
    throw new UsageError(`${name} is about ${about}; without a description only one pair can be fitted.`);
  }
  const wanted = free.split(",").map((parameter) => parameter.trim());
  const form = formOf(wanted);
  const filed = findPairIn(pairs, first.designation, second.designation);
  const estimate = filed ?? estimatePair(first, second);
  const starts = estimate?.reducing.form === form ? parametersIn(estimate) : {};
  const usual = form === "kunz-wagner" ? 1 : 0;
  return {
    title: set.title,
    free: [
      {
        between: filed?.between ?? [first.designation, second.designation],
        form,
        fitted: Object.fromEntries(
          wanted.map((parameter) => [parameter, { start: starts[parameter] ?? usual }]),
        ),
        fixed: Object.fromEntries(
          Object.entries(starts).filter(([parameter]) => !wanted.includes(parameter)),
        ),
      },
    ],
    assumed: [],
    data: [{ file: name }],
    against: [],
    notes: set.notes,
  };
}

/** The form of reducing functions that has these parameters. */
function formOf(wanted: readonly string[]): PairReducing["form"] {
  const forms = Object.keys(parametersOf) as PairReducing["form"][];
  const form = forms.find((one) =>
    wanted.every((name) => parametersOf[one].some((own) => own.name === name)),
  );
  if (form !== undefined) return form;
  const lists = forms.map((one) => parametersOf[one].map(({ name }) => name).join(", "));
  throw new UsageError(`--free ${wanted.join(",")}: expected names of ${lists.join(", or of ")}`);
}

function readJson(path: string): unknown {
  try {
    return JSON.parse(readFileSync(path, "utf8"));
  } catch (error) {
    throw new UsageError(`${path} cannot be read as JSON: ${(error as Error).message}`);
  }
}

function fitAndReport(
  workshop: Workshop,
  description: FitDescription,
  { asOfNow, write }: { readonly asOfNow: boolean; readonly write: boolean },
): void {
  const { title, superseded, data } = description;
  if (write && superseded !== undefined) {
    throw new UsageError(`Nothing is written of this fit: ${superseded}.`);
  }
  const made = asOfNow ? { ...description, assumed: [] } : description;
  const result = runFit(workshop, made);
  const filed = filedPairs(workshop, description);
  console.log(reportOf(title, result, reproductionOf(made, result, filed, workshop.pairs)));
  if (!write) return;
  const sets = data.map(({ file }) => workshop.sets.get(file)!);
  for (const { file, text } of pairFiles(description, result, sets, readPair)) {
    const isNew = readPair(file) === undefined;
    writeFileSync(pairUrl(file), text);
    console.log(`\nwritten: data/pairs/${file}`);
    if (!isNew) console.log("Its notes were kept: read whether they are still true.");
  }
}

function pairUrl(file: string): URL {
  return new URL(`../../data/pairs/${encodeURIComponent(file)}`, import.meta.url);
}

function readPair(file: string): PairData | undefined {
  return existsSync(pairUrl(file)) ? JSON.parse(readFileSync(pairUrl(file), "utf8")) : undefined;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    main();
  } catch (error) {
    if (error instanceof InputError) {
      for (const { path, value, expected } of error.problems) {
        console.error(
          `${path}: ${value === undefined ? "missing" : JSON.stringify(value)}; expected ${expected}`,
        );
      }
    } else {
      console.error((error as Error).message);
    }
    process.exitCode = 1;
  }
}
