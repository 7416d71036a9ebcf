import { type Caution, type SafetyClass, tryFlammabilityFacts } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  InputCheck,
  type Mass,
  type Outcome,
  requireObject,
  type Temperature,
  type Volume,
} from "../../units/index.js";
import { type FieldCautionCode, fieldCautions } from "../cautions.js";
import type { Verdict } from "../measurement/decision.js";
import { shown } from "../measurement/shown.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { fractionsOf, type LeakState, scaled, simulateLeak, sum } from "./simulate-leak.js";
import { checkLeaving, checkLostFraction, type Leaving } from "./situation.js";
import { type CompositionCheck, checkComposition } from "./tolerance.js";

/** A system that has lost refrigerant and is to be filled up again. */
export interface TopUpSituation {
  /** The refrigerant it was charged with, and is to be filled up with. */
  readonly refrigerant: Refrigerant;
  /** Full charge, kg. */
  readonly charge: Mass;
  /** Volume inside, m3. */
  readonly volume: Volume;
  /** At which it stood while it leaked, K. */
  readonly temperature: Temperature;
  /** How much was lost, as a fraction of the full charge. */
  readonly lostFraction: number;
  /** What left it; where nobody knows, both ends are computed: all vapour, all liquid. */
  readonly leaving: Leaving | "unknown";
}

/** One way in which the refrigerant may have been lost, and what filling up makes of it. */
export interface TopUpCase {
  /** What left. */
  readonly leaving: Leaving;
  /** What is left before filling up. */
  readonly left: LeakState;
  /** Mass fractions by designation after filling up to the full charge. */
  readonly resulting: Readonly<Record<string, number>>;
  /** The result held against the designation. */
  readonly check: CompositionCheck;
}

/** Whether a system may be topped up. */
export interface TopUpResult {
  /** `pass` if every case stays within the tolerances, `fail` if none does, `inconclusive` otherwise. */
  readonly verdict: Verdict;
  /** Each case that was computed. */
  readonly cases: readonly TopUpCase[];
  /** Mass to add, kg. */
  readonly added: Mass;
  /** The rule and the numbers that decided. */
  readonly because: string;
  /** What to do. */
  readonly advice: string;
  /** What was taken for granted. */
  readonly assumptions: readonly string[];
  /** Cautions to show with it. */
  readonly cautions: readonly Caution<FieldCautionCode>[];
}

/**
 * May a system that has leaked be topped up, or has its blend shifted too far?
 *
 * The leak is simulated from the full charge, the system filled up with refrigerant of nominal composition, and the result
 * held against the composition tolerances of the designation. A pure refrigerant cannot shift.
 *
 * @throws As {@link simulateLeak}.
 * @source w = (m_left w_left + m_added w_nominal)/(m_left + m_added), component by component; tolerances of ISO 817 /
 *   ASHRAE 34. That a leak is found and repaired first is common practice and in most places law, no source.
 */
export function topUp(situation: TopUpSituation): TopUpResult {
  requireObject("", situation, "a top-up");
  const { refrigerant, charge, volume, temperature, lostFraction, leaving } = situation;
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", refrigerant);
  check.positive("charge", charge);
  check.positive("volume", volume);
  check.positive("temperature", temperature);
  checkLostFraction(check, lostFraction);
  if (leaving !== "unknown") checkLeaving(check, "leaving", leaving);
  check.finish();
  const added = lostFraction * charge;
  const ways: readonly Leaving[] = leaving === "unknown" ? ["vapour", "liquid"] : [leaving];
  const results = ways.map((way) => ({
    way,
    leak: simulateLeak({ refrigerant, charge, volume, temperature, lostFraction, leaving: way }),
  }));
  const cases = results.map(({ way, leak }): TopUpCase => {
    const left = leak.states[leak.states.length - 1]!;
    const filled = sum(
      scaled(left.composition, left.remainingMass),
      scaled(refrigerant.composition, added),
      1,
    );
    const resulting = fractionsOf(filled);
    return {
      leaving: way,
      left,
      resulting,
      check: checkComposition(refrigerant, resulting),
    };
  });
  const verdict = verdictOf(cases.map((each) => each.check.verdict));
  return {
    verdict,
    cases,
    added,
    because: explain(refrigerant, cases),
    advice: adviceFor(verdict, refrigerant),
    assumptions: [
      ...results[0]!.leak.assumptions,
      "The charge had its nominal composition before it leaked, and so has what is added.",
      "It is filled up from a cylinder that stands so that liquid leaves it.",
    ],
    cautions: cautionsFor(classOf(refrigerant)),
  };
}

/** As {@link topUp}, without throwing. */
export function tryTopUp(situation: TopUpSituation): Outcome<TopUpResult> {
  return attempt(() => topUp(situation));
}

/** Cases stand for what may have happened: only where all agree is it sure. */
function verdictOf(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.every((verdict) => verdict === "pass")) return "pass";
  return verdicts.every((verdict) => verdict === "fail") ? "fail" : "inconclusive";
}

function explain(refrigerant: Refrigerant, cases: readonly TopUpCase[]): string {
  if (refrigerant.blend === undefined)
    return `${refrigerant.designation} is one substance: a leak cannot change it`;
  return cases.map(({ leaving, check }) => `${wordsFor(leaving)} lost: ${check.because}`).join("; ");
}

function wordsFor(leaving: Leaving): string {
  if (leaving === "vapour" || leaving === "liquid") return leaving;
  return `refrigerant of quality ${shown(leaving.quality)}`;
}

function adviceFor(verdict: Verdict, { designation, blend }: Refrigerant): string {
  const first = "Find and repair the leak first.";
  if (verdict === "fail") {
    return `${first} Do not top up: recover what is left, evacuate, and weigh in a full charge of new ${designation}.`;
  }
  if (verdict === "inconclusive") {
    return (
      `${first} Topping up may leave a composition outside the designation: unless the manual allows it, recover what ` +
      `is left, evacuate, and weigh in a full charge of new ${designation}.`
    );
  }
  return blend === undefined
    ? `${first} Then it may be topped up by weight, as the manual says.`
    : `${first} Then it may be topped up by weight with liquid, where the manual allows it.`;
}

/** Those of charging, and of the recovery that it may come to. */
function cautionsFor(safetyClass: SafetyClass | undefined): readonly Caution<FieldCautionCode>[] {
  const charging = fieldCautions("charging", safetyClass);
  const codes = charging.map(({ code }) => code);
  return [...charging, ...fieldCautions("recovery", safetyClass).filter(({ code }) => !codes.includes(code))];
}

function classOf({ designation }: Refrigerant): SafetyClass | undefined {
  const facts = tryFlammabilityFacts(designation);
  return facts.ok ? (facts.value.safetyClass.value ?? undefined) : undefined;
}
