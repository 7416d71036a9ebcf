import * as z from "zod/mini";
import { digits, provenance, residualPart } from "./fluid-data-schema.js";
import { designation, notes, sentence, shortKey, synonyms } from "./schema-parts.js";

/** Schema of a file of `data/departures/`. */
export function departureDataSchema(): z.core.$ZodType {
  return z.strictObject({ name: shortKey(), residual: residualPart() }, "a departure file");
}

/** Schema of a file of `data/pairs/`. */
export function pairDataSchema(): z.core.$ZodType {
  return z.strictObject(
    {
      between: two(designation(), "designations"),
      grade: grade(),
      reducing: z.discriminatedUnion(
        "form",
        [
          z.strictObject({
            form: z.literal("kunz-wagner"),
            betaT: digits(),
            gammaT: digits(),
            betaV: digits(),
            gammaV: digits(),
            ...provenance(),
          }),
          z.strictObject({
            form: z.literal("lemmon-jacobsen"),
            zeta: quantity("K"),
            xi: quantity("dm3/mol"),
            ...provenance(),
          }),
        ],
        'reducing functions of form "kunz-wagner" or "lemmon-jacobsen"',
      ),
      departure: z.optional(
        z.strictObject(
          { factor: digits(), function: shortKey(), ...provenance() },
          "a departure function with its factor",
        ),
      ),
      fittedTo: z.optional(z.strictObject(provenance(), "what the regression used")),
      deviation: deviation(),
      notes: notes(),
    },
    "a pair file",
  );
}

/** Schema of a file of `data/blends/`. */
export function blendDataSchema(): z.core.$ZodType {
  const component = z.strictObject(
    {
      fluid: designation(),
      massFraction: digits(),
      tolerance: z.optional(
        z.strictObject({ above: digits(), below: digits() }, "tolerances above and below"),
      ),
    },
    "a component",
  );
  return z.strictObject(
    {
      designation: designation(),
      synonyms: synonyms(),
      components: z.array(component, "a list of components").check(z.minLength(2, "at least two components")),
      composition: z
        .array(z.strictObject(provenance(), "a source of the composition"), "sources of the composition")
        .check(z.minLength(1, "at least one source")),
      tolerances: z.optional(z.strictObject(provenance(), "the source of the tolerances")),
      notes: notes(),
    },
    "a blend file",
  );
}

/** Schema of `data/mixing/class-values.json`. */
export function classDataSchema(): z.core.$ZodType {
  const estimate = z.strictObject(
    {
      between: two(sentence(), "names of classes"),
      reducing: z.discriminatedUnion(
        "form",
        [
          z.strictObject({ form: z.literal("kunz-wagner"), gammaT: digits() }),
          z.strictObject({ form: z.literal("lemmon-jacobsen"), zeta: digits(), xi: digits() }),
        ],
        'reducing functions of form "kunz-wagner" or "lemmon-jacobsen"',
      ),
      tested: z.optional(z.strictObject({ pairs: digits(), rms: digits() }, "number of pairs and spread")),
      deviation: deviation(),
      remark: z.optional(sentence()),
    },
    "an estimate for two classes",
  );
  const fluidClass = z.strictObject(
    { name: sentence(), fluids: z.array(designation(), "designations") },
    "a class of fluids",
  );
  return z.strictObject(
    {
      about: sentence(),
      classes: z.array(fluidClass, "classes of fluids"),
      estimates: z.array(estimate, "estimates"),
      ...provenance(),
      notes: notes(),
    },
    "the class values",
  );
}

/** How a pair's parameters came about. */
export function grade(): z.core.$ZodType {
  return z.enum(["published", "regressed", "estimated"], '"published", "regressed" or "estimated"');
}

/** A tuple of two. */
export function two(item: z.ZodMiniString, what: string): z.ZodMiniTuple {
  return z.tuple([item, item], `two ${what}`);
}

function deviation(): z.core.$ZodType {
  return z.strictObject({ relative: digits(), basis: sentence() }, "the relative deviation and its basis");
}

function quantity(unit: string): z.core.$ZodType {
  return z.strictObject(
    { value: digits(), unit: z.literal(unit, `the unit ${unit}`) },
    `a quantity in ${unit}`,
  );
}
