import data from "../../../data/field/diagnosis.json" with { type: "json" };
import { InputCheck } from "../../units/index.js";
import { METERING_DEVICES, type MeteringDevice } from "./metering-device.js";

/** A reading against its target. */
export type ReadingLevel = "low" | "normal" | "high";

/** A reading that the diagnosis knows. */
export type DiagnosisReading =
  | "superheat"
  | "subcooling"
  | "condensingSplit"
  | "evaporatingPressure"
  | "dischargeTemperature"
  | "airTemperatureDrop";

/** What may be wrong. */
export type DiagnosisCause =
  | "undercharge"
  | "overcharge"
  | "restriction"
  | "overfeeding-or-weak-compressor"
  | "low-indoor-air-flow"
  | "outdoor-coil-or-fan"
  | "non-condensables"
  | "charge-plausible";

/** Readings that every diagnosis rests on. */
export const MAIN_READINGS: readonly DiagnosisReading[] = [
  "superheat",
  "subcooling",
  "condensingSplit",
  "evaporatingPressure",
];

/** Readings that help where they were taken. */
export const FURTHER_READINGS: readonly DiagnosisReading[] = ["dischargeTemperature", "airTemperatureDrop"];

/** The names of readings in words. */
export const READING_WORDS: Readonly<Record<DiagnosisReading, string>> = {
  superheat: "superheat",
  subcooling: "subcooling",
  condensingSplit: "condensing split",
  evaporatingPressure: "evaporating pressure",
  dischargeTemperature: "discharge temperature",
  airTemperatureDrop: "fall of air temperature",
};

/** The levels that each reading may have under a cause; a reading without an entry says nothing about it. */
export type DiagnosisPattern = Readonly<Partial<Record<DiagnosisReading, readonly ReadingLevel[]>>>;

/** One fault of the diagnosis matrix. */
export interface DiagnosisRow {
  /** Which. */
  readonly cause: DiagnosisCause;
  /** What it is in words, the usual first. */
  readonly names: readonly string[];
  /** What it does to the readings. */
  readonly levels: DiagnosisPattern;
  /** What to do to be sure, before anything else. */
  readonly confirm: string;
  /** Where the row is from. */
  readonly source: string;
}

/**
 * What each fault does to the readings of a unit in cooling, for a metering device.
 *
 * @param meteringDevice - Too much refrigerant, for one, shows otherwise behind a valve than behind an orifice.
 * @throws {@link InputError} `malformed-input` for any other device.
 * @source common practice, no source: `data/field/diagnosis.json`
 */
export function diagnosisMatrix(meteringDevice: MeteringDevice): readonly DiagnosisRow[] {
  const check = new InputCheck();
  check.oneOf("meteringDevice", meteringDevice, METERING_DEVICES);
  check.finish();
  // JSON knows no literal types; tests/field/running/diagnosis.test.ts checks every entry.
  const rows = data.matrix as readonly (Omit<DiagnosisRow, "levels"> & {
    readonly levels: DiagnosisPattern;
    readonly byDevice?: Readonly<Partial<Record<MeteringDevice, DiagnosisPattern>>>;
  })[];
  return rows.map(({ cause, names, levels, byDevice, confirm, source }) => ({
    cause,
    names,
    levels: { ...levels, ...byDevice?.[meteringDevice] },
    confirm,
    source,
  }));
}
