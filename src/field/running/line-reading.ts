import type { Warning } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type GaugePressure,
  InputCheck,
  type LocalAtmosphere,
  type Pressure,
  type PressureDifference,
  type Temperature,
  type TemperatureDifference,
  toAbsolute,
} from "../../units/index.js";
import {
  gaugeUncertainty,
  halfWidthUncertainty,
  isClampPulled,
  isLowOnScale,
  type PressureGauge,
  type Thermometer,
  thermometerUncertainty,
} from "../measurement/instrument.js";
import { checkGauge, checkReading, checkThermometer } from "../measurement/instrument-checks.js";
import { mixtureModelInput } from "../measurement/mixture-model.js";
import { shown, shownCelsius, shownKilopascal, shownWithUncertainty } from "../measurement/shown.js";
import { checkAtmosphere } from "../measurement/site.js";
import { combineUncertainties, type UncertainInput, type Uncertainty } from "../measurement/uncertainty.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { type SaturationEnd, saturationSlope } from "./saturation-slope.js";

/** What the unit is doing while readings are taken. */
export type OperatingMode = "cooling" | "heating";

/** Where on the circuit the gauge is connected. */
export type ServicePort =
  /** On the suction pipe between reversing valve and compressor: low side in every mode. */
  | "compressor-suction"
  /** On the stop valve of the field gas line: low side in cooling, discharge in heating. */
  | "gas-line"
  /** On a liquid line upstream of the expansion device, full of liquid at condensing pressure. */
  | "liquid-line"
  /** On a field line downstream of the expansion device, such as the thin pipe of a split with the device outdoors. */
  | "after-expansion";

/** A pressure and a pipe temperature, read at the same point of a running system, with the instruments used. */
export interface LineReading {
  /** Refrigerant in the system. */
  readonly refrigerant: Refrigerant;
  /** What the unit is doing. */
  readonly mode: OperatingMode;
  /** Where the gauge is connected. */
  readonly port: ServicePort;
  /** What the gauge shows, Pa gauge. */
  readonly pressure: GaugePressure;
  /** Temperature of the pipe at the same point, K. */
  readonly lineTemperature: Temperature;
  /** Air pressure of the site. */
  readonly atmosphere: LocalAtmosphere;
  /** Gauge used. */
  readonly gauge: PressureGauge;
  /** Thermometer used. */
  readonly thermometer: Thermometer;
  /** Temperature of the air around the pipe, K; when given, a bare clamp far from it is warned of. */
  readonly ambientTemperature?: Temperature;
  /**
   * Standard uncertainty of the saturation temperature from the equation of state, K, with its source. Of a blend it is
   * otherwise taken from the stated deviation of its mixture model.
   */
  readonly equationUncertainty?: {
    readonly standardUncertainty: TemperatureDifference;
    readonly source: string;
  };
}

/** Codes of the warnings of a line reading. */
export type LineWarningCode =
  | "check-probe-or-liquid"
  | "check-probe-or-flash-gas"
  | "saturated-within-uncertainty"
  | "near-critical"
  | "low-on-scale"
  | "clamp-pulled-by-air";

