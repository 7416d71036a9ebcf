import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  absolutePressure,
  deepestVacuum,
  type ShownPressure,
  tryAbsolutePressure,
  tryDeepestVacuum,
} from "../../../src/field/index.js";
import {
  centimetreOfMercuryDifference,
  type InputError,
  inchOfMercuryDifference,
  type LocalAtmosphere,
  localAtmosphere,
  megapascal,
  megapascalGauge,
  psiGauge,
  toAbsolute,
} from "../../../src/units/index.js";
import "../../support/fuzz-seed.js";

const seaLevel: LocalAtmosphere = { pressure: 101325, standardUncertainty: 0, because: "sea level, stated" };
const openAir = { to: "open-air", atmosphere: seaLevel } as const;
/** U of 200 Pa, k = 2. */
const fine = { accuracy: { kind: "standard-uncertainty", standardUncertainty: 100 } } as const;
const exact = { accuracy: { kind: "standard-uncertainty", standardUncertainty: 0 } } as const;
const reading = { kind: "gauge", reading: megapascalGauge(0.8), gauge: fine, reference: openAir } as const;
const vacuum = (depth: number, gauge: ShownPressure["gauge"] = fine): ShownPressure => ({
  kind: "vacuum",
  reading: depth,
  gauge,
  reference: openAir,
});

