import { fieldCautions } from "../../cautions.js";
import { checkChargePhase } from "../../charging/charge-phase.js";
import { weighIn } from "../../charging/weigh-in.js";
import { worstVerdict } from "../../measurement/decision.js";
import type { JobCharge } from "../form/installation.js";
import { asRead, fact, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordStep } from "../record/record.js";
import { stepTitles } from "../what-next.js";
import type { JobContext } from "./context.js";

/** Was the right mass weighed in, and drawn so that a blend keeps its composition? */
export function chargeStep(charge: JobCharge, { job, refrigerant, safetyClass }: JobContext): RecordStep {
  const { before, after, wanted, tolerance, drawnAs, cylinderTemperature, hoseHoldUp } = charge;
  const weighed = weighIn({
    before: before.si,
    after: after.si,
    scale: job.instruments.scales[charge.scale]!,
    hoseHoldUp: hoseHoldUp.si,
    wanted: wanted.si,
    tolerance: tolerance.si,
  });
  const phase = checkChargePhase({ refrigerant, temperature: cylinderTemperature.si, drawnAs });
  const { mass, expandedUncertainty, decision } = weighed;
  return {
    name: "charge",
    title: stepTitles.charge,
    verdict: worstVerdict([decision.verdict, phase.verdict]),
    read: [
      asRead("scale before", before),
      asRead("scale after", after),
      asRead("left in the hose", hoseHoldUp),
      fact("drawn as", drawnAs),
    ],
    expected: [asRead("wanted", wanted), asRead("within", tolerance)],
    found: [shownUncertain("weighed in", mass, expandedUncertainty, shownUnits.gram)],
    because: `${decision.because}; ${phase.because}`,
    next: [
      ...(decision.verdict === "pass"
        ? []
        : [
            "Correct the charge by weight, after the room has been checked for it; a finer scale decides doubts.",
          ]),
      ...(phase.verdict === "pass"
        ? []
        : [
            "Draw a blend from its cylinder as liquid; what came as vapour has shifted: recover it and begin anew.",
          ]),
    ],
    warnings: phase.warnings,
    assumptions: weighed.assumptions,
    cautions: fieldCautions("charging", safetyClass),
  };
}
