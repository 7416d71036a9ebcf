import { describe, expect, it } from "vitest";
import data from "../../../data/field/running.json" with { type: "json" };
import {
  decide,
  type MeteringDevice,
  type TypicalSystem,
  tryTypicalTargets,
  typicalTargets,
} from "../../../src/field/index.js";
import { celsius, type InputError } from "../../../src/units/index.js";

const of = (meteringDevice: MeteringDevice) => typicalTargets({ meteringDevice, mode: "cooling" });
const ranges = (meteringDevice: MeteringDevice) =>
  of(meteringDevice).targets.map(({ quantity, limits }) => [quantity, limits.minimum, limits.maximum]);

const everywhere = [
  // Common practice, no source.
  ["condensing-split", 8, 17],
  ["evaporating-split", 15, 20],
  ["air-temperature-drop", 8, 12],
  ["discharge-temperature", undefined, celsius(105)],
  ["drier-temperature-drop", undefined, 2],
];

describe("usual ranges (common practice, no source)", () => {
  it("of a thermostatic valve", () => {
    expect(ranges("thermostatic-valve")).toEqual([
      ["superheat", 4, 8],
      ["superheat", 5, 12],
      ["subcooling", 4, 8],
      ...everywhere,
    ]);
    expect(of("thermostatic-valve").without).toEqual([]);
  });

  it("of an electronic valve: no subcooling, charge by weight", () => {
    expect(ranges("electronic-valve")).toEqual([["superheat", 4, 8], ["superheat", 5, 12], ...everywhere]);
    expect(of("electronic-valve").without.map(({ quantity }) => quantity)).toEqual(["subcooling"]);
  });

  it("of a fixed orifice: superheat depends on the air", () => {
    expect(ranges("fixed-orifice")).toEqual(everywhere);
    expect(of("fixed-orifice").without.map(({ quantity }) => quantity)).toEqual(["superheat", "subcooling"]);
  });

  it("always say that nameplate and manual win, and where they are from", () => {
    for (const device of ["fixed-orifice", "thermostatic-valve", "electronic-valve"] as const) {
      const { precedence, targets } = of(device);
      expect(precedence).toMatch(/nameplate and the manual .* win/);
      for (const { source, status } of targets) {
        expect(source).toContain("no source");
        expect(status).toBe("recalled");
      }
    }
  });

  it("go straight into a decision", () => {
    const { limits } = of("thermostatic-valve").targets[0]!;
    expect(decide(6, 1, limits).verdict).toBe("pass");
  });

  it("name only quantities and devices that are known", () => {
    const quantities = new Set(data.typical.map(({ quantity }) => quantity));
    expect([...quantities].sort()).toEqual([
      "air-temperature-drop",
      "condensing-split",
      "discharge-temperature",
      "drier-temperature-drop",
      "evaporating-split",
      "subcooling",
      "superheat",
    ]);
    for (const { devices, unit } of data.typical) {
      expect(unit).toBe("K");
      for (const device of devices) {
        expect(["fixed-orifice", "thermostatic-valve", "electronic-valve"]).toContain(device);
      }
    }
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", null, [""]],
    ["an empty system", {}, ["meteringDevice", "mode"]],
    ["heating", { meteringDevice: "fixed-orifice", mode: "heating" }, ["mode"]],
  ])("refuse %s", (_what, system, paths) => {
    const outcome = tryTypicalTargets(system as TypicalSystem);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});
