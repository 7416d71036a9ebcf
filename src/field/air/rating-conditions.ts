import data from "../../../data/field/air.json" with { type: "json" };
import {
  attempt,
  InputCheck,
  type Outcome,
  type Power,
  requireObject,
  type Temperature,
} from "../../units/index.js";
import { type Decision, decide, type Verdict } from "../measurement/decision.js";
import { shown, shownCelsius } from "../measurement/shown.js";
import type { AirSideCapacity } from "./air-side-capacity.js";

/** A measured capacity, the nameplate, and what else has to be known to hold one against the other. */
export interface NameplateQuestion {
  /** What {@link airSideCapacity} found. */
  readonly measured: AirSideCapacity;
  /** Rated capacity of the mode, W, from the nameplate of the unit. */
  readonly ratedCapacity: Power;
  /** How much may be missing, as a fraction of it, by the rule that is followed; 0.1 for 10 %. There is no default. */
  readonly allowedShortfall: number;
  /** Air at the outdoor unit. */
  readonly outdoorAir: {
    /** Temperature, K. */
    readonly dryBulb: Temperature;
    /** Wet bulb, K: needed in heating, where the coil may frost. */
    readonly wetBulb?: Temperature;
  };
  /** Whether compressor and fan ran as for the rating: a unit with a variable speed rarely does by itself. */
  readonly fullLoad: "yes" | "no" | "unknown";
}

/** One rating condition and how close the air was to it, K. */
export interface RatingCondition {
  /** Which temperature. */
  readonly name: "return-dry-bulb" | "return-wet-bulb" | "outdoor-dry-bulb" | "outdoor-wet-bulb";
  /** As read, K. */
  readonly found: Temperature;
  /** Of the rating, K. */
  readonly rated: Temperature;
  /** How far it may be away, K. */
  readonly allowed: number;
  /** Whether it is close enough. */
  readonly isMet: boolean;
}

/** A measured capacity held against the nameplate. */
export interface NameplateComparison {
  /** `inconclusive` also where the two cannot be compared. */
  readonly verdict: Verdict;
  /** Whether conditions, load and readings allow a comparison. */
  readonly isComparable: boolean;
  /** The conditions of the rating and how close the air was. */
  readonly conditions: readonly RatingCondition[];
  /** Measured over rated capacity, a pure number; of no weight where they cannot be compared. */
  readonly ratio: number;
  /** The capacity against the least that is allowed, W; undefined where they cannot be compared. */
  readonly decision: Decision | undefined;
  /** What stands against a comparison, or the numbers that decided. */
  readonly because: string;
}

/**
 * Holds a measured capacity against the nameplate, if it can be: only near the conditions of the rating, at full load,
 * and with readings that agree with each other. Otherwise the answer is `inconclusive`, with what stands against it.
 *
 * Rating conditions: cooling 27 °C and 19 °C wet bulb indoors, 35 °C outdoors; heating 20 °C indoors, 7 °C and 6 °C wet
 * bulb outdoors.
 *
 * @param question - The result of {@link airSideCapacity}, the nameplate (W), outdoor air (K) and load.
 * @returns `pass` if the capacity is at least (1 − shortfall) of the rated one for sure, `fail` if it is surely less.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source ISO 5151:2017, rating conditions T1 and H1 (recalled); how close is close enough: our own rule,
 * `data/field/air.json`
 */
export function compareWithNameplate(question: NameplateQuestion): NameplateComparison {
  examine(question);
  const { measured, ratedCapacity, allowedShortfall, fullLoad } = question;
  const conditions = conditionsOf(question);
  const against = [
    ...conditions.filter(({ isMet }) => !isMet).map(conditionWords),
    ...(fullLoad === "yes" ? [] : [`full load: ${fullLoad}`]),
    // A capacity that is hardly seen is far from the nameplate, and that can be said.
    ...measured.warnings.map(({ code }) => code).filter((code) => code !== "below-uncertainty"),
  ];
  const { value, expandedUncertainty } = measured.total;
  const isComparable = against.length === 0;
  const minimum = (1 - allowedShortfall) * ratedCapacity;
  const decision = isComparable
    ? decide(value, expandedUncertainty, { minimum }, { quantity: `${measured.mode} capacity`, unit: "W" })
    : undefined;
  const nameplate = `nameplate ${shown(ratedCapacity)} W`;
  return {
    verdict: decision?.verdict ?? "inconclusive",
    isComparable,
    conditions,
    ratio: value / ratedCapacity,
    decision,
    because:
      decision === undefined
        ? `cannot be held against the ${nameplate}: ${against.join("; ")}`
        : `${decision.because}; ${nameplate}, of which ${shown(100 * allowedShortfall)} % may be missing`,
  };
}

