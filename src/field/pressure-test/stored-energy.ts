import { attempt, type GaugePressure, InputCheck, type Outcome, type Volume } from "../../units/index.js";

/** Gas that is shut in under pressure. */
export interface StoredGas {
  /** Its pressure above that of the air, Pa gauge. */
  readonly pressure: GaugePressure;
  /** Its volume, m3. */
  readonly volume: Volume;
  /** Ratio of its heat capacities; 1.4 for nitrogen near room temperature. */
  readonly heatCapacityRatio: number;
}

/**
 * Energy that shut-in gas can set free, J: E = (p − p_amb) V/(γ − 1). It says why nobody stands in line with a fitting.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source Brode, H. L., J. Appl. Phys. 26 (1955) 766 (recalled)
 *
 * @example
 * ```ts
 * storedGasEnergy({ pressure: megapascalGauge(4.15), volume: litre(2), heatCapacityRatio: 1.4 }); // → 20750 J
 * ```
 */
export function storedGasEnergy(gas: StoredGas): number {
  const check = new InputCheck();
  check.positive("pressure", gas?.pressure);
  check.positive("volume", gas?.volume);
  const ratio = gas?.heatCapacityRatio;
  check.require(ratio > 1 && ratio <= 5 / 3, "heatCapacityRatio", ratio, "above 1, at most 5/3");
  check.finish();
  return (gas.pressure * gas.volume) / (ratio - 1);
}

/** As {@link storedGasEnergy}, without throwing. */
export function tryStoredGasEnergy(gas: StoredGas): Outcome<number> {
  return attempt(() => storedGasEnergy(gas));
}
