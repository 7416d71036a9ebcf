import type { Problem } from "../../../units/index.js";
import type { Job } from "../form/job.js";
import type { CommissioningRecord, RecordVisit } from "./record.js";

/** Nameplates are read again at each visit and rounded in another unit: half a per mille is the same charge. */
const SAME_CHARGE = 5e-4;

/** The visits before that of a job, the oldest first. */
export function visitsBefore({ earlier }: Job): readonly RecordVisit[] {
  return earlier === undefined ? [] : [...earlier.earlier, visitOf(earlier)];
}

/** What keeps a job from being the next visit to the system of the record that it continues. */
export function problemsOfContinuing({ earlier, unit, date }: Job, designation: string): Problem[] {
  if (earlier === undefined) return [];
  const problems: Problem[] = [];
  const { refrigerant, nameplateCharge } = earlier.system;
  if (refrigerant !== designation) {
    const expected = `${refrigerant}, as in the record that is continued`;
    problems.push({ path: "unit.refrigerant", value: unit.refrigerant, expected });
  }
  const { si, text } = unit.nameplateCharge;
  if (nameplateCharge !== undefined && Math.abs(si - nameplateCharge) > SAME_CHARGE * nameplateCharge) {
    const expected = `${nameplateCharge} kg, as in the record that is continued`;
    problems.push({ path: "unit.nameplateCharge", value: text, expected });
  }
  if (date < earlier.date) {
    const expected = `a day not before ${earlier.date}, the last visit of the record that is continued`;
    problems.push({ path: "date", value: date, expected });
  }
  return problems;
}

function visitOf(record: CommissioningRecord): RecordVisit {
  const { kind, title, date, facts, verdict, steps, missing, next, sources } = record;
  return { kind, title, date, facts, verdict, steps, missing, next, sources };
}
