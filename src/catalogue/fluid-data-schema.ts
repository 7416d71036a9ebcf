import * as z from "zod/mini";
import {
  COLUMNS,
  casNumber,
  designation,
  NUMBER_TEXT,
  notes,
  referenceState,
  sentence,
  shortKey,
  synonyms,
} from "./schema-parts.js";

/** Schema of a file of `data/fluids/`. */
export function fluidDataSchema(): z.core.$ZodType {
  return z.strictObject(
    {
      ...equationFields(),
      synonyms: synonyms(),
      formula: sentence(),
      cas: casNumber("required"),
      curves: z.optional(
        z.strictObject(
          {
            vapourPressure: z.optional(curve("pressure")),
            liquidDensity: z.optional(curve("density")),
            vapourDensity: z.optional(curve("density")),
          },
          "saturation curves",
        ),
      ),
    },
    "a fluid file",
  );
}

/** Schema of a file of `data/references/`. */
export function referenceDataSchema(): z.core.$ZodType {
  const component = z.tuple([designation(), digits()], "a row [designation, mass fraction]");
  return z.strictObject(
    {
      ...equationFields(),
      composition: z.array(component, "rows of components").check(z.minLength(2, "at least two components")),
      curves: z.strictObject(
        { bubblePressure: curve("pressure"), dewPressure: curve("pressure") },
        "the bubble and dew curves",
      ),
    },
    "a reference file",
  );
}

function equationFields(): Record<string, z.core.$ZodType> {
  return {
    designation: designation(),
    equation: shortKey(),
    name: sentence(),
    molarMass: fact("g/mol"),
    gasConstant: fact("J/(mol K)"),
    reducing: z.strictObject({ temperature: fact("K"), density: fact("mol/m3") }, "the reducing point"),
    critical: z.strictObject(
      { temperature: fact("K"), density: fact("mol/m3"), pressure: fact("Pa") },
      "the critical point",
    ),
    limits: z.strictObject(
      { minimumTemperature: fact("K"), maximumTemperature: fact("K"), maximumPressure: fact("Pa") },
      "the limits of validity",
    ),
    acentricFactor: fact("1"),
    referenceState: referenceState(),
    ideal: idealPart(),
    residual: residualPart(),
    notes: notes(),
  };
}

function idealPart(): z.core.$ZodType {
  const tables = { power: table(COLUMNS.idealPower), planckEinstein: table(COLUMNS.planckEinstein) };
  return z.discriminatedUnion(
    "form",
    [
      z.strictObject({ form: z.literal("alpha0"), logTau: digits(), ...tables, ...provenance() }),
      z.strictObject({ form: z.literal("cp0"), constant: digits(), ...tables, ...provenance() }),
    ],
    'an ideal-gas part of form "alpha0" or "cp0"',
  );
}

/** The residual part of a data file, with its provenance. */
export function residualPart(): z.core.$ZodType {
  return z.strictObject(
    {
      power: table(COLUMNS.power, 1).check(z.minLength(1, "at least one row [n, t, d, l]")),
      doubleExp: z.optional(table(COLUMNS.doubleExp, 2)),
      gaussian: z.optional(table(COLUMNS.gaussian)),
      reciprocalBell: z.optional(table(COLUMNS.reciprocalBell)),
      nonAnalytic: z.optional(table(COLUMNS.nonAnalytic)),
      ...provenance(),
    },
    "the residual part",
  );
}

function curve(quantity: "pressure" | "density"): z.core.$ZodType {
  const agreement = z.strictObject(
    { overall: digits(), aboveHalfCritical: z.optional(digits()) },
    "the largest relative deviations",
  );
  return z.strictObject(
    {
      form: z.enum(["log", "log-over-temperature", "ratio"], '"log", "log-over-temperature" or "ratio"'),
      temperature: digits(),
      [quantity]: digits(),
      terms: table(COLUMNS.curve).check(z.minLength(1, "at least one row [n, t]")),
      agreement: z.optional(agreement),
      ...provenance(),
    },
    `a ${quantity} curve`,
  );
}

function fact(unit: string): z.core.$ZodType {
  const label = z.literal(unit, `the unit ${unit}`);
  return z.strictObject({ value: digits(), unit: label, ...provenance() }, `a fact in ${unit}`);
}

/** The fields that say where a block of numbers comes from. */
export function provenance(): {
  source: z.ZodMiniString;
  status: z.core.$ZodType;
  remark: z.ZodMiniOptional;
} {
  return {
    source: shortKey(),
    status: z.enum(["read", "recalled", "computed"], '"read", "recalled" or "computed"'),
    remark: z.optional(sentence()),
  };
}

/** A table of texts; the last `missing` columns of a row may be left out. */
function table(columns: readonly string[], missing: number = 0): z.ZodMiniArray {
  const row = `a row [${columns.join(", ")}]`;
  return z.array(
    z
      .array(digits(), row)
      .check(z.minLength(columns.length - missing, row), z.maxLength(columns.length, row)),
    `rows of [${columns.join(", ")}]`,
  );
}

/** A number as text. */
export function digits(): z.ZodMiniString {
  return z
    .string("a number as text")
    .check(z.regex(NUMBER_TEXT, 'a number as text, such as "0.25" or "2.1e-11"'));
}
