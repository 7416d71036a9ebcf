import { type DecisionLimits, decide } from "../measurement/decision.js";
import { type DiagnosisReading, READING_WORDS, type ReadingLevel } from "./diagnosis-matrix.js";

/** A value with its uncertainty and its target; a {@link Decision} is one. */
export interface JudgedReading {
  /** Value, SI. */
  readonly value: number;
  /** Expanded uncertainty, k = 2, same unit, 0 or above. */
  readonly expandedUncertainty: number;
  /** Target, same unit; with one limit alone, the other side cannot be told from normal. */
  readonly limits: DecisionLimits;
}

/** A reading against its target, as far as its uncertainty allows. */
export interface LeveledReading {
  /** Which. */
  readonly reading: DiagnosisReading;
  /** Low, normal, high, too close to tell, or not taken. */
  readonly level: ReadingLevel | "unsure" | "not-read";
  /** Every level it may have. */
  readonly possible: readonly ReadingLevel[];
  /** The numbers that decided. */
  readonly because: string;
}

/** A reading that was not taken may be anything. */
export function notRead(reading: DiagnosisReading): LeveledReading {
  return {
    reading,
    level: "not-read",
    possible: ["low", "normal", "high"],
    because: `${READING_WORDS[reading]} was not read`,
  };
}

/** Level of a reading by the three-valued rule of {@link decide}. */
export function levelOf(
  reading: DiagnosisReading,
  { value, expandedUncertainty: U, limits }: JudgedReading,
  unit: string,
): LeveledReading {
  const { minimum, maximum } = limits;
  const decision = decide(value, U, limits, { quantity: READING_WORDS[reading], unit });
  const a = minimum ?? Number.NEGATIVE_INFINITY;
  const b = maximum ?? Number.POSITIVE_INFINITY;
  const isBelow = value < a - U;
  const isAbove = value > b + U;
  const mayBeNormal = !(isBelow || isAbove);
  // Where a limit is not known, its side cannot be told from normal.
  const mayBeLow = minimum === undefined ? mayBeNormal : !(a + U <= value);
  const mayBeHigh = maximum === undefined ? mayBeNormal : !(value <= b - U);
  const possible: ReadingLevel[] = [];
  if (mayBeLow) possible.push("low");
  if (mayBeNormal) possible.push("normal");
  if (mayBeHigh) possible.push("high");
  const level =
    decision.verdict === "pass"
      ? "normal"
      : decision.verdict === "inconclusive"
        ? "unsure"
        : isBelow
          ? "low"
          : "high";
  return { reading, level, possible, because: decision.because };
}

const opposite = {
  low: "high",
  normal: "normal",
  high: "low",
  unsure: "unsure",
  "not-read": "not-read",
} as const;

/** A temperature split to the air in place of a pressure: the wider the split, the lower the evaporating pressure. */
export function pressureFromSplit(split: LeveledReading): LeveledReading {
  return {
    reading: "evaporatingPressure",
    level: opposite[split.level],
    possible: split.possible.map((level) => opposite[level]).reverse(),
    because: `${split.because}; counted from the return air, a wide split is a low pressure`,
  };
}
