import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  airAt20Celsius,
  type ConstantSpeedEvacuation,
  evacuationTimeAtConstantSpeed,
  evacuationTimeThroughHose,
  type HoseEvacuation,
  pumpThroughHose,
  tryEvacuationTimeAtConstantSpeed,
  tryEvacuationTimeThroughHose,
} from "../../../src/field/index.js";
import { litre, litrePerSecond, millimetre } from "../../../src/units/index.js";
import { refusedPaths } from "./refused-paths.js";

const constant: ConstantSpeedEvacuation = {
  internalVolume: litre(5),
  effectiveSpeed: litrePerSecond(0.05),
  startPressure: 101325,
  targetPressure: 66.66,
  ultimatePressure: 13.33,
};
const thin: HoseEvacuation = {
  internalVolume: litre(5),
  startPressure: 101325,
  targetPressure: 66.66,
  hose: [{ innerDiameter: millimetre(4.8), length: 1.5 }],
  gas: airAt20Celsius(),
  pumpingSpeed: litrePerSecond(1.416),
  ultimatePressure: 0,
};

describe("at a constant speed", () => {
  it("solves V dp/dt = −S (p − p_u) + q", () => {
    // Runge and Kutta on the balance itself, up to the time found.
    const evacuation = { ...constant, gasLoad: 1e-3 };
    const { time, lowestPressure } = evacuationTimeAtConstantSpeed(evacuation);
    expect(lowestPressure).toBeWithin(13.33 + 20, 1e-12);
    const slope = (p: number) => (-5e-5 * (p - 13.33) + 1e-3) / 5e-3;
    const h = time! / 4000;
    let p = 101325;
    for (let i = 0; i < 4000; i++) {
      const k1 = slope(p);
      const k2 = slope(p + (h / 2) * k1);
      const k3 = slope(p + (h / 2) * k2);
      p += (h / 6) * (k1 + 2 * k2 + 2 * k3 + slope(p + h * k3));
    }
    expect(p).toBeWithin(66.66, 1e-9);
  });

  it("never reaches what pump and gas load do not allow, and says so", () => {
    for (const change of [{ targetPressure: 13.33 }, { gasLoad: 5e-3 }, { ultimatePressure: 70 }]) {
      const result = evacuationTimeAtConstantSpeed({ ...constant, ...change });
      expect(result).toMatchObject({ state: "never-reached", time: undefined });
      expect(result.because).toContain("never");
      expect(result.lowestPressure).toBeGreaterThanOrEqual(13.33);
    }
  });

  it("says what it left out", () => {
    expect(evacuationTimeAtConstantSpeed(constant).assumptions.join()).toMatch(/No leak, no water/);
    expect(evacuationTimeAtConstantSpeed({ ...constant, gasLoad: 0 }).assumptions.join()).not.toMatch(
      /No leak/,
    );
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", null, [""]],
    ["a target above the start", { ...constant, targetPressure: 2e5 }, ["targetPressure"]],
    [
      "a list",
      [],
      ["internalVolume", "startPressure", "targetPressure", "effectiveSpeed", "ultimatePressure"],
    ],
    [
      "numbers that are none",
      {
        internalVolume: 0,
        startPressure: Number.NaN,
        targetPressure: -1,
        gasLoad: -1,
        effectiveSpeed: "1",
        ultimatePressure: Number.POSITIVE_INFINITY,
      },
      ["internalVolume", "startPressure", "targetPressure", "gasLoad", "effectiveSpeed", "ultimatePressure"],
    ],
  ])("refuses %s", (_what, input, paths) => {
    expect(refusedPaths(tryEvacuationTimeAtConstantSpeed(input as ConstantSpeedEvacuation))).toEqual(paths);
  });
});

