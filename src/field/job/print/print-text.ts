import type { Caution } from "../../../safety/index.js";
import type {
  CommissioningRecord,
  RecordEntry,
  RecordStep,
  RecordVisit,
  VisitKind,
} from "../record/record.js";

const width = 100;
const labelWidth = 11;
const titleWidth = 29;

/** Prints a record as plain text for a terminal. */
export function recordAsText(record: CommissioningRecord): string {
  const cautions = cautionsOf(record);
  const lines = [
    ...heading(`Commissioning record: ${record.title}`, headline(record)),
    `${record.place}, ${record.date}, ${visitNames[record.kind]}`,
    ...wrap(record.facts.map(({ label, text }) => `${label} ${text}`).join(" · "), 0),
    "",
    ...record.steps.flatMap(summary),
    ...record.steps.flatMap((step, index) => ["", ...stepLines(step, index + 1, cautions)]),
    "",
    ...(record.missing.length === 0
      ? []
      : [...wrap(`Not in this job: ${record.missing.join("; ")}.`, 0), ""]),
    ...(record.next.length === 0
      ? []
      : ["What to do next", ...record.next.flatMap((text, index) => entry(`${index + 1}.`, text, 5)), ""]),
    ...(record.earlier.length === 0
      ? []
      : [
          "Earlier visits",
          ...record.earlier.flatMap((visit) => heading(`  ${earlierVisit(visit)}`, visit.verdict)),
          "",
        ]),
    "Cautions",
    ...cautions.flatMap(({ text }, index) => entry(`[${index + 1}]`, text, 5)),
    "",
    "Sources",
    ...record.sources.flatMap((source) => wrap(source, 2)),
  ];
  return `${lines.join("\n")}\n`;
}

/** The verdict, with how many of the steps it rests on where some are missing. */
export function headline({ verdict, steps, missing }: CommissioningRecord): string {
  const all = steps.length + missing.length;
  return verdict.toUpperCase() + (missing.length === 0 ? "" : `, ${steps.length} of ${all} steps`);
}

/** An earlier visit in one line. */
export function earlierVisit({ date, kind, title }: RecordVisit): string {
  return `${date}  ${visitNames[kind]}: ${title}`;
}

/** Kinds of visits in words. */
export const visitNames: Readonly<Record<VisitKind, string>> = {
  installation: "installation",
  "yearly-check": "yearly check",
  "top-up": "top-up",
  recovery: "recovery",
};

/** Every caution of a record once, in the order in which the steps show them. */
export function cautionsOf({ steps }: CommissioningRecord): readonly Caution[] {
  const all = steps.flatMap(({ cautions }) => cautions);
  return all.filter(({ code }, index) => all.findIndex((other) => other.code === code) === index);
}

/** One line a step: what was found first, and the verdict. */
function summary({ title, found, verdict }: RecordStep, index: number): string[] {
  const { label = "", text = "" } = found[0] ?? {};
  return heading(`${numbered(index + 1)} ${title.padEnd(titleWidth)}  ${label} ${text}`, verdict);
}

/** Steps are numbered in a column of two digits. */
function numbered(number: number): string {
  return String(number).padEnd(2);
}

function stepLines(step: RecordStep, number: number, cautions: readonly Caution[]): string[] {
  const numbers = step.cautions.map(({ code }) => cautions.findIndex((other) => other.code === code) + 1);
  return [
    ...heading(`${numbered(number)} ${step.title}`, step.verdict),
    ...entries("read", step.read),
    ...entries("expected", step.expected),
    ...entries("found", step.found),
    ...field("because", step.because),
    ...step.next.flatMap((text) => field("next", text)),
    ...step.warnings.flatMap(({ code, message }) => field("warning", `${message} [${code}]`)),
    ...step.assumptions.flatMap((text) => field("assumed", text)),
    ...field("cautions", numbers.map((each) => `[${each}]`).join(" ")),
  ];
}

function entries(name: string, list: readonly RecordEntry[]): string[] {
  return list.flatMap(({ label, text }, index) => field(index === 0 ? name : "", `${label}: ${text}`));
}

function field(name: string, text: string): string[] {
  return entry(`   ${name}`, text, labelWidth + 3);
}

function entry(name: string, text: string, indent: number): string[] {
  const [first = "", ...rest] = wrap(text, indent);
  return [`${name.padEnd(indent)}${first.trimStart()}`, ...rest];
}

/** Two texts at either end of a line, or on lines of their own where they do not fit into one. */
function heading(left: string, right: string): string[] {
  const gap = width - left.length - right.length;
  return gap < 2 ? [...wrap(left, 0), right.padStart(width)] : [`${left}${" ".repeat(gap)}${right}`];
}

/** Breaks a text at spaces into lines of at most `width`, each indented. */
function wrap(text: string, indent: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && indent + line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else {
      line = line === "" ? word : `${line} ${word}`;
    }
  }
  lines.push(line);
  return lines.map((each) => " ".repeat(indent) + each);
}
