import type { Warning } from "../../safety/index.js";
import {
  attempt,
  type GaugePressure,
  InputCheck,
  InputError,
  type LocalAtmosphere,
  type Outcome,
  type Pressure,
  type PressureDifference,
} from "../../units/index.js";
import { checkShownPressure, signedReading } from "./absolute-pressure-check.js";
import { gaugeUncertainty, halfWidthUncertainty, isLowOnScale, type PressureGauge } from "./instrument.js";
import { shownKilopascal, shownKilopascalWithUncertainty } from "./shown.js";
import { checkAtmosphere } from "./site.js";
import { combineUncertainties, type UncertainInput, type Uncertainty } from "./uncertainty.js";

/** What the zero of a relative gauge stands for. */
export type GaugeReference =
  | {
      /** A needle in a vented case, or a digital manifold zeroed in open air: the air of the place and the hour. */
      readonly to: "open-air";
      /** Air pressure of the site. */
      readonly atmosphere: LocalAtmosphere;
    }
  | {
      /** A sealed case: the pressure that was sealed in, wherever it is now. */
      readonly to: "sealed";
      /** Pressure in the case, Pa absolute. */
      readonly sealingPressure: Pressure;
      /** Limit of error of that pressure, Pa, 0 or above: also for a case that is warmer or colder than when sealed. */
      readonly halfWidth: PressureDifference;
    };

/** What an instrument shows, and what kind of number that is; there is no default for either. */
export type ShownPressure =
  | {
      /** Above the reference, or below it as a negative number. */
      readonly kind: "gauge";
      /** Pa gauge. */
      readonly reading: GaugePressure;
      /** The gauge. */
      readonly gauge: PressureGauge;
      /** Its zero. */
      readonly reference: GaugeReference;
    }
  | {
      /** How far below the reference, as a positive number: the vacuum part of a compound dial, cmHg or inHg. */
      readonly kind: "vacuum";
      /** Pa, 0 or above. */
      readonly reading: PressureDifference;
      /** The gauge. */
      readonly gauge: PressureGauge;
      /** Its zero. */
      readonly reference: GaugeReference;
    }
  | {
      /** An absolute sensor: it needs no site. */
      readonly kind: "absolute";
      /** Pa absolute, 0 or above. */
      readonly reading: Pressure;
      /** The sensor; a full scale is counted from nothing. */
      readonly gauge: PressureGauge;
    };

/** What the absolute pressure is. */
export type AbsolutePressureState =
  /** A value. */
  | "found"
  /** No more than a bound: the reading is at or beyond a full vacuum by no more than its uncertainty. */
  | "bound";

/** Codes of the warnings of an absolute pressure. */
export type AbsolutePressureWarningCode = "full-vacuum" | "smaller-than-uncertainty" | "low-on-scale";

