import data from "../../../data/field/evacuation.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import {
  attempt,
  type Duration,
  type Outcome,
  type Pressure,
  type PressureDifference,
  type Temperature,
  type Volume,
} from "../../units/index.js";
import { type Decision, decide, type Verdict, worstVerdict } from "../measurement/decision.js";
import { gaugeUncertainty, type PressureGauge } from "../measurement/instrument.js";
import { shown, shownUncertainty } from "../measurement/shown.js";
import { straightLine } from "../measurement/straight-line.js";
import { COVERAGE_FACTOR } from "../measurement/uncertainty.js";
import { checkRiseTest } from "./rise-checks.js";
import { waterVapourPressure } from "./water-vapour.js";

/** One reading of a rise test. */
export interface RiseSample {
  /** Time since any fixed moment, s; the first sample is taken when the valve is closed. */
  readonly time: Duration;
  /** What the gauge shows, Pa absolute. */
  readonly pressure: Pressure;
}

/** An evacuated system, shut off from pump and hose, watched for a while. */
export interface RiseTest {
  /** Two readings, first and last, or a logged series; times strictly increasing. */
  readonly samples: readonly RiseSample[];
  /** Absolute vacuum gauge used, on the system side of the valve. */
  readonly gauge: PressureGauge;
  /** Standard uncertainty of one reading against the others, Pa: noise and steps, not the bias of the gauge. */
  readonly repeatability: PressureDifference;
  /** Pressure at or below which the test may start, Pa absolute. */
  readonly startMaximum: Pressure;
  /** Time after closing the valve that is left out, s, while gas in the pipes evens out. */
  readonly settlingTime: Duration;
  /** Temperature of the coldest part, K. */
  readonly coldestTemperature: Temperature;
  /** Temperature of the warmest part, K. */
  readonly warmestTemperature: Temperature;
  /** A limit to keep: pressure (Pa absolute) not exceeded after a time (s) from the first sample. */
  readonly limit?: { readonly pressure: Pressure; readonly after: Duration };
  /** Volume of the system, m3; when known, the rise is stated as a throughput. */
  readonly internalVolume?: Volume;
}

/** What a rise test shows. */
export type RiseState =
  /** The start was above the pressure asked for: pump on. */
  | "not-evacuated"
  /** No rise beyond the noise of the gauge. */
  | "tight-dry"
  /** Higher than water alone can rise: a leak, or gas boiling out. */
  | "leak-or-gas"
  /** Rising in a straight line, as air through a leak does, and for a while water that evaporates slowly. */
  | "leak-suspected"
  /** Levelling off near the vapour pressure of water: liquid water inside. */
  | "free-water"
  /** Levelling off below it: moisture, or refrigerant out of oil. */
  | "moisture-or-outgassing"
  /** The pressure fell: the pump is not shut off, or the system grew colder. */
  | "falling"
  /** The gauge is too noisy for the test to show anything. */
  | "blind"
  /** Between the patterns: go on with the test. */
  | "inconclusive"
  /** A rise, but two readings cannot tell its shape: log a series. */
  | "unclassified";

/** Codes of the warnings of a rise test. */
export type RiseWarningCode = "no-tightness-test" | "limit-not-reached";

