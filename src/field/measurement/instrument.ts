import data from "../../../data/field/instruments.json" with { type: "json" };
import {
  type GaugePressure,
  InputCheck,
  type Pressure,
  type PressureDifference,
  type Temperature,
  type TemperatureDifference,
} from "../../units/index.js";
import { checkGauge, checkReading, checkThermometer } from "./instrument-checks.js";
import { shown } from "./shown.js";

/** How the maker or a certificate states the error of a pressure instrument. */
export type PressureAccuracy =
  | {
      /** Accuracy class of EN 837-1, as printed on the dial: per cent of span, anywhere on the scale. */
      readonly kind: "accuracy-class";
      /** Class, 0.1 to 4. */
      readonly accuracyClass: number;
      /** Lower end of the scale, Pa gauge: −0.1 MPa for a compound gauge. */
      readonly scaleMinimum: GaugePressure;
      /** Upper end of the scale, Pa gauge. */
      readonly scaleMaximum: GaugePressure;
      /** Temperature of the case, K: adds the error of EN 837-1 away from 20 °C. Left out: taken to be 20 °C. */
      readonly caseTemperature?: Temperature;
    }
  | {
      /** Per cent of full scale, as printed for digital manifolds. */
      readonly kind: "percent-of-full-scale";
      /** Per cent, above 0. */
      readonly percent: number;
      /** Full scale, Pa, above 0. */
      readonly fullScale: GaugePressure;
    }
  | {
      /** Per cent of what is read, as printed for vacuum gauges. */
      readonly kind: "percent-of-reading";
      /** Per cent, above 0. */
      readonly percent: number;
      /** Fixed part to add to it, Pa. */
      readonly plus?: PressureDifference;
    }
  | {
      /** Plus or minus a fixed value. */
      readonly kind: "half-width";
      /** Half-width of the interval, Pa, above 0. */
      readonly halfWidth: PressureDifference;
    }
  | {
      /** Standard uncertainty (k = 1) from a certificate. */
      readonly kind: "standard-uncertainty";
      /** Pa, 0 or above. */
      readonly standardUncertainty: PressureDifference;
    };

/** A pressure gauge, manifold or vacuum gauge. */
export interface PressureGauge {
  /** Its stated error. */
  readonly accuracy: PressureAccuracy;
  /** Smallest step that can be read, Pa: the last digit, or the part of a division one can tell apart. */
  readonly resolution?: PressureDifference;
}

/** How the error of a thermometer on a pipe is stated. */
export type ThermometerAccuracy =
  | {
      /** A common probe: 1 K for a bare clamp, 0.5 K when insulated or immersed; common practice, no source. */
      readonly kind: "pipe-probe";
      /** How it sits on the pipe. */
      readonly probe: "clamp" | "insulated-or-immersed";
    }
  | {
      /** Plus or minus a fixed value. */
      readonly kind: "half-width";
      /** Half-width of the interval, K, above 0. */
      readonly halfWidth: TemperatureDifference;
    }
  | {
      /** Standard uncertainty (k = 1) from a certificate. */
      readonly kind: "standard-uncertainty";
      /** K, 0 or above. */
      readonly standardUncertainty: TemperatureDifference;
    };

/** A thermometer. */
export interface Thermometer {
  /** Its stated error. */
  readonly accuracy: ThermometerAccuracy;
  /** Smallest step that can be read, K. */
  readonly resolution?: TemperatureDifference;
}

/** Standard uncertainty of one reading, in the unit of the reading, with its parts. */
export interface ReadingUncertainty {
  /** Standard uncertainty of the reading. */
  readonly standardUncertainty: number;
  /** What it consists of. */
  readonly parts: readonly {
    /** `accuracy`, `case-temperature` or `resolution`. */
    readonly name: "accuracy" | "case-temperature" | "resolution";
    /** Standard uncertainty of this part. */
    readonly standardUncertainty: number;
    /** How it was found. */
    readonly because: string;
  }[];
  /** The parts in one sentence. */
  readonly because: string;
}

