import { describe, expect, it } from "vitest";
import {
  isentropicEfficiency,
  tryIsentropicEfficiency,
  vapourCompressionCycle,
} from "../../src/cycle/index.js";
import { r32 } from "../../src/fluids/r-32.js";
import { refrigerantFrom } from "../../src/state/index.js";
import { celsius, type InputError } from "../../src/units/index.js";

const refrigerant = refrigerantFrom(r32);
const { states } = vapourCompressionCycle({
  refrigerant,
  evaporating: { temperature: celsius(7) },
  condensing: { temperature: celsius(45) },
  superheat: 5,
  subcooling: 5,
  isentropicEfficiency: 0.7,
});
const { suction, discharge, isentropicDischarge } = states;

describe("isentropic efficiency", () => {
  it("comes back from the discharge that it made", () => {
    expect(isentropicEfficiency({ suction, discharge })).toBeWithin(0.7, 1e-9);
    expect(isentropicEfficiency({ suction, discharge: isentropicDischarge })).toBe(1);
  });

  it.each<[string, unknown, string[]]>([
    ["no input", undefined, [""]],
    ["null", null, [""]],
    ["a list", [], ["suction", "discharge"]],
    ["temperatures for states", { suction: 280, discharge: { pressure: 1e6 } }, ["suction", "discharge"]],
    ["no compression", { suction, discharge: suction }, ["discharge.pressure"]],
    [
      "gas cooler than a compression without losses leaves it",
      {
        suction,
        discharge: refrigerant.state({
          pressure: discharge.pressure,
          temperature: isentropicDischarge.temperature - 1,
        }),
      },
      ["discharge.enthalpy"],
    ],
    [
      "states of two objects, which may count from different zeros",
      {
        suction,
        discharge: refrigerantFrom(r32, { referenceState: "ashrae" }).state({
          pressure: discharge.pressure,
          temperature: discharge.temperature,
        }),
      },
      ["discharge.refrigerant"],
    ],
  ])("refuses %s", (_what, input, paths) => {
    const outcome = tryIsentropicEfficiency(input as never);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});
