import { describe, expect, it, test } from "vitest";
import type { Fluid, IdealPart } from "../../src/catalogue/index.js";
import { Equation } from "../../src/equation/index.js";
import { r32 } from "../../src/fluids/r-32.js";
import { r134a } from "../../src/fluids/r-134a.js";
import { fluids } from "../../src/state/index.js";

function idealAt(fluid: Fluid, T: number): { phi: number; phi_t: number; phi_tt: number } {
  const out = { phi: 0, phi_t: 0, phi_tt: 0 };
  new Equation(fluid).evaluateIdeal(fluid.reducing.temperature / T, out);
  return out;
}

/** The cp0 form of an alpha0 form: cp⁰/R = 1 + logTau − Σ n t(t − 1) τ^t + Planck–Einstein terms in K. */
function asHeatCapacity(ideal: IdealPart, Tr: number): IdealPart {
  if (ideal.form === "cp0") return ideal;
  return {
    form: "cp0",
    constant: 1 + ideal.logTau,
    power: ideal.power
      .filter(([, t]) => t !== 0 && t !== 1)
      .map(([n, t]) => [-n * t * (t - 1) * Tr ** t, -t] as const),
    planckEinstein: ideal.planckEinstein.map(([n, theta]) => [n, theta * Tr] as const),
  };
}

describe("the two published forms of an ideal part", () => {
  test.each(
    fluids()
      .filter(({ ideal }) => ideal.form === "alpha0")
      .map((fluid) => [`${fluid.designation} ${fluid.equation}`, fluid] as const),
  )("agree for %s", (_, fluid) => {
    const { reducing, limits } = fluid;
    const other: Fluid = { ...fluid, ideal: asHeatCapacity(fluid.ideal, reducing.temperature) };
    const from = limits.minimumTemperature;
    const base = { one: idealAt(fluid, from), other: idealAt(other, from) };
    const tauBase = reducing.temperature / from;
    for (let k = 0; k <= 50; k++) {
      const T = from + ((limits.maximumTemperature - from) * k) / 50;
      const tau = reducing.temperature / T;
      const [one, two] = [idealAt(fluid, T), idealAt(other, T)];
      expect(two.phi_tt).toBeWithin(one.phi_tt, 1e-13);
      // The constants a + bτ of integration may differ, as enthalpy and entropy have no zero of their own.
      expect(two.phi_t - base.other.phi_t - (one.phi_t - base.one.phi_t)).toBeCloseTo(0, 11);
      const straight = (x: typeof one, b: typeof one): number => x.phi - b.phi - b.phi_t * (tau - tauBase);
      expect(straight(two, base.other) - straight(one, base.one)).toBeCloseTo(0, 11);
    }
  });

  it("are both among the fluids, so that both are tried", () => {
    expect(new Set(fluids().map(({ ideal }) => ideal.form))).toEqual(new Set(["alpha0", "cp0"]));
    expect(r32.ideal.form).toBe("alpha0");
  });
});

describe("an ideal part", () => {
  const with_ = (ideal: IdealPart): Fluid => ({ ...r134a, ideal });

  it("of a monatomic gas is a logarithm", () => {
    const found = idealAt(with_({ form: "cp0", constant: 2.5, power: [], planckEinstein: [] }), 250);
    const tau = r134a.reducing.temperature / 250;
    expect(found.phi).toBeWithin(1.5 * Math.log(tau), 1e-15);
    expect(found.phi_t).toBeWithin(1.5 / tau, 1e-15);
    expect(found.phi_tt).toBeWithin(-1.5 / tau ** 2, 1e-15);
  });

  it("takes powers of T as they are printed", () => {
    const found = idealAt(
      with_({
        form: "cp0",
        constant: 4,
        power: [
          [1e-3, 1],
          [2e-6, 2],
        ],
        planckEinstein: [],
      }),
      250,
    );
    const tau = r134a.reducing.temperature / 250;
    expect(1 - tau * tau * found.phi_tt).toBeWithin(4 + 1e-3 * 250 + 2e-6 * 250 ** 2, 1e-14);
  });

  it("has vibrations that freeze out when cold and reach n R when hot, without overflow", () => {
    const vibration = with_({ form: "alpha0", logTau: 3, power: [], planckEinstein: [[2, 5]] });
    const heat = (T: number): number => {
      const tau = r134a.reducing.temperature / T;
      return 1 - tau * tau * idealAt(vibration, T).phi_tt;
    };
    // θτ = 18700: e to that power is far beyond the doubles.
    expect(heat(0.1)).toBe(4);
    expect(idealAt(vibration, 0.1).phi_t).toSatisfy(Number.isFinite);
    // x²eˣ/(eˣ − 1)² = 1 − x²/12 for small x.
    expect(heat(1e6)).toBeWithin(6, 1e-6);
  });
});
