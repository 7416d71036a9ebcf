import * as z from "zod/mini";
import { problemsOf } from "../../../catalogue/index.js";
import { IEC_EDITIONS, MOUNTINGS } from "../../../safety/index.js";
import {
  type Problem,
  parseAbsolutePressure,
  parseArea,
  parseDuration,
  parseLength,
  parseLinearDensity,
  parseMass,
  parsePressureDifference,
  parseTemperature,
  parseTemperatureDifference,
  parseVolume,
} from "../../../units/index.js";
import { JOB_FORMAT } from "../form/job.js";
import { explicitAbsolutePressure, explicitGaugePressure } from "../read/explicit-pressure.js";
import { gauge, scale, thermometer } from "./instrument-schema.js";
import { isDate, notNegative, plain, positive, sentence, stated } from "./schema-fields.js";

// Everything here is a function: a schema made at module level would be work that a bundler has to keep.
// The message of each schema says what would have been right.

/** What became of one part of a job: its value, or what is wrong with it by paths inside the job. */
export type ParsedPart =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Names of the parts of a job, in the order in which a job is read. */
export const JOB_PARTS = [
  "format",
  "title",
  "place",
  "date",
  "atmosphere",
  "unit",
  "room",
  "lineSet",
  "nitrogenHold",
  "evacuation",
  "vacuumRise",
  "standing",
  "superheat",
  "subcooling",
  "topUp",
] as const;

/** Kinds of instruments, and what one of them is. */
export const INSTRUMENT_KINDS = ["gauges", "thermometers", "scales"] as const;

/**
 * Holds one part of a job against its form. Every quantity is text with its unit, such as `"0.82 MPa gauge"` or
 * `"11.5 m"`; fields that are not known are refused, because a misspelt one would be dropped in silence.
 */
