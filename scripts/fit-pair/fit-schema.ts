import * as z from "zod/mini";
import { digits } from "../../src/catalogue/fluid-data-schema.js";
import type { Pair, PairReducing } from "../../src/catalogue/index.js";
import { two } from "../../src/catalogue/mixing-data-schema.js";
import { valueAt } from "../../src/catalogue/problems.js";
import { checkedBy } from "../../src/catalogue/schema-check.js";
import { designation, notes, sentence, shortKey } from "../../src/catalogue/schema-parts.js";
import type { Problem } from "../../src/units/index.js";

/** Parameters of a pair by name, in the units of `data/pairs/`: zeta in K, xi in dm3/mol. */
export type Parameters = Readonly<Record<string, number>>;

interface ParameterKind {
  readonly name: string;
  /** A change that is small and yet makes a difference. */
  readonly scale: number;
  /** The decimals worth writing. */
  readonly decimals: number;
}

/** The parameters of each form of reducing functions. */
export const parametersOf: Readonly<Record<PairReducing["form"], readonly ParameterKind[]>> = {
  "kunz-wagner": ["betaT", "gammaT", "betaV", "gammaV"].map((name) => ({ name, scale: 0.01, decimals: 5 })),
  "lemmon-jacobsen": [
    { name: "zeta", scale: 1, decimals: 3 },
    { name: "xi", scale: 0.001, decimals: 7 },
  ],
};

/** A pair some of whose parameters are fitted. */
export interface FreePair {
  readonly between: readonly [string, string];
  readonly form: PairReducing["form"];
  /** The value a search starts from; with a spread it counts as a datum of that standard uncertainty. */
  readonly fitted: Readonly<Record<string, { readonly start: number; readonly spread?: number }>>;
  readonly fixed: Parameters;
}

/** Which points of a file of `data/equilibria/`; all of them without names. */
export interface Selection {
  readonly file: string;
  readonly points?: readonly string[];
}

/** A file of `data/fits/`: a regression, such that it can be repeated. */
export interface FitDescription {
  readonly title: string;
  /** Why nothing is written of it any more; its pairs are what other fits assume. */
  readonly superseded?: string;
  readonly free: readonly FreePair[];
  /** Pairs that were taken to be something else than `data/pairs/` has today. */
  readonly assumed: readonly {
    readonly between: readonly [string, string];
    readonly reducing: PairReducing;
    readonly reason: string;
  }[];
  /** What is fitted to. */
  readonly data: readonly Selection[];
  /** What the result is compared with. */
  readonly against: readonly Selection[];
  readonly notes: readonly string[];
}

/** The same with numbers as text. */
interface FitData extends Omit<FitDescription, "free" | "assumed"> {
  readonly free: readonly {
    readonly between: readonly [string, string];
    readonly form: PairReducing["form"];
    readonly fitted: Readonly<Record<string, { readonly start: string; readonly spread?: string }>>;
    readonly fixed: Readonly<Record<string, string>>;
  }[];
  readonly assumed: readonly {
    readonly between: readonly [string, string];
    readonly form: PairReducing["form"];
    readonly parameters: Readonly<Record<string, string>>;
    readonly reason: string;
  }[];
}

function fitSchema(): z.core.$ZodType {
  const form = z.enum(Object.keys(parametersOf), '"kunz-wagner" or "lemmon-jacobsen"');
  const between = two(designation(), "designations");
  const values = z.record(sentence(), digits(), "values by parameter");
  const start = z.strictObject({ start: digits(), spread: z.optional(digits()) }, "a start and its spread");
  const selections = z.array(
    z.strictObject(
      { file: shortKey(), points: z.optional(z.array(sentence(), "names")) },
      "points of a file",
    ),
    "a list of points by file",
  );
  return z.strictObject(
    {
      title: sentence(),
      superseded: z.optional(sentence()),
      free: z
        .array(
          z.strictObject(
            { between, form, fitted: z.record(sentence(), start, "starts by parameter"), fixed: values },
            "a pair to fit",
          ),
          "pairs to fit",
        )
        .check(z.minLength(1, "at least one pair")),
      assumed: z.array(
        z.strictObject({ between, form, parameters: values, reason: sentence() }, "an assumed pair"),
        "a list of assumed pairs, which may be empty",
      ),
      data: selections.check(z.minLength(1, "at least one file")),
      against: selections,
      notes: notes(),
    },
    "the description of a fit",
  );
}

