import * as z from "zod/mini";
import { problemsOf } from "../../../catalogue/index.js";
import type { Problem } from "../../../units/index.js";
import { isDate } from "../schema/schema-fields.js";
import { type CommissioningRecord, RECORD_FORMAT, RECORD_STEPS, VISIT_KINDS } from "./record.js";

// Everything here is a function: a schema made at module level would be work that a bundler has to keep.

/** Holds a document against the form of a record, as it is written to a file. */
export function parseRecord(document: unknown): ParsedRecord {
  const parsed = z.safeParse(recordSchema(), document);
  return parsed.success
    ? { ok: true, record: parsed.data as CommissioningRecord }
    : { ok: false, problems: problemsOf(parsed.error.issues, document) };
}

/** A record, or what is wrong with it by paths. */
type ParsedRecord =
  | { readonly ok: true; readonly record: CommissioningRecord }
  | { readonly ok: false; readonly problems: readonly Problem[] };

function recordSchema(): z.core.$ZodType {
  const visit = visitFields();
  return z.strictObject(
    {
      format: z.literal(RECORD_FORMAT, `"${RECORD_FORMAT}"`),
      place: text(),
      system: z.strictObject({ refrigerant: text(), nameplateCharge: z.optional(number()) }, "the system"),
      ...visit,
      earlier: z.array(z.strictObject(visit, "a visit"), "the visits before"),
    },
    "a record",
  );
}

function visitFields() {
  return {
    kind: z.enum(VISIT_KINDS, `one of ${VISIT_KINDS.join(", ")}`),
    title: text(),
    date: text().check(z.refine((day: string) => isDate(day), "a date of the calendar, such as 2026-05-14")),
    facts: entries(),
    verdict: verdict(),
    steps: z.array(step(), "the steps"),
    missing: texts(),
    next: texts(),
    sources: texts(),
  };
}

function step() {
  return z.strictObject(
    {
      name: z.enum(RECORD_STEPS, `one of ${RECORD_STEPS.join(", ")}`),
      title: text(),
      verdict: verdict(),
      read: entries(),
      expected: entries(),
      found: entries(),
      because: text(),
      next: texts(),
      warnings: z.array(z.strictObject({ code: text(), message: text() }, "a warning"), "a list of warnings"),
      assumptions: texts(),
      cautions: z.array(z.strictObject({ code: text(), text: text() }, "a caution"), "a list of cautions"),
    },
    "a step",
  );
}

function entries() {
  const entry = z.strictObject(
    {
      label: text(),
      text: text(),
      si: z.optional(number()),
      unit: z.optional(text()),
      expandedUncertainty: z.optional(number()),
    },
    "an entry",
  );
  return z.array(entry, "a list of entries");
}

function verdict() {
  return z.enum(["pass", "fail", "inconclusive"], "pass, fail or inconclusive");
}

function texts() {
  return z.array(text(), "a list of texts");
}

function text() {
  return z.string("a text");
}

function number() {
  return z.number("a finite number");
}
