import { fieldCautions } from "../../cautions.js";
import { checkTorque } from "../../line/flare.js";
import { worstVerdict } from "../../measurement/decision.js";
import type { JobJoint, JobJoints } from "../form/installation.js";
import { fact } from "../print/shown-entry.js";
import type { RecordEntry, RecordStep } from "../record/record.js";
import { stepTitles } from "../what-next.js";
import { atPath } from "./at-path.js";
import type { JobContext } from "./context.js";

/** Were the flared joints tightened as they should be? */
export function jointsStep({ wrenchPercent, list }: JobJoints, { safetyClass }: JobContext): RecordStep {
  const results = list.map((joint, index) => ({ joint, result: judge(joint, index, wrenchPercent) }));
  const verdict = worstVerdict(results.map(({ result }) => result.verdict));
  const wrong = results.filter(({ result }) => result.verdict !== "pass");
  const passed = results.length - wrong.length;
  const codes = new Map(results.flatMap(({ result }) => result.warnings).map((each) => [each.code, each]));
  return {
    name: "joints",
    title: stepTitles.joints,
    verdict,
    read: [
      ...results.map(({ joint }): RecordEntry => {
        const { si, unit, text } = joint.torque;
        return { label: `${joint.at}, ${joint.outerDiameter.text}`, text, si, unit };
      }),
      fact("wrench", `± ${wrenchPercent} %`),
    ],
    expected: results.map(({ joint, result }) =>
      fact(
        joint.at,
        joint.manual === undefined
          ? `${result.range.minimum} to ${result.range.maximum} N m by printed lists`
          : `${joint.manual.minimum.text} to ${joint.manual.maximum.text} by the manual`,
      ),
    ),
    found: [
      fact("joints in order", `${passed} of ${results.length}`),
      ...wrong.map(({ joint, result }) => fact(joint.at, result.verdict)),
    ],
    because: results.map(({ joint, result }) => `${joint.at}: ${result.because}`).join("; "),
    next: wrong.map(({ joint, result }) =>
      result.verdict === "fail"
        ? `Make the joint "${joint.at}" again: a flare that was tightened wrongly may be damaged.`
        : `Check the joint "${joint.at}" with a finer wrench or by the manual of the unit.`,
    ),
    warnings: [...codes.values()],
    assumptions: [
      "The flares were cut, deburred and oiled as the manual says, and the torque was read at the end.",
    ],
    cautions: fieldCautions("pressure-test", safetyClass),
  };
}

function judge(joint: JobJoint, index: number, wrenchPercent: number): ReturnType<typeof checkTorque> {
  const { outerDiameter, torque, manual } = joint;
  const by =
    manual === undefined
      ? { outerDiameter: outerDiameter.si }
      : { manual: { minimum: manual.minimum.si, maximum: manual.maximum.si } };
  return atPath(`list[${index}]`, () => checkTorque({ applied: torque.si, wrenchPercent, by }));
}
