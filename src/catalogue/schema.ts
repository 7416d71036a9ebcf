import type * as z from "zod/mini";
import type { Problem } from "../units/index.js";
import type { Fluid } from "./fluid.js";
import type { CurveData, FluidData, ReferenceData } from "./fluid-data.js";
import { fluidDataSchema, referenceDataSchema } from "./fluid-data-schema.js";
import { fluidSchema } from "./fluid-schema.js";
import { type Bibliography, literalOf } from "./literal.js";
import { type MassUnit, plausibilityProblems } from "./plausibility.js";
import { valueAt } from "./problems.js";
import { checkedBy, unknownSources } from "./schema-check.js";
import { NUMBER_TEXT } from "./schema-parts.js";

/**
 * Checks a run-time fluid literal: form, units that betray themselves by their size, order of limits.
 *
 * Whether the coefficients describe a fluid (critical conditions, saturation) is not looked at here.
 *
 * @param value - What should be a {@link Fluid}.
 * @returns A copy of it, checked.
 * @throws {@link InputError} `malformed-input`, with every problem found.
 */
export function parseFluid(value: unknown): Fluid {
  const numberAt = (path: readonly string[]): number | undefined => finite(valueAt(value, path));
  return checked<Fluid>(fluidSchema(), value, numberAt, { molarMass: "kg/mol", factor: 1 });
}

/**
 * Checks a file of `data/fluids/` and makes the literal of it.
 *
 * @param json - The parsed JSON of one file.
 * @param bibliography - Citations by key; without it the keys themselves stand as sources.
 * @throws {@link InputError} `malformed-input`, with every problem found, also unknown source keys.
 */
export function parseFluidData(json: unknown, bibliography?: Bibliography): Fluid {
  const data = checkedData<FluidData>(fluidDataSchema(), json, bibliography);
  const { synonyms, formula, cas } = data;
  return literalOf(data, { synonyms, formula, cas }, bibliography);
}

/** A blend treated as one fluid, with its published bubble and dew curves: a yardstick for tests. */
export interface Reference {
  /** The equation, in the form of a pure fluid; it has no formula and no CAS number. */
  readonly fluid: Fluid;
  /** Mass fractions by designation. */
  readonly composition: Readonly<Record<string, number>>;
  /** Bubble pressure curve. */
  readonly bubblePressure: CurveData;
  /** Dew pressure curve. */
  readonly dewPressure: CurveData;
}

/**
 * Checks a file of `data/references/`.
 *
 * @param json - The parsed JSON of one file.
 * @param bibliography - Citations by key; without it the keys themselves stand as sources.
 * @throws {@link InputError} `malformed-input`, with every problem found.
 */
export function parseReferenceData(json: unknown, bibliography?: Bibliography): Reference {
  const data = checkedData<ReferenceData>(referenceDataSchema(), json, bibliography, compositionProblems);
  return {
    fluid: literalOf(data, { synonyms: [], formula: "", cas: "" }, bibliography),
    composition: Object.fromEntries(
      data.composition.map(([component = "", fraction = ""]) => [component, Number(fraction)]),
    ),
    ...data.curves,
  };
}

function compositionProblems(json: unknown): Problem[] {
  const rows = valueAt(json, ["composition"]);
  if (!Array.isArray(rows)) return [];
  const whole = rows.reduce<number>((sum, row) => sum + Number(valueAt(row, [1])), 0);
  // Mass fractions are printed with four decimals at most: anything else is a slip.
  if (Math.abs(whole - 1) < 1e-6) return [];
  return [{ path: "composition", value: whole, expected: "mass fractions that add up to 1" }];
}

function checkedData<Data extends FluidData | ReferenceData>(
  schema: z.core.$ZodType,
  json: unknown,
  bibliography: Bibliography | undefined,
  more: (json: unknown) => Problem[] = () => [],
): Data {
  const numberAt = (path: readonly string[]): number | undefined => {
    const text = valueAt(json, [...path, "value"]);
    return typeof text === "string" && NUMBER_TEXT.test(text) ? finite(Number(text)) : undefined;
  };
  return checked<Data>(schema, json, numberAt, { molarMass: "g/mol", factor: 1000 }, (value) => [
    ...more(value),
    ...unknownSources(value, bibliography),
  ]);
}

/** The checks of a schema and those of plausibility, together. */
function checked<Checked>(
  schema: z.core.$ZodType,
  input: unknown,
  numberAt: (path: readonly string[]) => number | undefined,
  unit: MassUnit,
  more: (input: unknown) => Problem[] = () => [],
): Checked {
  return checkedBy<Checked>(schema, input, (told) => [
    ...plausibilityProblems(numberAt, input, unit).filter(({ path }) => !told.has(path)),
    ...more(input),
  ]);
}

function finite(value: unknown): number | undefined {
  return typeof value === "number" && Number.isFinite(value) ? value : undefined;
}
