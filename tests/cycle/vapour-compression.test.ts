import { describe, expect, it } from "vitest";
import { r407c } from "../../src/blends/r-407c.js";
import { type CycleInput, tryVapourCompressionCycle, vapourCompressionCycle } from "../../src/cycle/index.js";
import { r32 } from "../../src/fluids/r-32.js";
import { r227ea } from "../../src/fluids/r-227ea.js";
import { blendFrom, evaporatorMean, glide, refrigerantFrom } from "../../src/state/index.js";
import { celsius, InputError, OutOfRangeError } from "../../src/units/index.js";

const pure = refrigerantFrom(r32);
const blend = blendFrom(r407c);

const input: CycleInput = {
  refrigerant: pure,
  evaporating: { temperature: celsius(7) },
  condensing: { temperature: celsius(45) },
  superheat: 5,
  subcooling: 5,
  isentropicEfficiency: 0.7,
};
const ofBlend: CycleInput = {
  ...input,
  refrigerant: blend,
  evaporating: { temperature: celsius(7), at: "dew" },
  condensing: { temperature: celsius(45), at: "dew" },
};

describe("the basic cycle", () => {
  it("places its points", () => {
    const { states, evaporating, condensing, flashGas } = vapourCompressionCycle(input);
    expect(states.suction.temperature).toBeWithin(285.15, 1e-12);
    expect(states.suction.pressure).toBeWithin(evaporating.pressure, 1e-12);
    expect(states.isentropicDischarge.entropy).toBeWithin(states.suction.entropy, 1e-11);
    expect(states.discharge.pressure).toBe(condensing.pressure);
    expect(states.liquid.temperature).toBeWithin(313.15, 1e-12);
    expect(states.evaporatorInlet.enthalpy).toBeWithin(states.liquid.enthalpy, 1e-12);
    expect(flashGas).toBe(states.evaporatorInlet.quality);
    // Lever rule, the other way to the same share.
    const { liquid, vapour } = pure.saturation({ temperature: celsius(7) });
    expect(flashGas).toBeWithin(
      (states.liquid.enthalpy - liquid.enthalpy) / (vapour.enthalpy - liquid.enthalpy),
      1e-9,
    );
  });

  it("without superheat and subcooling starts and ends on the saturation curve", () => {
    const { states } = vapourCompressionCycle({ ...input, superheat: 0, subcooling: 0 });
    expect(states.suction.quality).toBe(1);
    expect(states.liquid.quality).toBe(0);
  });

  it("says what it rests on", () => {
    const { because, assumptions, sources, warnings } = vapourCompressionCycle(input);
    expect(because).toMatch(
      /^R-32, evaporating at 7\.0 °C \(1011\.5 kPa\), condensing at 45\.0 °C \(2794\.8 kPa\)/,
    );
    expect(assumptions.join(" ")).toMatch(/steadily.*no heat to its surroundings.*No pressure is lost/);
    expect(sources.slice(0, -1)).toEqual(pure.sources);
    expect(sources.at(-1)).toMatch(/Thermodynamics/);
    expect(warnings).toEqual([]);
    const { assumptions: more, because: range } = vapourCompressionCycle(ofBlend);
    expect(more.join(" ")).toMatch(/designated composition.*mixture model/);
    expect(range).toMatch(/evaporating at .* °C bubble to 7\.0 °C dew/);
  });

  it("gives the same machine by whichever size it is told", () => {
    const by = (size: NonNullable<CycleInput["size"]>) => vapourCompressionCycle({ ...input, size });
    const first = by({ massFlow: 0.014, volumetricEfficiency: 0.9 });
    const sizes = [
      { coolingCapacity: first.coolingCapacity!, volumetricEfficiency: 0.9 },
      { heatingCapacity: first.heatingCapacity!, volumetricEfficiency: 0.9 },
      { displacement: first.displacement!, volumetricEfficiency: 0.9 },
    ];
    for (const size of sizes) {
      const again = by(size);
      expect(again.massFlow).toBeWithin(0.014, 1e-12);
      expect(again.displacement).toBeWithin(first.displacement!, 1e-12);
      expect(again.compressorPower).toBeWithin(first.compressorPower!, 1e-12);
    }
    // q_e ρ₁ counts what is drawn in; the displacement is larger by the volumetric efficiency.
    expect((first.volumetricCapacity * first.displacement! * 0.9) / first.coolingCapacity!).toBeWithin(
      1,
      1e-12,
    );
    expect(first.assumptions.join(" ")).toMatch(/volumetric efficiency/);
    expect(by({ massFlow: 0.014 }).displacement).toBeUndefined();
    const perKilogram = vapourCompressionCycle(input);
    expect(perKilogram.massFlow).toBeUndefined();
    expect(perKilogram.displacement).toBeUndefined();
  });

  it("warns when a refrigerant condenses while it is compressed", () => {
    // The dew line of R-227ea leans the other way: an isentrope from it runs into two phases.
    const leaning = { ...input, refrigerant: refrigerantFrom(r227ea), superheat: 0, isentropicEfficiency: 1 };
    const wet = vapourCompressionCycle(leaning);
    expect(wet.states.discharge.phase).toBe("two-phase");
    expect(wet.warnings.map(({ code }) => code)).toEqual(["wet-discharge"]);
    expect(vapourCompressionCycle({ ...leaning, superheat: 20 }).warnings).toEqual([]);
  });
});

