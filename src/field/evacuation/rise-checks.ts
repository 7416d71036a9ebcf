import data from "../../../data/field/evacuation.json" with { type: "json" };
import { InputCheck, requireObject } from "../../units/index.js";
import { checkReading, checkVacuumGauge } from "../measurement/instrument-checks.js";
import type { RiseSample, RiseTest } from "./rise-test.js";

/** Judges the input of a rise test, all problems at once; returns the samples that count. */
export function checkRiseTest(test: RiseTest): readonly RiseSample[] {
  requireObject("", test, "a rise test");
  const check = new InputCheck();
  const { samples, limit } = test;
  const { fewestSamples, shortestDuration } = data.riseCurve;
  checkVacuumGauge(check, "gauge", test.gauge);
  check.positive("repeatability", test.repeatability);
  check.positive("startMaximum", test.startMaximum);
  check.notNegative("settlingTime", test.settlingTime);
  check.positive("coldestTemperature", test.coldestTemperature);
  check.positive("warmestTemperature", test.warmestTemperature);
  check.require(
    !(test.coldestTemperature > test.warmestTemperature),
    "coldestTemperature",
    test.coldestTemperature,
    `not above the warmest, ${test.warmestTemperature} K`,
  );
  if (limit !== undefined) {
    check.positive("limit.pressure", limit.pressure);
    check.positive("limit.after", limit.after);
  }
  if (test.internalVolume !== undefined) check.positive("internalVolume", test.internalVolume);
  const isSeries = Array.isArray(samples) && samples.length >= 2;
  if (!check.require(isSeries, "samples", samples, "two samples or more")) check.finish();
  for (const [index, sample] of samples.entries()) {
    const path = `samples[${index}]`;
    check.finite(`${path}.time`, sample?.time);
    if (check.positive(`${path}.pressure`, sample?.pressure) && test.gauge?.accuracy !== undefined) {
      checkReading(check, `${path}.pressure`, sample.pressure, test.gauge);
    }
    const before = samples[index - 1]?.time;
    if (before !== undefined) {
      check.require(sample?.time > before, `${path}.time`, sample?.time, `later than ${before} s`);
    }
  }
  check.finish();
  const begin = samples[0]!.time;
  const settled =
    samples.length === 2 ? samples : samples.filter(({ time }) => time - begin >= test.settlingTime);
  const lasted = settled.length < 2 ? 0 : settled[settled.length - 1]!.time - settled[0]!.time;
  check.require(
    lasted >= shortestDuration,
    "samples",
    lasted,
    `${shortestDuration} s or more after settling`,
  );
  check.require(
    samples.length === 2 || settled.length >= fewestSamples,
    "samples",
    settled.length,
    `two samples, or ${fewestSamples} and more after settling`,
  );
  check.finish();
  return settled;
}
