import * as z from "zod/mini";
import { problemsOf } from "../../../catalogue/index.js";
import {
  type Problem,
  parseAbsolutePressure,
  parseLength,
  parseMass,
  parsePressureDifference,
} from "../../../units/index.js";
import { EARLIER_JOB_FORMAT, JOB_FORMAT } from "../form/job.js";
import { explicitGaugePressure } from "../read/explicit-pressure.js";
import { RECORD_STEPS, type RecordStepName, VISIT_KINDS } from "../record/record.js";
import { charge, joints, lineSet, opening, room } from "./installation-schema.js";
import { gauge, scale, thermometer } from "./instrument-schema.js";
import { evacuation, nitrogenHold, strengthTest, vacuumRise } from "./pressure-schema.js";
import { lineReading, running, standing } from "./running-schema.js";
import { isDate, plain, positive, sentence } from "./schema-fields.js";
import { recovery, topUp, yearlyCheck } from "./service-schema.js";

// Everything here is a function: a schema made at module level would be work that a bundler has to keep.
// The message of each schema says what would have been right.

/** What became of one part of a job: its value, or what is wrong with it by paths inside the job. */
export type ParsedPart =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Name of a part of a job. */
type JobPart =
  | "format"
  | "visit"
  | "continues"
  | "title"
  | "place"
  | "date"
  | "atmosphere"
  | "unit"
  | RecordStepName;

/** Names of the parts of a job, in the order in which a job is read. */
export const JOB_PARTS: readonly JobPart[] = [
  "format",
  "visit",
  "continues",
  "title",
  "place",
  "date",
  "atmosphere",
  "unit",
  ...RECORD_STEPS,
];

/** Kinds of instruments, and what one of them is. */
export const INSTRUMENT_KINDS = ["gauges", "thermometers", "scales"] as const;

/**
 * Holds one part of a job against its form. Every quantity is text with its unit, such as `"0.82 MPa gauge"` or
 * `"11.5 m"`; fields that are not known are refused, because a misspelt one would be dropped in silence.
 */
export function parsePart(name: JobPart, value: unknown): ParsedPart {
  return parsedBy(partSchema(name), value, name);
}

/** Holds one instrument against its form. */
export function parseInstrument(
  kind: (typeof INSTRUMENT_KINDS)[number],
  name: string,
  value: unknown,
): ParsedPart {
  const schemas = { gauges: gauge, thermometers: thermometer, scales: scale };
  return parsedBy(schemas[kind](), value, `instruments.${kind}.${name}`);
}

function parsedBy(schema: z.core.$ZodType, value: unknown, path: string): ParsedPart {
  const parsed = z.safeParse(schema, value);
  if (parsed.success) return { ok: true, value: parsed.data };
  const problems = problemsOf(parsed.error.issues, value).map((problem) => ({
    ...problem,
    path: problem.path === "" ? path : `${path}${problem.path.startsWith("[") ? "" : "."}${problem.path}`,
  }));
  return { ok: false, problems };
}

function partSchema(name: JobPart): z.core.$ZodType {
  switch (name) {
    case "format":
      return z.enum([JOB_FORMAT, EARLIER_JOB_FORMAT], `"${JOB_FORMAT}"`);
    case "visit":
      return z.enum(VISIT_KINDS, `one of ${VISIT_KINDS.join(", ")}`);
    case "continues":
    case "title":
    case "place":
      return sentence();
    case "date":
      return z
        .string("a date such as 2026-05-14")
        .check(z.refine((text) => isDate(text), "a date of the calendar, such as 2026-05-14"));
    case "atmosphere":
      return atmosphere();
    case "unit":
      return unit();
    case "room":
      return room();
    case "joints":
      return joints();
    case "strengthTest":
      return strengthTest();
    case "nitrogenHold":
      return nitrogenHold();
    case "evacuation":
      return evacuation();
    case "vacuumRise":
      return vacuumRise();
    case "lineSet":
      return lineSet();
    case "charge":
      return charge();
    case "opening":
      return opening();
    case "standing":
      return standing();
    case "superheat":
    case "subcooling":
      return lineReading();
    case "running":
      return running();
    case "yearlyCheck":
      return yearlyCheck();
    case "topUp":
      return topUp();
    case "recovery":
      return recovery();
  }
}

function atmosphere(): z.core.$ZodType {
  const halfWidth = z.optional(plain(parsePressureDifference));
  return z.discriminatedUnion(
    "from",
    [
      z.strictObject({ from: z.literal("altitude"), altitude: plain(parseLength), halfWidth }),
      z.strictObject({
        from: z.literal("station-barometer"),
        pressure: plain(parseAbsolutePressure),
        halfWidth,
      }),
      z.strictObject({
        from: z.literal("sea-level-barometer"),
        pressure: plain(parseAbsolutePressure),
        altitude: plain(parseLength),
        halfWidth,
      }),
    ],
    'the air pressure, from "altitude", "station-barometer" or "sea-level-barometer"',
  );
}

function unit(): z.core.$ZodType {
  return z.strictObject(
    {
      refrigerant: sentence(),
      mode: z.enum(["cooling", "heating"], '"cooling" or "heating"'),
      nameplateCharge: positive(parseMass, "kg"),
      maximumAllowablePressure: positive(explicitGaugePressure, "Pa gauge"),
    },
    "the unit: refrigerant, mode, nameplateCharge, maximumAllowablePressure",
  );
}
