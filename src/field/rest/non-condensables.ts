import data from "../../../data/field/rest.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type GaugePressure,
  InputCheck,
  type LocalAtmosphere,
  type Outcome,
  type Pressure,
  type PressureDifference,
  requireObject,
  type Temperature,
  type TemperatureDifference,
} from "../../units/index.js";
import type { Verdict } from "../measurement/decision.js";
import { isLowOnScale, type PressureGauge, type Thermometer } from "../measurement/instrument.js";
import {
  shown,
  shownCelsius,
  shownKilopascal,
  shownKilopascalWithUncertainty,
} from "../measurement/shown.js";
import { COVERAGE_FACTOR, type Uncertainty } from "../measurement/uncertainty.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { saturationSlope } from "../running/saturation-slope.js";
import { checkRestReading, distanceToSaturation } from "./rest-reading.js";

/** A system at rest that may hold a gas that does not condense. */
export interface NonCondensableReading {
  /** Refrigerant that should be in it; of a blend, with the composition of the whole charge. */
  readonly refrigerant: Refrigerant;
  /** What the gauge shows, Pa gauge. */
  readonly pressure: GaugePressure;
  /** The gauge. */
  readonly gauge: PressureGauge;
  /** Mean temperature of its parts, K. */
  readonly temperature: Temperature;
  /** How far the warmest part is above the coldest, K: it has to be known. */
  readonly spread: TemperatureDifference;
  /** The thermometer. */
  readonly thermometer: Thermometer;
  /** Air pressure of the site. */
  readonly atmosphere: LocalAtmosphere;
}

/** What the pressure at rest says about other gas. */
export type NonCondensableState =
  /** No more than the refrigerant makes, within the uncertainty: not the same as free of other gas. */
  | "none-seen"
  /** More than the refrigerant makes: another gas, or another refrigerant. */
  | "excess"
  /** Less than it makes with liquid, of a blend less than its dew pressure: vapour alone, or another refrigerant. */
  | "below-saturation"
  /** Parts too unlike to tell. */
  | "not-uniform";

/** Codes of the warnings of a search for other gas. */
export type NonCondensableWarningCode = "hidden-by-glide" | "low-on-scale" | "blind";

