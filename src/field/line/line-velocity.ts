import data from "../../../data/field/piping.json" with { type: "json" };
import {
  attempt,
  InputCheck,
  InputError,
  type Outcome,
  requireObject,
  type Speed,
} from "../../units/index.js";
import { shown } from "../measurement/shown.js";

/** Kinds of lines that have usual velocities. */
export const LINE_KINDS = ["gas", "gas-riser", "condenser-drain", "liquid"] as const;

/** Kind of a line. */
export type LineKind = (typeof LINE_KINDS)[number];

/** A line with its velocity at each load. */
export interface LineVelocity {
  /** Kind of the line. */
  readonly kind: LineKind;
  /** Velocity at each load, m/s: at full capacity, and at the smallest that the compressor runs at. */
  readonly velocities: readonly Speed[];
}

/** Whether velocities are usual. */
export interface LineVelocityResult {
  /** `pass` where all of them are. */
  readonly verdict: "pass" | "fail";
  /** Lowest usual velocity, m/s. */
  readonly minimum: Speed;
  /** Highest usual velocity, m/s. */
  readonly maximum: Speed;
  /** What each velocity is. */
  readonly states: readonly ("too-slow" | "usual" | "too-fast")[];
  /** Where the limits are from. */
  readonly source: string;
  /** The rule and the numbers that decided. */
  readonly because: string;
}

/**
 * Holds the velocities of a line against the usual ones: gas slow enough to be quiet and fast enough to carry oil, the
 * latter at the smallest load too.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source `data/field/piping.json`
 *
 * @example
 * ```ts
 * checkLineVelocity({ kind: "gas-riser", velocities: [9.2, 3.1] }).states; // → ["usual", "too-slow"]
 * ```
 */
export function checkLineVelocity(line: LineVelocity): LineVelocityResult {
  requireObject("", line, "a kind of line and its velocities");
  const { kind, velocities } = line;
  const check = new InputCheck();
  check.oneOf("kind", kind, LINE_KINDS);
  const isList = Array.isArray(velocities) && velocities.length > 0;
  if (check.require(isList, "velocities", velocities, "one velocity or more, m/s")) {
    for (const [index, velocity] of velocities.entries()) check.positive(`velocities[${index}]`, velocity);
  }
  check.finish();
  const limits = data.velocities.find((each) => each.line === kind);
  if (limits === undefined)
    throw new InputError([{ path: "kind", value: kind, expected: "a kind with limits" }]);
  const { minimum, maximum, source } = limits;
  const states = velocities.map((velocity) =>
    velocity < minimum ? "too-slow" : velocity > maximum ? "too-fast" : "usual",
  );
  const verdict = states.every((state) => state === "usual") ? "pass" : "fail";
  const list = velocities.map((velocity, index) => `${shown(velocity)} m/s ${states[index]}`).join(", ");
  return {
    verdict,
    minimum,
    maximum,
    states,
    source,
    because: `${list}; usual in a ${kind} line: ${shown(minimum)} to ${shown(maximum)} m/s`,
  };
}

/** As {@link checkLineVelocity}, without throwing. */
export function tryCheckLineVelocity(line: LineVelocity): Outcome<LineVelocityResult> {
  return attempt(() => checkLineVelocity(line));
}
