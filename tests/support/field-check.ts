import { expect, it } from "vitest";

/** How far a value may be off: part of the expected value, or in its own unit, or not at all. */
export type Tolerance = { readonly rel: number } | { readonly abs: number } | "exact";

/** Numbers and words to compare, by what they are. */
type Answers = Readonly<Record<string, number | string>>;

/**
 * A test of one check value, named by its id.
 *
 * @param id - `FP-001` to `FP-109`: numbers and status words of field work, each with the tolerance of its source.
 * @param title - What is computed from what.
 * @param source - Where the expected values come from.
 * @param tolerance - Of all expected numbers, or by name where they differ.
 */
export function fieldCheck<A extends Answers>(
  id: string,
  title: string,
  source: string,
  tolerance: Tolerance | Readonly<Record<keyof A, Tolerance>>,
  expected: A,
  compute: () => { readonly [K in keyof A]: A[K] extends number ? number : unknown },
): void {
  it(`${id}: ${title} [${source}]`, () => {
    const found: Readonly<Record<string, unknown>> = compute();
    expect(Object.keys(found).sort()).toEqual(Object.keys(expected).sort());
    for (const [name, value] of Object.entries(expected)) {
      const allowed = toleranceOf(tolerance, name);
      if (typeof value === "string" || allowed === "exact") {
        expect(found[name], `${id} ${name}`).toBe(value);
        continue;
      }
      const deviation = Math.abs((found[name] as number) - value);
      const limit = "abs" in allowed ? allowed.abs : allowed.rel * Math.abs(value);
      // NaN is not within anything.
      expect(deviation <= limit, `${id} ${name}: ${found[name]}, expected ${value} ± ${limit}`).toBe(true);
    }
  });
}

function toleranceOf(tolerance: Tolerance | Readonly<Record<string, Tolerance>>, name: string): Tolerance {
  if (tolerance === "exact") return tolerance;
  if ("rel" in tolerance && typeof tolerance.rel === "number") return { rel: tolerance.rel };
  if ("abs" in tolerance && typeof tolerance.abs === "number") return { abs: tolerance.abs };
  return (tolerance as Readonly<Record<string, Tolerance>>)[name]!;
}
