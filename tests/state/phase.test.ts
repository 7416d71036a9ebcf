import { describe, expect, it, test } from "vitest";
import {
  fluids,
  refrigerant,
  refrigerantFrom,
  type SinglePhaseState,
  type State,
  type TwoPhaseState,
} from "../../src/state/index.js";

const r32 = refrigerant("R-32");
const { critical } = r32;

/** Everything that only a state in one phase has. */
const onePhaseOnly = [
  "cp",
  "cv",
  "speedOfSound",
  "isentropicExponent",
  "jouleThomson",
  "isothermalCompressibility",
  "thermalExpansion",
  "secondVirial",
  "fugacityCoefficient",
] as const;

function twoPhase(state: State): TwoPhaseState {
  if (state.phase !== "two-phase") throw new Error(`is ${state.phase}`);
  return state;
}

describe("the phase of a state", () => {
  const T = critical.temperature;
  const p = critical.pressure;

  test.each<[string, { temperature: number; pressure: number }, string]>([
    ["cold, above the saturation pressure", { temperature: 280, pressure: 2e6 }, "liquid"],
    ["cold, below the saturation pressure", { temperature: 280, pressure: 5e5 }, "vapour"],
    [
      "just below the critical temperature, above the critical pressure",
      { temperature: 0.999 * T, pressure: 2 * p },
      "liquid",
    ],
    [
      "at the critical temperature, above the critical pressure",
      { temperature: T, pressure: 2 * p },
      "liquid",
    ],
    [
      "at the critical temperature, below the critical pressure",
      { temperature: T, pressure: 0.5 * p },
      "vapour",
    ],
    ["above both critical values", { temperature: 1.001 * T, pressure: 1.001 * p }, "supercritical"],
    ["hot, just below the critical pressure", { temperature: 1.1 * T, pressure: 0.999 * p }, "vapour"],
    ["hot and thin", { temperature: 1.1 * T, pressure: 100 }, "vapour"],
  ])("%s", (_, input, phase) => {
    expect(r32.state(input).phase).toBe(phase);
  });

  it("is one of four words, whatever is asked", () => {
    const seen = new Set<string>();
    for (let i = 0; i <= 30; i++) {
      for (let j = 0; j <= 30; j++) {
        const temperature = r32.limits.minimumTemperature + (i / 30) * 290;
        const found = r32.tryState({ temperature, density: 1e-3 * 1e6 ** (j / 30) });
        if (found.ok) seen.add(found.value.phase);
      }
    }
    expect([...seen].sort()).toEqual(["liquid", "supercritical", "two-phase", "vapour"]);
  });

  it("has no quality away from saturation, 0 and 1 on it", () => {
    expect(r32.state({ temperature: 280, pressure: 2e6 }).quality).toBeUndefined();
    expect(r32.state({ temperature: 400, pressure: 8e6 }).quality).toBeUndefined();
    const { liquid, vapour } = r32.saturation({ temperature: 280 });
    expect([liquid.quality, vapour.quality]).toEqual([0, 1]);
    expect([liquid.phase, vapour.phase]).toEqual(["liquid", "vapour"]);
  });
});

describe("saturation", () => {
  it("has both phases at one temperature and pressure, and the latent heat between them", () => {
    for (const fluid of fluids()) {
      const asked = refrigerantFrom(fluid);
      const temperature = 0.8 * asked.critical.temperature;
      const { liquid, vapour, latentHeat, pressure } = asked.saturation({ temperature });
      expect([liquid.temperature, vapour.temperature]).toEqual([temperature, temperature]);
      expect([liquid.pressure, vapour.pressure]).toEqual([pressure, pressure]);
      expect(latentHeat).toBe(vapour.enthalpy - liquid.enthalpy);
      expect(latentHeat).toBeGreaterThan(0);
      // In equilibrium h″ − h′ = T(s″ − s′), and fugacities are equal.
      expect(temperature * (vapour.entropy - liquid.entropy)).toBeWithin(latentHeat, 1e-10);
      expect(liquid.fugacityCoefficient).toBeWithin(vapour.fugacityCoefficient, 1e-10);
    }
  });

  it("keeps digits where a liquid is cold: compressibility factor and fugacity come from the pressure", () => {
    // At the triple point of propane p is 0.17 mPa, and Z of the liquid 1e-11: the equation alone leaves it no digit.
    const r290 = refrigerant("R-290");
    const temperature = r290.limits.minimumTemperature;
    const { liquid, vapour, pressure } = r290.saturation({ temperature });
    const RT = r290.specificGasConstant * temperature;
    expect(liquid.compressibilityFactor).toBeWithin(pressure / (liquid.density * RT), 1e-14);
    expect(liquid.fugacityCoefficient).toBeWithin(vapour.fugacityCoefficient, 1e-11);
  });

  it("does not depend on how it was asked for", () => {
    const byTemperature = r32.saturation({ temperature: 280 });
    const byPressure = r32.saturation({ pressure: byTemperature.pressure });
    const byQuality = twoPhase(r32.state({ temperature: 280, quality: 0.4 }));
    expect(byPressure.liquid.density).toBeWithin(byTemperature.liquid.density, 1e-12);
    expect(byQuality.liquid).toEqual(byTemperature.liquid);
    expect(byQuality.vapour).toEqual(byTemperature.vapour);
  });
});

