import { describe, expect, it } from "vitest";
import { FIELD_STEPS, type FieldStep, fieldCautions } from "../../src/field/index.js";
import { SAFETY_CLASSES, type SafetyClass } from "../../src/safety/index.js";
import { InputError } from "../../src/units/index.js";

const codes = (step: FieldStep, safetyClass: SafetyClass | undefined) =>
  fieldCautions(step, safetyClass).map(({ code }) => code);

describe("cautions", () => {
  it("begin with who may do the work, at every step", () => {
    for (const step of FIELD_STEPS) {
      for (const safetyClass of [...SAFETY_CLASSES, undefined]) {
        expect(codes(step, safetyClass)[0]).toBe("certified-persons-only");
      }
    }
  });

  it("are texts of their own with codes of their own", () => {
    for (const step of FIELD_STEPS) {
      const cautions = fieldCautions(step, undefined);
      expect(new Set(cautions.map(({ code }) => code)).size).toBe(cautions.length);
      for (const { text } of cautions) expect(text.length).toBeGreaterThan(40);
    }
  });

  it("warn of fire where the refrigerant burns, and when nobody knows", () => {
    for (const step of FIELD_STEPS) {
      for (const safetyClass of ["A2L", "A2", "A3", "B2L", undefined] as const) {
        expect(codes(step, safetyClass)).toContain("flammable-refrigerant");
      }
      for (const safetyClass of ["A1", "B1"] as const) {
        expect(codes(step, safetyClass)).not.toContain("flammable-refrigerant");
      }
      expect(codes(step, "B1")).toContain("toxic-refrigerant");
      expect(codes(step, "A3")).not.toContain("toxic-refrigerant");
    }
  });

  it("fit the step", () => {
    expect(codes("pressure-test", "A2L")).toEqual(
      expect.arrayContaining([
        "nitrogen-with-regulator",
        "no-oxygen-no-air",
        "never-above-lowest-pressure",
        "limit-of-the-test",
      ]),
    );
    expect(codes("evacuation", "A1")).not.toContain("nitrogen-with-regulator");
    expect(codes("charging", "A2L")).toContain("check-charge-limit");
    expect(codes("charging", "A1")).not.toContain("check-charge-limit");
    expect(codes("opening-valves", "A1")).toContain("evacuate-before-opening");
  });

  it("refuse a step or a class that is none", () => {
    expect(() => fieldCautions("lunch" as FieldStep, "A1")).toThrow(InputError);
    expect(() => fieldCautions("charging", "C9" as SafetyClass)).toThrow(InputError);
  });
});
