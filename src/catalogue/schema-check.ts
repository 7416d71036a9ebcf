import * as z from "zod/mini";
import { InputError, type Problem } from "../units/index.js";
import { type Bibliography, sourceKeysOf } from "./literal.js";
import { problemsOf } from "./problems.js";

/**
 * Runs every check, whatever the others say, and throws once.
 *
 * @param more - Checks that a schema cannot make; it is given the paths of which something is wrong already.
 * @returns A copy of the input, checked.
 */
export function checkedBy<Checked>(
  schema: z.core.$ZodType,
  input: unknown,
  more: (told: ReadonlySet<string>) => readonly Problem[],
): Checked {
  const parsed = z.safeParse(schema, input);
  const malformed = parsed.success ? [] : problemsOf(parsed.error.issues, input);
  const problems = [...malformed, ...more(new Set(malformed.map(({ path }) => path)))];
  if (!parsed.success || problems.length > 0) throw new InputError(problems);
  return parsed.data as Checked;
}

/** Source keys of a data file that the bibliography does not have; none without a bibliography. */
export function unknownSources(json: unknown, bibliography: Bibliography | undefined): Problem[] {
  if (bibliography === undefined) return [];
  return sourceKeysOf(json)
    .filter((key) => !Object.hasOwn(bibliography, key))
    .map((key) => ({ path: "source", value: key, expected: "a key of the bibliography" }));
}
