import { describe, expect, it } from "vitest";
import {
  findTube,
  hoseHoldUp,
  type LineSet,
  lineCharge,
  listTubes,
  printedExtraCharges,
  tryFindTube,
  tryLineCharge,
  tubeBore,
  tubeVolume,
} from "../../../src/field/index.js";
import { r32 } from "../../../src/fluids/r-32.js";
import { refrigerantFrom } from "../../../src/state/index.js";
import { celsius, InputError, millimetre } from "../../../src/units/index.js";

const refrigerant = refrigerantFrom(r32);
const quarter = { outerDiameter: millimetre(6.35), wall: millimetre(0.8) };

describe("tubes", () => {
  it("hold a volume for each metre", () => {
    expect(tubeVolume(quarter, 10)).toBeWithin(1.772055e-4, 1e-6);
    expect(tubeVolume(quarter, 0)).toBe(0);
    expect(() => tubeVolume(quarter, -1)).toThrow(InputError);
  });

  it("are found by diameter and wall", () => {
    expect(findTube(millimetre(9.52), millimetre(0.8))).toMatchObject({
      nominal: "3/8",
      standard: "EN 12735-1",
    });
    expect(findTube(millimetre(15.87), millimetre(1)).nominal).toBe("5/8");
    expect(findTube(millimetre(12)).wall).toBe(0.001);
    expect(() => findTube(millimetre(9.52))).toThrow(/wall.*0\.8, 0\.81 mm/);
    expect(() => findTube(millimetre(9.52), millimetre(0.9))).toThrow(/wall/);
    expect(() => findTube(millimetre(7))).toThrow(/outerDiameter.*6\.35/);
    expect(tryFindTube(Number.NaN).ok).toBe(false);
    expect(tryFindTube(millimetre(12), 0).ok).toBe(false);
  });

  it("of the list can all be found and are all well described", () => {
    for (const tube of listTubes()) {
      expect(findTube(tube.outerDiameter, tube.wall)).toBe(tube);
      expect(tubeBore(tube).innerDiameter).toBeGreaterThan(0);
      expect(tube.source).not.toBe("");
      expect(["read", "recalled"]).toContain(tube.status);
    }
  });

  it.each([
    [0.00635, 0.003175],
    [0.00635, 0],
    [0, 0.0008],
    [Number.NaN, Number.NaN],
  ])("are refused with diameter %f and wall %f", (outerDiameter, wall) => {
    expect(() => tubeBore({ outerDiameter, wall })).toThrow(InputError);
  });
});

const line: LineSet = { length: 9, chargeFreeLength: 5, chargePerMetre: 0.012, maximumLength: 20 };

describe("extra charge", () => {
  it("cannot be more than the bore holds", () => {
    const liquidLine = { refrigerant, liquidTemperature: celsius(40), tube: quarter };
    const { boundPerMetre, liquidDensity } = lineCharge({ ...line, liquidLine });
    // Row tolerance 0.003 (room for another equation); ours is the same one: its printed digits.
    expect(boundPerMetre! * 1000).toBeWithin(15.8251, 1e-5);
    // Written as 893.04 kg/m3 elsewhere.
    expect(liquidDensity).toBeWithin(893.04, 1e-5);
  });

  it.each([
    // Computed independently, g/m to 0.01: R-32 at 25 °C and 40 °C.
    [6.35, 0.8, 17.03, 15.83],
    [9.52, 0.8, 47.34, 44.0],
    [12.7, 0.8, 93.0, 86.42],
    [15.88, 1.0, 145.41, 135.13],
  ])("bound of a line %f × %f mm full of R-32", (outer, wall, warm, hot) => {
    const tube = { outerDiameter: millimetre(outer), wall: millimetre(wall) };
    for (const [temperature, grams] of [
      [25, warm],
      [40, hot],
    ] as const) {
      const liquidLine = { refrigerant, liquidTemperature: celsius(temperature), tube };
      const bound = lineCharge({ ...line, liquidLine }).boundPerMetre! * 1000;
      expect(Math.abs(bound - grams)).toBeLessThanOrEqual(0.0051);
    }
  });

  it("warns when the printed value exceeds the bound by more than 5 %", () => {
    const liquidLine = { refrigerant, liquidTemperature: celsius(25), tube: quarter };
    const codes = (chargePerMetre: number) =>
      lineCharge({ ...line, chargePerMetre, liquidLine }).warnings.map(({ code }) => code);
    // Bound 17.03 g/m, with 5 % 17.88.
    expect(codes(0.0178)).toEqual([]);
    expect(codes(0.018)).toEqual(["printed-above-bound"]);
  });

  it("warns below the shortest length and refuses above the longest", () => {
    const codes = (length: number) =>
      lineCharge({ ...line, length, minimumLength: 3 }).warnings.map(({ code }) => code);
    expect(codes(3)).toEqual([]);
    expect(codes(2.9)).toEqual(["below-minimum-length"]);
    expect(lineCharge({ ...line, length: 20 }).extraCharge).toBeWithin(0.18, 1e-12);
    expect(() => lineCharge({ ...line, length: 20.1 })).toThrow(/at most 20 m/);
  });

  it.each<[string, Partial<LineSet>, string[]]>([
    [
      "numbers that are none",
      { length: 0, chargeFreeLength: -1, chargePerMetre: Number.NaN, maximumLength: 0, minimumLength: -1 },
      ["length", "chargeFreeLength", "chargePerMetre", "maximumLength", "minimumLength"],
    ],
    ["a shortest length above the longest", { minimumLength: 21 }, ["minimumLength"]],
    [
      "half a liquid line",
      {
        liquidLine: { refrigerant: null, liquidTemperature: 0 } as unknown as NonNullable<
          LineSet["liquidLine"]
        >,
      },
      [
        "liquidLine.refrigerant",
        "liquidLine.liquidTemperature",
        "liquidLine.tube.outerDiameter",
        "liquidLine.tube.wall",
      ],
    ],
  ])("refuses %s", (_what, change, paths) => {
    const outcome = tryLineCharge({ ...line, ...change });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });

  it("knows printed values to compare with, all below a full bore", () => {
    const printed = printedExtraCharges("R-32", millimetre(6.35));
    expect(printed.map(({ chargePerMetre }) => chargePerMetre)).toContain(0.012);
    for (const size of [6.35, 9.52, 12.7]) {
      for (const fluid of ["R-32", "R-410A", "R-290"]) {
        for (const row of printedExtraCharges(fluid, millimetre(size))) {
          expect(row.chargePerMetre).toBeGreaterThan(0.005);
          expect(row.chargePerMetre).toBeLessThan(0.1);
          expect(row.source).not.toBe("");
          expect(["read", "recalled"]).toContain(row.status);
        }
      }
    }
    expect(printedExtraCharges("R-0", millimetre(6.35))).toEqual([]);
  });
});

describe("hose", () => {
  it("1.5 m of 4.8 mm full of R-32 liquid holds 26 g", () => {
    expect(hoseHoldUp(millimetre(4.8), 1.5, 961) * 1000).toBeWithin(26.0848, 1e-5);
    expect(() => hoseHoldUp(0, -1, Number.NaN)).toThrow(InputError);
  });
});