describe("temperatures of a blend", () => {
  it("mean what the caller says", () => {
    const found = (at: "dew" | "bubble" | "midpoint") =>
      vapourCompressionCycle({
        ...ofBlend,
        evaporating: { temperature: celsius(7), at },
        condensing: { temperature: celsius(45), at },
      });
    const dew = found("dew");
    expect(dew.evaporating.dewTemperature).toBeWithin(celsius(7), 1e-10);
    expect(dew.condensing.dewTemperature).toBeWithin(celsius(45), 1e-10);
    expect(dew.evaporating.givenAs).toBe("dew");
    const bubble = found("bubble");
    expect(bubble.evaporating.bubbleTemperature).toBeWithin(celsius(7), 1e-10);
    expect(bubble.condensing.bubbleTemperature).toBeWithin(celsius(45), 1e-10);
    const midpoint = found("midpoint");
    expect(midpoint.evaporating.midpoint).toBeWithin(celsius(7), 1e-10);
    expect(midpoint.condensing.midpoint).toBeWithin(celsius(45), 1e-10);
    // The glide of R-407C is some 5 to 6 K: the wrong end is no detail.
    expect(bubble.evaporating.dewTemperature - dew.evaporating.dewTemperature).toBeGreaterThan(5);
    const inlet = vapourCompressionCycle({
      ...ofBlend,
      evaporating: { temperature: celsius(7), at: "inlet-midpoint" },
    });
    expect((inlet.states.evaporatorInlet.temperature + inlet.evaporating.dewTemperature) / 2).toBeWithin(
      celsius(7),
      1e-10,
    );
    expect(inlet.evaporating.givenAs).toBe("inlet-midpoint");
  });

  it("are those of the glide at the same pressure", () => {
    const { evaporating, condensing, states } = vapourCompressionCycle(ofBlend);
    const hot = glide(blend, { pressure: condensing.pressure });
    expect(condensing.glide).toBeWithin(hot.glide, 1e-8);
    expect(condensing.midpoint).toBeWithin(hot.midpoint, 1e-10);
    expect(condensing.mean).toBeWithin(hot.mean, 1e-10);
    const { pressure } = evaporating;
    expect(evaporating.mean).toBeWithin(
      evaporatorMean(blend, { pressure, enthalpy: states.liquid.enthalpy }),
      1e-10,
    );
    expect(evaporating.mean).toBeGreaterThan(evaporating.midpoint);
  });

  it("of a pure refrigerant are one, named or not", () => {
    const named = vapourCompressionCycle({
      ...input,
      evaporating: { temperature: celsius(7), at: "midpoint" },
      condensing: { temperature: celsius(45), at: "bubble" },
    });
    const plain = vapourCompressionCycle(input);
    expect(named.coolingCop).toBe(plain.coolingCop);
    expect(named.evaporating.givenAs).toBe("saturation");
    expect(named.carnot).toMatchObject({ cold: celsius(7), warm: celsius(45) });
  });
});