/** An absolute pressure with its uncertainty. */
export interface AbsolutePressureResult extends Uncertainty {
  /** A value, or a bound alone. */
  readonly state: AbsolutePressureState;
  /**
   * Absolute pressure, Pa, always above 0. In the state `bound` it is the upper bound, the expanded uncertainty: the
   * pressure lies somewhere from 0 to that, and no other number can be read from such a gauge.
   */
  readonly pressure: Pressure;
  /** Lower end of the interval of its expanded uncertainty, Pa; 0 where that would be below nothing. */
  readonly lowest: Pressure;
  /** Upper end of that interval, Pa. */
  readonly highest: Pressure;
  /** Deepest vacuum that this gauge could show there, Pa; undefined for an absolute sensor. */
  readonly deepestVacuum: PressureDifference | undefined;
  /** What is odd. */
  readonly warnings: readonly Warning<AbsolutePressureWarningCode>[];
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Absolute pressure behind a reading, with the uncertainty of the gauge and of its zero: p = p_gauge + p_reference, or
 * p = p_reference − v for a vacuum v given as a positive number.
 *
 * A vacuum deeper than the reference cannot be. Beyond it by more than the uncertainty it is refused, as a scale for sea
 * level shows it on a mountain, or a zero that was not set. Beyond it by less, the reading says only that the pressure
 * lies from 0 to U: `state` is then `bound`, and `pressure` is that bound.
 *
 * @param shown - Kind of reading, reading (Pa), gauge, and what its zero stands for.
 * @returns Pa absolute with expanded uncertainty (k = 2), budget and warnings.
 * @throws {@link InputError} `malformed-input`, all problems at once; for a vacuum that cannot be, the problem has the
 * reason `vacuum-deeper-than-atmosphere`.
 * @source definition; JCGM 100:2008 (GUM) for the uncertainty
 *
 * @example
 * ```ts
 * const result = absolutePressure({
 *   kind: "vacuum",
 *   reading: centimetreOfMercuryDifference(59),
 *   gauge: { accuracy: { kind: "accuracy-class", accuracyClass: 1.6, scaleMinimum: -0.1e6, scaleMaximum: 1.5e6 } },
 *   reference: { to: "open-air", atmosphere: localAtmosphere({ from: "altitude", altitude: 2000 }) },
 * });
 * result.pressure; // → 841.2 Pa
 * result.highest; // → 30604 Pa
 * ```
 */
export function absolutePressure(shown: ShownPressure): AbsolutePressureResult {
  checkShownPressure(shown);
  const onScale = signedReading(shown);
  const zero = zeroOf(shown);
  const ofGauge = gaugeUncertainty(shown.gauge, onScale);
  const uncertainty = combineUncertainties([
    {
      input: "gauge",
      standardUncertainty: ofGauge.standardUncertainty,
      unit: "Pa",
      sensitivity: 1,
      because: ofGauge.because,
    },
    ...(zero === undefined ? [] : [zero.input]),
  ]);
  const U = uncertainty.expandedUncertainty;
  const pressure = onScale + (zero?.pressure ?? 0);
  // At exactly nothing, sure to the last digit, there is no bound either.
  if (pressure < -U || (pressure <= 0 && U === 0)) refuse(shown, zero?.pressure, U);
  const isBound = pressure <= 0;
  const above = zero === undefined ? "" : `, zero at ${zero.words}`;
  const result = isBound
    ? `at most ${shownKilopascal(U)} absolute (k = 2): a full vacuum within its uncertainty`
    : `${shownKilopascalWithUncertainty(pressure, U)} absolute (k = 2)`;
  return {
    ...uncertainty,
    state: isBound ? "bound" : "found",
    pressure: isBound ? U : pressure,
    lowest: Math.max(0, pressure - U),
    highest: isBound ? U : pressure + U,
    deepestVacuum: zero === undefined ? undefined : 0 + zero.pressure,
    warnings: warningsOf(shown, onScale, isBound, pressure < U),
    because: `${result}: ${kindWords[shown.kind]} ${shownKilopascal(shown.reading)} read${above}`,
  };
}

/** As {@link absolutePressure}, without throwing. */
export function tryAbsolutePressure(shown: ShownPressure): Outcome<AbsolutePressureResult> {
  return attempt(() => absolutePressure(shown));
}

/**
 * Deepest vacuum that a gauge relative to the air can show at a site: all the air pressure there is. A dial that goes to
 * 76 cmHg never gets there on a mountain.
 *
 * @returns How far below the atmosphere, Pa.
 * @throws {@link InputError} `malformed-input`.
 *
 * @example
 * ```ts
 * inCentimetreOfMercuryDifference(deepestVacuum(localAtmosphere({ from: "altitude", altitude: 2000 }))); // → 59.63 cmHg
 * ```
 */
export function deepestVacuum(atmosphere: LocalAtmosphere): PressureDifference {
  const check = new InputCheck();
  checkAtmosphere(check, "atmosphere", atmosphere);
  check.finish();
  // The same number, but a depth, no pressure.
  const depth: number = atmosphere.pressure;
  return depth;
}

/** As {@link deepestVacuum}, without throwing. */
export function tryDeepestVacuum(atmosphere: LocalAtmosphere): Outcome<PressureDifference> {
  return attempt(() => deepestVacuum(atmosphere));
}

const kindWords = { gauge: "gauge pressure", vacuum: "vacuum", absolute: "absolute pressure" } as const;

interface Zero {
  readonly pressure: Pressure;
  readonly words: string;
  readonly input: UncertainInput;
}

function zeroOf(shown: ShownPressure): Zero | undefined {
  if (shown.kind === "absolute") return undefined;
  const { reference } = shown;
  const part = { unit: "Pa", sensitivity: 1 };
  if (reference.to === "open-air") {
    const { pressure, standardUncertainty, because } = reference.atmosphere;
    return {
      pressure,
      words: because,
      input: { ...part, input: "atmosphere", standardUncertainty, because },
    };
  }
  const { sealingPressure, halfWidth } = reference;
  const because = `sealed in at ${shownKilopascal(sealingPressure)}, ± ${shownKilopascal(halfWidth)}`;
  return {
    pressure: sealingPressure,
    words: because,
    input: { ...part, input: "sealing", standardUncertainty: halfWidthUncertainty(halfWidth), because },
  };
}

/** Throws for a pressure below nothing. */
function refuse(shown: ShownPressure, zero: Pressure | undefined, U: number): never {
  const problem = { path: "reading", value: shown.reading };
  if (zero === undefined) throw new InputError([{ ...problem, expected: "an absolute pressure above 0" }]);
  const deepest = shown.kind === "vacuum" ? `0 to ${zero} Pa` : `above ${-zero} Pa`;
  throw new InputError([
    {
      ...problem,
      expected:
        `${deepest}, give or take ${shownKilopascal(U)}: no vacuum is deeper than what the zero of the gauge stands ` +
        "for (is the scale made for sea level, was its zero set?)",
      reason: "vacuum-deeper-than-atmosphere",
    },
  ]);
}

function warningsOf(
  shown: ShownPressure,
  onScale: GaugePressure,
  isBound: boolean,
  isSmall: boolean,
): Warning<AbsolutePressureWarningCode>[] {
  const warnings: Warning<AbsolutePressureWarningCode>[] = [];
  if (isBound) {
    warnings.push({
      code: "full-vacuum",
      message:
        "the gauge shows all the vacuum there is, or a little more: the pressure is a bound, not a value",
    });
  } else if (isSmall) {
    warnings.push({
      code: "smaller-than-uncertainty",
      message: "the pressure is smaller than its uncertainty: use an absolute vacuum gauge",
    });
  }
  if (isLowOnScale(shown.gauge, onScale)) {
    warnings.push({
      code: "low-on-scale",
      message: "the reading lies in the lowest quarter of the scale: use a gauge of smaller range",
    });
  }
  return warnings;
}
