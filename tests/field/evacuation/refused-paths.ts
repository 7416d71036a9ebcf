import type { InputError, Outcome } from "../../../src/units/index.js";

/** Paths of all problems of a refused input; throws where nothing was refused, or not as an input. */
export function refusedPaths(outcome: Outcome<unknown>): string[] {
  if (outcome.ok) throw new Error(`nothing was refused: ${JSON.stringify(outcome.value)}`);
  if (outcome.error.code !== "malformed-input") throw outcome.error;
  return (outcome.error as InputError).problems.map(({ path }) => path);
}
