import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  airAt20Celsius,
  conductancesInSeries,
  effectivePumpingSpeed,
  type PumpThroughHoseQuestion,
  pumpThroughHose,
  tryPumpThroughHose,
} from "../../../src/field/index.js";
import { litrePerSecond, millimetre } from "../../../src/units/index.js";
import { refusedPaths } from "./refused-paths.js";

const hose = { innerDiameter: millimetre(4.8), length: 1.5 };
const question: PumpThroughHoseQuestion = {
  systemPressure: 66.66,
  hose: [hose],
  gas: airAt20Celsius(),
  pumpingSpeed: litrePerSecond(1.416),
  ultimatePressure: 0,
};
const length = fc.double({ min: 0.01, max: 5, noNaN: true });
const bore = fc.double({ min: 1, max: 20, noNaN: true }).map(millimetre);
const questions = fc.record({
  systemPressure: fc.double({ min: 0, max: 5, noNaN: true }).map((exponent) => 2 * 10 ** exponent),
  hose: fc.array(fc.record({ innerDiameter: bore, length }), { minLength: 1, maxLength: 4 }),
  gas: fc.constant(airAt20Celsius()),
  pumpingSpeed: fc.double({ min: 0.1, max: 10, noNaN: true }).map(litrePerSecond),
  ultimatePressure: fc.constantFrom(0, 0.1, 1.9),
});

describe("a pump behind a hose", () => {
  it("sees the pressure that halving the interval finds too", () => {
    // The quadratic by another way: k and C_m from the textbook forms, the root between 0 and p.
    const { viscosity, molarMass, temperature } = question.gas;
    const k = (Math.PI * hose.innerDiameter ** 4) / (128 * viscosity * hose.length);
    const speed = Math.sqrt((8 * 8.31446261815324 * temperature) / (Math.PI * molarMass));
    const molecular = (Math.PI * hose.innerDiameter ** 3 * speed) / (12 * hose.length);
    for (const p of [0.5, 5, 66.66, 1000, 1e5]) {
      let low = 0;
      let high = p;
      for (let step = 0; step < 200; step++) {
        const middle = (low + high) / 2;
        const through = (k / 2) * (p * p - middle * middle) + molecular * (p - middle);
        if (through > question.pumpingSpeed * middle) low = middle;
        else high = middle;
      }
      expect(pumpThroughHose({ ...question, systemPressure: p }).pumpInletPressure).toBeWithin(low, 1e-12);
    }
  });

  it("keeps one throughput in pump and pieces: 1/S_eff = 1/S + Σ 1/C, each at its own mean pressure", () => {
    fc.assert(
      fc.property(questions, (each) => {
        const result = pumpThroughHose({ ...each, ultimatePressure: 0 });
        const series = conductancesInSeries(result.elements.map(({ conductance }) => conductance));
        expect(result.effectiveSpeed).toBeWithin(effectivePumpingSpeed(each.pumpingSpeed, series), 1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it("loses what the pump cannot draw: S (p₂ − p_u) = q, and p₂ lies between p_u and p", () => {
    fc.assert(
      fc.property(questions, (each) => {
        const { throughput, pumpInletPressure, effectiveSpeed } = pumpThroughHose(each);
        expect(throughput).toBeWithin(effectiveSpeed * each.systemPressure, 1e-12);
        expect(pumpInletPressure).toBeGreaterThan(each.ultimatePressure);
        expect(pumpInletPressure).toBeLessThan(each.systemPressure);
        expect(each.pumpingSpeed * (pumpInletPressure - each.ultimatePressure)).toBeWithin(throughput, 1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it("does not care how a hose is cut into pieces", () => {
    const whole = pumpThroughHose(question);
    const cut = pumpThroughHose({
      ...question,
      hose: [0.2, 0.7, 0.6].map((part) => ({ ...hose, length: part })),
    });
    expect(cut.effectiveSpeed).toBeWithin(whole.effectiveSpeed, 1e-12);
    expect(cut.elements).toHaveLength(3);
  });

  it("is held back by a valve core that was left in, and says that its ends are not counted", () => {
    const core = { innerDiameter: millimetre(1.5), length: millimetre(10) };
    const wide = { innerDiameter: millimetre(9.5), length: 1.5 };
    const free = pumpThroughHose({ ...question, hose: [wide] });
    const held = pumpThroughHose({ ...question, hose: [core, wide] });
    expect(held.effectiveSpeed).toBeLessThan(free.effectiveSpeed / 3);
    expect(held.warnings.map(({ code }) => code)).toEqual(["short-element"]);
    expect(free.warnings).toEqual([]);
    expect(free.assumptions[0]).toContain("Valve cores");
  });

  it("warns of turbulence where the Reynolds number is above 2300", () => {
    const codes = (systemPressure: number) =>
      pumpThroughHose({ ...question, systemPressure }).warnings.map(({ code }) => code);
    // Re = 4 q M/(π d η R T): 2300 at 13.6 Pa m3/s in 4.8 mm, which 1.416 L/s draw from near 12 kPa.
    expect(codes(5e3)).toEqual([]);
    expect(codes(20e3)).toEqual(["turbulent"]);
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    [
      "a list",
      [],
      [
        "hose",
        "gas.viscosity",
        "gas.molarMass",
        "gas.temperature",
        "pumpingSpeed",
        "ultimatePressure",
        "systemPressure",
      ],
    ],
    ["no hose", { ...question, hose: [] }, ["hose"]],
    ["one hose that is no list", { ...question, hose }, ["hose"]],
    ["a hose of nothing", { ...question, hose: [hose, null] }, ["hose[1].innerDiameter", "hose[1].length"]],
    ["a system below what the pump reaches", { ...question, ultimatePressure: 66.66 }, ["systemPressure"]],
    [
      "numbers that are none",
      { ...question, pumpingSpeed: 0, ultimatePressure: -1, systemPressure: Number.NaN },
      ["pumpingSpeed", "ultimatePressure", "systemPressure"],
    ],
  ])("refuses %s", (_what, input, paths) => {
    expect(refusedPaths(tryPumpThroughHose(input as PumpThroughHoseQuestion))).toEqual(paths);
  });
});
