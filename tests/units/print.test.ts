import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bar,
  barGauge,
  celsius,
  fahrenheit,
  formatGaugePressure,
  formatMass,
  formatNumber,
  formatPressure,
  formatPressureDifference,
  formatTemperature,
  formatTemperatureDifference,
  gram,
  InputError,
  kelvinDifference,
  micron,
  micronDifference,
  psi,
} from "../../src/units/index.js";
import "../support/fuzz-seed.js";

describe("formatNumber", () => {
  it.each([
    [0, 1, "0.0"],
    [-0, 0, "0"],
    [-0.04, 1, "0.0"],
    [-0.05, 1, "-0.1"],
    [0.05, 1, "0.1"],
    [1.005, 2, "1.01"],
    [-1.005, 2, "-1.01"],
    [8.345, 2, "8.35"],
    [0.5, 0, "1"],
    [2.5, 0, "3"],
    [-2.5, 0, "-3"],
    [2.4999, 0, "2"],
    [9.995, 2, "10.00"],
    [999.96, 1, "1000.0"],
    [101325, 0, "101325"],
    [101325, 2, "101325.00"],
    [1e-9, 6, "0.000000"],
    [5e-7, 6, "0.000001"],
    [0.1 + 0.2, 1, "0.3"],
    [0.30000000000000004, 15, "0.300000000000000"],
    [123456789012345680, 0, "123456789012345680"],
    [5e-324, 3, "0.000"],
  ])("prints %d with %d digits as %s", (value, digits, expected) => {
    expect(formatNumber(value, digits)).toBe(expected);
  });

  it("rounds as decimal arithmetic does with the fifteen digits of the number", () => {
    const values = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(values, fc.integer({ min: 0, max: 6 }), (value, digits) => {
        const fifteen = new Decimal(value.toPrecision(15));
        const rounded = fifteen.toDecimalPlaces(digits, Decimal.ROUND_HALF_UP);
        expect(formatNumber(value, digits)).toBe(
          rounded.isZero() ? rounded.abs().toFixed(digits) : rounded.toFixed(digits),
        );
      }),
    );
  });

  it("prints a decimal half away from zero", () => {
    const halves = fc.tuple(fc.integer({ min: -99999, max: 99999 }), fc.integer({ min: 0, max: 4 }));
    fc.assert(
      fc.property(halves, ([whole, digits]) => {
        const half = new Decimal(whole).plus(whole < 0 ? -0.5 : 0.5).times(new Decimal(10).pow(-digits));
        expect(formatNumber(half.toNumber(), digits)).toBe(
          half.toDecimalPlaces(digits, Decimal.ROUND_UP).toFixed(digits),
        );
      }),
    );
  });

  it.each([-1, 0.5, 16, Number.NaN, Number.POSITIVE_INFINITY, "2" as unknown as number])(
    "refuses %s digits",
    (digits) => {
      expect(() => formatNumber(1, digits)).toThrow(InputError);
    },
  );

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("refuses %d", (value) => {
    expect(() => formatNumber(value, 1)).toThrow("value: expected a finite number");
  });
});

describe("printing with a unit", () => {
  it("writes number, blank, symbol", () => {
    expect(formatTemperature(celsius(40), { unit: "celsius", digits: 1 })).toBe("40.0 °C");
    expect(formatTemperature(fahrenheit(-40), { unit: "celsius", digits: 0 })).toBe("-40 °C");
    expect(formatMass(gram(850), { unit: "kilogram", digits: 3 })).toBe("0.850 kg");
    expect(formatTemperatureDifference(kelvinDifference(5), { unit: "fahrenheit", digits: 1 })).toBe(
      "9.0 °F",
    );
  });

  it("says which pressure it is", () => {
    expect(formatPressure(bar(9.5), { unit: "bar", digits: 2 })).toBe("9.50 bar abs");
    expect(formatPressure(psi(14.7), { unit: "psi", digits: 1 })).toBe("14.7 psi abs");
    expect(formatGaugePressure(barGauge(-0.2), { unit: "kilopascal", digits: 1 })).toBe("-20.0 kPa gauge");
    expect(formatPressureDifference(micronDifference(120), { unit: "micron", digits: 0 })).toBe("120 micron");
  });

  it("leaves the kind out where the scale is absolute by nature", () => {
    expect(formatPressure(micron(500), { unit: "micron", digits: 0 })).toBe("500 micron");
    expect(formatPressure(bar(1), { unit: "torr", digits: 1 })).toBe("750.1 Torr");
  });

  it("never prints a negative zero, though the conversion leaves a trace below it", () => {
    expect(formatTemperature(fahrenheit(31.9999999), { unit: "celsius", digits: 1 })).toBe("0.0 °C");
  });

  it("refuses an unknown unit, also one that every object seems to have", () => {
    for (const unit of ["furlong", "constructor", "__proto__"]) {
      expect(() => formatMass(1, { unit: unit as "gram", digits: 0 })).toThrow(
        "unit: expected one of kilogram, gram, pound, ounce",
      );
    }
    expect(() => formatGaugePressure(0, { unit: "torr" as "bar", digits: 0 })).toThrow(InputError);
  });

  it("refuses a value that cannot be", () => {
    expect(() => formatTemperature(-1, { unit: "kelvin", digits: 0 })).toThrow(InputError);
    expect(() => formatPressure(Number.NaN, { unit: "bar", digits: 0 })).toThrow(InputError);
  });
});
