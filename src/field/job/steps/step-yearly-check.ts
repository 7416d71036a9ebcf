import { annualLeakRate } from "../../../safety/index.js";
import { formatNumber, InputCheck } from "../../../units/index.js";
import { fieldCautions } from "../../cautions.js";
import { decide, type Verdict, worstVerdict } from "../../measurement/decision.js";
import type { JobYearlyCheck } from "../form/service.js";
import { asRead, fact, shownUncertain, shownUnits } from "../print/shown-entry.js";
import { visitsBefore } from "../record/continue-record.js";
import type { RecordEntry, RecordStep, RecordVisit } from "../record/record.js";
import { stepTitles } from "../what-next.js";
import type { JobContext } from "./context.js";
import { lineOutcome } from "./step-line-reading.js";

/** What is followed from visit to visit. */
const followed = ["superheat", "subcooling"] as const;

/** Has anything moved since the readings were first taken, and was refrigerant lost? */
export function yearlyCheckStep(yearly: JobYearlyCheck, context: JobContext): RecordStep {
  const { job, safetyClass } = context;
  const { allowedChange, fullCharge, added, since, allowedPercentPerYear } = yearly;
  const before = visitsBefore(job);
  const check = new InputCheck();
  const tooMuch = `at most the full charge, ${fullCharge.text}`;
  check.require(added.si <= fullCharge.si, "added", added.text, tooMuch);
  check.finish();
  const days = since.si / 86400;
  const loss = annualLeakRate({ added: added.si, fullCharge: fullCharge.si, daysSinceLastAddition: days });
  const lossVerdict: Verdict = loss.percentPerYear <= allowedPercentPerYear ? "pass" : "fail";
  const changes = followed.flatMap((name) => changeOf(name, before, yearly, context) ?? []);
  const verdict = worstVerdict([
    lossVerdict,
    // Without a reading to compare with nothing is known of a change.
    ...(changes.length === 0 ? (["inconclusive"] as const) : changes.map((change) => change.verdict)),
  ]);
  return {
    name: "yearlyCheck",
    title: stepTitles.yearlyCheck,
    verdict,
    read: [
      asRead("full charge", fullCharge),
      asRead("added", added),
      asRead("since", since),
      fact("visits before", before.length === 0 ? "none in this record" : `${before.length}`),
    ],
    expected: [
      asRead("superheat and subcooling moved by at most", allowedChange),
      fact("lost in a year at most", `${allowedPercentPerYear} % of the full charge`),
    ],
    found: [
      fact("lost in a year", `${formatNumber(loss.percentPerYear, 1)} % of the full charge`),
      ...changes.flatMap(({ entries }) => entries),
    ],
    because: [
      `${formatNumber(loss.percentPerYear, 1)} % a year is ${lossVerdict === "pass" ? "within" : "above"} the ` +
        `${allowedPercentPerYear} % allowed`,
      ...(changes.length === 0
        ? ["no earlier visit holds a superheat or subcooling to compare with"]
        : changes.map(({ because }) => because)),
    ].join("; "),
    next: nextOf(lossVerdict, changes),
    warnings: [],
    assumptions: [
      "Loads and outdoor temperatures were alike at both visits: superheat and subcooling move with them too.",
      "What was added is what was lost.",
    ],
    cautions: fieldCautions("gauge-reading", safetyClass),
  };
}

interface Change {
  readonly verdict: Verdict;
  readonly entries: readonly RecordEntry[];
  readonly because: string;
}

/** Change of a reading since the first visit that holds it; undefined where either visit has none. */
function changeOf(
  name: (typeof followed)[number],
  before: readonly RecordVisit[],
  { allowedChange }: JobYearlyCheck,
  context: JobContext,
): Change | undefined {
  const reading = context.job[name];
  const first = firstOf(name, before);
  if (reading === undefined || first === undefined) return undefined;
  const now = lineOutcome(name, reading, context);
  const change = now.value - first.value;
  // Other instruments or the same ones years later: their errors are taken as independent.
  const U = Math.hypot(now.expandedUncertainty, first.expandedUncertainty);
  const decision = decide(
    change,
    U,
    { minimum: -allowedChange.si, maximum: allowedChange.si },
    { quantity: `change of ${name}`, unit: "K" },
  );
  return {
    verdict: decision.verdict,
    entries: [
      shownUncertain(
        `${name} on ${first.date}`,
        first.value,
        first.expandedUncertainty,
        shownUnits.kelvinDifference,
      ),
      shownUncertain(`change of ${name} since`, change, U, shownUnits.kelvinDifference),
    ],
    because: decision.because,
  };
}

interface FirstReading {
  readonly date: string;
  readonly value: number;
  readonly expandedUncertainty: number;
}

/** The first reading of its kind on record: what the unit did when it was new. */
function firstOf(name: string, visits: readonly RecordVisit[]): FirstReading | undefined {
  for (const { date, steps } of visits) {
    const found = steps.find((step) => step.name === name)?.found[0];
    if (found?.si === undefined || found.expandedUncertainty === undefined) continue;
    return { date, value: found.si, expandedUncertainty: found.expandedUncertainty };
  }
  return undefined;
}

function nextOf(loss: Verdict, changes: readonly Change[]): string[] {
  return [
    ...(loss === "pass" ? [] : ["Find and mend the leak: more refrigerant is lost than is allowed."]),
    ...(changes.some(({ verdict }) => verdict === "fail")
      ? ["Find out why superheat or subcooling moved: leak search first, then air flow, coils and filters."]
      : []),
    ...(changes.length === 0 ? ["Keep this record: it is what the next visit is held against."] : []),
  ];
}
