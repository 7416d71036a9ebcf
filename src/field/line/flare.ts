import data from "../../../data/field/flares.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import {
  attempt,
  InputCheck,
  InputError,
  type Length,
  type Outcome,
  requireObject,
  type Torque,
} from "../../units/index.js";
import { type Decision, decide, type Verdict } from "../measurement/decision.js";
import { halfWidthUncertainty } from "../measurement/instrument.js";
import { shown } from "../measurement/shown.js";
import { COVERAGE_FACTOR } from "../measurement/uncertainty.js";
import { isSameDiameter } from "./tube.js";

/** Lowest and highest value. */
export interface TorqueRange {
  /** Lowest torque, N m. */
  readonly minimum: Torque;
  /** Highest torque, N m. */
  readonly maximum: Torque;
}

/** A torque as printed somewhere. */
export interface PrintedTorque extends TorqueRange {
  /** Outer diameter of the tube, m. */
  readonly outerDiameter: Length;
  /** Where it is printed. */
  readonly source: string;
  /** `read` or `recalled`. */
  readonly status: "read" | "recalled";
}

/** What is printed about flared joints of one size, for R-32 and R-410A. */
export interface FlareFacts {
  /** Every printed torque. */
  readonly printed: readonly PrintedTorque[];
  /** Torques that all of them allow; undefined where they have none in common. */
  readonly overlap: TorqueRange | undefined;
  /** Torques that at least one of them allows. */
  readonly union: TorqueRange;
  /** Smallest and largest diameter of the flare, m. */
  readonly flareDiameter: { readonly minimum: Length; readonly maximum: Length };
  /** Nut, across flats, m. */
  readonly nut: Length;
  /** What else to know. */
  readonly note: string;
}

/** A joint that was tightened. */
export interface TightenedJoint {
  /** What the wrench was set to or showed, N m. */
  readonly applied: Torque;
  /** How far the wrench may be off, per cent of that, above 0. */
  readonly wrenchPercent: number;
  /** What is asked for: the range of the manual, or by the size of the tube what the printed lists have in common. */
  readonly by: { readonly manual: TorqueRange } | { readonly outerDiameter: Length };
}

/** Whether a joint was tightened as it should be. */
export interface TorqueResult extends Decision {
  /** What it was held against. */
  readonly range: TorqueRange;
  /** What is odd. */
  readonly warnings: readonly Warning<"no-manual" | "range-below-wrench">[];
}

/**
 * What is printed about a flared joint: the torques of every list, what they have in common, flare diameter and nut.
 *
 * R-32 and R-410A share flares and torques; the flares are larger than those of the older refrigerants.
 *
 * @param outerDiameter - Of the tube, m; 0.03 mm off is taken as the same size.
 * @throws {@link InputError} `malformed-input` with the sizes that are listed.
 * @source `data/field/flares.json`
 *
 * @example
 * ```ts
 * flareFacts(millimetre(9.52)).overlap; // → { minimum: 34, maximum: 39.9 }
 * ```
 */
export function flareFacts(outerDiameter: Length): FlareFacts {
  const check = new InputCheck();
  check.positive("outerDiameter", outerDiameter);
  check.finish();
  const flare = data.flares.find((each) => isSameDiameter(each.outerDiameter, outerDiameter));
  if (flare === undefined) {
    const sizes = data.flares.map((each) => shown(each.outerDiameter * 1000)).join(", ");
    throw new InputError([
      { path: "outerDiameter", value: outerDiameter, expected: `a listed size: ${sizes} mm` },
    ]);
  }
  // JSON knows no literal types; tests/field/line/flare.test.ts checks every entry.
  const printed = data.torques.filter((each) =>
    isSameDiameter(each.outerDiameter, outerDiameter),
  ) as readonly PrintedTorque[];
  const lows = printed.map(({ minimum }) => minimum);
  const highs = printed.map(({ maximum }) => maximum);
  const overlap = { minimum: Math.max(...lows), maximum: Math.min(...highs) };
  return {
    printed,
    overlap: overlap.minimum <= overlap.maximum ? overlap : undefined,
    union: { minimum: Math.min(...lows), maximum: Math.max(...highs) },
    flareDiameter: flare.flareDiameter,
    nut: flare.nut,
    note: "The manual of the unit wins; printed lists differ. Tube to EN 12735-1 or ASTM B280 only.",
  };
}

