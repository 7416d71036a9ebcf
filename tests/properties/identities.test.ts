import fc from "fast-check";
import { describe, it } from "vitest";
import type { Refrigerant, SinglePhaseState } from "../../src/state/index.js";
import { anyFluid, refrigerantOf, share, singlePhaseAt } from "../support/states.js";
import { trackWorst } from "../support/worst.js";

/*
 * Thermodynamic identities, by two routes each: the property as the library gives it, and the same from other
 * properties or from a difference quotient of fourth order. A quotient of fourth order with a step of 1e-3 is
 * good to about 1e-12 f⁗x⁴/f of the function and 1e-13 of rounding over the step; 5e-8 was the worst of 20 000 states
 * each, near the critical point and in the coldest liquids. Relations without a quotient hold to rounding.
 */
const quotientLimit = 1e-7;
const algebraLimit = 1e-11;
const worst = trackWorst("identities");

/** Relative step of the difference quotients. */
const step = 1e-3;

/** df/dx by the five-point rule. */
function slope(f: (x: number) => number, x: number): number {
  const h = step * x;
  return (8 * (f(x + h) - f(x - h)) - f(x + 2 * h) + f(x - 2 * h)) / (12 * h);
}

/** Whether the points of a quotient around a state all stay in one phase and inside the range. */
function neighbours(refrigerant: Refrigerant, at: SinglePhaseState): boolean {
  return [-2, 2].every((k) => {
    const byTemperature = refrigerant.tryState({
      temperature: at.temperature * (1 + k * step),
      density: at.density,
    });
    const byDensity = refrigerant.tryState({
      temperature: at.temperature,
      density: at.density * (1 + k * step),
    });
    return [byTemperature, byDensity].every((found) => found.ok && found.value.phase !== "two-phase");
  });
}

function casesOf(check: (at: SinglePhaseState, refrigerant: Refrigerant, where: string) => void): void {
  fc.assert(
    fc.property(anyFluid(), share(), share(), (fluid, u, v) => {
      const refrigerant = refrigerantOf(fluid);
      const at = singlePhaseAt(refrigerant, u, v);
      fc.pre(at !== undefined && neighbours(refrigerant, at));
      check(at, refrigerant, `${fluid.designation} ${fluid.equation} ${at.temperature} K ${at.pressure} Pa`);
    }),
  );
}

