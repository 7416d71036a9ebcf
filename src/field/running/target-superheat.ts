import data from "../../../data/field/running.json" with { type: "json" };
import {
  attempt,
  fahrenheit,
  fahrenheitDifference,
  InputCheck,
  inFahrenheit,
  type Outcome,
  OutOfRangeError,
  requireObject,
  type Temperature,
  type TemperatureDifference,
} from "../../units/index.js";
import { halfWidthUncertainty, type Thermometer, thermometerUncertainty } from "../measurement/instrument.js";
import { checkThermometer } from "../measurement/instrument-checks.js";
import { shown, shownCelsius, shownWithUncertainty } from "../measurement/shown.js";
import { combineUncertainties, type Uncertainty } from "../measurement/uncertainty.js";
import type { OperatingMode } from "./line-reading.js";
import { METERING_DEVICES, type MeteringDevice } from "./metering-device.js";

/** Air on both coils of a unit with a fixed orifice or capillary tube. */
export interface TargetSuperheatQuestion {
  /** What feeds the evaporator; only a fixed orifice has such a target. */
  readonly meteringDevice: MeteringDevice;
  /** What the unit is doing; only cooling has such a target. */
  readonly mode: OperatingMode;
  /** Wet bulb of the return air at the coil, K: 50 to 76 °F. */
  readonly returnAirWetBulb: Temperature;
  /** Dry bulb of the air that enters the condenser, K: 55 to 115 °F. */
  readonly outdoorDryBulb: Temperature;
  /** Thermometer with which the wet bulb was read. */
  readonly wetBulbThermometer: Thermometer;
  /** Thermometer with which the outdoor air was read. */
  readonly dryBulbThermometer: Thermometer;
}

/** Whether a target superheat can be used. */
export type TargetSuperheatState =
  /** It can. */
  | "usable"
  /** Below 5 °F (2.8 K): so little cannot be told from liquid in the suction line; charge by weight, or another day. */
  | "below-usable-range"
  /** Above 40 °F (22.2 K): more than a unit shows; one of the two temperatures is wrong. */
  | "check-inputs";

