import { tryFlammabilityFacts } from "../../safety/index.js";
import { type Refrigerant, refrigerant } from "../../state/index.js";
import {
  attempt,
  InputError,
  type LocalAtmosphere,
  localAtmosphere,
  type Outcome,
  type Problem,
  requireObject,
} from "../../units/index.js";
import { worstVerdict } from "../measurement/decision.js";
import { mixtureModelWords } from "../measurement/mixture-model.js";
import { COVERAGE_FACTOR } from "../measurement/uncertainty.js";
import type { JobLineSet } from "./form/installation.js";
import type { Job } from "./form/job.js";
import { fact, shownUncertain, shownUnits } from "./print/shown-entry.js";
import { problemsIn } from "./read/job-paths.js";
import { problemsOfContinuing, visitsBefore } from "./record/continue-record.js";
import {
  type CommissioningRecord,
  RECORD_FORMAT,
  RECORD_STEPS,
  type RecordEntry,
  type RecordStep,
  type RecordStepName,
} from "./record/record.js";
import type { JobContext } from "./steps/context.js";
import { chargeStep } from "./steps/step-charge.js";
import { evacuationStep } from "./steps/step-evacuation.js";
import { jointsStep } from "./steps/step-joints.js";
import { lineReadingStep } from "./steps/step-line-reading.js";
import { lineChargeOf, lineSetStep } from "./steps/step-line-set.js";
import { nitrogenHoldStep } from "./steps/step-nitrogen-hold.js";
import { openingStep } from "./steps/step-opening.js";
import { recoveryStep } from "./steps/step-recovery.js";
import { roomStep } from "./steps/step-room.js";
import { runningStep } from "./steps/step-running.js";
import { standingStep } from "./steps/step-standing.js";
import { strengthTestStep } from "./steps/step-strength-test.js";
import { topUpStep } from "./steps/step-top-up.js";
import { vacuumRiseStep } from "./steps/step-vacuum-rise.js";
import { yearlyCheckStep } from "./steps/step-yearly-check.js";
import { expectedSteps, nextSteps, stepTitles } from "./what-next.js";

/**
 * Computes the commissioning record of a job, step by step.
 *
 * A job that continues a record becomes the last visit of that record; the visits before it are kept as they were.
 *
 * @param job - A job, checked by `readJob`.
 * @returns The record; steps that the job does not hold are listed as missing, never assumed.
 * @throws {@link InputError} `malformed-input`, with everything that any step refuses, by its path in the job.
 */
export function commission(job: Job): CommissioningRecord {
  requireObject("", job, "a job that readJob has checked");
  const { context, steps, problems } = tryEverything(job);
  if (context === undefined || problems.length > 0) throw new InputError(problems);
  const { atmosphere } = context;
  const missing = expectedSteps(job.visit).filter((name) => job[name] === undefined);
  return {
    format: RECORD_FORMAT,
    kind: job.visit,
    title: job.title,
    place: job.place,
    date: job.date,
    system: {
      refrigerant: context.refrigerant.designation,
      nameplateCharge: job.unit.nameplateCharge.si,
    },
    facts: [
      ...refrigerantFacts(context),
      fact("mode", job.unit.mode),
      shownUncertain(
        "air pressure (k = 2)",
        atmosphere.pressure,
        COVERAGE_FACTOR * atmosphere.standardUncertainty,
        shownUnits.kilopascal,
      ),
      fact("from", atmosphere.because),
    ],
    verdict: worstVerdict(steps.map(({ verdict }) => verdict)),
    steps,
    missing: missing.map((name) => stepTitles[name]),
    next: nextSteps(job.visit, steps, missing),
    sources: [
      ...context.refrigerant.sources,
      ...(job.nitrogenHold === undefined ? [] : context.nitrogen.sources),
    ],
    earlier: visitsBefore(job),
  };
}

