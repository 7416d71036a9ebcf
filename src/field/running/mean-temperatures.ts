import type { Warning } from "../../safety/index.js";
import { evaporatorMean, glide, type Refrigerant } from "../../state/index.js";
import {
  attempt,
  InputCheck,
  type Outcome,
  type Pressure,
  requireObject,
  type SpecificEnergy,
  type Temperature,
  type TemperatureDifference,
} from "../../units/index.js";
import { shownCelsius, shownKilopascal } from "../measurement/shown.js";
import { checkRefrigerant } from "../refrigerant-check.js";

/** Which temperature of the glide stands for a coil. Of a pure refrigerant all are the same. */
export type CoilConvention =
  /** Dew point, as EN 12900 and AHRI 540 rate compressors, on both sides. */
  | "dew"
  /** (bubble + dew)/2, the simple form. For an evaporator it is too low, because the inlet is part vapour already. */
  | "midpoint-of-bubble-and-dew"
  /** Evaporator: (inlet + dew)/2, where the inlet is the wet mixture behind the expansion device. */
  | "midpoint-from-inlet"
  /** Heat over entropy: of an evaporator from its inlet to the dew point, of a condenser from dew to bubble point. */
  | "mean-of-heat";

/** An evaporator: its pressure, and which temperature is asked for; there is no default. */
export type EvaporatorQuestion = {
  /** Refrigerant in it. */
  readonly refrigerant: Refrigerant;
  /** Absolute pressure in the coil, Pa; the pressure at a port is lower by the loss of the line. */
  readonly pressure: Pressure;
} & (
  | {
      /** Conventions that ask nothing of the inlet. */
      readonly convention: "dew" | "midpoint-of-bubble-and-dew";
    }
  | {
      /** Conventions that count from the inlet. */
      readonly convention: "midpoint-from-inlet" | "mean-of-heat";
      /** Enthalpy at the inlet, J/kg: that of the liquid before the expansion device. */
      readonly inletEnthalpy: SpecificEnergy;
    }
);

/** A condenser: its pressure, and which temperature is asked for; there is no default. */
export interface CondenserQuestion {
  /** Refrigerant in it. */
  readonly refrigerant: Refrigerant;
  /** Absolute pressure in the coil, Pa. */
  readonly pressure: Pressure;
  /** Which temperature stands for the coil. */
  readonly convention: "dew" | "midpoint-of-bubble-and-dew" | "mean-of-heat";
}

/** Codes of the warnings of a coil temperature. */
export type CoilWarningCode = "inlet-not-two-phase";

