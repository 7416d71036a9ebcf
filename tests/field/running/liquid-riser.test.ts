import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type LiquidColumn,
  type LiquidRiser,
  liquidColumnLoss,
  liquidRiser,
  saturationSlope,
  tryLiquidColumnLoss,
  tryLiquidRiser,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, kilopascalDifference } from "../../../src/units/index.js";
import "../../support/fuzz-seed.js";

const r32 = refrigerant("R-32");
const { pressure } = r32.saturation({ temperature: celsius(40) });
const riser: LiquidRiser = {
  refrigerant: r32,
  pressure,
  liquidTemperature: celsius(36),
  subcoolingUncertainty: 1,
  rise: 5,
  friction: 0,
};

describe("column of liquid", () => {
  it("adds friction to what its weight takes, and gives back on the way down", () => {
    const column = { density: 900, rise: 10, friction: 5000, slope: 16e-6 };
    const up = liquidColumnLoss(column);
    // 900 · 9.80665 · 10 by hand.
    expect(up.head).toBeWithin(88259.85, 1e-12);
    expect(up.pressureDrop).toBeWithin(93259.85, 1e-12);
    expect(up.subcoolingLoss).toBeWithin(93259.85 * 16e-6, 1e-12);
    const down = liquidColumnLoss({ ...column, rise: -10 });
    expect(down.pressureDrop).toBeWithin(-83259.85, 1e-12);
    expect(down.subcoolingLoss).toBeLessThan(0);
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", null, [""]],
    ["an empty column", {}, ["density", "rise", "friction", "slope"]],
    ["friction that gives pressure", { density: 900, rise: 1, friction: -1, slope: 1e-5 }, ["friction"]],
    ["no density", { density: 0, rise: 1, friction: 0, slope: 1e-5 }, ["density"]],
  ])("refuses %s", (_what, column, paths) => {
    const outcome = tryLiquidColumnLoss(column as LiquidColumn);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});

describe("liquid riser", () => {
  it("counts what is left from the bubble point at the far end", () => {
    const result = liquidRiser(riser);
    const { density } = r32.state({ temperature: celsius(36), pressure });
    expect(result.density).toBe(density);
    expect(result.subcoolingAtInlet).toBeWithin(4, 1e-9);
    expect(result.pressureAtTop).toBeWithin(pressure - density * 9.80665 * 5, 1e-12);
    const top = r32.bubble({ pressure: result.pressureAtTop }).temperature;
    expect(result.subcooling).toBeWithin(top - celsius(36), 1e-9);
    expect(result.verdict).toBe("pass");
    expect(result.warnings).toEqual([]);
    expect(result.expandedUncertainty).toBe(1);
    expect(result.because).toMatch(
      /subcooling left 3\.3 ± 1\.0 K .* kPa of column \(9\d\d\.\d kg\/m³, 5 m\)/,
    );
  });

  it("agrees with density and slope alone to the curvature of the curve", () => {
    const result = liquidRiser(riser);
    const { slope } = saturationSlope(r32, "bubble", pressure);
    const { subcoolingLoss } = liquidColumnLoss({ density: result.density, rise: 5, friction: 0, slope });
    // 16.55 K/MPa at 40 °C and 20.01 at 30 °C: over 0.7 K the slope changes by 1.3 % on the mean.
    expect(result.subcoolingAtInlet - result.subcooling).toBeWithin(subcoolingLoss, 0.02);
    expect(result.subcoolingAtInlet - result.subcooling).toBeGreaterThan(subcoolingLoss);
  });

  it("tells flash gas, liquid and too close to tell", () => {
    const codes = (change: Partial<LiquidRiser>) => {
      const { verdict, warnings } = liquidRiser({ ...riser, ...change });
      return [verdict, ...warnings.map(({ code }) => code)];
    };
    expect(codes({ rise: 40 })).toEqual(["fail", "flash-gas-expected"]);
    expect(codes({ rise: 30 })).toEqual(["inconclusive", "saturated-within-uncertainty"]);
    expect(codes({ liquidTemperature: celsius(41), rise: 20 })).toEqual([
      "fail",
      "flash-gas-at-inlet",
      "flash-gas-expected",
    ]);
    // On the bubble point itself the density is that of saturated liquid.
    expect(liquidRiser({ ...riser, liquidTemperature: celsius(40) }).density).toBeWithin(
      r32.saturation({ temperature: celsius(40) }).liquid.density,
      1e-6,
    );
    // A fall of 20 m makes liquid of what came with bubbles.
    expect(codes({ liquidTemperature: celsius(41), rise: -20, subcoolingUncertainty: 0.5 })).toEqual([
      "pass",
      "flash-gas-at-inlet",
    ]);
  });

  it("counts friction and how well it is known", () => {
    const friction = kilopascalDifference(40);
    const sure = liquidRiser({ ...riser, friction });
    expect(sure.pressureDrop - sure.head).toBeWithin(40e3, 1e-9);
    expect(sure.assumptions.join(" ")).toContain("friction is taken as exact");
    const unsure = liquidRiser({ ...riser, friction, frictionHalfWidth: 20e3 });
    const { slope } = saturationSlope(r32, "bubble", unsure.pressureAtTop);
    expect(unsure.expandedUncertainty).toBeWithin(2 * Math.hypot(0.5, (slope * 20e3) / Math.sqrt(3)), 1e-9);
    expect(unsure.assumptions.join(" ")).not.toContain("exact");
  });

  it("uses bubble points of a blend, not dew points", () => {
    const r407c = refrigerant("R-407C");
    const bubble = r407c.bubble({ temperature: celsius(40) });
    const result = liquidRiser({ ...riser, refrigerant: r407c, pressure: bubble.pressure });
    expect(result.subcoolingAtInlet).toBeWithin(4, 1e-6);
    expect(result.bubbleTemperatureAtTop).toBe(r407c.bubble({ pressure: result.pressureAtTop }).temperature);
  });

  it("leaves less the higher the line and the more the friction", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -30, max: 40 }),
        fc.integer({ min: 0, max: 100 }),
        fc.integer({ min: 1, max: 10 }),
        (rise, kPa, more) => {
          const left = (r: number, f: number) =>
            liquidRiser({ ...riser, rise: r, friction: kilopascalDifference(f) }).subcooling;
          const base = left(rise, kPa);
          expect(left(rise + more, kPa)).toBeLessThan(base);
          expect(left(rise, kPa + more)).toBeLessThan(base);
        },
      ),
      { numRuns: 100 },
    );
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    [
      "an empty riser",
      {},
      ["refrigerant", "pressure", "liquidTemperature", "subcoolingUncertainty", "rise", "friction"],
    ],
    ["a rise of NaN", { ...riser, rise: Number.NaN }, ["rise"]],
    [
      "friction below 0",
      { ...riser, friction: -1, frictionHalfWidth: -1 },
      ["friction", "frictionHalfWidth"],
    ],
    ["more height than pressure", { ...riser, rise: 400 }, ["rise"]],
  ])("refuses %s", (_what, input, paths) => {
    const outcome = tryLiquidRiser(input as LiquidRiser);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });

  it("is out of range above the critical pressure", () => {
    expect(tryLiquidRiser({ ...riser, pressure: 6e6 })).toMatchObject({
      ok: false,
      error: { code: "out-of-range" },
    });
  });
});