describe("absolute pressure", () => {
  it("is the reading and the air around the gauge, with the uncertainty of both", () => {
    const atmosphere = localAtmosphere({ from: "altitude", altitude: 1500 });
    const result = absolutePressure({
      kind: "gauge",
      reading: psiGauge(115),
      gauge: fine,
      reference: { to: "open-air", atmosphere },
    });
    expect(result.state).toBe("found");
    expect(result.pressure).toBe(toAbsolute(psiGauge(115), atmosphere.pressure));
    expect(result.budget.map(({ input }) => input)).toEqual(["gauge", "atmosphere"]);
    expect(result.standardUncertainty).toBeWithin(Math.hypot(100, 3000 / Math.sqrt(3)), 1e-12);
    expect(result.highest - result.lowest).toBeWithin(2 * result.expandedUncertainty, 1e-9);
    expect(result.deepestVacuum).toBe(atmosphere.pressure);
    expect(result.warnings).toEqual([]);
    expect(result.because).toMatch(/877\.\d ± 3\.5 kPa absolute \(k = 2\): gauge pressure 792\.9 kPa read/);
    // Sea level taken for granted would be 1.9 % off.
    expect(Math.abs(result.pressure / toAbsolute(psiGauge(115), 101325) - 1)).toBeGreaterThan(0.018);
  });

  it("takes a vacuum as a positive number or as a negative gauge pressure", () => {
    const depth = inchOfMercuryDifference(20);
    const below = absolutePressure({ ...reading, reading: -depth });
    expect(absolutePressure(vacuum(depth)).pressure).toBe(below.pressure);
    expect(below.pressure).toBeWithin(101325 - 20 * 3386.388640341, 1e-12);
  });

  it("counts a sealed gauge from the pressure in its case, whatever the air is", () => {
    const reference = { to: "sealed", sealingPressure: 101325, halfWidth: 1000 } as const;
    const result = absolutePressure({ ...reading, reference });
    expect(result.pressure).toBe(901325);
    expect(result.budget[1]).toMatchObject({ input: "sealing" });
    expect(result.budget[1]?.standardUncertainty).toBeWithin(1000 / Math.sqrt(3), 1e-12);
    // At 2000 m a gauge of the same reading in open air means 21.8 kPa less.
    const atmosphere = localAtmosphere({ from: "altitude", altitude: 2000 });
    const open = absolutePressure({ ...reading, reference: { to: "open-air", atmosphere } });
    expect(result.pressure - open.pressure).toBeGreaterThan(21.8e3);
  });

  it("asks no site of an absolute sensor", () => {
    const gauge = {
      accuracy: { kind: "percent-of-full-scale", percent: 0.5, fullScale: megapascal(5) as number },
    } as const;
    const result = absolutePressure({ kind: "absolute", reading: megapascal(2), gauge });
    expect(result.pressure).toBe(2e6);
    expect(result.deepestVacuum).toBeUndefined();
    expect(result.budget).toHaveLength(1);
    expect(result.expandedUncertainty).toBeWithin((2 * 25e3) / Math.sqrt(3), 1e-12);
  });

  it("says only a bound for all the vacuum there is, or a little more, and never 0", () => {
    for (const beyond of [0, 100, 200]) {
      const result = absolutePressure(vacuum(101325 + beyond));
      expect(result).toMatchObject({ state: "bound", pressure: 200, lowest: 0, highest: 200 });
      expect(result.warnings.map(({ code }) => code)).toEqual(["full-vacuum"]);
      expect(result.because).toContain("at most 0.2 kPa absolute");
    }
    // An absolute vacuum gauge that shows nothing says no more.
    expect(absolutePressure({ kind: "absolute", reading: 0, gauge: fine })).toMatchObject({
      state: "bound",
      pressure: 200,
    });
  });

  it("warns of a value below its uncertainty, and of a reading low on the scale", () => {
    const near = absolutePressure(vacuum(101325 - 150));
    expect(near).toMatchObject({ state: "found", pressure: 150, lowest: 0, highest: 350 });
    expect(near.warnings.map(({ code }) => code)).toEqual(["smaller-than-uncertainty"]);
    const gauge = {
      accuracy: { kind: "accuracy-class", accuracyClass: 1.6, scaleMinimum: -0.1e6, scaleMaximum: 3.8e6 },
    } as const;
    const codes = absolutePressure({ ...reading, gauge }).warnings.map(({ code }) => code);
    expect(codes).toEqual(["low-on-scale"]);
  });

  it.each<[string, ShownPressure]>([
    ["beyond the uncertainty", vacuum(101325 + 201)],
    ["as a gauge pressure", { ...reading, reading: -101325 - 201 }],
    ["at the limit, where nothing is uncertain", vacuum(101325, exact)],
    [
      "that a dial for sea level shows on a mountain",
      {
        ...vacuum(centimetreOfMercuryDifference(66)),
        reference: { to: "open-air", atmosphere: localAtmosphere({ from: "altitude", altitude: 2000 }) },
      } as ShownPressure,
    ],
    [
      "below what was sealed in",
      {
        ...vacuum(101325),
        reference: { to: "sealed", sealingPressure: 1e5, halfWidth: 0 },
      } as ShownPressure,
    ],
  ])("refuses a vacuum %s, by name", (_what, shown) => {
    const outcome = tryAbsolutePressure(shown);
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    expect((outcome.error as InputError).problems).toMatchObject([
      { path: "reading", value: shown.reading, reason: "vacuum-deeper-than-atmosphere" },
    ]);
  });

  it.each<[string, unknown, string[]]>([
    ["nothing", undefined, [""]],
    ["null", null, [""]],
    ["no kind", {}, ["kind", "gauge.accuracy.kind"]],
    ["no site", { ...reading, reference: undefined }, ["reference.to"]],
    [
      "an empty site",
      { ...reading, reference: { to: "open-air" } },
      ["reference.atmosphere.pressure", "reference.atmosphere.standardUncertainty"],
    ],
    [
      "a case without pressure",
      { ...reading, reference: { to: "sealed" } },
      ["reference.sealingPressure", "reference.halfWidth"],
    ],
    ["a negative depth", { ...reading, kind: "vacuum", reading: -1 }, ["reading"]],
    ["no number", { ...reading, reading: Number.NaN }, ["reading"]],
    ["an absolute pressure below nothing", { kind: "absolute", reading: -1, gauge: fine }, ["reading"]],
    ["nothing read for sure", { kind: "absolute", reading: 0, gauge: exact }, ["reading"]],
    ["an absolute sensor with a site", { ...reading, kind: "absolute" }, ["reference"]],
    [
      "an absolute sensor with a scale in gauge pressure",
      {
        kind: "absolute",
        reading: 1e5,
        gauge: {
          accuracy: { kind: "accuracy-class", accuracyClass: 1, scaleMinimum: 0, scaleMaximum: 1e6 },
        },
      },
      ["gauge.accuracy.kind"],
    ],
    [
      "a reading off the scale",
      {
        ...reading,
        gauge: { accuracy: { kind: "percent-of-full-scale", percent: 1, fullScale: 5e5 } },
      },
      ["reading"],
    ],
  ])("refuses %s", (_what, shown, paths) => {
    const outcome = tryAbsolutePressure(shown as ShownPressure);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });

  it("is above 0 and inside its interval, or a typed error, whatever is read", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2e5, max: 5e6, noNaN: true }),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        (shown, standardUncertainty) => {
          const gauge = { accuracy: { kind: "standard-uncertainty" as const, standardUncertainty } };
          const outcome = tryAbsolutePressure({ ...reading, reading: shown, gauge });
          expect(outcome.ok).toBe(
            shown + 101325 > 0 || (standardUncertainty > 0 && shown + 101325 >= -2 * standardUncertainty),
          );
          if (!outcome.ok) return;
          const { pressure, lowest, highest } = outcome.value;
          expect(pressure).toBeGreaterThan(0);
          expect(lowest).toBeGreaterThanOrEqual(0);
          expect(lowest).toBeLessThanOrEqual(pressure);
          expect(highest).toBeGreaterThanOrEqual(pressure);
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe("deepest vacuum", () => {
  it("is all the air there is", () => {
    expect(deepestVacuum(seaLevel)).toBeWithin(centimetreOfMercuryDifference(76), 1e-6);
  });

  it.each([undefined, null, {}, 7])("refuses %j", (site) => {
    const outcome = tryDeepestVacuum(site as unknown as LocalAtmosphere);
    expect(outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path)).toEqual([
      "atmosphere.pressure",
      "atmosphere.standardUncertainty",
    ]);
  });
});
