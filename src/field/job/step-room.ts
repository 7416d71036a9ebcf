import { printedMaximumCharge, printedMinimumArea, unventilatedRoom } from "../../safety/index.js";
import type { JobContext } from "./context.js";
import type { JobRoom } from "./job.js";
import type { RecordStep } from "./record.js";
import { asRead, fact, shownNumber, shownUnits } from "./shown-entry.js";

/** Is the room large enough for the charge? Nameplate plus what was weighed in, or what the line set asks for. */
export function roomStep(room: JobRoom, { job, refrigerant, extraCharge }: JobContext): RecordStep {
  const charge = job.unit.nameplateCharge.si + extraCharge.kilograms;
  const result = unventilatedRoom({
    edition: room.edition,
    refrigerant: refrigerant.designation,
    charge,
    floorArea: room.floorArea.si,
    mounting: room.mounting,
    ...(room.height === undefined ? {} : { roomHeight: room.height.si }),
    ...(room.releaseOffset === undefined ? {} : { releaseOffset: room.releaseOffset.si }),
  });
  const { minimumArea, maximumCharge } = result;
  return {
    name: "room",
    title: "Room for the charge",
    verdict: result.verdict === "pass" ? "pass" : "fail",
    read: [
      asRead("floor area", room.floorArea),
      fact("indoor unit", `${room.mounting}-mounted`),
      asRead("nameplate charge", job.unit.nameplateCharge),
      shownNumber(extraCharge.label, extraCharge.kilograms, shownUnits.gram, 0),
    ],
    expected: [
      fact(
        "smallest floor area",
        minimumArea === undefined ? "none allowed" : printedMinimumArea(minimumArea, 2),
      ),
      fact(
        "largest charge",
        maximumCharge === undefined ? "none allowed" : printedMaximumCharge(maximumCharge, 3),
      ),
    ],
    found: [shownNumber("total charge", charge, shownUnits.kilogram, 3)],
    because: result.because,
    warnings: result.warnings,
    assumptions: result.assumptions,
    cautions: result.cautions,
  };
}
