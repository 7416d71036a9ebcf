import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { listPairs } from "../../../src/catalogue/index.js";
import { noMixtureEvaluation } from "../../../src/equation/index.js";
import { Envelope } from "../../../src/equilibrium/mixture/envelope.js";
import {
  boundaryAtTemperature,
  findTrial,
  type Incipient,
  type IncipientPoint,
  type MixtureModel,
} from "../../../src/equilibrium/mixture/index.js";
import { guessLiquidDensity, liquidRoot } from "../../../src/equilibrium/mixture/phase-density.js";
import { isSplitLiquid } from "../../../src/equilibrium/mixture/stability.js";
import { systemOf } from "../../support/mixtures.js";
import { readFuzzSettings } from "../../support/read-fuzz-settings.js";
import { share } from "../../support/states.js";
import { trackWorst } from "../../support/worst.js";

/*
 * Bubble and dew points from nothing but the pure components' curves, for every pair that has parameters. No outside
 * source: the conditions of equilibrium, computed anew, and the tangent-plane test decide. Each point is solved, or
 * proved to lie above the critical point; a liquid that would split in two is proved to by the phase it would form.
 */
const worst = trackWorst("bubble and dew points of pairs");

const systems = listPairs().map(({ between }) => ({ name: between.join("/"), model: systemOf(...between) }));

/** Ten times the usual runs: what is wrong here is wrong once in ten thousand points. */
const numRuns = 10 * readFuzzSettings(process.env).runs;

/** Highest temperature of a liquid that splits in two, reduced by its own reducing temperature. */
const coldEnough = 0.72;

const counts = { solved: 0, "above the critical point": 0, "two liquids": 0 };
let hottestSplit = { reduced: 0, where: "" };
afterAll(() => {
  const of = Object.entries(counts).map(([what, count]) => `${count} ${what}`);
  console.log(
    `bubble and dew points: ${of.join(", ")}; hottest liquid in two at ${hottestSplit.reduced} ${hottestSplit.where}`,
  );
});

/** Composition evenly spread, one in five beside a pure component down to 1e-6. */
function compositionAt(u: number, v: number): number {
  if (v > 0.2) return Math.min(Math.max(u, 1e-6), 1 - 1e-6);
  const trace = 10 ** (-6 + 4 * u);
  return v > 0.1 ? trace : 1 - trace;
}

/** Chemical potentials over RT and pressure over RT of a phase. */
function phaseOf(model: MixtureModel, T: number, concentrations: Float64Array) {
  const { mixture } = model.vapour;
  const at = noMixtureEvaluation(model.count);
  mixture.evaluate(T, concentrations, at);
  return { at, mu: at.mu.map((mu, i) => mu / mixture.ratio[i]! + Math.log(concentrations[i]!)) };
}

function check(incipient: Incipient): void {
  fc.assert(
    fc.property(fc.constantFrom(...systems), share(), share(), share(), ({ name, model }, u, v, w) => {
      const x = compositionAt(u, v);
      const z = Float64Array.of(x, 1 - x);
      model.liquid.mixture.setComposition(z);
      const T = (0.55 + 0.43 * w) * model.liquid.mixture.Tr;
      const where = `${name} ${x} ${T} K, ${incipient}`;
      const point = boundaryAtTemperature(model, incipient, z, T);
      if (point === undefined) {
        const envelope = Envelope.of(model, z, 0.5 * T);
        expect(T, where).toBeGreaterThan(envelope!.critical.temperature);
        counts["above the critical point"]++;
        return;
      }
      counts.solved++;
      checkPoint(model, point, where);
    }),
    { numRuns },
  );
}

function checkPoint(model: MixtureModel, point: IncipientPoint, where: string): void {
  const { temperature: T, pressure } = point;
  const parent = phaseOf(
    model,
    T,
    point.parent.map((xi) => xi * point.density),
  );
  const formed = phaseOf(model, T, point.concentrations);
  const [liquid, vapour] = point.incipient === "vapour" ? [parent, formed] : [formed, parent];
  // Sides, and two different phases.
  expect(liquid.at.rho, where).toBeGreaterThan(vapour.at.rho);
  const gap = point.concentrations.map((c, i) => Math.abs(Math.log(c / (point.parent[i]! * point.density))));
  expect(Math.max(...gap), where).toBeGreaterThan(1e-3);
  liquid.mu.forEach((mu, i) => {
    worst("fugacity of both phases", Math.abs(mu - vapour.mu[i]!), 3e-13, where);
  });
  const difference = Math.abs(liquid.at.pressure - vapour.at.pressure);
  worst("pressure of both phases, over ρRT of the liquid", difference / liquid.at.rho, 3e-13, where);
  expect(pressure).toBeWithin(vapour.at.pressure * model.R * T, 1e-12);

  // The liquid is stable, or forms a second liquid; both phases have the same tangent plane.
  const P = pressure / (model.R * T);
  const x = Float64Array.from(liquid.at.x);
  const { rho } = liquid.at;
  const trial = findTrial(model, x, T, P, rho);
  expect(isSplitLiquid(model, x, T, P, rho), where).toBe(trial !== undefined);
  if (trial === undefined) return;
  const { mixture } = model.liquid;
  mixture.setComposition(x);
  const reduced = T / mixture.Tr;
  expect(reduced, where).toBeLessThan(coldEnough);
  if (reduced > hottestSplit.reduced) hottestSplit = { reduced, where };
  expect(trial.root, where).toBe("liquid");
  const amounts = trial.amounts.reduce((sum, amount) => sum + amount, 0);
  const y = trial.amounts.map((amount) => amount / amounts);
  mixture.setComposition(y);
  const density = liquidRoot(mixture, T, P, guessLiquidDensity(model, model.liquid, y, T), model.liquid.at);
  expect(density, where).toBeGreaterThan(1.3 * mixture.rhor);
  const second = phaseOf(
    model,
    T,
    y.map((yi) => yi * density),
  );
  const tangent = y.reduce((sum, yi, i) => sum + yi * (second.mu[i]! - liquid.mu[i]!), 0);
  expect(tangent, where).toBeLessThan(0);
  counts["two liquids"]++;
}

describe("the boundary of pairs at a temperature", () => {
  it("is found at every bubble point, and its liquid is stable", () => check("vapour"));
  it("is found at every dew point, and its liquid is stable", () => check("liquid"));
});