describe("identities", () => {
  it("p = ρ² (∂a/∂ρ)_T, and u = a − T (∂a/∂T)_ρ", () => {
    casesOf((at, refrigerant, where) => {
      const { temperature, density } = at;
      const RT = refrigerant.specificGasConstant * temperature;
      const a = (T: number, rho: number): number =>
        refrigerant.state({ temperature: T, density: rho }).helmholtzEnergy;
      const pressure = density ** 2 * slope((rho) => a(temperature, rho), density);
      worst(
        "p = ρ² ∂a/∂ρ",
        Math.abs(pressure - at.pressure) / (at.pressure + density * RT),
        quotientLimit,
        where,
      );
      const entropy = -slope((T) => a(T, density), temperature);
      worst(
        "s = −∂a/∂T",
        Math.abs(entropy - at.entropy) / (Math.abs(at.entropy) + at.cv),
        quotientLimit,
        where,
      );
    });
  });

  it("Maxwell: (∂s/∂ρ)_T = −(∂p/∂T)_ρ/ρ²; heat capacities are slopes of energy and enthalpy", () => {
    casesOf((at, refrigerant, where) => {
      const { temperature, density } = at;
      const s = slope((rho) => refrigerant.state({ temperature, density: rho }).entropy, density);
      const p = slope((T) => refrigerant.state({ temperature: T, density }).pressure, temperature);
      worst("∂s/∂ρ = −∂p/∂T/ρ²", Math.abs(s * density ** 2 + p) / Math.abs(p), quotientLimit, where);
      const thermal = at.thermalExpansion / at.isothermalCompressibility;
      worst("∂p/∂T = α/κ", Math.abs(p / thermal - 1), quotientLimit, where);
      const cv = slope((T) => refrigerant.state({ temperature: T, density }).internalEnergy, temperature);
      worst("cv = ∂u/∂T", Math.abs(cv / at.cv - 1), quotientLimit, where);
      const compressibility = slope(
        (rho) => refrigerant.state({ temperature, density: rho }).pressure,
        density,
      );
      const expected = 1 / (density * at.isothermalCompressibility);
      worst("∂p/∂ρ = 1/(ρκ)", Math.abs(compressibility / expected - 1), quotientLimit, where);
    });
  });

  it("along the isobar, the isentrope and the isenthalp", () => {
    casesOf((at, refrigerant, where) => {
      const { pressure, density, enthalpy, entropy } = at;
      // Next to the dome the quotients would cross it; both ends must stay in one phase.
      const ends = [-2, 2].flatMap((k) => [
        refrigerant.tryState({ pressure: pressure * (1 + k * step), entropy }),
        refrigerant.tryState({ pressure: pressure * (1 + k * step), enthalpy }),
      ]);
      fc.pre(ends.every((found) => found.ok && found.value.phase !== "two-phase"));
      const dpdrho = 1 / slope((p) => refrigerant.state({ pressure: p, entropy }).density, pressure);
      // In a cold liquid the density hardly changes over the step, so its digits bound the quotient.
      const digits = 1e-15 / (step * pressure * (1 / (at.speedOfSound ** 2 * density)));
      fc.pre(digits < quotientLimit / 10);
      worst("w² = (∂p/∂ρ)ₛ", Math.abs(dpdrho / at.speedOfSound ** 2 - 1), quotientLimit, where);
      const mu = slope((p) => refrigerant.state({ pressure: p, enthalpy }).temperature, pressure);
      const scale = Math.abs(at.jouleThomson) + 1 / (density * at.cp);
      worst("μ = (∂T/∂p)ₕ", Math.abs(mu - at.jouleThomson) / scale, quotientLimit, where);
    });
  });

  it("cp − cv = T v α²/κ, w² = cp/(cv ρ κ), μ = (Tα − 1)/(ρ cp), Gibbs and enthalpy sums", () => {
    casesOf((at, refrigerant, where) => {
      const {
        temperature: T,
        density,
        cp,
        cv,
        thermalExpansion: alpha,
        isothermalCompressibility: kappa,
      } = at;
      worst("cp − cv", Math.abs(cp - cv - (T * alpha ** 2) / (density * kappa)) / cp, algebraLimit, where);
      worst("w²", Math.abs((at.speedOfSound ** 2 * cv * density * kappa) / cp - 1), algebraLimit, where);
      const jouleThomson =
        Math.abs(at.jouleThomson * density * cp - (T * alpha - 1)) / (1 + T * Math.abs(alpha));
      worst("μ", jouleThomson, algebraLimit, where);
      const RT = refrigerant.specificGasConstant * T;
      const scale = RT + Math.abs(at.enthalpy) + Math.abs(T * at.entropy);
      worst(
        "h = u + p/ρ",
        Math.abs(at.enthalpy - at.internalEnergy - at.pressure / density) / scale,
        algebraLimit,
        where,
      );
      worst(
        "g = h − Ts",
        Math.abs(at.gibbsEnergy - at.enthalpy + T * at.entropy) / scale,
        algebraLimit,
        where,
      );
      const B = at.secondVirial;
      const thin = refrigerant.state({ temperature: T, density: density * 1e-9 });
      const slopeOfZ = (thin.compressibilityFactor - 1) / (thin.density / refrigerant.molarMass);
      fc.pre(thin.phase !== "two-phase");
      const noise = 1e-15 / (thin.density / refrigerant.molarMass);
      if (noise < 1e-6 * Math.abs(B)) worst("B = dZ/dρ at ρ → 0", Math.abs(slopeOfZ / B - 1), 1e-5, where);
    });
  });
});
