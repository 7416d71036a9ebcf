import { describe, expect, it } from "vitest";
import {
  elbowLength,
  linePressureDrop,
  sizeLine,
  tryFrictionFactor,
  tryLinePressureDrop,
  tryTurbulentFrictionFactor,
  tryTwoPhaseGradient,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, type Outcome } from "../../../src/units/index.js";

const pathsOf = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);

const suction = {
  refrigerant: refrigerant("R-32"),
  carries: "gas",
  pressure: 1.0e6,
  temperature: celsius(14),
  massFlow: 0.0139,
  viscosity: 12.2e-6,
  tube: { outerDiameter: 9.52e-3, wall: 0.8e-3 },
  length: 5,
} as const;

describe("elbows of a line", () => {
  it("count as straight tube of its size", () => {
    const straight = linePressureDrop({ ...suction, length: 5 + 4 * 0.18 });
    expect(linePressureDrop({ ...suction, elbows: 4 }).pressureDrop).toBeWithin(straight.pressureDrop, 1e-12);
    expect(linePressureDrop({ ...suction, elbows: 0 })).toEqual(linePressureDrop(suction));
  });

  it("count by the size of each tube when one is chosen, and refuse the tubes that have none", () => {
    const { tried } = sizeLine({
      ...suction,
      kind: "gas",
      elbows: 6,
      allowedLoss: 1,
      smallestMassFlow: 0.008,
    });
    const compared = tried.filter(({ tube, drop }) => tube.outerDiameter > 9e-3 && drop !== undefined);
    expect(compared.length).toBeGreaterThan(10);
    for (const { tube, drop } of compared) {
      const length = 5 + 6 * elbowLength(tube.outerDiameter);
      expect(drop!.pressureDrop).toBeWithin(
        linePressureDrop({ ...suction, tube, length }).pressureDrop,
        1e-12,
      );
    }
    const smallest = tried.find(({ tube }) => tube.outerDiameter < 5e-3)!;
    expect(smallest.accepted).toBe(false);
    expect(smallest.because).toMatch(/elbows/);
  });
});

describe("input without types", () => {
  it.each<[string, unknown]>([
    ["elbows", 1.5],
    ["elbows", -1],
    ["elbows", null],
    ["roughness", null],
    ["roughness", "0"],
    ["refrigerant", {}],
    ["refrigerant", []],
    ["refrigerant", null],
  ])("a line refuses %s of %j by its path", (path, value) => {
    expect(pathsOf(tryLinePressureDrop({ ...suction, [path]: value } as never))).toEqual([path]);
  });

  it.each([null, "1", [], true])("two phases refuse a quality of %j", (quality) => {
    const flow = {
      massFlux: 200,
      innerDiameter: 4.75e-3,
      quality,
      liquidDensity: 1030,
      vapourDensity: 27.6,
      liquidViscosity: 130e-6,
      vapourViscosity: 12.2e-6,
      roughness: 0,
    };
    expect(pathsOf(tryTwoPhaseGradient(flow as never))).toEqual(["quality"]);
  });

  it("friction factors refuse without throwing", () => {
    expect(pathsOf(tryFrictionFactor(0, -1))).toEqual(["reynolds", "roughness"]);
    expect(tryTurbulentFrictionFactor(3999, 0)).toMatchObject({ ok: false, error: { code: "out-of-range" } });
    // 64/Re.
    expect(tryFrictionFactor(1, 0)).toEqual({ ok: true, value: 64 });
  });
});
