import { InputError, type Problem } from "../units/index.js";
import type { SaturationInput, StateInput, StateOptions } from "./types.js";

/** The pairs that {@link StateInput} allows, each in alphabetical order. */
const pairs = [
  "pressure+temperature",
  "enthalpy+pressure",
  "entropy+pressure",
  "density+temperature",
  "pressure+quality",
  "quality+temperature",
  "density+internalEnergy",
  "enthalpy+entropy",
] as const;

/** Lowest pressure answered, Pa: far below it the properties of a gas run out of the range of numbers. */
export const lowestPressure = 1e-250;

/** One of the allowed pairs, by name. */
export type Pair = (typeof pairs)[number];

const signs: Readonly<Record<string, "positive" | "any" | "fraction">> = {
  temperature: "positive",
  pressure: "positive",
  density: "positive",
  quality: "fraction",
  enthalpy: "any",
  entropy: "any",
  internalEnergy: "any",
};

/** Checks a state input and says which pair it is; lists every problem at once. */
export function checkStateInput(input: StateInput): Pair {
  const names = checkNames(input, "two of a pair such as { temperature, pressure }");
  const pair = names.join("+");
  if (!(pairs as readonly string[]).includes(pair)) {
    throw new InputError([
      {
        path: "",
        value: `{ ${names.join(", ")} }`,
        expected: `one of the pairs ${pairs.join(", ").replaceAll("+", " + ")}`,
      },
    ]);
  }
  return pair as Pair;
}

/** Checks a saturation input; lists every problem at once. */
export function checkSaturationInput(input: SaturationInput): "temperature" | "pressure" {
  const names = checkNames(input, "{ temperature } or { pressure }");
  const [name] = names;
  if (names.length !== 1 || (name !== "temperature" && name !== "pressure")) {
    throw new InputError([
      {
        path: "",
        value: `{ ${names.join(", ")} }`,
        expected: "{ temperature } or { pressure }, one of them",
      },
    ]);
  }
  return name;
}

/** What a property call does when it is not told: nothing outside the range. */
export const usual: StateOptions = {};

/** Checks the options of a call: a misspelt one would be dropped in silence. */
export function checkOptions(options: unknown, allowed: readonly string[], expected: string): void {
  if (typeof options !== "object" || options === null) {
    throw new InputError([{ path: "options", value: options, expected }]);
  }
  const problems = Object.entries(options)
    .filter(([name]) => !allowed.includes(name))
    .map(([name, value]) => ({ path: `options.${name}`, value, expected: `no such option; ${expected}` }));
  if (problems.length > 0) throw new InputError(problems);
}

/** Checks the options of a property call. */
export function checkStateOptions(options: StateOptions): void {
  if (options === usual) return;
  const expected = "{ extrapolate: true } or { extrapolate: false }";
  checkOptions(options, ["extrapolate"], expected);
  const { extrapolate } = options;
  if (extrapolate !== undefined && typeof extrapolate !== "boolean") {
    throw new InputError([{ path: "options.extrapolate", value: extrapolate, expected: "true or false" }]);
  }
}

/** The names given, sorted; throws if any is unknown or its value out of its sign. */
function checkNames(input: object, expected: string): string[] {
  if (typeof input !== "object" || input === null)
    throw new InputError([{ path: "", value: input, expected }]);
  const problems: Problem[] = [];
  const names = Object.keys(input).sort();
  for (const name of names) {
    const value = (input as Record<string, unknown>)[name];
    const sign = Object.hasOwn(signs, name) ? signs[name] : undefined;
    if (sign === undefined) {
      problems.push({ path: name, value, expected: `one of ${Object.keys(signs).join(", ")}` });
    } else if (typeof value !== "number" || !Number.isFinite(value)) {
      problems.push({ path: name, value, expected: "a finite number, SI" });
    } else if (sign === "positive" && !(value > 0)) {
      problems.push({ path: name, value, expected: "a number above 0, SI" });
    } else if (sign === "fraction" && !(value >= 0 && value <= 1)) {
      problems.push({ path: name, value, expected: "a mass fraction of vapour from 0 to 1" });
    }
  }
  if (problems.length > 0) throw new InputError(problems);
  return names;
}
