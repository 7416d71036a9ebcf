import data from "../../../data/field/instruments.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import { attempt, type Duration, InputCheck, type Outcome, requireObject } from "../../units/index.js";
import { type DecisionWording, decide, type Verdict } from "./decision.js";
import { resolutionUncertainty } from "./instrument.js";
import { shown, shownWithUncertainty } from "./shown.js";
import { slopeScatter, straightLine } from "./straight-line.js";
import { COVERAGE_FACTOR } from "./uncertainty.js";

/** One reading of a logged series. */
export interface SeriesSample {
  /** Time since any fixed moment, s. */
  readonly time: Duration;
  /** What was read or computed from readings; SI, the same unit in the whole series. */
  readonly value: number;
}

/** Readings of one quantity that is meant to stay as it is. */
export interface LoggedSeries {
  /** Three readings or more, times strictly increasing. */
  readonly samples: readonly SeriesSample[];
  /**
   * Smallest step of a reading, in its unit. A long series does not average it away. Leave it out where the instrument
   * already counts it: then the mean would count it twice.
   */
  readonly resolution?: number;
  /** Largest change over the whole series that still counts as steady, in the unit of the value, above 0; no default. */
  readonly allowedDrift: number;
  /** Names for the explanation, such as `{ quantity: "superheat", unit: "K" }`. */
  readonly wording?: DecisionWording;
}

/** Codes of the warnings of a series. */
export type SeriesWarningCode = "wandering";

/** Mean of a series and whether it was steady; numbers in the unit of the readings. */
export interface SteadySeries {
  /** Mean of the readings. */
  readonly mean: number;
  /** Standard uncertainty of the mean from scatter, drift and steps; that of the instrument is not in it. */
  readonly standardUncertainty: number;
  /** Change from the first to the last reading by the straight line through all of them. */
  readonly drift: number;
  /** Expanded uncertainty of the drift, k = 2. */
  readonly driftExpandedUncertainty: number;
  /** From the first to the last reading, s. */
  readonly duration: Duration;
  /** Number of independent readings that the series is worth, 3 or more. */
  readonly effectiveReadings: number;
  /** The drift against the one allowed. */
  readonly steady: Verdict;
  /** What is odd. */
  readonly warnings: readonly Warning<SeriesWarningCode>[];
  /** The rule and the numbers that decided. */
  readonly because: string;
}

/**
 * Mean, drift and steadiness of a logged series of one reading.
 *
 * A straight line through all readings gives the drift, slope times duration. The scatter about the line counts with
 * Student's factor, and neighbours that move together count as fewer readings, n (1 − r)/(1 + r) with r the correlation
 * of each residual with the next. The mean of a quantity that drifts is no better known for being read often: the drift
 * enters its uncertainty as a rectangle over the time of the series, and the step of the reading counts in full.
 *
 * A correlation found from few readings is found too low: of a dozen readings that remember each other (r = 0.5) the
 * drift lies within its uncertainty in 87 of 100 cases, not in 95. Log longer where it matters.
 *
 * @param series - Times (s), values (any SI unit) and the drift that is allowed (same unit).
 * @returns Mean with standard uncertainty (k = 1), drift with expanded uncertainty (k = 2), and `steady`: `pass` if the
 * drift is within the one allowed for sure, `fail` if it is beyond for sure, else `inconclusive`.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source least squares and Student's factor: JCGM 100:2008 (GUM), 4.2, 4.3.7, G.3; effective number of readings:
 * Santer, B. D., et al., J. Geophys. Res. 105 (2000) 7337 (recalled); counting drift into the mean: our own rule
 *
 * @example
 * ```ts
 * const series = steadySeries({
 *   samples: [6.1, 5.9, 6.0, 6.2, 5.9, 6.0, 6.1].map((value, minute) => ({ time: 60 * minute, value })),
 *   allowedDrift: 1,
 *   wording: { quantity: "superheat", unit: "K" },
 * });
 * series.mean; // → 6.03 K
 * series.steady; // → "pass"
 * ```
 */
