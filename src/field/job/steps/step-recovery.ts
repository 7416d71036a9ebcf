import type { Warning } from "../../../safety/index.js";
import { InputCheck, type Mass, toAbsolute } from "../../../units/index.js";
import { fieldCautions } from "../../cautions.js";
import { fillLimit } from "../../cylinder/fill-limit.js";
import { type Verdict, worstVerdict } from "../../measurement/decision.js";
import { checkReading } from "../../measurement/instrument-checks.js";
import { accountForRecovery } from "../../recovery/recovered.js";
import type { JobRecovery } from "../form/service.js";
import { asRead, fact, shownNumber, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordStep } from "../record/record.js";
import { stepTitles } from "../what-next.js";
import { atPath } from "./at-path.js";
import type { JobContext } from "./context.js";

/** Is all of the charge accounted for, and is the cylinder within its limit? */
export function recoveryStep(recovery: JobRecovery, context: JobContext): RecordStep {
  const { job, refrigerant, atmosphere, safetyClass } = context;
  const { cylinder, before, after, expectedCharge, tolerance, internalVolume, endPressure } = recovery;
  const { halfWidth } = job.instruments.scales[recovery.scale]!;
  const check = new InputCheck();
  checkReading(check, "endPressure", endPressure.si, job.instruments.gauges[recovery.gauge]!);
  check.finish();
  const limit = atPath("cylinder", () =>
    fillLimit({
      refrigerant,
      volume: cylinder.volume.si,
      refillable: cylinder.refillable,
      markedLimit: cylinder.markedLimit.si,
      contents: "recovered",
      inside: cylinder.inside.si,
      scaleHalfWidth: halfWidth,
    }),
  );
  const account = accountForRecovery({
    refrigerant,
    before: before.si,
    after: after.si,
    scaleHalfWidth: halfWidth,
    expectedCharge: expectedCharge.si,
    tolerance: tolerance.si,
    internalVolume: internalVolume.si,
    endPressure: toAbsolute(endPressure.si, atmosphere.pressure),
    endTemperature: recovery.endTemperature.si,
  });
  const { recovered, left, missing, expandedUncertainty, decision } = account;
  const inside = cylinder.inside.si + recovered;
  const isOver = recovered > limit.room;
  const fill: Verdict = isOver ? "fail" : "pass";
  return {
    name: "recovery",
    title: stepTitles.recovery,
    verdict: worstVerdict([fill, decision.verdict]),
    read: [
      asRead("scale before", before),
      asRead("scale after", after),
      asRead("in the cylinder before", cylinder.inside),
      asRead("gauge at the end", endPressure),
      asRead("circuit then", recovery.endTemperature),
    ],
    expected: [
      asRead("in the system", expectedCharge),
      asRead("within", tolerance),
      shownNumber(`cylinder at most, by ${limit.bound}`, limit.maximum, shownUnits.kilogram, 3),
    ],
    found: [
      shownUncertain("missing", missing, expandedUncertainty, shownUnits.gram),
      shownNumber("recovered", recovered, shownUnits.kilogram, 3),
      shownNumber("left as vapour", left, shownUnits.gram, 1),
      shownNumber("in the cylinder now", inside, shownUnits.kilogram, 3),
      fact("cylinder", isOver ? "above its limit, counting the error of the scale" : "within its limit"),
    ],
    because: `${account.because}; cylinder: ${limit.because}`,
    next: nextOf(isOver, decision.verdict, missing),
    warnings: [...limit.warnings, ...belowAtmosphere(endPressure.si)],
    assumptions: [
      ...limit.assumptions,
      "The circuit holds vapour alone at the end, at the temperature that was read.",
    ],
    cautions: fieldCautions("recovery", safetyClass),
  };
}

function nextOf(isOver: boolean, verdict: Verdict, missing: Mass): string[] {
  return [
    ...(isOver ? ["Move refrigerant to a second cylinder at once: this one is too full to be warmed."] : []),
    ...(verdict === "pass"
      ? []
      : [
          missing > 0
            ? "Look for the refrigerant that is missing: a leak, or liquid still in the circuit. Go on recovering and read again."
            : "Check what the system was charged with: more came out than should have been in it.",
        ]),
  ];
}

function belowAtmosphere(pressure: number): Warning[] {
  if (pressure >= 0) return [];
  return [
    {
      code: "below-atmosphere",
      message: "the circuit is below the pressure of the air: a leak or an open joint draws air in",
    },
  ];
}
