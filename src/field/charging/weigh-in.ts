import { attempt, InputCheck, type Mass, type Outcome, requireObject } from "../../units/index.js";
import { type Decision, decide } from "../measurement/decision.js";
import { halfWidthUncertainty, resolutionUncertainty } from "../measurement/instrument.js";
import { combineUncertainties, type Uncertainty } from "../measurement/uncertainty.js";

/** Refrigerant weighed out of a cylinder into a system. */
export interface WeighIn {
  /** What the scale showed with the cylinder on it, before, kg. */
  readonly before: Mass;
  /** And after, kg. */
  readonly after: Mass;
  /** The scale: half-width of its error, and the smallest step it shows, kg. */
  readonly scale: { readonly halfWidth: Mass; readonly resolution?: Mass };
  /** Refrigerant that left the cylinder and stayed in the hose, kg; 0 where the hose was emptied into the system. */
  readonly hoseHoldUp: Mass;
  /** What was to be weighed in, kg. */
  readonly wanted: Mass;
  /** How far from it may be, kg, by the manual. */
  readonly tolerance: Mass;
}

/** What was weighed in. */
export interface WeighInResult extends Uncertainty {
  /** Mass that came into the system, kg; its uncertainty is that of the result. */
  readonly mass: Mass;
  /** The mass against what was wanted, in g. */
  readonly decision: Decision;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
}

/**
 * Mass that two readings of the scale show to have come into the system, held against what was wanted.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a cylinder that became heavier.
 * @source difference of two readings; JCGM 100:2008 (GUM)
 *
 * @example
 * ```ts
 * weighIn({
 *   before: 9.412,
 *   after: 9.286,
 *   scale: { halfWidth: gram(5) },
 *   hoseHoldUp: 0,
 *   wanted: gram(127.5),
 *   tolerance: gram(15),
 * }).decision.verdict; // → "pass"
 * ```
 */
export function weighIn(weighed: WeighIn): WeighInResult {
  requireObject("", weighed, "two readings of a scale and what was wanted");
  const { before, after, scale, hoseHoldUp, wanted, tolerance } = weighed;
  const check = new InputCheck();
  check.positive("scale.halfWidth", scale?.halfWidth);
  if (scale?.resolution !== undefined) check.positive("scale.resolution", scale.resolution);
  check.notNegative("hoseHoldUp", hoseHoldUp);
  check.notNegative("wanted", wanted);
  check.positive("tolerance", tolerance);
  if (check.positive("before", before) && check.positive("after", after)) {
    const left = before - after;
    check.require(left >= 0, "after", after, `at most what the scale showed before, ${before} kg`);
    if (hoseHoldUp > 0) {
      check.require(
        hoseHoldUp <= left,
        "hoseHoldUp",
        hoseHoldUp,
        `at most what left the cylinder, ${left} kg`,
      );
    }
  }
  check.finish();
  const mass = before - after - hoseHoldUp;
  const uncertainty = combineUncertainties([
    {
      input: "scale",
      standardUncertainty: Math.SQRT2 * halfWidthUncertainty(scale.halfWidth),
      unit: "kg",
      sensitivity: 1,
      because: "read before and after, its error taken as independent at both",
    },
    {
      input: "scale-resolution",
      standardUncertainty: Math.SQRT2 * resolutionUncertainty(scale.resolution ?? 0),
      unit: "kg",
      sensitivity: 1,
      because: "read twice",
    },
  ]);
  const decision = decide(
    mass * 1000,
    uncertainty.expandedUncertainty * 1000,
    { minimum: (wanted - tolerance) * 1000, maximum: (wanted + tolerance) * 1000 },
    { quantity: "weighed in", unit: "g" },
  );
  const assumptions = [
    "The scale was read before and after, with its error independent at both readings.",
    ...(hoseHoldUp > 0 ? ["What stayed in the hose is taken as exact."] : []),
    ...(scale.resolution === undefined ? ["The steps of the scale are within its stated error."] : []),
  ];
  return { ...uncertainty, mass, decision, assumptions };
}

/** As {@link weighIn}, without throwing. */
export function tryWeighIn(weighed: WeighIn): Outcome<WeighInResult> {
  return attempt(() => weighIn(weighed));
}
