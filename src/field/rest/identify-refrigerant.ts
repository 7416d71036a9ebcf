import { InputCheck } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import { attempt, type Outcome, type PressureDifference, requireObject } from "../../units/index.js";
import { shownKilopascalWithUncertainty } from "../measurement/shown.js";
import { checkStandingPressure, type StandingReading } from "./standing-check.js";

/** A pressure at rest, with liquid inside, of a refrigerant that is not known. */
export interface UnknownRefrigerant extends Omit<StandingReading, "refrigerant" | "contents"> {
  /** What it may be. */
  readonly candidates: readonly Refrigerant[];
}

/** How well one of them explains the pressure. */
export interface CandidateFit {
  /** The refrigerant. */
  readonly refrigerant: Refrigerant;
  /** Pressure read less pressure expected, Pa. */
  readonly deviation: PressureDifference;
  /** Its expanded uncertainty, k = 2, Pa. */
  readonly expandedUncertainty: PressureDifference;
  /** Whether the deviation lies within it. */
  readonly fits: boolean;
  /** The numbers that decided. */
  readonly because: string;
}

/** What the pressure may mean. */
export interface RefrigerantIdentification {
  /** One fits, several cannot be told apart, or none fits. */
  readonly state: "one-fits" | "tie" | "none-fits";
  /** All candidates, the best first. */
  readonly candidates: readonly CandidateFit[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
}

/**
 * Which of some refrigerants explains a pressure at rest? It can only be told what it is not: R-32 and R-410A differ by
 * 2 % at room temperature, less than many gauges see.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source saturation pressures of the equations of state; JCGM 100:2008 (GUM) for the uncertainty
 */
export function identifyRefrigerant(reading: UnknownRefrigerant): RefrigerantIdentification {
  requireObject("", reading, "a reading at rest and the candidates");
  const { candidates, ...rest } = reading;
  const check = new InputCheck();
  const isList = Array.isArray(candidates) && candidates.length > 0;
  if (check.require(isList, "candidates", candidates, "one refrigerant or more")) {
    for (const [index, candidate] of candidates.entries()) {
      const isOne = typeof candidate === "object" && candidate !== null;
      check.require(isOne, `candidates[${index}]`, candidate, "a refrigerant");
    }
  }
  check.finish();
  const fits = candidates.map((refrigerant) => fitOf(refrigerant, rest));
  const sorted = [...fits].sort((one, other) => scoreOf(one) - scoreOf(other));
  const count = fits.filter((each) => each.fits).length;
  return {
    state: count === 0 ? "none-fits" : count === 1 ? "one-fits" : "tie",
    candidates: sorted,
    assumptions: ["There is liquid in the system, no other gas, and all parts have one temperature."],
  };
}

/** As {@link identifyRefrigerant}, without throwing. */
export function tryIdentifyRefrigerant(reading: UnknownRefrigerant): Outcome<RefrigerantIdentification> {
  return attempt(() => identifyRefrigerant(reading));
}

function fitOf(refrigerant: Refrigerant, rest: Omit<UnknownRefrigerant, "candidates">): CandidateFit {
  const { deviation, expandedUncertainty, state } = checkStandingPressure({
    ...rest,
    refrigerant,
    contents: { kind: "liquid-present" },
  });
  return {
    refrigerant,
    deviation,
    expandedUncertainty,
    fits: state === "agrees",
    because: `${refrigerant.designation}: ${shownKilopascalWithUncertainty(deviation, expandedUncertainty)} off (k = 2)`,
  };
}

/** Deviation in units of its own uncertainty: what the instruments leave open differs from one to the next. */
function scoreOf({ deviation, expandedUncertainty }: CandidateFit): number {
  return Math.abs(deviation) / expandedUncertainty;
}
