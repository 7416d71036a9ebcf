import type { Warning } from "../../safety/index.js";
import {
  attempt,
  type Duration,
  InputCheck,
  NotConvergedError,
  type Outcome,
  type Pressure,
  requireObject,
  type Volume,
  type VolumeFlow,
} from "../../units/index.js";
import { shown, shownKilopascal } from "../measurement/shown.js";
import { type Chain, pressureAtPump, pressuresUpstream } from "./hose-resistance.js";
import {
  chainOf,
  checkPumpAndHose,
  type HoseWarningCode,
  laminarThroughput,
  PUMP_KEEPS_ITS_SPEED,
  type PumpAndHose,
  shortElementWarnings,
  VALVE_CORES,
} from "./pump-through-hose.js";

/** A system that is to be evacuated. */
export interface Evacuation {
  /** Volume of the system, m3. */
  readonly internalVolume: Volume;
  /** Pressure at the start, Pa absolute. */
  readonly startPressure: Pressure;
  /** Pressure to reach, Pa absolute. */
  readonly targetPressure: Pressure;
  /** Gas that enters all the while through a leak or out of oil and water, Pa m3/s; left out: none is counted. */
  readonly gasLoad?: number;
}

/** An evacuation at a speed that does not change. */
export interface ConstantSpeedEvacuation extends Evacuation {
  /** Pumping speed that arrives at the system, m3/s. */
  readonly effectiveSpeed: VolumeFlow;
  /** Pressure that the pump reaches with its inlet shut, Pa absolute; 0 for a perfect one. */
  readonly ultimatePressure: Pressure;
}

/** An evacuation through hoses. */
export interface HoseEvacuation extends Evacuation, PumpAndHose {}

/** How long an evacuation takes, at least. */
export interface EvacuationTime {
  /** `reached`, or `never-reached` where pump and gas load keep the system above the target. */
  readonly state: "reached" | "never-reached";
  /** Shortest time, s; undefined when the target is never reached. */
  readonly time: Duration | undefined;
  /** Pressure that the system comes close to and never gets below, Pa absolute. */
  readonly lowestPressure: Pressure;
  /** What is odd. */
  readonly warnings: readonly Warning<HoseWarningCode>[];
  /** What was taken for granted, in sentences: all of it makes the real time longer. */
  readonly assumptions: readonly string[];
  /** The numbers that decided. */
  readonly because: string;
}

/** How long an evacuation through hoses takes, at least. */
export interface HoseEvacuationTime extends EvacuationTime {
  /** Pumping speed at the system when the target is reached, m3/s; undefined when it never is. */
  readonly effectiveSpeedAtTarget: VolumeFlow | undefined;
  /** Time if the hoses held nothing back, s: what a better hose could save; undefined when even then never reached. */
  readonly timeWithoutHose: Duration | undefined;
  /** Pressure in the system below which flow is laminar in every piece, as counted, Pa absolute. */
  readonly laminarBelow: Pressure;
  /** Intervals of the integral. */
  readonly steps: number;
  /** Part of the time that the integral may be off, estimated; at most 1e-8. */
  readonly relativeError: number;
}

/**
 * Shortest time to evacuate at a constant speed, t = (V/S) ln((p₀ − p_u)/(p₁ − p_u)), with p_u = ultimate pressure of the
 * pump + gas load/S.
 *
 * @param evacuation - Volume (m3), pressures (Pa absolute), speed (m3/s), gas load (Pa m3/s).
 * @returns At least this long; `never-reached` for p₁ ≤ p_u.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a target not below the start.
 * @source V dp/dt = −S (p − p_u), textbook vacuum technology
 *
 * @example
 * ```ts
 * const { time } = evacuationTimeAtConstantSpeed({
 *   internalVolume: litre(5),
 *   effectiveSpeed: litrePerSecond(0.05),
 *   startPressure: 101325,
 *   targetPressure: 66.66,
 *   ultimatePressure: 13.33,
 * });
 * time; // → 754.9 s
 * ```
 */
