import { describe, expect, it } from "vitest";
import {
  canProveVacuum,
  evaluateVacuum,
  type PressureGauge,
  tryCanProveVacuum,
  tryEvaluateVacuum,
  type VacuumReading,
} from "../../../src/field/index.js";
import {
  celsius,
  InputError,
  inCelsius,
  type LocalAtmosphere,
  localAtmosphere,
  micron,
  micronDifference,
  pressureAtAltitude,
} from "../../../src/units/index.js";
import { refusedPaths } from "./refused-paths.js";

const vacuumGauge: PressureGauge = {
  accuracy: { kind: "percent-of-reading", percent: 10 },
  resolution: micronDifference(1),
};
const compound: PressureGauge = {
  accuracy: { kind: "accuracy-class", accuracyClass: 1.6, scaleMinimum: -0.1e6, scaleMaximum: 3.8e6 },
};
const site: LocalAtmosphere = { pressure: 99e3, standardUncertainty: 1732, because: "altitude" };
const reading: VacuumReading = {
  pressure: micron(400),
  gauge: vacuumGauge,
  limit: micron(500),
  coldestTemperature: celsius(15),
};

describe("can a gauge prove a vacuum", () => {
  it("a vacuum gauge can", () => {
    const proof = canProveVacuum({ limit: micron(500), gauge: vacuumGauge });
    expect(proof.canProve).toBe(true);
    expect(proof.expandedUncertainty).toBeWithin(
      2 * Math.hypot((0.1 * micron(500)) / Math.sqrt(3), micron(1) / Math.sqrt(12)),
      1e-12,
    );
  });

  const percentOfReading = (percent: number): PressureGauge => ({
    accuracy: { kind: "percent-of-reading", percent },
  });
  it.each<[string, PressureGauge, number]>([
    // The gauge alone, half-width in Pa by hand.
    [
      "vacuum gauge of class 1.0, 100 kPa wide: wrong by 1 kPa, 7500 micron",
      { accuracy: { kind: "accuracy-class", accuracyClass: 1, scaleMinimum: -100e3, scaleMaximum: 0 } },
      1e3,
    ],
    ["compound gauge of class 1.6, 3.9 MPa wide: wrong by 62 kPa", compound, 62.4e3],
    [
      "digital manifold of 0.5 % of 5 MPa",
      { accuracy: { kind: "percent-of-full-scale", percent: 0.5, fullScale: 5e6 } },
      25e3,
    ],
    // It reads −100 kPa or so.
    ["digital manifold of 0.5 % of what it reads", percentOfReading(0.5), 494.67],
    [
      "perfect gauge: the weather alone moves its zero",
      { accuracy: { kind: "standard-uncertainty", standardUncertainty: 0 } },
      0,
    ],
  ])("a manifold cannot: %s", (_what, gauge, halfWidth) => {
    const proof = canProveVacuum({ limit: micron(500), gauge, atmosphere: site });
    expect(proof.canProve).toBe(false);
    expect(proof.expandedUncertainty).toBeWithin(2 * Math.hypot(halfWidth / Math.sqrt(3), 1732), 1e-4);
    expect(proof.because).toContain("air pressure counted");
  });

  it.each([0, 500, 1000, 2000, 3000])(
    "a manifold cannot at %f m, by altitude or with a barometer beside it",
    (altitude) => {
      for (const atmosphere of [
        localAtmosphere({ from: "altitude", altitude }),
        localAtmosphere({ from: "station-barometer", pressure: pressureAtAltitude(altitude) }),
      ]) {
        const gauge: PressureGauge = {
          accuracy: { kind: "accuracy-class", accuracyClass: 1, scaleMinimum: -103e3, scaleMaximum: 0 },
        };
        for (const limit of [micron(500), 270, micron(5000)]) {
          expect(canProveVacuum({ limit, gauge, atmosphere }).canProve).toBe(false);
        }
      }
    },
  );

  it("an absolute gauge can, thermal or capacitive, at any altitude: it asks for no air pressure", () => {
    for (const gauge of [vacuumGauge, percentOfReading(0.25)]) {
      for (const limit of [micron(200), micron(500), 270, micron(5000)]) {
        expect(canProveVacuum({ limit, gauge }).canProve).toBe(true);
      }
    }
    // One that may be off by as much as the limit cannot: U = 2 × 30/√3 = 34.6 Pa against half of 66.7 Pa.
    const coarse: PressureGauge = { accuracy: { kind: "half-width", halfWidth: 30 } };
    expect(canProveVacuum({ limit: micron(500), gauge: coarse }).canProve).toBe(false);
  });

  it("a gauge relative to the air is not judged without the air pressure", () => {
    const digital: PressureGauge = {
      accuracy: { kind: "percent-of-full-scale", percent: 0.5, fullScale: 5e6 },
    };
    for (const gauge of [compound, digital]) {
      expect(refusedPaths(tryCanProveVacuum({ limit: micron(500), gauge }))).toEqual(["atmosphere"]);
    }
  });

  it("refuses nonsense", () => {
    expect(() => canProveVacuum({ limit: 0, gauge: vacuumGauge })).toThrow(InputError);
    expect(() => canProveVacuum({ limit: 1, gauge: {} as PressureGauge })).toThrow(InputError);
    // 200 kPa below the site is off the dial.
    expect(() =>
      canProveVacuum({ limit: 66, gauge: compound, atmosphere: { ...site, pressure: 200e3 } }),
    ).toThrow(/scale/);
  });
});

