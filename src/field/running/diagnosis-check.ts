import { InputCheck, requireObject } from "../../units/index.js";
import type { RunningUnit } from "./diagnosis.js";
import { METERING_DEVICES } from "./metering-device.js";
import type { JudgedReading } from "./reading-level.js";

const READING_NAMES = [
  "superheat",
  "subcooling",
  "condensingSplit",
  "evaporatingPressure",
  "evaporatingSplit",
  "dischargeTemperature",
  "airTemperatureDrop",
] as const;

const KNOWN = ["yes", "no", "unknown"];

/** Judges the description of a running unit, all problems at once. */
export function checkDiagnosis(unit: RunningUnit): void {
  requireObject("", unit, "a running unit");
  const check = new InputCheck();
  check.oneOf("meteringDevice", unit.meteringDevice, METERING_DEVICES);
  check.oneOf("mode", unit.mode, ["cooling", "heating"]);
  checkReadings(check, unit);
  checkConditions(check, unit);
  check.finish();
}

function checkReadings(check: InputCheck, { readings }: RunningUnit): void {
  const expected = `one or more of ${READING_NAMES.join(", ")}`;
  const isObject = typeof readings === "object" && readings !== null && !Array.isArray(readings);
  if (!check.require(isObject, "readings", readings, expected)) return;
  const given = Object.entries(readings).filter(([, reading]) => reading !== undefined);
  check.require(given.length > 0, "readings", readings, expected);
  for (const [name, reading] of given) {
    const path = `readings.${name}`;
    // A misspelt reading would be lost without a word.
    if (check.require((READING_NAMES as readonly string[]).includes(name), path, reading, expected)) {
      checkReading(check, path, reading as JudgedReading);
    }
  }
  check.require(
    readings.evaporatingPressure === undefined || readings.evaporatingSplit === undefined,
    "readings.evaporatingSplit",
    readings.evaporatingSplit,
    "evaporatingPressure or evaporatingSplit, not both: they are one reading",
  );
}

function checkReading(check: InputCheck, path: string, reading: JudgedReading): void {
  check.finite(`${path}.value`, reading?.value);
  check.notNegative(`${path}.expandedUncertainty`, reading?.expandedUncertainty);
  const limits = reading?.limits;
  const { minimum, maximum } = limits ?? {};
  check.require(
    minimum !== undefined || maximum !== undefined,
    `${path}.limits`,
    limits,
    "the target: a minimum, a maximum or both",
  );
  if (minimum !== undefined) check.finite(`${path}.limits.minimum`, minimum);
  if (maximum !== undefined) check.finite(`${path}.limits.maximum`, maximum);
  if (minimum !== undefined && maximum !== undefined) {
    check.require(
      !(minimum > maximum),
      `${path}.limits.minimum`,
      minimum,
      `not above the maximum, ${maximum}`,
    );
  }
}

function checkConditions(check: InputCheck, { conditions }: RunningUnit): void {
  if (conditions?.steadyFor !== "unknown") check.notNegative("conditions.steadyFor", conditions?.steadyFor);
  if (conditions?.outdoorTemperature !== "unknown") {
    check.positive("conditions.outdoorTemperature", conditions?.outdoorTemperature);
  }
  check.oneOf("conditions.cleanCoils", conditions?.cleanCoils, KNOWN);
  check.oneOf("conditions.airFlowKnown", conditions?.airFlowKnown, KNOWN);
  check.oneOf("conditions.fixedSpeed", conditions?.fixedSpeed, KNOWN);
}
