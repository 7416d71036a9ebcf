import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  decide,
  type HoldReading,
  iceSublimationPressure,
  lineCharge,
  nitrogenHold,
  type PressureGauge,
  riseTest,
  superheat,
  tryNitrogenHold,
  tryRiseTest,
  trySuperheat,
  waterVapourPressure,
} from "../../../src/field/index.js";
import { r32 } from "../../../src/fluids/r-32.js";
import { r728 } from "../../../src/fluids/r-728.js";
import { refrigerantFrom } from "../../../src/state/index.js";
import {
  barGauge,
  celsius,
  fahrenheit,
  inBarGauge,
  inFahrenheit,
  inPsiGauge,
  psiGauge,
} from "../../../src/units/index.js";
import "../../support/fuzz-seed.js";

const refrigerant = refrigerantFrom(r32);
const nitrogen = refrigerantFrom(r728);
/** Evenly spread; a plain double is spread over its bits and would nearly always be tiny where a range crosses zero. */
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((part) => min + ((max - min) * part) / 1_000_000);
const better = between(0.01, 1);

const gauges = fc.record({
  accuracy: fc.record({ kind: fc.constant("half-width" as const), halfWidth: between(100, 1e5) }),
  resolution: between(10, 2e4),
});
const thermometers = fc.record({
  accuracy: fc.record({ kind: fc.constant("half-width" as const), halfWidth: between(0.05, 2) }),
});
const sites = fc.record({
  pressure: between(60e3, 105e3),
  standardUncertainty: between(0, 2000),
  because: fc.constant("any"),
});
const lines = fc.record({
  refrigerant: fc.constant(refrigerant),
  mode: fc.constant("cooling" as const),
  port: fc.constant("gas-line" as const),
  pressure: between(0.2e6, 2e6),
  lineTemperature: between(250, 320),
  atmosphere: sites,
  gauge: gauges,
  thermometer: thermometers,
});

