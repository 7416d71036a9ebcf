import fc from "fast-check";
import { describe, expect, it } from "vitest";
import data from "../../../data/field/diagnosis.json" with { type: "json" };
import {
  type DiagnosisCause,
  type DiagnosisReadings,
  decide,
  diagnose,
  diagnosisMatrix,
  type JudgedReading,
  type MeteringDevice,
  type ReadingLevel,
  type RunningUnit,
  tryDiagnose,
} from "../../../src/field/index.js";
import { celsius, type InputError } from "../../../src/units/index.js";
import "../../support/fuzz-seed.js";

const DEVICES: readonly MeteringDevice[] = ["fixed-orifice", "thermostatic-valve", "electronic-valve"];
const LEVELS: readonly ReadingLevel[] = ["low", "normal", "high"];
const MAIN = ["superheat", "subcooling", "condensingSplit", "evaporatingPressure"] as const;
const ALL = [...MAIN, "dischargeTemperature", "airTemperatureDrop"] as const;

const limits = { minimum: 10, maximum: 20 };
/** A reading of that level, sure with U of 1. */
const judged = (level: ReadingLevel): JudgedReading => ({
  value: { low: 5, normal: 15, high: 25 }[level],
  expandedUncertainty: 1,
  limits,
});
/** The same value with so much uncertainty that nothing can be told. */
const unsure = (reading: JudgedReading): JudgedReading => ({ ...reading, expandedUncertainty: 100 });

const conditions = {
  steadyFor: 1200,
  outdoorTemperature: celsius(32),
  cleanCoils: "yes",
  airFlowKnown: "yes",
  fixedSpeed: "yes",
} as const;
const unit = (
  readings: DiagnosisReadings,
  meteringDevice: MeteringDevice = "thermostatic-valve",
): RunningUnit => ({
  meteringDevice,
  mode: "cooling",
  readings,
  conditions,
});
const pattern = (levels: readonly ReadingLevel[]): DiagnosisReadings =>
  Object.fromEntries(levels.map((level, index) => [MAIN[index], judged(level)]));
const first = (levels: readonly ReadingLevel[], device?: MeteringDevice): DiagnosisCause[] =>
  diagnose(unit(pattern(levels), device))
    .causes.filter(({ rank }) => rank === 1)
    .map(({ cause }) => cause);

describe("diagnosis matrix (common practice, no source)", () => {
  const L = "low";
  const N = "normal";
  const H = "high";
  const every = DEVICES;
  const valves = ["thermostatic-valve", "electronic-valve"] as const;

  it.each([
    ["undercharge", [[H], [L], [L, N], [L]], every],
    ["overcharge", [[L], [H], [H], [H]], ["fixed-orifice"]],
    ["overcharge", [[N], [H], [H], [H]], valves],
    ["restriction", [[H], [H], [N, H], [L]], every],
    ["overfeeding-or-weak-compressor", [[L], [L], [L, N], [H]], every],
    ["low-indoor-air-flow", [[L, N], [N], [N], [L]], every],
    ["outdoor-coil-or-fan", [[N], [L, N], [H], [H]], every],
    ["non-condensables", [[N], [H], [H], [N, H]], every],
    ["charge-plausible", [[N], [N], [N], [N]], every],
  ] as const)("has %s as it is taught", (cause, expected, devices) => {
    for (const device of devices) {
      const row = diagnosisMatrix(device).find((each) => each.cause === cause);
      expect(MAIN.map((reading) => row?.levels[reading])).toEqual(expected);
    }
  });

  it("names only readings, levels and devices that are known, and a source for each row", () => {
    for (const row of data.matrix) {
      const patterns = [row.levels, ...Object.values("byDevice" in row ? (row.byDevice ?? {}) : {})];
      for (const levels of patterns) {
        for (const [reading, allowed] of Object.entries(levels)) {
          expect(ALL as readonly string[]).toContain(reading);
          for (const level of allowed) expect(LEVELS as readonly string[]).toContain(level);
          // All three would be no entry.
          expect(allowed.length).toBeLessThan(3);
        }
      }
      for (const device of Object.keys("byDevice" in row ? (row.byDevice ?? {}) : {})) {
        expect(DEVICES as readonly string[]).toContain(device);
      }
      expect(row.source).toContain("no source");
      expect(row.confirm).toMatch(/\.$/);
    }
  });

  it("refuses a device that is none", () => {
    expect(() => diagnosisMatrix("tap" as MeteringDevice)).toThrow(/meteringDevice/);
  });
});

