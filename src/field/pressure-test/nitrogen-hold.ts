import data from "../../../data/field/nitrogen-hold.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type Duration,
  type GaugePressure,
  type LocalAtmosphere,
  NoSuchStateError,
  type Outcome,
  type Pressure,
  type PressureDifference,
  type Temperature,
  type Volume,
} from "../../units/index.js";
import type { Verdict } from "../measurement/decision.js";
import {
  gaugeUncertainty,
  type PressureGauge,
  resolutionUncertainty,
  type Thermometer,
  thermometerUncertainty,
} from "../measurement/instrument.js";
import {
  shown,
  shownKilopascal,
  shownKilopascalWithUncertainty,
  shownUncertainty,
} from "../measurement/shown.js";
import { slopeScatter, straightLine } from "../measurement/straight-line.js";
import {
  COVERAGE_FACTOR,
  combineUncertainties,
  type UncertainInput,
  type Uncertainty,
} from "../measurement/uncertainty.js";
import { checkNitrogenHold } from "./hold-check.js";
import { type HoldWarningCode, holdWarnings } from "./hold-warnings.js";

/** One reading of a hold test. */
export interface HoldReading {
  /** Time since any fixed moment, s; later readings have larger times. */
  readonly time: Duration;
  /** What the gauge shows, Pa gauge. */
  readonly pressure: GaugePressure;
  /** Temperature of the pipework, K, not of the air in the room. */
  readonly pipeTemperature: Temperature;
  /** Air pressure at that moment, if it was read then. */
  readonly atmosphere?: LocalAtmosphere;
}

/** A closed system under nitrogen, watched for a while. */
export interface NitrogenHold {
  /** Nitrogen: the refrigerant R-728. */
  readonly nitrogen: Refrigerant;
  /** Two readings, first and last, or a logged series; times strictly increasing. */
  readonly readings: readonly HoldReading[];
  /** Gauge used for all readings; its resolution is required. */
  readonly gauge: PressureGauge;
  /** Thermometer used for all readings. */
  readonly thermometer: Thermometer;
  /** Air pressure of the site, for readings without their own. */
  readonly atmosphere: LocalAtmosphere;
  /** PS, the maximum allowable pressure of the weakest part under test, Pa gauge. */
  readonly maximumAllowablePressure: GaugePressure;
  /** How long the test has to last, s, by the manual or the code that is followed; one hour if left out. */
  readonly requiredDuration?: Duration;
  /** Volume under test, m3; when known, leaks are stated as throughputs. */
  readonly internalVolume?: Volume;
}

/** What a hold test shows. */
export type HoldState =
  /** Pressure fell by more than temperature and instruments explain. */
  | "drop"
  /** No fall beyond what the instruments can tell apart: not the same as tight. */
  | "no-drop-seen"
  /** Pressure rose: supply not closed, temperature not even, or wrong air pressure. */
  | "invalid"
  /** Nothing seen, but the test was shorter than required. */
  | "too-short"
  /** Nothing seen, but the pressure was above PS: good for a strength test, not for holding. */
  | "strength-only"
  /** Nothing seen, but the instruments are too coarse for that to mean anything. */
  | "blind";

/** A leak as throughput, Pa m3/s at the reference temperature. */
export interface HoldLeak {
  /** Leak that explains the deviation, Pa m3/s; negative when pressure was gained. */
  readonly throughput: number;
  /** Its expanded uncertainty, k = 2, without that of the volume. */
  readonly expandedUncertainty: number;
  /** Smallest leak that this test could have shown, Pa m3/s. */
  readonly smallestVisible: number;
  /** Leak that 95 of 100 such tests call a drop, Pa m3/s. */
  readonly detectable: number;
  /** Temperature at which the throughputs are stated, K. */
  readonly referenceTemperature: Temperature;
}

