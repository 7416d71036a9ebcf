import type { Mass } from "../units/index.js";
import { InputCheck } from "./input-check.js";

/**
 * Mass of carbon dioxide with the same effect on the climate as a charge, kg: m GWP.
 *
 * @param charge - kg, 0 or above.
 * @param gwp - Global warming potential, 100 years, above 0; which report it is from is for the caller to say.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source definition of the global warming potential
 */
export function carbonDioxideEquivalent(charge: Mass, gwp: number): Mass {
  const check = new InputCheck();
  check.notNegative("charge", charge);
  check.positive("gwp", gwp);
  check.finish();
  return charge * gwp;
}

/**
 * Charge that has the effect of a mass of carbon dioxide, kg: the inverse of {@link carbonDioxideEquivalent}.
 *
 * @param equivalent - kg of carbon dioxide, 0 or above.
 * @param gwp - Global warming potential, 100 years, above 0.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source definition of the global warming potential
 *
 * @example
 * ```ts
 * chargeOfEquivalent(5000, 675); // → 7.407 kg
 * ```
 */
export function chargeOfEquivalent(equivalent: Mass, gwp: number): Mass {
  const check = new InputCheck();
  check.notNegative("equivalent", equivalent);
  check.positive("gwp", gwp);
  check.finish();
  return equivalent / gwp;
}