describe("a vacuum reading", () => {
  it("does not pass a limit that is met while ice can stay in the coldest part", () => {
    // 259.9 Pa over ice at −10 °C (IAPWS R14-08): at 400 Pa it does not leave.
    const result = evaluateVacuum({
      ...reading,
      pressure: 400,
      limit: 667,
      coldestTemperature: celsius(-10),
    });
    expect(result.decision.verdict).toBe("pass");
    expect(result).toMatchObject({ verdict: "inconclusive" });
    expect(result.drynessRatio).toBeGreaterThan(1);
  });

  it("takes no gauge whose scale is in gauge pressure", () => {
    const gauge = {
      accuracy: { kind: "percent-of-full-scale", percent: 0.5, fullScale: 5.5e6 },
    } as const;
    expect(() => evaluateVacuum({ ...reading, gauge })).toThrow(/gauge\.accuracy\.kind/);
  });

  it("passes a limit that is met for sure, and says what water does", () => {
    const result = evaluateVacuum(reading);
    expect(result.verdict).toBe("pass");
    expect(Math.abs(inCelsius(result.waterLeavesAbove) - -26.72)).toBeLessThan(0.05);
    expect(result.drynessRatio).toBeWithin(micron(400) / 1705.75, 1e-3);
    expect(result.warnings).toEqual([]);
    expect(result.because).toMatch(/is below 66\.66 Pa.*parts warmer than -26\.\d+ °C/);
  });

  it("cannot tell close to the limit, and fails beyond it", () => {
    expect(evaluateVacuum({ ...reading, pressure: micron(480) }).verdict).toBe("inconclusive");
    expect(evaluateVacuum({ ...reading, pressure: micron(600) }).verdict).toBe("fail");
  });

  it("does not pass on the word of a gauge that cannot prove the limit", () => {
    const gauge: PressureGauge = { accuracy: { kind: "half-width", halfWidth: 20 } };
    const result = evaluateVacuum({ ...reading, gauge, pressure: 20, limit: 45 });
    expect(result.decision.verdict).toBe("pass");
    expect(result.verdict).toBe("inconclusive");
    expect(result.warnings.map(({ code }) => code)).toEqual(["gauge-cannot-prove"]);
  });

  it("cannot tell that water leaves where the reading is as close to its vapour pressure as it may be off", () => {
    // 250 ± 29 Pa against 259.9 Pa over ice at −10 °C.
    const close = evaluateVacuum({ ...reading, limit: 400, pressure: 250, coldestTemperature: celsius(-10) });
    expect(close.decision.verdict).toBe("pass");
    expect(close).toMatchObject({ verdict: "inconclusive" });
    expect(close.drynessRatio).toBeLessThan(1);
    expect(close.warnings.map(({ code }) => code)).toEqual(["water-may-stay"]);
    expect(close.warnings[0]!.message).toContain("too close");
  });

  it("warns where water stays, or leaves slowly", () => {
    // Ice at −10 °C: 259.9 Pa (IAPWS R14-08).
    const cold = { ...reading, limit: 400, coldestTemperature: celsius(-10) };
    const codes = (pressure: number) =>
      evaluateVacuum({ ...cold, pressure }).warnings.map(({ code }) => code);
    expect(codes(100)).toEqual([]);
    expect(codes(200)).toEqual(["water-leaves-slowly"]);
    expect(codes(270)).toEqual(["water-may-stay"]);
  });

  it("refuses nonsense, all of it at once", () => {
    const outcome = tryEvaluateVacuum({
      pressure: 0,
      limit: Number.NaN,
      coldestTemperature: -1,
      gauge: null as unknown as PressureGauge,
    });
    if (outcome.ok) throw new Error("nothing was refused");
    expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual([
      "pressure",
      "limit",
      "coldestTemperature",
      "gauge.accuracy.kind",
    ]);
    expect(tryEvaluateVacuum({ ...reading, coldestTemperature: 20 }).ok).toBe(false);
  });
});
