import * as z from "zod/mini";
import { problemsOf } from "../../catalogue/index.js";
import { IEC_EDITIONS, MOUNTINGS } from "../../safety/index.js";
import {
  attempt,
  InputError,
  parseArea,
  parseDuration,
  parseLength,
  parseLinearDensity,
  parseMass,
  parsePressureDifference,
  parseTemperature,
  parseTemperatureDifference,
  parseVolume,
} from "../../units/index.js";
import { explicitAbsolutePressure, explicitGaugePressure } from "./explicit-pressure.js";
import { JOB_FORMAT } from "./job.js";

// Everything here is a function: a schema made at module level would be work that a bundler has to keep.
// The message of each schema says what would have been right.

/**
 * Holds a document against the form of a job file. Every quantity is text with its unit, such as `"0.82 MPa gauge"` or
 * `"11.5 m"`; fields that are not known are refused, because a misspelt one would be dropped in silence.
 *
 * @returns What the schema made of it: quantities with their values, series perhaps still names of logs.
 * @throws {@link InputError} `malformed-input`, with every problem.
 */
export function parseJobDocument(document: unknown): unknown {
  const parsed = z.safeParse(jobSchema(), document);
  if (!parsed.success) throw new InputError(problemsOf(parsed.error.issues, document));
  return parsed.data;
}

function jobSchema(): z.core.$ZodType {
  return z.strictObject(
    {
      format: z.literal(JOB_FORMAT, `"${JOB_FORMAT}"`),
      title: sentence(),
      place: sentence(),
      date: z
        .string("a date such as 2026-05-14")
        .check(z.regex(/^\d{4}-\d\d-\d\d$/, "a date such as 2026-05-14")),
      atmosphere: atmosphere(),
      unit: z.strictObject(
        {
          refrigerant: sentence(),
          mode: z.enum(["cooling", "heating"], '"cooling" or "heating"'),
          nameplateCharge: stated(parseMass, "kg"),
          maximumAllowablePressure: stated(explicitGaugePressure, "Pa gauge"),
        },
        "the unit: refrigerant, mode, nameplateCharge, maximumAllowablePressure",
      ),
      instruments: z.strictObject(
        {
          gauges: z.record(z.string(), gauge(), "gauges by name"),
          thermometers: z.record(z.string(), thermometer(), "thermometers by name"),
          scales: z.record(
            z.string(),
            z.strictObject({ halfWidth: plain(parseMass) }, "a scale with its halfWidth"),
            "scales by name",
          ),
        },
        "the instruments: gauges, thermometers and scales, each by name",
      ),
      room: z.optional(room()),
      lineSet: z.optional(lineSet()),
      nitrogenHold: z.optional(nitrogenHold()),
      evacuation: z.optional(evacuation()),
      vacuumRise: z.optional(vacuumRise()),
      standing: z.optional(standing()),
      superheat: z.optional(lineReading()),
      subcooling: z.optional(lineReading()),
    },
    "a job",
  );
}

function sentence(): z.core.$ZodType {
  return z.string("a text").check(z.minLength(1, "a text that is not empty"));
}

/** A text that `parse` turns into a number; the schema's output is made by `shape`. */
function quantity<T>(
  parse: (text: string) => number,
  shape: (si: number, text: string) => T,
): z.core.$ZodType {
  return z.pipe(
    z.string("a quantity as text with its unit"),
    z.transform((text: string, context) => {
      const read = attempt(() => parse(text));
      if (read.ok) return shape(read.value, text);
      const { error } = read;
      const expected = error instanceof InputError ? error.problems[0]!.expected : error.message;
      context.issues.push({ code: "custom", input: text, message: expected });
      return z.NEVER;
    }),
  );
}

/** A reading: value, its SI unit, and text. */
function stated(parse: (text: string) => number, unit: string): z.core.$ZodType {
  return quantity(parse, (si, text) => ({ si, unit, text }));
}

/** A property of an instrument or the site: value alone. */
function plain(parse: (text: string) => number): z.core.$ZodType {
  return quantity(parse, (si) => si);
}

function number(expected: string): z.core.$ZodType {
  return z.number(expected);
}

function atmosphere(): z.core.$ZodType {
  const halfWidth = z.optional(plain(parsePressureDifference));
  return z.discriminatedUnion(
    "from",
    [
      z.strictObject({ from: z.literal("altitude"), altitude: plain(parseLength), halfWidth }),
      z.strictObject({
        from: z.literal("station-barometer"),
        pressure: plain(explicitAbsolutePressure),
        halfWidth,
      }),
      z.strictObject({
        from: z.literal("sea-level-barometer"),
        pressure: plain(explicitAbsolutePressure),
        altitude: plain(parseLength),
        halfWidth,
      }),
    ],
    'the air pressure, from "altitude", "station-barometer" or "sea-level-barometer"',
  );
}

