import * as z from "zod/mini";
import {
  parseDuration,
  parseTemperature,
  parseTemperatureDifference,
  parseVolumeFlow,
} from "../../../units/index.js";
import { explicitGaugePressure } from "../read/explicit-pressure.js";
import { notNegative, percent, positive, readingsOrLog, sentence, stated } from "./schema-fields.js";

// Everything here is a function: a schema made at module level would be work that a bundler has to keep.

export function standing(): z.core.$ZodType {
  return z.strictObject(
    {
      gauge: sentence(),
      thermometer: sentence(),
      pressure: z.optional(stated(explicitGaugePressure, "Pa gauge")),
      temperature: z.optional(stated(parseTemperature, "K")),
      ...series(),
    },
    "the reading at rest",
  );
}

export function lineReading(): z.core.$ZodType {
  const ports = ["compressor-suction", "gas-line", "liquid-line", "after-expansion"] as const;
  return z.strictObject(
    {
      gauge: sentence(),
      thermometer: sentence(),
      port: z.enum(ports, `one of ${ports.join(", ")}`),
      pressure: z.optional(stated(explicitGaugePressure, "Pa gauge")),
      lineTemperature: z.optional(stated(parseTemperature, "K")),
      ...series(),
      ambientTemperature: z.optional(stated(parseTemperature, "K")),
      target: range(stated(parseTemperatureDifference, "K")),
    },
    "a line reading",
  );
}

export function running(): z.core.$ZodType {
  const devices = ["fixed-orifice", "thermostatic-valve", "electronic-valve"] as const;
  const split = range(stated(parseTemperatureDifference, "K"));
  return z.strictObject(
    {
      meteringDevice: z.enum(devices, `one of ${devices.join(", ")}`),
      thermometer: sentence(),
      outdoorTemperature: stated(parseTemperature, "K"),
      returnAir: air(),
      supplyAir: z.optional(air()),
      airFlow: z.optional(
        z.strictObject(
          { flow: positive(parseVolumeFlow, "m3/s"), percent: percent() },
          "the air flow: flow, percent",
        ),
      ),
      dischargeTemperature: z.optional(stated(parseTemperature, "K")),
      targets: z.strictObject(
        {
          condensingSplit: split,
          evaporatingSplit: split,
          discharge: z.optional(range(stated(parseTemperature, "K"))),
        },
        "the targets: condensingSplit and evaporatingSplit",
      ),
      conditions: z.strictObject(
        {
          steadyFor: notNegative(parseDuration, "s"),
          cleanCoils: known(),
          airFlowKnown: known(),
          fixedSpeed: known(),
        },
        "the conditions: steadyFor, cleanCoils, airFlowKnown, fixedSpeed",
      ),
    },
    "the running unit",
  );
}

/** A series instead of one reading. */
function series() {
  return {
    ...readingsOrLog(
      z.strictObject(
        {
          time: notNegative(parseDuration, "s"),
          pressure: stated(explicitGaugePressure, "Pa gauge"),
          temperature: stated(parseTemperature, "K"),
        },
        "a reading: time, pressure, temperature",
      ),
    ),
    allowedDrift: z.optional(positive(parseTemperatureDifference, "K")),
  };
}

function air(): z.core.$ZodType {
  return z.strictObject(
    { dryBulb: stated(parseTemperature, "K"), wetBulb: z.optional(stated(parseTemperature, "K")) },
    "air: dryBulb, and perhaps wetBulb",
  );
}

function known(): z.core.$ZodType {
  return z.enum(["yes", "no", "unknown"], "yes, no or unknown");
}

function range(limit: z.core.$ZodType): z.core.$ZodType {
  return z
    .strictObject(
      { minimum: z.optional(limit), maximum: z.optional(limit) },
      "the target: minimum, maximum or both",
    )
    .check(
      z.refine(
        ({ minimum, maximum }) => minimum !== undefined || maximum !== undefined,
        "a minimum, a maximum or both",
      ),
    );
}
