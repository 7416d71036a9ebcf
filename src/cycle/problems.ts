import { InputError, type Problem } from "../units/index.js";

/** Records a problem unless `good`; says whether it was. Tests "inside", so that NaN is bad. */
export function demand(
  problems: Problem[],
  good: boolean,
  path: string,
  value: unknown,
  expected: string,
): boolean {
  if (!good) problems.push({ path, value, expected });
  return good;
}

/** Records a problem unless the value is a finite number above 0. */
export function demandPositive(problems: Problem[], path: string, value: unknown): boolean {
  return demand(problems, isNumber(value) && value > 0, path, value, "a finite number above 0");
}

/** Records a problem unless the value is a finite number, 0 or above. */
export function demandNotNegative(problems: Problem[], path: string, value: unknown): boolean {
  return demand(problems, isNumber(value) && value >= 0, path, value, "a finite number, 0 or above");
}

/** Records a problem unless the value is a finite number. */
export function demandFinite(problems: Problem[], path: string, value: unknown): boolean {
  return demand(problems, isNumber(value), path, value, "a finite number");
}

/** Records a problem unless the value is an efficiency, above 0 and at most 1. */
export function demandEfficiency(problems: Problem[], path: string, value: unknown): boolean {
  return demand(problems, isNumber(value) && value > 0 && value <= 1, path, value, "above 0 and at most 1");
}

/** Throws an {@link InputError} with all problems, if there are any. */
export function throwAny(problems: readonly Problem[]): void {
  if (problems.length > 0) throw new InputError(problems);
}

function isNumber(value: unknown): value is number {
  return typeof value === "number" && Number.isFinite(value);
}
