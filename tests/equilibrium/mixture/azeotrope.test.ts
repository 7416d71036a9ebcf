import { afterAll, describe, expect, it } from "vitest";
import { listPairs } from "../../../src/catalogue/index.js";
import {
  type Azeotrope,
  binaryAzeotropes,
  boundaryAtPressure,
  boundaryAtTemperature,
  incipientFractions,
  type MixtureModel,
} from "../../../src/equilibrium/mixture/index.js";
import { systemOf } from "../../support/mixtures.js";
import { trackWorst } from "../../support/worst.js";

/* What an azeotrope is, found by two routes; limits are the worst seen with a little room. */
const worst = trackWorst("azeotropes");

const bubble = (model: MixtureModel, x: number, T: number) =>
  boundaryAtTemperature(model, "vapour", Float64Array.of(x, 1 - x), T)!;

function check(model: MixtureModel, { temperature: T, pressure, x, kind }: Azeotrope, where: string): void {
  const [x1] = x as unknown as [number, number];
  for (const incipient of ["vapour", "liquid"] as const) {
    const point = boundaryAtTemperature(model, incipient, x, T)!;
    const [y1] = incipientFractions(point) as unknown as [number, number];
    worst(`composition of the ${incipient}`, Math.abs(y1 - x1) / Math.min(x1, 1 - x1), 1e-13, where);
    worst(`pressure of the ${incipient}`, Math.abs(point.pressure / pressure - 1), 1e-13, where);
  }
  // The pressure at constant temperature turns there: by central differences.
  const h = 1e-3 * Math.min(x1, 1 - x1);
  const [low, high] = [bubble(model, x1 - h, T).pressure, bubble(model, x1 + h, T).pressure];
  worst("slope of the bubble line", Math.abs(high - low) / (2 * 1e-3 * pressure), 5e-8, where);
  const isHighest = low < pressure && high < pressure;
  expect(isHighest ? "minimum-boiling" : "maximum-boiling", where).toBe(kind);
  expect(isHighest || (low > pressure && high > pressure), where).toBe(true);
}

/** ln of the ratio of both K values changes sign at an azeotrope: its changes on a fine grid. */
function changesOfSign(model: MixtureModel, T: number): number {
  const grid = [1e-5, ...Array.from({ length: 199 }, (_, k) => (k + 1) / 200), 1 - 1e-5];
  const signs = grid.map((x) => {
    const [y1, y2] = incipientFractions(bubble(model, x, T)) as unknown as [number, number];
    return y1 / x > y2 / (1 - x);
  });
  return signs.slice(1).filter((sign, i) => sign !== signs[i]).length;
}

const seen: string[] = [];
afterAll(() => console.log(`azeotropes, mole fraction of the first: ${seen.join("; ")}`));

describe.each(listPairs().map(({ between }) => between))("%s with %s", (first, second) => {
  const model = systemOf(first, second);
  // Warm enough for one liquid, cold enough for both to boil.
  const lowest = Math.min(...model.fluids.map(({ critical }) => critical.temperature));
  const T = Math.max(0.8 * lowest, model.limits.minimumTemperature);
  const where = `${first}/${second} ${T} K`;

  it("has as many azeotropes as its volatilities have changes of sign, each with one composition", () => {
    const found = binaryAzeotropes(model, { what: "temperature", value: T });
    expect(found, where).toHaveLength(changesOfSign(model, T));
    for (const azeotrope of found) {
      seen.push(`${where} ${azeotrope.x[0]!.toFixed(3)} ${azeotrope.kind}`);
      check(model, azeotrope, where);
      // And by its pressure.
      const back = binaryAzeotropes(model, { what: "pressure", value: azeotrope.pressure });
      const nearest = Math.min(...back.map(({ x }) => Math.abs(x[0]! - azeotrope.x[0]!)));
      worst("composition found by pressure", nearest, 1e-13, where);
      const point = boundaryAtPressure(model, "vapour", azeotrope.x, azeotrope.pressure)!;
      worst("temperature found by pressure", Math.abs(point.temperature / T - 1), 1e-13, where);
    }
  });
});

describe("azeotropes of the literature", () => {
  /*
   * R-513A, R-1234yf/R-134a 56/44 by mass, 0.532 of R-1234yf by amount, is named an azeotrope at 27 °C. Recalled; that
   * listing is what the pair was fitted to, so this proves the file and the solver, not the physics.
   */
  it("R-134a with R-1234yf at 27 °C, near the composition of R-513A", () => {
    const model = systemOf("R-134a", "R-1234yf");
    const [found, ...more] = binaryAzeotropes(model, { what: "temperature", value: 300.15 });
    expect(more).toHaveLength(0);
    expect(found!.kind).toBe("minimum-boiling");
    expect(Math.abs(found!.x[1]! - 0.532)).toBeLessThan(0.01);
  });

  /* R-744 with R-170 at −10 °C: 0.68 to 0.72 of R-744 by amount, 3.05 MPa; measured by several, values from memory. */
  it("R-744 with R-170 at 263 K", () => {
    const [found, ...more] = binaryAzeotropes(systemOf("R-744", "R-170"), {
      what: "temperature",
      value: 263.15,
    });
    expect(more).toHaveLength(0);
    expect(found!.kind).toBe("minimum-boiling");
    expect(found!.x[0]).toBeGreaterThan(0.68);
    expect(found!.x[0]).toBeLessThan(0.72);
    expect(found!.pressure).toBeWithin(3.05e6, 0.005);
  });
});
