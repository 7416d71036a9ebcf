import type { RecordStep, RecordStepName, VisitKind } from "./record/record.js";

/** Titles of the steps, for when a job does not hold them. */
export const stepTitles: Readonly<Record<RecordStepName, string>> = {
  room: "Room for the charge",
  joints: "Flared joints",
  strengthTest: "Strength test in stages",
  nitrogenHold: "Pressure test with nitrogen",
  evacuation: "Evacuation",
  vacuumRise: "Vacuum with the pump shut off",
  lineSet: "Charge for the line set",
  charge: "Refrigerant weighed in",
  opening: "Valves opened, leak search",
  standing: "Standing pressure",
  superheat: "Superheat in steady running",
  subcooling: "Subcooling in steady running",
  running: "The running unit as a whole",
  yearlyCheck: "Changes since earlier visits",
  topUp: "Leak and top-up",
  recovery: "Recovery",
};

/** Steps that each kind of visit should hold; any other step may be added. */
const expected: Readonly<Record<VisitKind, readonly RecordStepName[]>> = {
  installation: [
    "room",
    "joints",
    "strengthTest",
    "nitrogenHold",
    "evacuation",
    "vacuumRise",
    "lineSet",
    "opening",
    "standing",
    "superheat",
    "subcooling",
    "running",
  ],
  "yearly-check": ["opening", "standing", "superheat", "subcooling", "running", "yearlyCheck"],
  "top-up": ["topUp", "charge", "standing"],
  recovery: ["recovery"],
};

/** Steps that a visit of this kind should hold, in the order of the work. */
export function expectedSteps(kind: VisitKind): readonly RecordStepName[] {
  return expected[kind];
}

/** Steps that have to be in order before refrigerant is let into the pipes. */
const beforeOpening: readonly RecordStepName[] = ["nitrogenHold", "evacuation", "vacuumRise"];

/** What to do next: what the steps ask for, in the order of the work, then the steps that are missing. */
export function nextSteps(
  kind: VisitKind,
  steps: readonly RecordStep[],
  missing: readonly RecordStepName[],
): readonly string[] {
  const passed = (name: RecordStepName): boolean =>
    steps.some((step) => step.name === name && step.verdict === "pass");
  const open = beforeOpening.filter((name) => !passed(name));
  const gate =
    kind !== "installation" || open.length === 0
      ? []
      : [`Keep the stop valves shut until these pass: ${open.map((name) => stepTitles[name]).join("; ")}.`];
  const todo =
    missing.length === 0 ? [] : [`Still to be done: ${missing.map((name) => stepTitles[name]).join("; ")}.`];
  return [...gate, ...new Set(steps.flatMap(({ next }) => next)), ...todo];
}