/**
 * Standard uncertainty of a half-width: all values within ±a equally likely, u = a/√3.
 *
 * @throws {@link InputError} `malformed-input`, below 0 or not finite.
 * @source JCGM 100:2008 (GUM), 4.3.7
 */
export function halfWidthUncertainty(halfWidth: number): number {
  requireNotNegative("halfWidth", halfWidth);
  return halfWidth / Math.sqrt(3);
}

/**
 * Standard uncertainty from reading in steps: u = d/√12.
 *
 * @throws {@link InputError} `malformed-input`, below 0 or not finite.
 * @source JCGM 100:2008 (GUM), F.2.2.1
 */
export function resolutionUncertainty(resolution: number): number {
  requireNotNegative("resolution", resolution);
  return resolution / Math.sqrt(12);
}

/**
 * Standard uncertainty of a pressure reading.
 *
 * @param gauge - The instrument; nothing about it is taken for granted.
 * @param reading - What it shows, Pa.
 * @throws {@link InputError} `malformed-input`, also for a reading off the scale.
 * @source JCGM 100:2008 (GUM); EN 837-1:1996 for accuracy classes
 *
 * @example
 * ```ts
 * gaugeUncertainty(
 *   { accuracy: { kind: "accuracy-class", accuracyClass: 1.6, scaleMinimum: -0.1e6, scaleMaximum: 3.8e6 } },
 *   0.8e6,
 * ).standardUncertainty; // → 36027 Pa
 * ```
 */
export function gaugeUncertainty(
  gauge: PressureGauge,
  reading: GaugePressure | Pressure,
): ReadingUncertainty {
  const check = new InputCheck();
  checkGauge(check, "gauge", gauge);
  check.finish();
  checkReading(check, "reading", reading, gauge);
  check.finish();
  const { accuracy, resolution } = gauge;
  return gather([
    ...pressureParts(accuracy, reading),
    ...(resolution === undefined ? [] : [resolutionPart(resolution, "Pa")]),
  ]);
}

/**
 * Standard uncertainty of a temperature reading on a pipe.
 *
 * @param thermometer - The instrument; nothing about it is taken for granted.
 * @returns K.
 * @throws {@link InputError} `malformed-input`.
 * @source JCGM 100:2008 (GUM); pipe probes: common practice, no source
 */
export function thermometerUncertainty(thermometer: Thermometer): ReadingUncertainty {
  const check = new InputCheck();
  checkThermometer(check, "thermometer", thermometer);
  check.finish();
  const { accuracy, resolution } = thermometer;
  return gather([
    ...temperatureParts(accuracy),
    ...(resolution === undefined ? [] : [resolutionPart(resolution, "K")]),
  ]);
}

/**
 * Where a reading lies on the scale, 0 at its lower end and 1 at its upper; undefined where the instrument's
 * description knows no scale.
 */
export function scalePosition(gauge: PressureGauge, reading: GaugePressure): number | undefined {
  const { accuracy } = gauge;
  if (accuracy.kind === "accuracy-class") {
    return (reading - accuracy.scaleMinimum) / (accuracy.scaleMaximum - accuracy.scaleMinimum);
  }
  return accuracy.kind === "percent-of-full-scale" ? reading / accuracy.fullScale : undefined;
}

/** Upper end of the scale, Pa; undefined where the instrument's description knows none. */
export function fullScale(gauge: PressureGauge): GaugePressure | undefined {
  const { accuracy } = gauge;
  if (accuracy.kind === "accuracy-class") return accuracy.scaleMaximum;
  return accuracy.kind === "percent-of-full-scale" ? accuracy.fullScale : undefined;
}

/** True when a reading lies so low on the scale that the gauge says little. */
export function isLowOnScale(gauge: PressureGauge, reading: GaugePressure): boolean {
  const position = scalePosition(gauge, reading);
  return position !== undefined && position < data.lowerQuarter.fraction;
}

/** True when a bare clamp probe sits on a pipe far from the temperature of the air, which pulls it. */
export function isClampPulled(thermometer: Thermometer, pipe: Temperature, air: Temperature): boolean {
  const { accuracy } = thermometer;
  return (
    accuracy.kind === "pipe-probe" &&
    accuracy.probe === "clamp" &&
    Math.abs(pipe - air) > data.pipeProbe.clampFarFromAmbient
  );
}

