import type { Problem } from "../units/index.js";
import type { Fluid } from "./fluid.js";
import { keysOf, nameKey } from "./name-key.js";

/**
 * Names of a fluid that already lead to another one: with it in the list, those names would find neither.
 *
 * A further equation of a listed refrigerant is no clash: it shares the designation as it is written there, and has an
 * equation name of its own.
 */
export function clashesOf(fluids: readonly Fluid[], fluid: Fluid): readonly Problem[] {
  return fluids.flatMap((other) => clashesWith(other, fluid));
}

function clashesWith(other: Fluid, fluid: Fluid): Problem[] {
  if (other.designation === fluid.designation) {
    return nameKey(other.equation) === nameKey(fluid.equation)
      ? [clash("equation", fluid.equation, `a name that no equation of ${other.designation} has yet`)]
      : [];
  }
  const taken = [...keysOf(other).designations, ...keysOf(other).names];
  const expected = `a name that does not lead to ${other.designation}`;
  const names: readonly (readonly [path: string, name: string])[] = [
    ["designation", fluid.designation],
    ["name", fluid.name],
    ...fluid.synonyms.map((synonym, index) => [`synonyms[${index}]`, synonym] as const),
  ];
  return [
    ...names
      .filter(([, name]) => taken.includes(nameKey(name)))
      .map(([path, name]) => clash(path, name, expected)),
    ...(fluid.cas !== "" && fluid.cas === other.cas
      ? [clash("cas", fluid.cas, `a number that is not that of ${other.designation}, or an empty text`)]
      : []),
  ];
}

function clash(path: string, value: string, expected: string): Problem {
  return { path, value, expected };
}
