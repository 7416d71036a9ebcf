import type { Pressure, SpecificEnergy, Temperature } from "../../units/index.js";
import { waterVapourPressure } from "../evacuation/water-vapour.js";

/*
 * The equations of moist air as a mixture of ideal gases: ASHRAE Handbook Fundamentals (2017), chapter 1 (recalled), in
 * SI, with the vapour pressures of IAPWS. They judge nothing; that is done at the doors that call them.
 */

/** Mass of water over mass of dry air at equal pressure and temperature: ratio of the molar masses. */
const MASS_RATIO = 0.621945;
/** Heat capacity of dry air and of water vapour, J/(kg K). */
const CP_AIR = 1006;
const CP_VAPOUR = 1860;
/** Enthalpy of water vapour at 0 °C over liquid at 0 °C, J/kg. */
const VAPORISATION = 2.501e6;
/** Over ice at 0 °C, as printed for the ice bulb, J/kg. */
const SUBLIMATION = 2.83e6;
/** Heat capacity of the water and of the ice on a wick, J/(kg K). */
const CP_WATER = 4186;
const CP_ICE = 2100;
/** Fall of the latent heat with the wet-bulb temperature, J/(kg K): vapour less liquid, and less ice, as printed. */
const VAPORISATION_SLOPE = 2326;
const SUBLIMATION_SLOPE = 240;
/** Gas constant of dry air, J/(kg K). */
const GAS_CONSTANT = 287.042;
/** Inverse of the mass ratio, as printed. */
const MOLAR_RATIO = 1.607858;
const ZERO = 273.15;

/** W = 0.621945 p_w/(p − p_w). */
export function humidityRatioFromVapour(vapourPressure: Pressure, pressure: Pressure): number {
  return (MASS_RATIO * vapourPressure) / (pressure - vapourPressure);
}

/** p_w = p W/(0.621945 + W). */
export function vapourFromHumidityRatio(humidityRatio: number, pressure: Pressure): Pressure {
  return (pressure * humidityRatio) / (MASS_RATIO + humidityRatio);
}

/** h = 1.006 t + W (2501 + 1.86 t), J for each kg of dry air. */
export function moistEnthalpy(dryBulb: Temperature, humidityRatio: number): SpecificEnergy {
  const t = dryBulb - ZERO;
  return CP_AIR * t + humidityRatio * (VAPORISATION + CP_VAPOUR * t);
}

/** Heat capacity of moist air, J/K for each kg of dry air. */
export function moistHeatCapacity(humidityRatio: number): number {
  return CP_AIR + CP_VAPOUR * humidityRatio;
}

/** v = 0.287042 T (1 + 1.607858 W)/p, m3 for each kg of dry air. */
export function moistVolume(dryBulb: Temperature, humidityRatio: number, pressure: Pressure): number {
  return (GAS_CONSTANT * dryBulb * (1 + MOLAR_RATIO * humidityRatio)) / pressure;
}

/** True where a wick carries ice: the equation of the ice bulb holds there. */
export function isIceBulb(wetBulb: Temperature): boolean {
  return wetBulb < ZERO;
}

/**
 * Humidity ratio from the two bulbs; below 0 when the wet bulb is colder than dry air could make it.
 *
 * @param ice - Which equation; they do not meet at 0 °C, so that a small step across it has to keep to one.
 */
export function humidityRatioFromWetBulb(
  dryBulb: Temperature,
  wetBulb: Temperature,
  pressure: Pressure,
  ice: boolean = isIceBulb(wetBulb),
): number {
  const { a, b } = wickBalance(dryBulb, wetBulb, pressure, ice);
  return a / b;
}

/**
 * Wet bulb that belongs to a humidity ratio: water on the wick wherever 0 °C or above fits, else ice.
 *
 * @param lowest - A temperature that is surely not above it, K: the dew point, or the end of the range for dry air.
 */
export function wetBulbOf(
  dryBulb: Temperature,
  humidityRatio: number,
  pressure: Pressure,
  lowest: Temperature,
): Temperature {
  const excess = (wetBulb: Temperature, ice: boolean): number => {
    const { a, b, boils } = wickBalance(dryBulb, wetBulb, pressure, ice);
    return boils ? Number.POSITIVE_INFINITY : a - b * humidityRatio;
  };
  const ice = dryBulb < ZERO || excess(ZERO, false) > 0;
  let low: number = ice ? lowest : Math.max(lowest, ZERO);
  let high: number = ice ? Math.min(dryBulb, ZERO) : dryBulb;
  // Halving from at most 300 K: the last digit after some 60 steps.
  for (let step = 0; step < 70; step++) {
    const middle = (low + high) / 2;
    if (excess(middle, ice) > 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Heat and mass balance of a wick, a − b W = 0: the two printed equations, (2501 − 2.326 t*) … and (2830 − 0.24 t*) …. */
function wickBalance(
  dryBulb: Temperature,
  wetBulb: Temperature,
  pressure: Pressure,
  ice: boolean,
): { readonly a: number; readonly b: number; readonly boils: boolean } {
  const t = dryBulb - ZERO;
  const wet = wetBulb - ZERO;
  const atWick = waterVapourPressure(wetBulb);
  const saturated = humidityRatioFromVapour(atWick, pressure);
  const boils = !(atWick < pressure);
  const sensible = CP_AIR * (t - wet);
  return ice
    ? {
        a: (SUBLIMATION - SUBLIMATION_SLOPE * wet) * saturated - sensible,
        b: SUBLIMATION + CP_VAPOUR * t - CP_ICE * wet,
        boils,
      }
    : {
        a: (VAPORISATION - VAPORISATION_SLOPE * wet) * saturated - sensible,
        b: VAPORISATION + CP_VAPOUR * t - CP_WATER * wet,
        boils,
      };
}
