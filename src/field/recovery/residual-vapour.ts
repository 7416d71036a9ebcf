import type { Refrigerant, SinglePhaseState } from "../../state/index.js";
import {
  attempt,
  InputCheck,
  type Mass,
  NoSuchStateError,
  type Outcome,
  type Pressure,
  requireObject,
  type Temperature,
  type Volume,
} from "../../units/index.js";
import { checkRefrigerant } from "../refrigerant-check.js";

/** A circuit that was emptied down to a pressure. */
export interface ResidualVapour {
  /** Refrigerant. */
  readonly refrigerant: Refrigerant;
  /** Absolute pressure that is left, Pa. */
  readonly pressure: Pressure;
  /** Temperature, K. */
  readonly temperature: Temperature;
  /** Volume of the circuit, m3. */
  readonly volume: Volume;
}

/**
 * Mass of the vapour that is left in a circuit at a pressure, kg.
 *
 * @param left - Refrigerant, absolute pressure (Pa), temperature (K) and volume (m3).
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws {@link NoSuchStateError} `no-such-state` where there would be liquid: then the pressure says nothing of the amount.
 * @source density from the equation of state
 *
 * @example
 * ```ts
 * residualVapour({
 *   refrigerant: refrigerant("R-32"),
 *   pressure: 101325,
 *   temperature: celsius(20),
 *   volume: litre(2),
 * }); // → 4.383e-3 kg
 * ```
 */
export function residualVapour(left: ResidualVapour): Mass {
  return vapourIn(left).density * left.volume;
}

/** As {@link residualVapour}, without throwing. */
export function tryResidualVapour(left: ResidualVapour): Outcome<Mass> {
  return attempt(() => residualVapour(left));
}

/**
 * The same by the ideal gas, m = p V/(R T), kg: to compare. For R-32 at the pressure of the air and 20 °C it is 1.3 % less.
 *
 * @param left - Refrigerant, absolute pressure (Pa), temperature (K) and volume (m3).
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws {@link NoSuchStateError} `no-such-state` where there would be liquid.
 * @source ideal gas law, with the gas constant of the refrigerant
 *
 * @example
 * ```ts
 * idealResidualVapour({
 *   refrigerant: refrigerant("R-32"),
 *   pressure: 101325,
 *   temperature: celsius(20),
 *   volume: litre(2),
 * }); // → 4.325e-3 kg
 * ```
 */
export function idealResidualVapour(left: ResidualVapour): Mass {
  vapourIn(left);
  const { refrigerant, pressure, temperature, volume } = left;
  return (pressure * volume) / (refrigerant.specificGasConstant * temperature);
}

/** As {@link idealResidualVapour}, without throwing. */
export function tryIdealResidualVapour(left: ResidualVapour): Outcome<Mass> {
  return attempt(() => idealResidualVapour(left));
}

function vapourIn(left: ResidualVapour): SinglePhaseState {
  requireObject("", left, "a circuit with vapour in it");
  const { refrigerant, pressure, temperature, volume } = left;
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", refrigerant);
  check.positive("pressure", pressure);
  check.positive("temperature", temperature);
  check.positive("volume", volume);
  check.finish();
  const state = refrigerant.state({ temperature, pressure });
  if (state.phase === "liquid" || state.phase === "two-phase") {
    throw new NoSuchStateError({ temperature, pressure }, "vapour alone: there is liquid at this pressure");
  }
  return state;
}
