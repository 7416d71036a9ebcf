import { formatNumber } from "../../../units/index.js";
import { fieldCautions } from "../../cautions.js";
import { lineCharge } from "../../charging/line-charge.js";
import { decide, type Verdict } from "../../measurement/decision.js";
import { halfWidthUncertainty } from "../../measurement/instrument.js";
import { COVERAGE_FACTOR } from "../../measurement/uncertainty.js";
import type { JobLineSet } from "../form/installation.js";
import { asRead, shownNumber, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordStep } from "../record/record.js";
import type { JobContext } from "./context.js";

/** Was the charge for the extra pipe weighed in? Two readings of one scale, before and after. */
export function lineSetStep(line: JobLineSet, { job, refrigerant, safetyClass }: JobContext): RecordStep {
  const result = lineChargeOf(line, refrigerant);
  const { halfWidth } = job.instruments.scales[line.scale]!;
  const U = COVERAGE_FACTOR * Math.SQRT2 * halfWidthUncertainty(halfWidth);
  const decision = decide(
    line.added.si * 1000,
    U * 1000,
    {
      // Not cut off at 0: where nothing is asked for, nothing added is right.
      minimum: (result.extraCharge - line.tolerance.si) * 1000,
      maximum: (result.extraCharge + line.tolerance.si) * 1000,
    },
    { quantity: "added", unit: "g" },
  );
  return {
    name: "lineSet",
    title: "Charge for the line set",
    verdict: decision.verdict,
    read: [
      asRead("length, one way", line.length),
      asRead("covered by the nameplate", line.chargeFreeLength),
      asRead("by the manual", line.chargePerMetre),
      asRead("weighed in", line.added),
    ],
    expected: [
      shownNumber("extra charge", result.extraCharge, shownUnits.gram, 1),
      asRead("within", line.tolerance),
      shownNumber("at most, bore full of liquid", result.boundPerMetre ?? 0, shownUnits.gramPerMetre, 1),
    ],
    found: [shownUncertain("added", line.added.si, U, shownUnits.gram)],
    because: `${result.because}; ${decision.because}`,
    next: decision.verdict === "pass" ? [] : [nextOf(line.added.si, result.extraCharge, decision.verdict)],
    warnings: result.warnings,
    assumptions: ["The scale was read before and after, with its error independent at both readings."],
    cautions: fieldCautions("charging", safetyClass),
  };
}

/** The extra charge that a line set asks for. */
export function lineChargeOf(
  line: JobLineSet,
  refrigerant: JobContext["refrigerant"],
): ReturnType<typeof lineCharge> {
  return lineCharge({
    length: line.length.si,
    chargeFreeLength: line.chargeFreeLength.si,
    chargePerMetre: line.chargePerMetre.si,
    maximumLength: line.maximumLength.si,
    liquidLine: {
      refrigerant,
      liquidTemperature: line.liquidTemperature.si,
      tube: { outerDiameter: line.liquidLine.outerDiameter.si, wall: line.liquidLine.wall.si },
    },
  });
}

function nextOf(added: number, asked: number, verdict: Verdict): string {
  if (verdict === "inconclusive")
    return "Weigh again with a finer scale: it is too close to the tolerance to tell.";
  const grams = formatNumber(Math.abs(added - asked) * 1000, 0);
  return added < asked
    ? `Weigh in ${grams} g more, after the room has been checked for it.`
    : `Recover ${grams} g: more was weighed in than the line set asks for.`;
}
