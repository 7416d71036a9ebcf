import { type Temperature, toGauge } from "../../../units/index.js";
import { fieldCautions } from "../../cautions.js";
import { checkStandingPressure, type StandingCheckResult } from "../../rest/standing-check.js";
import type { JobStanding } from "../form/running.js";
import { shownNumber, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordEntry, RecordStep } from "../record/record.js";
import type { JobContext } from "./context.js";
import { pairsOf, readEntries, seriesEntries, withScatter } from "./reading-series.js";

const next: Readonly<Record<StandingCheckResult["state"], readonly string[]>> = {
  agrees: [],
  above: [
    "Leave the unit off until all parts have one temperature and read again; if it stays high, recover the charge, evacuate and weigh in anew.",
  ],
  below: ["Search for leaks: a pressure below that of liquid says that hardly any refrigerant is left."],
};

/** Does the system at rest read what its refrigerant should? */
export function standingStep(standing: JobStanding, context: JobContext): RecordStep {
  const { job, refrigerant, atmosphere, safetyClass } = context;
  const pairs = pairsOf(standing.readings, standing.pressure, standing.temperature);
  const results = pairs.map(({ pressure, temperature }) =>
    checkStandingPressure({
      refrigerant,
      temperature: temperature.si,
      thermometer: job.instruments.thermometers[standing.thermometer]!,
      atmosphere,
      contents: { kind: "liquid-present" },
      pressure: pressure.si,
      gauge: job.instruments.gauges[standing.gauge]!,
    }),
  );
  // Of a series the last reading counts: pressures even out, and what came before shows whether they have.
  const result = results[results.length - 1]!;
  const last = pairs[pairs.length - 1]!;
  const { series } = withScatter(
    results.map(({ deviation, expected }) => deviation / expected.slope),
    standing,
    result.expandedUncertainty,
  );
  const isSteady = series === undefined || series.steady === "pass";
  return {
    name: "standing",
    title: "Standing pressure",
    verdict: isSteady ? result.verdict : "inconclusive",
    read: readEntries("gauge", "all parts at", standing, standing.readings),
    expected: [
      shownUncertain(
        `${refrigerant.designation} with liquid present`,
        result.expected.gaugePressure,
        result.expected.expandedUncertainty,
        shownUnits.megapascalGauge,
      ),
      ...bothEnds(context, last.temperature.si),
    ],
    found: [
      shownUncertain(
        "deviation",
        result.deviation,
        result.expandedUncertainty,
        shownUnits.kilopascalDifference,
      ),
      ...seriesEntries(series),
    ],
    because: isSteady
      ? result.because
      : `${result.because}; it had not settled, as temperature of saturation: ${series.because}`,
    next: isSteady ? next[result.state] : ["Wait until pressure and temperature keep still, and read again."],
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
