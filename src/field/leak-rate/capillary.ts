import { InputCheck, type Length, type Pressure } from "../../units/index.js";

/** A long round capillary between two pressures. */
export interface Capillary {
  /** Length, m: the thickness of the wall, or of the thread. */
  readonly length: Length;
  /** Absolute pressure before it, Pa. */
  readonly inside: Pressure;
  /** Absolute pressure behind it, Pa; 0 for a vacuum. */
  readonly outside: Pressure;
  /** Dynamic viscosity of the gas, Pa s. */
  readonly viscosity: number;
}

/**
 * Throughput of one long capillary in viscous laminar flow: q = π d⁴ (p₁² − p₂²)/(256 η L).
 *
 * @param capillary - Its length, pressures and gas.
 * @param diameter - m, above 0.
 * @returns Pa m3/s.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source law of Poiseuille for a gas
 */
export function capillaryThroughput(capillary: Capillary, diameter: Length): number {
  const check = new InputCheck();
  check.positive("diameter", diameter);
  checkCapillary(check, capillary);
  return conductance(capillary) * diameter ** 4;
}

/**
 * Diameter of the one long capillary that would let a throughput pass: the inverse of {@link capillaryThroughput}. It shows
 * how small a hole is meant.
 *
 * @param throughput - Pa m3/s, above 0.
 * @returns m.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source law of Poiseuille for a gas
 *
 * @example
 * ```ts
 * const thread = { length: 0.01, inside: 1.4746e6, outside: 101325, viscosity: 12.4e-6 };
 * capillaryDiameter(thread, 7.42e-6); // → 2.43e-6 m: 5 g of R-32 a year
 * ```
 */
export function capillaryDiameter(capillary: Capillary, throughput: number): Length {
  const check = new InputCheck();
  check.positive("throughput", throughput);
  checkCapillary(check, capillary);
  return (throughput / conductance(capillary)) ** 0.25;
}

function conductance({ length, inside, outside, viscosity }: Capillary): number {
  return (Math.PI * (inside - outside) * (inside + outside)) / (256 * viscosity * length);
}

function checkCapillary(check: InputCheck, capillary: Capillary): void {
  check.positive("length", capillary?.length);
  check.positive("viscosity", capillary?.viscosity);
  check.notNegative("outside", capillary?.outside);
  if (check.positive("inside", capillary?.inside)) {
    const { inside, outside } = capillary;
    check.require(!(inside <= outside), "inside", inside, `above the pressure behind it, ${outside} Pa`);
  }
  check.finish();
}
