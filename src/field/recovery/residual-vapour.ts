import { InputCheck } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type Mass,
  NoSuchStateError,
  type Outcome,
  type Pressure,
  requireObject,
  type Temperature,
  type Volume,
} from "../../units/index.js";

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
  requireObject("", left, "a circuit with vapour in it");
  const { refrigerant, pressure, temperature, volume } = left;
  const check = new InputCheck();
  const isOne = typeof refrigerant === "object" && refrigerant !== null;
  check.require(isOne, "refrigerant", refrigerant, "a refrigerant");
  check.positive("pressure", pressure);
  check.positive("temperature", temperature);
  check.positive("volume", volume);
  check.finish();
  const state = refrigerant.state({ temperature, pressure });
  if (state.phase === "liquid" || state.phase === "two-phase") {
    throw new NoSuchStateError({ temperature, pressure }, "vapour alone: there is liquid at this pressure");
  }
  return state.density * volume;
}

/** As {@link residualVapour}, without throwing. */
export function tryResidualVapour(left: ResidualVapour): Outcome<Mass> {
  return attempt(() => residualVapour(left));
}
