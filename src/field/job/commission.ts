import { tryFlammabilityFacts } from "../../safety/index.js";
import { type Refrigerant, refrigerant } from "../../state/index.js";
import {
  attempt,
  type DewlineError,
  InputError,
  localAtmosphere,
  type Outcome,
  OutOfRangeError,
  type Problem,
} from "../../units/index.js";
import { worstVerdict } from "../decision.js";
import type { JobContext } from "./context.js";
import type { Job, JobLineSet } from "./job.js";
import { type CommissioningRecord, RECORD_FORMAT, type RecordStep, type RecordStepName } from "./record.js";
import { fact, shownUncertain, shownUnits } from "./shown-entry.js";
import { evacuationStep } from "./step-evacuation.js";
import { lineReadingStep } from "./step-line-reading.js";
import { lineChargeOf, lineSetStep } from "./step-line-set.js";
import { nitrogenHoldStep } from "./step-nitrogen-hold.js";
import { roomStep } from "./step-room.js";
import { standingStep } from "./step-standing.js";
import { vacuumRiseStep } from "./step-vacuum-rise.js";

/** Every step in the order of the work, with its title for when a job does not hold it. */
const order: readonly (readonly [name: RecordStepName, title: string])[] = [
  ["room", "Room for the charge"],
  ["nitrogenHold", "Pressure test with nitrogen"],
  ["evacuation", "Evacuation"],
  ["vacuumRise", "Vacuum with the pump shut off"],
  ["lineSet", "Charge for the line set"],
  ["standing", "Standing pressure"],
  ["superheat", "Superheat in steady running"],
  ["subcooling", "Subcooling in steady running"],
];

/**
 * Computes the commissioning record of a job, step by step.
 *
 * @param job - A job, checked by `readJob`.
 * @returns The record; steps that the job does not hold are listed as missing, never assumed.
 * @throws {@link InputError} `malformed-input`, with everything that any step refuses, by its path in the job.
 */
export function commission(job: Job): CommissioningRecord {
  const problems: Problem[] = [];
  const collect = <T>(path: string, work: () => T): T | undefined => {
    const outcome = attempt(work);
    if (outcome.ok) return outcome.value;
    problems.push(...problemsIn(outcome.error, path, job));
    return undefined;
  };
  const context = collect("", () => contextOf(job));
  if (context === undefined) throw new InputError(problems);
  const steps = order.flatMap(([name]) => {
    const step = collect(name, () => stepOf(name, job, context));
    return step === undefined ? [] : [step];
  });
  if (problems.length > 0) throw new InputError(problems);
  const { atmosphere } = context;
  return {
    format: RECORD_FORMAT,
    title: job.title,
    place: job.place,
    date: job.date,
    facts: [
      fact(
        "refrigerant",
        `${context.refrigerant.designation}, ${context.refrigerant.name}, class ${context.safetyClass ?? "unknown"}`,
      ),
      fact("mode", job.unit.mode),
      shownUncertain(
        "air pressure",
        atmosphere.pressure,
        2 * atmosphere.standardUncertainty,
        shownUnits.kilopascal,
      ),
      fact("from", atmosphere.because),
    ],
    verdict: worstVerdict(steps.map(({ verdict }) => verdict)),
    steps,
    missing: order.filter(([name]) => job[name] === undefined).map(([, title]) => title),
    sources: [
      ...context.refrigerant.sources,
      ...(job.nitrogenHold === undefined ? [] : context.nitrogen.sources),
    ],
  };
}

/** As {@link commission}, without throwing. */
export function tryCommission(job: Job): Outcome<CommissioningRecord> {
  return attempt(() => commission(job));
}

function contextOf(job: Job): JobContext {
  const found = refrigerant(job.unit.refrigerant);
  const { lineSet } = job;
  const facts = tryFlammabilityFacts(found.designation);
  return {
    job,
    refrigerant: found,
    nitrogen: refrigerant("R-728"),
    safetyClass: facts.ok ? (facts.value.safetyClass.value ?? undefined) : undefined,
    atmosphere: localAtmosphere(job.atmosphere),
    extraCharge: lineSet === undefined ? { kilograms: 0, label: "added" } : extraChargeOf(lineSet, found),
  };
}

/** The larger of what was weighed in and what the line set asks for: the room must bear either. */
function extraChargeOf(lineSet: JobLineSet, found: Refrigerant): JobContext["extraCharge"] {
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
  }
}

/** What an error of a step means for the job: the same problems, by their path there. */
function problemsIn(error: DewlineError, path: string, job: Job): Problem[] {
  const at = (inner: string): string => [path, inner].filter((part) => part !== "").join(".");
  if (error instanceof InputError) {
    return error.problems.map((problem) => ({ ...problem, path: at(problem.path) }));
  }
  if (error instanceof OutOfRangeError) {
    const { quantity, value, minimum, maximum, unit, subject } = error;
    return [{ path: at(quantity), value, expected: `${minimum} to ${maximum} ${unit} for ${subject}` }];
  }
  return [{ path, value: job.title, expected: `readings with an answer (${error.message})` }];
}
