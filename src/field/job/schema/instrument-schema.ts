import * as z from "zod/mini";
import {
  parseMass,
  parsePressureDifference,
  parseTemperature,
  parseTemperatureDifference,
} from "../../../units/index.js";
import { explicitGaugePressure } from "../read/explicit-pressure.js";
import { above, number, plain } from "./schema-fields.js";

export function gauge(): z.core.$ZodType {
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

export function thermometer(): z.core.$ZodType {
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

export function scale(): z.core.$ZodType {
  return z.strictObject({ halfWidth: plain(above(parseMass, "positive")) }, "a scale with its halfWidth");
}
