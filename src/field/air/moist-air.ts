import {
  attempt,
  type Density,
  InputCheck,
  type Outcome,
  type Pressure,
  requireObject,
  type SpecificEnergy,
  type Temperature,
} from "../../units/index.js";
import { waterBoilingTemperature, waterVapourPressure } from "../evacuation/water-vapour.js";
import { shown, shownCelsius } from "../measurement/shown.js";
import { checkHumidity, checkStationPressure, DRY_WICK, requireDryBulb } from "./air-checks.js";
import {
  humidityRatioFromVapour,
  humidityRatioFromWetBulb,
  isIceBulb,
  moistEnthalpy,
  moistVolume,
  vapourFromHumidityRatio,
  wetBulbOf,
} from "./psychrometrics.js";

/** What says how much water air holds: one of these. */
export type AirHumidity =
  | {
      /** Thermometer with a wet wick in moving air, K. Below 0 °C the wick is taken to carry ice. */
      readonly wetBulb: Temperature;
      readonly relativeHumidity?: never;
      readonly humidityRatio?: never;
    }
  | {
      /** Vapour pressure over that of saturated air at the dry bulb, 0 to 1; over ice below 0 °C. */
      readonly relativeHumidity: number;
      readonly wetBulb?: never;
      readonly humidityRatio?: never;
    }
  | {
      /** Water for each kg of dry air, kg/kg. */
      readonly humidityRatio: number;
      readonly wetBulb?: never;
      readonly relativeHumidity?: never;
    };

/** Air at one place. */
export type MoistAirInput = AirHumidity & {
  /** Temperature of the air, K. */
  readonly dryBulb: Temperature;
  /** Air pressure of the site, Pa absolute: station pressure, not reduced to sea level. There is no default. */
  readonly pressure: Pressure;
};

