import {
  attempt,
  type Density,
  type Duration,
  InputCheck,
  type Mass,
  NoSuchStateError,
  type Outcome,
  OutOfRangeError,
  type Pressure,
  requireObject,
  type SpecificEnergy,
  type Temperature,
  type Volume,
  type VolumeFlow,
} from "../../units/index.js";
import { shown, shownCelsius } from "../measurement/shown.js";
import { MOLAR_GAS_CONSTANT } from "../molar-gas-constant.js";
import { waterVapourPressure, waterVapourSteepness } from "./water-vapour.js";

/** Molar mass of water, kg/mol, as the releases of IAPWS use it. */
const WATER_MOLAR_MASS = 0.018015268;
/** Gas constant of water vapour, J/(kg K). */
const WATER_GAS_CONSTANT = MOLAR_GAS_CONSTANT / WATER_MOLAR_MASS;
/** Above it, 60 °C, the vapour is too far from an ideal gas for {@link waterLatentHeat}. */
const LATENT_HEAT_RANGE = { minimum: 50, maximum: 333.15 } as const;

/** A pump that draws off water vapour. */
export interface WaterRemoval {
  /** Pumping speed that arrives at the system, m3/s. */
  readonly effectiveSpeed: VolumeFlow;
  /** Pressure of the water vapour there, Pa absolute; all of what a vacuum gauge shows, once the air is gone. */
  readonly vapourPressure: Pressure;
  /** Temperature of the vapour where the speed is stated, K. */
  readonly temperature: Temperature;
  /** How long, s. */
  readonly duration: Duration;
}

/** Water that a pump can carry off. */
export interface WaterRemovalResult {
  /** The most water that leaves in that time, kg. */
  readonly mass: Mass;
  /** The most water that leaves for each second, kg/s. */
  readonly massFlow: number;
  /** Heat that this water takes from the parts it leaves, J. */
  readonly heat: number;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers behind it. */
  readonly because: string;
}

/**
 * Density of water vapour, ρ = p M/(R T), ideal gas.
 *
 * @param pressure - Of the vapour, Pa absolute, at most the vapour pressure of water or ice at the temperature.
 * @param temperature - K, 50 to 647.096; the ideal gas is 0.1 % off at 20 °C, 1.5 % at 100 °C.
 * @returns kg/m3.
 * @throws {@link InputError} `malformed-input`.
 * @throws {@link OutOfRangeError} `out-of-range`.
 * @throws {@link NoSuchStateError} `no-such-state` above the vapour pressure: the vapour would condense or freeze.
 * @source ideal gas law; molar mass 18.015268 g/mol, IAPWS
 *
 * @example
 * ```ts
 * waterVapourDensity(waterVapourPressure(celsius(20)), celsius(20)); // → 0.01729 kg/m3
 * ```
 */
export function waterVapourDensity(pressure: Pressure, temperature: Temperature): Density {
  const check = new InputCheck();
  check.positive("pressure", pressure);
  check.finite("temperature", temperature);
  check.finish();
  requireVapour(pressure, temperature);
  return pressure / (WATER_GAS_CONSTANT * temperature);
}

/** As {@link waterVapourDensity}, without throwing. */
export function tryWaterVapourDensity(pressure: Pressure, temperature: Temperature): Outcome<Density> {
  return attempt(() => waterVapourDensity(pressure, temperature));
}

/**
 * Volume that a mass of water fills as vapour: what a pump has to draw off.
 *
 * @param mass - kg.
 * @param pressure - Of the vapour, Pa absolute, at most the vapour pressure of water or ice at the temperature.
 * @param temperature - K, 50 to 647.096.
 * @returns m3.
 * @throws {@link InputError} `malformed-input`.
 * @throws {@link OutOfRangeError} `out-of-range`.
 * @throws {@link NoSuchStateError} `no-such-state` above the vapour pressure.
 * @source ideal gas law
 *
 * @example
 * ```ts
 * // One gram of water at 20 °C is 57.8 L of vapour, and at 500 micron 2030 L.
 * inLitre(waterVapourVolume(gram(1), waterVapourPressure(celsius(20)), celsius(20))); // → 57.84
 * inLitre(waterVapourVolume(gram(1), micron(500), celsius(20))); // → 2030
 * ```
 */
export function waterVapourVolume(mass: Mass, pressure: Pressure, temperature: Temperature): Volume {
  const check = new InputCheck();
  check.notNegative("mass", mass);
  check.positive("pressure", pressure);
  check.finite("temperature", temperature);
  check.finish();
  return mass / waterVapourDensity(pressure, temperature);
}

