import data from "../../../data/field/rest.json" with { type: "json" };
import {
  attempt,
  type GaugePressure,
  InputCheck,
  type Outcome,
  type PressureDifference,
  requireObject,
} from "../../units/index.js";
import type { Verdict } from "../measurement/decision.js";
import { gaugeUncertainty, type PressureGauge } from "../measurement/instrument.js";
import { checkGauge, checkReading } from "../measurement/instrument-checks.js";
import { shownKilopascal, shownKilopascalWithUncertainty } from "../measurement/shown.js";
import { combineUncertainties, type Uncertainty } from "../measurement/uncertainty.js";
import { type StandingPressureResult, type StandingSystem, standingPressure } from "./standing-pressure.js";

/** A system at rest and what a gauge on it shows. */
export interface StandingReading extends StandingSystem {
  /** What the gauge shows, Pa gauge. */
  readonly pressure: GaugePressure;
  /** The gauge. */
  readonly gauge: PressureGauge;
}

/** What a reading at rest says. */
export interface StandingCheckResult extends Uncertainty {
  /** `pass` when reading and expectation agree within their uncertainty. */
  readonly verdict: Verdict;
  /** `agrees`, or on which side the reading lies. */
  readonly state: "agrees" | "above" | "below";
  /** Reading less expectation, Pa; its uncertainty is that of the result. */
  readonly deviation: PressureDifference;
  /** What was expected. */
  readonly expected: StandingPressureResult;
  /** The rule and the numbers that decided. */
  readonly because: string;
}

type Meaning = Readonly<Record<StandingCheckResult["state"], string>>;

/** What each side may mean where liquid sets the pressure. */
const meaning: Meaning = {
  agrees: "agrees with the refrigerant; it says nothing about the amount",
  above:
    "more than the refrigerant can make: other gas inside, another refrigerant, or parts not at one temperature",
  below:
    "less than with liquid present: hardly any refrigerant, another one, or parts not at one temperature",
};

/** And where the amount sets it. */
const meaningOfAmount: Meaning = {
  agrees: "agrees with the refrigerant and the amount",
  above:
    "more than this amount makes: more refrigerant, other gas inside, another refrigerant, or parts not at one temperature",
  below:
    "less than this amount makes: refrigerant was lost, it is another one, or parts are not at one temperature",
};

/**
 * Holds the reading of a system at rest against what its refrigerant should show.
 *
 * D = p_read − p_expected with U² = 2² (u_gauge² + u_expected²). |D| ≤ U: the two agree (pass). Otherwise something
 * does not fit (fail), and the side says what to look for. A gauge and thermometer that together leave more than a
 * tenth of the pressure open tell nothing (inconclusive).
 *
 * @throws `malformed-input`, all problems at once; `out-of-range` beyond the equation of state.
 * @source definition; JCGM 100:2008 (GUM) for the uncertainty; the tenth: our own rule, `data/field/rest.json`
 */
export function checkStandingPressure(reading: StandingReading): StandingCheckResult {
  requireObject("", reading, "a reading at rest");
  const check = new InputCheck();
  checkGauge(check, "gauge", reading.gauge);
  check.finish();
  checkReading(check, "pressure", reading.pressure, reading.gauge);
  check.finish();
  const expected = standingPressure(reading);
  const ofGauge = gaugeUncertainty(reading.gauge, reading.pressure);
  const uncertainty = combineUncertainties([
    {
      input: "gauge",
      standardUncertainty: ofGauge.standardUncertainty,
      unit: "Pa",
      sensitivity: 1,
      because: ofGauge.because,
    },
    {
      input: "expectation",
      standardUncertainty: expected.standardUncertainty,
      unit: "Pa",
      sensitivity: -1,
      because: expected.because,
    },
  ]);
  const deviation = reading.pressure - expected.gaugePressure;
  const U = uncertainty.expandedUncertainty;
  const state = Math.abs(deviation) <= U ? "agrees" : deviation > 0 ? "above" : "below";
  const blind = U > data.blind.fraction * expected.pressure;
  const words = expected.state === "liquid-present" ? meaning : meaningOfAmount;
  return {
    ...uncertainty,
    verdict: state !== "agrees" ? "fail" : blind ? "inconclusive" : "pass",
    state,
    deviation,
    expected,
    because:
      `read ${shownKilopascal(reading.pressure)}, expected ${shownKilopascal(expected.gaugePressure)}: deviation ` +
      `${shownKilopascalWithUncertainty(deviation, U)} (k = 2) ` +
      (state === "agrees" && blind ? "is less than these instruments can tell" : words[state]),
  };
}

/** As {@link checkStandingPressure}, without throwing. */
export function tryCheckStandingPressure(reading: StandingReading): Outcome<StandingCheckResult> {
  return attempt(() => checkStandingPressure(reading));
}
