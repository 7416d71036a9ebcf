import fc from "fast-check";
import { describe, it } from "vitest";
import type { Refrigerant, State, StateInput } from "../../src/state/index.js";
import { anyFluid, refrigerantOf, saturationTemperatureAt, share, singlePhaseAt } from "../support/states.js";
import { trackWorst } from "../support/worst.js";

/*
 * No outside source: a state asked for by any pair of its properties must be the same state. 1e-9 is the promise;
 * what is seen is printed.
 */
const limit = 1e-9;
const worst = trackWorst("every input pair returns to its state");

/**
 * Near the critical point the phases grow alike and a quality loses digits as (1 − T/Tc)^−1.5: the promise is for a
 * thousandth of Tc below it and more, and ten times nearer to it two digits fewer are asked.
 */
const nearest = 1e-3;
const nearer = 1e-4;
const nearLimit = 1e-7;

/**
 * Largest deviation of one state from another. Enthalpy and entropy are compared on the scales RT and R, because
 * their zero is arbitrary; pressure on p + ρRT, because a liquid's pressure is a small difference of numbers that
 * large; in two phases quality stands for density, because a small quality takes its digits from 1.
 */
function deviation(found: State, from: State): number {
  const R = from.refrigerant.specificGasConstant;
  const RT = R * from.temperature;
  const amount =
    from.phase === "two-phase"
      ? Math.abs(qualityOf(found, from) - from.quality)
      : Math.abs(found.density / from.density - 1);
  return Math.max(
    amount,
    Math.abs(found.temperature / from.temperature - 1),
    Math.abs(found.pressure - from.pressure) / (from.pressure + from.density * RT),
    Math.abs(found.enthalpy - from.enthalpy) / RT,
    Math.abs(found.entropy - from.entropy) / R,
  );
}

/** A state within rounding of the dome may come back on its other side. */
function qualityOf(found: State, from: State): number {
  if (found.phase === "two-phase") return found.quality;
  return found.density > from.refrigerant.critical.density ? 0 : 1;
}

/**
 * In two phases h and s fix the temperature through g(T) = h − Ts, whose slope is −x Δs − v′ dp/dT. Next to the
 * saturated liquid at low pressure it is so flat that the rounding of h and s alone moves the temperature.
 */
function isFlat(state: State): boolean {
  if (state.phase !== "two-phase") return false;
  const { temperature, enthalpy, entropy, quality, latentHeat } = state;
  const rounding = 2 ** -52 * (Math.abs(enthalpy) + Math.abs(temperature * entropy));
  return rounding / (quality * latentHeat) > limit / 1000;
}

/** The pressure that temperature and density give; on the limit it may lie a rounding above it. */
function givenBack({ refrigerant, temperature, density, pressure }: State): number {
  const { maximumPressure } = refrigerant.limits;
  const found = refrigerant.state({ temperature, density }).pressure;
  return pressure <= maximumPressure ? Math.min(found, maximumPressure) : found;
}

function pairsOf(state: State): Record<string, StateInput> {
  const { temperature, pressure, density, enthalpy, entropy, internalEnergy } = state;
  return {
    "p, h": { pressure, enthalpy },
    "p, s": { pressure, entropy },
    "T, ρ": { temperature, density },
    "ρ, u": { density, internalEnergy },
    ...(isFlat(state) ? {} : { "h, s": { enthalpy, entropy } }),
    ...(state.phase === "two-phase"
      ? { "p, x": { pressure, quality: state.quality }, "T, x": { temperature, quality: state.quality } }
      : // By the pressure that the density gives back, not the one that the state was made with.
        { "T, p": { temperature, pressure: givenBack(state) } }),
  };
}

function checkAllPairs(refrigerant: Refrigerant, from: State, kind: string, allowed: number): void {
  for (const [name, input] of Object.entries(pairsOf(from))) {
    const where = `${refrigerant.designation} ${refrigerant.equation} ${from.temperature} K ${from.pressure} Pa ${from.phase} ${from.quality ?? ""}`;
    worst(`${name}, ${kind}`, deviation(refrigerant.state(input), from), allowed, where);
  }
}

describe("input pairs", () => {
  it("return to a state in one phase", () => {
    fc.assert(
      fc.property(anyFluid(), share(), share(), (fluid, u, v) => {
        const refrigerant = refrigerantOf(fluid);
        const from = singlePhaseAt(refrigerant, u, v);
        fc.pre(from !== undefined);
        checkAllPairs(refrigerant, from, "one phase", limit);
      }),
    );
  });

  it("return to a state in two phases", () => {
    fc.assert(
      fc.property(anyFluid(), share(), share(), (fluid, u, quality) => {
        const refrigerant = refrigerantOf(fluid);
        const margin = nearest * refrigerant.critical.temperature;
        const temperature = saturationTemperatureAt(refrigerant, u, margin);
        checkAllPairs(refrigerant, refrigerant.state({ temperature, quality }), "two phases", limit);
      }),
    );
  });

  it("return to a state in two phases near the critical point, with fewer digits", () => {
    fc.assert(
      fc.property(anyFluid(), share(), share(), (fluid, u, quality) => {
        const refrigerant = refrigerantOf(fluid);
        const { temperature: Tc } = refrigerant.critical;
        const temperature = Tc * (1 - nearer * (nearest / nearer) ** u);
        checkAllPairs(refrigerant, refrigerant.state({ temperature, quality }), "near-critical", nearLimit);
      }),
    );
  });
});
