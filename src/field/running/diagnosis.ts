import type { Warning } from "../../safety/index.js";
import { attempt, type Outcome } from "../../units/index.js";
import { checkDiagnosis } from "./diagnosis-check.js";
import { type DiagnosisConditions, type JudgedCondition, judgeConditions } from "./diagnosis-conditions.js";
import {
  type DiagnosisCause,
  type DiagnosisReading,
  type DiagnosisRow,
  diagnosisMatrix,
  FURTHER_READINGS,
  MAIN_READINGS,
  READING_WORDS,
} from "./diagnosis-matrix.js";
import type { OperatingMode } from "./line-reading.js";
import type { MeteringDevice } from "./metering-device.js";
import { type NextReading, nextReading } from "./next-reading.js";
import {
  type JudgedReading,
  type LeveledReading,
  levelOf,
  notRead,
  pressureFromSplit,
} from "./reading-level.js";

/** Readings of a running unit, each with uncertainty and target; one at least. */
export interface DiagnosisReadings {
  /** Superheat, K. */
  readonly superheat?: JudgedReading;
  /** Subcooling, K; a unit without a liquid port has none. */
  readonly subcooling?: JudgedReading;
  /** Condensing temperature less that of the outdoor air, K. */
  readonly condensingSplit?: JudgedReading;
  /** Evaporating pressure, Pa. */
  readonly evaporatingPressure?: JudgedReading;
  /** In place of that pressure: return air less evaporating temperature, K; a wide split is a low pressure. */
  readonly evaporatingSplit?: JudgedReading;
  /** Temperature of the discharge line, K. */
  readonly dischargeTemperature?: JudgedReading;
  /** Return air less supply air, dry bulb, K. */
  readonly airTemperatureDrop?: JudgedReading;
}

/** A running unit, as far as it is known. */
export interface RunningUnit {
  /** What feeds the evaporator; no default. */
  readonly meteringDevice: MeteringDevice;
  /** What the unit is doing; no default. */
  readonly mode: OperatingMode;
  /** Readings with their targets. */
  readonly readings: DiagnosisReadings;
  /** What has to hold for the readings to mean anything together. */
  readonly conditions: DiagnosisConditions;
}

/** A cause with what speaks for and against it. */
export interface RankedCause {
  /** 1 for the likeliest; causes that the readings fit equally well share a rank. */
  readonly rank: number;
  /** Which. */
  readonly cause: DiagnosisCause;
  /** What it is in words, the usual first. */
  readonly names: readonly string[];
  /** Part of the readings that surely fit it, 0 to 1: not a probability. */
  readonly confidence: number;
  /** Readings that surely fit. */
  readonly supporting: readonly DiagnosisReading[];
  /** Readings that surely do not fit. */
  readonly contradicting: readonly DiagnosisReading[];
  /** Readings that are too close to tell, or were not taken. */
  readonly undecided: readonly DiagnosisReading[];
  /** What to do to be sure, before anything else. */
  readonly confirm: string;
  /** How its confidence was counted. */
  readonly because: string;
}

/** Codes of the warnings of a diagnosis. */
export type DiagnosisWarningCode = "matrix-not-valid" | "readings-unsure" | "search-leak-first";

/** What a set of readings points to. */
export interface Diagnosis {
  /** False where a condition is not met or not known: then the ranking means nothing until it is. */
  readonly valid: boolean;
  /** Every condition. */
  readonly conditions: readonly JudgedCondition[];
  /** Every reading as low, normal, high, unsure or not read: the four main ones, and further ones that were given. */
  readonly readings: readonly LeveledReading[];
  /** All causes, the likeliest first; never one alone. */
  readonly causes: readonly RankedCause[];
  /** What to read next; undefined where no reading tells the likeliest causes apart: then do what `confirm` says. */
  readonly next: NextReading | undefined;
  /** What is odd. */
  readonly warnings: readonly Warning<DiagnosisWarningCode>[];
  /** What was found. */
  readonly because: string;
}

/**
 * Ranks what may be wrong with a unit in cooling from several readings at once.
 *
 * Each reading is low, normal or high against its target by the rule of {@link decide}; one that is too close to tell is
 * `unsure` and counts for no cause. Confidence is the part of the readings that surely fit the cause's row of the matrix:
 * the four main readings always count, read or not, further ones where they were given and the row knows them. Of causes
 * with the same confidence the one with fewer contradicting readings goes first.
 *
 * A ranking is not a verdict: several faults look alike, and two at once look like a third. Each cause says what confirms
 * it; for too little refrigerant that is a search for the leak, before anything is added.
 *
 * @param unit - Metering device, mode, readings with targets, and the conditions.
 * @returns All causes ranked, with what speaks for and against each, whether the conditions allow it at all, and the
 * reading that would tell the likeliest causes apart best.
 * @throws {@link InputError} `malformed-input`, all problems at once; also without any reading.
 * @source matrix and conditions: common practice, no source, `data/field/diagnosis.json`; confidence, ranking and next
 * reading: our own rule
 *
 * @example
 * ```ts
 * const kelvin = (value: number, minimum: number, maximum: number) => ({
 *   value,
 *   expandedUncertainty: 1.5,
 *   limits: { minimum, maximum },
 * });
 * const { valid, causes } = diagnose({
 *   meteringDevice: "thermostatic-valve",
 *   mode: "cooling",
 *   readings: {
 *     superheat: kelvin(16, 5, 12),
 *     subcooling: kelvin(1, 4, 8),
 *     condensingSplit: kelvin(12, 8, 17),
 *     evaporatingSplit: kelvin(26, 15, 20),
 *   },
 *   conditions: {
 *     steadyFor: 1200,
 *     outdoorTemperature: celsius(32),
 *     cleanCoils: "yes",
 *     airFlowKnown: "yes",
 *     fixedSpeed: "yes",
 *   },
 * });
 * valid; // → true
 * causes[0]?.cause; // → "undercharge"
 * causes[1]?.cause; // → "restriction"
 * ```
 */
