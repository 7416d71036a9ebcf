import { attempt, type Mass, type Outcome, requireObject } from "../units/index.js";
import { InputCheck } from "./input-check.js";

/** Days that the rule counts a year as. */
const DAYS_PER_YEAR = 365;

/** Refrigerant that had to be added to a system. */
export interface RefrigerantAdded {
  /** What was added, kg. */
  readonly added: Mass;
  /** Full charge of the system, kg. */
  readonly fullCharge: Mass;
  /** Days since refrigerant was last added, or since the system was first charged; above 0. */
  readonly daysSinceLastAddition: number;
}

/** How fast a system loses refrigerant. */
export interface AnnualLeakRate {
  /** Loss in a year, per cent of the full charge. */
  readonly percentPerYear: number;
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Leak rate from one addition, per cent of the full charge in a year: 100 (m_added/m_full) 365/min(365, days).
 *
 * An addition after more than a year counts as the loss of one year: the rule does not thin it out.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; also for more than the full charge.
 * @source 40 CFR 82.152, annualizing method (recalled)
 *
 * @example
 * ```ts
 * annualLeakRate({ added: 0.15, fullCharge: 0.9, daysSinceLastAddition: 200 }).percentPerYear; // → 30.417
 * ```
 */
export function annualLeakRate(addition: RefrigerantAdded): AnnualLeakRate {
  requireObject("", addition, "what was added, the full charge and the days since");
  const { added, fullCharge, daysSinceLastAddition } = addition;
  const check = new InputCheck();
  check.notNegative("added", added);
  check.positive("daysSinceLastAddition", daysSinceLastAddition);
  if (check.positive("fullCharge", fullCharge)) {
    check.require(!(added > fullCharge), "added", added, `at most the full charge, ${fullCharge} kg`);
  }
  check.finish();
  const days = Math.min(DAYS_PER_YEAR, daysSinceLastAddition);
  const percentPerYear = 100 * (added / fullCharge) * (DAYS_PER_YEAR / days);
  return {
    percentPerYear,
    because:
      `${added} kg of ${fullCharge} kg in ${Number(daysSinceLastAddition.toPrecision(4))} days: ` +
      `${Number(percentPerYear.toPrecision(4))} % a year (40 CFR 82.152, annualizing method)`,
  };
}

/** As {@link annualLeakRate}, without throwing. */
export function tryAnnualLeakRate(addition: RefrigerantAdded): Outcome<AnnualLeakRate> {
  return attempt(() => annualLeakRate(addition));
}
