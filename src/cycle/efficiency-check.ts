import type { InputCheck } from "../units/index.js";

/** Records a problem unless the value is an efficiency, above 0 and at most 1. */
export function checkEfficiency(check: InputCheck, path: string, value: unknown): boolean {
  const isOne = typeof value === "number" && value > 0 && value <= 1;
  return check.require(isOne, path, value, "above 0 and at most 1");
}
