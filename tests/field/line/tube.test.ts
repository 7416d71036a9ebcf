import { describe, expect, it } from "vitest";
import {
  elbowLength,
  findTube,
  listTubes,
  tryElbowLength,
  tryTubeBore,
  tryTubeVolume,
  tubeBore,
} from "../../../src/field/index.js";
import { type InputError, millimetre, type Outcome } from "../../../src/units/index.js";

const pathsOf = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);

/** Outer diameter, wall and bore in mm, cross-section in mm²: computed for this check, geometry to four digits. */
const bores: [number, number, number, number][] = [
  [3.18, 0.76, 1.66, 2.1642],
  [4.76, 0.76, 3.24, 8.2448],
  [6, 1, 4, 12.5664],
  [6.35, 0.76, 4.83, 18.3225],
  [6.35, 0.8, 4.75, 17.7205],
  [7.94, 0.8, 6.34, 31.5696],
  [7.94, 0.81, 6.32, 31.3707],
  [8, 1, 6, 28.2743],
  [9.52, 0.8, 7.92, 49.2652],
  [9.53, 0.81, 7.91, 49.1409],
  [10, 1, 8, 50.2655],
  [12, 1, 10, 78.5398],
  [12.7, 0.8, 11.1, 96.7689],
  [12.7, 0.81, 11.08, 96.4205],
  [15, 1, 13, 132.7323],
  [15.88, 0.89, 14.1, 156.145],
  [15.88, 1, 13.88, 151.3104],
  [16, 1, 14, 153.938],
  [18, 1, 16, 201.0619],
  [19.05, 0.89, 17.27, 234.2473],
  [19.05, 1, 17.05, 228.3172],
  [19.05, 1.2, 16.65, 217.73],
  [22, 1, 20, 314.1593],
  [22.2, 1, 20.2, 320.4739],
  [22.23, 1.14, 19.95, 312.5904],
  [25.4, 1, 23.4, 430.0526],
  [28, 1.5, 25, 490.8739],
  [28.58, 1.27, 26.04, 532.564],
  [28.6, 1, 26.6, 555.7163],
];

describe("listed tubes", () => {
  it.each(bores)("%f × %f mm has a bore of %f mm, %f mm²", (outer, wall, inner, area) => {
    const bore = tubeBore(findTube(millimetre(outer), millimetre(wall)));
    expect(bore.innerDiameter * 1e3).toBeCloseTo(inner, 10);
    expect(Math.abs(bore.area * 1e6 - area)).toBeLessThanOrEqual(0.5001e-4);
  });

  it("are these and no others, each with its standard and source", () => {
    const sizes = listTubes().map(({ outerDiameter, wall }) =>
      [outerDiameter, wall].map((x) => x.toFixed(5)),
    );
    const expected = bores.map(([outer, wall]) => [outer, wall].map((x) => (x / 1000).toFixed(5)));
    expect(sizes.sort()).toEqual(expected.sort());
    for (const { standard, temper, source, status } of listTubes()) {
      expect(standard).not.toBe("");
      expect(temper).not.toBe("");
      expect(source).not.toBe("");
      expect(["read", "recalled"]).toContain(status);
    }
  });

  it("refuse a size that is none, without throwing", () => {
    expect(pathsOf(tryTubeBore(null as never))).toEqual(["outerDiameter", "wall"]);
    expect(pathsOf(tryTubeBore({ outerDiameter: 6e-3, wall: 3e-3 }))).toEqual(["wall"]);
    expect(pathsOf(tryTubeVolume({ outerDiameter: 6e-3, wall: 1e-3 }, -1))).toEqual(["length"]);
    expect(tryTubeVolume({ outerDiameter: 6e-3, wall: 1e-3 }, 2)).toMatchObject({ ok: true });
  });
});

describe("elbows", () => {
  it.each([
    // Printed service manual of a multi-split unit (read), at the sizes that the tubes really have.
    [6.35, 0.16],
    [9.52, 0.18],
    [12.7, 0.2],
    [15.88, 0.25],
    [19.05, 0.35],
    [25.4, 0.45],
    [31.75, 0.55],
  ])("of %f mm count as %f m", (outer, length) => {
    expect(elbowLength(millimetre(outer))).toBe(length);
  });

  it("of other sizes or none are refused without throwing", () => {
    expect(tryElbowLength(millimetre(4.76))).toMatchObject({ ok: false, error: { code: "out-of-range" } });
    expect(pathsOf(tryElbowLength(Number.NaN))).toEqual(["outerDiameter"]);
  });
});
