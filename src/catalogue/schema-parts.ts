import * as z from "zod/mini";

// Everything here is a function: a schema made at module level would be work that a bundler has to keep.
// The message of a schema says what would have been right; problems.ts relies on that.

/** A number as text: `0.25`, `2.1e-11`, `70e6`. */
export const NUMBER_TEXT: RegExp = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/i;

/** A text that says something. */
export function sentence(): z.ZodMiniString {
  return z.string("a text").check(z.minLength(1, "a text that is not empty"));
}

/** A short name such as `span-1996`. */
export function shortKey(): z.ZodMiniString {
  const shape = /^[a-z0-9]+(-[a-z0-9]+)*$/;
  return z
    .string("a short key")
    .check(z.regex(shape, "small letters, digits and single hyphens, such as span-1996"));
}

/** A designation such as `R-32`. */
export function designation(): z.ZodMiniString {
  return z
    .string("a designation such as R-32")
    .check(z.regex(/^\S(.*\S)?$/, "a designation such as R-32, without space at either end"));
}

/** The zero of enthalpy and entropy. */
export function referenceState(): z.ZodMiniEnum<{ iir: "iir"; nbp: "nbp" }> {
  return z.enum(["iir", "nbp"], '"iir" or "nbp"');
}

/** Sentences about doubts and corrections. */
export function notes(): z.ZodMiniArray<z.ZodMiniString> {
  return z.array(sentence(), "a list of notes, which may be empty");
}

/** Names a fluid is also asked for by. */
export function synonyms(): z.ZodMiniArray<z.ZodMiniString> {
  return z.array(sentence(), "a list of names, which may be empty");
}

/** A CAS registry number; the empty text, for a substance without one, only where `optional`. */
export function casNumber(kind: "required" | "optional"): z.ZodMiniString {
  const fits = (cas: string): boolean => (cas === "" ? kind === "optional" : hasCasForm(cas));
  return z
    .string("a CAS registry number")
    .check(z.refine(fits, "a CAS registry number whose check digit fits, such as 75-10-5"));
}

/** The last digit is the sum of the others, each times its place from the right, modulo 10. */
function hasCasForm(cas: string): boolean {
  if (!/^\d{2,7}-\d{2}-\d$/.test(cas)) return false;
  const [check = 0, ...others] = [...cas.replaceAll("-", "")].map(Number).reverse();
  return others.reduce((sum, digit, index) => sum + digit * (index + 1), 0) % 10 === check;
}

/** The columns of every table of coefficients, in order; the forms are explained at the type `ResidualPart`. */
export const COLUMNS = {
  idealPower: ["n", "exponent"],
  planckEinstein: ["n", "theta"],
  power: ["n", "t", "d", "l"],
  doubleExp: ["n", "t", "d", "l", "m", "g", "k"],
  gaussian: ["n", "t", "d", "eta", "beta", "gamma", "epsilon"],
  reciprocalBell: ["n", "t", "d", "eta", "beta", "gamma", "epsilon", "b"],
  nonAnalytic: ["n", "a", "b", "B", "C", "D", "A", "beta"],
  curve: ["n", "t"],
} as const;
