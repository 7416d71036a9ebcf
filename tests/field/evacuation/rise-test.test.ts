import { describe, expect, it } from "vitest";
import { type RiseTest, riseTest, tryRiseTest } from "../../../src/field/index.js";
import { celsius, type InputError, litre } from "../../../src/units/index.js";

const everyMinute = (pressures: readonly number[]) =>
  pressures.map((pressure, minute) => ({ time: 60 * minute, pressure }));

const test: RiseTest = {
  samples: everyMinute([58, 57.8, 58.3, 57.5, 58.6, 57.4, 58.6, 57.5, 58.4, 57.8, 58]),
  gauge: { accuracy: { kind: "percent-of-reading", percent: 10 } },
  repeatability: 0.5,
  startMaximum: 66.7,
  settlingTime: 60,
  coldestTemperature: celsius(15),
  warmestTemperature: celsius(25),
};

describe("shape of a rise curve", () => {
  // Thresholds are our own, no source; more curves, worked through by another hand, are among the check values.
  it.each([
    [
      "levelling off low",
      "moisture-or-outgassing",
      "inconclusive",
      [60, 90, 105, 112, 116, 118, 119, 119.5, 119.7, 119.9, 120],
    ],
    ["too high at the start", "not-evacuated", "fail", [80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80]],
    ["at rest", "tight-dry", "pass", [58, 57.8, 58.3, 57.5, 58.6, 57.4, 58.6, 57.5, 58.4, 57.8, 58]],
  ])("%s: %s", (_what, state, verdict, pressures) => {
    const result = riseTest({ ...test, samples: everyMinute(pressures) });
    expect(result).toMatchObject({ state, verdict, curveVerdict: verdict, method: "series" });
    expect(result.because.startsWith(state)).toBe(true);
    expect(result.assumptions.join()).toMatch(/Pump and hose are shut off/);
  });

  it("takes 1.05 times the vapour pressure of water at the warmest part for the most that water can do", () => {
    // 3169.75 Pa at 25 °C (IAPWS R7-97), with 5 %: 3328 Pa.
    const upTo = (end: number) =>
      riseTest({
        ...test,
        samples: everyMinute(
          [60, 0.3, 0.6, 0.8, 0.9, 0.95, 0.98, 0.99, 1, 1, 1].map((part, index) =>
            index === 0 ? part : part * end,
          ),
        ),
      }).state;
    expect(upTo(3320)).toBe("free-water");
    expect(upTo(3340)).toBe("leak-or-gas");
  });

  it.each([
    [0.71, "leak-suspected"],
    [0.69, "inconclusive"],
    [0.31, "inconclusive"],
    [0.29, "moisture-or-outgassing"],
  ])("with a late slope of %f of the early one: %s", (ratio, state) => {
    // 10 Pa a minute over the first third, `ratio` of it over the last.
    const pressures = [60, 70, 80, 90, 95, 100, 105, 110];
    const samples = everyMinute([...pressures, 120, 120 + 10 * ratio, 120 + 20 * ratio]);
    const result = riseTest({ ...test, samples });
    expect(result.slopeRatio).toBeWithin(ratio, 1e-9);
    expect(result.state).toBe(state);
  });

  it("does not pass a fall: the pump may still be on", () => {
    const falling = everyMinute([58, 57, 56, 55, 54, 53, 52, 51, 50, 49, 48]);
    expect(riseTest({ ...test, samples: falling })).toMatchObject({
      state: "falling",
      verdict: "inconclusive",
    });
  });

  it("does not pass a dip that a climb makes up for", () => {
    const dip = everyMinute([58, 58, 55, 52, 49, 48, 49, 51, 53, 55.5, 58]);
    expect(riseTest({ ...test, samples: dip }).state).toBe("leak-suspected");
  });

  it("does not pass a gauge too noisy to see a rise", () => {
    expect(riseTest({ ...test, repeatability: 20 })).toMatchObject({
      state: "blind",
      verdict: "inconclusive",
    });
  });

  it("leaves a start too close to its limit undecided", () => {
    const samples = everyMinute([66.8, 66.8, 66.9, 66.8, 66.9, 66.8, 66.9, 66.8, 66.9, 66.8, 66.9]);
    expect(riseTest({ ...test, samples })).toMatchObject({
      state: "tight-dry",
      curveVerdict: "pass",
      verdict: "inconclusive",
    });
  });

  it("counts a rise that begins late as straight", () => {
    const late = [58, 58, 58, 58, 58, 58, 58, 58, 70, 82, 94];
    expect(riseTest({ ...test, samples: everyMinute(late) })).toMatchObject({
      state: "leak-suspected",
      slopeRatio: undefined,
    });
  });
});

