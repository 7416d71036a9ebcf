import * as z from "zod/mini";
import {
  parseDuration,
  parseMass,
  parseTemperature,
  parseTemperatureDifference,
  parseVolume,
} from "../../../units/index.js";
import { explicitGaugePressure } from "../read/explicit-pressure.js";
import { notNegative, percent, positive, sentence, stated } from "./schema-fields.js";

// Everything here is a function: a schema made at module level would be work that a bundler has to keep.

export function yearlyCheck(): z.core.$ZodType {
  return z.strictObject(
    {
      allowedChange: positive(parseTemperatureDifference, "K"),
      fullCharge: positive(parseMass, "kg"),
      added: notNegative(parseMass, "kg"),
      since: positive(parseDuration, "s"),
      allowedPercentPerYear: percent(),
    },
    "the yearly check: allowedChange, fullCharge, added, since, allowedPercentPerYear",
  );
}

export function topUp(): z.core.$ZodType {
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

export function recovery(): z.core.$ZodType {
  return z.strictObject(
    {
      scale: sentence(),
      gauge: sentence(),
      cylinder: z.strictObject(
        {
          volume: positive(parseVolume, "m3"),
          markedLimit: positive(parseMass, "kg"),
          inside: notNegative(parseMass, "kg"),
          refillable: z.boolean("true or false"),
        },
        "the cylinder: volume, markedLimit, inside, refillable",
      ),
      before: positive(parseMass, "kg"),
      after: positive(parseMass, "kg"),
      expectedCharge: positive(parseMass, "kg"),
      tolerance: positive(parseMass, "kg"),
      internalVolume: positive(parseVolume, "m3"),
      endPressure: stated(explicitGaugePressure, "Pa gauge"),
      endTemperature: stated(parseTemperature, "K"),
    },
    "the recovery",
  );
}
