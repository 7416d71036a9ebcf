import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CondenserQuestion,
  condensingTemperature,
  type EvaporatorQuestion,
  evaporatingTemperature,
  tryCondensingTemperature,
  tryEvaporatingTemperature,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, inCelsius, kilopascal } from "../../../src/units/index.js";
import "../../support/fuzz-seed.js";

const r32 = refrigerant("R-32");
const r410a = refrigerant("R-410A");
const r407c = refrigerant("R-407C");
const pressure = kilopascal(500);
const inletEnthalpy = r407c.bubble({ temperature: celsius(40) }).liquid.enthalpy;

describe("evaporating temperature", () => {
  it("has the ends of R-410A at 1 MPa", () => {
    // Computed from a mixture model of the same form, another implementation: 7.17 and 7.27 °C; two models of that
    // form agree to 0.2 % in pressure, which is 0.07 K here.
    const found = evaporatingTemperature({
      refrigerant: r410a,
      pressure: kilopascal(1000),
      convention: "dew",
    });
    expect(Math.abs(inCelsius(found.bubbleTemperature) - 7.17)).toBeLessThan(0.07);
    expect(Math.abs(inCelsius(found.dewTemperature) - 7.27)).toBeLessThan(0.07);
    expect(found.temperature).toBe(found.dewTemperature);
  });

  it("is the same by every convention for a pure refrigerant", () => {
    const inlet = r32.bubble({ temperature: celsius(40) }).liquid.enthalpy;
    const { temperature } = r32.saturation({ pressure: kilopascal(900) });
    const at = { refrigerant: r32, pressure: kilopascal(900), inletEnthalpy: inlet };
    for (const convention of ["dew", "midpoint-of-bubble-and-dew"] as const) {
      expect(evaporatingTemperature({ ...at, convention }).temperature).toBeWithin(temperature, 1e-9);
    }
    for (const convention of ["midpoint-from-inlet", "mean-of-heat"] as const) {
      const found = evaporatingTemperature({ ...at, convention });
      expect(found.temperature).toBeWithin(temperature, 1e-9);
      expect(found.inletTemperature).toBeWithin(temperature, 1e-9);
    }
  });

  it("of a blend depends on the convention, which the result names", () => {
    const bubble = r407c.bubble({ pressure }).temperature;
    const dew = r407c.dew({ pressure }).temperature;
    const inlet = r407c.state({ pressure, enthalpy: inletEnthalpy }).temperature;
    const by = (question: Pick<EvaporatorQuestion, "convention">) =>
      evaporatingTemperature({
        refrigerant: r407c,
        pressure,
        inletEnthalpy,
        ...question,
      } as EvaporatorQuestion);
    expect(by({ convention: "dew" }).temperature).toBe(dew);
    expect(by({ convention: "midpoint-of-bubble-and-dew" }).temperature).toBeWithin(
      (bubble + dew) / 2,
      1e-15,
    );
    const fromInlet = by({ convention: "midpoint-from-inlet" });
    expect(fromInlet.temperature).toBeWithin((inlet + dew) / 2, 1e-15);
    expect(fromInlet.inletTemperature).toBe(inlet);
    expect(fromInlet.glide).toBeGreaterThan(5);
    expect(fromInlet.because).toMatch(/by the convention midpoint-from-inlet: R-407C at 500 kPa absolute/);
    // The inlet is part vapour already, so the simple form is too low: by half of the quality's share of the glide.
    const tooLow = fromInlet.temperature - by({ convention: "midpoint-of-bubble-and-dew" }).temperature;
    expect(tooLow).toBeGreaterThan(0.3);
    expect(tooLow).toBeLessThan(1.5);
    // Second route: mean of T over the heat, summed along the coil.
    const { vapour } = r407c.dew({ pressure });
    let entropy = 0;
    const steps = 200;
    for (let step = 0; step < steps; step++) {
      const enthalpy = inletEnthalpy + ((step + 0.5) / steps) * (vapour.enthalpy - inletEnthalpy);
      entropy += (vapour.enthalpy - inletEnthalpy) / steps / r407c.state({ pressure, enthalpy }).temperature;
    }
    const mean = (vapour.enthalpy - inletEnthalpy) / entropy;
    expect(by({ convention: "mean-of-heat" }).temperature).toBeWithin(mean, 1e-6);
    for (const convention of ["dew", "midpoint-from-inlet"] as const) {
      expect(by({ convention }).convention).toBe(convention);
    }
  });

  it("warns of an inlet that is no mixture", () => {
    const cold = r407c.bubble({ temperature: celsius(-20) }).liquid.enthalpy;
    const question = { refrigerant: r407c, pressure, inletEnthalpy: cold } as const;
    const { warnings } = evaporatingTemperature({ ...question, convention: "midpoint-from-inlet" });
    expect(warnings.map(({ code }) => code)).toEqual(["inlet-not-two-phase"]);
  });

  it("rises with pressure and lies within the glide", () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 1500 }), (kPa) => {
        const at = (p: number) =>
          evaporatingTemperature({
            refrigerant: r407c,
            pressure: kilopascal(p),
            convention: "midpoint-of-bubble-and-dew",
          });
        const found = at(kPa);
        expect(at(kPa + 1).temperature).toBeGreaterThan(found.temperature);
        expect(found.temperature).toBeGreaterThan(found.bubbleTemperature);
        expect(found.temperature).toBeLessThan(found.dewTemperature);
      }),
      { numRuns: 100 },
    );
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    ["no question", {}, ["refrigerant", "pressure", "convention"]],
    ["no convention", { refrigerant: r407c, pressure }, ["convention"]],
    ["a pressure of 0", { refrigerant: r407c, pressure: 0, convention: "dew" }, ["pressure"]],
    [
      "no inlet where it counts",
      { refrigerant: r407c, pressure, convention: "mean-of-heat" },
      ["inletEnthalpy"],
    ],
    [
      "an inlet of vapour",
      { refrigerant: r407c, pressure, convention: "midpoint-from-inlet", inletEnthalpy: 5e5 },
      ["inletEnthalpy"],
    ],
  ])("refuses %s", (_what, question, paths) => {
    const outcome = tryEvaporatingTemperature(question as EvaporatorQuestion);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});

