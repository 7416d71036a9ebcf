import * as z from "zod/mini";
import { digits, provenance } from "../../src/catalogue/fluid-data-schema.js";
import type { Fluid, Provenance } from "../../src/catalogue/index.js";
import type { Bibliography } from "../../src/catalogue/literal.js";
import { checkedBy, unknownSources } from "../../src/catalogue/schema-check.js";
import { designation, notes, sentence } from "../../src/catalogue/schema-parts.js";
import { pointProblems } from "./data-problems.js";
import { type EquilibriumPoint, type EquilibriumSet, inputs } from "./points.js";

type Fractions = Readonly<Record<string, string>>;
type Uncertainty = Partial<Record<(typeof inputs)[number], string>>;

/** A point as a file has it: numbers as text, in the units of the file. */
interface PointData {
  readonly name: string;
  readonly kind: EquilibriumPoint["kind"];
  readonly liquid?: Fractions;
  readonly vapour?: Fractions;
  readonly temperature: string;
  readonly pressure?: string;
  readonly uncertainty?: Uncertainty;
}

/** A file of `data/equilibria/`. */
interface EquilibriumData extends Provenance {
  readonly title: string;
  readonly units: {
    readonly temperature: "K" | "°C";
    readonly pressure: keyof typeof pascals;
    readonly fractions: "mass" | "mole";
  };
  /** Standard uncertainties of all points that do not state their own; what is left out is exact. */
  readonly uncertainty: Uncertainty;
  readonly points: readonly PointData[];
  readonly notes: readonly string[];
}

const pascals = { Pa: 1, kPa: 1e3, bar: 1e5, MPa: 1e6 } as const;

function equilibriumDataSchema(): z.core.$ZodType {
  const fractions = z.record(designation(), digits(), "fractions by designation");
  const uncertainty = z.strictObject(
    Object.fromEntries(inputs.map((input) => [input, z.optional(digits())])),
    "standard uncertainties",
  );
  const common = {
    name: sentence(),
    temperature: digits(),
    uncertainty: z.optional(uncertainty),
    remark: z.optional(sentence()),
  };
  const pressure = digits();
  const point = z.discriminatedUnion(
    "kind",
    [
      z.strictObject({ kind: z.literal("bubble"), liquid: fractions, pressure, ...common }),
      z.strictObject({ kind: z.literal("dew"), vapour: fractions, pressure, ...common }),
      z.strictObject({
        kind: z.literal("vle"),
        liquid: fractions,
        vapour: fractions,
        pressure,
        ...common,
      }),
      z.strictObject({
        kind: z.literal("azeotrope"),
        liquid: fractions,
        pressure: z.optional(pressure),
        ...common,
      }),
    ],
    'a point of kind "bubble", "dew", "vle" or "azeotrope"',
  );
  const pressureUnits = Object.keys(pascals);
  return z.strictObject(
    {
      title: sentence(),
      ...provenance(),
      units: z.strictObject(
        {
          temperature: z.enum(["K", "°C"], '"K" or "°C"'),
          pressure: z.enum(pressureUnits, `one of ${pressureUnits.join(", ")}`),
          fractions: z.enum(["mass", "mole"], '"mass" or "mole"'),
        },
        "the units of temperature, pressure and fractions",
      ),
      uncertainty,
      points: z.array(point, "a list of points").check(z.minLength(1, "at least one point")),
      notes: notes(),
    },
    "a file of equilibria",
  );
}

/**
 * Checks a file of `data/equilibria/` and turns it into points in SI units.
 *
 * @param json - The parsed JSON of one file.
 * @param fluids - The fluids there are; of two equations of one refrigerant the first listed is taken.
 * @param bibliography - The known sources.
 * @throws {@link InputError} `malformed-input`, with every problem found.
 */
export function parseEquilibria(
  json: unknown,
  fluids: readonly Fluid[],
  bibliography: Bibliography,
): EquilibriumSet {
  const fluidOf = (name: string): Fluid | undefined => fluids.find((fluid) => fluid.designation === name);
  const data = checkedBy<EquilibriumData>(equilibriumDataSchema(), json, (told) => [
    ...unknownSources(json, bibliography),
    ...pointProblems(json, (name) => fluidOf(name) !== undefined).filter(({ path }) => !told.has(path)),
  ]);
  const points = data.points.map((point) => pointOf(data, point, fluidOf));
  const { title, source, status, notes } = data;
  return { title, source, status, points, notes };
}

function pointOf(
  { units, uncertainty: usual }: EquilibriumData,
  { name, kind, liquid, vapour, temperature, pressure, uncertainty }: PointData,
  fluidOf: (name: string) => Fluid | undefined,
): EquilibriumPoint {
  const designations = Object.keys(liquid ?? vapour ?? {});
  const inOrder = (fractions: Fractions): number[] => designations.map((one) => Number(fractions[one]));
  const pascal = pascals[units.pressure];
  const sizes = { ...usual, ...uncertainty };
  return {
    name,
    kind,
    fluids: designations.map((one) => fluidOf(one)!),
    basis: units.fractions,
    ...(liquid && { liquid: inOrder(liquid) }),
    ...(vapour && { vapour: inOrder(vapour) }),
    temperature: Number(temperature) + (units.temperature === "°C" ? 273.15 : 0),
    ...(pressure !== undefined && { pressure: Number(pressure) * pascal }),
    uncertainty: {
      temperature: Number(sizes.temperature ?? 0),
      pressure: Number(sizes.pressure ?? 0) * pascal,
      liquid: Number(sizes.liquid ?? 0),
      vapour: Number(sizes.vapour ?? 0),
    },
  };
}
