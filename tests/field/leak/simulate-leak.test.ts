import { describe, expect, it } from "vitest";
import {
  type LeakSituation,
  leakFlammability,
  simulateLeak,
  trySimulateLeak,
} from "../../../src/field/index.js";
import { blend, type Masses, refrigerant, VesselSearch } from "../../../src/state/index.js";
import { celsius, type InputError, kilogram, litre } from "../../../src/units/index.js";
import { plus, total, withRungeKutta } from "./integrate.js";

const r407c = refrigerant("R-407C");
const situation: LeakSituation = {
  refrigerant: r407c,
  charge: kilogram(1.5),
  volume: litre(3),
  temperature: celsius(25),
  leaving: "vapour",
  lostFraction: 0.4,
};
const last = (of: LeakSituation) => simulateLeak(of).states.at(-1)!;

describe("a leak of vapour", () => {
  it("makes liquid and rest of R-407C richer in R-134a, step by step, and poorer in R-32 and R-125", () => {
    // The direction is that of the fractionation literature (ASHRAE 34, ISO 817; recalled) and of the normal boiling points.
    const { states } = simulateLeak(situation);
    expect(states).toHaveLength(21);
    for (const [i, state] of states.slice(1).entries()) {
      const before = states[i]!;
      for (const [now, then] of [
        [state.liquid!.composition, before.liquid!.composition],
        [state.composition, before.composition],
      ] as const) {
        expect(now["R-134a"]!).toBeGreaterThan(then["R-134a"]!);
        expect(now["R-32"]!).toBeLessThan(then["R-32"]!);
        expect(now["R-125"]!).toBeLessThan(then["R-125"]!);
      }
      for (const pressure of ["pressure", "bubblePressure", "dewPressure"] as const) {
        expect(state[pressure]).toBeLessThan(before[pressure]);
      }
    }
  });

  it("keeps account of every component", () => {
    const { states, escaped, imbalance } = simulateLeak(situation);
    expect(imbalance).toBeLessThan(1e-12);
    const { remainingMass, composition } = states.at(-1)!;
    expect(remainingMass).toBeWithin(0.9, 1e-12);
    for (const [name, nominal] of Object.entries(r407c.composition)) {
      expect(remainingMass * composition[name]! + 0.6 * escaped[name]!).toBeWithin(1.5 * nominal, 1e-12);
    }
  });

  it("follows Rayleigh's equation where hardly any of it is vapour", () => {
    // d ln m = dw/(y − w), integrated here from bubble points alone. At −40 °C the vapour of a vessel full of liquid stays
    // below 0.25 % of the mass; what Rayleigh leaves out is that part times the difference of vapour and liquid.
    const temperature = celsius(-40);
    const { density } = r407c.bubble({ temperature }).liquid;
    const leak = simulateLeak({ ...situation, temperature, volume: (1.5 / density) * 1.0005 });
    const slopes = (w: Masses): Masses => {
      const whole = total(w);
      const parts = Object.entries(w).map(([name, fraction]) => [name, fraction / whole] as const);
      return plus(blend(parts).bubble({ temperature }).vapour.composition, w, -1);
    };
    const rayleigh = withRungeKutta(r407c.composition, slopes, Math.log(0.6), 20);
    const { liquid, vapour, remainingMass } = leak.states.at(-1)!;
    const held = vapour!.mass / remainingMass;
    expect(held).toBeLessThan(0.0025);
    for (const name of Object.keys(rayleigh)) {
      const x = liquid!.composition[name]!;
      const allowed = held * Math.abs(vapour!.composition[name]! - x);
      expect(Math.abs(x - rayleigh[name]!), name).toBeLessThan(allowed);
      // The shift itself is more than 70 times that.
      expect(Math.abs(x - r407c.composition[name]!)).toBeGreaterThan(70 * allowed);
    }
  });

  it("does not depend on its steps: another integration, finer and of other order, says the same", () => {
    // The midpoint rule with 300 and 600 steps, extrapolated after Richardson; ours has 100 of fourth order.
    const rates = (masses: Masses): Masses => {
      const search = new VesselSearch(r407c, situation.temperature, situation.volume);
      return search.contentsOf(masses).vapour!.composition;
    };
    const integrate = (steps: number): Masses => {
      const step = 0.6 / steps;
      let masses = plus(r407c.composition, r407c.composition, 0.5);
      for (let i = 0; i < steps; i++) {
        masses = plus(masses, rates(plus(masses, rates(masses), -step / 2)), -step);
      }
      return masses;
    };
    const coarse = integrate(300);
    const fine = integrate(600);
    const { composition } = last(situation);
    for (const [name, mass] of Object.entries(fine)) {
      const extrapolated = (4 * mass - coarse[name]!) / 3;
      expect(0.9 * composition[name]!).toBeWithin(extrapolated, 1e-9);
    }
  });

  it("has the phases that a blend of what is left has at that density", () => {
    const { pressure, composition, liquid, vapour, remainingMass } = last(situation);
    const rest = blend(Object.entries(composition));
    const state = rest.state({ temperature: situation.temperature, density: remainingMass / 3e-3 });
    if (state.phase !== "two-phase") throw new Error("one phase");
    expect(pressure).toBeWithin(state.pressure, 1e-9);
    expect(vapour!.mass / remainingMass).toBeWithin(state.quality, 1e-8);
    for (const name of Object.keys(composition)) {
      expect(liquid!.composition[name]).toBeWithin(state.liquid.composition[name]!, 1e-9);
      expect(vapour!.composition[name]).toBeWithin(state.vapour.composition[name]!, 1e-9);
    }
    const { bubblePressure, dewPressure } = last(situation);
    expect(bubblePressure).toBeWithin(rest.bubble({ temperature: celsius(25) }).pressure, 1e-9);
    expect(dewPressure).toBeWithin(rest.dew({ temperature: celsius(25) }).pressure, 1e-9);
  });
});

