import data from "../../../../data/field/leak-search.json" with { type: "json" };
import { formatNumber, InputCheck } from "../../../units/index.js";
import { fieldCautions } from "../../cautions.js";
import { decide, type Verdict } from "../../measurement/decision.js";
import { gaugeUncertainty } from "../../measurement/instrument.js";
import { checkReading } from "../../measurement/instrument-checks.js";
import { COVERAGE_FACTOR } from "../../measurement/uncertainty.js";
import type { JobOpening } from "../form/installation.js";
import { asRead, fact, shownNumber, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordStep } from "../record/record.js";
import { stepTitles } from "../what-next.js";
import type { JobContext } from "./context.js";

/** Were the joints searched, with a method fine enough and enough pressure behind them? */
export function openingStep(opening: JobOpening, { job, safetyClass }: JobContext): RecordStep {
  const { pressure, search } = opening;
  const { seenPerYear, requiredPerYear, joints, leaks } = search;
  const PS = job.unit.maximumAllowablePressure.si;
  const gauge = job.instruments.gauges[opening.gauge]!;
  const check = new InputCheck();
  checkReading(check, "pressure", pressure.si, gauge);
  check.require(joints > 0, "search.joints", joints, "one joint or more");
  check.require(leaks <= joints, "search.leaks", leaks, `at most ${joints}, the joints that were searched`);
  check.finish();
  const least = data.pressure.fractionOfAllowable * PS;
  const U = COVERAGE_FACTOR * gaugeUncertainty(gauge, pressure.si).standardUncertainty;
  const decision = decide(
    pressure.si / 1000,
    U / 1000,
    { minimum: least / 1000 },
    { quantity: "pressure", unit: "kPa gauge" },
  );
  const fineEnough = seenPerYear.si <= requiredPerYear.si;
  const verdict: Verdict =
    leaks > 0 ? "fail" : fineEnough && decision.verdict === "pass" ? "pass" : "inconclusive";
  const method =
    `the method sees ${seenPerYear.text} a year, ${requiredPerYear.text} a year ` +
    (fineEnough ? "is asked for" : "has to be seen: it is too coarse");
  return {
    name: "opening",
    title: stepTitles.opening,
    verdict,
    read: [
      asRead("gauge with the valves open", pressure),
      fact("joints searched", `${joints}`),
      asRead("seen for sure, a year", seenPerYear),
    ],
    expected: [
      asRead("to be seen, a year", requiredPerYear),
      shownNumber("pressure behind the joints at least", least, shownUnits.megapascalGauge, 3),
    ],
    found: [
      fact("joints that leak", `${leaks} of ${joints}`),
      shownUncertain("pressure", pressure.si, U, shownUnits.megapascalGauge),
    ],
    because:
      `${leaks === 0 ? "no joint was seen to leak" : `${leaks} of ${joints} joints leak`}; ${method}; ${decision.because} ` +
      `(${formatNumber(data.pressure.fractionOfAllowable, 2)} of the maximum allowable pressure, ${data.pressure.rule})`,
    next: nextOf(leaks, fineEnough, decision.verdict),
    warnings: [],
    assumptions: ["The method sees what is stated for it, in still air and at every joint."],
    cautions: fieldCautions("opening-valves", safetyClass),
  };
}

function nextOf(leaks: number, fineEnough: boolean, pressure: Verdict): string[] {
  if (leaks > 0)
    return [
      "Shut the stop valves, recover what is in the pipes, mend the leaking joints and test them again.",
    ];
  return [
    ...(fineEnough ? [] : ["Search the joints again with a detector that sees what is asked for."]),
    ...(pressure === "pass" ? [] : ["Search the joints again with more pressure behind them."]),
  ];
}