/** What is in the unit; of a blend also its components, and how well it is known how they mix. */
function refrigerantFacts({ refrigerant, safetyClass }: JobContext): readonly RecordEntry[] {
  const { designation, name, mixing } = refrigerant;
  const known = `class ${safetyClass ?? "unknown"}`;
  if (mixing === undefined) return [fact("refrigerant", `${designation}, ${name}, ${known}`)];
  return [
    fact("refrigerant", `${designation}, ${known}`),
    fact("components", name),
    fact("mixture model", mixtureModelWords(mixing)),
  ];
}

/** As {@link commission}, without throwing. */
export function tryCommission(job: Job): Outcome<CommissioningRecord> {
  return attempt(() => commission(job));
}

/** Everything that the steps of a job refuse, by its path in the job. */
export function refusalsOf(job: Job): readonly Problem[] {
  return tryEverything(job).problems;
}

function tryEverything(job: Job): {
  readonly context: JobContext | undefined;
  readonly steps: readonly RecordStep[];
  readonly problems: readonly Problem[];
} {
  const air = attempt(() => localAtmosphere(job.atmosphere));
  if (!air.ok) return { context: undefined, steps: [], problems: problemsIn(air.error, "atmosphere", job) };
  const context = contextOf(job, air.value);
  const steps: RecordStep[] = [];
  const problems: Problem[] = problemsOfContinuing(job, context.refrigerant.designation);
  for (const name of RECORD_STEPS) {
    const outcome = attempt(() => stepOf(name, job, context));
    if (!outcome.ok) problems.push(...problemsIn(outcome.error, name, job));
    else if (outcome.value !== undefined) steps.push(outcome.value);
  }
  return { context, steps, problems };
}

function contextOf(job: Job, atmosphere: LocalAtmosphere): JobContext {
  const found = refrigerant(job.unit.refrigerant);
  const { lineSet } = job;
  const facts = tryFlammabilityFacts(found.designation);
  return {
    job,
    refrigerant: found,
    nitrogen: refrigerant("R-728"),
    safetyClass: facts.ok ? (facts.value.safetyClass.value ?? undefined) : undefined,
    atmosphere,
    extraCharge: lineSet === undefined ? undefined : extraChargeOf(lineSet, found),
  };
}

/** The larger of what was weighed in and what the line set asks for: the room must bear either. */
function extraChargeOf(lineSet: JobLineSet, found: Refrigerant): NonNullable<JobContext["extraCharge"]> {
  // What is wrong with the line set is said by its own step.
  const asked = attempt(() => lineChargeOf(lineSet, found).extraCharge);
  return asked.ok && asked.value > lineSet.added.si
    ? { kilograms: asked.value, label: "asked for by the line set" }
    : { kilograms: lineSet.added.si, label: "added for the line set" };
}

function stepOf(name: RecordStepName, job: Job, context: JobContext): RecordStep | undefined {
  switch (name) {
    case "room":
      return job.room && roomStep(job.room, context);
    case "lineSet":
      return job.lineSet && lineSetStep(job.lineSet, context);
    case "nitrogenHold":
      return job.nitrogenHold && nitrogenHoldStep(job.nitrogenHold, context);
    case "evacuation":
      return job.evacuation && evacuationStep(job.evacuation, context);
    case "vacuumRise":
      return job.vacuumRise && vacuumRiseStep(job.vacuumRise, context);
    case "standing":
      return job.standing && standingStep(job.standing, context);
    case "superheat":
    case "subcooling": {
      const reading = job[name];
      return reading && lineReadingStep(name, reading, context);
    }
    case "opening":
      return job.opening && openingStep(job.opening, context);
    case "yearlyCheck":
      return job.yearlyCheck && yearlyCheckStep(job.yearlyCheck, context);
    case "topUp":
      return job.topUp && topUpStep(job.topUp, context);
    case "joints":
      return job.joints && jointsStep(job.joints, context);
    case "strengthTest":
      return job.strengthTest && strengthTestStep(job.strengthTest, context);
    case "charge":
      return job.charge && chargeStep(job.charge, context);
    case "running":
      return job.running && runningStep(job.running, context);
    case "recovery":
      return job.recovery && recoveryStep(job.recovery, context);
  }
}
