import data from "../../../data/field/evacuation.json" with { type: "json" };
import {
  attempt,
  type Duration,
  InputCheck,
  type Outcome,
  OutOfRangeError,
  type Pressure,
  type Temperature,
} from "../../units/index.js";
import { shown, shownCelsius } from "../measurement/shown.js";
import { waterVapourPressure } from "./water-vapour.js";

/** A rule that sets one vacuum for all temperatures. */
export type VacuumRule = "iec-60335-2-40" | "en-378-2" | "five-torr-manuals";

/** Every {@link VacuumRule}, for lists and forms. */
export const VACUUM_RULES: readonly VacuumRule[] = ["iec-60335-2-40", "en-378-2", "five-torr-manuals"];

/** A vacuum as published, to choose from: none of them is a default. */
export interface PublishedVacuumLimit {
  /** Which rule. */
  readonly rule: VacuumRule;
  /** Pressure to reach, Pa absolute. */
  readonly pressure: Pressure;
  /** What the shut-off system may rise to, Pa absolute, and after how long, s: a limit for {@link riseTest}. */
  readonly rise: { readonly pressure: Pressure; readonly after: Duration } | null;
  /** How long to pump at least, s. */
  readonly pumpingTime: Duration | null;
  /** Where it is printed. */
  readonly source: string;
  /** `read` or `recalled`. */
  readonly status: "read" | "recalled";
  /** What else to know. */
  readonly note?: string;
}

/** A vacuum and a pumping time by the temperature outdoors. */
export interface OutdoorVacuumLimit {
  /** Pressure to reach, Pa absolute. */
  readonly pressure: Pressure;
  /** How long to pump, s. */
  readonly pumpingTime: Duration;
  /** Lowest temperature of the row that was taken, K. */
  readonly rowTemperature: Temperature;
  /** Where it is printed. */
  readonly source: string;
  /** What else to know. */
  readonly note: string;
  /** Which row decided, and why. */
  readonly because: string;
}

/**
 * Vacuums that standards and printed manuals ask for. The manual of the unit and the code of the place decide which holds.
 *
 * @source each entry, `data/field/evacuation.json`
 *
 * @example
 * ```ts
 * publishedVacuumLimits().map(({ rule, pressure }) => `${rule}: ${formatPressure(pressure, { unit: "pascal", digits: 0 })}`);
 * // → ["iec-60335-2-40: 67 Pa abs", "en-378-2: 270 Pa abs", "five-torr-manuals: 667 Pa abs"]
 * ```
 */
export function publishedVacuumLimits(): readonly PublishedVacuumLimit[] {
  // JSON knows no literal types; tests/field/evacuation/vacuum-limits.test.ts checks every entry.
  return data.limits as readonly PublishedVacuumLimit[];
}

/**
 * The vacuum that one rule asks for.
 *
 * @param rule - One of {@link VACUUM_RULES}.
 * @throws {@link InputError} `malformed-input` with the rules there are.
 * @source each entry, `data/field/evacuation.json`
 */
export function publishedVacuumLimit(rule: VacuumRule): PublishedVacuumLimit {
  const check = new InputCheck();
  check.oneOf("rule", rule, VACUUM_RULES);
  check.finish();
  return publishedVacuumLimits().find((each) => each.rule === rule)!;
}

/** As {@link publishedVacuumLimit}, without throwing. */
export function tryPublishedVacuumLimit(rule: VacuumRule): Outcome<PublishedVacuumLimit> {
  return attempt(() => publishedVacuumLimit(rule));
}

/**
 * Vacuum and pumping time by the temperature outdoors, as one manual prints them: the colder, the deeper and longer.
 *
 * It prints above 20 °C, 10, 0 and −10 °C. Between two rows the stricter one is taken; nothing is read between them.
 *
 * @param outdoorTemperature - K, −10 °C or above.
 * @throws {@link InputError} `malformed-input`.
 * @throws {@link OutOfRangeError} `out-of-range` below the coldest row: the manual says nothing there, and the ice of a
 * colder part hardly leaves.
 * @source printed installation manual of a split heat pump, `data/field/evacuation.json`
 *
 * @example
 * ```ts
 * vacuumLimitOutdoors(celsius(7)).pressure; // → 250 Pa
 * ```
 */
export function vacuumLimitOutdoors(outdoorTemperature: Temperature): OutdoorVacuumLimit {
  const check = new InputCheck();
  check.positive("outdoorTemperature", outdoorTemperature);
  check.finish();
  const { rows, source, note } = data.byOutdoorTemperature;
  // The first is printed as above its temperature, the others as at theirs.
  const row = rows.find((each) =>
    each.above === undefined ? outdoorTemperature >= each.from : outdoorTemperature > each.above,
  );
  const coldest = rows[rows.length - 1]!;
  if (row === undefined) {
    throw new OutOfRangeError({
      quantity: "outdoorTemperature",
      value: outdoorTemperature,
      minimum: coldest.from as number,
      maximum: Number.POSITIVE_INFINITY,
      unit: "K",
      subject: "vacuum by outdoor temperature",
      hint: "the manual prints nothing colder: warm the system, or take the dry vacuum of its coldest part",
    });
  }
  const rowTemperature = (row.above ?? row.from) as Temperature;
  return {
    pressure: row.pressure,
    pumpingTime: row.pumpingTime,
    rowTemperature,
    source,
    note,
    because:
      `row ${row.above === undefined ? "of" : "above"} ${shownCelsius(rowTemperature)}, the strictest that ` +
      `${shownCelsius(outdoorTemperature)} can ask for: ${shown(row.pressure)} Pa for ${shown(row.pumpingTime)} s`,
  };
}

/** As {@link vacuumLimitOutdoors}, without throwing. */
export function tryVacuumLimitOutdoors(outdoorTemperature: Temperature): Outcome<OutdoorVacuumLimit> {
  return attempt(() => vacuumLimitOutdoors(outdoorTemperature));
}

/**
 * Vacuum at which water leaves the coldest part with a margin: half of the vapour pressure of water or ice there.
 *
 * @param coldestTemperature - Of the coldest part, K, 50 to 647.096.
 * @returns Pa absolute. It is no limit of any code: keep the stricter of both.
 * @throws {@link OutOfRangeError} `out-of-range`.
 * @source our own rule, `data/field/evacuation.json`; vapour pressure: IAPWS R7-97(2012) and R14-08(2011)
 *
 * @example
 * ```ts
 * dryVacuumTarget(celsius(0)); // → 305.6 Pa
 * dryVacuumTarget(celsius(-10)); // → 129.9 Pa
 * ```
 */
export function dryVacuumTarget(coldestTemperature: Temperature): Pressure {
  return data.dryness.fractionOfSaturation * waterVapourPressure(coldestTemperature);
}

/** As {@link dryVacuumTarget}, without throwing. */
export function tryDryVacuumTarget(coldestTemperature: Temperature): Outcome<Pressure> {
  return attempt(() => dryVacuumTarget(coldestTemperature));
}