describe("diagnosis", () => {
  it("ranks each row first, fed exactly, alone but for one pair that looks alike behind a valve", () => {
    for (const device of DEVICES) {
      for (const { cause, levels } of diagnosisMatrix(device)) {
        const [superheat = [], subcooling = [], split = [], pressure = []] = MAIN.map((each) => levels[each]);
        for (const a of superheat)
          for (const b of subcooling)
            for (const c of split)
              for (const d of pressure) {
                const likeliest = first([a, b, c, d], device);
                expect(likeliest).toContain(cause);
                // Too much refrigerant and air in the circuit: only the standing pressure tells them apart.
                const alike =
                  device !== "fixed-orifice" && [a, b, c, d].join() === "normal,high,high,high"
                    ? ["overcharge", "non-condensables"]
                    : [cause];
                expect(likeliest).toEqual(alike);
              }
      }
    }
  });

  it("never names one cause alone, and says what speaks for and against each", () => {
    const { causes } = diagnose(unit(pattern(["high", "low", "low", "low"])));
    expect(causes).toHaveLength(data.matrix.length);
    expect(causes[0]).toMatchObject({
      rank: 1,
      cause: "undercharge",
      confidence: 1,
      supporting: MAIN,
      contradicting: [],
      undecided: [],
      because: "4 of 4 readings fit",
    });
    const restriction = causes.find(({ cause }) => cause === "restriction");
    expect(restriction).toMatchObject({
      confidence: 0.5,
      supporting: ["superheat", "evaporatingPressure"],
      contradicting: ["subcooling", "condensingSplit"],
      because: "2 of 4 readings fit, subcooling and condensing split against",
    });
  });

  it("says to search for the leak first, and nowhere to add refrigerant", () => {
    const result = diagnose(unit(pattern(["high", "low", "normal", "low"])));
    expect(result.warnings.map(({ code }) => code)).toEqual(["search-leak-first"]);
    const { confirm } = result.causes[0]!;
    expect(confirm).toMatch(/^Search for the leak first/);
    expect(confirm.indexOf("leak")).toBeLessThan(confirm.indexOf("charge"));
    expect(JSON.stringify(result)).not.toMatch(/\badd\b|top.?up|more refrigerant/i);
  });

  it("depends on the device: too much refrigerant floods an orifice, a valve keeps superheat", () => {
    expect(first(["low", "high", "high", "high"], "fixed-orifice")).toEqual(["overcharge"]);
    expect(first(["normal", "high", "high", "high"], "fixed-orifice")).toEqual(["non-condensables"]);
    expect(first(["normal", "high", "high", "high"])).toEqual(["overcharge", "non-condensables"]);
  });

  it("takes the split to the air in place of the pressure, the other way round", () => {
    for (const level of LEVELS) {
      const mirrored = { low: "high", normal: "normal", high: "low" } as const;
      const base = pattern(["high", "low", "low"]);
      const byPressure = diagnose(unit({ ...base, evaporatingPressure: judged(level) }));
      const bySplit = diagnose(unit({ ...base, evaporatingSplit: judged(mirrored[level]) }));
      expect(bySplit.causes).toEqual(byPressure.causes);
      expect(bySplit.readings[3]).toMatchObject({ reading: "evaporatingPressure", level, possible: [level] });
    }
  });

  it("keeps readings that are too close to tell out of every cause, and says which", () => {
    const close: JudgedReading = { value: 10.5, expandedUncertainty: 1, limits };
    const result = diagnose(unit({ ...pattern(["high", "low", "normal"]), evaporatingPressure: close }));
    expect(result.readings[3]).toMatchObject({ level: "unsure", possible: ["low", "normal"] });
    expect(result.causes[0]).toMatchObject({
      cause: "undercharge",
      confidence: 0.75,
      undecided: ["evaporatingPressure"],
    });
    // Low or normal is surely not high: that speaks against too much refrigerant.
    const overcharge = result.causes.find(({ cause }) => cause === "overcharge");
    expect(overcharge?.contradicting).toContain("evaporatingPressure");
    expect(result.warnings.map(({ code }) => code)).toEqual(["readings-unsure", "search-leak-first"]);
  });

  it("cannot tell low from normal where the target has no lower end", () => {
    const hot = (value: number): JudgedReading => ({
      value,
      expandedUncertainty: 1,
      limits: { maximum: 378.15 },
    });
    const level = (value: number) =>
      diagnose(unit({ ...pattern(["high", "low", "normal", "low"]), dischargeTemperature: hot(value) }))
        .readings[4];
    expect(level(400)).toMatchObject({ level: "high", possible: ["high"] });
    expect(level(350)).toMatchObject({ level: "normal", possible: ["low", "normal"] });
    expect(level(378)).toMatchObject({ level: "unsure", possible: ["low", "normal", "high"] });
  });

  it("takes decisions as they are", () => {
    const superheat = decide(16, 1.5, { minimum: 5, maximum: 12 }, { quantity: "superheat", unit: "K" });
    const { readings } = diagnose(unit({ superheat }));
    expect(readings[0]).toMatchObject({ level: "high", because: superheat.because });
    expect(readings.slice(1).map(({ level }) => level)).toEqual(["not-read", "not-read", "not-read"]);
  });

  it("counts further readings where they were given and the row knows them", () => {
    const base = pattern(["high", "low", "low", "low"]);
    const { causes, readings } = diagnose(
      unit({ ...base, dischargeTemperature: judged("high"), airTemperatureDrop: judged("normal") }),
    );
    expect(readings.map(({ reading }) => reading)).toEqual(ALL);
    expect(causes[0]).toMatchObject({
      cause: "undercharge",
      confidence: 5 / 6,
      contradicting: ["airTemperatureDrop"],
    });
    // The row of a device that overfeeds says nothing of the discharge temperature.
    const overfeeding = causes.find(({ cause }) => cause === "overfeeding-or-weak-compressor");
    expect(overfeeding).toMatchObject({ confidence: 3 / 5 });
  });

  it("says what to read next: the reading that the likeliest causes differ in most", () => {
    const next = (readings: DiagnosisReadings) => diagnose(unit(readings)).next;
    // High superheat and low pressure are too little refrigerant or a restriction: subcooling tells.
    const tell = next({ superheat: judged("high"), evaporatingPressure: judged("low") });
    expect(tell).toMatchObject({ reading: "subcooling", separation: 1 });
    expect(tell?.between).toEqual(["undercharge", "restriction"]);
    expect(tell?.because).toContain("read subcooling now");
    // The same, but it was read too coarsely.
    const again = next({
      superheat: judged("high"),
      subcooling: unsure(judged("low")),
      evaporatingPressure: judged("low"),
    });
    expect(again?.because).toContain("read subcooling again");
    // Condenser or air in the circuit, both read: what is left to read tells nothing, only the standing pressure does.
    const alike = diagnose(unit(pattern(["normal", "high", "high", "high"])));
    expect(alike.causes[1]?.confirm).toContain("standing pressure");
    expect(alike.next?.between).toEqual(["overcharge", "non-condensables"]);
    expect(alike.next?.separation).toBeLessThan(1);
    const done = next({
      ...pattern(["normal", "high", "high", "high"]),
      dischargeTemperature: judged("high"),
      airTemperatureDrop: judged("low"),
    });
    expect(done).toBeUndefined();
  });

  it.each<[string, Partial<RunningUnit["conditions"]>, string]>([
    ["too short a run", { steadyFor: 599 }, "steady"],
    ["an unknown run", { steadyFor: "unknown" }, "steady"],
    ["cold air", { outdoorTemperature: celsius(14.9) }, "outdoor-temperature"],
    ["hot air", { outdoorTemperature: celsius(45.1) }, "outdoor-temperature"],
    ["unknown air", { outdoorTemperature: "unknown" }, "outdoor-temperature"],
    ["dirty coils", { cleanCoils: "no" }, "clean-coils"],
    ["unknown coils", { cleanCoils: "unknown" }, "clean-coils"],
    ["unknown air flow", { airFlowKnown: "unknown" }, "air-flow-known"],
    ["a compressor of variable speed", { fixedSpeed: "no" }, "fixed-speed"],
  ])("is not valid with %s, and says so", (_what, change, condition) => {
    const input = unit(pattern(["high", "low", "low", "low"]));
    const result = diagnose({ ...input, conditions: { ...conditions, ...change } });
    expect(result.valid).toBe(false);
    const unmet = result.conditions.filter(({ met }) => met !== "yes");
    expect(unmet.map((each) => each.condition)).toEqual([condition]);
    expect(result.warnings[0]?.code).toBe("matrix-not-valid");
    expect(result.because).toContain(`not valid: ${unmet[0]?.because}`);
  });

  it("is not valid in heating, and valid at the ends of its range", () => {
    const input = unit(pattern(["normal", "normal", "normal", "normal"]));
    const heating = diagnose({ ...input, mode: "heating" });
    expect(heating.valid).toBe(false);
    expect(heating.because).toContain("the unit heats");
    for (const outdoorTemperature of [celsius(15), celsius(45)]) {
      const result = diagnose({
        ...input,
        conditions: { ...conditions, outdoorTemperature, steadyFor: 600 },
      });
      expect(result.valid).toBe(true);
      expect(result.conditions[0]?.because).toBe("steady for 10 min, 15 min would be better");
      expect(result.warnings).toEqual([]);
    }
  });
});

