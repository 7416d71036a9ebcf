import * as z from "zod/mini";
import { attempt, InputError } from "../../../units/index.js";

// Everything here is a function: a schema made at module level would be work that a bundler has to keep.

/** Whether a text is a day of the calendar, as in ISO 8601. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false;
  const date = new Date(`${text}T00:00:00Z`);
  // A day that the month does not have is carried into the next.
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}

/** A text of one line. */
export function sentence(): z.core.$ZodType {
  return z.string("a text").check(z.regex(/^[^\r\n]*\S[^\r\n]*$/, "a text of one line that is not empty"));
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
export function stated(parse: (text: string) => number, unit: string): z.core.$ZodType {
  return quantity(parse, (si, text) => ({ si, unit, text }));
}

/** A property of an instrument or the site: value alone. */
export function plain(parse: (text: string) => number): z.core.$ZodType {
  return quantity(parse, (si) => si);
}

/** Reads a quantity that has to be above 0, or at least 0. */
export function above(
  parse: (text: string) => number,
  kind: "positive" | "not negative",
): (text: string) => number {
  return (text) => {
    const si = parse(text);
    if (si > 0 || (si === 0 && kind === "not negative")) return si;
    const expected = kind === "positive" ? "a quantity above 0" : "a quantity of 0 or more";
    throw new InputError([{ path: "", value: text, expected }]);
  };
}

/** A reading that has to be above 0. */
export function positive(parse: (text: string) => number, siUnit: string): z.core.$ZodType {
  return stated(above(parse, "positive"), siUnit);
}

/** A reading that may be 0 but not below. */
export function notNegative(parse: (text: string) => number, siUnit: string): z.core.$ZodType {
  return stated(above(parse, "not negative"), siUnit);
}

export function number(expected: string): z.core.$ZodType {
  return z.number(expected);
}

/** A count: whole, 0 or above. */
export function count(): z.core.$ZodType {
  const expected = "a whole number, 0 or above";
  return z.int(expected).check(z.minimum(0, expected));
}

/** A number of per cent above 0, at most 100. */
export function percent(): z.core.$ZodType {
  const expected = "a number of per cent, above 0 and at most 100";
  return z.number(expected).check(z.positive(expected), z.maximum(100, expected));
}

/** Readings in the file, or the name of a log that holds them: one of the two. */
export function readingsOrLog(reading: z.core.$ZodType): {
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
