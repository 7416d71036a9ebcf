import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  altitudeAtPressure,
  attempt,
  geometricAltitude,
  geopotentialAltitude,
  hectopascal,
  type InputError,
  inCentimetreOfMercury,
  inchOfMercury,
  inInchOfMercury,
  inKilopascal,
  localAtmosphere,
  OutOfRangeError,
  pressureAtAltitude,
  type SiteAtmosphere,
  stationPressure,
  tryAltitudeAtPressure,
  tryLocalAtmosphere,
  tryPressureAtAltitude,
  tryStationPressure,
} from "../../src/units/index.js";
import "../support/fuzz-seed.js";

const altitudes = fc.double({ min: -5000, max: 11000, noNaN: true });
const heights = fc.double({ min: -450, max: 6000, noNaN: true });

describe("standard atmosphere", () => {
  // ISO 2533:1975, Standard Atmosphere, table by geopotential altitude; hPa as printed, from memory, not re-read.
  it.each([
    [-1000, "1139.29"],
    [0, "1013.25"],
    [1000, "898.75"],
    [2000, "794.95"],
    [3000, "701.09"],
    [5000, "540.20"],
    [11000, "226.32"],
  ])("has at %d m the pressure of the table, %s hPa", (altitude, printed) => {
    expect(pressureAtAltitude(altitude) / 100).toRoundTo(printed);
  });

  // Worked out beforehand from the same formula: shows that units and rounding fit together, not that the formula is right.
  it.each([
    [0, "101.325", "76.00", "29.92", "0.00"],
    [500, "95.461", "71.60", "28.19", "5.86"],
    [1000, "89.875", "67.41", "26.54", "11.45"],
    [1500, "84.556", "63.42", "24.97", "16.77"],
    [2000, "79.495", "59.63", "23.47", "21.83"],
    [2500, "74.683", "56.02", "22.05", "26.64"],
    [3000, "70.109", "52.59", "20.70", "31.22"],
    [4000, "61.640", "46.23", "18.20", "39.68"],
  ])(
    "at %d m is %s kPa, the deepest vacuum %s cmHg or %s inHg, and %s kPa less than at sea level",
    (altitude, kPa, cmHg, inHg, missing) => {
      const pressure = pressureAtAltitude(altitude);
      expect(inKilopascal(pressure)).toRoundTo(kPa);
      expect(inCentimetreOfMercury(pressure)).toRoundTo(cmHg);
      expect(inInchOfMercury(pressure)).toRoundTo(inHg);
      expect(inKilopascal(101325 - pressure)).toRoundTo(missing);
    },
  );

  it("obeys the hydrostatic equation dp/dH = −g p/(R T), integrated step by step", () => {
    // Fourth-order Runge–Kutta from sea level, 10 m steps: a second route that does not know the closed form.
    const slope = (H: number, p: number) => (-9.80665 * p) / (287.05287 * (288.15 - 0.0065 * H));
    for (const step of [10, -10]) {
      let p = 101325;
      for (let H = 0; Math.abs(H) < (step > 0 ? 11000 : 5000); H += step) {
        const k1 = slope(H, p);
        const k2 = slope(H + step / 2, p + (step / 2) * k1);
        const k3 = slope(H + step / 2, p + (step / 2) * k2);
        const k4 = slope(H + step, p + step * k3);
        p += (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
        expect(pressureAtAltitude(H + step)).toBeWithin(p, 1e-11);
      }
    }
  });

  it("agrees with the rough rule of 1 inHg less per 1000 ft near the ground (common practice, no source)", () => {
    for (const thousands of [1, 2, 3, 4, 5]) {
      const missing = (101325 - pressureAtAltitude(thousands * 304.8)) / inchOfMercury(1);
      expect(Math.abs(missing - thousands)).toBeLessThan(0.1 * thousands);
    }
  });

  it("falls all the way up", () => {
    fc.assert(
      fc.property(altitudes, altitudes, (a, b) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        expect(pressureAtAltitude(Math.min(a, b))).toBeGreaterThan(pressureAtAltitude(Math.max(a, b)));
      }),
    );
  });

  it("altitude and pressure undo each other over the whole layer", () => {
    fc.assert(
      fc.property(altitudes, (altitude) => {
        // At the ends the pressure may round out of the layer: stay a hair inside.
        const inside = altitude * (1 - 1e-12);
        // One unit in the last place of (p/p₀)^(1/n) is 1e-11 m.
        expect(Math.abs(altitudeAtPressure(pressureAtAltitude(inside)) - inside)).toBeLessThan(1e-9);
      }),
    );
    expect(altitudeAtPressure(pressureAtAltitude(11000))).toBeWithin(11000, 1e-12);
    expect(altitudeAtPressure(pressureAtAltitude(-5000))).toBeWithin(-5000, 1e-12);
  });

  it("geometric and geopotential altitude undo each other, and differ by 0.16 m at 1000 m", () => {
    fc.assert(
      fc.property(altitudes, (altitude) => {
        const inside = altitude * (1 - 1e-12);
        expect(Math.abs(geopotentialAltitude(geometricAltitude(inside)) - inside)).toBeLessThan(1e-8);
      }),
    );
    // h²/(r + h) = 1e6/6357766.
    expect(1000 - geopotentialAltitude(1000)).toBeWithin(0.15728796, 1e-7);
    expect(geopotentialAltitude(0)).toBe(0);
  });

  it("refuses to leave the layer, with the limits as data", () => {
    for (const outside of [-5000.001, 11000.001, 1e9, -1e9, -6356766, -7e6]) {
      expect(() => pressureAtAltitude(outside)).toThrow(OutOfRangeError);
      expect(() => geometricAltitude(outside)).toThrow(OutOfRangeError);
      expect(() => stationPressure(101325, outside)).toThrow(OutOfRangeError);
    }
    for (const outside of [-5010, 11030, 1e9, -1e9, -6356766, -7e6]) {
      expect(() => geopotentialAltitude(outside)).toThrow(OutOfRangeError);
    }
    expect(tryPressureAtAltitude(12000)).toMatchObject({
      ok: false,
      error: { code: "out-of-range", value: 12000, minimum: -5000, maximum: 11000, unit: "m" },
    });
    const minimum = pressureAtAltitude(11000);
    const maximum = pressureAtAltitude(-5000);
    for (const value of [0, -1, minimum * (1 - 1e-12), maximum * (1 + 1e-12)]) {
      expect(tryAltitudeAtPressure(value)).toMatchObject({
        ok: false,
        error: { code: "out-of-range", value, minimum, maximum, unit: "Pa" },
      });
    }
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, "5", null, undefined])("refuses %s", (bad) => {
    const value = bad as number;
    for (const outcome of [
      tryPressureAtAltitude(value),
      tryAltitudeAtPressure(value),
      tryStationPressure(value, 0),
      tryStationPressure(101325, value),
      attempt(() => geopotentialAltitude(value)),
      attempt(() => geometricAltitude(value)),
    ]) {
      expect(outcome).toMatchObject({ ok: false, error: { code: "malformed-input" } });
    }
  });
});

