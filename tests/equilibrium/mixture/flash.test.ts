import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { listBlends } from "../../../src/catalogue/index.js";
import { noMixtureEvaluation } from "../../../src/equation/index.js";
import {
  BlendModel,
  boundaryAtTemperature,
  densityOf,
  findTrial,
  flashBlendTemperaturePressure,
  type PhaseSplit,
  singlePhaseRoot,
} from "../../../src/equilibrium/mixture/index.js";
import { maySplit } from "../../../src/equilibrium/mixture/stability.js";
import { NoSuchStateError } from "../../../src/units/index.js";
import { anyParts } from "../../support/blends.js";
import { fluidOf, fractionsOf, moleFractionsOf, systemOf } from "../../support/mixtures.js";
import { share } from "../../support/states.js";
import { trackWorst } from "../../support/worst.js";

/*
 * The flash by temperature and pressure. No outside source: the conditions of equilibrium, computed anew, decide; and by
 * another route, the bubble and dew pressures at that temperature, how many phases there are.
 */
const worst = trackWorst("flash by temperature and pressure");

const counts = {
  "one phase": 0,
  "two phases": 0,
  "two liquids": 0,
  "two liquids, between stable edges": 0,
  "compared with the boundary": 0,
};
afterAll(() => {
  console.log(
    `flash: ${Object.entries(counts)
      .map(([what, count]) => `${count} of ${what}`)
      .join(", ")}`,
  );
});

const systems = new Map<string, ReturnType<typeof systemOf>>();

function systemFor(names: readonly string[]): ReturnType<typeof systemOf> {
  const key = names.join();
  const known = systems.get(key) ?? systemOf(...names);
  systems.set(key, known);
  return known;
}

/** Two to six components: any composition of pairs with parameters, or of the components of a designated blend. */
const anyModel: fc.Arbitrary<BlendModel> = fc.oneof(
  anyParts().map((parts) => {
    const names = parts.map(([name]) => String(name));
    const z = fractionsOf(parts.map(([name, mass]) => mass / fluidOf(String(name)).molarMass));
    return new BlendModel(systemFor(names), z, names.join());
  }),
  fc
    .tuple(fc.constantFrom(...listBlends()), fc.array(share(), { minLength: 5, maxLength: 5 }))
    .map(([blend, shares]) => {
      const z = fractionsOf(Array.from(moleFractionsOf(blend), (zi, i) => zi * (0.01 + shares[i]!)));
      return new BlendModel(
        systemFor(blend.components.map(({ fluid }) => fluid.designation)),
        z,
        blend.designation,
      );
    }),
);

/** μ/(RT) of every component and p/(RT) of a phase. */
function phaseOf({ system }: BlendModel, T: number, concentrations: Float64Array) {
  const { mixture } = system.liquid;
  const at = noMixtureEvaluation(system.count);
  mixture.evaluate(T, concentrations, at);
  return { at, mu: at.mu.map((mu, i) => mu / mixture.ratio[i]! + Math.log(concentrations[i]!)) };
}

function isStable(
  { system }: BlendModel,
  T: number,
  pressure: number,
  concentrations: Float64Array,
): boolean {
  const rho = densityOf(concentrations);
  const x = concentrations.map((c) => c / rho);
  return findTrial(system, x, T, pressure / (system.R * T), rho) === undefined;
}

function checkSplit(model: BlendModel, split: PhaseSplit, T: number, p: number, where: string): void {
  const { liquid, vapour, liquidVolume, vapourVolume } = split;
  expect(split.temperature).toBe(T);
  expect(split.pressure).toBe(p);
  expect(liquidVolume, where).toBeGreaterThan(0);
  expect(vapourVolume, where).toBeGreaterThan(0);
  const L = phaseOf(model, T, liquid);
  const V = phaseOf(model, T, vapour);
  const P = p / (model.system.R * T);
  worst("pressure of the vapour", Math.abs(V.at.pressure / P - 1), 5e-14, where);
  worst("pressure of the liquid, over ρRT", Math.abs(L.at.pressure - P) / L.at.rho, 5e-13, where);
  model.z.forEach((zi, i) => {
    worst("fugacity", Math.abs(L.mu[i]! - V.mu[i]!), 5e-13, where);
    const sum = liquid[i]! * liquidVolume + vapour[i]! * vapourVolume;
    worst("balance of a component", Math.abs(sum / zi - 1), 5e-15, where);
  });
  expect(isStable(model, T, p, liquid), `liquid of ${where}`).toBe(true);
  expect(isStable(model, T, p, vapour), `vapour of ${where}`).toBe(true);
}