/** As {@link flareFacts}, without throwing. */
export function tryFlareFacts(outerDiameter: Length): Outcome<FlareFacts> {
  return attempt(() => flareFacts(outerDiameter));
}

/**
 * Holds the torque of a joint against the range of the manual, or against what the printed lists have in common, with the
 * error of the wrench as guard band. Without a manual nothing fails that any printed list allows.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a size that is not listed, or one whose
 *   lists have nothing in common.
 * @source range: the caller's manual or `data/field/flares.json`; JCGM 106:2012 for the decision (recalled)
 *
 * @example
 * ```ts
 * checkTorque({ applied: newtonMetre(38), wrenchPercent: 4, by: { manual: { minimum: 34, maximum: 42 } } }).verdict; // → "pass"
 * ```
 */
export function checkTorque(joint: TightenedJoint): TorqueResult {
  requireObject("", joint, "a torque and what it is held against");
  const { applied, wrenchPercent, by } = joint;
  const check = new InputCheck();
  check.positive("applied", applied);
  check.positive("wrenchPercent", wrenchPercent);
  const manual = typeof by === "object" && by !== null && "manual" in by ? by.manual : undefined;
  if (manual !== undefined) {
    check.positive("by.manual.maximum", manual?.maximum);
    if (check.positive("by.manual.minimum", manual?.minimum)) {
      check.require(
        !(manual.minimum > manual.maximum),
        "by.manual.minimum",
        manual.minimum,
        `not above the maximum, ${manual.maximum} N m`,
      );
    }
  } else {
    check.require(
      typeof by === "object" && by !== null && "outerDiameter" in by,
      "by",
      by,
      "the range of the manual, or the outer diameter of the tube",
    );
  }
  check.finish();
  const range = manual ?? commonRange((by as { outerDiameter: Length }).outerDiameter);
  const U = COVERAGE_FACTOR * halfWidthUncertainty((wrenchPercent / 100) * applied);
  const decision = decide(applied, U, range, { quantity: "torque", unit: "N m" });
  const warnings: Warning<"no-manual" | "range-below-wrench">[] = [];
  if (manual === undefined) {
    warnings.push({
      code: "no-manual",
      message: "held against what printed lists have in common; the manual of the unit wins",
    });
  }
  if (!decision.canPass) {
    warnings.push({
      code: "range-below-wrench",
      message: `± ${shown(wrenchPercent)} % of the wrench is wider than the range itself`,
    });
  }
  return { ...decision, verdict: tempered(decision, by), range, warnings };
}

/** As {@link checkTorque}, without throwing. */
export function tryCheckTorque(joint: TightenedJoint): Outcome<TorqueResult> {
  return attempt(() => checkTorque(joint));
}

/** What a tube may stand out of the flaring block, by tool. */
export function flareProtrusions(): readonly {
  readonly tool: string;
  readonly minimum: Length;
  readonly maximum: Length;
  readonly source: string;
  readonly status: string;
}[] {
  return data.protrusion;
}

/** What one printed list allows and another does not is for the manual to say: no failure inside what any of them allows. */
function tempered({ verdict, value, expandedUncertainty: U }: Decision, by: TightenedJoint["by"]): Verdict {
  if (verdict !== "fail" || "manual" in by) return verdict;
  const { minimum, maximum } = flareFacts(by.outerDiameter).union;
  return value < minimum - U || value > maximum + U ? "fail" : "inconclusive";
}

function commonRange(outerDiameter: Length): TorqueRange {
  const { overlap } = flareFacts(outerDiameter);
  if (overlap !== undefined) return overlap;
  throw new InputError([
    {
      path: "by.outerDiameter",
      value: outerDiameter,
      expected: "a size whose printed torques have a range in common; here only the manual can say",
    },
  ]);
}
