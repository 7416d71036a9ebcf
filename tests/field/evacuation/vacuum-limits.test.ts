import { describe, expect, it } from "vitest";
import {
  dryVacuumTarget,
  publishedVacuumLimit,
  publishedVacuumLimits,
  tryDryVacuumTarget,
  tryPublishedVacuumLimit,
  tryVacuumLimitOutdoors,
  VACUUM_RULES,
  type VacuumRule,
  vacuumLimitOutdoors,
  waterBoilingTemperature,
} from "../../../src/field/index.js";
import { celsius, hour, inCelsius, micron, minute, OutOfRangeError, torr } from "../../../src/units/index.js";
import { refusedPaths } from "./refused-paths.js";

describe("published vacuum limits", () => {
  it("are as printed", () => {
    // IEC/UL 60335-2-40 as worded in a printed installation manual: 500 micron, 1500 micron after ten minutes.
    const appliance = publishedVacuumLimit("iec-60335-2-40");
    expect(appliance.pressure).toBeWithin(micron(500), 1e-8);
    expect(appliance.rise!.pressure).toBeWithin(micron(1500), 1e-8);
    expect(appliance.rise!.after).toBe(minute(10));
    // EN 378-2 (from memory).
    expect(publishedVacuumLimit("en-378-2")).toMatchObject({ pressure: 270, rise: null, status: "recalled" });
    // Printed installation manuals: −755 mmHg, 5 Torr, for an hour.
    expect(publishedVacuumLimit("five-torr-manuals").pressure).toBeWithin(torr(5), 1e-8);
    expect(publishedVacuumLimit("five-torr-manuals").pumpingTime).toBe(hour(1));
  });

  it("are all well described, one for each rule", () => {
    expect(publishedVacuumLimits().map(({ rule }) => rule)).toEqual(VACUUM_RULES);
    for (const limit of publishedVacuumLimits()) {
      expect(limit.pressure).toBeGreaterThan(0);
      expect(limit.source).not.toBe("");
      expect(["read", "recalled"]).toContain(limit.status);
      if (limit.rise !== null) expect(limit.rise.pressure).toBeGreaterThan(limit.pressure);
    }
  });

  it("of 5 Torr leaves water in parts below 1.2 °C", () => {
    expect(inCelsius(waterBoilingTemperature(publishedVacuumLimit("five-torr-manuals").pressure))).toBeWithin(
      1.2,
      0.01,
    );
  });

  it.each([undefined, null, "", "none", 7, {}])("refuse %j as a rule", (rule) => {
    expect(refusedPaths(tryPublishedVacuumLimit(rule as VacuumRule))).toEqual(["rule"]);
  });
});

describe("by the temperature outdoors", () => {
  it.each([
    // Printed installation manual: above 20 °C 1000 Pa 1 h; 10 °C 600 Pa 1 h; 0 °C 250 Pa 2 h; −10 °C 200 Pa 3 h.
    [35, 1000, 1],
    [20.1, 1000, 1],
    [20, 600, 1],
    [10, 600, 1],
    [9.9, 250, 2],
    [0, 250, 2],
    [-0.1, 200, 3],
    [-10, 200, 3],
  ])("%f °C: %f Pa for %f h", (degrees, pressure, hours) => {
    const limit = vacuumLimitOutdoors(celsius(degrees));
    expect(limit).toMatchObject({ pressure, pumpingTime: hour(hours) });
    expect(limit.rowTemperature).toBeLessThanOrEqual(celsius(degrees));
    expect(limit.because).toContain(`${pressure} Pa`);
  });

  it("refuses what is colder than the manual prints, with the reason", () => {
    const outcome = tryVacuumLimitOutdoors(celsius(-10.1));
    if (outcome.ok) throw new Error("nothing was refused");
    expect(outcome.error).toBeInstanceOf(OutOfRangeError);
    expect(outcome.error.message).toMatch(/nothing colder/);
    expect(outcome.error).toMatchObject({ minimum: 263.15, value: celsius(-10.1) });
  });

  it.each([undefined, null, "7", Number.NaN, -5, {}, []])("refuses %j as a temperature", (temperature) => {
    expect(refusedPaths(tryVacuumLimitOutdoors(temperature as number))).toEqual(["outdoorTemperature"]);
  });
});

describe("dry vacuum", () => {
  it("is half the vapour pressure of water or ice at the coldest part", () => {
    // 2339.2 Pa at 20 °C (IAPWS R7-97), 103.239 Pa over ice at −20 °C (IAPWS R14-08).
    expect(dryVacuumTarget(celsius(20))).toBeWithin(2339.2148 / 2, 1e-6);
    expect(dryVacuumTarget(celsius(-20))).toBeWithin(103.23903 / 2, 1e-6);
  });

  it("is kept by every printed row but that of −10 °C, as the note of the row says", () => {
    for (const degrees of [20, 10, 0]) {
      const row = vacuumLimitOutdoors(celsius(degrees));
      expect(row.pressure).toBeLessThanOrEqual(dryVacuumTarget(row.rowTemperature));
    }
    const coldest = vacuumLimitOutdoors(celsius(-10));
    expect(coldest.pressure).toBeGreaterThan(dryVacuumTarget(celsius(-10)));
    expect(coldest.pressure).toBeLessThan(2 * dryVacuumTarget(celsius(-10)));
    expect(coldest.note).toContain("half");
  });

  it("refuses temperatures that water has no vapour pressure at", () => {
    expect(tryDryVacuumTarget(celsius(5)).ok).toBe(true);
    for (const bad of [20, 700, Number.NaN]) expect(() => dryVacuumTarget(bad)).toThrow(OutOfRangeError);
    expect(refusedPaths(tryDryVacuumTarget("5" as unknown as number))).toEqual(["temperature"]);
  });
});