/** As {@link compareWithNameplate}, without throwing. */
export function tryCompareWithNameplate(question: NameplateQuestion): Outcome<NameplateComparison> {
  return attempt(() => compareWithNameplate(question));
}

function conditionsOf({ measured, outdoorAir }: NameplateQuestion): RatingCondition[] {
  const { ratingLike, rating } = data;
  const near = (
    name: RatingCondition["name"],
    found: Temperature,
    rated: Temperature,
    allowed: number,
  ): RatingCondition => ({
    name,
    found,
    rated,
    allowed,
    isMet: Math.abs(found - rated) <= allowed + ROUNDING,
  });
  const { dryBulb, wetBulb } = measured.returnAir;
  if (measured.mode === "cooling") {
    const { returnDryBulb, returnWetBulb, outdoorDryBulb } = rating.cooling;
    return [
      near("return-dry-bulb", dryBulb, returnDryBulb, ratingLike.indoorDryBulb),
      near("return-wet-bulb", wetBulb, returnWetBulb, ratingLike.indoorWetBulb),
      near("outdoor-dry-bulb", outdoorAir.dryBulb, outdoorDryBulb, ratingLike.outdoorDryBulb),
    ];
  }
  const { returnDryBulb, outdoorDryBulb, outdoorWetBulb } = rating.heating;
  return [
    near("return-dry-bulb", dryBulb, returnDryBulb, ratingLike.indoorDryBulb),
    near("outdoor-dry-bulb", outdoorAir.dryBulb, outdoorDryBulb, ratingLike.outdoorDryBulb),
    // Checked: heating comes with it.
    near("outdoor-wet-bulb", outdoorAir.wetBulb!, outdoorWetBulb, ratingLike.outdoorWetBulb),
  ];
}

/** Of a temperature that was turned from °C into K, K. */
const ROUNDING = 1e-9;

function conditionWords({ name, found, rated, allowed }: RatingCondition): string {
  return `${name} ${shownCelsius(found)} is more than ${allowed} K from the ${shownCelsius(rated)} of the rating`;
}

function examine(question: NameplateQuestion): void {
  requireObject("", question, "a measured capacity and a nameplate");
  const { measured, outdoorAir, allowedShortfall } = question;
  const check = new InputCheck();
  const isMode = check.oneOf("measured.mode", measured?.mode, ["cooling", "heating"]);
  check.finite("measured.total.value", measured?.total?.value);
  check.notNegative("measured.total.expandedUncertainty", measured?.total?.expandedUncertainty);
  check.positive("measured.returnAir.dryBulb", measured?.returnAir?.dryBulb);
  check.positive("measured.returnAir.wetBulb", measured?.returnAir?.wetBulb);
  check.require(Array.isArray(measured?.warnings), "measured.warnings", measured?.warnings, "a list");
  check.positive("ratedCapacity", question.ratedCapacity);
  check.require(
    allowedShortfall >= 0 && allowedShortfall < 1,
    "allowedShortfall",
    allowedShortfall,
    "a fraction of the rated capacity, 0 or above and below 1",
  );
  const isDry = check.positive("outdoorAir.dryBulb", outdoorAir?.dryBulb);
  const wetBulb = outdoorAir?.wetBulb;
  const isNeeded = isMode && measured.mode === "heating";
  if ((isNeeded || wetBulb !== undefined) && check.positive("outdoorAir.wetBulb", wetBulb) && isDry) {
    const { dryBulb } = outdoorAir;
    check.require(
      (wetBulb as number) <= dryBulb,
      "outdoorAir.wetBulb",
      wetBulb,
      `not above the dry bulb, ${dryBulb} K`,
    );
  }
  check.oneOf("fullLoad", question.fullLoad, ["yes", "no", "unknown"]);
  check.finish();
}
