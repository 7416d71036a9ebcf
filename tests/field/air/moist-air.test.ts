import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type MoistAirInput, moistAir, tryMoistAir, waterVapourPressure } from "../../../src/field/index.js";
import { celsius, type InputError, OutOfRangeError } from "../../../src/units/index.js";
import { share } from "../../support/states.js";
import { trackWorst } from "../../support/worst.js";

const seaLevel = 101325;
const saturated = (t: number) => moistAir({ dryBulb: celsius(t), relativeHumidity: 1, pressure: seaLevel });

describe("moist air", () => {
  /*
   * Saturated moist air at 101.325 kPa of ASHRAE Handbook Fundamentals, chapter 1, table 2 (recalled): [°C, W, h in
   * kJ/kg]. The table counts that air and vapour are not quite ideal: saturated air holds more by the enhancement factor
   * f, here f = 1.00062 + 3.14e-8 p + 5.6e-7 t² of Picard, A., et al., Metrologia 45 (2008) 149 (recalled). With
   * p_w = f p_ws the table's humidity ratio comes out to its last digit.
   */
  const table: readonly (readonly [number, string, number])[] = [
    [10, "0.007661", 29.35],
    [20, "0.014758", 57.55],
  ];

  it.each(table)(
    "saturated at %f °C holds what the table prints, but for the enhancement factor",
    (t, printed) => {
      const { humidityRatio, vapourPressure } = saturated(t);
      expect(vapourPressure).toBeWithin(waterVapourPressure(celsius(t)), 1e-12);
      const f = 1.00062 + 3.14e-8 * seaLevel + 5.6e-7 * t * t;
      const enhanced = (f * (seaLevel - vapourPressure)) / (seaLevel - f * vapourPressure);
      expect(humidityRatio * enhanced).toRoundTo(printed);
      // So much is what ideal gases leave out.
      expect(Number(printed) / humidityRatio - 1).toBeGreaterThan(0.0038);
      expect(Number(printed) / humidityRatio - 1).toBeLessThan(0.0042);
    },
  );

  it.each(table)(
    "saturated at %f °C has the enthalpy of the table at the table's humidity",
    (t, printed, h) => {
      // Enthalpy is linear in W: carried from our saturated air to the table's. The formula's heat capacities, 1.006 and
      // 1.86, are rounded and the table's are not; that leaves up to 0.03 kJ/kg.
      const [dry, wet] = [0, saturated(t).humidityRatio].map((humidityRatio) =>
        moistAir({ dryBulb: celsius(t), humidityRatio, pressure: seaLevel }),
      );
      const slope = (wet!.enthalpy - dry!.enthalpy) / wet!.humidityRatio;
      const carried = (dry!.enthalpy + slope * Number(printed)) / 1e3;
      expect(Math.abs(carried - h)).toBeLessThan(0.03);
      // Without it, ours is lower by what 0.4 % of the vapour hold.
      expect(wet!.enthalpy / 1e3).toBeWithin(h, 0.0025);
    },
  );

  it("of 0 % is dry: density of dry air, no dew point", () => {
    const air = moistAir({ dryBulb: celsius(20), relativeHumidity: 0, pressure: seaLevel });
    expect(air.dewPoint).toBeUndefined();
    expect(air.humidityRatio).toBe(0);
    // ρ = p M/(R T) with M = 28.966 g/mol and R = 8.314462618 J/(mol K); the printed 0.287042 has six digits.
    expect(air.density).toBeWithin((seaLevel * 28.966e-3) / (8.314462618 * 293.15), 1e-5);
    expect(air.enthalpy).toBeWithin(20120, 1e-12);
    expect(air.wetBulb).toBeLessThan(celsius(20));
  });

  it("of next to nothing counts as dry", () => {
    const air = moistAir({ dryBulb: celsius(20), relativeHumidity: 1e-60, pressure: seaLevel });
    expect(air.dewPoint).toBeUndefined();
    expect(
      moistAir({ dryBulb: celsius(20), humidityRatio: 1e-30, pressure: seaLevel }).dewPoint,
    ).toBeLessThan(80);
  });

  it("dew point, wet bulb and dry bulb are one when it is saturated", () => {
    for (const t of [-30, -5, 0.5, 15, 40]) {
      const { dryBulb, wetBulb, dewPoint } = saturated(t);
      expect(wetBulb).toBeWithin(dryBulb, 1e-12);
      expect(dewPoint).toBeWithin(dryBulb, 1e-12);
    }
  });

  it("thinner air holds more water at the same wet bulb", () => {
    const at = (pressure: number) =>
      moistAir({ dryBulb: celsius(27), wetBulb: celsius(19), pressure }).humidityRatio;
    expect(at(80e3)).toBeGreaterThan(1.25 * at(seaLevel));
  });

  it("below 0 °C the wick carries ice", () => {
    const ice = moistAir({ dryBulb: celsius(1), wetBulb: celsius(-1), pressure: seaLevel });
    expect(ice.assumptions.join(" ")).toMatch(/ice/);
    expect(saturated(-5).assumptions.join(" ")).toMatch(/over ice/);
    expect(saturated(5).assumptions.join(" ")).not.toMatch(/ice/);
    // At 0 °C the two equations do not meet: water leaves ice with 2830 kJ/kg and liquid with 2501, so the same cooling of
    // the wick means that less of it went, into wetter air: by 1.006 · 5 (1/2501 − 1/2830) = 2.3e-4 at 5 °C.
    const at = (t: number) =>
      moistAir({ dryBulb: celsius(5), wetBulb: celsius(t), pressure: seaLevel }).humidityRatio;
    expect(at(-1e-6) - at(0)).toBeGreaterThan(2e-4);
    expect(at(-1e-6) - at(0)).toBeLessThan(2.5e-4);
  });

  it("explains itself", () => {
    const { because } = moistAir({ dryBulb: celsius(27), relativeHumidity: 0.5, pressure: seaLevel });
    expect(because).toMatch(/^relative humidity 50 % at 27 °C and 101300 Pa: 11\.15 g of water and 55\.6 kJ/);
  });
});