describe("properties of the diagnosis", () => {
  const level = fc.constantFrom(...LEVELS);
  const readings = fc.record(
    {
      superheat: level,
      subcooling: level,
      condensingSplit: level,
      evaporatingPressure: level,
      dischargeTemperature: level,
      airTemperatureDrop: level,
    },
    { requiredKeys: ["superheat"] },
  );
  const device = fc.constantFrom(...DEVICES);
  const judgedAll = (levels: Readonly<Record<string, ReadingLevel>>): DiagnosisReadings =>
    Object.fromEntries(Object.entries(levels).map(([name, each]) => [name, judged(each)]));

  it("a reading that becomes less sure never raises the confidence of a cause", () => {
    const uncertainty = fc.double({ min: 0, max: 30, noNaN: true });
    const value = fc.double({ min: 0, max: 30, noNaN: true });
    fc.assert(
      fc.property(
        readings,
        device,
        fc.nat(5),
        value,
        uncertainty,
        uncertainty,
        (levels, which, index, x, U, more) => {
          const given = judgedAll(levels);
          const name = Object.keys(given)[index % Object.keys(given).length]!;
          const before: JudgedReading = { value: x, expandedUncertainty: U, limits };
          const after: JudgedReading = { ...before, expandedUncertainty: U + more };
          const confidences = (reading: JudgedReading) =>
            new Map(
              diagnose(unit({ ...given, [name]: reading }, which)).causes.map((each) => [
                each.cause,
                each.confidence,
              ]),
            );
          const sure = confidences(before);
          for (const [cause, confidence] of confidences(after)) {
            expect(confidence).toBeLessThanOrEqual(sure.get(cause)!);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it("the order of the readings changes nothing", () => {
    fc.assert(
      fc.property(readings, device, (levels, which) => {
        const given = judgedAll(levels);
        const turned = Object.fromEntries(Object.entries(given).reverse());
        expect(diagnose(unit(turned, which))).toEqual(diagnose(unit(given, which)));
      }),
      { numRuns: 200 },
    );
  });

  it("ranks by confidence, then by what speaks against, and counts every reading once", () => {
    fc.assert(
      fc.property(readings, device, (levels, which) => {
        const result = diagnose(unit(judgedAll(levels), which));
        expect(result.causes[0]?.rank).toBe(1);
        for (const [index, cause] of result.causes.entries()) {
          const all = [...cause.supporting, ...cause.contradicting, ...cause.undecided];
          expect(new Set(all).size).toBe(all.length);
          expect(cause.confidence).toBe(cause.supporting.length / all.length);
          const before = result.causes[index - 1];
          if (before === undefined) continue;
          expect(before.confidence).toBeGreaterThanOrEqual(cause.confidence);
          if (before.confidence === cause.confidence) {
            expect(before.contradicting.length).toBeLessThanOrEqual(cause.contradicting.length);
          }
          expect(before.rank).toBeLessThanOrEqual(cause.rank);
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe("bad units", () => {
  const good = unit(pattern(["high", "low", "low", "low"]));

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    ["null", null, [""]],
    [
      "an empty unit",
      {},
      [
        "meteringDevice",
        "mode",
        "readings",
        "conditions.steadyFor",
        "conditions.outdoorTemperature",
        "conditions.cleanCoils",
        "conditions.airFlowKnown",
        "conditions.fixedSpeed",
      ],
    ],
    ["no readings", { ...good, readings: {} }, ["readings"]],
    ["readings in an array", { ...good, readings: [] }, ["readings"]],
    ["a reading of nothing", { ...good, readings: { superheat: undefined } }, ["readings"]],
    ["a misspelt reading", { ...good, readings: { superheet: judged("low") } }, ["readings.superheet"]],
    [
      "a reading that is null",
      { ...good, readings: { superheat: null } },
      ["readings.superheat.value", "readings.superheat.expandedUncertainty", "readings.superheat.limits"],
    ],
    [
      "a target upside down",
      {
        ...good,
        readings: { superheat: { value: 1, expandedUncertainty: 1, limits: { minimum: 2, maximum: 1 } } },
      },
      ["readings.superheat.limits.minimum"],
    ],
    [
      "a target that is no number",
      {
        ...good,
        readings: { superheat: { value: 1, expandedUncertainty: 1, limits: { minimum: Number.NaN } } },
      },
      ["readings.superheat.limits.minimum"],
    ],
    [
      "the same reading twice",
      { ...good, readings: { ...good.readings, evaporatingSplit: judged("low") } },
      ["readings.evaporatingSplit"],
    ],
    [
      "conditions that are none",
      { ...good, conditions: { ...conditions, steadyFor: -1, cleanCoils: "perhaps" } },
      ["conditions.steadyFor", "conditions.cleanCoils"],
    ],
  ])("are refused: %s", (_what, input, paths) => {
    const outcome = tryDiagnose(input as RunningUnit);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });
});
