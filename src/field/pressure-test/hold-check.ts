import data from "../../../data/field/nitrogen-hold.json" with { type: "json" };
import { InputCheck, requireObject } from "../../units/index.js";
import { checkGauge, checkReading, checkThermometer } from "../measurement/instrument-checks.js";
import { shown } from "../measurement/shown.js";
import { checkAtmosphere } from "../measurement/site.js";
import type { NitrogenHold } from "./nitrogen-hold.js";

/** Judges the input of a hold test, all problems at once. */
export function checkNitrogenHold(hold: NitrogenHold): void {
  requireObject("", hold, "a hold test");
  const check = new InputCheck();
  const { nitrogen, readings, gauge, maximumAllowablePressure: PS } = hold;
  check.require(
    nitrogen?.designation === "R-728",
    "nitrogen",
    nitrogen?.designation ?? nitrogen,
    "nitrogen, R-728: hold tests are made with dry nitrogen only",
  );
  checkGauge(check, "gauge", gauge);
  check.require(
    gauge?.resolution !== undefined,
    "gauge.resolution",
    gauge?.resolution,
    "the smallest step that can be read, Pa: the test rests on it",
  );
  checkThermometer(check, "thermometer", hold.thermometer);
  checkAtmosphere(check, "atmosphere", hold.atmosphere);
  const isLimitKnown = check.positive("maximumAllowablePressure", PS);
  if (hold.requiredDuration !== undefined) check.positive("requiredDuration", hold.requiredDuration);
  if (hold.internalVolume !== undefined) check.positive("internalVolume", hold.internalVolume);
  if (
    check.require(
      Array.isArray(readings) && readings.length >= 2,
      "readings",
      readings,
      "two readings or more",
    )
  ) {
    const highest = data.strengthTest.factor * PS;
    for (const [index, reading] of readings.entries()) {
      const path = `readings[${index}]`;
      check.finite(`${path}.time`, reading?.time);
      const before = readings[index - 1]?.time;
      if (before !== undefined) {
        check.require(reading?.time > before, `${path}.time`, reading?.time, `later than ${before} s`);
      }
      if (gauge?.accuracy !== undefined) checkReading(check, `${path}.pressure`, reading?.pressure, gauge);
      check.require(
        !(reading?.pressure <= 0),
        `${path}.pressure`,
        reading?.pressure,
        "a pressure above the atmosphere",
      );
      if (isLimitKnown) {
        check.require(
          !(reading?.pressure > highest),
          `${path}.pressure`,
          reading?.pressure,
          `at most ${data.strengthTest.factor} PS = ${shown(highest)} Pa: release pressure now`,
        );
      }
      check.positive(`${path}.pipeTemperature`, reading?.pipeTemperature);
      if (reading?.atmosphere !== undefined) checkAtmosphere(check, `${path}.atmosphere`, reading.atmosphere);
    }
  }
  check.finish();
}
