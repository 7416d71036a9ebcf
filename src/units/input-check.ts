import { InputError, type Problem } from "./errors.js";

/**
 * Collects everything that is wrong with an input object, so that the caller hears of all of it at once.
 *
 * Each check says whether the value is good, testing "inside" so that NaN is bad.
 *
 * @internal
 */
export class InputCheck {
  /** Found so far, in order. */
  readonly problems: Problem[] = [];

  /** Records a problem unless `good`. */
  require(good: boolean, path: string, value: unknown, expected: string): boolean {
    if (!good) this.problems.push({ path, value, expected });
    return good;
  }

  /** A finite number. */
  finite(path: string, value: unknown): boolean {
    return this.require(typeof value === "number" && Number.isFinite(value), path, value, "a finite number");
  }

  /** A finite number above zero. */
  positive(path: string, value: unknown): boolean {
    return this.require(isPositive(value), path, value, "a finite number above 0");
  }

  /** A finite number, zero or above. */
  notNegative(path: string, value: unknown): boolean {
    return this.require(value === 0 || isPositive(value), path, value, "a finite number, 0 or above");
  }

  /** One of a list of words. */
  oneOf(path: string, value: unknown, allowed: readonly string[]): boolean {
    return this.require(
      typeof value === "string" && allowed.includes(value),
      path,
      value,
      `one of ${allowed.join(", ")}`,
    );
  }

  /** Throws an {@link InputError} with all problems, if there are any. */
  finish(): void {
    if (this.problems.length > 0) throw new InputError(this.problems);
  }
}

function isPositive(value: unknown): boolean {
  return typeof value === "number" && value > 0 && value < Number.POSITIVE_INFINITY;
}
