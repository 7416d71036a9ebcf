import { InputError, type Problem } from "../units/index.js";

/** Paths of a fluid literal that must hold a positive number. */
const positive = [
  "molarMass",
  "gasConstant",
  "reducing.temperature",
  "reducing.density",
  "critical.temperature",
  "critical.density",
  "critical.pressure",
  "limits.minimumTemperature",
  "limits.maximumTemperature",
  "limits.maximumPressure",
] as const;

/** Paths that must hold rows or texts. */
const lists = ["ideal.power", "ideal.planckEinstein", "residual.power", "sources", "notes"] as const;

const texts = ["designation", "name", "equation", "referenceState"] as const;

/**
 * Checks that a value has the parts of a fluid literal, without the schema that the catalogue checks it with, which
 * the small door does not carry. Whether the numbers make an equation shows when its critical point is sought.
 */
export function checkLiteralForm(fluid: unknown): void {
  const expected = "a fluid literal, as in dewline/fluids";
  if (typeof fluid !== "object" || fluid === null) {
    throw new InputError([{ path: "fluid", value: fluid, expected }]);
  }
  const problems: Problem[] = [];
  const demand = (path: string, isRight: (value: unknown) => boolean, right: string): void => {
    const value = partOf(fluid, path);
    if (!isRight(value)) problems.push({ path: `fluid.${path}`, value, expected: right });
  };
  for (const path of texts) demand(path, isText, "a text");
  for (const path of positive) demand(path, isPositive, "a number above 0, SI");
  for (const path of lists) demand(path, Array.isArray, "a list");
  if (problems.length > 0) throw new InputError(problems);
}

function partOf(value: unknown, path: string): unknown {
  return path
    .split(".")
    .reduce<unknown>((part, name) => (part as Record<string, unknown> | null | undefined)?.[name], value);
}

function isText(value: unknown): boolean {
  return typeof value === "string" && value !== "";
}

function isPositive(value: unknown): boolean {
  return typeof value === "number" && value > 0 && Number.isFinite(value);
}
