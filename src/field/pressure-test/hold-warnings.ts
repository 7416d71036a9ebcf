import data from "../../../data/field/nitrogen-hold.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import { fullScale } from "../measurement/instrument.js";
import { shown, shownKilopascal } from "../measurement/shown.js";
import type { NitrogenHold } from "./nitrogen-hold.js";

/** Codes of the warnings of a hold test. */
export type HoldWarningCode =
  | "strength-test-only"
  | "far-below-allowable"
  | "gauge-range-small"
  | "gauge-too-coarse"
  | "temperature-changed-much"
  | "shorter-than-an-hour"
  | "atmosphere-read-once"
  | "not-settled";

/** What is odd about a well-formed hold test; `correlation` is that of each residual with the next. */
export function holdWarnings(hold: NitrogenHold, correlation: number): Warning<HoldWarningCode>[] {
  const { readings, gauge, maximumAllowablePressure: PS } = hold;
  const warnings: Warning<HoldWarningCode>[] = [];
  const first = readings[0]!;
  const last = readings[readings.length - 1]!;
  const highest = largest(readings.map(({ pressure }) => pressure));
  if (highest > PS) {
    warnings.push({
      code: "strength-test-only",
      message: `${shownKilopascal(highest)} is above PS = ${shownKilopascal(PS)}: for a strength test only, never to hold`,
    });
  }
  if (first.pressure < data.lowPressure.fraction * PS) {
    warnings.push({
      code: "far-below-allowable",
      message:
        `${shownKilopascal(first.pressure)} is far below PS = ${shownKilopascal(PS)}: joints that hold this need not ` +
        "hold the pressure of the unit",
    });
  }
  const scale = fullScale(gauge);
  if (scale !== undefined && scale < data.gaugeRange.factor * highest) {
    warnings.push({
      code: "gauge-range-small",
      message: `the gauge ends at ${shownKilopascal(scale)}, less than ${data.gaugeRange.factor} times the test pressure`,
    });
  }
  const coarsest = data.gaugeResolution.fraction * highest;
  if (gauge.resolution !== undefined && gauge.resolution > coarsest) {
    warnings.push({
      code: "gauge-too-coarse",
      message: `steps of ${shownKilopascal(gauge.resolution)} are coarser than ${100 * data.gaugeResolution.fraction} % of the test pressure`,
    });
  }
  const temperatures = readings.map(({ pipeTemperature }) => pipeTemperature);
  const change = largest(temperatures) + largest(temperatures.map((each) => -each));
  if (change > data.temperatureChange.value) {
    warnings.push({
      code: "temperature-changed-much",
      message: `the pipes changed by ${shown(change)} K: parts that lag behind spoil the correction`,
    });
  }
  if (last.time - first.time < data.duration.value) {
    warnings.push({
      code: "shorter-than-an-hour",
      message: "IEC/UL 60335-2-40 as worded in installation manuals asks for one hour or more",
    });
  }
  if (first.atmosphere === undefined || last.atmosphere === undefined) {
    warnings.push({
      code: "atmosphere-read-once",
      message:
        "the air pressure was not read at both ends: a change of weather looks like a change of pressure",
    });
  }
  if (readings.length >= data.wandering.fewestReadings && correlation > data.wandering.correlation) {
    warnings.push({
      code: "not-settled",
      message: "the readings wander about the line: the temperature of the pipes may not have settled",
    });
  }
  return warnings;
}

/** A log can hold more readings than a call can take arguments. */
function largest(values: readonly number[]): number {
  return values.reduce((high, value) => Math.max(high, value), Number.NEGATIVE_INFINITY);
}