describe("refusals of moist air", () => {
  const air = { dryBulb: celsius(27), wetBulb: celsius(19), pressure: seaLevel };
  const { wetBulb: _wetBulb, ...bare } = air;

  it.each<[string, unknown, string[]]>([
    ["no input", undefined, [""]],
    ["null", null, [""]],
    ["a list", [], ["dryBulb", "pressure", ""]],
    ["no humidity", bare, [""]],
    ["two humidities", { ...air, relativeHumidity: 0.5 }, [""]],
    ["air pressure in hPa", { ...air, pressure: 1013 }, ["pressure"]],
    ["no air pressure", { dryBulb: 300, wetBulb: 290 }, ["pressure"]],
    ["numbers that are none", { ...air, dryBulb: Number.NaN }, ["dryBulb"]],
    [
      "nothing that is one",
      { dryBulb: -1, wetBulb: Number.NaN, pressure: "1 atm" },
      ["dryBulb", "pressure", "wetBulb"],
    ],
    ["a wet bulb that is none", { ...air, wetBulb: Number.NaN }, ["wetBulb"]],
    ["a wet bulb above the dry one", { ...air, wetBulb: celsius(27.1) }, ["wetBulb"]],
    // Dry air of 27 °C brings a wick to 8.6 °C.
    ["a wet bulb colder than in dry air", { ...air, wetBulb: celsius(8) }, ["wetBulb"]],
    ["a wet bulb far colder", { ...air, wetBulb: 40 }, ["wetBulb"]],
    ["a boiling wick", { dryBulb: celsius(88), wetBulb: celsius(80), pressure: 40e3 }, ["wetBulb"]],
    ["per cent", { ...bare, relativeHumidity: 50 }, ["relativeHumidity"]],
    ["a humidity below 0", { ...bare, relativeHumidity: -0.01 }, ["relativeHumidity"]],
    ["a humidity as text", { ...bare, relativeHumidity: "0.5" }, ["relativeHumidity"]],
    [
      "more vapour than air",
      { dryBulb: celsius(88), relativeHumidity: 0.9, pressure: 40e3 },
      ["relativeHumidity"],
    ],
    ["more water than air holds", { ...bare, humidityRatio: 0.025 }, ["humidityRatio"]],
    ["less than no water", { ...bare, humidityRatio: -1e-6 }, ["humidityRatio"]],
  ])("%s", (_what, input, paths) => {
    const outcome = tryMoistAir(input as MoistAirInput);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect((outcome.error as InputError).problems.map(({ path }) => path)).toEqual(paths);
  });

  it("air out of the range of the equations", () => {
    for (const t of [-60.1, 90.1]) {
      const outcome = tryMoistAir({ dryBulb: celsius(t), humidityRatio: 0, pressure: seaLevel });
      expect(outcome.ok ? "" : outcome.error).toBeInstanceOf(OutOfRangeError);
    }
    for (const t of [-60, 90]) {
      expect(tryMoistAir({ dryBulb: celsius(t), humidityRatio: 0, pressure: seaLevel }).ok).toBe(true);
    }
  });
});

describe("any moist air", () => {
  const worst = trackWorst("moist air");

  it("comes back from each of its humidities, its temperatures in order", () => {
    fc.assert(
      fc.property(share(), share(), share(), (u, v, w) => {
        const dryBulb = celsius(-50 + 130 * u);
        const pressure = 60e3 + 50e3 * v;
        const air = moistAir({ dryBulb, relativeHumidity: w, pressure });
        const { wetBulb, dewPoint, humidityRatio } = air;
        const where = `${dryBulb} K, ${100 * w} %, ${pressure} Pa`;
        const scale = moistAir({ dryBulb, relativeHumidity: 1, pressure }).humidityRatio;
        for (const again of [
          moistAir({ dryBulb, wetBulb, pressure }),
          moistAir({ dryBulb, humidityRatio, pressure }),
        ]) {
          worst("W", Math.abs(again.humidityRatio - humidityRatio) / scale, 1e-10, where);
          worst("relative humidity", Math.abs(again.relativeHumidity - w), 1e-10, where);
          worst("wet bulb", Math.abs(again.wetBulb / wetBulb - 1), 1e-11, where);
        }
        worst("wet bulb above dry", Math.max(0, wetBulb - dryBulb), 0, where);
        if (dewPoint !== undefined) worst("dew above wet", Math.max(0, dewPoint / wetBulb - 1), 1e-12, where);
        worst(
          "m = ρ V",
          Math.abs((air.density * air.specificVolume) / (1 + humidityRatio) - 1),
          1e-14,
          where,
        );
      }),
      { numRuns: 500 },
    );
  });
});
