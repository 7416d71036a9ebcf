import { describe, expect, it } from "vitest";
import {
  altitudeFactor,
  chargeBands,
  type FlammabilityFacts,
  flammabilityFacts,
  IEC_EDITIONS,
  type IecEdition,
  MOUNTINGS,
  releaseHeight,
  tryUnventilatedRoom,
  type UnventilatedRoom,
  unventilatedMaximumCharge,
  unventilatedMinimumArea,
  unventilatedRoom,
} from "../../src/safety/index.js";
import { type DewlineError, InputError, OutOfRangeError } from "../../src/units/index.js";

/** Arithmetic of the formulas, recomputed elsewhere to six digits: what remains is rounding of the sixth. */
const ARITHMETIC = 1e-5;

const situation = (edition: IecEdition, lowerFlammabilityLimit: number, height: number) => ({
  edition,
  lowerFlammabilityLimit,
  releaseHeight: height,
});

const wall: UnventilatedRoom = {
  edition: "6",
  refrigerant: "R-32",
  charge: 2,
  floorArea: 20,
  mounting: "wall",
};

describe("charge bands", () => {
  it.each([
    ["C01", "2", "m1", 1.228],
    ["C02", "2", "m2", 7.982],
    ["C03", "2", "m3", 39.91],
    ["C04", "2L", "m1", 1.842],
    ["C05", "2L", "m2", 15.964],
    ["C06", "2L", "m3", 79.82],
  ] as const)("%s class %s %s for R-32, LFL 0.307", (_id, flammability, name, expected) => {
    expect(chargeBands("6", flammability, 0.307)[name]).toBeWithin(expected, ARITHMETIC);
  });

  it("agree with the R-32 limits printed in installation manuals of split units", () => {
    const { m1, m2, m3 } = chargeBands("6", "2L", 0.307);
    // 1.842, 15.96 and 79.8 kg (read): half a unit of the last printed digit.
    expect(Math.abs(m1 - 1.842)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(m2 - 15.96)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(m3 - 79.8)).toBeLessThanOrEqual(0.05);
  });

  it("treat class 2L as class 2 before edition 5.1", () => {
    // 1.224 kg printed with LFL 0.306 in an installation manual that follows edition 5 (read).
    expect(chargeBands("5.0", "2L", 0.306).m1).toBeWithin(1.224, 1e-12);
    for (const edition of ["4", "5.0"] as const) {
      expect(chargeBands(edition, "2L", 0.307)).toEqual(chargeBands(edition, "2", 0.307));
    }
  });

  it("use the same room volumes for class 3 as for class 2", () => {
    // 0.152, 0.988, 4.94 kg.
    const { m1, m2, m3 } = chargeBands("6", "3", 0.038);
    expect([m1, m2, m3]).toEqual([
      expect.closeTo(0.152, 12),
      expect.closeTo(0.988, 12),
      expect.closeTo(4.94, 12),
    ]);
  });

  it("refuse class 1, nonsense and an edition that is not known", () => {
    expect(() => chargeBands("6", "1", 0.307)).toThrow(InputError);
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => chargeBands("6", "2L", bad)).toThrow(InputError);
    }
    expect(() => chargeBands("7" as IecEdition, "2L", 0.307)).toThrow(/edition/);
  });
});

