import data from "../../../data/field/instruments.json" with { type: "json" };
import type { InputCheck } from "../../units/index.js";
import type { PressureGauge, Thermometer } from "./instrument.js";

/** Records what is wrong with the description of a gauge. */
export function checkGauge(check: InputCheck, path: string, gauge: PressureGauge): void {
  const accuracy = gauge?.accuracy;
  const kinds = [
    "accuracy-class",
    "percent-of-full-scale",
    "percent-of-reading",
    "half-width",
    "standard-uncertainty",
  ];
  if (!check.oneOf(`${path}.accuracy.kind`, accuracy?.kind, kinds)) return;
  const at = `${path}.accuracy`;
  if (accuracy.kind === "accuracy-class") {
    const { lowest, highest } = data.accuracyClass;
    check.require(
      accuracy.accuracyClass >= lowest && accuracy.accuracyClass <= highest,
      `${at}.accuracyClass`,
      accuracy.accuracyClass,
      `a class of EN 837-1, ${lowest} to ${highest}`,
    );
    check.finite(`${at}.scaleMinimum`, accuracy.scaleMinimum);
    check.finite(`${at}.scaleMaximum`, accuracy.scaleMaximum);
    check.require(
      !(accuracy.scaleMinimum >= accuracy.scaleMaximum),
      `${at}.scaleMaximum`,
      accuracy.scaleMaximum,
      "above the lower end of the scale",
    );
    if (accuracy.caseTemperature !== undefined) {
      check.positive(`${at}.caseTemperature`, accuracy.caseTemperature);
    }
  } else if (accuracy.kind === "percent-of-full-scale") {
    check.positive(`${at}.percent`, accuracy.percent);
    check.positive(`${at}.fullScale`, accuracy.fullScale);
  } else if (accuracy.kind === "percent-of-reading") {
    check.positive(`${at}.percent`, accuracy.percent);
    if (accuracy.plus !== undefined) check.notNegative(`${at}.plus`, accuracy.plus);
  } else if (accuracy.kind === "half-width") {
    check.positive(`${at}.halfWidth`, accuracy.halfWidth);
  } else {
    check.notNegative(`${at}.standardUncertainty`, accuracy.standardUncertainty);
  }
  if (gauge.resolution !== undefined) check.positive(`${path}.resolution`, gauge.resolution);
}

/** As {@link checkGauge}, for a gauge that reads absolute pressure: one whose scale is in gauge pressure cannot. */
export function checkVacuumGauge(check: InputCheck, path: string, gauge: PressureGauge): void {
  checkGauge(check, path, gauge);
  const kind = gauge?.accuracy?.kind;
  check.require(
    kind !== "accuracy-class" && kind !== "percent-of-full-scale",
    `${path}.accuracy.kind`,
    kind,
    "percent-of-reading, half-width or standard-uncertainty: an absolute vacuum gauge has no scale in gauge pressure",
  );
}

/** Records what is wrong with the description of a thermometer. */
export function checkThermometer(check: InputCheck, path: string, thermometer: Thermometer): void {
  const accuracy = thermometer?.accuracy;
  const at = `${path}.accuracy`;
  if (!check.oneOf(`${at}.kind`, accuracy?.kind, ["pipe-probe", "half-width", "standard-uncertainty"]))
    return;
  if (accuracy.kind === "pipe-probe") {
    check.oneOf(`${at}.probe`, accuracy.probe, ["clamp", "insulated-or-immersed"]);
  } else if (accuracy.kind === "half-width") {
    check.positive(`${at}.halfWidth`, accuracy.halfWidth);
  } else {
    check.notNegative(`${at}.standardUncertainty`, accuracy.standardUncertainty);
  }
  if (thermometer.resolution !== undefined) check.positive(`${path}.resolution`, thermometer.resolution);
}

/** Records a reading that the gauge, well described, cannot have shown. */
export function checkReading(check: InputCheck, path: string, reading: number, gauge: PressureGauge): void {
  if (!check.finite(path, reading)) return;
  const { accuracy } = gauge;
  if (accuracy.kind === "accuracy-class") {
    const { scaleMinimum, scaleMaximum } = accuracy;
    check.require(
      reading >= scaleMinimum && reading <= scaleMaximum,
      path,
      reading,
      `a reading on the scale of the gauge, ${scaleMinimum} to ${scaleMaximum} Pa`,
    );
  } else if (accuracy.kind === "percent-of-full-scale") {
    check.require(
      reading <= accuracy.fullScale,
      path,
      reading,
      `a reading on the scale of the gauge, up to ${accuracy.fullScale} Pa`,
    );
  }
}
