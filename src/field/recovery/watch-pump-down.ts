import data from "../../../data/field/recovery.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import { attempt, type GaugePressure, InputCheck, type Outcome, requireObject } from "../../units/index.js";
import { type Decision, decide } from "../measurement/decision.js";
import { gaugeUncertainty, type PressureGauge } from "../measurement/instrument.js";
import { checkGauge, checkReading } from "../measurement/instrument-checks.js";
import { shownKilopascal, shownKilopascalWithUncertainty } from "../measurement/shown.js";
import { COVERAGE_FACTOR } from "../measurement/uncertainty.js";

/** What the low side shows while the charge is pumped down. */
export interface PumpDownReading {
  /** Pressure on the low side, Pa gauge. */
  readonly pressure: GaugePressure;
  /** The gauge. */
  readonly gauge: PressureGauge;
  /** Whether a leak is suspected or a flare is open by now. */
  readonly leakSuspected: boolean;
}

/** What to do now. */
export type PumpDownOrder =
  /** Go on pumping. */
  | "go-on"
  /** The end is reached, or may be: close the gas valve and stop. */
  | "stop"
  /** The low side is below the atmosphere: stop at once. */
  | "below-atmosphere"
  /** A leak is suspected: stop at once. */
  | "leak-suspected";

/** Codes of the warnings of a pump-down. */
export type PumpDownWarningCode = "gauge-too-coarse";

/** What a reading of the low side asks for. */
export interface PumpDownReadingResult {
  /** What to do now. */
  readonly state: PumpDownOrder;
  /** The reading against the window in which a pump-down ends, in kPa gauge. */
  readonly decision: Decision;
  /** What is odd. */
  readonly warnings: readonly Warning<PumpDownWarningCode>[];
  /** What to do, in words. */
  readonly next: string;
  /** The rule and the numbers that decided. */
  readonly because: string;
}

const next: Readonly<Record<PumpDownOrder, string>> = {
  "go-on": "Go on pumping and read again.",
  stop: "Close the gas stop valve and switch the unit off at once.",
  "below-atmosphere":
    "Close the gas stop valve and switch the unit off at once. Air may have come in: do not run the compressor again " +
    "before the circuit has been checked.",
  "leak-suspected":
    "Switch the unit off at once: a leak can draw air into the running compressor. Recover the charge with the unit off.",
};

/**
 * Go on, or stop? A pump-down ends between 0 and 0.05 MPa gauge on the low side, and never goes below the atmosphere.
 *
 * The uncertainty of the gauge counts on the safe side: as soon as the pressure may have come down to the atmosphere,
 * p − U ≤ 0, it is time to stop, however high the needle stands. A coarse manifold therefore stops early.
 *
 * @param reading - Pressure on the low side (Pa gauge), gauge, and whether a leak is suspected.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source common practice, no source: `data/field/recovery.json`; the guard by U is our own rule
 *
 * @example
 * ```ts
 * const gauge = { accuracy: { kind: "half-width", halfWidth: 5000 } } as const;
 * watchPumpDown({ pressure: kilopascalGauge(180), gauge, leakSuspected: false }).state; // → "go-on"
 * watchPumpDown({ pressure: kilopascalGauge(30), gauge, leakSuspected: false }).state; // → "stop"
 * ```
 */
export function watchPumpDown(reading: PumpDownReading): PumpDownReadingResult {
  examine(reading);
  const { pressure, gauge, leakSuspected } = reading;
  const { minimum, maximum } = data.stopPressure;
  const U = COVERAGE_FACTOR * gaugeUncertainty(gauge, pressure).standardUncertainty;
  const decision = decide(
    pressure / 1000,
    U / 1000,
    { minimum: minimum / 1000, maximum: maximum / 1000 },
    { quantity: "low side", unit: "kPa" },
  );
  const state = orderOf(reading, U);
  return {
    state,
    decision,
    warnings: decision.canPass
      ? []
      : [
          {
            code: "gauge-too-coarse",
            message:
              `± ${shownKilopascal(U)} (k = 2) is more than half of the window from ${shownKilopascal(minimum)} to ` +
              `${shownKilopascal(maximum)}: this gauge cannot show the end`,
          },
        ],
    next: next[state],
    because:
      `${leakSuspected ? "a leak is suspected; " : ""}${shownKilopascalWithUncertainty(pressure, U)} gauge (k = 2) on ` +
      `the low side, stop between ${shownKilopascal(minimum)} and ${shownKilopascal(maximum)}: ${state}`,
  };
}

/** As {@link watchPumpDown}, without throwing. */
export function tryWatchPumpDown(reading: PumpDownReading): Outcome<PumpDownReadingResult> {
  return attempt(() => watchPumpDown(reading));
}

function orderOf({ pressure, leakSuspected }: PumpDownReading, U: number): PumpDownOrder {
  const { minimum, maximum } = data.stopPressure;
  if (leakSuspected) return "leak-suspected";
  if (pressure < minimum) return "below-atmosphere";
  return pressure <= maximum || pressure - U <= minimum ? "stop" : "go-on";
}

function examine(reading: PumpDownReading): void {
  requireObject("", reading, "a reading of the low side");
  const { pressure, gauge, leakSuspected } = reading;
  const check = new InputCheck();
  checkGauge(check, "gauge", gauge);
  if (check.problems.length === 0) checkReading(check, "pressure", pressure, gauge);
  else check.finite("pressure", pressure);
  check.require(typeof leakSuspected === "boolean", "leakSuspected", leakSuspected, "true or false");
  check.finish();
}
