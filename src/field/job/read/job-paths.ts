import {
  type DewlineError,
  InputError,
  NoSuchStateError,
  OutOfRangeError,
  type Problem,
} from "../../../units/index.js";
import type { Job } from "../form/job.js";
import type { RecordStepName } from "../record/record.js";

/** Where a part of a step's own input stands in the job: beginnings of paths, the longest first. */
type Renames = readonly (readonly [from: string, to: string])[];

const renames: Readonly<Record<RecordStepName, Renames>> = {
  room: [
    ["charge", "unit.nameplateCharge"],
    ["refrigerant", "unit.refrigerant"],
    ["roomHeight", "room.height"],
  ],
  joints: [],
  strengthTest: [["maximumAllowablePressure", "unit.maximumAllowablePressure"]],
  lineSet: [
    ["liquidLine.tube", "lineSet.liquidLine"],
    ["liquidLine.liquidTemperature", "lineSet.liquidTemperature"],
    ["temperature", "lineSet.liquidTemperature"],
    ["limits", "lineSet.tolerance"],
  ],
  nitrogenHold: [["maximumAllowablePressure", "unit.maximumAllowablePressure"]],
  evacuation: [["temperature", "evacuation.coldestTemperature"]],
  vacuumRise: [
    ["samples", "vacuumRise.readings"],
    ["temperature", "vacuumRise.coldestTemperature"],
  ],
  charge: [],
  opening: [],
  standing: [],
  superheat: [["limits", "superheat.target"]],
  subcooling: [["limits", "subcooling.target"]],
  running: [],
  yearlyCheck: [],
  recovery: [],
  topUp: [
    ["volume", "topUp.internalVolume"],
    // More pressure than any equation knows comes of too small a volume.
    ["pressure", "topUp.internalVolume"],
    ["temperature", "topUp.restTemperature"],
    ["lostFraction", "topUp.lost"],
  ],
};

/**
 * What an error of a step means for the job: the same problems, by their paths in the job and with the text that
 * stands there. An iteration that did not settle is no fault of the job and passes through.
 */
export function problemsIn(
  error: DewlineError,
  step: RecordStepName | "atmosphere",
  job: Job,
): readonly Problem[] {
  if (error instanceof InputError) {
    return error.problems.map((problem) => {
      const path = pathInJob(step, problem.path, job);
      return { ...problem, path, value: textAt(job, path) ?? problem.value };
    });
  }
  if (error instanceof OutOfRangeError) {
    const { quantity, value, minimum, maximum, unit, subject } = error;
    const path = pathInJob(step, quantity === "geopotential altitude" ? "altitude" : quantity, job);
    const expected = `${rounded(minimum)} to ${rounded(maximum)} ${unit} for ${subject}`;
    return [{ path, value: textAt(job, path) ?? value, expected }];
  }
  if (error instanceof NoSuchStateError) {
    return [
      { path: step, value: error.inputs, expected: `readings of a state that exists (${error.message})` },
    ];
  }
  throw error;
}

function pathInJob(step: RecordStepName | "atmosphere", inner: string, job: Job): string {
  if (step === "atmosphere") return join("atmosphere", inner);
  const names = job[step] as {
    readonly gauge?: string;
    readonly thermometer?: string;
    readonly scale?: string;
  };
  const instruments: Renames = [
    ["gauge", `instruments.gauges.${names.gauge}`],
    ["thermometer", `instruments.thermometers.${names.thermometer}`],
    ["halfWidth", `instruments.scales.${names.scale}`],
    ["atmosphere", "atmosphere"],
  ];
  const found = [...renames[step], ...instruments].find(
    ([from]) => inner === from || inner.startsWith(`${from}.`) || inner.startsWith(`${from}[`),
  );
  if (found === undefined) return join(step, inner);
  const [from, to] = found;
  return `${to}${inner.slice(from.length)}`;
}

function join(outer: string, inner: string): string {
  return inner === "" ? outer : `${outer}.${inner}`;
}

/** The text that the job has at a path, where it is a quantity that was written down. */
function textAt(job: Job, path: string): string | undefined {
  const keys = path.split(/[.[\]]+/).filter((key) => key !== "");
  let at: unknown = job;
  for (const key of keys)
    at = typeof at === "object" && at !== null ? (at as Record<string, unknown>)[key] : undefined;
  return typeof at === "object" && at !== null && "text" in at ? String(at.text) : undefined;
}

function rounded(value: number): number {
  return Number(value.toPrecision(6));
}