/** As {@link waterVapourVolume}, without throwing. */
export function tryWaterVapourVolume(
  mass: Mass,
  pressure: Pressure,
  temperature: Temperature,
): Outcome<Volume> {
  return attempt(() => waterVapourVolume(mass, pressure, temperature));
}

/**
 * Heat that water takes up as it evaporates, or ice as it sublimates: L = −(R/M) d ln p/d(1/T) along the vapour curve.
 * Below the triple point, 273.16 K, it is that of ice. Where the heat does not come in fast enough, water freezes and ice
 * grows colder: warm the parts, or wait.
 *
 * @param temperature - Of the water or ice, K, 50 to 333.15.
 * @returns J/kg; too high by 0.06 % at 0 °C, 0.3 % at 40 °C and 0.6 % at 60 °C, since the vapour is taken for an ideal gas.
 * @throws {@link OutOfRangeError} `out-of-range`.
 * @source Clausius and Clapeyron with ideal vapour, liquid and ice without volume; curves: IAPWS R7-97(2012), R14-08(2011)
 *
 * @example
 * ```ts
 * waterLatentHeat(celsius(20)); // → 2.457e6 J/kg
 * waterLatentHeat(celsius(-20)); // → 2.839e6 J/kg
 * ```
 */
export function waterLatentHeat(temperature: Temperature): SpecificEnergy {
  const { minimum, maximum } = LATENT_HEAT_RANGE;
  // Refuses what is no number, by name.
  waterVapourPressure(temperature);
  if (temperature > maximum) {
    throw new OutOfRangeError({
      quantity: "temperature",
      value: temperature,
      minimum,
      maximum,
      unit: "K",
      subject: "latent heat of water with ideal vapour",
    });
  }
  return -WATER_GAS_CONSTANT * waterVapourSteepness(temperature);
}

/** As {@link waterLatentHeat}, without throwing. */
export function tryWaterLatentHeat(temperature: Temperature): Outcome<SpecificEnergy> {
  return attempt(() => waterLatentHeat(temperature));
}

/**
 * The most water that a pump can carry off in a time, m = ρ S t, with the heat that this takes.
 *
 * @param removal - Speed at the system (m3/s), pressure of the vapour (Pa absolute), temperature (K), time (s).
 * @returns kg and J; upper bounds.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws {@link OutOfRangeError} `out-of-range`, as {@link waterLatentHeat}.
 * @throws {@link NoSuchStateError} `no-such-state` above the vapour pressure at the temperature.
 * @source as {@link waterVapourDensity} and {@link waterLatentHeat}
 *
 * @example
 * ```ts
 * const { mass } = waterCarriedOff({
 *   effectiveSpeed: litrePerSecond(0.05),
 *   vapourPressure: micron(2000),
 *   temperature: celsius(20),
 *   duration: hour(1),
 * });
 * inGram(mass); // → 0.3547
 * ```
 */
export function waterCarriedOff(removal: WaterRemoval): WaterRemovalResult {
  requireObject("", removal, "a pump and a vapour");
  const { effectiveSpeed, vapourPressure, temperature, duration } = removal;
  const check = new InputCheck();
  check.positive("effectiveSpeed", effectiveSpeed);
  check.positive("vapourPressure", vapourPressure);
  check.positive("temperature", temperature);
  check.notNegative("duration", duration);
  check.finish();
  const latentHeat = waterLatentHeat(temperature);
  const massFlow = waterVapourDensity(vapourPressure, temperature) * effectiveSpeed;
  const mass = massFlow * duration;
  return {
    mass,
    massFlow,
    heat: mass * latentHeat,
    assumptions: [
      "At most this much: all that arrives at the pump is water vapour, and it evaporates as fast as it is drawn off.",
      "The heat reaches the water: without it water freezes, and ice gives off less and less.",
      "The pump passes the vapour on without condensing it: with gas ballast, and warm.",
    ],
    because:
      `${shown(1000 * effectiveSpeed)} L/s of vapour at ${shown(vapourPressure)} Pa and ${shownCelsius(temperature)} ` +
      `for ${shown(duration)} s: at most ${shown(1000 * mass)} g, which take ${shown(mass * latentHeat)} J`,
  };
}

/** As {@link waterCarriedOff}, without throwing. */
export function tryWaterCarriedOff(removal: WaterRemoval): Outcome<WaterRemovalResult> {
  return attempt(() => waterCarriedOff(removal));
}

function requireVapour(pressure: Pressure, temperature: Temperature): void {
  const highest = waterVapourPressure(temperature);
  if (pressure > highest) {
    throw new NoSuchStateError(
      { pressure, temperature },
      `water vapour condenses or freezes above ${shown(highest)} Pa at this temperature`,
    );
  }
}
