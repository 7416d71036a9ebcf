import { describe, expect, it } from "vitest";
import { type TopUpSituation, topUp, tryTopUp } from "../../../src/field/index.js";
import { blends, refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, kilogram, litre } from "../../../src/units/index.js";

const situation: TopUpSituation = {
  refrigerant: refrigerant("R-454B"),
  charge: kilogram(1.9),
  volume: litre(3.2),
  temperature: celsius(24),
  lostFraction: 0.25,
  leaving: "unknown",
};

describe("topping up", () => {
  it("gives what is left, filled up with nominal refrigerant", () => {
    for (const leaving of ["vapour", "liquid", { quality: 0.5 }] as const) {
      const { cases, added } = topUp({ ...situation, leaving });
      expect(cases).toHaveLength(1);
      expect(added).toBeWithin(0.475, 1e-12);
      const { left, resulting } = cases[0]!;
      expect(left.remainingMass).toBeWithin(1.425, 1e-12);
      for (const [name, nominal] of Object.entries(situation.refrigerant.composition)) {
        const mass = 1.425 * left.composition[name]! + 0.475 * nominal;
        expect(resulting[name]).toBeWithin(mass / 1.9, 1e-12);
      }
    }
  });

  it("is no question of shift where liquid escaped, and one where vapour did", () => {
    expect(topUp({ ...situation, leaving: "liquid" })).toMatchObject({ verdict: "pass" });
    const byVapour = topUp({ ...situation, leaving: "vapour" });
    expect(byVapour.verdict).toBe("fail");
    expect(byVapour.because).toMatch(/^vapour lost: R-32 67\.\d+ % lies outside 67\.9 to 69\.9 %/);
    expect(byVapour.advice).toContain("Do not top up");
  });

  it("cannot be decided where nobody knows what escaped, unless so little did that it does not matter", () => {
    const unknown = topUp(situation);
    expect(unknown.verdict).toBe("inconclusive");
    expect(unknown.cases.map(({ leaving, check }) => [leaving, check.verdict])).toEqual([
      ["vapour", "fail"],
      ["liquid", "pass"],
    ]);
    expect(unknown.advice).toContain("recover what is left");
    const little = topUp({ ...situation, lostFraction: 0.1 });
    expect(little.verdict).toBe("pass");
    expect(little.advice).toContain("repair the leak first");
    expect(little.advice).toContain("by weight with liquid");
  });

  it("cannot be decided either where the tolerances are not known", () => {
    const { verdict, because } = topUp({ ...situation, refrigerant: refrigerant("R-515B") });
    expect(verdict).toBe("inconclusive");
    expect(because).toContain("no tolerance is known");
  });

  it("cannot shift a pure refrigerant, whatever escaped", () => {
    for (const leaving of ["unknown", "vapour", "liquid"] as const) {
      const result = topUp({ ...situation, refrigerant: refrigerant("R-32"), leaving, lostFraction: 0.9 });
      expect(result.verdict).toBe("pass");
      expect(result.because).toBe("R-32 is one substance: a leak cannot change it");
      expect(result.advice).not.toContain("liquid");
    }
  });

  it("answers for every designated blend", () => {
    // Near-azeotropes keep within their tolerances at a quarter lost; what glides by 4 K and more does not.
    const verdicts = new Map(
      blends().map(({ designation }) => [
        designation,
        topUp({ ...situation, refrigerant: refrigerant(designation), leaving: "vapour" }).verdict,
      ]),
    );
    for (const each of ["R-404A", "R-410A", "R-513A"]) expect(verdicts.get(each)).toBe("pass");
    for (const each of ["R-407C", "R-448A", "R-449A", "R-454A", "R-454C", "R-455A", "R-438A"]) {
      expect(verdicts.get(each)).toBe("fail");
    }
    for (const each of ["R-507A", "R-515B", "R-459A"]) expect(verdicts.get(each)).toBe("inconclusive");
  });

  it("comes with the cautions of charging and of recovery, each once", () => {
    const codes = topUp(situation).cautions.map(({ code }) => code);
    for (const code of ["flammable-refrigerant", "check-charge-limit", "do-not-vent", "no-oxygen-no-air"]) {
      expect(codes).toContain(code);
    }
    expect(new Set(codes).size).toBe(codes.length);
    expect(codes).not.toContain("toxic-refrigerant");
  });

  it("refuses what cannot be, all of it at once", () => {
    const outcome = tryTopUp({
      ...situation,
      refrigerant: null as never,
      charge: -1,
      volume: 0,
      temperature: Number.NaN,
      lostFraction: 1,
      leaving: "both" as never,
    });
    if (outcome.ok) throw new Error("nothing was refused");
    expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual([
      "refrigerant",
      "charge",
      "volume",
      "temperature",
      "lostFraction",
      "leaving",
    ]);
  });
});
