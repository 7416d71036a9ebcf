import type { Problem } from "../units/index.js";
import type { ClassValues } from "./estimate-pair.js";
import type { Bibliography } from "./literal.js";
import type { ClassData, DepartureData, PairData } from "./mixing-data.js";
import { classDataSchema, departureDataSchema, pairDataSchema } from "./mixing-data-schema.js";
import { classLiteral, departureLiteral, pairLiteral } from "./mixing-literal.js";
import type { DepartureFunction, Pair } from "./pair.js";
import { pairSchema } from "./pair-schema.js";
import { valueAt } from "./problems.js";
import { checkedBy, unknownSources } from "./schema-check.js";

/**
 * Checks a run-time pair literal: form, sizes that betray a wrong unit, two different fluids, a source.
 *
 * Whether the parameters describe the pair is not looked at here.
 *
 * @param value - What should be a {@link Pair}.
 * @returns A copy of it, checked.
 * @throws {@link InputError} `malformed-input`, with every problem found.
 */
export function parsePair(value: unknown): Pair {
  return checkedBy<Pair>(pairSchema(), value, () => {
    const grade = valueAt(value, ["grade"]);
    const sources = valueAt(value, ["sources"]);
    const unsourced = Array.isArray(sources) && sources.length === 0;
    return unsourced && (grade === "published" || grade === "regressed")
      ? [{ path: "sources", value: sources, expected: 'at least one source, or the grade "estimated"' }]
      : [];
  });
}

/**
 * Checks a file of `data/departures/` and makes the literal of it.
 *
 * @throws {@link InputError} `malformed-input`, with every problem found, also unknown source keys.
 */
export function parseDepartureData(json: unknown, bibliography?: Bibliography): DepartureFunction {
  return departureLiteral(
    checkedBy<DepartureData>(departureDataSchema(), json, () => unknownSources(json, bibliography)),
  );
}

/**
 * Checks a file of `data/pairs/` and makes the literal of it.
 *
 * @param json - The parsed JSON of one file.
 * @param departures - The departure functions that a pair may name.
 * @param bibliography - Citations by key; without it the keys themselves stand as sources.
 * @throws {@link InputError} `malformed-input`, with every problem found, also unknown source keys.
 */
export function parsePairData(
  json: unknown,
  departures: readonly DepartureFunction[],
  bibliography?: Bibliography,
): Pair {
  const name = valueAt(json, ["departure", "function"]);
  const departure = departures.find((candidate) => candidate.name === name);
  const data = checkedBy<PairData>(pairDataSchema(), json, (told) => [
    ...(typeof name === "string" && departure === undefined && !told.has("departure.function")
      ? [{ path: "departure.function", value: name, expected: "the name of a departure function" }]
      : []),
    ...fitProblems(json),
    ...unknownSources(json, bibliography),
  ]);
  return parsePair(pairLiteral(data, departure, bibliography));
}

/** A regression says what it was fitted to, and nothing else does. */
function fitProblems(json: unknown): Problem[] {
  const fit = valueAt(json, ["fittedTo"]);
  const regressed = valueAt(json, ["grade"]) === "regressed";
  if (regressed === (fit !== undefined)) return [];
  const expected = regressed ? "what the regression used" : "nothing, or the grade of a regression";
  return [{ path: "fittedTo", value: fit, expected }];
}

/**
 * Checks `data/mixing/class-values.json` and makes the literal of it.
 *
 * @throws {@link InputError} `malformed-input`, with every problem found, also unknown source keys.
 */
export function parseClassData(json: unknown, bibliography?: Bibliography): ClassValues {
  return classLiteral(
    checkedBy<ClassData>(classDataSchema(), json, () => unknownSources(json, bibliography)),
  );
}
