import data from "../../../data/field/leak-rate.json" with { type: "json" };
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  InputCheck,
  type Mass,
  type Outcome,
  requireObject,
  type Temperature,
} from "../../units/index.js";
import type { Verdict } from "../measurement/decision.js";
import { shownUncertainty } from "../measurement/shown.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { leakMassFlow, leakThroughput } from "./leak-rate.js";

/** A year of 365.25 days, s. */
const YEAR = 31557600;

/** Ways to look for a leak, and two limits that are asked for. */
export const LEAK_METHODS = [
  "electronic-detector",
  "bubbles",
  "standard-for-site-joints",
  "hermetically-sealed",
] as const;

/** One of them. */
export type LeakMethod = (typeof LEAK_METHODS)[number];

/** A leak and the way in which it is looked for. */
export interface LeakDetection {
  /** What leaks. */
  readonly refrigerant: Refrigerant;
  /** How much of it in a year, kg, above 0. */
  readonly lossPerYear: Mass;
  /** Temperature of the gas that leaks, K. */
  readonly temperature: Temperature;
  /** How it is looked for. */
  readonly method: LeakMethod;
}

/** Whether a leak can be seen. */
export interface LeakDetectionResult {
  /** `pass` where the method sees it for sure, `fail` where it cannot, `inconclusive` in between. */
  readonly verdict: Verdict;
  /** Leak that the method sees at its best, kg in a year. */
  readonly seenAtBest: Mass;
  /** Leak that it sees for sure, kg in a year. */
  readonly seenForSure: Mass;
  /** The leak as throughput, Pa m3/s. */
  readonly throughput: number;
  /** Where the sensitivity is from. */
  readonly source: string;
  /** The numbers that decided. */
  readonly because: string;
}

/** Mass in a year of a mass flow of kg/s; the year has 365.25 days. */
export function lossPerYear(massFlow: number): Mass {
  const check = new InputCheck();
  check.notNegative("massFlow", massFlow);
  check.finish();
  return massFlow * YEAR;
}

/** Mass flow, kg/s, of a loss in a year: the inverse of {@link lossPerYear}. */
export function massFlowOfLoss(perYear: Mass): number {
  const check = new InputCheck();
  check.notNegative("perYear", perYear);
  check.finish();
  return perYear / YEAR;
}

/**
 * Can a method see a leak of that size?
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source `data/field/leak-rate.json`
 */
export function canDetectLeak(leak: LeakDetection): LeakDetectionResult {
  requireObject("", leak, "a leak and the way in which it is looked for");
  const { refrigerant, lossPerYear: loss, temperature, method } = leak;
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", refrigerant);
  check.positive("lossPerYear", loss);
  check.positive("temperature", temperature);
  check.oneOf("method", method, LEAK_METHODS);
  check.finish();
  const { molarMass } = refrigerant;
  const asLoss = (throughput: number): Mass => lossPerYear(leakMassFlow(throughput, molarMass, temperature));
  const { seenPerYear, seenThroughput, source } = data.methods.find(({ name }) => name === method)!;
  const seenAtBest = seenPerYear ?? asLoss(seenThroughput!.best);
  const seenForSure = seenPerYear ?? asLoss(seenThroughput!.worst);
  const throughput = leakThroughput(massFlowOfLoss(loss), molarMass, temperature);
  const verdict = loss >= seenForSure ? "pass" : loss < seenAtBest ? "fail" : "inconclusive";
  const grams = (mass: Mass): string => `${shownUncertainty(mass * 1000)} g`;
  return {
    verdict,
    seenAtBest,
    seenForSure,
    throughput,
    source,
    because:
      `${grams(loss)} of ${refrigerant.designation} a year are ${shownUncertainty(throughput)} Pa m³/s; ${method} sees ` +
      (seenAtBest === seenForSure
        ? `${grams(seenForSure)} a year`
        : `${grams(seenAtBest)} a year at best, ${grams(seenForSure)} for sure`),
  };
}

/** As {@link canDetectLeak}, without throwing. */
export function tryCanDetectLeak(leak: LeakDetection): Outcome<LeakDetectionResult> {
  return attempt(() => canDetectLeak(leak));
}