/** Result of a hold test. Pressures are gauge pressures at the moment of the last reading. */
export interface NitrogenHoldResult extends Uncertainty {
  /** `pass` for no drop seen, `fail` for a drop, else `inconclusive`. */
  readonly verdict: Verdict;
  /** What was seen. */
  readonly state: HoldState;
  /** Compared first with last, or a line through the whole series. */
  readonly method: "two-readings" | "series";
  /** From first to last reading, s. */
  readonly duration: Duration;
  /** What the gauge should show if nothing leaked, Pa gauge: nitrogen at constant density. */
  readonly expectedPressure: GaugePressure;
  /** Pressure found less pressure expected, Pa; from the line through a series. Its uncertainty is that of the result. */
  readonly deviation: PressureDifference;
  /** Rise of pressure with temperature at constant density, Pa/K. */
  readonly slope: number;
  /** The same by rules that are too simple, to compare: never used for the verdict. */
  readonly comparison: {
    /** Ideal gas: p T₂/T₁, Pa gauge. */
    readonly idealGas: GaugePressure;
    /** 0.01 MPa for each degree, as printed in installation manuals, Pa gauge. */
    readonly printedRule: GaugePressure;
  };
  /** Smallest fall of pressure that this test could have shown, Pa: the threshold, which half of such falls pass. */
  readonly smallestVisibleDrop: PressureDifference;
  /** Fall of pressure that 95 of 100 such tests call a drop, Pa. */
  readonly detectableDrop: PressureDifference;
  /** The leak behind it, when the volume is known. */
  readonly leak: HoldLeak | undefined;
  /** What is odd. */
  readonly warnings: readonly Warning<HoldWarningCode>[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers that decided. */
  readonly because: string;
}

/**
 * Nitrogen hold test, corrected for temperature with the real gas.
 *
 * Nitrogen in a closed system keeps its density. Each reading is turned into a density, and that into the pressure it
 * would have at the temperature of the last reading; what then remains is deviation D = found − expected.
 *
 * - Two readings: D is the last pressure less the corrected first one.
 * - A series: D is the slope of the least-squares line through the corrected pressures times the duration. Its scatter
 *   enters with Student's factor; neighbours that move together (thermal lag) count as fewer readings,
 *   n (1 − r)/(1 + r) with r the correlation of each residual with the next.
 *
 * Either way resolution and thermometer count in full at both ends, 2 u_res² + (∂p/∂T)² (u_T1² + u_T2²), as does the
 * air pressure: a long series does not average them away. The bias b of the one gauge cancels but for b (p_expected/p₁ − 1).
 *
 * The smallest drop that can be seen is U; one of (k + 1.645) u is found in 95 of 100 tests, the detection limit.
 *
 * D < −U: `drop` (fail). D > U: `invalid` (inconclusive). |D| ≤ U: `no-drop-seen` (pass, with the smallest leak the
 * test could have seen), unless the pressure was above PS (`strength-only`), U above 5 % of it (`blind`) or the test shorter than required, by
 * IEC/UL 60335-2-40 an hour (`too-short`): both inconclusive.
 *
 * @param hold - Readings, instruments, site and the PS of the weakest part; SI.
 * @returns Verdict, state, deviation in Pa with expanded uncertainty (k = 2), budget and warnings.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a pressure above 1.1 PS, times that do
 * not increase, and a gas that is not nitrogen.
 * @throws {@link OutOfRangeError} `out-of-range` beyond the equation of state.
 * @source constant density: equation of state of the nitrogen passed in; uncertainty: JCGM 100:2008 (GUM); effective
 * number of readings: Santer, B. D., et al., J. Geophys. Res. 105 (2000) 7337 (recalled); detection limit: ISO 11843-1:1997
 * (recalled); guards:
 * `data/field/nitrogen-hold.json`
 */
export function nitrogenHold(hold: NitrogenHold): NitrogenHoldResult {
  checkNitrogenHold(hold);
  const { nitrogen, readings, gauge } = hold;
  const first = readings[0]!;
  const last = readings[readings.length - 1]!;
  const duration = last.time - first.time;
  const corrected = readings.map((reading) => ({
    x: reading.time,
    y: pressureAt(nitrogen, densityOf(nitrogen, reading, hold), last.pipeTemperature),
  }));
  const seen = readings.length === 2 ? compareEnds(corrected) : compareLine(corrected);
  const state = nitrogen.state({ temperature: last.pipeTemperature, pressure: absolute(last, hold) });
  // Nitrogen is far above its critical temperature here; this asks only what the types do not say.
  if (state.phase === "two-phase") {
    throw new NoSuchStateError(
      { temperature: state.temperature, pressure: state.pressure },
      "nitrogen in two phases",
    );
  }
  // (∂p/∂T) at constant density is α/κ_T.
  const slope = state.thermalExpansion / state.isothermalCompressibility;
  const ofThermometer = thermometerUncertainty(hold.thermometer);
  const ofGauge = gaugeUncertainty(gauge, first.pressure);
  const resolution = gauge.resolution as number;
  const siteFirst = first.atmosphere ?? hold.atmosphere;
  const siteLast = last.atmosphere ?? hold.atmosphere;
  const inputs: UncertainInput[] = [
    {
      input: "gauge-resolution",
      standardUncertainty: Math.SQRT2 * resolutionUncertainty(resolution),
      unit: "Pa",
      sensitivity: 1,
      because: `read twice in steps of ${shown(resolution)} Pa`,
    },
    {
      input: "gauge",
      standardUncertainty: ofGauge.standardUncertainty,
      unit: "Pa",
      // The bias of the one gauge cancels but for what the correction makes of it: gas that warms by 3 % lifts it by 3 %.
      sensitivity: seen.start / absolute(first, hold) - 1,
      because: `${ofGauge.because}; the bias of the one gauge cancels as far as the temperature was the same`,
    },
    {
      input: "thermometer",
      standardUncertainty: Math.SQRT2 * ofThermometer.standardUncertainty,
      unit: "K",
      sensitivity: slope,
      because: `two readings: ${ofThermometer.because}`,
    },
    {
      input: "atmosphere",
      standardUncertainty: Math.hypot(siteFirst.standardUncertainty, siteLast.standardUncertainty),
      unit: "Pa",
      sensitivity: 1,
      because:
        siteFirst === siteLast ? `twice: ${siteFirst.because}` : `${siteFirst.because}; ${siteLast.because}`,
    },
  ];
  if (seen.noise !== undefined) {
    inputs.push({
      input: "scatter",
      // Divided by k, so that the expanded uncertainty carries Student's factor.
      standardUncertainty: seen.noise / COVERAGE_FACTOR,
      unit: "Pa",
      sensitivity: 1,
      because: seen.because,
    });
  }
  const uncertainty = combineUncertainties(inputs);
  const U = uncertainty.expandedUncertainty;
  const deviation = seen.end - seen.start;
  const outcome = judge(deviation, U, duration, hold);
  const expectedPressure = seen.start - siteLast.pressure;
  const leak = leakOf(hold, seen, last.pipeTemperature, U, duration);
  const smallest = leak === undefined ? "" : ` (leak ${shownUncertainty(leak.smallestVisible)} Pa m³/s)`;
  return {
    ...uncertainty,
    ...outcome,
    method: readings.length === 2 ? "two-readings" : "series",
    duration,
    expectedPressure,
    deviation,
    slope,
    comparison: {
      idealGas: (absolute(first, hold) * last.pipeTemperature) / first.pipeTemperature - siteLast.pressure,
      printedRule: first.pressure + data.printedRule.value * (last.pipeTemperature - first.pipeTemperature),
    },
    smallestVisibleDrop: U,
    detectableDrop: DETECTION * U,
    leak,
    warnings: holdWarnings(hold, seen.correlation),
    assumptions: assumptionsOf(hold),
    because:
      `expected ${shownKilopascal(expectedPressure)} gauge after ${shown(duration)} s at constant density; ` +
      `deviation ${shownKilopascalWithUncertainty(deviation, U)} (k = 2): ${outcome.state}; ` +
      `a drop smaller than that uncertainty${smallest} could not have been seen`,
  };
}

/**
 * Detection limit over threshold, (k + 1.645)/k: a fall that lies 1.645 u beyond the threshold is found in 95 of 100 tests.
 *
 * @source ISO 11843-1:1997 (recalled)
 */
const DETECTION = (COVERAGE_FACTOR + 1.645) / COVERAGE_FACTOR;

/** As {@link nitrogenHold}, without throwing. */
export function tryNitrogenHold(hold: NitrogenHold): Outcome<NitrogenHoldResult> {
  return attempt(() => nitrogenHold(hold));
}

/** Corrected pressure at both ends, Pa absolute at the last temperature, and what the scatter adds. */
interface Seen {
  readonly start: Pressure;
  readonly end: Pressure;
  /** Expanded uncertainty of end − start from the scatter, Pa; undefined for two readings. */
  readonly noise: PressureDifference | undefined;
  readonly correlation: number;
  readonly because: string;
}

type CorrectedReading = { readonly x: Duration; readonly y: Pressure };

function compareEnds(corrected: readonly CorrectedReading[]): Seen {
  return { start: corrected[0]!.y, end: corrected[1]!.y, noise: undefined, correlation: 0, because: "" };
}

function compareLine(corrected: readonly CorrectedReading[]): Seen {
  const n = corrected.length;
  const line = straightLine(corrected);
  const from = corrected[0]!.x;
  const to = corrected[n - 1]!.x;
  const at = (x: number): number => line.meanY + line.slope * (x - line.meanX);
  const { effective, factor, slopeHalfWidth } = slopeScatter(line, n);
  return {
    start: at(from),
    end: at(to),
    noise: slopeHalfWidth * (to - from),
    correlation: line.correlation,
    because: `scatter of ${n} readings about a line, worth ${shown(effective)}; Student's factor ${shown(factor)}`,
  };
}

function judge(
  deviation: number,
  U: number,
  duration: number,
  hold: NitrogenHold,
): { readonly verdict: Verdict; readonly state: HoldState } {
  if (deviation < -U) return { verdict: "fail", state: "drop" };
  if (deviation > U) return { verdict: "inconclusive", state: "invalid" };
  if (hold.readings.some(({ pressure }) => pressure > hold.maximumAllowablePressure)) {
    return { verdict: "inconclusive", state: "strength-only" };
  }
  if (U > data.blind.fraction * hold.readings[0]!.pressure)
    return { verdict: "inconclusive", state: "blind" };
  const required = hold.requiredDuration ?? data.duration.value;
  if (duration < required) return { verdict: "inconclusive", state: "too-short" };
  return { verdict: "pass", state: "no-drop-seen" };
}

function leakOf(
  { nitrogen, internalVolume }: NitrogenHold,
  { start, end }: Seen,
  temperature: Temperature,
  U: number,
  duration: number,
): HoldLeak | undefined {
  if (internalVolume === undefined) return undefined;
  const referenceTemperature = data.referenceTemperature.value;
  const density = (pressure: Pressure) => nitrogen.state({ temperature, pressure }).density;
  const lost = density(start) - density(end);
  // A throughput is stated at the reference temperature, where the same gas fills T_ref/T of its volume.
  const smallest = ((U * internalVolume) / duration) * (referenceTemperature / temperature);
  return {
    throughput: (internalVolume / duration) * lost * nitrogen.specificGasConstant * referenceTemperature,
    expandedUncertainty: smallest,
    smallestVisible: smallest,
    detectable: DETECTION * smallest,
    referenceTemperature,
  };
}

function absolute(reading: HoldReading, hold: NitrogenHold): Pressure {
  return reading.pressure + (reading.atmosphere ?? hold.atmosphere).pressure;
}

function densityOf(nitrogen: Refrigerant, reading: HoldReading, hold: NitrogenHold): number {
  return nitrogen.state({ temperature: reading.pipeTemperature, pressure: absolute(reading, hold) }).density;
}

function pressureAt(nitrogen: Refrigerant, density: number, temperature: Temperature): Pressure {
  return nitrogen.state({ temperature, density }).pressure;
}

function assumptionsOf({ readings }: NitrogenHold): string[] {
  const assumptions = [
    "The supply is disconnected and the volume has not changed.",
    "The whole system has the temperature that was read on the pipe.",
  ];
  if (readings.some(({ atmosphere }) => atmosphere === undefined)) {
    assumptions.push(
      "Where no air pressure was read, that of the site is used, with its uncertainty counted at either end.",
    );
  }
  return assumptions;
}
