import type { CommissioningRecord, RecordEntry, RecordStep } from "../record/record.js";
import { cautionsOf, earlierVisit, headline, visitNames } from "./print-text.js";

/** Prints a record as Markdown. */
export function recordAsMarkdown(record: CommissioningRecord): string {
  const blocks = [
    `# Commissioning record: ${record.title}`,
    `${record.place}, ${record.date}, ${visitNames[record.kind]}. **${headline(record)}**`,
    list(record.facts),
    table(record),
    ...record.steps.map(section),
    ...(record.missing.length === 0 ? [] : [`Not in this job: ${record.missing.join("; ")}.`]),
    ...(record.next.length === 0 ? [] : [`## What to do next\n\n${numbered(record.next)}`]),
    ...(record.earlier.length === 0 ? [] : [`## Earlier visits\n\n${earlier(record)}`]),
    `## Cautions\n\n${numbered(cautionsOf(record).map(({ text }) => text))}`,
    `## Sources\n\n${record.sources.map((source) => `- ${source}`).join("\n")}`,
  ];
  return `${blocks.join("\n\n")}\n`;
}

function numbered(texts: readonly string[]): string {
  return texts.map((text) => `1. ${text}`).join("\n");
}

function earlier(record: CommissioningRecord): string {
  return record.earlier.map((visit) => `- ${earlierVisit(visit)}: ${visit.verdict}`).join("\n");
}

function table({ steps }: CommissioningRecord): string {
  const rows = steps.map(
    ({ title, found, verdict }) => `| ${cell(title)} | ${cell(found[0]?.text ?? "")} | ${verdict} |`,
  );
  return ["| Step | Found | Verdict |", "| --- | --- | --- |", ...rows].join("\n");
}

function section(step: RecordStep): string {
  return [
    `## ${step.title}: ${step.verdict}`,
    `| | | |\n| --- | --- | --- |\n${[
      ...rows("read", step.read),
      ...rows("expected", step.expected),
      ...rows("found", step.found),
    ].join("\n")}`,
    step.because,
    ...step.next.map((text) => `**Next:** ${text}`),
    ...step.warnings.map(({ code, message }) => `> ${message} (\`${code}\`)`),
    ...(step.assumptions.length === 0 ? [] : [`Assumed: ${step.assumptions.join(" ")}`]),
  ].join("\n\n");
}

function rows(name: string, entries: readonly RecordEntry[]): string[] {
  return entries.map(
    ({ label, text }, index) => `| ${index === 0 ? name : ""} | ${cell(label)} | ${cell(text)} |`,
  );
}

function list(entries: readonly RecordEntry[]): string {
  return entries.map(({ label, text }) => `- ${label}: ${text}`).join("\n");
}

/** A bar would end the cell. */
function cell(text: string): string {
  return text.replaceAll("|", "\\|");
}
