import data from "../../../data/field/rest.json" with { type: "json" };
import { InputCheck } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type GaugePressure,
  type LocalAtmosphere,
  type Outcome,
  type PressureDifference,
  requireObject,
  type Temperature,
  type TemperatureDifference,
} from "../../units/index.js";
import {
  gaugeUncertainty,
  type PressureGauge,
  type Thermometer,
  thermometerUncertainty,
} from "../measurement/instrument.js";
import { checkGauge, checkReading, checkThermometer } from "../measurement/instrument-checks.js";
import { mixtureModelInput } from "../measurement/mixture-model.js";
import { shownCelsius, shownKilopascalWithUncertainty } from "../measurement/shown.js";
import { checkAtmosphere } from "../measurement/site.js";
import { combineUncertainties, type UncertainInput, type Uncertainty } from "../measurement/uncertainty.js";
import { saturationSlope } from "../running/saturation-slope.js";

/** A system at rest that may hold a gas that does not condense. */
export interface NonCondensableReading {
  /** Refrigerant that should be in it. */
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

/** What the pressure at rest says. Its uncertainty is that of the excess pressure, Pa. */
export interface NonCondensableResult extends Uncertainty {
  /** Nothing seen, more pressure than the refrigerant makes, less than it makes with liquid, or parts too unlike to tell. */
  readonly state: "none-seen" | "excess" | "below-saturation" | "not-uniform";
  /** Pressure less the bubble pressure at the temperature, Pa. */
  readonly excess: PressureDifference;
  /** The same in kelvin: bubble temperature at the pressure less the temperature. */
  readonly excessTemperature: TemperatureDifference;
  /** Most that the partial pressure of another gas can be, Pa, by Dalton; 0 where none was seen. */
  readonly partialPressureBound: PressureDifference;
  /** What to do next. */
  readonly next: string;
  /** The rule and the numbers that decided. */
  readonly because: string;
}

const next: Readonly<Record<NonCondensableResult["state"], string>> = {
  "none-seen": "Nothing to do: no other gas is seen beyond what the instruments leave open.",
  excess: "Check which refrigerant it is; if it is the right one, recover it, evacuate and weigh in anew.",
  "below-saturation": "Look for a leak: hardly any liquid is left, or it is another refrigerant.",
  "not-uniform":
    "Leave the unit off, with the outdoor fan on, until all parts have one temperature, and read again.",
};

/**
 * Is there a gas in the system that does not condense? With the unit off and all parts at one temperature the pressure should
 * be that of the refrigerant, of a blend at its bubble point; what lies above is another gas or another refrigerant.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws `out-of-range` beyond the equation of state.
 * @source law of Dalton; JCGM 100:2008 (GUM) for the uncertainty; half a kelvin of spread: common practice, no source
 */
export function checkNonCondensables(reading: NonCondensableReading): NonCondensableResult {
  examine(reading);
  const { refrigerant, pressure, gauge, temperature, spread, thermometer, atmosphere } = reading;
  const expected = refrigerant.bubble({ temperature }).pressure;
  const absolute = pressure + atmosphere.pressure;
  const { slope } = saturationSlope(refrigerant, "bubble", expected);
  const ofGauge = gaugeUncertainty(gauge, pressure);
  const ofThermometer = thermometerUncertainty(thermometer);
  const inputs: UncertainInput[] = [
    {
      input: "gauge",
      standardUncertainty: ofGauge.standardUncertainty,
      unit: "Pa",
      sensitivity: 1,
      because: ofGauge.because,
    },
    {
      input: "atmosphere",
      standardUncertainty: atmosphere.standardUncertainty,
      unit: "Pa",
      sensitivity: 1,
      because: atmosphere.because,
    },
    {
      input: "thermometer",
      standardUncertainty: ofThermometer.standardUncertainty,
      unit: "K",
      sensitivity: -1 / slope,
      because: ofThermometer.because,
    },
  ];
  const { mixing } = refrigerant;
  if (mixing !== undefined) inputs.push(mixtureModelInput(refrigerant, mixing, expected, 1));
  const uncertainty = combineUncertainties(inputs);
  const U = uncertainty.expandedUncertainty;
  const excess = absolute - expected;
  const excessTemperature = refrigerant.bubble({ pressure: absolute }).temperature - temperature;
  const state =
    spread > data.uniform.value
      ? "not-uniform"
      : Math.abs(excess) <= U
        ? "none-seen"
        : excess > 0
          ? "excess"
          : "below-saturation";
  return {
    ...uncertainty,
    state,
    excess,
    excessTemperature,
    partialPressureBound: Math.max(0, excess + U),
    next: next[state],
    because:
      `${shownKilopascalWithUncertainty(excess, U)} (k = 2) above the bubble pressure of ${refrigerant.designation} at ` +
      `${shownCelsius(temperature)}, parts within ${spread} K: ${state}`,
  };
}

/** As {@link checkNonCondensables}, without throwing. */
export function tryCheckNonCondensables(reading: NonCondensableReading): Outcome<NonCondensableResult> {
  return attempt(() => checkNonCondensables(reading));
}

function examine(reading: NonCondensableReading): void {
  requireObject("", reading, "a reading at rest");
  const check = new InputCheck();
  const { refrigerant } = reading;
  const isOne = typeof refrigerant === "object" && refrigerant !== null;
  check.require(isOne, "refrigerant", refrigerant, "a refrigerant");
  checkGauge(check, "gauge", reading.gauge);
  checkThermometer(check, "thermometer", reading.thermometer);
  checkAtmosphere(check, "atmosphere", reading.atmosphere);
  check.positive("temperature", reading.temperature);
  check.notNegative("spread", reading.spread);
  if (reading.gauge?.accuracy !== undefined) checkReading(check, "pressure", reading.pressure, reading.gauge);
  check.finish();
}