describe("limits without ventilation", () => {
  it.each([
    ["C08", "5.0", 0.307, 1.8, 20, 4.59886, "root"],
    ["C09", "6", 0.307, 0.6, 5, 0.69075, "linear"],
    ["C10", "6", 0.307, 0.6, 20, 1.53295, "root"],
    // Royal Decree 552/2019 (Spain), IF-04 appendix 5: example 6 prints 0.230 kg; example 4 prints 10.85 kg where
    // the formula gives 10.885 (0.3 % low: a rounded factor on the way).
    ["C19", "5.0", 0.038, 1.0, 30, 0.229737, "root"],
    ["C20", "5.0", 0.307, 2.2, 75, 10.8847, "root"],
  ] as const)(
    "%s largest charge, edition %s, LFL %f, %f m, %f m2",
    (_id, edition, lfl, height, area, kg, branch) => {
      const limit = unventilatedMaximumCharge(situation(edition, lfl, height), area);
      expect(limit.charge).toBeWithin(kg, ARITHMETIC);
      expect(limit.branch).toBe(branch);
    },
  );

  it.each([
    ["C11", "6", 0.307, 0.6, 2, 34.0433, "root"],
    ["C12", "5.0", 0.307, 1.8, 1.84, 3.20158, "root"],
    ["C13", "6", 0.307, 1.8, 2, 4.82567, "linear"],
    ["C14", "6", 0.307, 2.2, 3, 5.92242, "linear"],
    ["C15", "5.0", 0.306, 0.6, 2.448, 51.4206, "root"],
    ["C16", "5.0", 0.306, 1.8, 4.896, 22.8536, "root"],
    ["C17", "5.0", 0.038, 0.6, 0.304, 145.917, "root"],
    ["C18", "5.0", 0.038, 1.8, 0.608, 64.852, "root"],
  ] as const)(
    "%s smallest area, edition %s, LFL %f, %f m, %f kg",
    (_id, edition, lfl, height, kg, area, branch) => {
      const limit = unventilatedMinimumArea(situation(edition, lfl, height), kg);
      expect(limit.area).toBeWithin(area, ARITHMETIC);
      expect(limit.branch).toBe(branch);
    },
  );

  it("C51 has its branches cross at 6.1564 m2 for R-32, at any height", () => {
    const crossing = ((2.5 * 0.307 ** 0.25) / 0.75) ** 2;
    expect(crossing).toBeWithin(6.1564, ARITHMETIC);
    for (const height of [0.6, 1, 1.8, 2.2]) {
      const at = situation("6", 0.307, height);
      expect(unventilatedMaximumCharge(at, crossing * (1 - 1e-9)).branch).toBe("linear");
      expect(unventilatedMaximumCharge(at, crossing * (1 + 1e-9)).branch).toBe("root");
    }
    expect(unventilatedMaximumCharge(situation("6", 0.307, 1.8), crossing).charge).toBeWithin(
      2.55152,
      ARITHMETIC,
    );
  });

  describe("as printed in an installation manual of a split unit, tables GG of edition 5 (read)", () => {
    // Printed to 0.01 kg; some entries are rounded, some cut, hence one unit of the last digit.
    it.each([
      [0.306, 0.6, [0.68, 0.9, 1.08, 1.32, 1.53, 1.87, 2.41]],
      [0.306, 1.8, [2.05, 2.71, 3.24, 3.97, 4.58, 5.61, 7.24]],
      [0.038, 0.6, [0.05, 0.07, 0.08, 0.1, 0.11, 0.14, 0.18]],
      [0.038, 1.8, [0.15, 0.2, 0.24, 0.29, 0.34, 0.41, 0.53]],
    ])("largest charge, LFL %f, %f m", (lfl, height, row) => {
      const areas = [4, 7, 10, 15, 20, 30, 50];
      for (const [index, printed] of row.entries()) {
        const { charge } = unventilatedMaximumCharge(situation("5.0", lfl, height), areas[index]!);
        expect(Math.abs(charge - printed), `${areas[index]} m2`).toBeLessThan(0.01);
      }
    });

    // Printed to 1 m2, rounded to nearest.
    it.each([
      [0.306, 0.6, [1.836, 2.448, 3.672, 4.896, 6.12, 7.956], [29, 51, 116, 206, 321, 543]],
      [0.306, 1.8, [1.836, 2.448, 3.672, 4.896, 6.12, 7.956], [3, 6, 13, 23, 36, 60]],
      [0.038, 0.6, [0.228, 0.304, 0.456, 0.608, 0.76], [82, 146, 328, 584, 912]],
      [0.038, 1.8, [0.228, 0.304, 0.456, 0.608, 0.76], [9, 16, 36, 65, 101]],
    ])("smallest area, LFL %f, %f m", (lfl, height, charges, row) => {
      for (const [index, printed] of row.entries()) {
        const { area } = unventilatedMinimumArea(situation("5.0", lfl, height), charges[index]!);
        expect(Math.abs(area - printed), `${charges[index]} kg`).toBeLessThanOrEqual(0.5);
      }
    });
  });

  describe("as printed in the installation manual of a heat pump, edition 6, R-32, 0.6 m (read)", () => {
    const at = situation("6", 0.307, 0.6);

    it.each([
      [1, 0.138],
      [2, 0.276],
      [5, 0.691],
      [7, 0.907],
      [10, 1.084],
      [20, 1.533],
      [30, 1.877],
      [40, 2.168],
    ])("largest charge in %f m2", (area, printed) => {
      // Printed to 0.001 kg; some entries are rounded, some cut.
      expect(Math.abs(unventilatedMaximumCharge(at, area).charge - printed)).toBeLessThan(0.001);
    });

    it.each([
      [1.84, 28.81],
      [1.9, 30.72],
      [2.0, 34.04],
      [2.1, 37.53],
      [2.2, 41.19],
    ])("smallest area for %f kg", (charge, printed) => {
      expect(Math.abs(unventilatedMinimumArea(at, charge).area - printed)).toBeLessThanOrEqual(0.005);
    });
  });

  it.each([
    ["floor", 34.04, 34.04, 0.005],
    ["window", 12.26, 12.26, 0.005],
    ["wall", 3.783, 4.826, 0.0005],
    ["ceiling", 2.532, 3.948, 0.0005],
  ] as const)("R-32, 2.0 kg, %s: root rule alone and with the linear one", (mounting, root, both, half) => {
    // Computed independently, printed to four digits: half a unit of the last.
    const area = (edition: IecEdition) =>
      unventilatedMinimumArea(situation(edition, 0.307, releaseHeight(edition, mounting)), 2).area;
    expect(Math.abs(area("5.0") - root)).toBeLessThanOrEqual(half);
    expect(Math.abs(area("6") - both)).toBeLessThanOrEqual(half);
  });

  it("refuse nonsense, all of it at once", () => {
    const bad = { edition: "8" as IecEdition, lowerFlammabilityLimit: 0, releaseHeight: 0.5 };
    for (const call of [
      () => unventilatedMaximumCharge(bad, Number.NaN),
      () => unventilatedMinimumArea(bad, -1),
    ]) {
      expect(problemPaths(call)).toHaveLength(4);
    }
  });
});

