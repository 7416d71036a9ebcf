import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bubbleInterval,
  bubbleThroughput,
  canDetectLeak,
  capillaryDiameter,
  capillaryThroughput,
  type LeakToScale,
  leakMassFlow,
  leakThroughput,
  lossPerYear,
  massFlowOfLoss,
  scaleLeak,
  tryCanDetectLeak,
  tryScaleLeak,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, InputError, type Outcome } from "../../../src/units/index.js";

const pathsOf = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);

const nitrogen = { inside: 4.251325e6, outside: 101325, viscosity: 17.57e-6, molarMass: 0.0280134 };
const r32 = { inside: 1.4746e6, outside: 101325, viscosity: 12.4e-6, molarMass: 0.052024 };

describe("throughput and mass flow", () => {
  it("refuse nonsense, all of it at once", () => {
    for (const convert of [leakMassFlow, leakThroughput]) {
      try {
        convert(-1, 0, Number.NaN);
        expect.unreachable();
      } catch (error) {
        expect((error as InputError).problems).toHaveLength(3);
      }
    }
  });

  it("are each other's inverse, and so are losses in a year", () => {
    expect(leakThroughput(leakMassFlow(1e-6, 0.05, 290), 0.05, 290)).toBeWithin(1e-6, 1e-14);
    expect(lossPerYear(massFlowOfLoss(0.005))).toBeWithin(0.005, 1e-14);
    // 365.25 days of 86 400 s.
    expect(lossPerYear(1)).toBe(31557600);
  });
});

describe("a leak of one gas as a leak of another", () => {
  it("returns to itself, and is the same through a third gas", () => {
    const air = { inside: 101325, outside: 0, viscosity: 18.2e-6, molarMass: 0.0289652 };
    const there = scaleLeak({ throughput: 1e-5, measured: nitrogen, wanted: r32 });
    const back = scaleLeak({ throughput: there.viscous, measured: r32, wanted: nitrogen });
    expect(back.viscous).toBeWithin(1e-5, 1e-12);
    const over = scaleLeak({
      throughput: scaleLeak({ throughput: 1e-5, measured: nitrogen, wanted: air }).molecular,
      measured: air,
      wanted: r32,
    });
    expect(over.molecular).toBeWithin(there.molecular, 1e-12);
  });

  it("names the regime that its size suggests", () => {
    const regime = (throughput: number) => scaleLeak({ throughput, measured: nitrogen, wanted: r32 }).regime;
    expect([regime(1e-4), regime(1e-7), regime(1e-9), regime(0)]).toEqual([
      "viscous",
      "mixed",
      "molecular",
      "molecular",
    ]);
  });

  it("refuses a gas that does not flow out", () => {
    const leak: LeakToScale = {
      throughput: 1,
      measured: { ...nitrogen, inside: 101325 },
      wanted: { ...r32, viscosity: 0 },
    };
    expect(pathsOf(tryScaleLeak(leak))).toEqual(["measured.inside", "wanted.viscosity"]);
    expect(pathsOf(tryScaleLeak({ throughput: 1 } as never))).toContain("measured.inside");
    expect(pathsOf(tryScaleLeak(null as never))).toEqual([""]);
  });
});

describe("capillaries and bubbles", () => {
  it("are inverted exactly", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e-3, noNaN: true }), (diameter) => {
        const thread = { length: 0.01, inside: 1.5e6, outside: 1e5, viscosity: 12e-6 };
        expect(capillaryDiameter(thread, capillaryThroughput(thread, diameter))).toBeWithin(diameter, 1e-12);
        const throughput = bubbleThroughput(diameter, 7, 9e4);
        expect(bubbleInterval(diameter, throughput, 9e4)).toBeWithin(7, 1e-12);
      }),
      { numRuns: 200 },
    );
  });

  it("follow Poiseuille: twice as wide lets sixteen times as much through", () => {
    const thread = { length: 0.01, inside: 1.5e6, outside: 0, viscosity: 12e-6 };
    expect(capillaryThroughput(thread, 2e-5)).toBeWithin(16 * capillaryThroughput(thread, 1e-5), 1e-12);
    // p̄ V̇ of π d⁴ Δp/(128 η L) at the mean pressure: the textbook form for a gas.
    const textbook = 0.75e6 * ((Math.PI * 1e-5 ** 4 * 1.5e6) / (128 * 12e-6 * 0.01));
    expect(capillaryThroughput(thread, 1e-5)).toBeWithin(textbook, 1e-12);
  });

  it("refuse what cannot be", () => {
    expect(() => capillaryThroughput({ length: 0, inside: 1, outside: 2, viscosity: 1 }, 1)).toThrow(
      InputError,
    );
    expect(() => bubbleThroughput(-1, 1, 1e5)).toThrow(InputError);
    expect(() => bubbleInterval(1e-3, 0, 1e5)).toThrow(InputError);
  });
});

describe("what a search can see", () => {
  const leak = { refrigerant: refrigerant("R-32"), temperature: celsius(20), lossPerYear: 0.005 };

  it("is 5 g a year for a detector, and much less for soap", () => {
    expect(canDetectLeak({ ...leak, method: "electronic-detector" }).verdict).toBe("pass");
    expect(canDetectLeak({ ...leak, lossPerYear: 0.0049, method: "electronic-detector" }).verdict).toBe(
      "fail",
    );
    // Soap sees 1e-4 to 1e-5 Pa m³/s: 5 g of R-32 a year are 7.4e-6.
    const soap = canDetectLeak({ ...leak, method: "bubbles" });
    expect(soap.verdict).toBe("fail");
    expect(soap.throughput).toBeWithin(7.42312e-6, 1e-5);
    expect(canDetectLeak({ ...leak, lossPerYear: 0.02, method: "bubbles" }).verdict).toBe("inconclusive");
    expect(canDetectLeak({ ...leak, lossPerYear: 0.1, method: "bubbles" }).verdict).toBe("pass");
  });

  it("refuses an unknown method", () => {
    expect(pathsOf(tryCanDetectLeak({ ...leak, lossPerYear: 0, method: "nose" as never }))).toEqual([
      "lossPerYear",
      "method",
    ]);
  });
});
