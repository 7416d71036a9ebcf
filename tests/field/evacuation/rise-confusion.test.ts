import { afterAll, describe, expect, it } from "vitest";
import { type RiseState, riseTest, waterVapourPressure } from "../../../src/field/index.js";
import { celsius } from "../../../src/units/index.js";

/** Curves of each kind at each logging interval. */
const CURVES = 500;
/** Noise of one reading, Pa. */
const NOISE = 0.5;
const saturation = waterVapourPressure(celsius(15));

type Curve = (time: number) => number;
/** Random numbers of [0, 1). */
type Random = () => number;

const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
const start = (random: Random): number => between(random, 20, 60);
const settling =
  (from: number, to: number, time: number): Curve =>
  (t) =>
    from + (to - from) * (1 - Math.exp(-t / time));

/** Systems as they are, with what a rise test of ten minutes can say of each. */
const systems: Readonly<Record<string, (random: Random) => Curve>> = {
  "tight and dry": (random) => {
    const p = start(random);
    return () => p;
  },
  // 20 to 800 times the noise in ten minutes.
  leak: (random) => {
    const p = start(random);
    const rise = NOISE * 20 * 40 ** random();
    return (t) => p + (rise * t) / 600;
  },
  "large leak": (random) => {
    const p = start(random);
    const rise = between(random, 4000, 20000);
    return (t) => p + (rise * t) / 600;
  },
  "free water": (random) =>
    settling(start(random), between(random, 0.8, 1) * saturation, between(random, 60, 180)),
  moisture: (random) =>
    settling(start(random), between(random, 0.1, 0.4) * saturation, between(random, 60, 180)),
  // No clear cases: they show what a rise test of ten minutes cannot do.
  "small leak": (random) => {
    const p = start(random);
    const rise = NOISE * between(random, 3, 20);
    return (t) => p + (rise * t) / 600;
  },
  "slow water": (random) => settling(start(random), saturation, between(random, 400, 3000)),
  "leak and moisture": (random) => {
    const wet = settling(start(random), between(random, 0.1, 0.3) * saturation, between(random, 60, 180));
    const rise = between(random, 100, 400);
    return (t) => wet(t) + (rise * t) / 600;
  },
};

const STATES: readonly RiseState[] = [
  "tight-dry",
  "leak-suspected",
  "leak-or-gas",
  "free-water",
  "moisture-or-outgassing",
  "inconclusive",
  "falling",
];

const table = new Map<string, ReadonlyMap<RiseState, number>>();
afterAll(() => {
  const width = 24;
  const lines = [...table].map(
    ([name, counts]) =>
      name.padEnd(width) +
      STATES.map((state) => `${((100 * (counts.get(state) ?? 0)) / CURVES).toFixed(1)}`.padStart(width)).join(
        "",
      ),
  );
  const head = `${"what it is".padEnd(width)}${STATES.map((state) => state.padStart(width)).join("")}`;
  console.log([`rise test, ${CURVES} curves of each kind, % called`, head, ...lines].join("\n"));
});

describe.each([60, 10])("rise curves read every %i s", (interval) => {
  const countsOf = (name: string): ReadonlyMap<RiseState, number> => {
    const random = seeded(interval * 1000 + Object.keys(systems).indexOf(name));
    const counts = new Map<RiseState, number>();
    for (let each = 0; each < CURVES; each++) {
      const curve = systems[name]!(random);
      const samples = Array.from({ length: 600 / interval + 1 }, (_, index) => ({
        time: index * interval,
        pressure: Math.max(1, curve(index * interval) + NOISE * normal(random)),
      }));
      const { state, verdict } = riseTest({
        samples,
        gauge: { accuracy: { kind: "percent-of-reading", percent: 10 } },
        repeatability: NOISE,
        startMaximum: 66.7,
        settlingTime: 60,
        coldestTemperature: celsius(15),
        warmestTemperature: celsius(25),
      });
      // Noise may hide a start that is too high for sure, nothing else.
      if (state !== "tight-dry") expect(verdict).not.toBe("pass");
      counts.set(state, (counts.get(state) ?? 0) + 1);
    }
    table.set(`${name}, ${interval} s`, counts);
    return counts;
  };
  const share = (counts: ReadonlyMap<RiseState, number>, states: readonly RiseState[]): number =>
    states.reduce((sum, state) => sum + (counts.get(state) ?? 0), 0) / CURVES;

  it("of a tight dry system are hardly ever called a leak or water", () => {
    const counts = countsOf("tight and dry");
    // The ends differ by more than k = 2 in 2.3 % of all tests either way; the last third adds up to as many upward.
    // Seen: 3.0 % at 60 s, 0.6 % at 10 s.
    expect(share(counts, ["leak-suspected", "leak-or-gas", "free-water"])).toBeLessThanOrEqual(0.05);
    expect(share(counts, ["leak-or-gas", "free-water"])).toBe(0);
    expect(share(counts, ["tight-dry"])).toBeGreaterThanOrEqual(0.9);
  });

  it.each<[string, RiseState]>([
    ["leak", "leak-suspected"],
    ["large leak", "leak-or-gas"],
    ["free water", "free-water"],
    ["moisture", "moisture-or-outgassing"],
  ])("of %s are called %s, and never tight", (name, state) => {
    const counts = countsOf(name);
    expect(share(counts, [state])).toBeGreaterThanOrEqual(0.95);
    expect(share(counts, ["tight-dry"])).toBe(0);
  });

  it("of a small leak are sometimes called tight: the test cannot see it", () => {
    const counts = countsOf("small leak");
    const tight = share(counts, ["tight-dry"]);
    expect(tight).toBeGreaterThan(0);
    // A rise of 3 times the noise lies just above the 2.83 that are asked for.
    expect(tight).toBeLessThan(0.1);
  });

  it("of water that evaporates slowly look like a leak within ten minutes, and never like a tight system", () => {
    const counts = countsOf("slow water");
    expect(share(counts, ["tight-dry", "moisture-or-outgassing"])).toBe(0);
    expect(share(counts, ["leak-suspected", "inconclusive"])).toBe(1);
  });

  it("of a leak with moisture are in doubt, and never tight", () => {
    const counts = countsOf("leak and moisture");
    expect(share(counts, ["tight-dry"])).toBe(0);
    expect(
      share(counts, ["inconclusive", "moisture-or-outgassing", "leak-suspected"]),
    ).toBeGreaterThanOrEqual(0.95);
  });
});

/** Evenly spread numbers that are the same in each run: a 32-bit mixer, public domain. */
function seeded(seed: number): Random {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A number from the standard normal distribution, by Box and Muller. */
function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