/**
 * Checks a file of `data/fits/`.
 *
 * @throws {@link InputError} `malformed-input`, with every problem found.
 */
export function parseFit(json: unknown): FitDescription {
  const { free, assumed, ...rest } = checkedBy<FitData>(fitSchema(), json, () => nameProblems(json));
  return {
    ...rest,
    free: free.map(({ between, form, fitted, fixed }) => ({
      between,
      form,
      fitted: Object.fromEntries(
        Object.entries(fitted).map(([name, { start, spread }]) => [
          name,
          { start: Number(start), ...(spread !== undefined && { spread: Number(spread) }) },
        ]),
      ),
      fixed: numbersOf(fixed),
    })),
    assumed: assumed.map(({ between, form, parameters, reason }) => ({
      between,
      reducing: reducingOf(form, numbersOf(parameters)),
      reason,
    })),
  };
}

/** Reducing functions from parameters; those not given have no effect. */
export function reducingOf(form: PairReducing["form"], given: Parameters): PairReducing {
  if (form === "lemmon-jacobsen") {
    return { form, zeta: given["zeta"] ?? 0, xi: (given["xi"] ?? 0) / 1000 };
  }
  const { betaT = 1, gammaT = 1, betaV = 1, gammaV = 1 } = given;
  return { form, betaT, gammaT, betaV, gammaV };
}

/** The parameters of a pair, in the units of `data/pairs/`. */
export function parametersIn({ reducing }: Pair): Parameters {
  if (reducing.form === "lemmon-jacobsen") return { zeta: reducing.zeta, xi: reducing.xi * 1000 };
  const { form: _, ...parameters } = reducing;
  return parameters;
}

function numbersOf(texts: Readonly<Record<string, string>>): Parameters {
  return Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, Number(text)]));
}

/** Parameters that the form does not have, or that are both fitted and fixed; spreads that hold nothing. */
function nameProblems(json: unknown): Problem[] {
  const lists = [
    ["free", ["fitted", "fixed"]],
    ["assumed", ["parameters"]],
  ] as const;
  return lists.flatMap(([list, groups]) => {
    const pairs = valueAt(json, [list]);
    if (!Array.isArray(pairs)) return [];
    return pairs.flatMap((pair: unknown, index) => {
      const form = valueAt(pair, ["form"]) as PairReducing["form"];
      const names = (parametersOf[form] ?? []).map(({ name }) => name);
      return groups.flatMap((group) => {
        const path = `${list}[${index}].${group}`;
        const given = Object.entries((valueAt(pair, [group]) ?? {}) as object);
        const expected = `parameters of the form: ${names.join(", ")}, each fitted or fixed`;
        return [
          ...given
            .filter(
              ([name]) =>
                !names.includes(name) || (group === "fixed" && valueAt(pair, ["fitted", name]) !== undefined),
            )
            .map(([name, value]) => ({ path: `${path}.${name}`, value, expected })),
          ...(group === "fitted" && given.length === 0
            ? [{ path, value: given.length, expected: "at least one parameter" }]
            : []),
          ...given
            .map(([name, value]) => [name, valueAt(value, ["spread"])] as const)
            .filter(([, spread]) => typeof spread === "string" && !(Number(spread) > 0))
            .map(([name, value]) => ({
              path: `${path}.${name}.spread`,
              value,
              expected: "a spread above 0",
            })),
        ];
      });
    });
  });
}