/** Superheat or subcooling with its uncertainty and all it rests on. */
export interface LineResult extends Uncertainty {
  /** Which of the two. */
  readonly quantity: "superheat" | "subcooling";
  /** Superheat or subcooling, K; negative where the reading lies on the wrong side of saturation. */
  readonly value: TemperatureDifference;
  /** Saturation temperature at the pressure, K. */
  readonly saturationTemperature: Temperature;
  /** End of the glide that it was taken from. */
  readonly saturationEnd: SaturationEnd;
  /** Absolute pressure, Pa. */
  readonly pressure: Pressure;
  /** Slope of the saturation curve there, K/Pa. */
  readonly slope: number;
  /** What is odd. */
  readonly warnings: readonly Warning<LineWarningCode>[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/** Above this part of the critical temperature the curve is so flat and the equation so strained that it is warned of. */
const NEAR_CRITICAL = 0.98;

/** Judges the input of a line reading, all problems at once. */
export function checkLineReading(
  reading: LineReading,
  ports: readonly ServicePort[],
  expected: string,
  reason?: string,
): void {
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", reading.refrigerant);
  check.oneOf("mode", reading.mode, ["cooling", "heating"]);
  if (
    check.oneOf("port", reading.port, ["compressor-suction", "gas-line", "liquid-line", "after-expansion"])
  ) {
    if (!ports.includes(reading.port)) {
      const problem = { path: "port", value: reading.port, expected };
      check.problems.push(reason === undefined ? problem : { ...problem, reason });
    }
  }
  check.positive("lineTemperature", reading.lineTemperature);
  checkGauge(check, "gauge", reading.gauge);
  checkThermometer(check, "thermometer", reading.thermometer);
  const isSiteKnown = checkAtmosphere(check, "atmosphere", reading.atmosphere);
  if (reading.ambientTemperature !== undefined)
    check.positive("ambientTemperature", reading.ambientTemperature);
  if (reading.equationUncertainty !== undefined) {
    check.notNegative(
      "equationUncertainty.standardUncertainty",
      reading.equationUncertainty.standardUncertainty,
    );
  }
  if (reading.gauge?.accuracy !== undefined) checkReading(check, "pressure", reading.pressure, reading.gauge);
  if (isSiteKnown) {
    check.require(
      !(reading.pressure + reading.atmosphere.pressure <= 0),
      "pressure",
      reading.pressure,
      `above ${-reading.atmosphere.pressure} Pa, the deepest vacuum at this site`,
    );
  }
  check.finish();
}

/** By how much the pressure where it is wanted is above that at the port. */
export interface LineLoss {
  /** Pa. */
  readonly pressure: PressureDifference;
  /** Limit of its error, Pa. */
  readonly halfWidth: PressureDifference;
}

/**
 * Common part of superheat and subcooling; `sign` is +1 where the pipe should be warmer than saturation. A `loss` moves
 * the pressure from the port to where it is wanted; the temperature is that of the reading.
 */
export function evaluateLineReading(
  reading: LineReading,
  quantity: LineResult["quantity"],
  end: SaturationEnd,
  sign: 1 | -1,
  loss?: LineLoss,
): LineResult {
  const { refrigerant, atmosphere, gauge, thermometer, lineTemperature } = reading;
  const pressure = toAbsolute(reading.pressure, atmosphere.pressure) + (loss?.pressure ?? 0);
  const { temperature: saturationTemperature, slope } = saturationSlope(refrigerant, end, pressure);
  const ofGauge = gaugeUncertainty(gauge, reading.pressure);
  const ofThermometer = thermometerUncertainty(thermometer);
  const inputs: UncertainInput[] = [
    {
      input: "thermometer",
      standardUncertainty: ofThermometer.standardUncertainty,
      unit: "K",
      sensitivity: sign,
      because: ofThermometer.because,
    },
    {
      input: "gauge",
      standardUncertainty: ofGauge.standardUncertainty,
      unit: "Pa",
      sensitivity: -sign * slope,
      because: ofGauge.because,
    },
    {
      input: "atmosphere",
      standardUncertainty: atmosphere.standardUncertainty,
      unit: "Pa",
      sensitivity: -sign * slope,
      because: atmosphere.because,
    },
  ];
  if (loss !== undefined) {
    inputs.push({
      input: "line-loss",
      standardUncertainty: halfWidthUncertainty(loss.halfWidth),
      unit: "Pa",
      sensitivity: -sign * slope,
      because: `loss of the line ${shown(loss.pressure)} Pa, known to ± ${shown(loss.halfWidth)} Pa`,
    });
  }
  const assumptions = [
    loss === undefined
      ? "Pressure and temperature were read at the same point, with the system running steadily."
      : "Pressure and temperature were read at the same time, with the system running steadily.",
  ];
  const { mixing } = refrigerant;
  if (reading.equationUncertainty === undefined && mixing !== undefined) {
    inputs.push(mixtureModelInput(refrigerant, mixing, pressure, -sign * slope));
  } else if (reading.equationUncertainty === undefined) {
    assumptions.push("The equation of state is taken as exact beside the instruments.");
  } else {
    inputs.push({
      input: "equation-of-state",
      standardUncertainty: reading.equationUncertainty.standardUncertainty,
      unit: "K",
      sensitivity: -sign,
      because: reading.equationUncertainty.source,
    });
  }
  const uncertainty = combineUncertainties(inputs);
  const value = sign * (lineTemperature - saturationTemperature);
  return {
    ...uncertainty,
    quantity,
    value,
    saturationTemperature,
    saturationEnd: end,
    pressure,
    slope,
    warnings: warningsOf(reading, quantity, value, uncertainty.expandedUncertainty, saturationTemperature),
    assumptions,
    because:
      `${quantity} ${shownWithUncertainty(value, uncertainty.expandedUncertainty)} K (k = 2): pipe at ` +
      `${shownCelsius(lineTemperature)}, ${end} point ${shownCelsius(saturationTemperature)} of ` +
      `${refrigerant.designation} at ${shownKilopascal(pressure)} absolute`,
  };
}

function warningsOf(
  reading: LineReading,
  quantity: LineResult["quantity"],
  value: number,
  U: number,
  saturationTemperature: Temperature,
): Warning<LineWarningCode>[] {
  const warnings: Warning<LineWarningCode>[] = [];
  if (value < -U) {
    warnings.push(
      quantity === "superheat"
        ? {
            code: "check-probe-or-liquid",
            message:
              "the pipe is colder than saturation: check the probe, the port and the refrigerant; liquid may reach " +
              "the compressor",
          }
        : {
            code: "check-probe-or-flash-gas",
            message: "the pipe is warmer than saturation: flash gas, or the wrong port, probe or refrigerant",
          },
    );
  } else if (value <= U) {
    warnings.push({
      code: "saturated-within-uncertainty",
      message:
        quantity === "superheat"
          ? "no superheat can be told from these instruments: liquid may reach the compressor"
          : "no subcooling can be told from these instruments: the line may carry flash gas",
    });
  }
  // A blend whose lines do not meet has no critical point, and no answer near where it would be.
  const critical = attempt(() => reading.refrigerant.critical.temperature);
  if (critical.ok && saturationTemperature > NEAR_CRITICAL * critical.value) {
    warnings.push({
      code: "near-critical",
      message: "close to the critical point, where saturation says little and its uncertainty grows",
    });
  }
  if (isLowOnScale(reading.gauge, reading.pressure)) {
    warnings.push({
      code: "low-on-scale",
      message: "the reading lies in the lowest quarter of the scale: use a gauge of smaller range",
    });
  }
  const { ambientTemperature } = reading;
  if (
    ambientTemperature !== undefined &&
    isClampPulled(reading.thermometer, reading.lineTemperature, ambientTemperature)
  ) {
    warnings.push({
      code: "clamp-pulled-by-air",
      message: "a bare clamp this far from the air temperature reads towards it: insulate the probe",
    });
  }
  return warnings;
}
