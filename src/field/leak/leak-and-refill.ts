import { type Mixing, VesselSearch } from "../../state/index.js";
import { attempt, type Outcome, type Pressure } from "../../units/index.js";
import { fractionsOf, type LeakState, leakFrom, scaled, sum } from "./simulate-leak.js";
import { checkLeakSituation, type LeakSituation } from "./situation.js";
import { type CompositionCheck, checkComposition } from "./tolerance.js";

/** A leak that is filled up again, several times over. */
export interface LeakAndRefillSituation extends LeakSituation {
  /** How often it leaks and is filled up, from 1 to 50. */
  readonly rounds: number;
}

/** One round. */
export interface RefillRound {
  /** Number of the round, from 1. */
  readonly round: number;
  /** What was in it after the leak, before it was filled up. */
  readonly leaked: LeakState;
  /** Mass fractions by designation after it was filled up. */
  readonly composition: Readonly<Record<string, number>>;
  /** Bubble pressure of that at the temperature of the vessel, Pa. */
  readonly bubblePressure: Pressure;
  /** Its dew pressure, Pa. */
  readonly dewPressure: Pressure;
  /** That composition held against the designation. */
  readonly check: CompositionCheck;
}

/** What comes of leaking and filling up again and again. */
export interface LeakAndRefillResult {
  /** Round after round. */
  readonly rounds: readonly RefillRound[];
  /** The worst balance of any component in any round; see {@link LeakResult}. */
  readonly imbalance: number;
  /** How well the components' mixing is known; undefined for a pure refrigerant. */
  readonly mixing: Mixing | undefined;
}

const mostRounds = 50;

/**
 * What composition results after several rounds of leaking and filling up with nominal refrigerant to the full charge.
 *
 * @throws As {@link simulateLeak}.
 * @source As {@link simulateLeak}; ISO 817 and ASHRAE 34 use such rounds, of leaks of a fifth of the charge, to find the
 *   worst case of fractionation (recalled); this is no such test.
 */
export function leakAndRefill(situation: LeakAndRefillSituation): LeakAndRefillResult {
  checkLeakSituation(situation, "a leak with rounds", (check) => {
    const { rounds } = situation;
    const isCount = Number.isInteger(rounds) && rounds >= 1 && rounds <= mostRounds;
    check.require(isCount, "rounds", rounds, `a whole number from 1 to ${mostRounds}`);
  });
  const { refrigerant, charge, rounds } = situation;
  const nominal = refrigerant.composition;
  const search = new VesselSearch(refrigerant, situation.temperature, situation.volume);
  const done: RefillRound[] = [];
  let imbalance = 0;
  let masses = scaled(nominal, charge);
  for (let round = 1; round <= rounds; round++) {
    const leak = leakFrom(situation, masses);
    imbalance = Math.max(imbalance, leak.imbalance);
    const leaked = leak.states[leak.states.length - 1]!;
    masses = sum(
      scaled(leaked.composition, leaked.remainingMass),
      scaled(nominal, charge - leaked.remainingMass),
      1,
    );
    const composition = fractionsOf(masses);
    const { bubble, dew } = search.boundaryOf(masses);
    done.push({
      round,
      leaked,
      composition,
      bubblePressure: bubble,
      dewPressure: dew,
      check: checkComposition(refrigerant, composition),
    });
  }
  return { rounds: done, imbalance, mixing: refrigerant.mixing };
}

/** As {@link leakAndRefill}, without throwing. */
export function tryLeakAndRefill(situation: LeakAndRefillSituation): Outcome<LeakAndRefillResult> {
  return attempt(() => leakAndRefill(situation));
}
