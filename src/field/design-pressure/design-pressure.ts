import data from "../../../data/field/design-temperatures.json" with { type: "json" };
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type GaugePressure,
  InputCheck,
  InputError,
  type Outcome,
  requireObject,
  type Temperature,
} from "../../units/index.js";
import { mixtureModelInput } from "../measurement/mixture-model.js";
import { shownCelsius, shownKilopascal } from "../measurement/shown.js";
import { combineUncertainties, type Uncertainty } from "../measurement/uncertainty.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { saturationSlope } from "../running/saturation-slope.js";

/** A PS that is just enough comes back through the curve within this, relative: far below what a mark shows. */
const ROUNDING = 1e-9;

/** Where the marks count from, for the assumptions of a result. */
const referenceAirWords =
  "Gauge pressure counts from 101.325 kPa; on a mountain a gauge shows up to 20 kPa more at the same absolute pressure.";

/** Sides of a circuit that design temperatures are printed for. */
export const CIRCUIT_SIDES = ["high-air-cooled", "low-outdoors", "low-indoors"] as const;

/** Side of a circuit: condenser cooled by air, or the low side with its exchanger outdoors or indoors. */
export type CircuitSide = (typeof CIRCUIT_SIDES)[number];

/** Where a system is to stand. */
export interface DesignClimate {
  /** Refrigerant. */
  readonly refrigerant: Refrigerant;
  /** Side of the circuit. */
  readonly side: CircuitSide;
  /** Highest outdoor temperature, K. */
  readonly highestAmbient: Temperature;
}

/** The pressure that a side has to bear. Its uncertainty, Pa, is that of the mixture model of a blend. */
export interface DesignPressure extends Uncertainty {
  /** Least PS, Pa gauge, above the standard atmosphere. */
  readonly pressure: GaugePressure;
  /** Design temperature behind it, K. */
  readonly temperature: Temperature;
  /** Where the temperature is from. */
  readonly source: string;
  /** `recalled`: from memory of the standards, so look it up. */
  readonly status: "read" | "recalled";
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers it rests on. */
  readonly because: string;
}

/** What a marked PS is good for. Its uncertainty, K, is that of the temperature, from the mixture model of a blend. */
export interface MarkedPressure extends Uncertainty {
  /** Temperature at which the refrigerant has that pressure, K, of a blend its bubble point. */
  readonly temperature: Temperature;
  /** Highest outdoor temperature that it is enough for, K, by side; undefined where it is enough for none. */
  readonly enoughFor: Readonly<Record<CircuitSide, Temperature | undefined>>;
  /** Where the design temperatures are from. */
  readonly source: string;
  /** `recalled`: from memory of the standards, so look them up. */
  readonly status: "read" | "recalled";
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers it rests on. */
  readonly because: string;
}

/**
 * Least PS of a side of the circuit for a climate: the pressure of the refrigerant, of a blend at its bubble point, at the
 * printed design temperature.
 *
 * @param climate - Refrigerant, side of the circuit and the highest outdoor temperature (K), which is taken up to the next
 * column of the table: 32, 38, 43 or 55 °C.
 * @returns PS in Pa gauge; of a blend with the expanded uncertainty (k = 2) of its mixture model.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a climate hotter than the table.
 * @throws `out-of-range` for a refrigerant that is above its critical temperature there.
 * @source EN 378-2:2016 and ISO 5149-2:2014, minimum design temperatures (recalled)
 *
 * @example
 * ```ts
 * const { pressure } = designPressure({
 *   refrigerant: refrigerant("R-32"),
 *   side: "high-air-cooled",
 *   highestAmbient: celsius(43),
 * });
 * inBarGauge(pressure); // → 40.978 bar
 * ```
 */