describe("other leaks", () => {
  it("of liquid shift the other way, and by less", () => {
    const byVapour = last(situation).composition;
    const byLiquid = last({ ...situation, leaving: "liquid" }).composition;
    for (const [name, nominal] of Object.entries(r407c.composition)) {
      const [gas, liquid] = [byVapour[name]! - nominal, byLiquid[name]! - nominal];
      expect(gas * liquid).toBeLessThan(0);
      expect(Math.abs(liquid)).toBeLessThan(Math.abs(gas) / 5);
    }
  });

  it("of both lie between, with vapour and liquid at the ends", () => {
    const at = (quality: number) => last({ ...situation, leaving: { quality } }).composition["R-134a"]!;
    expect(at(1)).toBe(last(situation).composition["R-134a"]);
    expect(at(0)).toBe(last({ ...situation, leaving: "liquid" }).composition["R-134a"]);
    expect(at(0.3)).toBeGreaterThan(at(0));
    expect(at(0.3)).toBeLessThan(at(0.7));
    expect(at(0.7)).toBeLessThan(at(1));
  });

  it("of a pure refrigerant keep its pressure while there is liquid, and its composition always", () => {
    const r32 = refrigerant("R-32");
    const { pressure } = r32.saturation({ temperature: celsius(25) });
    const { states, imbalance, mixing } = simulateLeak({
      ...situation,
      refrigerant: r32,
      lostFraction: 0.95,
    });
    expect(states.filter(({ liquid }) => liquid !== undefined).length).toBeGreaterThan(15);
    for (const state of states) {
      expect(state.composition).toEqual({ "R-32": 1 });
      if (state.liquid !== undefined) expect(state.pressure).toBeWithin(pressure, 1e-12);
      else expect(state.pressure).toBeLessThan(pressure);
    }
    expect(imbalance).toBeLessThan(1e-12);
    expect(mixing).toBeUndefined();
  });

  it("of vapour alone change nothing but the amount", () => {
    const { states } = simulateLeak({ ...situation, charge: kilogram(0.06) });
    for (const { liquid, composition } of states) {
      expect(liquid).toBeUndefined();
      for (const [name, nominal] of Object.entries(r407c.composition)) {
        expect(composition[name]).toBeWithin(nominal, 1e-12);
      }
    }
  });

  it("show how flammability moves: what stays of R-454B loses R-32, what burns more easily by mass", () => {
    const along = leakFlammability(simulateLeak({ ...situation, refrigerant: refrigerant("R-454B") }));
    expect(along).toHaveLength(21);
    const limits = along.map(({ liquid }) => liquid!.lowerFlammabilityLimit!);
    // R-1234yf has the lower limit by mass, 0.289 beside 0.307 kg/m3.
    expect(limits.at(-1)).toBeLessThan(limits[0]!);
    expect(along[0]!.vapour!.lowerFlammabilityLimit).toBeGreaterThan(limits[0]!);
  });
});

describe("a leak that cannot be", () => {
  const paths = (change: object) => {
    const outcome = trySimulateLeak({ ...situation, ...change });
    if (outcome.ok) throw new Error("nothing was refused");
    return (outcome.error as InputError).problems.map(({ path }) => path);
  };

  it("is refused, all that is wrong at once", () => {
    expect(
      paths({
        refrigerant: null,
        charge: 0,
        volume: Number.NaN,
        temperature: -1,
        leaving: "oil",
        lostFraction: 1,
      }),
    ).toEqual(["refrigerant", "charge", "volume", "temperature", "leaving", "lostFraction"]);
    expect(paths({ leaving: { quality: 1.2 } })).toEqual(["leaving"]);
    expect(paths({ lostFraction: 0 })).toEqual(["lostFraction"]);
    expect(paths({ lostFraction: 0.99 })).toEqual(["lostFraction"]);
  });

  it("is refused outside the range of the refrigerant, pure or blend", () => {
    for (const name of ["R-32", "R-454B"]) {
      for (const temperature of [celsius(-150), celsius(95)]) {
        const outcome = trySimulateLeak({ ...situation, refrigerant: refrigerant(name), temperature });
        expect(outcome.ok ? "" : outcome.error).toMatchObject({
          code: "out-of-range",
          quantity: "temperature",
        });
      }
      // 1.5 kg in half a litre: no equation reaches that density.
      const crammed = trySimulateLeak({ ...situation, refrigerant: refrigerant(name), volume: litre(0.5) });
      expect(crammed.ok ? "" : crammed.error).toMatchObject({ code: "out-of-range", quantity: "pressure" });
    }
  });
});