/** What the pressure at rest says. Its uncertainty is that of the excess pressure, Pa. */
export interface NonCondensableResult extends Uncertainty {
  /** `pass` for none seen, `fail` for an excess; else, and with instruments too coarse, `inconclusive`. */
  readonly verdict: Verdict;
  /** What was seen. */
  readonly state: NonCondensableState;
  /** Bubble pressure at the temperature, Pa: the most that the refrigerant makes. */
  readonly bubblePressure: Pressure;
  /** Dew pressure there, Pa: the least that it makes with liquid present. */
  readonly dewPressure: Pressure;
  /** Pressure less the bubble pressure at the temperature, Pa. */
  readonly excess: PressureDifference;
  /**
   * The same in kelvin: bubble temperature at the pressure less the temperature. Undefined where the refrigerant has no
   * bubble point at that pressure.
   */
  readonly excessTemperature: TemperatureDifference | undefined;
  /** Its expanded uncertainty, k = 2, K. */
  readonly excessTemperatureUncertainty: TemperatureDifference | undefined;
  /**
   * Most that the partial pressure of another gas can be, Pa, by Dalton: pressure less dew pressure, and the uncertainty
   * on top. Undefined below saturation, where nobody knows the share of the refrigerant.
   */
  readonly partialPressureBound: PressureDifference | undefined;
  /** What is odd. */
  readonly warnings: readonly Warning<NonCondensableWarningCode>[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** What to do next. */
  readonly next: string;
  /** The rule and the numbers that decided. */
  readonly because: string;
}

const next: Readonly<Record<NonCondensableState, string>> = {
  "none-seen": "Nothing to do: no other gas is seen beyond what the instruments leave open.",
  excess:
    "Do not run the compressor: air may be inside. Check the zero of the gauge and which refrigerant it is; if it is the " +
    "right one, recover it, evacuate and weigh in anew.",
  "below-saturation":
    "Look for a part that is colder than those read; if there is none, look for a leak: hardly any liquid is left, or it " +
    "is another refrigerant.",
  "not-uniform":
    "Leave the unit off, with the outdoor fan on, until all parts have one temperature, and read again.",
};

/**
 * Is there a gas in the system that does not condense? With the unit off and all parts at one temperature the pressure should
 * be that of the refrigerant, of a blend at most that of its bubble point; what lies above is another gas or another
 * refrigerant.
 *
 * U² = 2² (u_gauge² + u_air² + (dp/dT)² (u_T² + u_spread²) + u_model²), the last for a blend. A blend with liquid present
 * stands somewhere from its dew to its bubble pressure, by how much of it is vapour: only below the dew pressure is it
 * below saturation, and up to the glide other gas can hide.
 *
 * @param reading - Refrigerant, pressure (Pa gauge), temperature of the parts and how far they differ (K), instruments
 * and site.
 * @returns State, excess in Pa and in K with expanded uncertainty (k = 2), and what to do next.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws `out-of-range` where the refrigerant has no liquid at that temperature.
 * @source law of Dalton; JCGM 100:2008 (GUM) for the uncertainty; half a kelvin of spread: common practice, no source
 *
 * @example
 * ```ts
 * const { state, excess, excessTemperature } = checkNonCondensables({
 *   refrigerant: refrigerant("R-32"),
 *   pressure: kilopascalGauge(1950),
 *   gauge: { accuracy: { kind: "percent-of-full-scale", percent: 0.5, fullScale: megapascalGauge(5.5) } },
 *   temperature: celsius(30),
 *   spread: 0.3,
 *   thermometer: { accuracy: { kind: "half-width", halfWidth: kelvinDifference(0.5) } },
 *   atmosphere: localAtmosphere({ from: "altitude", altitude: 0 }),
 * });
 * state; // → "excess"
 * excess; // → 123818 Pa
 * excessTemperature; // → 2.42 K
 * ```
 */
export function checkNonCondensables(reading: NonCondensableReading): NonCondensableResult {
  examine(reading);
  const { refrigerant, temperature, spread } = reading;
  const bubble = distanceToSaturation("bubble", refrigerant, reading);
  const dew = distanceToSaturation("dew", refrigerant, reading);
  const { saturationPressure: bubblePressure, deviation: excess, ...uncertainty } = bubble;
  const U = uncertainty.expandedUncertainty;
  const isBelow = dew.deviation < -dew.expandedUncertainty;
  const state =
    spread > data.uniform.value
      ? "not-uniform"
      : excess > U
        ? "excess"
        : isBelow
          ? "below-saturation"
          : "none-seen";
  const blind = U > data.blind.fraction * bubblePressure;
  const against = isBelow
    ? `${shownKilopascalWithUncertainty(dew.deviation, dew.expandedUncertainty)} (k = 2) from the dew pressure`
    : `${shownKilopascalWithUncertainty(excess, U)} (k = 2) from the bubble pressure`;
  return {
    ...uncertainty,
    verdict: blind ? "inconclusive" : verdictOf[state],
    state,
    bubblePressure,
    dewPressure: dew.saturationPressure,
    excess,
    ...asTemperature(reading, bubblePressure + excess, bubble),
    partialPressureBound: isBelow ? undefined : dew.deviation + dew.expandedUncertainty,
    warnings: warningsOf(reading, U, bubblePressure, dew.saturationPressure),
    assumptions: [
      "There is liquid in the system: vapour and another gas together may make any pressure.",
      "The unit has been off long enough for the liquid to have the temperature of the parts.",
    ],
    next: next[state],
    because:
      `${against} of ${refrigerant.designation} at ${shownCelsius(temperature)}, parts within ${shown(spread)} K: ` +
      `${state}${blind ? ", with instruments that leave a tenth of it open" : ""}`,
  };
}

/** As {@link checkNonCondensables}, without throwing. */
export function tryCheckNonCondensables(reading: NonCondensableReading): Outcome<NonCondensableResult> {
  return attempt(() => checkNonCondensables(reading));
}

const verdictOf = {
  "none-seen": "pass",
  excess: "fail",
  "below-saturation": "inconclusive",
  "not-uniform": "inconclusive",
} as const;

/** The excess in kelvin; the curve is followed to the pressure that was read. */
function asTemperature(
  { refrigerant, temperature }: NonCondensableReading,
  pressure: Pressure,
  { budget }: Uncertainty,
): Pick<NonCondensableResult, "excessTemperature" | "excessTemperatureUncertainty"> {
  const there = attempt(() => saturationSlope(refrigerant, "bubble", pressure));
  if (!there.ok) return { excessTemperature: undefined, excessTemperatureUncertainty: undefined };
  // Pressures count through the slope at the pressure read; the temperature of the parts counts as it is.
  const { slope } = there.value;
  const parts = budget.map(({ unit, standardUncertainty }) =>
    unit === "K" ? standardUncertainty : slope * standardUncertainty,
  );
  return {
    excessTemperature: there.value.temperature - temperature,
    excessTemperatureUncertainty: COVERAGE_FACTOR * Math.hypot(...parts),
  };
}

function warningsOf(
  { gauge, pressure }: NonCondensableReading,
  U: PressureDifference,
  bubble: Pressure,
  dew: Pressure,
): Warning<NonCondensableWarningCode>[] {
  const warnings: Warning<NonCondensableWarningCode>[] = [];
  if (U > data.blind.fraction * bubble) {
    warnings.push({
      code: "blind",
      message: `± ${shownKilopascal(U)} (k = 2) is more than a tenth of the expected pressure`,
    });
  }
  if (bubble - dew > U) {
    warnings.push({
      code: "hidden-by-glide",
      message:
        `the blend itself stands anywhere from ${shownKilopascal(dew)} to ${shownKilopascal(bubble)} absolute: up to ` +
        `${shownKilopascal(bubble - dew)} of another gas can hide there`,
    });
  }
  if (isLowOnScale(gauge, pressure)) {
    warnings.push({
      code: "low-on-scale",
      message: "the reading lies in the lowest quarter of the scale: use a gauge of smaller range",
    });
  }
  return warnings;
}

function examine(reading: NonCondensableReading): void {
  requireObject("", reading, "a reading at rest");
  const check = new InputCheck();
  const { refrigerant } = reading;
  checkRefrigerant(check, "refrigerant", refrigerant);
  checkRestReading(check, reading);
  check.notNegative("spread", reading.spread);
  check.finish();
}