export function diagnose(unit: RunningUnit): Diagnosis {
  checkDiagnosis(unit);
  const conditions = judgeConditions(unit.conditions, unit.mode);
  const unmet = conditions.filter(({ met }) => met !== "yes");
  const readings = levelsOf(unit.readings);
  const rows = diagnosisMatrix(unit.meteringDevice);
  const causes = rank(rows.map((row) => against(row, readings)));
  const top = likeliest(causes);
  const next = nextReading(
    rows.filter(({ cause }) => top.includes(cause)),
    readings,
  );
  const invalid =
    unmet.length === 0 ? "" : `the matrix is not valid: ${unmet.map(({ because }) => because).join("; ")}; `;
  const first = causes
    .filter((each) => each.rank === 1)
    .map(({ cause, because }) => `${cause} (${because})`)
    .join(", ");
  return {
    valid: unmet.length === 0,
    conditions,
    readings,
    causes,
    next,
    warnings: warningsOf(unmet, readings, causes),
    because: `${invalid}the readings fit best: ${first}; several faults look alike, confirm before acting`,
  };
}

/** As {@link diagnose}, without throwing. */
export function tryDiagnose(unit: RunningUnit): Outcome<Diagnosis> {
  return attempt(() => diagnose(unit));
}

function levelsOf(given: DiagnosisReadings): readonly LeveledReading[] {
  const levels: LeveledReading[] = [];
  for (const reading of [...MAIN_READINGS, ...FURTHER_READINGS]) {
    const judged = given[reading];
    if (reading === "evaporatingPressure" && given.evaporatingSplit !== undefined) {
      levels.push(pressureFromSplit(levelOf(reading, given.evaporatingSplit, "K")));
    } else if (judged !== undefined) {
      levels.push(levelOf(reading, judged, reading === "evaporatingPressure" ? "Pa" : "K"));
    } else if (MAIN_READINGS.includes(reading)) {
      levels.push(notRead(reading));
    }
  }
  return levels;
}

type UnrankedCause = Omit<RankedCause, "rank">;

function against(row: DiagnosisRow, readings: readonly LeveledReading[]): UnrankedCause {
  const supporting: DiagnosisReading[] = [];
  const contradicting: DiagnosisReading[] = [];
  const undecided: DiagnosisReading[] = [];
  for (const { reading, level, possible } of readings) {
    const expected = row.levels[reading];
    if (expected === undefined) continue;
    const isSure = level !== "unsure" && level !== "not-read";
    if (isSure && possible.every((each) => expected.includes(each))) supporting.push(reading);
    else if (!possible.some((each) => expected.includes(each))) contradicting.push(reading);
    else undecided.push(reading);
  }
  const counted = supporting.length + contradicting.length + undecided.length;
  const said = [
    `${supporting.length} of ${counted} readings fit`,
    ...(contradicting.length === 0 ? [] : [`${inWords(contradicting)} against`]),
    ...(undecided.length === 0 ? [] : [`${inWords(undecided)} undecided`]),
  ];
  return {
    cause: row.cause,
    names: row.names,
    confidence: counted === 0 ? 0 : supporting.length / counted,
    supporting,
    contradicting,
    undecided,
    confirm: row.confirm,
    because: said.join(", "),
  };
}

function inWords(readings: readonly DiagnosisReading[]): string {
  return readings.map((reading) => READING_WORDS[reading]).join(" and ");
}

/** Sorts by confidence, then by what speaks against; equals share a rank and stay in the order of the matrix. */
function rank(causes: readonly UnrankedCause[]): readonly RankedCause[] {
  const sorted = [...causes].sort(
    (one, other) =>
      other.confidence - one.confidence || one.contradicting.length - other.contradicting.length,
  );
  let place = 0;
  return sorted.map((each, index) => {
    const before = sorted[index - 1];
    const isEqual =
      before?.confidence === each.confidence && before?.contradicting.length === each.contradicting.length;
    if (!isEqual) place = index + 1;
    return { rank: place, ...each };
  });
}

/** All causes of the first rank, and those of the second where the first is alone. */
function likeliest(causes: readonly RankedCause[]): readonly DiagnosisCause[] {
  const second = causes[1]?.rank;
  return causes.filter((each) => each.rank === 1 || each.rank === second).map(({ cause }) => cause);
}

function warningsOf(
  unmet: readonly JudgedCondition[],
  readings: readonly LeveledReading[],
  causes: readonly RankedCause[],
): Warning<DiagnosisWarningCode>[] {
  const warnings: Warning<DiagnosisWarningCode>[] = [];
  if (unmet.length > 0) {
    warnings.push({
      code: "matrix-not-valid",
      message: `the ranking means nothing yet: ${unmet.map(({ because }) => because).join("; ")}`,
    });
  }
  const unsure = readings.filter(({ level }) => level === "unsure" || level === "not-read");
  if (unsure.length > 0) {
    warnings.push({
      code: "readings-unsure",
      message: `${inWords(unsure.map(({ reading }) => reading))} cannot be used: too close to tell, or not read`,
    });
  }
  if (causes.some(({ rank: place, cause }) => place === 1 && cause === "undercharge")) {
    warnings.push({
      code: "search-leak-first",
      message: "refrigerant does not wear out: find and repair the leak before the charge is touched",
    });
  }
  return warnings;
}
