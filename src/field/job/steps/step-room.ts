import {
  type ChargeBranch,
  flammabilityClass,
  printedMaximumCharge,
  printedMinimumArea,
  unventilatedRoom,
} from "../../../safety/index.js";
import { fieldCautions } from "../../cautions.js";
import type { JobRoom } from "../form/installation.js";
import { asRead, fact, shownNumber, shownUnits } from "../print/shown-entry.js";
import type { RecordEntry, RecordStep } from "../record/record.js";
import type { JobContext } from "./context.js";

const title = "Room for the charge";

const ruleNames: Readonly<Record<ChargeBranch, string>> = {
  root: "by the square-root rule",
  linear: "by the linear rule",
};

/** Is the room large enough for the charge? Nameplate plus the larger of what was weighed in and what the line set asks for. */
export function roomStep(room: JobRoom, context: JobContext): RecordStep {
  const { job, refrigerant, safetyClass, extraCharge } = context;
  const charge = job.unit.nameplateCharge.si + (extraCharge?.kilograms ?? 0);
  const read: RecordEntry[] = [
    asRead("floor area", room.floorArea),
    fact("indoor unit", `${room.mounting}-mounted`),
    asRead("nameplate charge", job.unit.nameplateCharge),
    ...(extraCharge === undefined
      ? []
      : [shownNumber(extraCharge.label, extraCharge.kilograms, shownUnits.gram, 1)]),
  ];
  const found = [shownNumber("total charge", charge, shownUnits.kilogram, 3)];
  if (safetyClass !== undefined && flammabilityClass(safetyClass) === "1") {
    return notFlammable(read, found, context);
  }
  const result = unventilatedRoom({
    edition: room.edition,
    refrigerant: refrigerant.designation,
    charge,
    floorArea: room.floorArea.si,
    mounting: room.mounting,
    ...(room.height === undefined ? {} : { roomHeight: room.height.si }),
    ...(room.releaseOffset === undefined ? {} : { releaseOffset: room.releaseOffset.si }),
  });
  const { minimumArea, maximumCharge, branch } = result;
  const rule = (name: string): string =>
    Object.hasOwn(ruleNames, name) ? ` ${ruleNames[name as ChargeBranch]}` : "";
  return {
    name: "room",
    title,
    verdict: result.verdict === "pass" ? "pass" : "fail",
    read,
    expected: [
      minimumArea === undefined
        ? fact("smallest floor area", "none is large enough for this clause")
        : {
            label: `smallest floor area${rule(branch.minimumArea)}`,
            text: minimumArea === 0 ? "none asked for" : printedMinimumArea(minimumArea, 2),
            si: minimumArea,
            unit: "m2",
          },
      maximumCharge === undefined
        ? fact("largest charge", "none by this clause")
        : {
            label: `largest charge${rule(branch.maximumCharge)}`,
            text: printedMaximumCharge(maximumCharge, 3),
            si: maximumCharge,
            unit: "kg",
          },
    ],
    found,
    because: result.because,
    next:
      result.verdict === "pass"
        ? []
        : [
            "Do not charge for this room: choose a larger room, a smaller charge or another way of the standard.",
          ],
    warnings: result.warnings,
    assumptions: [
      ...(extraCharge === undefined
        ? ["Nothing is added to the nameplate charge: the job holds no line set."]
        : []),
      ...result.assumptions,
    ],
    cautions: result.cautions,
  };
}

/** The rule is about fire; that it does not apply is no word on suffocation. */
function notFlammable(
  read: readonly RecordEntry[],
  found: readonly RecordEntry[],
  { refrigerant, safetyClass }: JobContext,
): RecordStep {
  return {
    name: "room",
    title,
    verdict: "inconclusive",
    read,
    expected: [],
    found,
    because:
      `${refrigerant.designation} is of class ${safetyClass} and does not burn: the rule of IEC 60335-2-40 for rooms ` +
      "without ventilation does not apply; limits against suffocation and toxicity are not covered here",
    next: ["Check the limits against suffocation and toxicity by the local code."],
    warnings: [],
    assumptions: [],
    cautions: fieldCautions("charging", safetyClass),
  };
}