describe("refusals of a cycle", () => {
  it.each<[string, unknown, string[]]>([
    ["no input", undefined, [""]],
    ["null", null, [""]],
    [
      "a list",
      [],
      ["refrigerant", "evaporating", "condensing", "superheat", "subcooling", "isentropicEfficiency"],
    ],
    ["a name for a refrigerant", { ...input, refrigerant: "R-32" }, ["refrigerant"]],
    [
      "a blend's temperatures without an end",
      { ...ofBlend, evaporating: { temperature: 280 }, condensing: { temperature: 320 } },
      ["evaporating.at", "condensing.at"],
    ],
    [
      "an inlet of a condenser",
      { ...ofBlend, condensing: { temperature: 320, at: "inlet-midpoint" } },
      ["condensing.at"],
    ],
    ["an unknown end", { ...input, evaporating: { temperature: 280, at: "middle" } }, ["evaporating.at"]],
    [
      "both pressure and temperature",
      { ...input, evaporating: { temperature: 280, pressure: 1e6 } },
      ["evaporating"],
    ],
    ["neither of them", { ...input, condensing: {} }, ["condensing"]],
    ["an end of a pressure", { ...input, evaporating: { pressure: 1e6, at: "dew" } }, ["evaporating.at"]],
    [
      "levels that are no numbers",
      { ...input, evaporating: { pressure: -1 }, condensing: { temperature: Number.NaN } },
      ["evaporating.pressure", "condensing.temperature"],
    ],
    [
      "negative superheat and subcooling and a perfect machine and more",
      { ...input, superheat: -1, subcooling: Number.NaN, isentropicEfficiency: 1.01 },
      ["superheat", "subcooling", "isentropicEfficiency"],
    ],
    ["an efficiency in per cent", { ...input, isentropicEfficiency: 70 }, ["isentropicEfficiency"]],
    ["no efficiency", { ...input, isentropicEfficiency: 0 }, ["isentropicEfficiency"]],
    ["a size that is none", { ...input, size: 3500 }, ["size"]],
    ["an empty size", { ...input, size: {} }, ["size"]],
    ["two sizes", { ...input, size: { massFlow: 1, coolingCapacity: 1 } }, ["size"]],
    ["a size below 0", { ...input, size: { coolingCapacity: -3500 } }, ["size.coolingCapacity"]],
    ["a displacement alone", { ...input, size: { displacement: 1e-3 } }, ["size.volumetricEfficiency"]],
    [
      "condensing below evaporating",
      { ...input, condensing: { temperature: 270 } },
      ["condensing.temperature"],
    ],
    [
      "no lift",
      { ...input, evaporating: { pressure: 1e6 }, condensing: { pressure: 1e6 } },
      ["condensing.pressure"],
    ],
    ["liquid that would not boil", { ...input, subcooling: 39 }, ["subcooling"]],
    [
      "the same where a blend's level waits for it",
      { ...ofBlend, subcooling: 60, evaporating: { temperature: 280, at: "inlet-midpoint" } },
      ["subcooling"],
    ],
  ])("%s", (_what, given, paths) => {
    const outcome = tryVapourCompressionCycle(given as never);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) {
      expect(outcome.error).toBeInstanceOf(InputError);
      expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
    }
  });

  it("next to the critical point, with the limit", () => {
    const { pressure } = pure.critical;
    const at = (share: number) =>
      tryVapourCompressionCycle({ ...input, condensing: { pressure: share * pressure } });
    expect(at(0.949).ok).toBe(true);
    for (const share of [0.95, 0.96, 1.2]) {
      const outcome = at(share);
      expect(outcome.ok).toBe(false);
      if (!outcome.ok) {
        expect(outcome.error).toBeInstanceOf(OutOfRangeError);
        expect(outcome.error).toMatchObject({ quantity: "condensing pressure", maximum: 0.95 * pressure });
      }
    }
    // Above the critical temperature there is nothing to condense at all.
    const above = tryVapourCompressionCycle({ ...input, condensing: { temperature: celsius(100) } });
    expect(above.ok ? "" : above.error.code).toBe("out-of-range");
  });

  it("beyond the equation of state", () => {
    const outcome = tryVapourCompressionCycle({ ...input, evaporating: { temperature: 50 } });
    expect(outcome.ok ? "" : outcome.error.code).toBe("out-of-range");
  });
});
