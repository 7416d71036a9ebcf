import { describe, expect, it } from "vitest";
import { carnot, tryCarnot } from "../../src/cycle/index.js";
import { celsius, type InputError } from "../../src/units/index.js";

describe("Carnot's cycle", () => {
  it("between 0 °C and 27.315 °C takes up ten units of heat for each of work", () => {
    // Exact: 273.15/27.315.
    const { coolingCop, heatingCop, because } = carnot({ cold: celsius(0), warm: 300.465 });
    expect(coolingCop).toBeWithin(10, 1e-12);
    expect(heatingCop).toBeWithin(11, 1e-12);
    expect(because).toMatch(/273\.15 K and 300\.4[67] K: 10\.000/);
  });

  it.each<[string, unknown, string[]]>([
    ["no input", undefined, [""]],
    ["null", null, [""]],
    ["a list", [], ["cold", "warm"]],
    ["temperatures that are none", { cold: 0, warm: Number.NaN }, ["cold", "warm"]],
    ["sides in each other's place", { cold: 300, warm: 280 }, ["warm"]],
    ["no lift", { cold: 300, warm: 300 }, ["warm"]],
  ])("refuses %s", (_what, input, paths) => {
    const outcome = tryCarnot(input as never);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});
