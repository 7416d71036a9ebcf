import * as z from "zod/mini";
import {
  COLUMNS,
  casNumber,
  designation,
  notes,
  referenceState,
  sentence,
  shortKey,
  synonyms,
} from "./schema-parts.js";

/** Schema of a run-time fluid literal. Strict, because a misspelt optional table would be dropped in silence. */
export function fluidSchema(): z.core.$ZodType {
  return z.strictObject(
    {
      designation: designation(),
      equation: shortKey(),
      name: sentence(),
      synonyms: synonyms(),
      formula: z.string("a chemical formula, or an empty text"),
      cas: casNumber("optional"),
      molarMass: positive(),
      gasConstant: positive(),
      reducing: z.strictObject({ temperature: positive(), density: positive() }, "the reducing point"),
      critical: z.strictObject(
        { temperature: positive(), density: positive(), pressure: positive() },
        "the critical point",
      ),
      limits: z.strictObject(
        { minimumTemperature: positive(), maximumTemperature: positive(), maximumPressure: positive() },
        "the limits of validity",
      ),
      acentricFactor: finite(),
      referenceState: referenceState(),
      ideal: idealPart(),
      residual: residualPart(),
      sources: z.array(sentence(), "a list of citations").check(z.minLength(1, "at least one source")),
      notes: notes(),
    },
    "a fluid",
  );
}

function idealPart(): z.core.$ZodType {
  const tables = { power: table(COLUMNS.idealPower), planckEinstein: table(COLUMNS.planckEinstein) };
  return z.discriminatedUnion(
    "form",
    [
      z.strictObject({ form: z.literal("alpha0"), logTau: finite(), ...tables }),
      z.strictObject({ form: z.literal("cp0"), constant: finite(), ...tables }),
    ],
    'an ideal-gas part of form "alpha0" or "cp0"',
  );
}

/** The residual part of a run-time literal. */
export function residualPart(): z.core.$ZodType {
  return z.strictObject(
    {
      power: table(COLUMNS.power).check(z.minLength(1, "at least one row [n, t, d, l]")),
      doubleExp: z.optional(table(COLUMNS.doubleExp)),
      gaussian: z.optional(table(COLUMNS.gaussian)),
      reciprocalBell: z.optional(table(COLUMNS.reciprocalBell)),
      nonAnalytic: z.optional(table(COLUMNS.nonAnalytic)),
    },
    "the residual part",
  );
}

function table(columns: readonly string[]): z.ZodMiniArray {
  const row = `a row [${columns.join(", ")}]`;
  return z.array(
    z.array(finite(), row).check(z.length(columns.length, row)),
    `rows of [${columns.join(", ")}]`,
  );
}

function finite(): z.ZodMiniNumber {
  return z.number("a finite number");
}

function positive(): z.ZodMiniNumber {
  return z.number("a finite number above 0").check(z.gt(0, "a finite number above 0"));
}