export function parsePart(name: (typeof JOB_PARTS)[number], value: unknown): ParsedPart {
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

function partSchema(name: (typeof JOB_PARTS)[number]): z.core.$ZodType {
  switch (name) {
    case "format":
      return z.literal(JOB_FORMAT, `"${JOB_FORMAT}"`);
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
    case "lineSet":
      return lineSet();
    case "nitrogenHold":
      return nitrogenHold();
    case "evacuation":
      return evacuation();
    case "vacuumRise":
      return vacuumRise();
    case "standing":
      return standing();
    case "superheat":
    case "subcooling":
      return lineReading();
    case "topUp":
      return topUp();
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

function room(): z.core.$ZodType {
  return z.strictObject(
    {
      edition: z.enum(IEC_EDITIONS, `an edition of IEC 60335-2-40: ${IEC_EDITIONS.join(", ")}`),
      floorArea: positive(parseArea, "m2"),
      mounting: z.enum(MOUNTINGS, `one of ${MOUNTINGS.join(", ")}`),
      height: z.optional(positive(parseLength, "m")),
      releaseOffset: z.optional(notNegative(parseLength, "m")),
    },
    "the room: edition, floorArea, mounting",
  );
}

function lineSet(): z.core.$ZodType {
  return z.strictObject(
    {
      length: positive(parseLength, "m"),
      chargeFreeLength: notNegative(parseLength, "m"),
      chargePerMetre: notNegative(parseLinearDensity, "kg/m"),
      maximumLength: positive(parseLength, "m"),
      liquidLine: z.strictObject(
        { outerDiameter: positive(parseLength, "m"), wall: positive(parseLength, "m") },
        "the liquid line: outerDiameter and wall",
      ),
      liquidTemperature: stated(parseTemperature, "K"),
      added: notNegative(parseMass, "kg"),
      scale: sentence(),
      tolerance: notNegative(parseMass, "kg"),
    },
    "the line set",
  );
}

/** Readings in the file, or the name of a log that holds them: one of the two. */
function readingsOrLog(reading: z.core.$ZodType): {
  readings: z.core.$ZodType;
  log: z.core.$ZodType;
} {
  return {
    readings: z.optional(
      z.array(reading, "a list of readings").check(z.minLength(2, "two readings or more")),
    ),
    log: z.optional(sentence()),
  };
}

function nitrogenHold(): z.core.$ZodType {
  return z.strictObject(
    {
      gauge: sentence(),
      thermometer: sentence(),
      ...readingsOrLog(
        z.strictObject(
          {
            time: notNegative(parseDuration, "s"),
            pressure: stated(explicitGaugePressure, "Pa gauge"),
            pipeTemperature: stated(parseTemperature, "K"),
            barometer: z.optional(stated(parseAbsolutePressure, "Pa")),
          },
          "a reading: time, pressure, pipeTemperature",
        ),
      ),
      requiredDuration: positive(parseDuration, "s"),
      internalVolume: z.optional(positive(parseVolume, "m3")),
    },
    "the hold test",
  );
}

function evacuation(): z.core.$ZodType {
  return z.strictObject(
    {
      gauge: sentence(),
      pressure: stated(explicitAbsolutePressure, "Pa"),
      limit: positive(explicitAbsolutePressure, "Pa"),
      coldestTemperature: stated(parseTemperature, "K"),
    },
    "the evacuation",
  );
}

function vacuumRise(): z.core.$ZodType {
  return z.strictObject(
    {
      gauge: sentence(),
      ...readingsOrLog(
        z.strictObject(
          { time: notNegative(parseDuration, "s"), pressure: stated(explicitAbsolutePressure, "Pa") },
          "a reading: time, pressure",
        ),
      ),
      repeatability: positive(parsePressureDifference, "Pa"),
      startMaximum: stated(explicitAbsolutePressure, "Pa"),
      settlingTime: notNegative(parseDuration, "s"),
      coldestTemperature: stated(parseTemperature, "K"),
      warmestTemperature: stated(parseTemperature, "K"),
      limit: z.optional(
        z.strictObject(
          { pressure: stated(explicitAbsolutePressure, "Pa"), after: positive(parseDuration, "s") },
          "a limit: pressure and after",
        ),
      ),
      internalVolume: z.optional(positive(parseVolume, "m3")),
    },
    "the rise test",
  );
}

function standing(): z.core.$ZodType {
  return z.strictObject(
    {
      gauge: sentence(),
      thermometer: sentence(),
      pressure: stated(explicitGaugePressure, "Pa gauge"),
      temperature: stated(parseTemperature, "K"),
    },
    "the reading at rest",
  );
}

function lineReading(): z.core.$ZodType {
  const ports = ["compressor-suction", "gas-line", "liquid-line", "after-expansion"] as const;
  return z.strictObject(
    {
      gauge: sentence(),
      thermometer: sentence(),
      port: z.enum(ports, `one of ${ports.join(", ")}`),
      pressure: stated(explicitGaugePressure, "Pa gauge"),
      lineTemperature: stated(parseTemperature, "K"),
      ambientTemperature: z.optional(stated(parseTemperature, "K")),
      target: z
        .strictObject(
          {
            minimum: z.optional(stated(parseTemperatureDifference, "K")),
            maximum: z.optional(stated(parseTemperatureDifference, "K")),
          },
          "the target: minimum, maximum or both",
        )
        .check(
          z.refine(
            ({ minimum, maximum }) => minimum !== undefined || maximum !== undefined,
            "a minimum, a maximum or both",
          ),
        ),
    },
    "a line reading",
  );
}

function topUp(): z.core.$ZodType {
  const ways = ["unknown", "vapour", "liquid"] as const;
  return z.strictObject(
    {
      charge: positive(parseMass, "kg"),
      lost: positive(parseMass, "kg"),
      leaving: z.enum(ways, `one of ${ways.join(", ")}`),
      internalVolume: positive(parseVolume, "m3"),
      restTemperature: stated(parseTemperature, "K"),
    },
    "a leak: charge, lost, leaving, internalVolume, restTemperature",
  );
}
