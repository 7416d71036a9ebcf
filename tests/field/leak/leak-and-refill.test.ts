import { describe, expect, it } from "vitest";
import { type LeakAndRefillSituation, leakAndRefill, simulateLeak } from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, InputError, kilogram, litre } from "../../../src/units/index.js";

const situation: LeakAndRefillSituation = {
  refrigerant: refrigerant("R-407C"),
  charge: kilogram(1.5),
  volume: litre(3),
  temperature: celsius(25),
  leaving: "vapour",
  lostFraction: 0.3,
  rounds: 40,
};

describe("leaking and filling up, again and again", () => {
  it("begins with one leak, filled up", () => {
    const [first] = leakAndRefill({ ...situation, rounds: 1 }).rounds;
    const left = simulateLeak(situation).states.at(-1)!;
    expect(first!.leaked).toEqual(left);
    for (const [name, nominal] of Object.entries(situation.refrigerant.composition)) {
      expect(first!.composition[name]).toBeWithin(0.7 * left.composition[name]! + 0.3 * nominal, 1e-12);
    }
  });

  it("shifts further every round, but less and less, to a composition that stays", () => {
    const { rounds, imbalance } = leakAndRefill(situation);
    expect(imbalance).toBeLessThan(1e-12);
    const heavy = rounds.map(({ composition }) => composition["R-134a"]!);
    const steps = heavy.slice(1).map((value, i) => value - heavy[i]!);
    for (const [i, step] of steps.entries()) {
      expect(step).toBeGreaterThan(0);
      if (i > 0) expect(step / steps[i - 1]!).toBeLessThan(0.7);
    }
    expect(heavy[0]! - 0.52).toBeGreaterThan(0.02);
    expect(steps.at(-1)!).toBeLessThan(1e-7);
    // There each round loses what it is given: refrigerant of nominal composition, but for that last step.
    const { composition, leaked } = rounds.at(-1)!;
    for (const [name, nominal] of Object.entries(situation.refrigerant.composition)) {
      const lost = 1.5 * composition[name]! - leaked.remainingMass * leaked.composition[name]!;
      expect(lost).toBeWithin(0.45 * nominal, 1e-6);
    }
    // The pressures fall with what boils first.
    expect(rounds.at(-1)!.bubblePressure).toBeLessThan(rounds[0]!.bubblePressure);
    expect(rounds.at(-1)!.dewPressure).toBeLessThan(rounds[0]!.dewPressure);
  });

  it("leaves R-454B outside its designation in the first round of a fifth, R-410A in none of five", () => {
    const r454b = leakAndRefill({
      ...situation,
      refrigerant: refrigerant("R-454B"),
      lostFraction: 0.2,
      rounds: 1,
    });
    expect(r454b.rounds[0]!.check.verdict).toBe("fail");
    expect(r454b.mixing?.grade).toBe("regressed");
    const r410a = leakAndRefill({
      ...situation,
      refrigerant: refrigerant("R-410A"),
      lostFraction: 0.2,
      rounds: 5,
    });
    expect(r410a.rounds.map(({ check }) => check.verdict)).toEqual(Array(5).fill("pass"));
  });

  it("leaves a pure refrigerant alone", () => {
    const { rounds, mixing } = leakAndRefill({
      ...situation,
      refrigerant: refrigerant("R-290"),
      charge: 1,
      rounds: 2,
    });
    for (const { composition, check } of rounds) {
      expect(composition).toEqual({ "R-290": 1 });
      expect(check.verdict).toBe("pass");
    }
    expect(mixing).toBeUndefined();
  });

  it("refuses rounds that are none", () => {
    for (const rounds of [0, 51, 1.5, Number.NaN]) {
      expect(() => leakAndRefill({ ...situation, rounds })).toThrow(InputError);
      expect(() => leakAndRefill({ ...situation, rounds })).toThrow(/^rounds: /);
    }
  });
});
