import data from "../../../data/field/pressure-test.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import {
  attempt,
  type Duration,
  type GaugePressure,
  InputCheck,
  type Outcome,
  requireObject,
} from "../../units/index.js";
import { type Decision, decide, type Verdict, worstVerdict } from "../measurement/decision.js";
import { fullScale, gaugeUncertainty, type PressureGauge } from "../measurement/instrument.js";
import { checkGauge, checkReading } from "../measurement/instrument-checks.js";
import { shown, shownKilopascal } from "../measurement/shown.js";
import { COVERAGE_FACTOR } from "../measurement/uncertainty.js";
import { testPressures } from "./test-pressures.js";

/** A stage that the manual asks for. */
export interface PlannedStage {
  /** Pressure to reach, Pa gauge. */
  readonly pressure: GaugePressure;
  /** How long to hold it, s. */
  readonly holdFor: Duration;
}

/** A stage as it was done. */
export interface StageDone {
  /** What the gauge showed, Pa gauge. */
  readonly pressure: GaugePressure;
  /** How long it was held, s. */
  readonly heldFor: Duration;
  /** Whether every joint was looked at with bubbles. */
  readonly jointsInspected: boolean;
}

/** A strength test in stages, with nitrogen from a regulated cylinder. */
export interface StrengthTest {
  /** The gauge. */
  readonly gauge: PressureGauge;
  /** PS, the maximum allowable pressure of the weakest part under test, Pa gauge. */
  readonly maximumAllowablePressure: GaugePressure;
  /** Stages that the manual asks for, each higher than the one before; the last is the test pressure. */
  readonly plan: readonly PlannedStage[];
  /** Stages as they were done, in the order of the plan. */
  readonly stages: readonly StageDone[];
}

/** Codes of the warnings of a strength test. */
export type StrengthTestWarningCode = "strength-test-only" | "gauge-range-small";

/** What one stage came to. */
export interface StageResult {
  /** The worst of pressure, time and inspection. */
  readonly verdict: Verdict;
  /** The pressure against that of the plan with the error of the gauge; undefined for a stage that was left out. */
  readonly reached: Decision | undefined;
  /** What decided, in words. */
  readonly because: string;
}