type Part = ReadingUncertainty["parts"][number];

function requireNotNegative(path: string, value: number): void {
  const check = new InputCheck();
  check.notNegative(path, value);
  check.finish();
}

function pressureParts(accuracy: PressureAccuracy, reading: number): Part[] {
  switch (accuracy.kind) {
    case "accuracy-class": {
      const span = accuracy.scaleMaximum - accuracy.scaleMinimum;
      const halfWidth = (accuracy.accuracyClass / 100) * span;
      const part = accuracyPart(
        halfWidthUncertainty(halfWidth),
        `class ${accuracy.accuracyClass} of EN 837-1 on a span of ${shown(span)} Pa: ± ${shown(halfWidth)} Pa`,
      );
      if (accuracy.caseTemperature === undefined) return [part];
      const { reference, percentOfSpanPerKelvin } = data.caseTemperature;
      const away = Math.abs(accuracy.caseTemperature - reference);
      const shift = (percentOfSpanPerKelvin / 100) * span * away;
      return [
        part,
        {
          name: "case-temperature",
          standardUncertainty: halfWidthUncertainty(shift),
          because: `case ${shown(away)} K away from 20 °C: ± ${shown(shift)} Pa`,
        },
      ];
    }
    case "percent-of-full-scale": {
      const halfWidth = (accuracy.percent / 100) * accuracy.fullScale;
      return [
        accuracyPart(
          halfWidthUncertainty(halfWidth),
          `${accuracy.percent} % of full scale, ${shown(accuracy.fullScale)} Pa: ± ${shown(halfWidth)} Pa`,
        ),
      ];
    }
    case "percent-of-reading": {
      const halfWidth = (accuracy.percent / 100) * Math.abs(reading) + (accuracy.plus ?? 0);
      const plus = accuracy.plus === undefined ? "" : ` plus ${shown(accuracy.plus)} Pa`;
      return [
        accuracyPart(
          halfWidthUncertainty(halfWidth),
          `${accuracy.percent} % of the reading${plus}: ± ${shown(halfWidth)} Pa`,
        ),
      ];
    }
    case "half-width":
      return [
        accuracyPart(
          halfWidthUncertainty(accuracy.halfWidth),
          `stated error ± ${shown(accuracy.halfWidth)} Pa`,
        ),
      ];
    case "standard-uncertainty":
      return [
        accuracyPart(
          accuracy.standardUncertainty,
          `certificate: u = ${shown(accuracy.standardUncertainty)} Pa`,
        ),
      ];
  }
}

function temperatureParts(accuracy: ThermometerAccuracy): Part[] {
  switch (accuracy.kind) {
    case "pipe-probe": {
      const { halfWidth } = data.pipeProbe[accuracy.probe];
      return [
        accuracyPart(
          halfWidthUncertainty(halfWidth),
          `${accuracy.probe} pipe probe: ± ${halfWidth} K (common practice)`,
        ),
      ];
    }
    case "half-width":
      return [
        accuracyPart(
          halfWidthUncertainty(accuracy.halfWidth),
          `stated error ± ${shown(accuracy.halfWidth)} K`,
        ),
      ];
    case "standard-uncertainty":
      return [
        accuracyPart(
          accuracy.standardUncertainty,
          `certificate: u = ${shown(accuracy.standardUncertainty)} K`,
        ),
      ];
  }
}

function accuracyPart(standardUncertainty: number, because: string): Part {
  return { name: "accuracy", standardUncertainty, because };
}

function resolutionPart(resolution: number, unit: string): Part {
  return {
    name: "resolution",
    standardUncertainty: resolutionUncertainty(resolution),
    because: `read in steps of ${shown(resolution)} ${unit}`,
  };
}

function gather(parts: readonly Part[]): ReadingUncertainty {
  return {
    standardUncertainty: Math.hypot(...parts.map((part) => part.standardUncertainty)),
    parts,
    because: parts.map((part) => part.because).join("; "),
  };
}
