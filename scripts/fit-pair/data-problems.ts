import { valueAt } from "../../src/catalogue/problems.js";
import type { Problem } from "../../src/units/index.js";
import { inputs } from "./points.js";

/** Fractions that add up to something farther from 1 are not just rounded. */
const mostRounding = 0.002;

/** What the schema of a file of `data/equilibria/` cannot see of its points. */
export function pointProblems(json: unknown, isKnown: (name: string) => boolean): readonly Problem[] {
  const points = valueAt(json, ["points"]);
  if (!Array.isArray(points)) return [];
  return points.flatMap((point: unknown, index) => {
    const path = `points[${index}]`;
    return [
      ...compositionProblems(point, path, isKnown),
      ...conditionProblems(point, path, valueAt(json, ["units", "temperature"])),
      ...uncertaintyProblems(point, path, valueAt(json, ["uncertainty"])),
    ];
  });
}

function conditionProblems(point: unknown, path: string, unit: unknown): readonly Problem[] {
  const pressure = valueAt(point, ["pressure"]);
  const temperature = valueAt(point, ["temperature"]);
  const isPositive = pressure === undefined || Number(pressure) > 0;
  return [
    ...unless(isPositive, `${path}.pressure`, pressure, "a pressure above 0"),
    ...unless(
      Number(temperature) > (unit === "°C" ? -273.15 : 0),
      `${path}.temperature`,
      temperature,
      "a temperature above absolute zero",
    ),
  ];
}

function uncertaintyProblems(point: unknown, path: string, usual: unknown): readonly Problem[] {
  const own = valueAt(point, ["uncertainty"]);
  const size = (input: string): number => Number(valueAt(own, [input]) ?? valueAt(usual, [input]) ?? 0);
  const isVle = valueAt(point, ["kind"]) === "vle";
  return [
    ...inputs.flatMap((input) =>
      unless(size(input) >= 0, `${path}.uncertainty.${input}`, size(input), "an uncertainty of 0 or more"),
    ),
    ...unless(
      size("temperature") > 0 || size("pressure") > 0,
      `${path}.uncertainty`,
      own,
      "an uncertainty of temperature or pressure above 0, here or for the whole file",
    ),
    ...unless(
      !isVle || size("vapour") > 0,
      `${path}.uncertainty.vapour`,
      valueAt(own, ["vapour"]),
      "an uncertainty of the vapour's fractions above 0, here or for the whole file",
    ),
  ];
}

function compositionProblems(
  point: unknown,
  path: string,
  isKnown: (name: string) => boolean,
): readonly Problem[] {
  const phases = (["liquid", "vapour"] as const).flatMap((phase) => {
    const fractions = valueAt(point, [phase]);
    return typeof fractions === "object" && fractions !== null ? [{ phase, fractions }] : [];
  });
  const [first = [], second = first] = phases.map(({ fractions }) => Object.keys(fractions));
  return [
    ...phases.flatMap(({ phase, fractions }) =>
      fractionProblems(Object.entries(fractions), `${path}.${phase}`, isKnown),
    ),
    ...unless(
      [...second].sort().join() === [...first].sort().join(),
      `${path}.vapour`,
      second.join(", "),
      `the components of the liquid, ${first.join(", ")}`,
    ),
  ];
}

function fractionProblems(
  fractions: readonly (readonly [name: string, text: unknown])[],
  path: string,
  isKnown: (name: string) => boolean,
): readonly Problem[] {
  const problems = [
    ...fractions.flatMap(([name, text]) => [
      ...unless(isKnown(name), `${path}.${name}`, name, "a fluid of the catalogue"),
      ...unless(
        Number(text) > 0 && Number(text) < 1,
        `${path}.${name}`,
        text,
        "a fraction above 0 and below 1",
      ),
    ]),
    ...unless(fractions.length >= 2, path, fractions.length, "at least two components"),
  ];
  if (problems.length > 0) return problems;
  const sum = fractions.reduce((total, [, text]) => total + Number(text), 0);
  // Each may have been rounded by half a unit of its last digit; a sum far off is a slip, however short they are.
  const rounding = fractions.reduce((total, [, text]) => total + lastDigit(String(text)) / 2, 1e-9);
  const isWhole = Math.abs(sum - 1) <= Math.min(rounding, mostRounding);
  return unless(isWhole, path, sum, "fractions that add up to 1");
}

/** One unit of the last digit of a number as printed. */
function lastDigit(text: string): number {
  const [mantissa = "", exponent = "0"] = text.toLowerCase().split("e");
  return 10 ** (Number(exponent) - (mantissa.split(".")[1]?.length ?? 0));
}

function unless(isRight: boolean, path: string, value: unknown, expected: string): readonly Problem[] {
  return isRight ? [] : [{ path, value, expected }];
}