describe("release height", () => {
  it("follows the mounting", () => {
    for (const edition of IEC_EDITIONS) {
      expect(MOUNTINGS.map((mounting) => releaseHeight(edition, mounting))).toEqual([0.6, 1.0, 1.8, 2.2]);
    }
  });

  it("adds the offset to the reference height from edition 5.1 on, but never falls below 0.6 m", () => {
    expect(releaseHeight("5.1", "wall", 0.2)).toBeWithin(2.0, 1e-12);
    expect(releaseHeight("6", "floor", 0.3)).toBe(0.6);
    expect(releaseHeight("6", "floor", 0.7)).toBe(0.7);
    expect(() => releaseHeight("5.0", "wall", 0.2)).toThrow(/edition 5.0/);
    for (const bad of [-0.1, Number.NaN]) expect(() => releaseHeight("6", "wall", bad)).toThrow(InputError);
  });
});

describe("altitude factor", () => {
  it("goes through its table and between its rows", () => {
    // UL/CSA 60335-2-40, 3rd edition (recalled).
    expect([0, 600, 1000, 1600, 3200].map(altitudeFactor)).toEqual([1, 1, 1.05, 1.12, 1.4]);
    expect(altitudeFactor(700)).toBeWithin(1.01, 1e-12);
  });

  it("stays within its rounding of a smooth curve", () => {
    // 1/(1 − 1.1e-4 (h − 600)): a fit to the table, good to its last digit (0.005) and a little of interpolation.
    for (let height = 600; height <= 3200; height += 50) {
      expect(Math.abs(altitudeFactor(height) - 1 / (1 - 1.1e-4 * (height - 600)))).toBeLessThan(0.0075);
    }
  });

  it("refuses what the table does not cover", () => {
    for (const bad of [-1, 3201, Number.NaN]) expect(() => altitudeFactor(bad)).toThrow(OutOfRangeError);
  });
});

