export * from "./diagnosis.js";
export type {
  DiagnosisConditionName,
  DiagnosisConditions,
  JudgedCondition,
  YesNoUnknown,
} from "./diagnosis-conditions.js";
export {
  type DiagnosisCause,
  type DiagnosisPattern,
  type DiagnosisReading,
  type DiagnosisRow,
  diagnosisMatrix,
  type ReadingLevel,
} from "./diagnosis-matrix.js";
export * from "./line-loss.js";
export type { LineReading, LineResult, LineWarningCode, OperatingMode, ServicePort } from "./line-reading.js";
export * from "./liquid-riser.js";
export * from "./mean-temperatures.js";
export type { MeteringDevice } from "./metering-device.js";
export type { NextReading } from "./next-reading.js";
export type { JudgedReading, LeveledReading } from "./reading-level.js";
export * from "./saturation-slope.js";
export * from "./subcooling.js";
export * from "./superheat.js";
export * from "./target-superheat.js";
export * from "./typical-targets.js";
