import { fieldCautions } from "../../cautions.js";
import { evaluateStrengthTest } from "../../pressure-test/strength-test.js";
import { testPressures } from "../../pressure-test/test-pressures.js";
import type { JobStrengthTest } from "../form/pressure.js";
import { asRead, fact, shownNumber, shownUnits } from "../print/shown-entry.js";
import type { RecordStep } from "../record/record.js";
import { stepTitles } from "../what-next.js";
import type { JobContext } from "./context.js";

/** Was the pressure raised in the stages of the manual, and the joints looked at on each? */
export function strengthTestStep(test: JobStrengthTest, { job, safetyClass }: JobContext): RecordStep {
  const { plan, stages } = test;
  const PS = job.unit.maximumAllowablePressure.si;
  const result = evaluateStrengthTest({
    gauge: job.instruments.gauges[test.gauge]!,
    maximumAllowablePressure: PS,
    plan: plan.map(({ pressure, holdFor }) => ({ pressure: pressure.si, holdFor: holdFor.si })),
    stages: stages.map(({ pressure, heldFor, jointsInspected }) => ({
      pressure: pressure.si,
      heldFor: heldFor.si,
      jointsInspected,
    })),
  });
  const passed = result.stages.filter(({ verdict }) => verdict === "pass").length;
  return {
    name: "strengthTest",
    title: stepTitles.strengthTest,
    verdict: result.verdict,
    read: stages.map(({ pressure, heldFor, jointsInspected }, index) =>
      fact(
        `stage ${index + 1}`,
        `${pressure.text} for ${heldFor.text}, joints ${jointsInspected ? "looked at" : "not looked at"}`,
      ),
    ),
    expected: [
      ...plan.map(({ pressure, holdFor }, index) =>
        asRead(`stage ${index + 1}, for ${holdFor.text}`, pressure),
      ),
      shownNumber(
        "never above 1.1 times the maximum allowable pressure",
        testPressures(PS).assembledSystem,
        shownUnits.megapascalGauge,
        3,
      ),
    ],
    found: [fact("stages in order", `${passed} of ${plan.length}`)],
    because: result.because,
    next:
      result.verdict === "pass"
        ? []
        : ["Repeat the stages that are not in order, from the lowest, with bubbles at every joint."],
    warnings: result.warnings,
    assumptions: result.assumptions,
    cautions: fieldCautions("pressure-test", safetyClass),
  };
}
