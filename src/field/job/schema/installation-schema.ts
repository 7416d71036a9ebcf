import * as z from "zod/mini";
import { IEC_EDITIONS, MOUNTINGS } from "../../../safety/index.js";
import {
  parseArea,
  parseLength,
  parseLinearDensity,
  parseMass,
  parseTemperature,
  parseTorque,
} from "../../../units/index.js";
import { explicitGaugePressure } from "../read/explicit-pressure.js";
import { count, notNegative, percent, positive, sentence, stated } from "./schema-fields.js";

// Everything here is a function: a schema made at module level would be work that a bundler has to keep.

export function room(): z.core.$ZodType {
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

export function joints(): z.core.$ZodType {
  const range = z.strictObject(
    { minimum: positive(parseTorque, "N m"), maximum: positive(parseTorque, "N m") },
    "the torque of the manual: minimum and maximum",
  );
  const joint = z.strictObject(
    {
      at: sentence(),
      outerDiameter: positive(parseLength, "m"),
      torque: positive(parseTorque, "N m"),
      manual: z.optional(range),
    },
    "a joint: at, outerDiameter, torque",
  );
  return z.strictObject(
    {
      wrenchPercent: percent(),
      list: z.array(joint, "a list of joints").check(z.minLength(1, "one joint or more")),
    },
    "the joints: wrenchPercent and list",
  );
}

export function lineSet(): z.core.$ZodType {
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

export function charge(): z.core.$ZodType {
  const ways = ["liquid", "vapour"] as const;
  return z.strictObject(
    {
      scale: sentence(),
      before: positive(parseMass, "kg"),
      after: positive(parseMass, "kg"),
      wanted: positive(parseMass, "kg"),
      tolerance: positive(parseMass, "kg"),
      hoseHoldUp: notNegative(parseMass, "kg"),
      cylinderTemperature: stated(parseTemperature, "K"),
      drawnAs: z.enum(ways, `one of ${ways.join(", ")}`),
    },
    "the charge: scale, before, after, wanted, tolerance, hoseHoldUp, cylinderTemperature, drawnAs",
  );
}

export function opening(): z.core.$ZodType {
  return z.strictObject(
    {
      gauge: sentence(),
      pressure: stated(explicitGaugePressure, "Pa gauge"),
      search: z.strictObject(
        {
          seenPerYear: positive(parseMass, "kg"),
          requiredPerYear: positive(parseMass, "kg"),
          joints: count(),
          leaks: count(),
        },
        "the search: seenPerYear, requiredPerYear, joints, leaks",
      ),
    },
    "the opening: gauge, pressure, search",
  );
}
