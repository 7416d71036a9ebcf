import {
  type DiagnosisCause,
  type DiagnosisReading,
  type DiagnosisRow,
  FURTHER_READINGS,
  MAIN_READINGS,
  READING_WORDS,
  type ReadingLevel,
} from "./diagnosis-matrix.js";
import type { LeveledReading } from "./reading-level.js";

/** The reading that would tell the likeliest causes apart best. */
export interface NextReading {
  /** Which. */
  readonly reading: DiagnosisReading;
  /** The causes that it would tell apart. */
  readonly between: readonly DiagnosisCause[];
  /** How well, 0 to 1: mean over all pairs of these causes of the part of their levels that they do not share. */
  readonly separation: number;
  /** What to do. */
  readonly because: string;
}

/**
 * Of the readings that are not sure yet, the one whose levels differ most among some causes; undefined where none does.
 */
export function nextReading(
  candidates: readonly DiagnosisRow[],
  readings: readonly LeveledReading[],
): NextReading | undefined {
  let best: NextReading | undefined;
  for (const reading of [...MAIN_READINGS, ...FURTHER_READINGS]) {
    const level = readings.find((each) => each.reading === reading)?.level ?? "not-read";
    if (level !== "unsure" && level !== "not-read") continue;
    const separation = separationOf(candidates, reading);
    if (separation <= (best?.separation ?? 0)) continue;
    const how = level === "unsure" ? "again, with a finer or better placed instrument" : "now";
    const names = candidates.map(({ cause }) => cause).join(", ");
    best = {
      reading,
      between: candidates.map(({ cause }) => cause),
      separation,
      because: `read ${READING_WORDS[reading]} ${how}: it tells best between ${names}`,
    };
  }
  return best;
}

function separationOf(candidates: readonly DiagnosisRow[], reading: DiagnosisReading): number {
  let sum = 0;
  let pairs = 0;
  for (const [index, one] of candidates.entries()) {
    for (const other of candidates.slice(index + 1)) {
      pairs++;
      sum += difference(one.levels[reading], other.levels[reading]);
    }
  }
  return pairs === 0 ? 0 : sum / pairs;
}

/** Part of the levels that two causes do not share: 0 for the same, 1 for none in common. */
function difference(
  one: readonly ReadingLevel[] | undefined,
  other: readonly ReadingLevel[] | undefined,
): number {
  if (one === undefined || other === undefined) return 0;
  const all = new Set([...one, ...other]).size;
  const shared = one.filter((level) => other.includes(level)).length;
  return 1 - shared / all;
}
