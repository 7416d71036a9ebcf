import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  flammabilityClass,
  flammabilityFacts,
  isFlammable,
  listFlammabilityFacts,
  SAFETY_CLASSES,
  toxicityClass,
  tryFlammabilityFacts,
} from "../../src/safety/index.js";
import { refrigerant } from "../../src/state/index.js";

const folder = new URL("../../data/fluids/", import.meta.url);
const fluids = readdirSync(folder).map(
  (file) => JSON.parse(readFileSync(new URL(file, folder), "utf8")) as FluidFile,
);

const blendFolder = new URL("../../data/blends/", import.meta.url);
const blends = readdirSync(blendFolder).map(
  (file) => JSON.parse(readFileSync(new URL(file, blendFolder), "utf8")) as BlendFile,
);

interface BlendFile {
  readonly designation: string;
  readonly components: readonly { readonly fluid: string; readonly massFraction: string }[];
}

interface FluidFile {
  readonly designation: string;
  readonly molarMass: { readonly value: string };
}

describe("safety classes", () => {
  it("splits every class into its two parts", () => {
    expect(SAFETY_CLASSES.map((each) => toxicityClass(each) + flammabilityClass(each))).toEqual(
      SAFETY_CLASSES,
    );
    expect(SAFETY_CLASSES.filter(isFlammable)).toEqual(["A2L", "A2", "A3", "B2L", "B2", "B3"]);
  });
});

describe("flammability facts", () => {
  it("cover every refrigerant of the catalogue, pure or designated blend, and no other", () => {
    const known = new Set(listFlammabilityFacts().map(({ designation }) => designation));
    expect(blends.length).toBeGreaterThan(25);
    expect(new Set([...fluids, ...blends].map(({ designation }) => designation))).toEqual(known);
  });

  it("name each refrigerant once", () => {
    const names = listFlammabilityFacts().map(({ designation }) => designation);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(fluids)("$designation has the molar mass of its equation", ({ designation, molarMass }) => {
    // Equations use atomic weights of their time: 0.02 % covers the spread between tables.
    expect(flammabilityFacts(designation).molarMass.value).toBeWithin(Number(molarMass.value) / 1000, 2e-4);
  });

  it.each(blends)("$designation has the molar mass of its components", ({ designation, components }) => {
    const amount = components.reduce((sum, { fluid, massFraction }) => {
      const { molarMass } = fluids.find((each) => each.designation === fluid)!;
      return sum + Number(massFraction) / (Number(molarMass.value) / 1000);
    }, 0);
    // Six decimals of kg/mol are kept.
    expect(Math.abs(flammabilityFacts(designation).molarMass.value - 1 / amount)).toBeLessThan(5.1e-7);
    expect(refrigerant(designation).molarMass).toBeWithin(1 / amount, 1e-12);
  });

  it("say of every limit of a blend what it is the limit of", () => {
    for (const { designation } of blends) {
      const { lowerFlammabilityLimit, note = "" } = flammabilityFacts(designation);
      expect(/worst case/.test(note)).toBe(lowerFlammabilityLimit.value !== null);
    }
  });

  describe.each(listFlammabilityFacts())("$designation", (facts) => {
    const { safetyClass, lowerFlammabilityLimit: limit, alternatives } = facts;

    it("has the shape that the type promises", () => {
      for (const each of [safetyClass, limit]) {
        expect(each.source).not.toBe("");
        expect(["read", "recalled", "computed"]).toContain(each.status);
        expect(["high", "medium", "low"]).toContain(each.confidence);
      }
      for (const each of alternatives) {
        expect(each.value).toBeGreaterThan(0);
        expect(each.source).not.toBe("");
        expect(["read", "recalled"]).toContain(each.status);
      }
      if (safetyClass.value !== null) expect(SAFETY_CLASSES).toContain(safetyClass.value);
    });

    it("has a limit only where something burns, and a plausible one", () => {
      if (limit.value === null) return;
      expect(safetyClass.value === null ? false : isFlammable(safetyClass.value)).toBe(true);
      expect(limit.value).toBeGreaterThan(0.02);
      expect(limit.value).toBeLessThan(0.5);
    });

    it("has limits by mass and by volume that agree", () => {
      if (limit.value === null || limit.volumePercent === null) return;
      // Ideal gas at 25 °C and 101.325 kPa (24.465 m3/kmol). Tables round the volume fraction to 0.1 % and the mass
      // to 0.001 kg/m3 and use molar volumes up to 0.25 % apart; ISO 817 tests some at 23 °C (0.7 %).
      const fromVolume = (limit.volumePercent / 100) * (facts.molarMass.value / 0.0244654);
      const rounding = 0.05 / limit.volumePercent + 0.0005 / limit.value + 0.0095;
      expect(limit.value).toBeWithin(fromVolume, rounding);
    });
  });

  it("give R-32 as the regulation prints it", () => {
    // Royal Decree 552/2019 (Spain), BOE-A-2019-15228, IF-02 clause 4.1.1 and IF-04 appendix 5 example 4 (read).
    expect(flammabilityFacts("R-32").safetyClass.value).toBe("A2L");
    expect(flammabilityFacts("R-32").lowerFlammabilityLimit.value).toBe(0.307);
    // Same, example 5 (read).
    expect(flammabilityFacts("R-290").lowerFlammabilityLimit.value).toBe(0.038);
  });

  it("give blends as their sources print them", () => {
    // Same decree, instruction IF-02 clause 4.1.1 (read).
    for (const each of ["R-444B", "R-447A", "R-452B", "R-454A", "R-454B", "R-454C", "R-455A"]) {
      expect(flammabilityFacts(each).safetyClass).toMatchObject({ value: "A2L", status: "read" });
    }
    // Printed installation manual of a split unit (read): 58.275 cfm for each kg of R-454B stand for 30/LFL m3/h.
    const { value } = flammabilityFacts("R-454B").lowerFlammabilityLimit;
    expect(30 / (58.275 * 0.3048 ** 3 * 60)).toRoundTo(String(value));
    expect(flammabilityFacts("R-459A").lowerFlammabilityLimit.value).toBeNull();
  });

  it("refuse an unknown designation", () => {
    const outcome = tryFlammabilityFacts("R-0");
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.error.code).toBe("malformed-input");
  });
});