/** Between dew and bubble point as often as not, else up to a third below or above; beyond them, anywhere. */
function pressureAt(low: number | undefined, high: number | undefined, u: number): number {
  if (low === undefined || high === undefined) return 1e5 * 200 ** u;
  if (u < 0.2) return low * (1 - u);
  return u < 0.8 ? low * (high / low) ** ((u - 0.2) / 0.6) : high * (1 + 2 * (u - 0.8));
}

describe("the flash of a mixture by temperature and pressure", () => {
  it("finds stable phases in equilibrium, and as many as the bubble and dew points say", () => {
    fc.assert(
      fc.property(anyModel, share(), share(), (model, u, v) => {
        const { system, z } = model;
        system.liquid.mixture.setComposition(z);
        const coldest = model.limits.minimumTemperature;
        const T = coldest + u * (1.1 * system.liquid.mixture.Tr - coldest);
        const bubble = boundaryAtTemperature(system, "vapour", z, T);
        const dew = boundaryAtTemperature(system, "liquid", z, T);
        // A tenth of the difference has to be more than the digits of a pressure.
        fc.pre(
          !(bubble !== undefined && dew !== undefined && Math.abs(bubble.pressure / dew.pressure - 1) < 1e-8),
        );
        const p = pressureAt(dew?.pressure, bubble?.pressure, v);
        const where = `${model.name} ${[...z]} ${T} K ${p} Pa`;
        let found: ReturnType<typeof flashBlendTemperaturePressure>;
        try {
          found = flashBlendTemperaturePressure(model, T, p);
        } catch (error) {
          if (!(error instanceof NoSuchStateError)) throw new Error(where, { cause: error });
          expect(error.message).toContain("two liquids");
          // Some liquid of the isotherm forms another: at an edge, or the whole as a liquid.
          expect(maySplit(system, T), where).toBe(true);
          const dense = singlePhaseRoot(system, z, T, (2 * p) / (system.R * T))!.density;
          const liquids = [
            z.map((zi) => zi * dense),
            z.map((zi) => zi * bubble!.density),
            dew!.concentrations,
          ];
          const pressures = [2 * p, bubble!.pressure, dew!.pressure];
          if (liquids.every((liquid, i) => isStable(model, T, pressures[i]!, liquid)))
            counts["two liquids, between stable edges"]++;
          counts["two liquids"]++;
          return;
        }
        if (found.phases === 2) {
          counts["two phases"]++;
          checkSplit(model, found.split, T, p, where);
        } else {
          counts["one phase"]++;
          const concentrations = z.map((zi) => zi * found.density);
          const { at } = phaseOf(model, T, concentrations);
          const P = p / (system.R * T);
          worst("pressure of one phase, over ρRT", Math.abs(at.pressure - P) / at.rho, 5e-13, where);
          expect(isStable(model, T, p, concentrations), where).toBe(true);
        }
        if (bubble === undefined || dew === undefined) return;
        const edges = [z.map((zi) => zi * bubble.density), dew.concentrations];
        // Nearer than the edges are known, or with a second liquid, they decide nothing.
        const isNear = [bubble, dew].some(({ pressure }) => Math.abs(p / pressure - 1) < 1e-9);
        if (
          isNear ||
          !isStable(model, T, bubble.pressure, edges[0]!) ||
          !isStable(model, T, dew.pressure, edges[1]!)
        )
          return;
        counts["compared with the boundary"]++;
        expect(found.phases, where).toBe(p > dew.pressure && p < bubble.pressure ? 2 : 1);
      }),
    );
  });
});
