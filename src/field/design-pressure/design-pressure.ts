import data from "../../../data/field/design-temperatures.json" with { type: "json" };
import { InputCheck } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type GaugePressure,
  InputError,
  type Outcome,
  requireObject,
  type Temperature,
} from "../../units/index.js";
import { shownCelsius, shownKilopascal } from "../measurement/shown.js";

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

/** The pressure that a side has to bear. */
export interface DesignPressure {
  /** Least PS, Pa gauge, above the standard atmosphere. */
  readonly pressure: GaugePressure;
  /** Design temperature behind it, K. */
  readonly temperature: Temperature;
  /** Where the temperature is from. */
  readonly source: string;
  /** The numbers it rests on. */
  readonly because: string;
}

/** What a marked PS is good for. */
export interface MarkedPressure {
  /** Temperature at which the refrigerant has that pressure, K, of a blend its bubble point. */
  readonly temperature: Temperature;
  /** Highest outdoor temperature that it is enough for, K, by side; undefined where it is enough for none. */
  readonly enoughFor: Readonly<Record<CircuitSide, Temperature | undefined>>;
}

/**
 * Least PS of a side of the circuit for a climate: the pressure of the refrigerant, of a blend at its bubble point, at the
 * printed design temperature.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a climate hotter than the table.
 * @throws `out-of-range` for a refrigerant that is above its critical temperature there.
 * @source EN 378-2:2016 and ISO 5149-2:2014, minimum design temperatures (recalled)
 */
export function designPressure(climate: DesignClimate): DesignPressure {
  requireObject("", climate, "a refrigerant, a side and the highest outdoor temperature");
  const { refrigerant, side, highestAmbient } = climate;
  const check = checkRefrigerant(refrigerant);
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
  return {
    pressure: gauge,
    temperature,
    source: data.source,
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
 * @param maximumAllowablePressure - PS as marked, Pa gauge, above 0.
 * @throws {@link InputError} `malformed-input`, all problems at once; `out-of-range` for a pressure above the critical one.
 * @source EN 378-2:2016 and ISO 5149-2:2014, minimum design temperatures (recalled)
 */
export function markedPressure(
  refrigerant: Refrigerant,
  maximumAllowablePressure: GaugePressure,
): MarkedPressure {
  const check = checkRefrigerant(refrigerant);
  check.positive("maximumAllowablePressure", maximumAllowablePressure);
  check.finish();
  const { temperature } = refrigerant.bubble({
    pressure: maximumAllowablePressure + data.referenceAir.value,
  });
  const enough = (side: CircuitSide): Temperature | undefined => {
    const designed = temperaturesOf(side);
    return data.ambients.filter((_, index) => designed[index]! <= temperature).at(-1);
  };
  return {
    temperature,
    enoughFor: {
      "high-air-cooled": enough("high-air-cooled"),
      "low-outdoors": enough("low-outdoors"),
      "low-indoors": enough("low-indoors"),
    },
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

function checkRefrigerant(refrigerant: unknown): InputCheck {
  const check = new InputCheck();
  const isOne = typeof refrigerant === "object" && refrigerant !== null;
  check.require(isOne, "refrigerant", refrigerant, "a refrigerant");
  return check;
}
