import type { Refrigerant } from "../../state/index.js";
import type {
  GaugePressure,
  InputCheck,
  LocalAtmosphere,
  Pressure,
  PressureDifference,
  Temperature,
  TemperatureDifference,
} from "../../units/index.js";
import {
  gaugeUncertainty,
  halfWidthUncertainty,
  type PressureGauge,
  type Thermometer,
  thermometerUncertainty,
} from "../measurement/instrument.js";
import { checkGauge, checkReading, checkThermometer } from "../measurement/instrument-checks.js";
import { mixtureModelInput } from "../measurement/mixture-model.js";
import { shown } from "../measurement/shown.js";
import { checkAtmosphere } from "../measurement/site.js";
import { combineUncertainties, type UncertainInput, type Uncertainty } from "../measurement/uncertainty.js";
import { type SaturationEnd, saturationSlope } from "../running/saturation-slope.js";

/** What is read on a system at rest. */
export interface RestReading {
  readonly pressure: GaugePressure;
  readonly gauge: PressureGauge;
  /** Mean temperature of the parts, K. */
  readonly temperature: Temperature;
  readonly thermometer: Thermometer;
  readonly atmosphere: LocalAtmosphere;
  /** Warmest part less coldest, K, where it was measured. */
  readonly spread?: TemperatureDifference;
}

/** A reading against one end of the glide; the uncertainty is that of the deviation, Pa. */
export interface DistanceToSaturation extends Uncertainty {
  /** Saturation pressure at the temperature of the parts, Pa. */
  readonly saturationPressure: Pressure;
  /** Pressure read less saturation pressure, Pa. */
  readonly deviation: PressureDifference;
}

/** Records what is wrong with a reading at rest, but for its spread. */
export function checkRestReading(check: InputCheck, reading: RestReading): void {
  const before = check.problems.length;
  checkGauge(check, "gauge", reading.gauge);
  const isGaugeGood = check.problems.length === before;
  checkThermometer(check, "thermometer", reading.thermometer);
  const isAirGood = checkAtmosphere(check, "atmosphere", reading.atmosphere);
  check.positive("temperature", reading.temperature);
  if (isGaugeGood) checkReading(check, "pressure", reading.pressure, reading.gauge);
  else check.finite("pressure", reading.pressure);
  if (isAirGood) {
    check.require(
      !(reading.pressure <= -reading.atmosphere.pressure),
      "pressure",
      reading.pressure,
      `above ${-reading.atmosphere.pressure} Pa: no vacuum is deeper than the air pressure of the site`,
    );
  }
}

/** How far a reading lies from the bubble or the dew pressure of a refrigerant. */
export function distanceToSaturation(
  end: SaturationEnd,
  refrigerant: Refrigerant,
  { pressure, gauge, temperature, thermometer, atmosphere, spread }: RestReading,
): DistanceToSaturation {
  const saturationPressure = refrigerant[end]({ temperature }).pressure;
  const slope = 1 / saturationSlope(refrigerant, end, saturationPressure).slope;
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
      sensitivity: -slope,
      because: ofThermometer.because,
    },
  ];
  if (spread !== undefined) {
    inputs.push({
      input: "spread",
      // Nobody knows on which part the liquid lies: anywhere from the coldest to the warmest.
      standardUncertainty: halfWidthUncertainty(spread / 2),
      unit: "K",
      sensitivity: -slope,
      because: `the liquid lies on some part, ± ${shown(spread / 2)} K from the mean`,
    });
  }
  if (refrigerant.mixing !== undefined) {
    inputs.push(mixtureModelInput(refrigerant, refrigerant.mixing, saturationPressure, -1));
  }
  return {
    ...combineUncertainties(inputs),
    saturationPressure,
    deviation: pressure + atmosphere.pressure - saturationPressure,
  };
}