/** The temperature that stands for a coil, with the convention it was taken by. */
export interface CoilTemperature {
  /** Temperature, K. */
  readonly temperature: Temperature;
  /** Convention; two temperatures of different conventions are not to be compared. */
  readonly convention: CoilConvention;
  /** Absolute pressure, Pa. */
  readonly pressure: Pressure;
  /** Bubble point at that pressure, K. */
  readonly bubbleTemperature: Temperature;
  /** Dew point at that pressure, K. */
  readonly dewTemperature: Temperature;
  /** Dew less bubble temperature, K. */
  readonly glide: TemperatureDifference;
  /** Temperature at the inlet, K, where the convention counts from it. */
  readonly inletTemperature: Temperature | undefined;
  /** What is odd. */
  readonly warnings: readonly Warning<CoilWarningCode>[];
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Evaporating temperature at a pressure, by a named convention.
 *
 * @param question - Refrigerant, absolute pressure in the coil (Pa), convention, and where it is needed the enthalpy at
 * the inlet (J/kg).
 * @returns K, with both ends of the glide.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for an inlet that is vapour already.
 * @throws {@link OutOfRangeError} `out-of-range` where the refrigerant has no such point.
 * @source dew: EN 12900 and AHRI 540 (recalled); mid-points: common practice, no source; mean: T ds = dh
 *
 * @example
 * ```ts
 * const r407c = refrigerant("R-407C");
 * const inletEnthalpy = r407c.bubble({ temperature: celsius(40) }).liquid.enthalpy;
 * const pressure = kilopascal(500);
 * evaporatingTemperature({ refrigerant: r407c, pressure, convention: "dew" }).temperature; // → 275.51 K
 * evaporatingTemperature({ refrigerant: r407c, pressure, convention: "midpoint-from-inlet", inletEnthalpy }).temperature; // → 273.30 K
 * ```
 */
export function evaporatingTemperature(question: EvaporatorQuestion): CoilTemperature {
  const check = openCheck(question, [
    "dew",
    "midpoint-of-bubble-and-dew",
    "midpoint-from-inlet",
    "mean-of-heat",
  ]);
  const { refrigerant, pressure, convention } = question;
  const { inletEnthalpy } = question as { readonly inletEnthalpy?: number };
  const needsInlet = convention === "midpoint-from-inlet" || convention === "mean-of-heat";
  if (needsInlet) check.finite("inletEnthalpy", inletEnthalpy);
  check.finish();
  if (!needsInlet || inletEnthalpy === undefined) return answer(question, undefined, []);
  const { bubble, dew } = glide(refrigerant, { pressure });
  check.require(
    inletEnthalpy < dew.vapour.enthalpy,
    "inletEnthalpy",
    inletEnthalpy,
    `below that of saturated vapour, ${dew.vapour.enthalpy} J/kg`,
  );
  check.finish();
  const inlet = refrigerant.state({ pressure, enthalpy: inletEnthalpy }).temperature;
  const mean =
    convention === "mean-of-heat"
      ? evaporatorMean(refrigerant, { pressure, enthalpy: inletEnthalpy })
      : (inlet + dew.temperature) / 2;
  const warnings: Warning<CoilWarningCode>[] = [];
  if (inletEnthalpy < bubble.liquid.enthalpy) {
    warnings.push({
      code: "inlet-not-two-phase",
      message: "the inlet would be liquid below its bubble point: is the enthalpy that of the liquid line?",
    });
  }
  return answer(question, { inlet, mean }, warnings);
}

/** As {@link evaporatingTemperature}, without throwing. */
export function tryEvaporatingTemperature(question: EvaporatorQuestion): Outcome<CoilTemperature> {
  return attempt(() => evaporatingTemperature(question));
}

/**
 * Condensing temperature at a pressure, by a named convention.
 *
 * @param question - Refrigerant, absolute pressure in the coil (Pa) and convention.
 * @returns K, with both ends of the glide.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws {@link OutOfRangeError} `out-of-range` where the refrigerant has no such point.
 * @source dew: EN 12900 and AHRI 540 (recalled); mid-point: common practice, no source; mean: T ds = dh
 */
export function condensingTemperature(question: CondenserQuestion): CoilTemperature {
  const check = openCheck(question, ["dew", "midpoint-of-bubble-and-dew", "mean-of-heat"]);
  check.finish();
  return answer(question, undefined, []);
}

/** As {@link condensingTemperature}, without throwing. */
export function tryCondensingTemperature(question: CondenserQuestion): Outcome<CoilTemperature> {
  return attempt(() => condensingTemperature(question));
}

type AnyQuestion = Pick<CondenserQuestion, "refrigerant" | "pressure"> & {
  readonly convention: CoilConvention;
};

function openCheck(question: AnyQuestion, conventions: readonly CoilConvention[]): InputCheck {
  requireObject("", question, "a refrigerant, a pressure and a convention");
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", question.refrigerant);
  check.positive("pressure", question.pressure);
  check.oneOf("convention", question.convention, conventions);
  return check;
}

function answer(
  { refrigerant, pressure, convention }: AnyQuestion,
  fromInlet: { readonly inlet: Temperature; readonly mean: Temperature } | undefined,
  warnings: readonly Warning<CoilWarningCode>[],
): CoilTemperature {
  const ends = glide(refrigerant, { pressure });
  const whole = { dew: ends.dew.temperature, "midpoint-of-bubble-and-dew": ends.midpoint };
  const temperature =
    fromInlet?.mean ?? (convention in whole ? whole[convention as keyof typeof whole] : ends.mean);
  return {
    temperature,
    convention,
    pressure,
    bubbleTemperature: ends.bubble.temperature,
    dewTemperature: ends.dew.temperature,
    glide: ends.glide,
    inletTemperature: fromInlet?.inlet,
    warnings,
    because:
      `${shownCelsius(temperature)} by the convention ${convention}: ${refrigerant.designation} at ` +
      `${shownKilopascal(pressure)} absolute, bubble point ${shownCelsius(ends.bubble.temperature)}, dew point ` +
      shownCelsius(ends.dew.temperature),
  };
}
