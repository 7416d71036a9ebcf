import { attempt, InputCheck, type Outcome, requireObject } from "../../units/index.js";
import { shown, shownWithUncertainty } from "./shown.js";

/** Answer of a check that can be sure, or not. */
export type Verdict = "pass" | "fail" | "inconclusive";

/** What a value is held against; at least one of the two. */
export interface DecisionLimits {
  /** Lowest acceptable value. */
  readonly minimum?: number;
  /** Highest acceptable value. */
  readonly maximum?: number;
}

/** A verdict with the numbers it rests on, all in the unit of the value. */
export interface Decision {
  /** Sure to be inside, sure to be outside, or too close to say. */
  readonly verdict: Verdict;
  /** Value that was judged. */
  readonly value: number;
  /** Expanded uncertainty of the value, k = 2. */
  readonly expandedUncertainty: number;
  /** Limits it was held against. */
  readonly limits: DecisionLimits;
  /** False when no reading could ever pass, because the limits lie closer together than twice the uncertainty. */
  readonly canPass: boolean;
  /** The rule and the numbers that decided. */
  readonly because: string;
}

/** How the words of a decision name its number. */
export interface DecisionWording {
  /** What is judged, such as `superheat`. */
  readonly quantity: string;
  /** Its SI unit, such as `K`. */
  readonly unit: string;
}

/**
 * Judges a value against limits with its uncertainty as guard band:
 * `pass` if a + U ≤ x ≤ b − U, `fail` if x < a − U or x > b + U, else `inconclusive`.
 *
 * @param value - x, any unit.
 * @param expandedUncertainty - U with k = 2, same unit, 0 or above.
 * @param limits - a and b, same unit; one may be left out.
 * @param wording - Names for the explanation; SI units.
 * @throws {@link InputError} `malformed-input`: numbers not finite, no limit at all, or minimum above maximum.
 * @source JCGM 106:2012, guarded acceptance and guarded rejection (recalled)
 *
 * @example
 * ```ts
 * decide(7.2, 1.5, { minimum: 4, maximum: 8 }).verdict; // → "inconclusive"
 * ```
 */
export function decide(
  value: number,
  expandedUncertainty: number,
  limits: DecisionLimits,
  wording: DecisionWording = { quantity: "value", unit: "" },
): Decision {
  const check = new InputCheck();
  check.finite("value", value);
  check.notNegative("expandedUncertainty", expandedUncertainty);
  requireObject("limits", limits, "a minimum, a maximum or both");
  const { minimum, maximum } = limits;
  if (minimum !== undefined) check.finite("limits.minimum", minimum);
  if (maximum !== undefined) check.finite("limits.maximum", maximum);
  check.require(
    minimum !== undefined || maximum !== undefined,
    "limits",
    limits,
    "a minimum, a maximum or both",
  );
  if (minimum !== undefined && maximum !== undefined) {
    check.require(!(minimum > maximum), "limits.minimum", minimum, `not above the maximum, ${maximum}`);
  }
  check.finish();
  const low = minimum ?? Number.NEGATIVE_INFINITY;
  const high = maximum ?? Number.POSITIVE_INFINITY;
  const U = expandedUncertainty;
  const verdict: Verdict =
    low + U <= value && value <= high - U
      ? "pass"
      : value < low - U || value > high + U
        ? "fail"
        : "inconclusive";
  const canPass = high - low >= 2 * U;
  const unit = wording.unit === "" ? "" : ` ${wording.unit}`;
  const found = `${wording.quantity} ${shownWithUncertainty(value, U)}${unit} (k = 2)`;
  const words = wordsOf(verdict, minimum, maximum, unit);
  const note = canPass ? "" : "; limits this close cannot be confirmed with this instrument";
  return {
    verdict,
    value,
    expandedUncertainty,
    limits,
    canPass,
    because: `${found} ${words}${note}`,
  };
}

/** As {@link decide}, without throwing. */
export function tryDecide(
  value: number,
  expandedUncertainty: number,
  limits: DecisionLimits,
  wording?: DecisionWording,
): Outcome<Decision> {
  return attempt(() => decide(value, expandedUncertainty, limits, wording));
}

/** The verdict on several checks together: one failure fails all, one doubt leaves all in doubt; none proves nothing. */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes("fail")) return "fail";
  return verdicts.length === 0 || verdicts.includes("inconclusive") ? "inconclusive" : "pass";
}

/** The verdict in words, with the limits that are given. */
function wordsOf(
  verdict: Verdict,
  minimum: number | undefined,
  maximum: number | undefined,
  unit: string,
): string {
  const low = minimum === undefined ? "" : `${shown(minimum)}`;
  const high = maximum === undefined ? "" : `${shown(maximum)}`;
  const limits = [low, high].filter((each) => each !== "").join(" to ") + unit;
  if (verdict === "inconclusive") return `is too close to ${limits} to tell`;
  const twoSided = low !== "" && high !== "";
  const inside = twoSided ? "lies within" : low === "" ? "is below" : "is above";
  const outside = twoSided ? "lies outside" : low === "" ? "is above" : "is below";
  return `${verdict === "pass" ? inside : outside} ${limits} by more than its uncertainty`;
}
