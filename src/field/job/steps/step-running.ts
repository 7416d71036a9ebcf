import { attempt, type Temperature } from "../../../units/index.js";
import { airSideCapacity } from "../../air/index.js";
import { fieldCautions } from "../../cautions.js";
import { type Decision, type DecisionLimits, decide, worstVerdict } from "../../measurement/decision.js";
import { thermometerUncertainty } from "../../measurement/instrument.js";
import { shown } from "../../measurement/shown.js";
import { COVERAGE_FACTOR } from "../../measurement/uncertainty.js";
import { type Diagnosis, type DiagnosisReadings, diagnose } from "../../running/diagnosis.js";
import type { JobRange, JobRunning } from "../form/running.js";
import { asRead, fact, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordEntry, RecordStep } from "../record/record.js";
import { stepTitles } from "../what-next.js";
import type { JobContext } from "./context.js";
import { type LineOutcome, lineOutcome } from "./step-line-reading.js";

/** How many causes a record names; all of them are in the library's own answer. */
const mostCauses = 3;

/** A split between the refrigerant and the air, judged. */
interface Split {
  readonly label: string;
  readonly decision: Decision;
}

/** Does the unit run as a whole as it should, and if not, what may be wrong? */
export function runningStep(running: JobRunning, context: JobContext): RecordStep {
  const { job, safetyClass } = context;
  const { targets, outdoorTemperature, returnAir, supplyAir, dischargeTemperature } = running;
  const { mode } = job.unit;
  const superheat = outcomeOf("superheat", context);
  const subcooling = outcomeOf("subcooling", context);
  const [warm, cold] =
    mode === "cooling" ? [outdoorTemperature, returnAir.dryBulb] : [returnAir.dryBulb, outdoorTemperature];
  const probe =
    COVERAGE_FACTOR *
    thermometerUncertainty(job.instruments.thermometers[running.thermometer]!).standardUncertainty;
  const split = (
    label: string,
    side: LineOutcome | undefined,
    air: Temperature,
    sign: 1 | -1,
    target: JobRange<number>,
  ) =>
    side === undefined
      ? undefined
      : {
          label,
          decision: decide(
            sign * (side.last.saturationTemperature - air),
            Math.hypot(saturationUncertainty(side), probe),
            limitsOf(target),
            { quantity: label, unit: "K" },
          ),
        };
  const condensing = split("condensing split", subcooling, warm.si, 1, targets.condensingSplit);
  const evaporating = split("evaporating split", superheat, cold.si, -1, targets.evaporatingSplit);
  const discharge: Split | undefined =
    dischargeTemperature === undefined || targets.discharge === undefined
      ? undefined
      : {
          label: "discharge temperature",
          decision: decide(dischargeTemperature.si, probe, limitsOf(targets.discharge), {
            quantity: "discharge temperature",
            unit: "K",
          }),
        };
  const judged = [condensing, evaporating, discharge].filter((each) => each !== undefined);
  const readings: DiagnosisReadings = {
    ...ofLine("superheat", superheat, job.superheat?.target),
    ...ofLine("subcooling", subcooling, job.subcooling?.target),
    ...(condensing === undefined ? {} : { condensingSplit: condensing.decision }),
    ...(evaporating === undefined ? {} : { evaporatingSplit: evaporating.decision }),
    ...(discharge === undefined ? {} : { dischargeTemperature: discharge.decision }),
  };
  // Without any reading there is nothing to point to a cause.
  const diagnosis =
    Object.keys(readings).length === 0 ? undefined : diagnose({ ...unitOf(running, context), readings });
  // A split that nobody could read leaves the step open.
  const isWhole = condensing !== undefined && evaporating !== undefined;
  const verdict = worstVerdict([
    ...judged.map(({ decision }) => decision.verdict),
    ...(isWhole ? [] : ["inconclusive" as const]),
  ]);
  const capacity = capacityOf(running, context);
  const isOdd =
    verdict !== "pass" || diagnosis?.readings.some(({ level }) => level === "low" || level === "high");
  const causes = isOdd ? diagnosis : undefined;
  return {
    name: "running",
    title: stepTitles.running,
    verdict,
    read: [
      asRead("outdoor air", outdoorTemperature),
      asRead("return air", returnAir.dryBulb),
      ...(supplyAir === undefined ? [] : [asRead("supply air", supplyAir.dryBulb)]),
      ...(dischargeTemperature === undefined ? [] : [asRead("discharge line", dischargeTemperature)]),
      fact("fed by", running.meteringDevice.replace("-", " ")),
    ],
    expected: [
      ...expectedEntries("condensing split", targets.condensingSplit),
      ...expectedEntries("evaporating split", targets.evaporatingSplit),
      ...(targets.discharge === undefined ? [] : expectedEntries("discharge line", targets.discharge)),
    ],
    found: [
      ...judged.map(({ label, decision }) => {
        const unit = label === "discharge temperature" ? shownUnits.celsius : shownUnits.kelvinDifference;
        return shownUncertain(label, decision.value, decision.expandedUncertainty, unit);
      }),
      ...capacity,
      ...(causes === undefined ? [] : causesOf(causes)),
    ],
    because: [
      ...judged.map(({ decision }) => decision.because),
      ...(isWhole ? [] : ["without both superheat and subcooling not all splits are known"]),
      ...(causes === undefined ? [] : [causes.because]),
    ].join("; "),
    next: causes === undefined ? [] : nextOf(causes),
    warnings: causes?.warnings ?? [],
    assumptions: [
      "Condensing temperature is the bubble point at the liquid line, evaporating temperature the dew point at the suction.",
    ],
    cautions: fieldCautions("gauge-reading", safetyClass),
  };
}