describe("station pressure from the pressure at sea level", () => {
  it("is that of the standard atmosphere for 1013.25 hPa, and the report itself at sea level", () => {
    fc.assert(
      fc.property(altitudes, (altitude) => {
        expect(stationPressure(101325, altitude)).toBeWithin(pressureAtAltitude(altitude), 1e-14);
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: 85e3, max: 110e3, noNaN: true }), (pressure) => {
        expect(stationPressure(pressure, 0)).toBeWithin(pressure, 1e-14);
      }),
    );
  });

  it("shifts the altitude: H(p_station) − H(p_sea) = H, the way altimeters are set", () => {
    fc.assert(
      fc.property(fc.double({ min: 95e3, max: 105e3, noNaN: true }), heights, (sea, altitude) => {
        const shift = altitudeAtPressure(stationPressure(sea, altitude)) - altitudeAtPressure(sea);
        expect(Math.abs(shift - altitude)).toBeLessThan(1e-8);
      }),
    );
  });

  it("refuses what was never seen at sea level, such as hPa given as Pa", () => {
    for (const bad of [1013.25, 84999, 110001, -101325, 0]) {
      expect(() => stationPressure(bad, 100)).toThrow(
        "seaLevelPressure: expected an absolute air pressure in Pa, 85000",
      );
    }
  });
});

const ROOT3 = 1.7320508075688772;