describe("a state in two phases", () => {
  const qualities = [0, 1e-12, 0.1, 0.5, 0.9, 1 - 1e-12, 1];

  test.each(qualities)("at quality %s is the mean of its parts, weighted by mass", (quality) => {
    const state = twoPhase(r32.state({ temperature: 280, quality }));
    const { liquid, vapour } = state;
    const mean = (of: (part: SinglePhaseState) => number): number =>
      (1 - quality) * of(liquid) + quality * of(vapour);
    expect(state.quality).toBe(quality);
    expect(1 / state.density).toBeWithin(
      mean((part) => 1 / part.density),
      1e-14,
    );
    expect(state.enthalpy).toBeWithin(
      mean((part) => part.enthalpy),
      1e-14,
    );
    expect(state.entropy).toBeWithin(
      mean((part) => part.entropy),
      1e-14,
    );
    expect(state.internalEnergy).toBeWithin(
      mean((part) => part.internalEnergy),
      1e-14,
    );
    expect(state.helmholtzEnergy).toBeWithin(
      mean((part) => part.helmholtzEnergy),
      1e-13,
    );
    expect(state.gibbsEnergy).toBeWithin(liquid.gibbsEnergy, 1e-12);
    expect(state.gibbsEnergy).toBeWithin(vapour.gibbsEnergy, 1e-12);
    expect(state.latentHeat).toBe(vapour.enthalpy - liquid.enthalpy);
    const RT = r32.specificGasConstant * 280;
    expect(state.compressibilityFactor).toBeWithin(state.pressure / (state.density * RT), 1e-12);
    expect(state.enthalpy - state.internalEnergy).toBeWithin(state.pressure / state.density, 1e-9);
  });

  it("stays one at both ends: quality 0 and 1 are a mixture with nothing of the other phase", () => {
    const bubble = twoPhase(r32.state({ temperature: 280, quality: 0 }));
    const dew = twoPhase(r32.state({ pressure: 1e6, quality: 1 }));
    expect(bubble.density).toBeWithin(bubble.liquid.density, 1e-15);
    expect(bubble.enthalpy).toBe(bubble.liquid.enthalpy);
    expect(dew.density).toBeWithin(dew.vapour.density, 1e-15);
    expect(dew.enthalpy).toBeWithin(dew.vapour.enthalpy, 1e-15);
  });

  it("has no heat capacity, sound speed and the like: absent, not NaN", () => {
    const state = r32.state({ temperature: 280, quality: 0.5 });
    for (const name of onePhaseOnly) {
      expect((state as unknown as Record<string, unknown>)[name]).toBeUndefined();
      expect(name in state).toBe(false);
      expect(twoPhase(state).liquid[name]).toSatisfy(Number.isFinite);
    }
  });
});

describe("a state", () => {
  const states: readonly (readonly [string, State])[] = [
    ["in one phase", r32.state({ temperature: 300, pressure: 1e6 })],
    ["in two phases", r32.state({ temperature: 280, quality: 0.5 })],
  ];

  test.each(states)("%s knows its refrigerant, with sources and limits", (_, state) => {
    expect(state.refrigerant).toBe(r32);
    expect(state.refrigerant.sources.length).toBeGreaterThan(0);
    expect(state.composition).toEqual({ "R-32": 1 });
  });

  test.each(states)(
    "%s names the refrigerant by its designation in JSON, and carries no equation",
    (_, state) => {
      const text = JSON.stringify(state);
      const parsed = JSON.parse(text) as Record<string, unknown>;
      expect(parsed["refrigerant"]).toBe("R-32");
      expect(text).not.toContain("residual");
      expect(text).not.toContain("null");
      expect(text.length).toBeLessThan(3000);
      for (const name of [
        "temperature",
        "pressure",
        "density",
        "enthalpy",
        "entropy",
        "phase",
        "extrapolated",
      ]) {
        expect(parsed[name]).toEqual((state as unknown as Record<string, unknown>)[name]);
      }
      if (state.phase === "two-phase") {
        expect(parsed["liquid"]).toMatchObject({ refrigerant: "R-32", phase: "liquid", quality: 0 });
      } else {
        expect(parsed["secondVirial"]).toBe(state.secondVirial);
      }
    },
  );

  it("is its own: a later call does not change it", () => {
    const first = r32.state({ temperature: 300, pressure: 1e6 });
    const kept = { ...first };
    r32.state({ temperature: 310, pressure: 2e6 });
    r32.saturation({ temperature: 250 });
    expect({ ...first }).toEqual(kept);
  });

  it("of a refrigerant in JSON is its designation", () => {
    expect(JSON.stringify({ refrigerant: r32 })).toBe('{"refrigerant":"R-32"}');
  });
});

it("has a type that refuses what a state does not have", () => {
  // Never run: the compiler has to refuse it, which `npm run typecheck` sees to.
  const refused = (state: State): void => {
    // @ts-expect-error a state in two phases has no heat capacity, so one must ask which it is
    state.cp;
    if (state.phase !== "two-phase") state.cp satisfies number;
    // @ts-expect-error a state in one phase has no parts
    state.liquid;
    if (state.phase === "two-phase") state.liquid.cp satisfies number;
    // @ts-expect-error states are read-only
    state.temperature = 300;
    // @ts-expect-error and so is what they hold
    state.composition["R-32"] = 0.5;
    // @ts-expect-error the refrigerant too
    state.refrigerant.limits.maximumPressure = 1e9;
    // @ts-expect-error quality and enthalpy fix no state
    r32.state({ quality: 0.5, enthalpy: 3e5 });
    // @ts-expect-error one field is too few
    r32.state({ temperature: 300 });
    // A pure refrigerant always has one phase at a temperature and a pressure, so no question is needed.
    refrigerantFrom(fluids()[0]!).state({ temperature: 300, pressure: 1e6 }).cp satisfies number;
    // @ts-expect-error a refrigerant by name may be a blend, which may have two
    r32.state({ temperature: 300, pressure: 1e6 }).cp satisfies number;
  };
  expect(refused).toBeTypeOf("function");
});
