import data from "../../../data/field/evacuation.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import {
  attempt,
  InputCheck,
  type LocalAtmosphere,
  type Outcome,
  type Pressure,
  type PressureDifference,
  requireObject,
  type Temperature,
} from "../../units/index.js";
import { type Decision, decide, type Verdict } from "../measurement/decision.js";
import { gaugeUncertainty, type PressureGauge } from "../measurement/instrument.js";
import { checkGauge, checkReading, checkVacuumGauge } from "../measurement/instrument-checks.js";
import { shown, shownCelsius } from "../measurement/shown.js";
import { checkAtmosphere } from "../measurement/site.js";
import { COVERAGE_FACTOR } from "../measurement/uncertainty.js";
import { waterBoilingTemperature, waterVapourPressure } from "./water-vapour.js";

/** Whether a gauge is good enough for a vacuum limit. */
export interface VacuumProof {
  /** True when the expanded uncertainty at the limit is below half of the limit. */
  readonly canProve: boolean;
  /** Limit, Pa absolute. */
  readonly limit: Pressure;
  /** Expanded uncertainty of the absolute pressure at the limit, k = 2, Pa. */
  readonly expandedUncertainty: PressureDifference;
  /** The rule and the numbers that decided. */
  readonly because: string;
}

/** A gauge and the vacuum that it shall prove. */
export interface VacuumProofQuestion {
  /** Pressure that must not be exceeded, Pa absolute. */
  readonly limit: Pressure;
  /** The gauge. */
  readonly gauge: PressureGauge;
  /** Air pressure of the site, for a gauge that reads relative to it; left out for an absolute vacuum gauge. */
  readonly atmosphere?: LocalAtmosphere;
}

/** A reading of an absolute vacuum gauge on a system that is being evacuated. */
export interface VacuumReading {
  /** What the gauge shows, Pa absolute. */
  readonly pressure: Pressure;
  /** The absolute vacuum gauge used. */
  readonly gauge: PressureGauge;
  /** Limit to reach, Pa absolute, by the manual or the code that is followed; there is no default. */
  readonly limit: Pressure;
  /** Temperature of the coldest part of the system, K: where water stays longest. */
  readonly coldestTemperature: Temperature;
}

/** Codes of the warnings of a vacuum reading. */
export type VacuumWarningCode = "gauge-cannot-prove" | "water-may-stay" | "water-leaves-slowly";

/** What a vacuum reading says. */
export interface VacuumResult {
  /** `pass` only if the limit is met for sure, with a gauge that can prove it, and water leaves the coldest part. */
  readonly verdict: Verdict;
  /** The reading against the limit. */
  readonly decision: Decision;
  /** Whether the gauge can prove the limit. */
  readonly proof: VacuumProof;
  /** Parts warmer than this lose their water at this pressure, K. */
  readonly waterLeavesAbove: Temperature;
  /** Vapour pressure of water or ice at the coldest part, Pa. */
  readonly waterVapourPressure: Pressure;
  /** Pressure over that vapour pressure: below 1 water leaves the coldest part, below 0.5 with a margin. */
  readonly drynessRatio: number;
  /** What is odd. */
  readonly warnings: readonly Warning<VacuumWarningCode>[];
  /** The numbers that decided. */
  readonly because: string;
}

/**
 * Can this gauge prove this vacuum? Only if U(limit) = 2 √(u_gauge² + u_site²) is below half of the limit.
 *
 * A manifold gauge cannot: 1 % of its vacuum scale is 1 kPa, 15 times a limit of 66.7 Pa, and the weather alone moves
 * its zero by as much.
 *
 * @param question - Limit (Pa absolute), gauge, and for a gauge relative to the air the site.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source our own rule, `data/field/evacuation.json`; JCGM 100:2008 (GUM) for the uncertainty
 */
export function canProveVacuum(question: VacuumProofQuestion): VacuumProof {
  requireObject("", question, "a limit and a gauge");
  const { limit, gauge, atmosphere } = question;
  const check = new InputCheck();
  check.positive("limit", limit);
  checkGauge(check, "gauge", gauge);
  if (atmosphere !== undefined) checkAtmosphere(check, "atmosphere", atmosphere);
  const kind = gauge?.accuracy?.kind;
  // Such a scale is in gauge pressure: without the air pressure it says nothing about a vacuum.
  check.require(
    atmosphere !== undefined || (kind !== "accuracy-class" && kind !== "percent-of-full-scale"),
    "atmosphere",
    atmosphere,
    "the air pressure of the site: the scale of this gauge is relative to it",
  );
  check.finish();
  const reading = limit - (atmosphere?.pressure ?? 0);
  checkReading(check, "limit", reading, gauge);
  check.finish();
  const ofGauge = gaugeUncertainty(gauge, reading);
  const expandedUncertainty =
    COVERAGE_FACTOR * Math.hypot(ofGauge.standardUncertainty, atmosphere?.standardUncertainty ?? 0);
  const allowed = data.proof.fractionOfLimit * limit;
  const canProve = expandedUncertainty < allowed;
  const site = atmosphere === undefined ? "" : "; air pressure counted";
  return {
    canProve,
    limit,
    expandedUncertainty,
    because:
      `± ${shown(expandedUncertainty)} Pa (k = 2) at ${shown(limit)} Pa is ${canProve ? "below" : "not below"} half ` +
      `of the limit (${ofGauge.because}${site})`,
  };
}

