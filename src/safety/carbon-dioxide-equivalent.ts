import { attempt, InputCheck, type Mass, type Outcome } from "../units/index.js";

/**
 * Mass of carbon dioxide with the same effect on the climate as a charge, kg: m GWP.
 *
 * @param charge - kg, 0 or above; 1000 kg of the result are 1 t CO2e.
 * @param gwp - Global warming potential, 100 years, above 0; the caller keeps which report or law it is from.
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

/** As {@link carbonDioxideEquivalent}, without throwing. */
export function tryCarbonDioxideEquivalent(charge: Mass, gwp: number): Outcome<Mass> {
  return attempt(() => carbonDioxideEquivalent(charge, gwp));
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

/** As {@link chargeOfEquivalent}, without throwing. */
export function tryChargeOfEquivalent(equivalent: Mass, gwp: number): Outcome<Mass> {
  return attempt(() => chargeOfEquivalent(equivalent, gwp));
}
