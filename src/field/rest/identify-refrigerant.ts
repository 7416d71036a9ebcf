import data from "../../../data/field/rest.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  InputCheck,
  type Outcome,
  type Pressure,
  type PressureDifference,
  requireObject,
} from "../../units/index.js";
import type { Verdict } from "../measurement/decision.js";
import { shownCelsius, shownKilopascal, shownKilopascalWithUncertainty } from "../measurement/shown.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { checkRestReading, distanceToSaturation } from "./rest-reading.js";
import type { StandingReading } from "./standing-check.js";

/** A pressure at rest, with liquid inside, of a refrigerant that is not known. */
export interface UnknownRefrigerant extends Omit<StandingReading, "refrigerant" | "contents"> {
  /** What it may be; no two with one designation. Only these are looked at. */
  readonly candidates: readonly Refrigerant[];
}

/** How well one of them explains the pressure. */
export interface CandidateFit {
  /** The refrigerant. */
  readonly refrigerant: Refrigerant;
  /** Dew pressure at the temperature, Pa. */
  readonly dewPressure: Pressure;
  /** Bubble pressure there, Pa: with liquid present it stands somewhere between the two. */
  readonly bubblePressure: Pressure;
  /** How far the reading lies outside of these two, Pa; 0 between them, negative below. */
  readonly deviation: PressureDifference;
  /** Its expanded uncertainty, k = 2, Pa. */
  readonly expandedUncertainty: PressureDifference;
  /** Whether the deviation lies within it. */
  readonly fits: boolean;
  /** The numbers that decided. */
  readonly because: string;
}

/** A candidate about which the pressure says nothing. */
export interface UndecidedCandidate {
  /** The refrigerant. */
  readonly refrigerant: Refrigerant;
  /** Why: above its critical temperature there is no liquid, and any pressure may be. */
  readonly because: string;
}

/** Codes of the warnings of a search for the refrigerant. */
export type IdentifyWarningCode = "cannot-be-told-apart" | "blind";

