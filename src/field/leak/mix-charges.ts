import { attempt, InputCheck, type Mass, type Outcome } from "../../units/index.js";

/** A charge of known composition. */
export interface MixedCharge {
  /** Its mass, kg. */
  readonly mass: Mass;
  /** Mass fractions by designation; they sum to 1. */
  readonly composition: Readonly<Record<string, number>>;
}

/** Mass fractions have to sum to 1 within this. */
const SUM_TOLERANCE = 1e-6;

/**
 * Composition of charges put together, mass fractions by designation: w = Σ mᵢwᵢ/Σ mᵢ, component by component.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; also for fractions that do not sum to 1 within 1e-6.
 * @source balance of masses
 *
 * @example
 * ```ts
 * mixCharges([
 *   { mass: 0.6, composition: { "R-32": 0.65, "R-1234yf": 0.35 } },
 *   { mass: 0.3, composition: { "R-32": 0.689, "R-1234yf": 0.311 } },
 * ])["R-32"]; // → 0.663
 * ```
 */
export function mixCharges(charges: readonly MixedCharge[]): Readonly<Record<string, number>> {
  const check = new InputCheck();
  const isList = Array.isArray(charges) && charges.length > 0;
  if (check.require(isList, "", charges, "one charge or more")) {
    for (const [index, charge] of charges.entries()) {
      check.positive(`[${index}].mass`, charge?.mass);
      const parts = Object.entries(charge?.composition ?? {});
      for (const [name, part] of parts) {
        check.require(
          part >= 0 && part <= 1,
          `[${index}].composition.${name}`,
          part,
          "a mass fraction, 0 to 1",
        );
      }
      const whole = parts.reduce((sum, [, part]) => sum + part, 0);
      const isWhole = Math.abs(whole - 1) <= SUM_TOLERANCE;
      check.require(isWhole, `[${index}].composition`, charge?.composition, "mass fractions that sum to 1");
    }
  }
  check.finish();
  const mass = charges.reduce((sum, charge) => sum + charge.mass, 0);
  const mixed: Record<string, number> = {};
  for (const charge of charges) {
    for (const [name, part] of Object.entries(charge.composition)) {
      mixed[name] = (mixed[name] ?? 0) + (charge.mass * part) / mass;
    }
  }
  return mixed;
}

/** As {@link mixCharges}, without throwing. */
export function tryMixCharges(charges: readonly MixedCharge[]): Outcome<Readonly<Record<string, number>>> {
  return attempt(() => mixCharges(charges));
}
