import { describe, expect, it } from "vitest";
import data from "../../../data/field/instruments.json" with { type: "json" };
import { dialUnit, tryDialUnit } from "../../../src/field/index.js";
import {
  inMegapascal,
  kilogramForcePerSquareCentimetre,
  parseGaugePressure,
  psi,
} from "../../../src/units/index.js";

const codes = (label: string) => dialUnit(label).warnings.map(({ code }) => code);

describe("dial labels", () => {
  it.each([
    // Sizes by definition: 98066.5 Pa, pound-force on a square inch, 13.5951 g/cm3 of mercury.
    ["kg", 98066.5, ["mass-label"]],
    ["KG", 98066.5, ["mass-label"]],
    ["kg/cm²", 98066.5, ["near-bar"]],
    ["kgf/cm2", 98066.5, ["near-bar"]],
    ["lbs", psi(1), ["mass-label"]],
    ["lb/in2", psi(1), ["second-scale"]],
    ["PSI", psi(1), ["second-scale"]],
    ["bar", 1e5, ["second-scale"]],
    ["MPa", 1e6, ["small-numbers"]],
    ["mpa", 1e6, ["small-numbers"]],
    ["kPa", 1e3, []],
    ["cm", 1333.22387415, ["length-label"]],
    ["cmHg", 1333.22387415, []],
    ["mm", 133.322387415, ["length-label"]],
    ["micron", 101325 / 760e3, []],
  ])("%s is %f Pa, with %j", (label, size, warnings) => {
    const { unit, meanings } = dialUnit(label);
    expect(unit?.size).toBeWithin(size, 1e-12);
    expect(meanings).toEqual([unit]);
    expect(codes(label)).toEqual(warnings);
  });

  it.each([
    ["kilos", ["kgf/cm²", "bar"], 1.0197],
    [" Kilo ", ["kgf/cm²", "bar"], 1.0197],
    // Density of mercury over that of water, 13.5951.
    ["in", ["inHg", "inH2O"], 1 / 13.5951],
    ["inches", ["inHg", "inH2O"], 1 / 13.5951],
  ])("%s can be two units, and is not guessed", (label, units, ratio) => {
    const { unit, meanings } = dialUnit(label);
    expect(unit).toBeUndefined();
    expect(meanings.map((meaning) => meaning.unit)).toEqual(units);
    expect(meanings[1]!.size / meanings[0]!.size).toBeWithin(ratio, 1e-4);
    expect(codes(label)).toEqual(["ambiguous-label"]);
  });

  it("says the kind only where the label does", () => {
    const kinds = ["bar", "bar g", "psia", "psig", "Torr", "MPa(abs)"].map(
      (label) => dialUnit(label).unit?.kind,
    );
    expect(kinds).toEqual([undefined, "gauge", "absolute", "gauge", "absolute", "absolute"]);
    expect(codes("psig")).toEqual(["second-scale"]);
  });

  it("printed pairs of kgf/cm² and MPa are no conversion", () => {
    // Printed installation manual of a split unit (read): 4.15 MPa (42 kgf/cm2). They are 0.75 % apart.
    const pressure = inMegapascal(kilogramForcePerSquareCentimetre(42));
    expect(pressure).not.toBeWithin(4.15, 0.007);
    expect(pressure).toBeWithin(4.15, 0.0076);
  });

  it("every meaning in the data is a unit that can be read, and every code is known", () => {
    const known = [
      "ambiguous-label",
      "mass-label",
      "length-label",
      "second-scale",
      "small-numbers",
      "near-bar",
    ];
    for (const { labels, meanings, code } of data.dialLabels.labels) {
      expect(labels.length).toBeGreaterThan(0);
      expect(known).toContain(code);
      expect(code === "ambiguous-label").toBe(meanings.length > 1);
      for (const unit of meanings) expect(parseGaugePressure(`1 ${unit}`)).toBeGreaterThan(0);
    }
    for (const { unit, code } of data.dialLabels.units) {
      expect(known).toContain(code);
      expect(codes(unit)).toContain(code);
    }
  });

  it.each(["", "  ", "hectares", "bar bar", "12 bar", "bar vac vac", 7, null, undefined, {}])(
    "refuses %j",
    (label) => {
      expect(tryDialUnit(label as string)).toMatchObject({
        ok: false,
        error: { code: "malformed-input", problems: [{ path: "label" }] },
      });
    },
  );
});
