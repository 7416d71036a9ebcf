import { attempt, InputError } from "../../../units/index.js";

/** Does a part of a step's work; what it refuses is named by the path of that part. */
export function atPath<T>(path: string, work: () => T): T {
  const outcome = attempt(work);
  if (outcome.ok) return outcome.value;
  if (!(outcome.error instanceof InputError)) throw outcome.error;
  throw new InputError(
    outcome.error.problems.map((problem) => ({
      ...problem,
      path: `${path}.${problem.path.replace(/^by\./, "")}`,
    })),
  );
}
