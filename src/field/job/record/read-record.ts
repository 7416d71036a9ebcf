import { attempt, InputError, type Outcome, type Problem } from "../../../units/index.js";
import { worstVerdict } from "../../measurement/decision.js";
import { fromFirstForm } from "./first-form.js";
import type { CommissioningRecord, RecordVisit } from "./record.js";
import { parseRecord } from "./record-schema.js";

/**
 * Reads a record that was kept as JSON, so that a later visit can be added to it.
 *
 * A record of the first form, `dewline-record/1`, is read as the one visit that it is.
 *
 * @param document - The parsed JSON.
 * @throws {@link InputError} `malformed-input`, with every problem at once; also for visits out of the order of time, and
 * for a verdict that is not that of its steps.
 */
export function readRecord(document: unknown): CommissioningRecord {
  const parsed = parseRecord(fromFirstForm(document));
  if (!parsed.ok) throw new InputError(parsed.problems);
  const { record } = parsed;
  const problems = [...problemsOfVisit("", record), ...problemsOfOrder(record)];
  for (const [index, visit] of record.earlier.entries()) {
    problems.push(...problemsOfVisit(`earlier[${index}].`, visit));
  }
  if (problems.length > 0) throw new InputError(problems);
  return record;
}

/** As {@link readRecord}, without throwing. */
export function tryReadRecord(document: unknown): Outcome<CommissioningRecord> {
  return attempt(() => readRecord(document));
}

/** A record is evidence: one whose parts contradict each other was changed by hand. */
function problemsOfVisit(path: string, { verdict, steps }: RecordVisit): Problem[] {
  const expected = worstVerdict(steps.map((step) => step.verdict));
  const problems: Problem[] = [];
  if (verdict !== expected) {
    problems.push({
      path: `${path}verdict`,
      value: verdict,
      expected: `${expected}, the worst of its steps`,
    });
  }
  steps.forEach(({ name }, index) => {
    if (steps.findIndex((other) => other.name === name) < index) {
      problems.push({ path: `${path}steps[${index}].name`, value: name, expected: "each step once" });
    }
  });
  return problems;
}

/** Days are compared as text: in the form of ISO 8601 that is their order. */
function problemsOfOrder(record: CommissioningRecord): Problem[] {
  const visits: readonly RecordVisit[] = [...record.earlier, record];
  return visits.flatMap(({ date }, index) => {
    const before = visits[index - 1];
    if (before === undefined || date >= before.date) return [];
    const path = index === record.earlier.length ? "date" : `earlier[${index}].date`;
    return [{ path, value: date, expected: `not before ${before.date}, the visit before it` }];
  });
}
