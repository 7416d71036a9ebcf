import { describe, expect, it } from "vitest";
import {
  designPressure,
  markedPressure,
  pressureEquipmentCategory,
  tryDesignPressure,
  tryMarkedPressure,
  tryPressureEquipmentCategory,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import {
  celsius,
  type InputError,
  inBarGauge,
  inCelsius,
  megapascalGauge,
  type Outcome,
} from "../../../src/units/index.js";

const pathsOf = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);

describe("design pressures", () => {
  it.each([
    // bar gauge, printed to 0.1, computed for this check by other implementations; temperatures of EN 378-2 recalled.
    ["R-32", 32, 34.2],
    ["R-32", 38, 37.5],
    ["R-32", 43, 41.0],
    ["R-32", 55, 44.7],
    ["R-410A", 32, 33.4],
    ["R-410A", 38, 36.6],
    ["R-410A", 43, 40.0],
    ["R-410A", 55, 43.7],
  ])("of %s up to %d °C outdoors", (name, ambient, expected) => {
    const { pressure } = designPressure({
      refrigerant: refrigerant(name),
      side: "high-air-cooled",
      highestAmbient: celsius(ambient),
    });
    expect(Math.abs(inBarGauge(pressure) - expected)).toBeLessThan(0.06);
  });

  it("say what a marked PS is good for: 4.15 MPa fits up to 43 °C", () => {
    const { temperature, enoughFor } = markedPressure(refrigerant("R-32"), megapascalGauge(4.15));
    expect(Math.abs(inCelsius(temperature) - 63.6)).toBeLessThan(0.05);
    expect(enoughFor["high-air-cooled"]).toBe(celsius(43));
    expect(enoughFor["low-indoors"]).toBe(celsius(55));
    expect(
      markedPressure(refrigerant("R-32"), megapascalGauge(1)).enoughFor["high-air-cooled"],
    ).toBeUndefined();
  });

  it("undo each other", () => {
    for (const ambient of [32, 38, 43, 55]) {
      const climate = {
        refrigerant: refrigerant("R-454B"),
        side: "high-air-cooled",
        highestAmbient: celsius(ambient),
      } as const;
      const { pressure, temperature } = designPressure(climate);
      expect(markedPressure(climate.refrigerant, pressure).temperature).toBeWithin(temperature, 1e-9);
    }
  });

  it("refuse climates beyond the table and gases without a bubble point", () => {
    const climate = {
      refrigerant: refrigerant("R-32"),
      side: "high-air-cooled",
      highestAmbient: celsius(56),
    } as const;
    expect(pathsOf(tryDesignPressure(climate))).toEqual(["highestAmbient"]);
    expect(pathsOf(tryDesignPressure({ ...climate, side: "top" as never }))).toEqual(["side"]);
    const carbonDioxide = { ...climate, refrigerant: refrigerant("R-744"), highestAmbient: celsius(32) };
    expect(tryDesignPressure(carbonDioxide)).toMatchObject({ ok: false, error: { code: "out-of-range" } });
    expect(pathsOf(tryMarkedPressure(undefined as never, 0))).toEqual([
      "refrigerant",
      "maximumAllowablePressure",
    ]);
  });
});

describe("categories of pressure equipment", () => {
  it("step at their limits", () => {
    // Directive 2014/68/EU, recalled: group 1, 50 bar L between I and II.
    const of = (fluidGroup: 1 | 2, bar: number, litres: number) =>
      pressureEquipmentCategory({ fluidGroup, maximumAllowablePressure: bar * 1e5, volume: litres / 1000 })
        .category;
    expect([of(1, 25, 1), of(1, 25, 2), of(1, 25, 2.1), of(1, 40, 30), of(1, 40, 200)]).toEqual([
      "good-practice",
      "I",
      "II",
      "IV",
      "IV",
    ]);
    expect(of(2, 25, 2)).toBe("good-practice");
    const pipe = { maximumAllowablePressure: 42e5, nominalDiameter: 0.032 };
    expect(pressureEquipmentCategory({ fluidGroup: 1, ...pipe }).category).toBe("I-or-above");
    expect(pressureEquipmentCategory({ fluidGroup: 2, ...pipe }).category).toBe("good-practice");
    expect(
      pathsOf(
        tryPressureEquipmentCategory({ fluidGroup: 3 as never, maximumAllowablePressure: 0, volume: -1 }),
      ),
    ).toEqual(["fluidGroup", "maximumAllowablePressure", "volume"]);
  });
});