describe("two readings", () => {
  const two = (first: number, last: number): RiseTest => ({
    ...test,
    samples: [
      { time: 0, pressure: first },
      { time: 600, pressure: last },
    ],
  });

  it("give the throughput of the rise, but no shape", () => {
    const result = riseTest({ ...two(66.66, 133.32), internalVolume: litre(3) });
    expect(result.throughput).toBeWithin((0.003 * 66.66) / 600, 1e-12);
    expect(result).toMatchObject({ method: "two-readings", state: "unclassified", verdict: "inconclusive" });
  });

  it("show what needs no shape", () => {
    expect(riseTest(two(60, 61)).state).toBe("tight-dry");
    expect(riseTest(two(80, 81)).state).toBe("not-evacuated");
    expect(riseTest(two(60, 4860)).state).toBe("leak-or-gas");
    expect(riseTest(two(60, 61)).throughput).toBeUndefined();
  });
});

describe("a limit after a time", () => {
  // IEC/UL 60335-2-40 as worded in a printed installation manual: at most 200 Pa (1500 micron) after 10 minutes.
  const limit = { pressure: 200, after: 600 };
  const levelling = everyMinute([60, 90, 105, 112, 116, 118, 119, 119.5, 119.7, 119.9, 120]);

  it("is judged with the uncertainty of the gauge", () => {
    expect(riseTest({ ...test, limit }).limitDecision?.verdict).toBe("pass");
    const doubtful = riseTest({ ...test, limit: { ...limit, pressure: 60 } });
    expect(doubtful.limitDecision?.verdict).toBe("inconclusive");
    expect(doubtful).toMatchObject({ state: "tight-dry", curveVerdict: "pass", verdict: "inconclusive" });
    expect(riseTest({ ...test, limit: { ...limit, pressure: 30 } }).verdict).toBe("fail");
  });

  it("is read between samples", () => {
    const result = riseTest({ ...test, samples: levelling, limit: { pressure: 200, after: 90 } });
    expect(result.limitDecision?.value).toBeWithin(97.5, 1e-12);
    // The curve is still in doubt, so the whole is.
    expect(result).toMatchObject({ curveVerdict: "inconclusive", verdict: "inconclusive" });
  });

  it("stays open when the test ended earlier", () => {
    const result = riseTest({ ...test, limit: { ...limit, after: 601 } });
    expect(result.limitDecision).toBeUndefined();
    expect(result.verdict).toBe("inconclusive");
    expect(result.warnings.map(({ code }) => code)).toEqual(["no-tightness-test", "limit-not-reached"]);
  });
});

describe("bad rise tests", () => {
  it.each<[string, Partial<RiseTest>, string[]]>([
    ["one sample", { samples: [{ time: 0, pressure: 60 }] }, ["samples"]],
    ["no samples", { samples: undefined as unknown as RiseTest["samples"] }, ["samples"]],
    ["too few samples", { samples: everyMinute([60, 60, 60, 60, 60, 60, 60, 60, 60]) }, ["samples"]],
    ["too short", { samples: test.samples.map((each) => ({ ...each, time: each.time / 2 })) }, ["samples"]],
    [
      "time that stands still",
      { samples: test.samples.map((each) => ({ ...each, time: 0 })) },
      Array(10)
        .fill(0)
        .map((_, i) => `samples[${i + 1}].time`),
    ],
    [
      "a pressure of nothing",
      {
        samples: [
          { time: 0, pressure: 0 },
          { time: 600, pressure: 60 },
        ],
      },
      ["samples[0].pressure"],
    ],
    [
      "nothing for a sample",
      { samples: [null, { time: 600, pressure: 60 }] as unknown as RiseTest["samples"] },
      ["samples[0].time", "samples[0].pressure"],
    ],
    ["a cold part warmer than the warm one", { coldestTemperature: celsius(30) }, ["coldestTemperature"]],
    [
      "numbers that are none",
      {
        repeatability: 0,
        startMaximum: Number.NaN,
        settlingTime: -1,
        internalVolume: 0,
        limit: { pressure: 0, after: -1 },
      },
      ["repeatability", "startMaximum", "settlingTime", "limit.pressure", "limit.after", "internalVolume"],
    ],
    [
      "a gauge with a scale in gauge pressure, and a reading off it",
      {
        gauge: { accuracy: { kind: "percent-of-full-scale", percent: 1, fullScale: 50 } },
        samples: [
          { time: 0, pressure: 40 },
          { time: 600, pressure: 60 },
        ],
      },
      ["gauge.accuracy.kind", "samples[1].pressure"],
    ],
  ])("are refused: %s", (_what, change, paths) => {
    const outcome = tryRiseTest({ ...test, ...change });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});
