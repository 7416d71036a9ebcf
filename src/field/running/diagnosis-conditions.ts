import data from "../../../data/field/diagnosis.json" with { type: "json" };
import type { Duration, Temperature } from "../../units/index.js";
import { shown, shownCelsius } from "../measurement/shown.js";
import type { OperatingMode } from "./line-reading.js";

/** What somebody knows of a condition. */
export type YesNoUnknown = "yes" | "no" | "unknown";

/** What has to hold for readings to mean anything together. */
export interface DiagnosisConditions {
  /** How long the unit has run steadily, s: 10 minutes at least, better 15. */
  readonly steadyFor: Duration | "unknown";
  /** Temperature of the outdoor air, K: 15 to 45 °C. */
  readonly outdoorTemperature: Temperature | "unknown";
  /** Coils and filters are clean. */
  readonly cleanCoils: YesNoUnknown;
  /** The indoor air flow was measured or is known to be as it should. */
  readonly airFlowKnown: YesNoUnknown;
  /** The compressor runs at one speed: a variable one keeps superheat and pressures itself. */
  readonly fixedSpeed: YesNoUnknown;
}

/** A condition of the diagnosis. */
export type DiagnosisConditionName =
  | "steady"
  | "outdoor-temperature"
  | "clean-coils"
  | "air-flow-known"
  | "fixed-speed"
  | "cooling";

/** A condition and whether it is met. */
export interface JudgedCondition {
  /** Which. */
  readonly condition: DiagnosisConditionName;
  /** Whether it is met. */
  readonly met: YesNoUnknown;
  /** What decided. */
  readonly because: string;
}

/** Every condition of the diagnosis, and whether it is met. */
export function judgeConditions(
  { steadyFor, outdoorTemperature, cleanCoils, airFlowKnown, fixedSpeed }: DiagnosisConditions,
  mode: OperatingMode,
): readonly JudgedCondition[] {
  return [
    steadyCondition(steadyFor),
    outdoorCondition(outdoorTemperature),
    stated("clean-coils", cleanCoils, "coils and filters are clean"),
    stated("air-flow-known", airFlowKnown, "the indoor air flow is known"),
    stated("fixed-speed", fixedSpeed, "the compressor runs at one speed"),
    {
      condition: "cooling",
      met: mode === "cooling" ? "yes" : "no",
      because: mode === "cooling" ? "the unit cools" : "the unit heats, and the matrix is for cooling",
    },
  ];
}

function stated(condition: DiagnosisConditionName, met: YesNoUnknown, words: string): JudgedCondition {
  const because = { yes: words, no: `it is not so that ${words}`, unknown: `nobody knows whether ${words}` };
  return { condition, met, because: because[met] };
}

function steadyCondition(steadyFor: Duration | "unknown"): JudgedCondition {
  const { least, better } = data.conditions.steadyFor;
  const condition = "steady";
  if (steadyFor === "unknown") {
    return { condition, met: "unknown", because: "nobody knows how long the unit has run steadily" };
  }
  const minutes = `steady for ${shown(steadyFor / 60)} min`;
  if (steadyFor < least) {
    return { condition, met: "no", because: `${minutes}, ${least / 60} min are needed` };
  }
  const more = steadyFor < better ? `, ${better / 60} min would be better` : "";
  return { condition, met: "yes", because: `${minutes}${more}` };
}

function outdoorCondition(temperature: Temperature | "unknown"): JudgedCondition {
  const { minimum, maximum } = data.conditions.outdoorTemperature;
  const condition = "outdoor-temperature";
  if (temperature === "unknown") {
    return { condition, met: "unknown", because: "nobody knows the temperature of the outdoor air" };
  }
  const isInside = temperature >= minimum && temperature <= maximum;
  const range = `${shownCelsius(minimum)} to ${shownCelsius(maximum)}`;
  return {
    condition,
    met: isInside ? "yes" : "no",
    because: `outdoor air at ${shownCelsius(temperature)}, ${isInside ? "within" : "outside"} ${range}`,
  };
}
