import type { Problem } from "../units/index.js";
import type { Blend } from "./blend.js";
import type { Fluid } from "./fluid.js";
import type { Bibliography } from "./literal.js";
import type { BlendData } from "./mixing-data.js";
import { blendDataSchema } from "./mixing-data-schema.js";
import { blendLiteral } from "./mixing-literal.js";
import type { Pair } from "./pair.js";
import { valueAt } from "./problems.js";
import { checkedBy, unknownSources } from "./schema-check.js";

/** Mass fractions are printed with four decimals at most: a sum further off than this is a slip. */
const WHOLE_WITHIN = 1e-6;

/**
 * Checks a file of `data/blends/` and makes the literal of it.
 *
 * @param json - The parsed JSON of one file.
 * @param catalogue - Fluids and pairs that there are; of two equations of one refrigerant the first listed is taken.
 * @param bibliography - Citations by key; without it the keys themselves stand as sources.
 * @throws {@link InputError} `malformed-input`, with every problem found, also unknown source keys.
 */
export function parseBlendData(
  json: unknown,
  catalogue: { readonly fluids: readonly Fluid[]; readonly pairs: readonly Pair[] },
  bibliography?: Bibliography,
): Blend {
  const fluidOf = (name: unknown): Fluid | undefined =>
    catalogue.fluids.find(({ designation }) => designation === name);
  const data = checkedBy<BlendData>(blendDataSchema(), json, () => [
    ...componentProblems(json, (name) => fluidOf(name) !== undefined),
    ...unknownSources(json, bibliography),
  ]);
  const fluids = data.components.flatMap(({ fluid }) => fluidOf(fluid) ?? []);
  return blendLiteral(data, fluids, catalogue.pairs, bibliography);
}

function componentProblems(json: unknown, known: (name: string) => boolean): Problem[] {
  const components = valueAt(json, ["components"]);
  if (!Array.isArray(components)) return [];
  const names = components.map((component) => valueAt(component, ["fluid"]));
  const fractions = components.map((component) => Number(valueAt(component, ["massFraction"])));
  const whole = fractions.reduce((sum, fraction) => sum + fraction, 0);
  const tolerant = components.some((component) => valueAt(component, ["tolerance"]) !== undefined);
  const source = valueAt(json, ["tolerances"]);
  return [
    ...names.flatMap((name, index) => {
      const path = `components[${index}].fluid`;
      if (typeof name !== "string") return [];
      if (!known(name)) return [{ path, value: name, expected: "a fluid of the catalogue" }];
      return names.indexOf(name) < index ? [{ path, value: name, expected: "each fluid once" }] : [];
    }),
    ...fractions.flatMap((fraction, index) =>
      fraction > 0 && fraction < 1
        ? []
        : [
            {
              path: `components[${index}].massFraction`,
              value: fraction,
              expected: "a mass fraction above 0 and below 1",
            },
          ],
    ),
    // Negated, so that NaN is refused.
    ...(!(Math.abs(whole - 1) <= WHOLE_WITHIN)
      ? [{ path: "components", value: whole, expected: "mass fractions that add up to 1" }]
      : []),
    ...(tolerant !== (source !== undefined)
      ? [{ path: "tolerances", value: source, expected: "a source if there are tolerances, and only then" }]
      : []),
  ];
}
