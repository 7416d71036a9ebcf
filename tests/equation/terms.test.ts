import { describe, expect, it, test } from "vitest";
import type { ResidualPart } from "../../src/catalogue/index.js";
import { differentiate, residualPrecisely } from "../support/decimal-terms.js";
import { names, residualAt } from "./term-sums.js";

/*
 * Source of the reference: the printed form of each term, in 60-digit arithmetic (decimal.js). The exponents here are
 * mild, so doubles carry 1e-14 of the largest number that enters a derivative.
 */
const limit = 1e-13;

/** Points away from 1, on both sides of it, where no derivative of these terms happens to vanish. */
const points: readonly (readonly [tau: number, delta: number])[] = [
  [0.7, 0.3],
  [0.93, 1.2],
  [1.17, 0.8],
  [1.6, 2.9],
];

function expectPrintedForm(part: ResidualPart): void {
  for (const [tau, delta] of points) {
    const found = residualAt(part, tau, delta);
    const reference = differentiate((t, d) => residualPrecisely(part, t, d), tau, delta);
    const largest = Math.max(...names.map((name) => Math.abs(reference[name])));
    for (const name of names) {
      const deviation = Math.abs(found[name] - reference[name]) / largest;
      expect(deviation, `${name} of ${JSON.stringify(part)} at τ ${tau} δ ${delta}`).toBeLessThan(limit);
    }
  }
}

describe("a power term", () => {
  test.each<[what: string, row: [number, number, number, number]]>([
    ["without exponential", [0.7, 1.25, 3, 0]],
    ["constant in τ", [0.7, 0, 2, 1]],
    ["constant in δ", [0.7, 1.5, 0, 0]],
    ["that falls with τ", [-0.3, -1, 8, 0]],
    ["with exp(−δ)", [1.2, 2.5, 1, 1]],
    ["with exp(−δ²)", [1.2, 2.5, 4, 2]],
    ["with exp(−δ³)", [1.2, 2.5, 4, 3]],
    ["with exp(−δ⁴)", [1.2, 12, 5, 4]],
    ["with exp(−δ⁵)", [1.2, 12, 5, 5]],
    ["with exp(−δ⁶)", [1.2, 12, 5, 6]],
    ["with a density exponent that is not whole", [1.2, 2.5, 1.5, 0]],
    ["with a density exponent below zero", [1.2, 2.5, -0.5, 1]],
    ["with an exponential order that is not whole", [1.2, 2.5, 2, 1.5]],
    ["with an exponential order between whole products", [1.2, 2.5, 2, 4.5]],
    ["with a density exponent beyond the table of powers", [1e-9, 2.5, 70, 2]],
  ])("%s", (_, row) => expectPrintedForm({ power: [row] }));

  it("with l = 0 is no exponential of δ⁰", () => {
    // exp(−δ⁰) would be 1/e.
    expect(residualAt({ power: [[1, 0, 1, 0]] }, 1.3, 0.5).phi).toBe(0.5);
  });

  it("keeps its value beside one whose density exponent is not whole", () => {
    // One such row turns the table of powers off for all.
    const whole = [0.7, 1.25, 3, 1] as const;
    const broken = [0.4, 0.5, 1.5, 1] as const;
    for (const [tau, delta] of points) {
      const alone = residualAt({ power: [whole] }, tau, delta);
      const other = residualAt({ power: [broken] }, tau, delta);
      const both = residualAt({ power: [whole, broken] }, tau, delta);
      for (const name of names) {
        const sum = alone[name] + other[name];
        expect(Math.abs(both[name] - sum)).toBeLessThan(1e-13 * (1 + Math.abs(sum)));
      }
    }
  });

  it("dies away without trouble where its exponential underflows", () => {
    const { phi, phi_d, phi_dd, phi_ddd } = residualAt({ power: [[1, 1, 3, 6]] }, 1, 40);
    expect([phi, phi_d, phi_dd, phi_ddd].every((value) => Math.abs(value) === 0)).toBe(true);
  });
});

describe("a term with two exponentials", () => {
  test.each<[what: string, row: [number, number, number, number, number, number, number]]>([
    ["of equal weight", [0.6, 1.5, 2, 2, 1, 1, 1]],
    ["with factors of its own", [0.6, 1.5, 2, 2, 3, 0.4, 0.03]],
    ["with a high order in τ", [0.6, 4, 2, 1, 12, 1, 1e-3]],
    ["without the one in τ", [0.6, 1.5, 2, 2, 3, 1, 0]],
    ["without the one in δ", [0.6, 1.5, 2, 2, 2, 0, 0.7]],
    ["whose exponents of τ are not whole", [0.6, 0.25, 2, 3, 1.5, 1.3, 0.4]],
  ])("%s", (_, row) => expectPrintedForm({ power: [], doubleExp: [row] }));

  it("without factors in τ is the power term", () => {
    const double = residualAt({ power: [], doubleExp: [[0.6, 1.5, 2, 3, 7, 1, 0]] }, 1.2, 0.9);
    expect(double).toEqual(residualAt({ power: [[0.6, 1.5, 2, 3]] }, 1.2, 0.9));
  });

  it("with another factor g is kept apart from power terms of the same order", () => {
    expectPrintedForm({ power: [[0.5, 1, 1, 2]], doubleExp: [[0.6, 1.5, 2, 2, 1, 0.25, 0.5]] });
  });
});

describe("a Gaussian bell", () => {
  test.each<[what: string, row: [number, number, number, number, number, number, number]]>([
    ["of medium width", [0.9, 1.2, 2, 0.8, 1.1, 1.3, 0.7]],
    ["narrow in τ", [0.9, 0, 2, 1, 30, 1.1, 0.9]],
    ["with a density exponent that is not whole", [0.9, 1.2, 1.5, 0.8, 1.1, 1.3, 0.7]],
    ["with a density exponent between whole products", [0.9, 1.2, 4.5, 0.8, 1.1, 1.3, 0.7]],
    ["with a high density exponent", [0.9, 1.2, 6, 0.8, 1.1, 1.3, 0.7]],
    ["upside down in δ", [0.9, 1.2, 2, -0.2, 1.1, 1.3, 0.7]],
  ])("%s", (_, row) => expectPrintedForm({ power: [], gaussian: [row] }));

  it("has its top at δ = ε, τ = γ", () => {
    const { phi, phi_t, phi_d } = residualAt({ power: [], gaussian: [[2, 0, 0, 5, 7, 1.1, 0.9]] }, 1.1, 0.9);
    expect(phi).toBe(2);
    expect(phi_t).toBe(0);
    expect(phi_d).toBe(0);
  });
});

describe("a reciprocal bell", () => {
  test.each<[what: string, row: [number, number, number, number, number, number, number, number]]>([
    ["as in the equation for ammonia of 2023", [0.9, 4, 1, 2.8, 0.3, 1.3, 0.45, 0.7]],
    ["with a density exponent that is not whole", [0.9, 4, 1.5, 0.8, 0.3, 1.3, 0.45, 0.7]],
  ])("%s", (_, row) => expectPrintedForm({ power: [], reciprocalBell: [row] }));
});

describe("no terms at all", () => {
  it("is an ideal gas", () => {
    const found = residualAt({ power: [] }, 1.3, 0.7);
    for (const name of names) expect(found[name]).toBe(0);
  });
});
