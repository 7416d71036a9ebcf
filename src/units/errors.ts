/** Every code a Dewline error can carry. */
export type ErrorCode =
  | "malformed-input"
  | "unknown-refrigerant"
  | "out-of-range"
  | "no-such-state"
  | "zeotrope"
  | "not-converged";

/** One thing wrong with an input: where, what was found, what would be right. */
export interface Problem {
  /** Path into the input, such as `readings.suction.pressure`; empty for the input itself. */
  readonly path: string;
  /** The offending value, as received. */
  readonly value: unknown;
  /** What would have been accepted, in words. */
  readonly expected: string;
  /** Stable name, for programs, of a refusal that means more than a wrong value: `vacuum-deeper-than-atmosphere`. */
  readonly reason?: string;
}

/** Base of all errors that Dewline throws on purpose. The message is made from the fields. */
export class DewlineError extends Error {
  /** Says which kind of error this is; stable, for programs. */
  readonly code: ErrorCode;

  constructor(code: ErrorCode, message: string) {
    super(message);
    this.name = "DewlineError";
    this.code = code;
  }
}

/** Input that is malformed or physically meaningless; all problems found are listed, not just the first. */
export class InputError extends DewlineError {
  /** Everything that is wrong, in the order found; never empty. */
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super("malformed-input", problems.map(describeProblem).join("; "));
    this.problems = problems;
  }
}

/** A quantity outside the range in which the equation or correlation was fitted. */
export class OutOfRangeError extends DewlineError {
  /** Name of the quantity, such as `temperature`. */
  readonly quantity: string;
  /** The value asked for, SI. */
  readonly value: number;
  /** Lowest value allowed, SI. */
  readonly minimum: number;
  /** Highest value allowed, SI. */
  readonly maximum: number;
  /** SI unit of the three numbers. */
  readonly unit: string;
  /** What the limits belong to: a designation, or the name of a correlation. */
  readonly subject: string;

  constructor(facts: {
    readonly quantity: string;
    readonly value: number;
    readonly minimum: number;
    readonly maximum: number;
    readonly unit: string;
    readonly subject: string;
    readonly hint?: string;
  }) {
    const { quantity, value, minimum, maximum, unit, subject, hint } = facts;
    super(
      "out-of-range",
      `${quantity} ${value} ${unit} is outside ${shortened(minimum)} to ${shortened(maximum)} ${unit} for ${subject}${hint === undefined ? "" : `; ${hint}`}`,
    );
    this.quantity = quantity;
    this.value = value;
    this.minimum = minimum;
    this.maximum = maximum;
    this.unit = unit;
    this.subject = subject;
  }
}

/** The inputs are well formed and in range, but no equilibrium state has them. */
export class NoSuchStateError extends DewlineError {
  /** The inputs that no state satisfies, SI. */
  readonly inputs: Readonly<Record<string, number>>;

  constructor(inputs: Readonly<Record<string, number>>, reason: string) {
    const given = Object.entries(inputs).map(([name, value]) => `${name} ${value}`);
    super("no-such-state", `no state with ${given.join(" and ")}: ${reason}`);
    this.inputs = inputs;
  }
}

/** An iteration did not settle. Never expected: please report the inputs. */
export class NotConvergedError extends DewlineError {
  /** The inputs that the iteration was given, SI. */
  readonly inputs: Readonly<Record<string, number>>;

  constructor(what: string, inputs: Readonly<Record<string, number>>) {
    super("not-converged", `${what} did not converge for ${JSON.stringify(inputs)}`);
    this.inputs = inputs;
  }
}

/**
 * True for any error thrown by Dewline, also by another copy of the package in the same program,
 * where `instanceof` is false.
 */
export function isDewlineError(error: unknown): error is DewlineError {
  return error instanceof Error && error.name === "DewlineError";
}

/** What a `try…` function returns instead of throwing. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: DewlineError };

/** Runs `work` and turns a {@link DewlineError} into a value; any other error is a bug and passes through. */
export function attempt<T>(work: () => T): Outcome<T> {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    if (isDewlineError(error)) return { ok: false, error };
    throw error;
  }
}

/** Throws an {@link InputError} unless `value` is a finite number. */
export function requireFinite(path: string, value: unknown): asserts value is number {
  if (typeof value !== "number" || !Number.isFinite(value)) {
    throw new InputError([{ path, value, expected: "a finite number" }]);
  }
}

/** Throws an {@link InputError} unless `value` is an object, as a caller without types may forget. */
export function requireObject(path: string, value: unknown, expected: string): asserts value is object {
  if (typeof value !== "object" || value === null) throw new InputError([{ path, value, expected }]);
}

/** Throws an {@link InputError} unless `value` is a finite number above zero. */
export function requirePositive(path: string, value: unknown): asserts value is number {
  if (typeof value !== "number" || !(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new InputError([{ path, value, expected: "a finite number above 0" }]);
  }
}

/** Enough digits of a limit to act on; the field has them all. */
function shortened(limit: number): number {
  return Number(limit.toPrecision(7));
}

function describeProblem({ path, value, expected }: Problem): string {
  return `${path === "" ? "input" : path}: expected ${expected}, got ${shown(value)}`;
}

function shown(value: unknown): string {
  if (typeof value === "string") return JSON.stringify(value);
  if (typeof value === "object" && value !== null) return Array.isArray(value) ? "an array" : "an object";
  return String(value);
}