/** As {@link canProveVacuum}, without throwing. */
export function tryCanProveVacuum(question: VacuumProofQuestion): Outcome<VacuumProof> {
  return attempt(() => canProveVacuum(question));
}

/**
 * Judges a vacuum: against the limit, and against the vapour pressure of water at the coldest part. A limit that is met
 * while water or ice can stay in the coldest part is `inconclusive`, as is one too close to tell.
 *
 * @param reading - Absolute pressure (Pa), gauge, limit and the coldest temperature (K).
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws {@link OutOfRangeError} `out-of-range` for a coldest part below 50 K or above 647.096 K.
 * @source limit: the caller's; water: IAPWS R7-97(2012) and R14-08(2011); margin of one half: our own rule
 *
 * @example
 * ```ts
 * const { verdict, waterLeavesAbove } = evaluateVacuum({
 *   pressure: micron(400),
 *   gauge: { accuracy: { kind: "percent-of-reading", percent: 10 }, resolution: micronDifference(1) },
 *   limit: micron(500),
 *   coldestTemperature: celsius(15),
 * });
 * verdict; // → "pass"
 * waterLeavesAbove; // → 246.45 K
 * ```
 */
export function evaluateVacuum(reading: VacuumReading): VacuumResult {
  requireObject("", reading, "a vacuum reading");
  const { pressure, gauge, limit, coldestTemperature } = reading;
  const check = new InputCheck();
  check.positive("pressure", pressure);
  check.positive("limit", limit);
  check.positive("coldestTemperature", coldestTemperature);
  checkVacuumGauge(check, "gauge", gauge);
  if (gauge?.accuracy !== undefined) checkReading(check, "pressure", pressure, gauge);
  check.finish();
  const proof = canProveVacuum({ limit, gauge });
  const U = COVERAGE_FACTOR * gaugeUncertainty(gauge, pressure).standardUncertainty;
  const decision = decide(pressure, U, { maximum: limit }, { quantity: "pressure", unit: "Pa" });
  const waterPressure = waterVapourPressure(coldestTemperature);
  const waterLeavesAbove = waterBoilingTemperature(pressure);
  const drynessRatio = pressure / waterPressure;
  // Water leaves for sure only if the reading is below its vapour pressure by more than it may be off.
  const sureRatio = (pressure + U) / waterPressure;
  const sure = proof.canProve && sureRatio < 1;
  const verdict = decision.verdict === "pass" && !sure ? "inconclusive" : decision.verdict;
  return {
    verdict,
    decision,
    proof,
    waterLeavesAbove,
    waterVapourPressure: waterPressure,
    drynessRatio,
    warnings: warningsOf(proof, drynessRatio, sureRatio),
    because:
      `${decision.because}; ${proof.canProve ? "" : `${proof.because}; `}water leaves parts warmer than ` +
      `${shownCelsius(waterLeavesAbove)}, the coldest is at ${shownCelsius(coldestTemperature)}`,
  };
}

/** As {@link evaluateVacuum}, without throwing. */
export function tryEvaluateVacuum(reading: VacuumReading): Outcome<VacuumResult> {
  return attempt(() => evaluateVacuum(reading));
}

function warningsOf(proof: VacuumProof, ratio: number, sureRatio: number): Warning<VacuumWarningCode>[] {
  const warnings: Warning<VacuumWarningCode>[] = [];
  if (!proof.canProve) {
    warnings.push({
      code: "gauge-cannot-prove",
      message: "this gauge is too coarse for the limit: use an absolute vacuum gauge",
    });
  }
  if (sureRatio >= 1) {
    warnings.push({
      code: "water-may-stay",
      message:
        ratio >= 1
          ? "the pressure is above the vapour pressure of water at the coldest part: water or ice stays there"
          : "the pressure is too close to the vapour pressure of water at the coldest part to tell that water leaves it",
    });
  } else if (ratio > data.dryness.fractionOfSaturation) {
    warnings.push({
      code: "water-leaves-slowly",
      message:
        "the pressure is above half of the vapour pressure of water at the coldest part: it leaves slowly",
    });
  }
  return warnings;
}
