import type { Problem } from "../units/index.js";
import { valueAt } from "./problems.js";

/** Reads the number at a path, or undefined where there is none. */
export type NumberReader = (path: readonly string[]) => number | undefined;

interface Bounds {
  readonly path: readonly string[];
  readonly low: number;
  readonly high: number;
  readonly expected: string;
}

/** Sizes that betray a wrong unit. Every substance that is used as a refrigerant lies well inside. */
function sizeBounds(units: MassUnit): readonly Bounds[] {
  const density = "a density in mol/m3, above 100 (one in mol/dm3 must be multiplied by 1000)";
  return [
    {
      path: ["molarMass"],
      low: 0.001 * units.factor,
      high: units.factor,
      expected: `a molar mass in ${units.molarMass}, from ${0.001 * units.factor} to ${units.factor}`,
    },
    {
      path: ["gasConstant"],
      low: 8.31,
      high: 8.32,
      expected: "the molar gas constant the equation was fitted with, 8.31 to 8.32 J/(mol K)",
    },
    { path: ["reducing", "density"], low: 100, high: 1e6, expected: density },
    { path: ["critical", "density"], low: 100, high: 1e6, expected: density },
    {
      path: ["critical", "pressure"],
      low: 1e5,
      high: 1e9,
      expected: "a pressure in Pa, above 100000 (one in MPa must be multiplied by 1000000)",
    },
    {
      path: ["limits", "maximumTemperature"],
      low: 0,
      high: 1e5,
      expected: "a temperature in K, below 100000",
    },
    {
      path: ["limits", "maximumPressure"],
      low: 1e5,
      high: 1e11,
      expected: "a pressure in Pa, above 100000 (one in MPa must be multiplied by 1000000)",
    },
  ];
}

/** Unit of the molar mass, and how many of it make a kg/mol. */
export interface MassUnit {
  readonly molarMass: string;
  readonly factor: number;
}

/**
 * Checks that look at more than one field, or at the size of a number: units that betray themselves, limits out of
 * order, a reference state that does not exist.
 *
 * @param numberAt - Reads a number of the structure; undefined where there is none, which other checks report.
 */
export function plausibilityProblems(numberAt: NumberReader, input: unknown, units: MassUnit): Problem[] {
  const problems: Problem[] = [];
  for (const { path, low, high, expected } of sizeBounds(units)) {
    const number = numberAt(path);
    if (number !== undefined && !(number >= low && number <= high)) {
      problems.push({ path: path.join("."), value: number, expected });
    }
  }
  const inOrder = (lower: readonly string[], upper: readonly string[]): void => {
    const low = numberAt(lower);
    const high = numberAt(upper);
    if (low !== undefined && high !== undefined && !(low < high)) {
      problems.push({
        path: lower.join("."),
        value: low,
        expected: `a temperature below ${upper.join(".")} (${high} K)`,
      });
    }
  };
  inOrder(["limits", "minimumTemperature"], ["limits", "maximumTemperature"]);
  inOrder(["limits", "minimumTemperature"], ["critical", "temperature"]);
  const critical = numberAt(["critical", "temperature"]);
  const minimum = numberAt(["limits", "minimumTemperature"]);
  const liquidAtZero =
    !(critical !== undefined && critical <= 273.15) && !(minimum !== undefined && minimum > 273.15);
  if (!liquidAtZero && valueAt(input, ["referenceState"]) === "iir") {
    problems.push({
      path: "referenceState",
      value: "iir",
      expected: '"nbp", because there is no saturated liquid at 0 °C',
    });
  }
  return [...problems, ...idealPowerProblems(numberAt, input)];
}

/** Powers 0 and −1 of T in cp⁰ integrate to logarithms, which the ideal part does not have. */
function idealPowerProblems(numberAt: NumberReader, input: unknown): Problem[] {
  if (valueAt(input, ["ideal", "form"]) !== "cp0") return [];
  const rows = valueAt(input, ["ideal", "power"]);
  return (Array.isArray(rows) ? rows : []).flatMap((_, index) => {
    const exponent = numberAt(["ideal", "power", String(index), "1"]);
    return exponent === 0 || exponent === -1
      ? [
          {
            path: `ideal.power[${index}]`,
            value: exponent,
            expected:
              "an exponent other than 0, which belongs in the constant, and −1, which no published equation has",
          },
        ]
      : [];
  });
}
