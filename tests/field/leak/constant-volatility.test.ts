import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  compositionLeft,
  fractionLeft,
  mixCharges,
  simulateLeak,
  tryMixCharges,
} from "../../../src/field/index.js";
import { blend } from "../../../src/state/index.js";
import { celsius, InputError } from "../../../src/units/index.js";

describe("a leak with constant relative volatility", () => {
  it("is inverted exactly, and steadily enriches the heavier component", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.01, max: 20, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (volatility, from, left) => {
          const light = compositionLeft(volatility, from, left);
          expect(light).toBeLessThanOrEqual(from);
          if (light > 1e-12) expect(fractionLeft(volatility, from, light)).toBeWithin(left, 1e-6);
        },
      ),
      { numRuns: 500 },
    );
  });

  it("shifts nothing with a volatility of 1, and refuses what cannot be", () => {
    expect(compositionLeft(1, 0.4, 0.3)).toBe(0.4);
    // Any amount may have gone: the composition does not tell.
    expect(() => fractionLeft(1, 0.4, 0.4)).toThrow(InputError);
    expect(() => fractionLeft(1, 0.4, 0.3)).toThrow(InputError);
    expect(() => fractionLeft(2, 0.4, 0.5)).toThrow(InputError);
    expect(() => compositionLeft(0.5, 0.4, 0.5)).toThrow(InputError);
    expect(() => compositionLeft(2, 0, 0)).toThrow(InputError);
  });

  it("agrees with the leak of a real pair whose volatility hardly moves", () => {
    // The butanes mix almost ideally; at −60 °C hardly anything is vapour, as the law asks for.
    const temperature = celsius(-60);
    const butanes = blend([
      ["R-600a", 0.5],
      ["R-600", 0.5],
    ]);
    const { liquid, vapour } = butanes.bubble({ temperature });
    const volume = (1 / liquid.density) * 1.0005;
    const leak = simulateLeak({
      refrigerant: butanes,
      charge: 1,
      volume,
      temperature,
      lostFraction: 0.3,
      leaving: "vapour",
    });
    const last = leak.states[leak.states.length - 1]!;
    // Both are C4H10: mole fractions are mass fractions.
    const y = vapour.composition["R-600a"]!;
    const volatility = y / (1 - y);
    const deviation = compositionLeft(volatility, 0.5, 0.7) - last.composition["R-600a"]!;
    console.log(
      `Rayleigh's law against the simulated leak of the butanes: ${deviation.toExponential(1)} in mole fraction`,
    );
    // What is seen, 7e-5, is the change of the volatility along the way, and the little vapour.
    expect(Math.abs(deviation)).toBeLessThan(1e-4);
  });
});

describe("charges put together", () => {
  it("keep the mass of every component, in any order", () => {
    const one = { mass: 0.6, composition: { "R-32": 0.65, "R-1234yf": 0.35 } };
    const other = { mass: 0.3, composition: { "R-32": 1 } };
    const mixed = mixCharges([one, other]);
    expect(mixed["R-32"]! * 0.9).toBeWithin(0.6 * 0.65 + 0.3, 1e-12);
    expect(mixed["R-1234yf"]! + mixed["R-32"]!).toBeWithin(1, 1e-12);
    expect(mixCharges([other, one])["R-32"]).toBeWithin(mixed["R-32"]!, 1e-14);
  });

  it("refuse fractions that do not sum to 1, and no charge at all", () => {
    const outcome = tryMixCharges([{ mass: 0, composition: { "R-32": 0.5 } }]);
    expect(outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path)).toEqual([
      "[0].mass",
      "[0].composition",
    ]);
    expect(tryMixCharges([])).toMatchObject({ ok: false });
  });
});