/** What a strength test came to. */
export interface StrengthTestResult {
  /** The worst of its stages. */
  readonly verdict: Verdict;
  /** Each stage of the plan. */
  readonly stages: readonly StageResult[];
  /** What is odd. */
  readonly warnings: readonly Warning<StrengthTestWarningCode>[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The rule and the numbers that decided. */
  readonly because: string;
}

/**
 * Stages that a printed installation manual asks for below the final pressure: for callers without a manual to show; the
 * manual of the unit wins.
 */
export function printedStages(): readonly (PlannedStage & { readonly source: string })[] {
  return data.printedStages;
}

/**
 * Judges a strength test in stages: was each pressure of the plan surely reached, held long enough, and every joint looked
 * at before the next?
 *
 * A stage passes when the gauge showed the pressure of the plan or more; a reading below it by more than its uncertainty
 * fails, one closer is inconclusive. A stage left out or too short fails; one at which the
 * joints were not looked at is inconclusive.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a plan or a reading above 1.1 PS, a plan
 *   that does not rise, and more stages than planned.
 * @source EN 378-2:2016 and ISO 5149-2:2014 for 1.1 PS (recalled); stages: the caller's manual; JCGM 106:2012 (recalled)
 */
export function evaluateStrengthTest(test: StrengthTest): StrengthTestResult {
  checkTest(test);
  const { plan, stages, gauge, maximumAllowablePressure: PS } = test;
  const results = plan.map((planned, index) => judgeStage(planned, stages[index], gauge));
  const highest = stages.reduce((high, { pressure }) => Math.max(high, pressure), 0);
  const final = plan[plan.length - 1]!.pressure;
  return {
    verdict: worstVerdict(results.map(({ verdict }) => verdict)),
    stages: results,
    warnings: warningsOf(Math.max(highest, final), PS, gauge),
    assumptions: [
      "Only dry nitrogen was used, through a regulator.",
      "With the stop valves of the outdoor unit shut, only the line set and the indoor unit were tested.",
    ],
    because: results.map(({ because }, index) => `stage ${index + 1}: ${because}`).join("; "),
  };
}

/** As {@link evaluateStrengthTest}, without throwing. */
export function tryEvaluateStrengthTest(test: StrengthTest): Outcome<StrengthTestResult> {
  return attempt(() => evaluateStrengthTest(test));
}

function judgeStage(planned: PlannedStage, done: StageDone | undefined, gauge: PressureGauge): StageResult {
  if (done === undefined) {
    const because = `${shownKilopascal(planned.pressure)} was not done`;
    return { verdict: "fail", reached: undefined, because };
  }
  const U = COVERAGE_FACTOR * gaugeUncertainty(gauge, done.pressure).standardUncertainty;
  const reached = decide(
    done.pressure / 1000,
    U / 1000,
    { minimum: planned.pressure / 1000 },
    { quantity: "pressure", unit: "kPa" },
  );
  // Whoever fills until the gauge shows the pressure asked for has done what is asked.
  const pressureVerdict = done.pressure >= planned.pressure ? "pass" : reached.verdict;
  const isLongEnough = done.heldFor >= planned.holdFor;
  const verdicts: Verdict[] = [
    pressureVerdict,
    isLongEnough ? "pass" : "fail",
    done.jointsInspected ? "pass" : "inconclusive",
  ];
  const words = [
    `${shownKilopascal(done.pressure)} for ${shown(done.heldFor)} s, ` +
      `${shownKilopascal(planned.pressure)} for ${shown(planned.holdFor)} s asked for`,
    ...(pressureVerdict === "pass" ? [] : ["the pressure was not reached for sure"]),
    ...(isLongEnough ? [] : ["too short"]),
    ...(done.jointsInspected ? [] : ["the joints were not looked at"]),
  ];
  return { verdict: worstVerdict(verdicts), reached, because: words.join(", ") };
}

function warningsOf(
  pressure: GaugePressure,
  PS: GaugePressure,
  gauge: PressureGauge,
): Warning<StrengthTestWarningCode>[] {
  const warnings: Warning<StrengthTestWarningCode>[] = [];
  if (pressure > PS) {
    warnings.push({
      code: "strength-test-only",
      message: `${shownKilopascal(pressure)} is above PS = ${shownKilopascal(PS)}: for a strength test only, never to hold`,
    });
  }
  const scale = fullScale(gauge);
  if (scale !== undefined && scale < data.gaugeRange.factor * pressure) {
    warnings.push({
      code: "gauge-range-small",
      message: `the gauge ends at ${shownKilopascal(scale)}, less than ${data.gaugeRange.factor} times the test pressure`,
    });
  }
  return warnings;
}

function checkTest(test: StrengthTest): void {
  requireObject("", test, "a strength test");
  const { plan, stages, gauge, maximumAllowablePressure: PS } = test;
  const check = new InputCheck();
  checkGauge(check, "gauge", gauge);
  const highest = check.positive("maximumAllowablePressure", PS)
    ? testPressures(PS).assembledSystem
    : Number.POSITIVE_INFINITY;
  const tooHigh = `at most 1.1 PS = ${shown(highest)} Pa: never above it`;
  const isPlan = Array.isArray(plan) && plan.length > 0;
  if (check.require(isPlan, "plan", plan, "the stages that the manual asks for")) {
    for (const [index, stage] of plan.entries()) {
      check.notNegative(`plan[${index}].holdFor`, stage?.holdFor);
      if (!check.positive(`plan[${index}].pressure`, stage?.pressure)) continue;
      check.require(stage.pressure <= highest, `plan[${index}].pressure`, stage.pressure, tooHigh);
      const before = plan[index - 1]?.pressure;
      if (before === undefined) continue;
      const expected = `above the stage before, ${before} Pa`;
      check.require(stage.pressure > before, `plan[${index}].pressure`, stage.pressure, expected);
    }
  }
  if (check.require(Array.isArray(stages), "stages", stages, "the stages as done")) {
    if (isPlan) {
      const expected = `at most ${plan.length} stages, as planned`;
      check.require(stages.length <= plan.length, "stages", stages.length, expected);
    }
    for (const [index, stage] of stages.entries()) {
      check.notNegative(`stages[${index}].heldFor`, stage?.heldFor);
      check.require(
        typeof stage?.jointsInspected === "boolean",
        `stages[${index}].jointsInspected`,
        stage?.jointsInspected,
        "true or false",
      );
      const path = `stages[${index}].pressure`;
      if (!check.positive(path, stage?.pressure)) continue;
      if (gauge?.accuracy !== undefined) checkReading(check, path, stage.pressure, gauge);
      const above = `at most 1.1 PS = ${shown(highest)} Pa: release pressure now`;
      check.require(stage.pressure <= highest, path, stage.pressure, above);
    }
  }
  check.finish();
}