/** A state of moist air. What is per kg is per kg of dry air, which stays the same when water leaves. */
export interface MoistAir {
  /** Temperature, K. */
  readonly dryBulb: Temperature;
  /** Wet-bulb temperature, K; over ice below 0 °C. */
  readonly wetBulb: Temperature;
  /** Dew point, K, frost point below 0 °C; undefined for dry air. */
  readonly dewPoint: Temperature | undefined;
  /** Station pressure, Pa absolute. */
  readonly pressure: Pressure;
  /** Partial pressure of water vapour, Pa. */
  readonly vapourPressure: Pressure;
  /** Water for each kg of dry air, kg/kg. */
  readonly humidityRatio: number;
  /** Vapour pressure over that of saturated air, 0 to 1. */
  readonly relativeHumidity: number;
  /** Enthalpy, J for each kg of dry air; 0 for dry air and for liquid water, both at 0 °C. */
  readonly enthalpy: SpecificEnergy;
  /** Volume, m3 for each kg of dry air. */
  readonly specificVolume: number;
  /** Mass of air and water over volume, kg/m3. */
  readonly density: Density;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * State of moist air from the dry bulb and one of wet bulb, relative humidity or humidity ratio.
 *
 * Air and vapour count as ideal gases. Saturated air holds 0.4 % more water than that at sea level, because the two are
 * not quite ideal: tables that count it differ by that much from this.
 *
 * @param air - K, Pa absolute, and one measure of humidity.
 * @returns K, Pa, and per kg of dry air J and m3.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a wet bulb above the dry one or colder
 * than dry air could make it, and for more water than air can hold.
 * @throws {@link OutOfRangeError} `out-of-range` for a dry bulb outside −60 to 90 °C.
 * @source ASHRAE Handbook Fundamentals (2017), chapter 1, ideal-gas relations and both wet-bulb equations, over water
 * and over ice (recalled); vapour pressures: IAPWS R7-97(2012) and R14-08(2011)
 *
 * @example
 * ```ts
 * const air = moistAir({ dryBulb: celsius(27), wetBulb: celsius(19), pressure: 101325 });
 * air.relativeHumidity; // → 0.4694
 * air.enthalpy; // → 53829 J/kg
 * ```
 */
export function moistAir(air: MoistAirInput): MoistAir {
  examine(air);
  const { dryBulb, pressure } = air;
  requireDryBulb("dryBulb", dryBulb);
  const saturation = waterVapourPressure(dryBulb);
  const humidityRatio = humidityRatioOf(air, saturation);
  const vapourPressure = vapourFromHumidityRatio(humidityRatio, pressure);
  // Of saturated air it may come out a rounding above the dry bulb.
  const dewPoint =
    vapourPressure > DRIEST ? Math.min(dryBulb, waterBoilingTemperature(vapourPressure)) : undefined;
  const lowest = dewPoint ?? dryBulb - DRY_WICK;
  const wetBulb = air.wetBulb ?? wetBulbOf(dryBulb, humidityRatio, pressure, lowest);
  const specificVolume = moistVolume(dryBulb, humidityRatio, pressure);
  const relativeHumidity = air.relativeHumidity ?? vapourPressure / saturation;
  const enthalpy = moistEnthalpy(dryBulb, humidityRatio);
  return {
    dryBulb,
    wetBulb,
    dewPoint,
    pressure,
    vapourPressure,
    humidityRatio,
    relativeHumidity,
    enthalpy,
    specificVolume,
    density: (1 + humidityRatio) / specificVolume,
    assumptions: assumptionsOf(dryBulb, wetBulb),
    because:
      `${wordsOf(air)} at ${shownCelsius(dryBulb)} and ${shown(pressure)} Pa: ` +
      `${shown(humidityRatio * 1000)} g of water and ${shown(enthalpy / 1000)} kJ for each kg of dry air`,
  };
}

/** As {@link moistAir}, without throwing. */
export function tryMoistAir(air: MoistAirInput): Outcome<MoistAir> {
  return attempt(() => moistAir(air));
}

/** Less vapour than this counts as none, Pa: over ice of some 62 K. */
const DRIEST = 1e-30;

/** Humidity ratio from whichever measure was given; nothing is judged. */
function humidityRatioOf(air: MoistAirInput, saturation: Pressure): number {
  const { dryBulb, pressure, wetBulb, relativeHumidity, humidityRatio } = air;
  // The wet bulb of dry air may come out a rounding below 0; more was refused.
  if (wetBulb !== undefined) return Math.max(0, humidityRatioFromWetBulb(dryBulb, wetBulb, pressure));
  if (relativeHumidity !== undefined) return humidityRatioFromVapour(relativeHumidity * saturation, pressure);
  return humidityRatio!;
}

function examine(air: MoistAirInput): void {
  requireObject("", air, "air: dryBulb, pressure and one measure of humidity");
  const check = new InputCheck();
  const isTemperature = check.positive("dryBulb", air.dryBulb);
  const isPressure = checkStationPressure(check, "pressure", air.pressure);
  const given = [air.wetBulb, air.relativeHumidity, air.humidityRatio].filter((each) => each !== undefined);
  check.require(
    given.length === 1,
    "",
    `${given.length} of them`,
    "one of wetBulb, relativeHumidity and humidityRatio",
  );
  checkHumidity(check, "", air, isTemperature && isPressure ? air : undefined);
  check.finish();
}

function assumptionsOf(dryBulb: Temperature, wetBulb: Temperature): string[] {
  const assumptions = [
    "Air and water vapour are ideal gases; saturated air really holds some 0.4 % more water at sea level.",
  ];
  if (isIceBulb(wetBulb))
    assumptions.push("The wick of the wet bulb carries ice, not water below its freezing point.");
  if (isIceBulb(dryBulb)) assumptions.push("Relative humidity below 0 °C counts from saturation over ice.");
  return assumptions;
}

function wordsOf({ wetBulb, relativeHumidity, humidityRatio }: AirHumidity): string {
  if (wetBulb !== undefined) return `wet bulb ${shownCelsius(wetBulb)}`;
  if (relativeHumidity !== undefined) return `relative humidity ${shown(100 * relativeHumidity)} %`;
  return `humidity ratio ${shown(1000 * humidityRatio!)} g/kg`;
}