export function evacuationTimeAtConstantSpeed(evacuation: ConstantSpeedEvacuation): EvacuationTime {
  requireObject("", evacuation, "a system and a pump");
  const { internalVolume, effectiveSpeed, startPressure, targetPressure, ultimatePressure } = evacuation;
  const check = new InputCheck();
  checkEvacuation(check, evacuation);
  check.positive("effectiveSpeed", effectiveSpeed);
  check.notNegative("ultimatePressure", ultimatePressure);
  check.finish();
  const lowestPressure = ultimatePressure + (evacuation.gasLoad ?? 0) / effectiveSpeed;
  const time =
    targetPressure > lowestPressure
      ? (internalVolume / effectiveSpeed) *
        Math.log((startPressure - lowestPressure) / (targetPressure - lowestPressure))
      : undefined;
  return {
    ...outcomeOf(evacuation, time, lowestPressure),
    warnings: [],
    assumptions: [
      "The speed is the same at every pressure; through a hose less arrives the lower the pressure is.",
      loadAssumption(evacuation),
      PUMP_KEEPS_ITS_SPEED,
    ],
  };
}

/** As {@link evacuationTimeAtConstantSpeed}, without throwing. */
export function tryEvacuationTimeAtConstantSpeed(
  evacuation: ConstantSpeedEvacuation,
): Outcome<EvacuationTime> {
  return attempt(() => evacuationTimeAtConstantSpeed(evacuation));
}

/**
 * Shortest time to evacuate through hoses, whose conductance falls with the pressure: t = V ∫ dp/(q(p) − q_load), with
 * the throughput q as {@link pumpThroughHose} finds it.
 *
 * It is a lower bound: laminar flow in long pieces is the most that can flow, and water and oil give off gas. Compare
 * hoses and pumps with it; a wider hose nearly always saves more than a bigger pump.
 *
 * @param evacuation - Volume (m3), pressures (Pa absolute), pieces (m), gas, pump (m3/s), gas load (Pa m3/s).
 * @returns At least this long; `never-reached` where the pump and the gas load keep the system above the target.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a target not below the start.
 * @throws {@link NotConvergedError} `not-converged`; never expected.
 * @source V dp/dt = −(q − q_load); Simpson's rule over the logarithm of the pressure at the pump, intervals doubled until
 * the estimated error is below 1e-8 of the time
 *
 * @example
 * ```ts
 * const thin = {
 *   internalVolume: litre(5),
 *   startPressure: 101325,
 *   targetPressure: 66.66,
 *   hose: [{ innerDiameter: millimetre(4.8), length: 1.5 }],
 *   gas: airAt20Celsius(),
 *   pumpingSpeed: litrePerSecond(1.416),
 *   ultimatePressure: 0,
 * };
 * evacuationTimeThroughHose(thin).time; // → 262.2 s
 * evacuationTimeThroughHose({ ...thin, pumpingSpeed: litrePerSecond(2.832) }).time; // → 254.6 s: twice the pump
 * evacuationTimeThroughHose({ ...thin, hose: [{ innerDiameter: millimetre(9.5), length: 1.5 }] }).time; // → 39.1 s: twice the bore
 * ```
 */
export function evacuationTimeThroughHose(evacuation: HoseEvacuation): HoseEvacuationTime {
  requireObject("", evacuation, "a system, a hose and a pump");
  const { internalVolume, startPressure, targetPressure, pumpingSpeed, ultimatePressure } = evacuation;
  const check = new InputCheck();
  checkEvacuation(check, evacuation);
  checkPumpAndHose(check, evacuation);
  check.finish();
  const gasLoad = evacuation.gasLoad ?? 0;
  const chain = chainOf(evacuation);
  // What the pump has to hold to carry off the gas load alone.
  const rest = gasLoad / pumpingSpeed;
  // Nothing flows through the hoses of a perfect pump that has nothing to carry off.
  const lowestPressure = ultimatePressure + rest > 0 ? pressuresUpstream(chain, rest).pressures[0]! : 0;
  const laminarBelow = pressuresUpstream(chain, laminarThroughput(evacuation) / pumpingSpeed).pressures[0]!;
  const common = {
    timeWithoutHose: withoutHose(evacuation),
    laminarBelow,
    warnings: shortElementWarnings(evacuation),
    assumptions: [
      `At least this long: above some ${shownKilopascal(laminarBelow)} flow is turbulent or choked, and less than counted.`,
      loadAssumption(evacuation),
      VALVE_CORES,
      PUMP_KEEPS_ITS_SPEED,
    ],
  };
  if (!(targetPressure > lowestPressure)) {
    return {
      ...outcomeOf(evacuation, undefined, lowestPressure),
      ...common,
      effectiveSpeedAtTarget: undefined,
      steps: 0,
      relativeError: 0,
    };
  }
  const first = pressureAtPump(chain, startPressure);
  const last = pressureAtPump(chain, targetPressure);
  const { value, steps, relativeError } = integrate(chain, rest, last, first);
  return {
    ...outcomeOf(evacuation, (internalVolume / pumpingSpeed) * value, lowestPressure),
    ...common,
    effectiveSpeedAtTarget: (pumpingSpeed * last) / targetPressure,
    steps,
    relativeError,
  };
}

