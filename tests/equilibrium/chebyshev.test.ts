import { describe, expect, it } from "vitest";
import { chebyshevAt, chebyshevNodes, chebyshevThrough } from "../../src/equilibrium/chebyshev.js";

function seriesOf(f: (x: number) => number, low: number, high: number, count: number) {
  return chebyshevThrough(low, high, chebyshevNodes(low, high, count).map(f));
}

/** Largest deviation of a series from its function on a fine grid with both ends. */
function worst(f: (x: number) => number, low: number, high: number, count: number): number {
  const series = seriesOf(f, low, high, count);
  let largest = 0;
  for (let k = 0; k <= 1000; k++) {
    const x = low + ((high - low) * k) / 1000;
    largest = Math.max(largest, Math.abs(chebyshevAt(series, x) - f(x)));
  }
  return largest;
}

describe("a Chebyshev series", () => {
  it("has nodes from the high end to the low one, both included", () => {
    const nodes = [...chebyshevNodes(2, 5, 9)];
    expect(nodes[0]).toBe(5);
    expect(nodes[8]).toBe(2);
    expect(nodes[4]).toBeWithin(3.5, 1e-15);
    for (let k = 1; k < nodes.length; k++) expect(nodes[k]).toBeLessThan(nodes[k - 1]!);
  });

  it("goes through the values it was made from", () => {
    const values = Float64Array.of(3, -1, 4, -1, 5, -9, 2, 6, -5, 3);
    const nodes = chebyshevNodes(-0.3, 0.8, values.length);
    const series = chebyshevThrough(-0.3, 0.8, values);
    for (const [k, x] of nodes.entries()) expect(chebyshevAt(series, x)).toBeCloseTo(values[k]!, 12);
  });

  it("is exact for every polynomial of its degree and wrong for the next", () => {
    for (let degree = 0; degree <= 12; degree++) {
      const f = (x: number): number => (2 * x - 1) ** degree;
      expect(worst(f, 0, 1, Math.max(2, degree + 1)), `degree ${degree}`).toBeLessThan(1e-14);
      if (degree >= 2) expect(worst(f, 0, 1, degree), `degree ${degree}`).toBeGreaterThan(1e-5);
    }
  });

  it("converges on a smooth function as fast as theory says", () => {
    // The coefficients of exp on [−1, 1] are the modified Bessel functions Iₖ(1), of the size 2⁻ᵏ/k!.
    expect(worst(Math.exp, -1, 1, 8)).toBeLessThan(1e-6);
    expect(worst(Math.exp, -1, 1, 16)).toBeLessThan(1e-14);
    expect(seriesOf(Math.exp, -1, 1, 16).coefficients[0]).toBeWithin(1.2660658777520084, 1e-15);
  });
});
