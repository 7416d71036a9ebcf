import * as z from "zod/mini";
import {
  parseAbsolutePressure,
  parseDuration,
  parsePressureDifference,
  parseTemperature,
  parseVolume,
} from "../../../units/index.js";
import { explicitAbsolutePressure, explicitGaugePressure } from "../read/explicit-pressure.js";
import { notNegative, positive, readingsOrLog, sentence, stated } from "./schema-fields.js";

// Everything here is a function: a schema made at module level would be work that a bundler has to keep.

export function strengthTest(): z.core.$ZodType {
  const planned = z.strictObject(
    { pressure: positive(explicitGaugePressure, "Pa gauge"), holdFor: notNegative(parseDuration, "s") },
    "a stage of the plan: pressure, holdFor",
  );
  const done = z.strictObject(
    {
      pressure: stated(explicitGaugePressure, "Pa gauge"),
      heldFor: notNegative(parseDuration, "s"),
      jointsInspected: z.boolean("true or false"),
    },
    "a stage as done: pressure, heldFor, jointsInspected",
  );
  const some = z.minLength(1, "one stage or more");
  return z.strictObject(
    {
      gauge: sentence(),
      plan: z.array(planned, "the stages of the plan").check(some),
      stages: z.array(done, "the stages as done").check(some),
    },
    "the strength test: gauge, plan, stages",
  );
}

export function nitrogenHold(): z.core.$ZodType {
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

export function evacuation(): z.core.$ZodType {
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

export function vacuumRise(): z.core.$ZodType {
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