function gauge(): z.core.$ZodType {
  return z.strictObject(
    {
      accuracy: z.discriminatedUnion(
        "kind",
        [
          z.strictObject({
            kind: z.literal("accuracy-class"),
            accuracyClass: number("a class of EN 837-1, such as 1.6"),
            scaleMinimum: plain(explicitGaugePressure),
            scaleMaximum: plain(explicitGaugePressure),
            caseTemperature: z.optional(plain(parseTemperature)),
          }),
          z.strictObject({
            kind: z.literal("percent-of-full-scale"),
            percent: number("a number of per cent"),
            fullScale: plain(explicitGaugePressure),
          }),
          z.strictObject({
            kind: z.literal("percent-of-reading"),
            percent: number("a number of per cent"),
            plus: z.optional(plain(parsePressureDifference)),
          }),
          z.strictObject({ kind: z.literal("half-width"), halfWidth: plain(parsePressureDifference) }),
          z.strictObject({
            kind: z.literal("standard-uncertainty"),
            standardUncertainty: plain(parsePressureDifference),
          }),
        ],
        'an accuracy of kind "accuracy-class", "percent-of-full-scale", "percent-of-reading", "half-width" or "standard-uncertainty"',
      ),
      resolution: z.optional(plain(parsePressureDifference)),
    },
    "a gauge with its accuracy",
  );
}

function thermometer(): z.core.$ZodType {
  return z.strictObject(
    {
      accuracy: z.discriminatedUnion(
        "kind",
        [
          z.strictObject({
            kind: z.literal("pipe-probe"),
            probe: z.enum(["clamp", "insulated-or-immersed"], '"clamp" or "insulated-or-immersed"'),
          }),
          z.strictObject({ kind: z.literal("half-width"), halfWidth: plain(parseTemperatureDifference) }),
          z.strictObject({
            kind: z.literal("standard-uncertainty"),
            standardUncertainty: plain(parseTemperatureDifference),
          }),
        ],
        'an accuracy of kind "pipe-probe", "half-width" or "standard-uncertainty"',
      ),
      resolution: z.optional(plain(parseTemperatureDifference)),
    },
    "a thermometer with its accuracy",
  );
}

function room(): z.core.$ZodType {
  return z.strictObject(
    {
      edition: z.enum(IEC_EDITIONS, `an edition of IEC 60335-2-40: ${IEC_EDITIONS.join(", ")}`),
      floorArea: stated(parseArea, "m2"),
      mounting: z.enum(MOUNTINGS, `one of ${MOUNTINGS.join(", ")}`),
      height: z.optional(stated(parseLength, "m")),
      releaseOffset: z.optional(stated(parseLength, "m")),
    },
    "the room: edition, floorArea, mounting",
  );
}

function lineSet(): z.core.$ZodType {
  return z.strictObject(
    {
      length: stated(parseLength, "m"),
      chargeFreeLength: stated(parseLength, "m"),
      chargePerMetre: stated(parseLinearDensity, "kg/m"),
      maximumLength: stated(parseLength, "m"),
      liquidLine: z.strictObject(
        { outerDiameter: stated(parseLength, "m"), wall: stated(parseLength, "m") },
        "the liquid line: outerDiameter and wall",
      ),
      liquidTemperature: stated(parseTemperature, "K"),
      added: stated(parseMass, "kg"),
      scale: sentence(),
      tolerance: stated(parseMass, "kg"),
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
            time: stated(parseDuration, "s"),
            pressure: stated(explicitGaugePressure, "Pa gauge"),
            pipeTemperature: stated(parseTemperature, "K"),
            barometer: z.optional(stated(explicitAbsolutePressure, "Pa")),
          },
          "a reading: time, pressure, pipeTemperature",
        ),
      ),
      requiredDuration: stated(parseDuration, "s"),
      internalVolume: z.optional(stated(parseVolume, "m3")),
    },
    "the hold test",
  );
}

function evacuation(): z.core.$ZodType {
  return z.strictObject(
    {
      gauge: sentence(),
      pressure: stated(explicitAbsolutePressure, "Pa"),
      limit: stated(explicitAbsolutePressure, "Pa"),
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
          { time: stated(parseDuration, "s"), pressure: stated(explicitAbsolutePressure, "Pa") },
          "a reading: time, pressure",
        ),
      ),
      repeatability: stated(parsePressureDifference, "Pa"),
      startMaximum: stated(explicitAbsolutePressure, "Pa"),
      settlingTime: stated(parseDuration, "s"),
      coldestTemperature: stated(parseTemperature, "K"),
      warmestTemperature: stated(parseTemperature, "K"),
      limit: z.optional(
        z.strictObject(
          { pressure: stated(explicitAbsolutePressure, "Pa"), after: stated(parseDuration, "s") },
          "a limit: pressure and after",
        ),
      ),
      internalVolume: z.optional(stated(parseVolume, "m3")),
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
