import { describe, expect, it } from "vitest";
import {
  designPressure,
  fluidGroupOf,
  markedPressure,
  pressureEquipmentCategory,
  tryDesignPressure,
  tryFluidGroupOf,
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
    // Half a unit of the last printed digit.
    expect(Math.abs(inBarGauge(pressure) - expected)).toBeLessThanOrEqual(0.05);
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

  it("say where they are from, and how sure the model of a blend is", () => {
    const climate = { side: "high-air-cooled", highestAmbient: celsius(43) } as const;
    const pure = designPressure({ ...climate, refrigerant: refrigerant("R-32") });
    expect(pure).toMatchObject({ status: "recalled", expandedUncertainty: 0 });
    const r454b = refrigerant("R-454B");
    const blend = designPressure({ ...climate, refrigerant: r454b });
    expect(blend.standardUncertainty).toBeWithin(
      (r454b.mixing!.deviation * (blend.pressure + 101325)) / Math.sqrt(3),
      1e-12,
    );
    const marked = markedPressure(r454b, blend.pressure);
    expect(marked.status).toBe("recalled");
    expect(marked.because).toContain("high-air-cooled up to 43 °C outdoors");
    // Pressure and temperature of one curve: dT/dp by a difference, 1 kPa either way.
    const T = (p: number) => r454b.bubble({ pressure: p }).temperature;
    const p = blend.pressure + 101325;
    const slope = (T(p + 1e3) - T(p - 1e3)) / 2e3;
    expect(marked.standardUncertainty).toBeWithin(slope * blend.standardUncertainty, 1e-4);
  });

  it("undo each other", () => {
    for (const ambient of [32, 38, 43, 55]) {
      const climate = {
        refrigerant: refrigerant("R-454B"),
        side: "high-air-cooled",
        highestAmbient: celsius(ambient),
      } as const;
      const { pressure, temperature } = designPressure(climate);
      const marked = markedPressure(climate.refrigerant, pressure);
      expect(marked.temperature).toBeWithin(temperature, 1e-9);
      expect(marked.enoughFor["high-air-cooled"]).toBe(celsius(ambient));
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
    expect([of(2, 40, 4), of(2, 40, 20), of(2, 40, 60), of(2, 40, 80)]).toEqual(["I", "II", "III", "IV"]);
    const pipe = { maximumAllowablePressure: 42e5, nominalDiameter: 0.032 };
    expect(pressureEquipmentCategory({ fluidGroup: 1, ...pipe }).category).toBe("I-or-above");
    expect(pressureEquipmentCategory({ fluidGroup: 2, ...pipe }).category).toBe("good-practice");
    expect(
      pathsOf(
        tryPressureEquipmentCategory({ fluidGroup: 3 as never, maximumAllowablePressure: 0, volume: -1 }),
      ),
    ).toEqual(["fluidGroup", "maximumAllowablePressure", "volume"]);
    const both = {
      fluidGroup: 1,
      maximumAllowablePressure: 4e6,
      volume: 0.002,
      nominalDiameter: 0.02,
    } as const;
    expect(pathsOf(tryPressureEquipmentCategory(both))).toEqual(["nominalDiameter"]);
    expect(tryPressureEquipmentCategory(null as never).ok).toBe(false);
  });

  it("say that they are for orientation, and end where other lines count", () => {
    const vessel = { fluidGroup: 1, maximumAllowablePressure: 41.5e5, volume: 0.0015 } as const;
    expect(pressureEquipmentCategory(vessel)).toMatchObject({
      category: "II",
      orientationOnly: true,
      status: "recalled",
    });
    for (const maximumAllowablePressure of [5e4, 2.01e7]) {
      expect(tryPressureEquipmentCategory({ ...vessel, maximumAllowablePressure })).toMatchObject({
        ok: false,
        error: { code: "out-of-range" },
      });
    }
  });

  it("take the fluid group from the safety class, but for B1", () => {
    // Directive 2014/68/EU, article 13, recalled: flammable gases are group 1.
    const groups = (["A1", "A2L", "A2", "A3", "B2L", "B3"] as const).map(fluidGroupOf);
    expect(groups).toEqual([2, 1, 1, 1, 1, 1]);
    expect(pathsOf(tryFluidGroupOf("B1"))).toEqual(["safetyClass"]);
    expect(pathsOf(tryFluidGroupOf(undefined as never))).toEqual(["safetyClass"]);
  });
});