export function designPressure(climate: DesignClimate): DesignPressure {
  requireObject("", climate, "a refrigerant, a side and the highest outdoor temperature");
  const { refrigerant, side, highestAmbient } = climate;
  const check = inputOf(refrigerant);
  check.oneOf("side", side, CIRCUIT_SIDES);
  check.positive("highestAmbient", highestAmbient);
  check.finish();
  const column = data.ambients.findIndex((ambient) => highestAmbient <= ambient);
  if (column < 0) {
    const hottest = data.ambients[data.ambients.length - 1]!;
    throw new InputError([
      {
        path: "highestAmbient",
        value: highestAmbient,
        expected: `at most ${hottest} K, the hottest climate of the table`,
      },
    ]);
  }
  const temperature = temperaturesOf(side)[column]!;
  const { pressure } = refrigerant.bubble({ temperature });
  const gauge = pressure - data.referenceAir.value;
  const { mixing } = refrigerant;
  return {
    ...combineUncertainties(
      mixing === undefined ? [] : [mixtureModelInput(refrigerant, mixing, pressure, 1)],
    ),
    pressure: gauge,
    temperature,
    source: data.source,
    // JSON knows no literal types.
    status: data.status as "recalled",
    assumptions: [
      referenceAirWords,
      "It is the least that the design temperature asks for; safety devices and tests ask for more above the working pressure.",
    ],
    because:
      `${refrigerant.designation} at ${shownCelsius(temperature)}, for ${side} up to ${shownCelsius(data.ambients[column]!)} ` +
      `outdoors: ${shownKilopascal(gauge)} gauge`,
  };
}

/** As {@link designPressure}, without throwing. */
export function tryDesignPressure(climate: DesignClimate): Outcome<DesignPressure> {
  return attempt(() => designPressure(climate));
}

/**
 * What a marked PS is good for with a refrigerant.
 *
 * @param refrigerant - In the part.
 * @param maximumAllowablePressure - PS as marked, Pa gauge, above 0.
 * @throws {@link InputError} `malformed-input`, all problems at once; `out-of-range` for a pressure above the critical one.
 * @source EN 378-2:2016 and ISO 5149-2:2014, minimum design temperatures (recalled)
 *
 * @example
 * ```ts
 * const { temperature, enoughFor } = markedPressure(refrigerant("R-32"), megapascalGauge(4.15));
 * inCelsius(temperature); // → 63.57 °C
 * inCelsius(enoughFor["high-air-cooled"]!); // → 43 °C
 * ```
 */
export function markedPressure(
  refrigerant: Refrigerant,
  maximumAllowablePressure: GaugePressure,
): MarkedPressure {
  const check = inputOf(refrigerant);
  check.positive("maximumAllowablePressure", maximumAllowablePressure);
  check.finish();
  const absolute = maximumAllowablePressure + data.referenceAir.value;
  const { temperature, slope } = saturationSlope(refrigerant, "bubble", absolute);
  const { mixing } = refrigerant;
  const enough = (side: CircuitSide): Temperature | undefined => {
    const designed = temperaturesOf(side);
    return data.ambients.filter((_, index) => designed[index]! <= temperature * (1 + ROUNDING)).at(-1);
  };
  const enoughFor = {
    "high-air-cooled": enough("high-air-cooled"),
    "low-outdoors": enough("low-outdoors"),
    "low-indoors": enough("low-indoors"),
  };
  const words = CIRCUIT_SIDES.map((side) => {
    const ambient = enoughFor[side];
    return `${side} ${ambient === undefined ? "in no climate" : `up to ${shownCelsius(ambient)} outdoors`}`;
  });
  return {
    ...combineUncertainties(
      mixing === undefined ? [] : [mixtureModelInput(refrigerant, mixing, absolute, slope)],
    ),
    temperature,
    enoughFor,
    source: data.source,
    status: data.status as "recalled",
    assumptions: [referenceAirWords],
    because:
      `${refrigerant.designation} boils at ${shownCelsius(temperature)} at PS ` +
      `${shownKilopascal(maximumAllowablePressure)} gauge: enough for ${words.join(", ")}`,
  };
}

/** As {@link markedPressure}, without throwing. */
export function tryMarkedPressure(
  refrigerant: Refrigerant,
  maximumAllowablePressure: GaugePressure,
): Outcome<MarkedPressure> {
  return attempt(() => markedPressure(refrigerant, maximumAllowablePressure));
}

function temperaturesOf(side: CircuitSide): readonly Temperature[] {
  return data.sides.find((each) => each.side === side)!.temperatures;
}

function inputOf(refrigerant: unknown): InputCheck {
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", refrigerant);
  return check;
}
