import type { Pressure } from "../../units/index.js";
import { MOLAR_GAS_CONSTANT } from "../molar-gas-constant.js";
import type { HoseElement, HoseGas } from "./hose.js";

/** What a piece lets through: q = (k/2) (p² − p'²) + C_m (p − p') between the pressures at its ends. */
export interface Resistance {
  /** k: viscous conductance for each Pa of mean pressure, m3/(s Pa). */
  readonly viscousPerPascal: number;
  /** C_m: molecular conductance, m3/s. */
  readonly molecular: number;
}

/** Pieces in order, and the pump behind the last. */
export interface Chain {
  readonly resistances: readonly Resistance[];
  /** Pumping speed, m3/s. */
  readonly speed: number;
  /** Pressure at which the pump alone stands still, Pa. */
  readonly ultimate: number;
}

/** Viscous and molecular conductance of a long round piece. */
export function resistanceOf({ innerDiameter: d, length }: HoseElement, gas: HoseGas): Resistance {
  const meanSpeed = Math.sqrt((8 * MOLAR_GAS_CONSTANT * gas.temperature) / (Math.PI * gas.molarMass));
  return {
    viscousPerPascal: (Math.PI * d ** 4) / (128 * gas.viscosity * length),
    molecular: (Math.PI * d ** 3 * meanSpeed) / (12 * length),
  };
}

/** Mean free path times pressure, m Pa. */
export function meanFreePathFactor(gas: HoseGas): number {
  return gas.viscosity * Math.sqrt((Math.PI * MOLAR_GAS_CONSTANT * gas.temperature) / (2 * gas.molarMass));
}

/**
 * Pressures upstream of each piece, system first, while the pump sees `above` Pa above its ultimate pressure, and the
 * slope of the first with `above`. From the pump upward every step is a quadratic with one positive root.
 */
export function pressuresUpstream(
  { resistances, speed, ultimate }: Chain,
  above: number,
): { readonly pressures: readonly Pressure[]; readonly slope: number } {
  const throughput = speed * above;
  const pressures: Pressure[] = [];
  let pressure = ultimate + above;
  let slope = 1;
  for (let piece = resistances.length - 1; piece >= 0; piece--) {
    const { viscousPerPascal: k, molecular } = resistances[piece]!;
    const driving = (k / 2) * pressure * pressure + molecular * pressure + throughput;
    // In this form no digits are lost while k is small.
    const upstream = (2 * driving) / (molecular + Math.sqrt(molecular * molecular + 2 * k * driving));
    slope = ((k * pressure + molecular) * slope + speed) / (k * upstream + molecular);
    pressure = upstream;
    pressures[piece] = pressure;
  }
  return { pressures, slope };
}

/**
 * How far above its ultimate pressure the pump stands while the system is at a pressure, Pa.
 *
 * One piece is a quadratic in the pressure at the pump; more of them start from one that stands for all.
 *
 * @param system - Pa, above `ultimate`.
 */
export function pressureAtPump(chain: Chain, system: Pressure): number {
  const { resistances, speed, ultimate } = chain;
  const k = 1 / resistances.reduce((sum, each) => sum + 1 / each.viscousPerPascal, 0);
  const molecular = 1 / resistances.reduce((sum, each) => sum + 1 / each.molecular, 0);
  // In x, above the ultimate pressure u: (k/2) x² + (S + C_m + k u) x = (k/2) (p² − u²) + C_m (p − u).
  const b = speed + molecular + k * ultimate;
  const driving = (system - ultimate) * ((k / 2) * (system + ultimate) + molecular);
  const highest = system - ultimate;
  let above = Math.min((2 * driving) / (b + Math.sqrt(b * b + 2 * k * driving)), highest);
  let low = 0;
  let high = highest;
  for (let step = 0; step < 100; step++) {
    const { pressures, slope } = pressuresUpstream(chain, above);
    const miss = pressures[0]! - system;
    if (miss > 0) high = above;
    else low = above;
    const next = above - miss / slope;
    if (Math.abs(next - above) <= 1e-14 * above) return Math.min(Math.max(next, low), high);
    above = next > low && next < high ? next : (low + high) / 2;
  }
  // The bracket has closed on the last digits.
  return above;
}
