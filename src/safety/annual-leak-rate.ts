import { attempt, InputCheck, type Mass, type Outcome, requireObject } from "../units/index.js";

/** Days that the rule counts a year as; part of its formula. */
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
 * @param addition - Masses in kg, and the days since the addition before.
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

/** Everything that was added to a system of late. */
export interface RefrigerantAdditions {
  /** Every addition on record, whenever it was made. */
  readonly additions: readonly {
    /** What was added, kg. */
    readonly added: Mass;
    /** How long ago, days, 0 or above. */
    readonly daysAgo: number;
  }[];
  /** Full charge of the system, kg. */
  readonly fullCharge: Mass;
  /** Days to look back: 365, or less where a leak was mended and the repair proved good since. */
  readonly periodDays: number;
}

/** What was lost over a period. */
export interface RollingLeakRate {
  /** Loss in the period, per cent of the full charge; a shorter period is not stretched to a year. */
  readonly percent: number;
  /** All that was added in the period, kg. */
  readonly added: Mass;
  /** How many of the additions lie in the period. */
  readonly counted: number;
  /** How many are older and were left out. */
  readonly leftOut: number;
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Leak rate over a period, per cent of the full charge: 100 Σ m_added/m_full over the last 365 days, or since a repair was
 * proved good where that is less.
 *
 * @param history - Additions (kg, days ago), full charge (kg) and the days to look back.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a period above 365 days.
 * @source 40 CFR 82.152, rolling average method (recalled)
 *
 * @example
 * ```ts
 * const additions = [
 *   { added: 0.1, daysAgo: 20 },
 *   { added: 0.05, daysAgo: 300 },
 *   { added: 0.2, daysAgo: 500 },
 * ];
 * rollingLeakRate({ additions, fullCharge: 0.9, periodDays: 365 }).percent; // → 16.667
 * ```
 */
export function rollingLeakRate(history: RefrigerantAdditions): RollingLeakRate {
  requireObject("", history, "additions, the full charge and the period");
  const { additions, fullCharge, periodDays } = history;
  const check = new InputCheck();
  if (
    check.require(Array.isArray(additions), "additions", additions, "a list of additions; it may be empty")
  ) {
    for (const [index, addition] of additions.entries()) {
      check.notNegative(`additions[${index}].added`, addition?.added);
      check.notNegative(`additions[${index}].daysAgo`, addition?.daysAgo);
    }
  }
  check.positive("fullCharge", fullCharge);
  if (check.positive("periodDays", periodDays)) {
    check.require(
      periodDays <= DAYS_PER_YEAR,
      "periodDays",
      periodDays,
      `at most ${DAYS_PER_YEAR} days: the rule looks back no further`,
    );
  }
  check.finish();
  const inPeriod = additions.filter(({ daysAgo }) => daysAgo <= periodDays);
  const added = inPeriod.reduce((sum, each) => sum + each.added, 0);
  const percent = 100 * (added / fullCharge);
  return {
    percent,
    added,
    counted: inPeriod.length,
    leftOut: additions.length - inPeriod.length,
    because:
      `${Number(added.toPrecision(4))} kg of ${fullCharge} kg in the last ${Number(periodDays.toPrecision(4))} days, ` +
      `${inPeriod.length} of ${additions.length} additions: ${Number(percent.toPrecision(4))} % ` +
      "(40 CFR 82.152, rolling average method)",
  };
}

/** As {@link rollingLeakRate}, without throwing. */
export function tryRollingLeakRate(history: RefrigerantAdditions): Outcome<RollingLeakRate> {
  return attempt(() => rollingLeakRate(history));
}