/** What the pressure may mean. */
export interface RefrigerantIdentification {
  /** `pass` where one is left alone, `fail` where none is, else `inconclusive`. */
  readonly verdict: Verdict;
  /** One fits, several cannot be told apart, none fits, or none fits but some could not be judged. */
  readonly state: "one-fits" | "tie" | "none-fits" | "undecided";
  /** All that could be judged, the best first. Of those that fit none is likelier than another. */
  readonly candidates: readonly CandidateFit[];
  /** Those that could not. */
  readonly undecided: readonly UndecidedCandidate[];
  /** What is odd. */
  readonly warnings: readonly Warning<IdentifyWarningCode>[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers that decided. */
  readonly because: string;
}

/**
 * Which of some refrigerants explains a pressure at rest? Each one whose range from dew to bubble pressure lies within the
 * uncertainty of the reading. It can only be told what it is not: R-32 and R-410A differ by 2 % at room temperature, less
 * than many gauges see.
 *
 * @param reading - Candidates, pressure (Pa gauge), temperature of all parts (K), instruments and site.
 * @returns All candidates ranked by deviation over its uncertainty (k = 2). One that has no liquid at that temperature is
 * undecided, and leaves the verdict `inconclusive`, as instruments do that leave a tenth of the pressure open.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source saturation pressures of the equations of state; JCGM 100:2008 (GUM) for the uncertainty
 *
 * @example
 * ```ts
 * const { state, candidates } = identifyRefrigerant({
 *   candidates: [refrigerant("R-22"), refrigerant("R-410A"), refrigerant("R-32")],
 *   pressure: kilopascalGauge(1580),
 *   gauge: {
 *     accuracy: { kind: "accuracy-class", accuracyClass: 1.6, scaleMinimum: -0.1e6, scaleMaximum: 3.8e6 },
 *   },
 *   temperature: celsius(25),
 *   thermometer: { accuracy: { kind: "half-width", halfWidth: kelvinDifference(0.5) } },
 *   atmosphere: localAtmosphere({ from: "altitude", altitude: 0 }),
 * });
 * state; // → "tie"
 * candidates.filter(({ fits }) => fits).map((each) => each.refrigerant.designation).join(" or "); // → "R-32 or R-410A"
 * ```
 */
export function identifyRefrigerant(reading: UnknownRefrigerant): RefrigerantIdentification {
  examine(reading);
  const judged = reading.candidates.map((candidate) => judge(candidate, reading));
  const candidates = judged
    .flatMap((each) => ("fits" in each ? [each] : []))
    // Equal scores, as of blends whose ranges both hold the reading, stay in the order of the list.
    .sort((one, other) => scoreOf(one) - scoreOf(other));
  const undecided = judged.flatMap((each) => ("fits" in each ? [] : [each]));
  const fitting = candidates.filter(({ fits }) => fits);
  const blind = fitting.some(
    ({ expandedUncertainty, bubblePressure }) => expandedUncertainty > data.blind.fraction * bubblePressure,
  );
  const state =
    fitting.length > 1
      ? "tie"
      : fitting.length === 1
        ? "one-fits"
        : undecided.length > 0
          ? "undecided"
          : "none-fits";
  const isSure = !blind && undecided.length === 0 && state !== "tie";
  return {
    verdict: !isSure ? "inconclusive" : state === "one-fits" ? "pass" : "fail",
    state,
    candidates,
    undecided,
    warnings: warningsOf(fitting, blind),
    assumptions: [
      "There is liquid in the system, no other gas, and all parts have one temperature.",
      "It is one of the refrigerants named, not mixed with another.",
    ],
    because:
      `${shownKilopascal(reading.pressure + reading.atmosphere.pressure)} absolute at ` +
      `${shownCelsius(reading.temperature)}: ${fitting.length === 0 ? "none" : namesOf(fitting)} within the uncertainty` +
      `${undecided.length === 0 ? "" : `; ${namesOf(undecided)} cannot be judged`}`,
  };
}

/** As {@link identifyRefrigerant}, without throwing. */
export function tryIdentifyRefrigerant(reading: UnknownRefrigerant): Outcome<RefrigerantIdentification> {
  return attempt(() => identifyRefrigerant(reading));
}

function judge(refrigerant: Refrigerant, reading: UnknownRefrigerant): CandidateFit | UndecidedCandidate {
  const outcome = attempt(() => ({
    bubble: distanceToSaturation("bubble", refrigerant, reading),
    dew: distanceToSaturation("dew", refrigerant, reading),
  }));
  if (!outcome.ok) return { refrigerant, because: outcome.error.message };
  const { bubble, dew } = outcome.value;
  const isBelow = dew.deviation < 0;
  const { deviation: ofEnd, expandedUncertainty } = isBelow ? dew : bubble;
  const deviation = isBelow || bubble.deviation > 0 ? ofEnd : 0;
  return {
    refrigerant,
    dewPressure: dew.saturationPressure,
    bubblePressure: bubble.saturationPressure,
    deviation,
    expandedUncertainty,
    fits: Math.abs(deviation) <= expandedUncertainty,
    because: `${refrigerant.designation}: ${shownKilopascalWithUncertainty(deviation, expandedUncertainty)} off (k = 2)`,
  };
}

/** Deviation in units of its own uncertainty: what the instruments leave open differs from one to the next. */
function scoreOf({ deviation, expandedUncertainty }: CandidateFit): number {
  const size = Math.abs(deviation);
  return expandedUncertainty > 0 ? size / expandedUncertainty : size;
}

function namesOf(candidates: readonly { readonly refrigerant: Refrigerant }[]): string {
  return candidates.map(({ refrigerant }) => refrigerant.designation).join(", ");
}

function warningsOf(fitting: readonly CandidateFit[], blind: boolean): Warning<IdentifyWarningCode>[] {
  const warnings: Warning<IdentifyWarningCode>[] = [];
  if (fitting.length > 1) {
    const U = Math.max(...fitting.map(({ expandedUncertainty }) => expandedUncertainty));
    warnings.push({
      code: "cannot-be-told-apart",
      message:
        `${namesOf(fitting)} all lie within what this reading leaves open, ± ${shownKilopascal(U)} (k = 2): ` +
        "their order says nothing",
    });
  }
  if (blind) {
    warnings.push({
      code: "blind",
      message: "the uncertainty is more than a tenth of the pressure of a refrigerant that fits",
    });
  }
  return warnings;
}

function examine(reading: UnknownRefrigerant): void {
  requireObject("", reading, "a reading at rest and the candidates");
  const { candidates } = reading;
  const check = new InputCheck();
  const isList = Array.isArray(candidates) && candidates.length > 0;
  if (check.require(isList, "candidates", candidates, "one refrigerant or more")) {
    for (const [index, candidate] of candidates.entries()) {
      const path = `candidates[${index}]`;
      if (!checkRefrigerant(check, path, candidate)) continue;
      const { designation } = candidate;
      const first = candidates.findIndex((each) => each?.designation === designation);
      check.require(first === index, path, designation, "a refrigerant that is not in the list already");
    }
  }
  checkRestReading(check, reading);
  check.finish();
}