describe("uncertainty of superheat", () => {
  it("shrinks with better instruments and never below the share of the steps", () => {
    fc.assert(
      fc.property(lines, better, (line, factor) => {
        const { accuracy, resolution } = line.gauge;
        const gauge = { resolution, accuracy: { ...accuracy, halfWidth: accuracy.halfWidth * factor } };
        const before = superheat(line);
        const after = superheat({ ...line, gauge });
        expect(after.value).toBe(before.value);
        expect(after.expandedUncertainty).toBeLessThanOrEqual(before.expandedUncertainty);
        const share = (2 * after.slope * resolution) / Math.sqrt(12);
        expect(after.expandedUncertainty).toBeGreaterThanOrEqual(share);
      }),
      { numRuns: 500 },
    );
  });

  it("does not depend on the units of the readings", () => {
    fc.assert(
      fc.property(lines, (line) => {
        const inBars = superheat({ ...line, pressure: barGauge(inBarGauge(line.pressure)) });
        const american = superheat({
          ...line,
          pressure: psiGauge(inPsiGauge(line.pressure)),
          lineTemperature: fahrenheit(inFahrenheit(line.lineTemperature)),
        });
        const { value, expandedUncertainty } = superheat(line);
        for (const other of [inBars, american]) {
          // Conversions and back round the last bits of temperatures near 300 K; the saturation solver adds its own.
          expect(Math.abs(other.value - value)).toBeLessThan(1e-8);
          expect(other.expandedUncertainty).toBeWithin(expandedUncertainty, 1e-9);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("is an answer or a typed error, whatever comes in", () => {
    const anything = fc.oneof(
      fc.double(),
      fc.string(),
      fc.constant(null),
      fc.constant(undefined),
      fc.object(),
    );
    const any = <T>(good: fc.Arbitrary<T>) => fc.oneof(good, anything) as fc.Arbitrary<T>;
    const wild = fc.record({
      refrigerant: fc.constant(refrigerant),
      mode: any(fc.constantFrom("cooling" as const, "heating" as const)),
      port: any(fc.constantFrom("gas-line" as const, "compressor-suction" as const)),
      pressure: any(between(-2e5, 7e6)),
      lineTemperature: any(between(100, 500)),
      atmosphere: any(sites),
      gauge: any<PressureGauge>(gauges),
      thermometer: any(thermometers),
    });
    fc.assert(
      fc.property(wild, (line) => {
        const outcome = trySuperheat(line);
        if (!outcome.ok) return;
        expect(Number.isFinite(outcome.value.value)).toBe(true);
        expect(Number.isFinite(outcome.value.expandedUncertainty)).toBe(true);
      }),
    );
  });
});

describe("decision", () => {
  it("only moves towards inconclusive as the uncertainty grows", () => {
    fc.assert(
      fc.property(
        between(-10, 10),
        between(0, 5),
        between(0, 5),
        between(-10, 10),
        between(0, 10),
        (x, U, more, a, w) => {
          const limits = { minimum: a, maximum: a + w };
          const before = decide(x, U, limits).verdict;
          const after = decide(x, U + more, limits).verdict;
          expect([before, "inconclusive"]).toContain(after);
        },
      ),
    );
  });
});

const holds = fc.record({
  first: between(0.5e6, 4e6),
  temperature: between(celsius(-10), celsius(45)),
  change: between(-9, 9),
  drop: between(-2e5, 2e5),
  duration: between(600, 2e5),
  gauge: gauges,
  thermometer: thermometers,
  atmosphere: sites,
});
const holdOf = ({ first, temperature, change, drop, duration, ...instruments }: HoldCase) => {
  const absolute = first + instruments.atmosphere.pressure;
  const { density } = nitrogen.state({ temperature, pressure: absolute });
  const end = temperature + change;
  const kept = nitrogen.state({ temperature: end, density }).pressure - instruments.atmosphere.pressure;
  const readings: HoldReading[] = [
    { time: 0, pressure: first, pipeTemperature: temperature },
    { time: duration, pressure: Math.max(kept - drop, 1000), pipeTemperature: end },
  ];
  return { nitrogen, readings, maximumAllowablePressure: 4.5e6, requiredDuration: 600, ...instruments };
};
type HoldCase = typeof holds extends fc.Arbitrary<infer T> ? T : never;

describe("hold test", () => {
  it("finds back the gas that was let out, with a verdict that fits", () => {
    fc.assert(
      fc.property(holds, (each) => {
        const hold = holdOf(each);
        const result = nitrogenHold(hold);
        const truth = hold.readings[1]!.pressure - result.expectedPressure;
        expect(Math.abs(result.deviation - truth)).toBeLessThan(1);
        const { deviation, expandedUncertainty: U, state } = result;
        const within = U > 0.05 * hold.readings[0]!.pressure ? "blind" : "no-drop-seen";
        expect(state).toBe(deviation < -U ? "drop" : deviation > U ? "invalid" : within);
      }),
      { numRuns: 300 },
    );
  });

  it("never claims to see less than its steps and its thermometer allow", () => {
    fc.assert(
      fc.property(holds, better, (each, factor) => {
        const hold = holdOf(each);
        const { accuracy } = hold.thermometer;
        const finer = { accuracy: { ...accuracy, halfWidth: accuracy.halfWidth * factor } };
        const before = nitrogenHold(hold);
        const after = nitrogenHold({ ...hold, thermometer: finer });
        expect(after.smallestVisibleDrop).toBeLessThanOrEqual(before.smallestVisibleDrop);
        const share = (2 * Math.SQRT2 * hold.gauge.resolution) / Math.sqrt(12);
        expect(after.smallestVisibleDrop).toBeGreaterThanOrEqual(share * (1 - 1e-12));
      }),
      { numRuns: 300 },
    );
  });

  it("is no surer from a series than from its two ends", () => {
    fc.assert(
      fc.property(holds, fc.array(between(-2e4, 2e4), { minLength: 1, maxLength: 20 }), (each, noise) => {
        const hold = holdOf({ ...each, drop: 0 });
        const [first, last] = [hold.readings[0]!, hold.readings[1]!];
        const middle = noise.map((shift, index) => {
          const part = (index + 1) / (noise.length + 1);
          const mix = (a: number, b: number) => a + part * (b - a);
          return {
            time: mix(first.time, last.time),
            pressure: Math.max(mix(first.pressure, last.pressure) + shift, 1000),
            pipeTemperature: mix(first.pipeTemperature, last.pipeTemperature),
          };
        });
        const outcome = tryNitrogenHold({ ...hold, readings: [first, ...middle, last] });
        if (!outcome.ok) return;
        expect(outcome.value.expandedUncertainty).toBeGreaterThanOrEqual(
          nitrogenHold(hold).expandedUncertainty * (1 - 1e-9),
        );
      }),
      { numRuns: 200 },
    );
  });
});

describe("rise test", () => {
  const curves = fc.record({
    start: between(10, 66),
    slope: between(-0.02, 10),
    bend: between(1e-6, 0.02),
    noise: fc.array(between(-1, 1), { minLength: 11, maxLength: 40 }),
  });

  it("always gives a state that fits its verdict", () => {
    fc.assert(
      fc.property(curves, ({ start, slope, bend, noise }) => {
        const samples = noise.map((shift, index) => {
          const time = 60 * index;
          const grown = (slope / bend) * -Math.expm1(-bend * time);
          return { time, pressure: Math.max(start + grown + shift, 1) };
        });
        const { state, verdict, because } = riseTest({ ...riseBase, samples });
        if (verdict === "pass") expect(state).toBe("tight-dry");
        expect(because).toContain(state);
      }),
    );
  });

  it("is an answer or a typed error, whatever comes in", () => {
    const wild = fc.array(fc.record({ time: fc.double(), pressure: fc.double() }), { maxLength: 15 });
    fc.assert(
      fc.property(wild, (samples) => {
        const outcome = tryRiseTest({ ...riseBase, samples });
        if (!outcome.ok) expect(["malformed-input", "out-of-range"]).toContain(outcome.error.code);
      }),
    );
  });
});

const riseBase = {
  gauge: { accuracy: { kind: "percent-of-reading", percent: 10 } },
  repeatability: 0.5,
  startMaximum: 66.7,
  settlingTime: 60,
  coldestTemperature: celsius(15),
  warmestTemperature: celsius(25),
} as const;

describe("water", () => {
  it("has a vapour pressure that rises with temperature, ice below that of liquid", () => {
    fc.assert(
      fc.property(between(60, 640), between(0.001, 5), (temperature, step) => {
        expect(waterVapourPressure(temperature + step)).toBeGreaterThan(waterVapourPressure(temperature));
      }),
    );
    expect(iceSublimationPressure(263.15)).toBeLessThan(287);
  });
});

describe("line charge", () => {
  it("grows with length by the printed value and is never negative", () => {
    fc.assert(
      fc.property(
        between(1, 25),
        between(0, 10),
        between(0, 0.1),
        between(0, 5),
        (length, free, each, more) => {
          const line = { chargeFreeLength: free, chargePerMetre: each, maximumLength: 30 };
          const short = lineCharge({ ...line, length }).extraCharge;
          const long = lineCharge({ ...line, length: length + more }).extraCharge;
          expect(short).toBeGreaterThanOrEqual(0);
          expect(long - short).toBeGreaterThanOrEqual(0);
          expect(long - short).toBeLessThanOrEqual(each * more + 1e-12);
        },
      ),
    );
  });
});
