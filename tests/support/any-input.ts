import type fc from "fast-check";
import type { State } from "../../src/state/index.js";
import { share } from "./states.js";

/** Every number in a state, a saturation or a part of one, with its path. */
export function numbersIn(value: unknown, path = ""): [path: string, number: number][] {
  if (typeof value === "number") return [[path, value]];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`));
}

/** The size of a large change of an input: enthalpies and entropies have no zero of their own. */
export function scaleOf(name: string, value: number, { temperature, refrigerant }: State): number {
  if (name === "enthalpy" || name === "internalEnergy") return refrigerant.specificGasConstant * temperature;
  if (name === "entropy") return refrigerant.specificGasConstant;
  return name === "quality" ? 1 : value;
}

/** Numbers of every size, evenly in their logarithm. */
export function anySize(low = -300, high = 300): fc.Arbitrary<number> {
  return share().map((u) => 10 ** (low + u * (high - low)));
}

/** Every pair that fixes a state, by the names of its fields. */
export const inputPairs: readonly (readonly [string, string])[] = [
  ["temperature", "pressure"],
  ["pressure", "enthalpy"],
  ["pressure", "entropy"],
  ["temperature", "density"],
  ["pressure", "quality"],
  ["temperature", "quality"],
  ["density", "internalEnergy"],
  ["enthalpy", "entropy"],
];
