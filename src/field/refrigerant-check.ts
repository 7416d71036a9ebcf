import type { InputCheck } from "../units/index.js";

/** Records a problem unless there is something that knows its composition and answers as a refrigerant does. */
export function checkRefrigerant(check: InputCheck, path: string, value: unknown): boolean {
  const isOne =
    typeof value === "object" &&
    value !== null &&
    "composition" in value &&
    ["bubble", "dew", "state"].every(
      (name) => typeof (value as Readonly<Record<string, unknown>>)[name] === "function",
    );
  return check.require(isOne, path, value, "a refrigerant");
}