/** What is wrong with a reading is said by its own step. */
function outcomeOf(name: "superheat" | "subcooling", context: JobContext): LineOutcome | undefined {
  const reading = context.job[name];
  if (reading === undefined) return undefined;
  const outcome = attempt(() => lineOutcome(name, reading, context));
  return outcome.ok ? outcome.value : undefined;
}

/** The unit and its conditions, for a diagnosis. */
function unitOf({ meteringDevice, conditions, outdoorTemperature }: JobRunning, { job }: JobContext) {
  const { steadyFor, cleanCoils, airFlowKnown, fixedSpeed } = conditions;
  return {
    meteringDevice,
    mode: job.unit.mode,
    conditions: {
      steadyFor: steadyFor.si,
      outdoorTemperature: outdoorTemperature.si,
      cleanCoils,
      airFlowKnown,
      fixedSpeed,
    },
  };
}

/** Of the saturation temperature alone: all that superheat or subcooling rests on but the thermometer on the pipe. */
function saturationUncertainty({ last }: LineOutcome): number {
  const parts = last.budget.filter(({ input }) => input !== "thermometer");
  return COVERAGE_FACTOR * Math.hypot(...parts.map(({ contribution }) => contribution));
}

function ofLine(
  name: "superheat" | "subcooling",
  outcome: LineOutcome | undefined,
  target: JobRange<number> | undefined,
) {
  if (outcome === undefined || target === undefined) return {};
  const { value, expandedUncertainty } = outcome;
  return { [name]: { value, expandedUncertainty, limits: limitsOf(target) } };
}

function limitsOf({ minimum, maximum }: JobRange<number>): DecisionLimits {
  return {
    ...(minimum === undefined ? {} : { minimum: minimum.si }),
    ...(maximum === undefined ? {} : { maximum: maximum.si }),
  };
}

function expectedEntries(label: string, { minimum, maximum }: JobRange<number>): RecordEntry[] {
  return [
    ...(minimum === undefined ? [] : [asRead(`${label} at least`, minimum)]),
    ...(maximum === undefined ? [] : [asRead(`${label} at most`, maximum)]),
  ];
}

/** Capacity on the air side, where flow and both states of the air were read. */
function capacityOf(running: JobRunning, { job, atmosphere }: JobContext): RecordEntry[] {
  const { airFlow, supplyAir, returnAir } = running;
  const isKnown =
    returnAir.wetBulb !== undefined && (job.unit.mode === "heating" || supplyAir?.wetBulb !== undefined);
  if (airFlow === undefined || supplyAir === undefined || !isKnown) return [];
  const air = ({ dryBulb, wetBulb }: typeof supplyAir) => ({
    dryBulb: dryBulb.si,
    ...(wetBulb === undefined ? {} : { wetBulb: wetBulb.si }),
  });
  const { total } = airSideCapacity({
    mode: job.unit.mode,
    flow: { volumeFlow: airFlow.flow.si, measuredAt: "supply", halfWidthFraction: airFlow.percent / 100 },
    returnAir: air(returnAir),
    supplyAir: air(supplyAir),
    thermometer: job.instruments.thermometers[running.thermometer]!,
    atmosphere,
  });
  return [
    shownUncertain(
      `${job.unit.mode} on the air side`,
      total.value,
      total.expandedUncertainty,
      shownUnits.kilowatt,
    ),
  ];
}

function causesOf({ valid, causes }: Diagnosis): RecordEntry[] {
  const label = valid ? "may be" : "would point to, if the conditions held";
  return causes
    .slice(0, mostCauses)
    .map(({ names, confidence }) =>
      fact(label, `${names.join(" or ")} (${shown(confidence)} of the readings fit)`),
    );
}

function nextOf({ valid, conditions, causes, next }: Diagnosis): string[] {
  if (!valid) {
    const open = conditions.filter(({ met }) => met !== "yes").map(({ because }) => because);
    return [`Before looking for a cause, see to this: ${open.join("; ")}.`];
  }
  return [
    ...(next === undefined ? [] : [`Read next: ${next.because}.`]),
    ...causes.slice(0, 1).map(({ confirm }) => confirm),
  ];
}