describe("localAtmosphere", () => {
  it("from altitude: the standard atmosphere, ±3 kPa rectangular (common practice, no source)", () => {
    const site = localAtmosphere({ from: "altitude", altitude: 1500 });
    expect(site.pressure).toBe(pressureAtAltitude(geopotentialAltitude(1500)));
    expect(site.standardUncertainty).toBeWithin(3000 / ROOT3, 1e-15);
    expect(site.because).toBe(
      "standard atmosphere of ISO 2533, 1500 m above sea level: 84.56 kPa, ±3.00 kPa (rectangular; common practice, no source)",
    );
  });

  it("from a barometer on the spot: as read, ±0.2 kPa (common practice, no source)", () => {
    const site = localAtmosphere({ from: "station-barometer", pressure: hectopascal(846) });
    expect(site.pressure).toBe(84600);
    expect(site.standardUncertainty).toBeWithin(200 / ROOT3, 1e-15);
    expect(site.because).toBe(
      "read on a barometer on the spot: 84.60 kPa, ±0.20 kPa (rectangular; common practice, no source)",
    );
  });

  it("from a pressure at sea level: taken up to the site, surer the lower it lies (common practice, no source)", () => {
    const site = localAtmosphere({
      from: "sea-level-barometer",
      pressure: hectopascal(1020),
      altitude: 1500,
    });
    expect(site.pressure).toBe(stationPressure(102000, geopotentialAltitude(1500)));
    // By hand: 85.14 kPa · 9.80665 · 1499.6 / (287.05287 · 288.15) · 20/288.15 = 1.051 kPa, and 0.2 kPa of the report.
    expect(site.standardUncertainty * ROOT3).toBeWithin(1251, 1e-3);
    expect(site.because).toBe(
      "102.00 kPa at sea level taken up by ISO 2533 to 1500 m above sea level: 85.14 kPa, ±1.25 kPa (rectangular; common practice, no source)",
    );
    const low = localAtmosphere({ from: "sea-level-barometer", pressure: hectopascal(1020), altitude: 0 });
    expect(low.standardUncertainty).toBeWithin(200 / ROOT3, 1e-15);
  });

  it("takes no field that it does not know: a misspelt half-width would be lost", () => {
    const site = { from: "altitude", altitude: 0, halfwidth: 100 } as never;
    expect(() => localAtmosphere(site)).toThrow(/halfwidth: expected no such field/);
  });

  it("believes a half-width that is given, and says so", () => {
    const site = localAtmosphere({ from: "altitude", altitude: 0, halfWidth: 1000 });
    expect(site.standardUncertainty).toBeWithin(1000 / ROOT3, 1e-15);
    expect(site.because).toContain("±1.00 kPa (rectangular; as given)");
    expect(
      localAtmosphere({ from: "station-barometer", pressure: 1e5, halfWidth: 0 }).standardUncertainty,
    ).toBe(0);
  });

  it("all three agree on a day of standard weather", () => {
    fc.assert(
      fc.property(heights, (altitude) => {
        const { pressure } = localAtmosphere({ from: "altitude", altitude });
        const reduced = localAtmosphere({ from: "sea-level-barometer", pressure: 101325, altitude });
        expect(reduced.pressure).toBeWithin(pressure, 1e-13);
        expect(localAtmosphere({ from: "station-barometer", pressure }).pressure).toBe(pressure);
      }),
    );
  });

  it.each([
    [{ from: "altitude" }, ["altitude"]],
    [{ from: "altitude", altitude: Number.NaN, halfWidth: -1 }, ["altitude", "halfWidth"]],
    [{ from: "station-barometer" }, ["pressure"]],
    [{ from: "station-barometer", pressure: 1013 }, ["pressure"]],
    [{ from: "station-barometer", pressure: 760 }, ["pressure"]],
    [{ from: "station-barometer", pressure: 29999 }, ["pressure"]],
    [{ from: "station-barometer", pressure: 160001 }, ["pressure"]],
    [{ from: "station-barometer", pressure: 1e5, halfWidth: Number.NaN }, ["halfWidth"]],
    [{ from: "sea-level-barometer", pressure: 1020, altitude: "1500" }, ["pressure", "altitude"]],
    [
      { from: "sea-level-barometer", pressure: Number.NaN, altitude: 0, halfWidth: "1" },
      ["pressure", "halfWidth"],
    ],
    [{ from: "the sky" }, ["from"]],
    [{}, ["from"]],
    [null, [""]],
    [undefined, [""]],
    ["sea level", [""]],
  ])("refuses %j, listing all that is wrong", (site, paths) => {
    const outcome = tryLocalAtmosphere(site as SiteAtmosphere);
    expect(outcome.ok).toBe(false);
    const problems = outcome.ok ? [] : (outcome.error as InputError).problems;
    expect(problems.map(({ path }) => path)).toEqual(paths);
  });

  it("takes the plausible ends of a station barometer: 9000 m up and 4000 m down", () => {
    expect(pressureAtAltitude(9000)).toBeGreaterThan(30e3);
    expect(pressureAtAltitude(-4000)).toBeLessThan(160e3);
    expect(tryLocalAtmosphere({ from: "station-barometer", pressure: 30e3 }).ok).toBe(true);
    expect(tryLocalAtmosphere({ from: "station-barometer", pressure: 160e3 }).ok).toBe(true);
  });

  it("refuses an altitude outside the layer", () => {
    expect(() => localAtmosphere({ from: "altitude", altitude: 20000 })).toThrow(OutOfRangeError);
    expect(() => localAtmosphere({ from: "sea-level-barometer", pressure: 1e5, altitude: 20000 })).toThrow(
      OutOfRangeError,
    );
  });
});
