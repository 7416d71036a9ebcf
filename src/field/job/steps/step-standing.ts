import { type Temperature, toGauge } from "../../../units/index.js";
import { fieldCautions } from "../../cautions.js";
import { checkStandingPressure } from "../../rest/standing-check.js";
import type { JobStanding } from "../form/job.js";
import { asRead, shownNumber, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordEntry, RecordStep } from "../record/record.js";
import type { JobContext } from "./context.js";

/** Does the system at rest read what its refrigerant should? */
export function standingStep(standing: JobStanding, context: JobContext): RecordStep {
  const { job, refrigerant, atmosphere, safetyClass } = context;
  const { pressure, temperature } = standing;
  const result = checkStandingPressure({
    refrigerant,
    temperature: temperature.si,
    thermometer: job.instruments.thermometers[standing.thermometer]!,
    atmosphere,
    contents: { kind: "liquid-present" },
    pressure: pressure.si,
    gauge: job.instruments.gauges[standing.gauge]!,
  });
  return {
    name: "standing",
    title: "Standing pressure",
    verdict: result.verdict,
    read: [asRead("gauge", pressure), asRead("all parts at", temperature)],
    expected: [
      shownUncertain(
        `${refrigerant.designation} with liquid present`,
        result.expected.gaugePressure,
        result.expected.expandedUncertainty,
        shownUnits.megapascalGauge,
      ),
      ...bothEnds(context, temperature.si),
    ],
    found: [
      shownUncertain(
        "deviation",
        result.deviation,
        result.expandedUncertainty,
        shownUnits.kilopascalDifference,
      ),
    ],
    because: result.because,
    warnings: result.expected.warnings,
    assumptions: ["There is liquid in the system.", ...result.expected.assumptions],
    cautions: fieldCautions("opening-valves", safetyClass),
  };
}

/** The two pressures that a blend of unknown amount stands between. */
function bothEnds({ refrigerant, atmosphere }: JobContext, temperature: Temperature): RecordEntry[] {
  if (refrigerant.blend === undefined) return [];
  return (["dew", "bubble"] as const).map((end) =>
    shownNumber(
      `its ${end} pressure`,
      toGauge(refrigerant[end]({ temperature }).pressure, atmosphere.pressure),
      shownUnits.megapascalGauge,
      3,
    ),
  );
}
