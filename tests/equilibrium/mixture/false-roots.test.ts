import { describe, expect, it } from "vitest";
import {
  boundaryAtTemperature,
  densityOf,
  findTrial,
  flashBlendQuality,
  flashBlendTemperatureDensity,
  flashBlendTemperaturePressure,
  type PhaseSplit,
} from "../../../src/equilibrium/mixture/index.js";
import { NoSuchStateError } from "../../../src/units/index.js";
import { blendModelOf, mixtureOf } from "../../support/mixtures.js";

/*
 * States at which an answer was wrong once although it satisfied every condition of equilibrium, and what is not to be
 * answered. No outside source: which of two answers is right is decided by stability.
 */
describe("a second loop inside the dome", () => {
  it("is not taken for the liquid: pressure falls steadily with quality from bubble to dew point", () => {
    const model = blendModelOf("R-447A");
    const temperature = 176.376;
    const [bubble, dew] = model.envelope.atTemperature(temperature).map(({ point }) => point.pressure);
    const pressures = Array.from({ length: 19 }, (_, k) => {
      const found = flashBlendQuality(model, { what: "temperature", value: temperature }, (k + 1) / 20);
      return (found as { split: PhaseSplit }).split.pressure;
    });
    [...pressures, dew!].forEach((pressure, k) => {
      expect(pressure).toBeLessThan(k === 0 ? bubble! : pressures[k - 1]!);
    });
  });

  /*
   * Next to the critical point of unlike components there is a phase of medium density with the fugacities of the liquid
   * that falls apart by itself; the true bubble point has the higher pressure, and its liquid is stable.
   */
  it.each<[Record<string, number>, number, number]>([
    [{ "R-170": 0.60205098381266, "R-600a": 0.39794901618734 }, 332.8833471943433, 4.0111e6],
    [{ "R-744": 0.37815545522607863, "R-134a": 0.6218445447739214 }, 336.20344831917856, 4.6217e6],
  ])("is not taken for the vapour: %o at %d K", (parts, T, pressure) => {
    const { system, z, envelope } = mixtureOf(parts);
    const point = boundaryAtTemperature(system, "vapour", z, T)!;
    expect(point.pressure).toBeWithin(pressure, 1e-4);
    expect(point.pressure).toBeWithin(envelope.atTemperature(T)[0]!.point.pressure, 1e-11);
    expect(findTrial(system, z, T, point.pressure / (system.R * T), point.density)).toBeUndefined();
  });
});

describe("a path through the region of two liquids", () => {
  // It turns at 196.8 K and would run to and fro between two cusps for minutes; the point lies beyond.
  it("is given up when it turns back", () => {
    const { system, z, envelope } = mixtureOf({ "R-134a": 0.647995252, "R-600a": 0.352004748 });
    const T = 203.83410975552158;
    const point = boundaryAtTemperature(system, "liquid", z, T)!;
    const dew = envelope.atTemperature(T).find(({ line }) => line === "dew")!;
    expect(point.pressure).toBeWithin(dew.point.pressure, 1e-11);
  });
});

describe("two liquids", () => {
  function refusal(work: () => unknown): string {
    try {
      work();
    } catch (error) {
      if (error instanceof NoSuchStateError) return error.message;
      throw error;
    }
    return "was answered";
  }

  it("are refused where a bubble point's liquid splits: R-125 with R-600 at 218 K", () => {
    const model = mixtureOf({ "R-125": 0.65, "R-600": 0.35 });
    for (const work of [
      () => flashBlendQuality(model, { what: "temperature", value: 218 }, 0),
      () => flashBlendQuality(model, { what: "temperature", value: 218 }, 0.5),
      () => flashBlendTemperatureDensity(model, 218, 500),
      () => flashBlendTemperaturePressure(model, 218, 5e6),
    ]) {
      expect(refusal(work)).toContain("two liquids");
    }
  });

  it("are refused where only the dew line leaves stability and comes back: R-32 with a little R-601a", () => {
    const model = mixtureOf({ "R-32": 0.9567, "R-601a": 0.0433 });
    // Seen by following the dew line: its liquids of 0.4 to 0.55 R-32 split, colder and warmer ones do not.
    expect(model.envelope.oneLiquidFrom).toBeGreaterThan(253.4);
    expect(model.envelope.oneLiquidFrom).toBeLessThan(255);
    expect(refusal(() => flashBlendQuality(model, { what: "temperature", value: 240 }, 0.5))).toContain(
      "two liquids",
    );
  });

  it("are refused between bubble and dew points that are stable themselves: R-32 with R-600", () => {
    const model = mixtureOf({ "R-32": 0.9, "R-600": 0.1 });
    const T = 215;
    for (const { line, point } of model.envelope.atTemperature(T)) {
      const x = line === "bubble" ? model.z : point.concentrations;
      const rho = x.reduce((sum, c) => sum + c, 0);
      const density = line === "bubble" ? point.density : rho;
      const P = point.pressure / (model.system.R * T);
      const fractions = x.map((c) => c / rho);
      expect(findTrial(model.system, fractions, T, P, density), line).toBeUndefined();
    }
    const [bubble, dew] = model.envelope.atTemperature(T).map(({ point }) => point.pressure);
    let refused = 0;
    for (let k = 1; k < 40; k++) {
      const p = dew! * (bubble! / dew!) ** (k / 40);
      const why = refusal(() => {
        const found = flashBlendTemperaturePressure(model, T, p);
        if (found.phases === 1) throw new Error(`one phase at ${p} Pa`);
        const rho = densityOf(found.split.liquid);
        const x = found.split.liquid.map((c) => c / rho);
        expect(findTrial(model.system, x, T, p / (model.system.R * T), rho), `${p} Pa`).toBeUndefined();
      });
      if (why.includes("two liquids")) refused++;
    }
    expect(refused).toBeGreaterThan(0);
    expect(refused).toBeLessThan(39);
  });
});