/** As {@link evacuationTimeThroughHose}, without throwing. */
export function tryEvacuationTimeThroughHose(evacuation: HoseEvacuation): Outcome<HoseEvacuationTime> {
  return attempt(() => evacuationTimeThroughHose(evacuation));
}

/** Part of the result that the doubling of intervals has to settle to. */
const RELATIVE_ERROR = 1e-8;
const MOST_STEPS = 2 ** 18;

/**
 * ∫ (dp/dx) d ln(x − rest) from `last` to `first`, x being how far the pump stands above its ultimate pressure.
 *
 * With V dp = −S (x − rest) dt this is t S/V. In x the slope dp/dx is an explicit formula, so nothing is solved inside the
 * integral, and the logarithm takes away the pole where pump and gas load balance.
 */
function integrate(
  chain: Chain,
  rest: number,
  last: number,
  first: number,
): { readonly value: number; readonly steps: number; readonly relativeError: number } {
  const from = Math.log(last - rest);
  const range = Math.log((first - rest) / (last - rest));
  const slopeAt = (part: number): number =>
    pressuresUpstream(chain, rest + Math.exp(from + part * range)).slope;
  let steps = 16;
  let even = 0;
  let odd = 0;
  for (let i = 1; i < steps; i++) {
    if (i % 2 === 0) even += slopeAt(i / steps);
    else odd += slopeAt(i / steps);
  }
  const ends = slopeAt(0) + slopeAt(1);
  let value = (range / steps / 3) * (ends + 4 * odd + 2 * even);
  while (steps < MOST_STEPS) {
    // All points so far become even ones.
    even += odd;
    odd = 0;
    steps *= 2;
    for (let i = 1; i < steps; i += 2) odd += slopeAt(i / steps);
    const finer = (range / steps / 3) * (ends + 4 * odd + 2 * even);
    // Simpson's rule gains a factor of 16 with each doubling.
    const relativeError = Math.abs(finer - value) / 15 / finer;
    if (relativeError <= RELATIVE_ERROR) return { value: finer, steps, relativeError };
    value = finer;
  }
  throw new NotConvergedError("evacuation time", { first, last, rest });
}

function withoutHose(evacuation: HoseEvacuation): Duration | undefined {
  return evacuationTimeAtConstantSpeed({ ...evacuation, effectiveSpeed: evacuation.pumpingSpeed }).time;
}

function outcomeOf(
  { internalVolume, startPressure, targetPressure }: Evacuation,
  time: Duration | undefined,
  lowestPressure: Pressure,
): Pick<EvacuationTime, "state" | "time" | "lowestPressure" | "because"> {
  const from = `${shown(1000 * internalVolume)} L from ${shown(startPressure)} Pa to ${shown(targetPressure)} Pa`;
  return {
    state: time === undefined ? "never-reached" : "reached",
    time,
    lowestPressure,
    because:
      time === undefined
        ? `${from}: never, pump and gas load end at ${shown(lowestPressure)} Pa`
        : `${from}: at least ${shown(time)} s`,
  };
}

function loadAssumption({ gasLoad }: Evacuation): string {
  return gasLoad === undefined
    ? "No leak, no water and nothing out of the oil: each of them adds to the time."
    : "The gas load stays the same; more out of water or oil adds to the time.";
}

function checkEvacuation(check: InputCheck, evacuation: Evacuation): void {
  const { internalVolume, startPressure, targetPressure, gasLoad } = evacuation;
  check.positive("internalVolume", internalVolume);
  check.positive("startPressure", startPressure);
  if (check.positive("targetPressure", targetPressure)) {
    check.require(
      !(targetPressure >= startPressure),
      "targetPressure",
      targetPressure,
      `below the start, ${startPressure} Pa`,
    );
  }
  if (gasLoad !== undefined) check.notNegative("gasLoad", gasLoad);
}
