import { describe, expect, it } from "vitest";
import { type CylinderDraw, drawFromCylinder, tryDrawFromCylinder } from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, kilogram, litre } from "../../../src/units/index.js";

const cylinder: CylinderDraw = {
  refrigerant: refrigerant("R-454B"),
  content: kilogram(9),
  volume: litre(12),
  temperature: celsius(20),
  drawn: "liquid",
  drawnFraction: 0.3,
};

describe("a cylinder", () => {
  it("gives R-454B within its designation as liquid, nearly to the end", () => {
    for (const drawnFraction of [0.02, 0.3, 0.9]) {
      expect(drawFromCylinder({ ...cylinder, drawnFraction }).drawnCheck.verdict).toBe("pass");
    }
    // The last of it has the vapour's share of R-32.
    const { remainingCheck } = drawFromCylinder({ ...cylinder, drawnFraction: 0.9 });
    expect(remainingCheck.verdict).toBe("fail");
  });

  it("gives R-454C outside its designation as vapour, from the first gram", () => {
    const refrigerantC = refrigerant("R-454C");
    const first = drawFromCylinder({
      ...cylinder,
      refrigerant: refrigerantC,
      drawn: "vapour",
      drawnFraction: 0.001,
    });
    expect(first.drawnCheck.verdict).toBe("fail");
    // The first of it is the vapour over the full cylinder: bubble point of nearly all of it.
    const { vapour } = refrigerantC.bubble({ temperature: celsius(20) });
    // A twentieth of the mass is vapour: it takes a little of what boils first out of the liquid.
    expect(Math.abs(first.first["R-32"]! - vapour.composition["R-32"]!)).toBeLessThan(0.005);
    expect(first.first["R-32"]! - 0.215).toBeGreaterThan(0.1);
    const { drawnCheck, remainingCheck } = drawFromCylinder({
      ...cylinder,
      refrigerant: refrigerantC,
      drawn: "vapour",
    });
    expect(drawnCheck.verdict).toBe("fail");
    expect(remainingCheck.verdict).toBe("fail");
  });

  it("keeps account: drawn and left make what was in it", () => {
    for (const drawn of ["liquid", "vapour"] as const) {
      const result = drawFromCylinder({ ...cylinder, drawn });
      for (const [name, nominal] of Object.entries(cylinder.refrigerant.composition)) {
        expect(0.3 * result.drawn[name]! + 0.7 * result.remaining[name]!).toBeWithin(nominal, 1e-12);
      }
    }
  });

  it("gives a pure refrigerant whichever way up it stands", () => {
    for (const drawn of ["liquid", "vapour"] as const) {
      const result = drawFromCylinder({ ...cylinder, refrigerant: refrigerant("R-32"), drawn });
      expect(result).toMatchObject({ first: { "R-32": 1 }, drawn: { "R-32": 1 }, remaining: { "R-32": 1 } });
      expect(result.drawnCheck.verdict).toBe("pass");
    }
  });

  it("gives gas alone its own composition", () => {
    const { first } = drawFromCylinder({ ...cylinder, content: 0.2 });
    for (const [name, nominal] of Object.entries(cylinder.refrigerant.composition)) {
      expect(first[name]).toBeWithin(nominal, 1e-12);
    }
  });

  it("is refused, all that is wrong at once", () => {
    const outcome = tryDrawFromCylinder({
      refrigerant: {} as never,
      content: 0,
      volume: -1,
      temperature: Number.NaN,
      drawn: "both" as never,
      drawnFraction: 2,
    });
    if (outcome.ok) throw new Error("nothing was refused");
    expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual([
      "refrigerant",
      "content",
      "volume",
      "temperature",
      "drawn",
      "drawnFraction",
    ]);
  });
});