describe("through hoses", () => {
  it("is the integral over ln p of the speeds that the coupled flow gives, to the error it states", () => {
    const chain = [{ innerDiameter: millimetre(3), length: 0.03 }, ...thin.hose];
    for (const evacuation of [thin, { ...thin, hose: chain, ultimatePressure: 2, gasLoad: 1e-4 }]) {
      const { startPressure, targetPressure, internalVolume } = evacuation;
      const load = (evacuation as HoseEvacuation).gasLoad ?? 0;
      const n = 4000;
      const range = Math.log(startPressure / targetPressure);
      let sum = 0;
      for (let i = 0; i <= n; i++) {
        const systemPressure = targetPressure * Math.exp((i / n) * range);
        const { throughput } = pumpThroughHose({ ...evacuation, systemPressure });
        const weight = i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2;
        sum += (weight * systemPressure) / (throughput - load);
      }
      const result = evacuationTimeThroughHose(evacuation);
      expect(result.time).toBeWithin((internalVolume * sum * range) / n / 3, 1e-8);
      expect(result.relativeError).toBeLessThanOrEqual(1e-8);
      expect(result.steps).toBeGreaterThanOrEqual(32);
    }
  });

  it("becomes the constant speed behind a hose that holds nothing back", () => {
    const wide = { ...thin, hose: [{ innerDiameter: 0.5, length: 0.5 }] };
    const { time, timeWithoutHose } = evacuationTimeThroughHose(wide);
    expect(time).toBeWithin(timeWithoutHose!, 1e-4);
    expect(timeWithoutHose).toBe(
      evacuationTimeAtConstantSpeed({ ...wide, effectiveSpeed: thin.pumpingSpeed }).time,
    );
  });

  it("becomes t = (2 V/k) (1/p₁ − 1/p₀) for a viscous gas and a pump without end", () => {
    // Molecules this heavy do not fly: C_m ∝ 1/√M. V dp/dt = −k p²/2, by hand.
    const gas = { ...thin.gas, molarMass: 1e9 };
    const { time } = evacuationTimeThroughHose({ ...thin, gas, pumpingSpeed: 1e6 });
    const k = (Math.PI * 0.0048 ** 4) / (128 * gas.viscosity * 1.5);
    expect(time).toBeWithin(((2 * 0.005) / k) * (1 / 66.66 - 1 / 101325), 1e-4);
  });

  it("never reaches a target that pump and gas load do not allow", () => {
    const { lowestPressure } = evacuationTimeThroughHose({ ...thin, ultimatePressure: 2, gasLoad: 1e-4 });
    // There the hose carries the gas load alone.
    const rest = pumpThroughHose({ ...thin, ultimatePressure: 2, systemPressure: lowestPressure });
    expect(rest.throughput).toBeWithin(1e-4, 1e-9);
    const at = (targetPressure: number) =>
      evacuationTimeThroughHose({ ...thin, ultimatePressure: 2, gasLoad: 1e-4, targetPressure });
    expect(at(lowestPressure)).toMatchObject({
      state: "never-reached",
      time: undefined,
      effectiveSpeedAtTarget: undefined,
      steps: 0,
    });
    // Close above it the time grows like the logarithm of what is left; each factor of 1000 adds the same.
    const gap = (factor: number) => at(lowestPressure * (1 + factor)).time!;
    expect(gap(1e-9) - gap(1e-6)).toBeWithin(gap(1e-6) - gap(1e-3), 1e-3);
    expect(evacuationTimeThroughHose(thin).lowestPressure).toBe(0);
  });

  it("says from where on flow is laminar, warns of short pieces, and calls the time a lower bound", () => {
    const result = evacuationTimeThroughHose(thin);
    // Re = 4 q M/(π d η R T) = 2300 by hand.
    const { throughput } = pumpThroughHose({ ...thin, systemPressure: result.laminarBelow });
    const q = (2300 * Math.PI * 0.0048 * 18.2e-6 * 8.31446261815324 * 293.15) / (4 * 0.02896546);
    expect(throughput).toBeWithin(q, 1e-9);
    expect(result.warnings).toEqual([]);
    expect(result.because).toContain("at least");
    expect(result.assumptions.join("\n")).toMatch(
      /At least this long[\s\S]*No leak, no water[\s\S]*Valve cores/,
    );
    const core = { innerDiameter: millimetre(1.5), length: millimetre(10) };
    const held = evacuationTimeThroughHose({ ...thin, hose: [core, ...thin.hose] });
    expect(held.warnings.map(({ code }) => code)).toEqual(["short-element"]);
    expect(held.time).toBeGreaterThan(result.time!);
  });

  const evacuations = fc.record({
    internalVolume: fc.double({ min: 0.5, max: 30, noNaN: true }).map(litre),
    startPressure: fc.constantFrom(5e4, 101325, 1.5e6),
    targetPressure: fc.double({ min: 20, max: 2000, noNaN: true }),
    hose: fc.array(
      fc.record({
        innerDiameter: fc.double({ min: 1, max: 20, noNaN: true }).map(millimetre),
        length: fc.double({ min: 0.01, max: 5, noNaN: true }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    gas: fc.constant(thin.gas),
    pumpingSpeed: fc.double({ min: 0.2, max: 5, noNaN: true }).map(litrePerSecond),
    ultimatePressure: fc.constantFrom(0, 2, 15),
  });

  it("adds up over a pressure between, and is longer than without hose and shorter with a wider one", () => {
    fc.assert(
      fc.property(evacuations, (each) => {
        const { time, timeWithoutHose } = evacuationTimeThroughHose(each);
        const between = Math.sqrt(each.startPressure * each.targetPressure);
        const parts = [
          { ...each, targetPressure: between },
          { ...each, startPressure: between },
        ].map((part) => evacuationTimeThroughHose(part).time!);
        expect(parts[0]! + parts[1]!).toBeWithin(time!, 1e-7);
        expect(time).toBeGreaterThan(timeWithoutHose!);
        const wider = each.hose.map((piece) => ({ ...piece, innerDiameter: 1.1 * piece.innerDiameter }));
        expect(evacuationTimeThroughHose({ ...each, hose: wider }).time).toBeLessThan(time!);
      }),
      { numRuns: 100 },
    );
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    ["a target above the start", { ...thin, targetPressure: 101325 }, ["targetPressure"]],
    ["no pump", { ...thin, pumpingSpeed: undefined }, ["pumpingSpeed"]],
    ["a hose of nothing", { ...thin, hose: [{}] }, ["hose[0].innerDiameter", "hose[0].length"]],
    ["a gas load of nothing", { ...thin, gasLoad: null }, ["gasLoad"]],
  ])("refuses %s", (_what, input, paths) => {
    expect(refusedPaths(tryEvacuationTimeThroughHose(input as HoseEvacuation))).toEqual(paths);
  });
});