export function steadySeries(series: LoggedSeries): SteadySeries {
  examine(series);
  const { samples, resolution, allowedDrift, wording = { quantity: "reading", unit: "" } } = series;
  const n = samples.length;
  const line = straightLine(samples.map(({ time, value }) => ({ x: time, y: value })));
  const from = samples[0]!.time;
  const duration = samples[n - 1]!.time - from;
  const { effective: effectiveReadings, factor, lost, slopeHalfWidth } = slopeScatter(line, n);
  const ofSteps = resolution === undefined ? 0 : resolutionUncertainty(resolution);
  const drift = line.slope * duration;
  // Mean square distance of the line from its mean over the time of the series: T²/12, and more where most readings
  // were taken at one end.
  const offCentre = from + duration / 2 - line.meanX;
  const ofDrift = Math.abs(line.slope) * Math.hypot(duration / Math.sqrt(12), offCentre);
  const ofScatter = ((factor / COVERAGE_FACTOR) * lost * line.scatter) / Math.sqrt(effectiveReadings);
  const standardUncertainty = Math.hypot(ofScatter, ofDrift, ofSteps);
  const driftExpandedUncertainty = Math.hypot(
    slopeHalfWidth * duration,
    COVERAGE_FACTOR * Math.SQRT2 * ofSteps,
  );
  const decision = decide(
    drift,
    driftExpandedUncertainty,
    { minimum: -allowedDrift, maximum: allowedDrift },
    { quantity: `drift of ${wording.quantity} in ${shown(duration)} s`, unit: wording.unit },
  );
  const unit = wording.unit === "" ? "" : ` ${wording.unit}`;
  return {
    mean: line.meanY,
    standardUncertainty,
    drift,
    driftExpandedUncertainty,
    duration,
    effectiveReadings,
    steady: decision.verdict,
    warnings: warningsOf(n, line.correlation),
    because:
      `${decision.because}; mean of ${n} readings, worth ${shown(effectiveReadings)}: ` +
      `${shownWithUncertainty(line.meanY, COVERAGE_FACTOR * standardUncertainty)}${unit} (k = 2, without the instrument)`,
  };
}

/** As {@link steadySeries}, without throwing. */
export function trySteadySeries(series: LoggedSeries): Outcome<SteadySeries> {
  return attempt(() => steadySeries(series));
}

function warningsOf(n: number, correlation: number): Warning<SeriesWarningCode>[] {
  const { correlation: limit, fewestReadings } = data.wandering;
  if (n < fewestReadings || correlation <= limit) return [];
  return [
    {
      code: "wandering",
      message:
        `each reading follows the one before (correlation ${shown(correlation)}): the quantity swings, as under a ` +
        "valve that hunts; log for several swings",
    },
  ];
}

/** Squares of larger numbers overflow, and a sum that overflows looks like a line without slope. */
const LARGEST = 1e100;

function examine(series: LoggedSeries): void {
  requireObject("", series, "a logged series");
  const { samples, resolution, allowedDrift } = series;
  const check = new InputCheck();
  if (
    check.require(
      Array.isArray(samples) && samples.length >= 3,
      "samples",
      samples,
      "three readings or more, each with time and value",
    )
  ) {
    for (const [index, sample] of samples.entries()) {
      const path = `samples[${index}]`;
      if (check.finite(`${path}.value`, sample?.value)) {
        const expected = "a value whose square is a number, below 1e100";
        check.require(Math.abs(sample.value) < LARGEST, `${path}.value`, sample.value, expected);
      }
      if (!check.finite(`${path}.time`, sample?.time)) continue;
      const bounded = "a time whose square is a number, below 1e100 s";
      check.require(Math.abs(sample.time) < LARGEST, `${path}.time`, sample.time, bounded);
      const before = samples[index - 1]?.time;
      if (before !== undefined) {
        check.require(sample.time > before, `${path}.time`, sample.time, `later than ${before} s`);
      }
    }
  }
  if (resolution !== undefined) check.positive("resolution", resolution);
  check.positive("allowedDrift", allowedDrift);
  checkWording(check, series.wording);
  check.finish();
}

function checkWording(check: InputCheck, wording: DecisionWording | undefined): void {
  if (wording === undefined) return;
  check.require(
    typeof wording?.quantity === "string",
    "wording.quantity",
    wording?.quantity,
    "a name, such as superheat",
  );
  check.require(typeof wording?.unit === "string", "wording.unit", wording?.unit, "an SI unit, such as K");
}
