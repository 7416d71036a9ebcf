import * as z from "zod/mini";
import { residualPart } from "./fluid-schema.js";
import { grade, two } from "./mixing-data-schema.js";
import { nameKey } from "./name-key.js";
import { designation, notes, sentence, shortKey } from "./schema-parts.js";

// The bounds are far wider than any pair needs: they are there for slips of unit and of sign.

/** Schema of a run-time pair literal. Strict, because a misspelt optional field would be dropped in silence. */
export function pairSchema(): z.core.$ZodType {
  const ratio = within(0.3, 3, "a number from 0.3 to 3");
  const excessVolume = within(
    -1e-4,
    1e-4,
    "a volume in m3/mol from -0.0001 to 0.0001 (one in dm3/mol must be divided by 1000)",
  );
  return z.strictObject(
    {
      between: two(designation(), "designations").check(
        z.refine(areDifferent, "designations of two different fluids"),
      ),
      grade: grade(),
      reducing: z.discriminatedUnion(
        "form",
        [
          z.strictObject({
            form: z.literal("kunz-wagner"),
            betaT: ratio,
            gammaT: ratio,
            betaV: ratio,
            gammaV: ratio,
          }),
          z.strictObject({
            form: z.literal("lemmon-jacobsen"),
            zeta: within(-1000, 1000, "a temperature difference in K from -1000 to 1000"),
            xi: excessVolume,
          }),
        ],
        'reducing functions of form "kunz-wagner" or "lemmon-jacobsen"',
      ),
      departure: z.optional(
        z.strictObject(
          {
            factor: within(-10, 10, "a factor from -10 to 10"),
            function: z.strictObject({ name: shortKey(), residual: residualPart() }, "a departure function"),
          },
          "a departure function with its factor",
        ),
      ),
      deviation: z.strictObject(
        { relative: relative(), basis: sentence() },
        "the relative deviation and its basis",
      ),
      sources: z.array(sentence(), "a list of citations, empty only for an estimate"),
      notes: notes(),
    },
    "a pair of fluids",
  );
}

/** By what is left of them without spelling habits: a pair of `R-32` and `r32` is none. */
function areDifferent([first, second]: readonly unknown[]): boolean {
  return nameKey(String(first)) !== nameKey(String(second));
}

function within(low: number, high: number, expected: string): z.ZodMiniNumber {
  return z.number(expected).check(z.gte(low, expected), z.lte(high, expected));
}

function relative(): z.ZodMiniNumber {
  const expected = "a relative deviation above 0 and below 1";
  return z.number(expected).check(z.gt(0, expected), z.lt(1, expected));
}