/** Target superheat of a fixed orifice; its uncertainty is that of `raw`. */
export interface TargetSuperheat extends Uncertainty {
  /** Whether it can be used. */
  readonly state: TargetSuperheatState;
  /** Target, K; undefined unless usable. */
  readonly target: TemperatureDifference | undefined;
  /** What the formula gives, K, usable or not. */
  readonly raw: TemperatureDifference;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Target superheat at the suction line of a unit with a fixed orifice or capillary tube, in cooling:
 * (3 WB − 80 − DB)/2 with both temperatures and the result in °F.
 *
 * A valve keeps its own superheat, whatever the charge: for one, and for heating, there is no such target, and the
 * question is refused. The chart on the unit wins over the formula.
 *
 * @param question - Metering device, mode, wet bulb of the return air and dry bulb of the outdoor air (K), thermometers.
 * @returns K with expanded uncertainty (k = 2): readings and the fit, ±2 °F.
 * @throws {@link InputError} `malformed-input`, all problems at once; a device that is no fixed orifice has the reason
 * `no-target-for-valve`, heating the reason `no-target-in-heating`.
 * @throws {@link OutOfRangeError} `out-of-range` for air beyond the range of the fit.
 * @source common practice, no source
 *
 * @example
 * ```ts
 * const thermometer = { accuracy: { kind: "half-width", halfWidth: 0.5 } } as const;
 * const { state, target } = targetSuperheat({
 *   meteringDevice: "fixed-orifice",
 *   mode: "cooling",
 *   returnAirWetBulb: celsius(19),
 *   outdoorDryBulb: celsius(35),
 *   wetBulbThermometer: thermometer,
 *   dryBulbThermometer: thermometer,
 * });
 * state; // → "usable"
 * target; // → 6.56 K
 * ```
 */
export function targetSuperheat(question: TargetSuperheatQuestion): TargetSuperheat {
  examine(question);
  const { returnAirWetBulb, outdoorDryBulb, wetBulbThermometer, dryBulbThermometer } = question;
  const limits = data.targetSuperheat;
  const wetBulb = inRange("wet bulb of the return air", returnAirWetBulb, limits.returnAirWetBulb);
  const dryBulb = inRange("dry bulb of the outdoor air", outdoorDryBulb, limits.outdoorDryBulb);
  const rawFahrenheit = (3 * wetBulb - 80 - dryBulb) / 2;
  const raw = fahrenheitDifference(rawFahrenheit);
  const ofWetBulb = thermometerUncertainty(wetBulbThermometer);
  const ofDryBulb = thermometerUncertainty(dryBulbThermometer);
  const fit = fahrenheitDifference(limits.fitFahrenheit);
  const uncertainty = combineUncertainties([
    {
      input: "wet bulb",
      standardUncertainty: ofWetBulb.standardUncertainty,
      unit: "K",
      sensitivity: 1.5,
      because: ofWetBulb.because,
    },
    {
      input: "dry bulb",
      standardUncertainty: ofDryBulb.standardUncertainty,
      unit: "K",
      sensitivity: -0.5,
      because: ofDryBulb.because,
    },
    {
      input: "fit",
      standardUncertainty: halfWidthUncertainty(fit),
      unit: "K",
      sensitivity: 1,
      because: `a fit to charts: ± ${shown(fit)} K (common practice, no source)`,
    },
  ]);
  const state: TargetSuperheatState =
    rawFahrenheit < limits.lowestFahrenheit
      ? "below-usable-range"
      : rawFahrenheit > limits.highestFahrenheit
        ? "check-inputs"
        : "usable";
  return {
    ...uncertainty,
    state,
    target: state === "usable" ? raw : undefined,
    raw,
    assumptions: ["The chart on the unit and its manual win over this formula."],
    because:
      `(3 WB − 80 − DB)/2 in °F with WB ${shown(wetBulb)} °F (${shownCelsius(returnAirWetBulb)}) and DB ` +
      `${shown(dryBulb)} °F (${shownCelsius(outdoorDryBulb)}): ` +
      `${shownWithUncertainty(raw, uncertainty.expandedUncertainty)} K (k = 2), ${stateWords[state]}`,
  };
}

/** As {@link targetSuperheat}, without throwing. */
export function tryTargetSuperheat(question: TargetSuperheatQuestion): Outcome<TargetSuperheat> {
  return attempt(() => targetSuperheat(question));
}

const stateWords: Readonly<Record<TargetSuperheatState, string>> = {
  usable: "usable as a target",
  "below-usable-range": "too little to be a target: charge by weight, or when the air is warmer inside",
  "check-inputs": "more than units show: check both temperatures",
};

/** The value in °F, if the fit covers it. */
function inRange(
  quantity: string,
  value: Temperature,
  limits: { readonly minimumFahrenheit: number; readonly maximumFahrenheit: number },
): number {
  // Conversions disturb the last bits: 10 °C is 50 °F, and inside.
  const plain = Number(inFahrenheit(value).toFixed(9));
  const { minimumFahrenheit, maximumFahrenheit } = limits;
  if (plain >= minimumFahrenheit && plain <= maximumFahrenheit) return plain;
  throw new OutOfRangeError({
    quantity,
    value,
    minimum: fahrenheit(minimumFahrenheit),
    maximum: fahrenheit(maximumFahrenheit),
    unit: "K",
    subject: "the target superheat of a fixed orifice",
  });
}

function examine(question: TargetSuperheatQuestion): void {
  requireObject("", question, "air temperatures and a metering device");
  const check = new InputCheck();
  const { meteringDevice, mode } = question;
  if (check.oneOf("meteringDevice", meteringDevice, METERING_DEVICES) && meteringDevice !== "fixed-orifice") {
    check.problems.push({
      path: "meteringDevice",
      value: meteringDevice,
      expected: "fixed-orifice: a valve keeps its own superheat, and the charge is judged by other readings",
      reason: "no-target-for-valve",
    });
  }
  if (check.oneOf("mode", mode, ["cooling", "heating"]) && mode === "heating") {
    check.problems.push({
      path: "mode",
      value: mode,
      expected: "cooling: in heating there is no such target",
      reason: "no-target-in-heating",
    });
  }
  check.positive("returnAirWetBulb", question.returnAirWetBulb);
  check.positive("outdoorDryBulb", question.outdoorDryBulb);
  checkThermometer(check, "wetBulbThermometer", question.wetBulbThermometer);
  checkThermometer(check, "dryBulbThermometer", question.dryBulbThermometer);
  check.finish();
}