describe("condensing temperature", () => {
  it("is dew, mid-point or mean of the heat given off", () => {
    const high = kilopascal(1800);
    const by = (convention: CondenserQuestion["convention"]) =>
      condensingTemperature({ refrigerant: r407c, pressure: high, convention }).temperature;
    const bubble = r407c.bubble({ pressure: high });
    const dew = r407c.dew({ pressure: high });
    expect(by("dew")).toBe(dew.temperature);
    expect(by("midpoint-of-bubble-and-dew")).toBeWithin((bubble.temperature + dew.temperature) / 2, 1e-15);
    expect(by("mean-of-heat")).toBeWithin(
      (dew.vapour.enthalpy - bubble.liquid.enthalpy) / (dew.vapour.entropy - bubble.liquid.entropy),
      1e-12,
    );
  });

  it("has no inlet to count from", () => {
    const question = { refrigerant: r407c, pressure, convention: "midpoint-from-inlet" };
    const outcome = tryCondensingTemperature(question as unknown as CondenserQuestion);
    expect(outcome).toMatchObject({ ok: false, error: { problems: [{ path: "convention" }] } });
    expect(tryCondensingTemperature(null as unknown as CondenserQuestion).ok).toBe(false);
  });

  it("is out of range above the critical pressure", () => {
    const outcome = tryCondensingTemperature({ refrigerant: r32, pressure: 6e6, convention: "dew" });
    expect(outcome).toMatchObject({ ok: false, error: { code: "out-of-range" } });
  });
});
