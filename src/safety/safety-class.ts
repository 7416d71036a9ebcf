import { InputError } from "../units/index.js";

/** Safety class of ISO 817: toxicity A or B, then how it burns. */
export type SafetyClass = "A1" | "A2L" | "A2" | "A3" | "B1" | "B2L" | "B2" | "B3";

/** Toxicity part of a safety class: A, lower; B, higher. */
export type ToxicityClass = "A" | "B";

/** Flammability part of a safety class: 1 no flame propagation, 2L lower burning velocity, 2 flammable, 3 higher. */
export type FlammabilityClass = "1" | "2L" | "2" | "3";

/** Every safety class, for lists and forms. */
export const SAFETY_CLASSES: readonly SafetyClass[] = ["A1", "A2L", "A2", "A3", "B1", "B2L", "B2", "B3"];

/**
 * Toxicity part of a safety class.
 *
 * @throws `malformed-input` for what is no safety class.
 * @source ISO 817: class A has an occupational exposure limit of 400 ppm or more, class B less.
 */
export function toxicityClass(safetyClass: SafetyClass): ToxicityClass {
  requireSafetyClass(safetyClass);
  return safetyClass.startsWith("A") ? "A" : "B";
}

/**
 * Flammability part of a safety class.
 *
 * @throws `malformed-input` for what is no safety class.
 * @source ISO 817, table of flammability classes.
 */
export function flammabilityClass(safetyClass: SafetyClass): FlammabilityClass {
  requireSafetyClass(safetyClass);
  return safetyClass.slice(1) as FlammabilityClass;
}

/** True for every class that burns: 2L, 2 and 3. */
export function isFlammable(safetyClass: SafetyClass): boolean {
  return flammabilityClass(safetyClass) !== "1";
}

/** A class that does not exist must not look like one that burns, or does not. */
function requireSafetyClass(value: unknown): void {
  if (!(SAFETY_CLASSES as readonly unknown[]).includes(value)) {
    throw new InputError([{ path: "safetyClass", value, expected: `one of ${SAFETY_CLASSES.join(", ")}` }]);
  }
}