describe("a charge in a room without ventilation", () => {
  it("passes a room that is large enough and says what it rests on", () => {
    const result = unventilatedRoom(wall);
    expect(result.verdict).toBe("pass");
    expect(result.band).toBe("m1-to-m2");
    expect(result.branch).toEqual({ minimumArea: "linear", maximumCharge: "root" });
    expect(result.minimumArea).toBeWithin(4.82567, ARITHMETIC);
    expect(result.maximumCharge).toBeWithin(4.59886, ARITHMETIC);
    expect(result.chargeMargin).toBeWithin(2.59886, ARITHMETIC);
    expect(result.areaMargin).toBeWithin(15.17433, ARITHMETIC);
    expect(result.lowerFlammabilityLimit.value).toBe(0.307);
    expect(result.editionTitle).toContain("edition 6");
    expect(result.clause).toContain("Annex GG");
    expect(result.because).toMatch(/4\.83 m² needed \(linear rule.*LFL = 0\.307/);
    expect(result.warnings.map(({ code }) => code)).toEqual(["several-published-limits"]);
    expect(result.cautions).toHaveLength(10);
    expect(result.cautions.find(({ code }) => code === "standards-change")?.text).toContain("0.307 kg/m3");
    expect(result.assumptions.join(" ")).toContain("underside");
  });

  it("fails a room that is too small, with what is missing", () => {
    const result = unventilatedRoom({ ...wall, floorArea: 4.5 });
    expect(result.verdict).toBe("fail");
    expect(result.chargeMargin).toBeLessThan(0);
    expect(result.areaMargin).toBeLessThan(0);
  });

  it("asks for no room up to m1, and allows m1 in any room", () => {
    const result = unventilatedRoom({ ...wall, charge: 1.1, floorArea: 1 });
    expect(result).toMatchObject({ verdict: "pass", band: "up-to-m1", minimumArea: 0 });
    expect(result.branch).toEqual({ minimumArea: "none", maximumCharge: "m1" });
    expect(result.maximumCharge).toBeWithin(1.842, ARITHMETIC);
  });

  it("counts a charge at the end of a band to that band", () => {
    const { m1, m2, m3 } = chargeBands("6", "2L", 0.307);
    const band = (charge: number) => unventilatedRoom({ ...wall, charge }).band;
    expect([m1, m2, m3].map(band)).toEqual(["up-to-m1", "m1-to-m2", "m2-to-m3"]);
  });

  it("caps a huge room at m2", () => {
    const result = unventilatedRoom({ ...wall, floorArea: 1000 });
    expect(result.branch.maximumCharge).toBe("m2");
    expect(result.maximumCharge).toBeWithin(15.964, ARITHMETIC);
  });

  it("gives no number above m2", () => {
    for (const [charge, band] of [
      [16, "m2-to-m3"],
      [80, "above-m3"],
    ] as const) {
      const result = unventilatedRoom({ ...wall, charge, floorArea: 1e6 });
      expect(result).toMatchObject({ verdict: "outside-clause", band });
      expect([result.maximumCharge, result.minimumArea, result.chargeMargin, result.areaMargin]).toEqual([
        undefined,
        undefined,
        undefined,
        undefined,
      ]);
    }
  });

  it("takes another published limit when told to, and says whose it is", () => {
    const own = { value: 0.306, source: "table of edition 5 in the manual" };
    const result = unventilatedRoom({ ...wall, edition: "5.0", lowerFlammabilityLimit: own });
    expect(result.lowerFlammabilityLimit).toEqual({ ...own, status: "given", confidence: "given" });
    expect(result.warnings).toEqual([]);
    expect(result.bands.m1).toBeWithin(1.224, ARITHMETIC);
    expect(result.assumptions.join(" ")).toContain("class 2");
  });

  it("takes the facts of a refrigerant that is not listed", () => {
    const facts: FlammabilityFacts = {
      ...flammabilityFacts("R-32"),
      designation: "site blend",
      alternatives: [],
    };
    expect(unventilatedRoom({ ...wall, refrigerant: facts }).refrigerant).toBe("site blend");
    const unsure = { ...facts, safetyClass: { ...facts.safetyClass, confidence: "low" as const } };
    expect(unventilatedRoom({ ...wall, refrigerant: unsure }).warnings[0]?.code).toBe("low-confidence-data");
  });

  it("multiplies the area by the altitude factor only when asked", () => {
    const plain = unventilatedRoom(wall);
    const high = unventilatedRoom({ ...wall, altitude: { elevation: 2000, rule: "UL/CSA 60335-2-40" } });
    expect(plain.altitudeFactor).toBe(1);
    expect(high.minimumArea! / plain.minimumArea!).toBeWithin(1.18, 1e-12);
    expect(high.maximumCharge).toBeWithin(4.59886 / Math.sqrt(1.18), ARITHMETIC);
  });

  it("warns of a release above 2.2 m and of the doubtful bands of edition 5.1", () => {
    const ceiling = unventilatedRoom({ ...wall, mounting: "ceiling", releaseOffset: 0.1, roomHeight: 2.4 });
    expect(ceiling.warnings.map(({ code }) => code)).toContain("release-height-unusual");
    const codes = (charge: number) =>
      unventilatedRoom({ ...wall, edition: "5.1", charge }).warnings.map(({ code }) => code);
    expect(codes(7.9)).not.toContain("band-edition-uncertain");
    expect(codes(8.1)).toContain("band-edition-uncertain");
  });

  it.each([
    ["class 1", { refrigerant: "R-134a" }, ["refrigerant.safetyClass"]],
    [
      "toxicity class B, lighter than air",
      { refrigerant: "R-717" },
      ["refrigerant.safetyClass", "refrigerant.molarMass"],
    ],
    ["a vapour too light", { refrigerant: "R-170" }, ["refrigerant.molarMass"]],
    ["an unknown class", { refrigerant: "R-161" }, ["refrigerant.safetyClass"]],
    ["an unknown limit", { refrigerant: "R-601a" }, ["refrigerant.lowerFlammabilityLimit"]],
    ["an unknown refrigerant", { refrigerant: "R-0", charge: -1 }, ["charge", "refrigerant"]],
    ["half a set of facts", { refrigerant: { designation: "x" } as FlammabilityFacts }, ["refrigerant"]],
    ["no refrigerant", { refrigerant: undefined as unknown as string }, ["refrigerant"]],
    ["no edition", { edition: undefined as unknown as IecEdition }, ["edition"]],
    ["bad numbers", { charge: Number.NaN, floorArea: 0 }, ["charge", "floorArea"]],
    ["a mounting that is none", { mounting: "shelf" as "wall" }, ["mounting"]],
    ["an offset in edition 5.0", { edition: "5.0" as const, releaseOffset: 0.1 }, ["releaseOffset"]],
    ["a release above the ceiling", { roomHeight: 1.7 }, ["roomHeight"]],
    ["a room without height", { roomHeight: 0 }, ["roomHeight"]],
    [
      "a limit without source",
      { lowerFlammabilityLimit: { value: 0.3, source: "" } },
      ["lowerFlammabilityLimit.source"],
    ],
    [
      "a limit of nothing",
      { lowerFlammabilityLimit: { value: 0, source: "x" } },
      ["lowerFlammabilityLimit.value"],
    ],
    [
      "an altitude factor in an edition it does not belong to",
      { edition: "5.1" as const, altitude: { elevation: 100, rule: "UL/CSA 60335-2-40" as const } },
      ["altitude"],
    ],
    [
      "an altitude rule that is none",
      { altitude: { elevation: 100, rule: "other" as "UL/CSA 60335-2-40" } },
      ["altitude.rule"],
    ],
  ])("refuses %s", (_what, change: Partial<UnventilatedRoom>, paths) => {
    expect(problemPaths(() => unventilatedRoom({ ...wall, ...change }))).toEqual(paths);
  });

  it("refuses an elevation outside the table", () => {
    const altitude = { elevation: 3300, rule: "UL/CSA 60335-2-40" as const };
    expect(() => unventilatedRoom({ ...wall, altitude })).toThrow(OutOfRangeError);
  });

  it("takes R-1270, whose vapour is just heavy enough", () => {
    expect(unventilatedRoom({ ...wall, refrigerant: "R-1270", charge: 0.3 }).verdict).toBe("pass");
  });

  it("has a twin that does not throw", () => {
    const outcome = tryUnventilatedRoom({ ...wall, charge: -1 });
    expect(outcome.ok).toBe(false);
    expect(tryUnventilatedRoom(wall)).toMatchObject({ ok: true, value: { verdict: "pass" } });
  });
});

function problemPaths(call: () => unknown): string[] {
  try {
    call();
  } catch (error) {
    expect((error as DewlineError).code).toBe("malformed-input");
    return (error as InputError).problems.map(({ path }) => path);
  }
  throw new Error("nothing was refused");
}
