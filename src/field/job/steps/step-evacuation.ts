import { fieldCautions } from "../../cautions.js";
import { evaluateVacuum, type VacuumResult } from "../../evacuation/vacuum.js";
import type { JobEvacuation } from "../form/pressure.js";
import { asRead, shownNumber, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordStep } from "../record/record.js";
import type { JobContext } from "./context.js";

/** Is the vacuum deep enough, and dry? */
export function evacuationStep(evacuation: JobEvacuation, { job, safetyClass }: JobContext): RecordStep {
  const { pressure, limit, coldestTemperature } = evacuation;
  const result = evaluateVacuum({
    pressure: pressure.si,
    gauge: job.instruments.gauges[evacuation.gauge]!,
    limit: limit.si,
    coldestTemperature: coldestTemperature.si,
  });
  return {
    name: "evacuation",
    title: "Evacuation",
    verdict: result.verdict,
    read: [asRead("vacuum gauge", pressure), asRead("coldest part", coldestTemperature)],
    expected: [
      asRead("at most", limit),
      shownNumber(
        "vapour pressure of water at the coldest part",
        result.waterVapourPressure,
        shownUnits.pascal,
        0,
      ),
    ],
    found: [
      shownUncertain("pressure", pressure.si, result.decision.expandedUncertainty, shownUnits.pascal),
      shownNumber("water leaves parts warmer than", result.waterLeavesAbove, shownUnits.celsius, 1),
    ],
    because: result.because,
    next: nextOf(result),
    warnings: result.warnings,
    assumptions: [],
    cautions: fieldCautions("evacuation", safetyClass),
  };
}

function nextOf({ verdict, proof, drynessRatio }: VacuumResult): string[] {
  if (verdict === "pass") return [];
  if (!proof.canProve) return ["Read the vacuum with an absolute gauge that is fine enough for the limit."];
  if (drynessRatio >= 1)
    return ["Go on pumping below the vapour pressure of water at the coldest part, or warm that part."];
  return ["Go on pumping, and look for a leak if the pressure stays where it is."];
}