/** Result of a rise test. */
export interface RiseResult {
  /** The worse of what the curve shows and the limit says. */
  readonly verdict: Verdict;
  /** What the curve shows. */
  readonly state: RiseState;
  /** Verdict on the curve alone. */
  readonly curveVerdict: Verdict;
  /** The first sample against the pressure that the test may start from. */
  readonly startDecision: Decision;
  /** The limit, if one was given and the test lasted long enough for it. */
  readonly limitDecision: Decision | undefined;
  /** Compared first with last, or a whole series. */
  readonly method: "two-readings" | "series";
  /** Rise over the samples that count, Pa. */
  readonly rise: PressureDifference;
  /** Mean rise of the first third, Pa/s; of all for two readings. */
  readonly earlySlope: number;
  /** Mean rise of the last third, Pa/s; of all for two readings. */
  readonly lateSlope: number;
  /** Late over early slope: 1 for a straight line, towards 0 for one that levels off; undefined if it did not rise early. */
  readonly slopeRatio: number | undefined;
  /** V dp/dt of the last third, Pa m3/s, when the volume is known. */
  readonly throughput: number | undefined;
  /** What is odd. */
  readonly warnings: readonly Warning<RiseWarningCode>[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The rule and the numbers that decided. */
  readonly because: string;
}

/** What each state means for the curve. */
const VERDICTS: Readonly<Record<RiseState, Verdict>> = {
  "not-evacuated": "fail",
  "tight-dry": "pass",
  "leak-or-gas": "fail",
  "leak-suspected": "fail",
  "free-water": "fail",
  "moisture-or-outgassing": "inconclusive",
  falling: "inconclusive",
  blind: "inconclusive",
  inconclusive: "inconclusive",
  unclassified: "inconclusive",
};

/**
 * Rise test of an evacuated system: what does the pressure do when the pump is shut off?
 *
 * In this order: a start surely above the allowed one is `not-evacuated` (one too close to it to tell leaves the verdict
 * at inconclusive); noise 2√2 u (u: repeatability) above half of the allowed start is `blind`; after the settling time a
 * fall by more than the noise is `falling`; a rise within it, by the ends and by the last third alone, is `tight-dry`; an
 * end above 1.05 times the vapour pressure of water at the warmest part
 * is `leak-or-gas`. Then the ratio r of the slopes of the last and the first third decides: r ≥ 0.7 `leak-suspected`;
 * r ≤ 0.3 `free-water` if the end is at least half the vapour pressure of water at the coldest part, else
 * `moisture-or-outgassing`; between them `inconclusive`. Two readings go as far as the shape is not needed.
 *
 * @param test - Samples, gauge, temperatures; SI.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for times that do not increase, less than
 * 300 s, or a series of fewer than 9 samples after the settling time.
 * @throws {@link OutOfRangeError} `out-of-range` for temperatures that water has no vapour pressure at.
 * @source shape: printed maintenance manual of a transport refrigeration unit; thresholds: ours, no source, in
 * `data/field/evacuation.json`; water: IAPWS R7-97(2012) and R14-08(2011)
 */
export function riseTest(test: RiseTest): RiseResult {
  const counted = checkRiseTest(test);
  const { samples, repeatability, startMaximum, internalVolume } = test;
  const start = samples[0]!;
  const method = samples.length === 2 ? "two-readings" : "series";
  const first = counted[0]!;
  const last = counted[counted.length - 1]!;
  const rise = last.pressure - first.pressure;
  const third = Math.max(3, Math.floor(counted.length / 3));
  const earlySlope = slopeOf(method === "series" ? counted.slice(0, third) : counted);
  const lateSlope = slopeOf(method === "series" ? counted.slice(-third) : counted);
  // A rise that only begins late bends the wrong way for moisture: it counts as straight.
  const slopeRatio = earlySlope > 0 ? lateSlope / earlySlope : undefined;
  const noise = COVERAGE_FACTOR * Math.SQRT2 * repeatability;
  const startDecision = decide(
    start.pressure,
    COVERAGE_FACTOR * gaugeUncertainty(test.gauge, start.pressure).standardUncertainty,
    { maximum: startMaximum },
    { quantity: "start", unit: "Pa" },
  );
  // A dip first and a climb after it would cancel between the ends.
  const lateRise = lateSlope * (last.time - counted[Math.max(0, counted.length - third)]!.time);
  const { aboveSaturation, straight, levelling, freeWater } = data.riseCurve;
  const warm = aboveSaturation * waterVapourPressure(test.warmestTemperature);
  const cold = freeWater * waterVapourPressure(test.coldestTemperature);
  const [state, why] = ((): readonly [RiseState, string] => {
    if (startDecision.verdict === "fail") return ["not-evacuated", startDecision.because];
    if (noise > data.blind.fractionOfStart * startMaximum) {
      return [
        "blind",
        `noise of ${shownUncertainty(noise)} Pa beside a start of at most ${shown(startMaximum)} Pa`,
      ];
    }
    if (rise < -noise)
      return ["falling", `fell by ${shown(-rise)} Pa, more than the noise of ${shownUncertainty(noise)} Pa`];
    const rose = `rose by ${shown(Math.max(rise, lateRise))} Pa`;
    if (rise <= noise && lateRise <= noise)
      return ["tight-dry", `${rose}, within the noise of ${shownUncertainty(noise)} Pa`];
    const ended = `ended at ${shown(last.pressure)} Pa`;
    if (last.pressure > warm)
      return ["leak-or-gas", `${ended}, above ${shown(warm)} Pa that water alone can reach`];
    if (method === "two-readings") return ["unclassified", `${rose}; two readings have no shape`];
    if (slopeRatio === undefined) return ["leak-suspected", `${rose}, and only late: no moisture does that`];
    const bend = `late slope ${shown(slopeRatio)} of the early one`;
    if (slopeRatio >= straight) return ["leak-suspected", `${bend}: a straight rise`];
    if (slopeRatio > levelling) return ["inconclusive", `${bend}: neither straight nor levelling off`];
    return last.pressure >= cold
      ? ["free-water", `${bend}; ${ended}, at least ${shown(cold)} Pa, half the vapour pressure of water`]
      : [
          "moisture-or-outgassing",
          `${bend}; ${ended}, below ${shown(cold)} Pa, half the vapour pressure of water`,
        ];
  })();
  const limit = limitOf(test);
  const curveVerdict = VERDICTS[state];
  return {
    verdict: worstVerdict([
      curveVerdict,
      startDecision.verdict,
      ...(limit === undefined ? [] : [limit.decision?.verdict ?? "inconclusive"]),
    ]),
    state,
    curveVerdict,
    startDecision,
    limitDecision: limit?.decision,
    method,
    rise,
    earlySlope,
    lateSlope,
    slopeRatio,
    throughput: internalVolume === undefined ? undefined : internalVolume * lateSlope,
    warnings: [
      {
        code: "no-tightness-test",
        message: "a rise test finds wet and open systems; tightness is shown under pressure",
      },
      ...(limit === undefined || limit.decision !== undefined
        ? []
        : [{ code: "limit-not-reached" as const, message: limit.because }]),
    ],
    assumptions: [
      "Pump and hose are shut off at the system, and the gauge is on the side of the system, far from the pump.",
      "The temperature of the system did not change during the test.",
    ],
    because: `${state}: ${why}${limit === undefined ? "" : `; limit: ${limit.because}`}`,
  };
}

/** As {@link riseTest}, without throwing. */
export function tryRiseTest(test: RiseTest): Outcome<RiseResult> {
  return attempt(() => riseTest(test));
}

function slopeOf(samples: readonly RiseSample[]): number {
  return straightLine(samples.map(({ time, pressure }) => ({ x: time, y: pressure }))).slope;
}

/** The limit at its moment, from the straight line between the samples around it. */
function limitOf({
  samples,
  limit,
  gauge,
}: RiseTest): { readonly decision: Decision | undefined; readonly because: string } | undefined {
  if (limit === undefined) return undefined;
  const moment = samples[0]!.time + limit.after;
  const next = samples.findIndex(({ time }) => time >= moment);
  if (next === -1) {
    return { decision: undefined, because: `the test ended before ${shown(limit.after)} s` };
  }
  const after = samples[next]!;
  const before = samples[Math.max(next - 1, 0)]!;
  const part = after.time > before.time ? (moment - before.time) / (after.time - before.time) : 1;
  const pressure = before.pressure + part * (after.pressure - before.pressure);
  const U = COVERAGE_FACTOR * gaugeUncertainty(gauge, pressure).standardUncertainty;
  const decision = decide(
    pressure,
    U,
    { maximum: limit.pressure },
    { quantity: `pressure after ${shown(limit.after)} s`, unit: "Pa" },
  );
  return { decision, because: decision.because };
}
