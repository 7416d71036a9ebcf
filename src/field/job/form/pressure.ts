import type {
  Duration,
  GaugePressure,
  Pressure,
  PressureDifference,
  Temperature,
  Volume,
} from "../../../units/index.js";
import type { Stated } from "./stated.js";

/** Strength test in stages. */
export interface JobStrengthTest {
  /** Name of the gauge. */
  readonly gauge: string;
  /** Stages that the manual asks for, the last at the pressure of the test. */
  readonly plan: readonly { readonly pressure: Stated<GaugePressure>; readonly holdFor: Stated<Duration> }[];
  /** Stages as they were done. */
  readonly stages: readonly {
    /** What the gauge showed. */
    readonly pressure: Stated<GaugePressure>;
    /** How long. */
    readonly heldFor: Stated<Duration>;
    /** Whether every joint was looked at with bubbles. */
    readonly jointsInspected: boolean;
  }[];
}

/** Readings of the hold test. */
export interface JobNitrogenHold {
  /** Name of the gauge. */
  readonly gauge: string;
  /** Name of the thermometer on the pipes. */
  readonly thermometer: string;
  /** Name of the log that the readings come from, if they do. */
  readonly log?: string;
  /** In the order taken. */
  readonly readings: readonly JobHoldReading[];
  /** How long it has to last, by the manual or the code that is followed. */
  readonly requiredDuration: Stated<Duration>;
  /** Volume under test. */
  readonly internalVolume?: Stated<Volume>;
}

/** One of them. */
export interface JobHoldReading {
  /** Since the first. */
  readonly time: Stated<Duration>;
  /** What the gauge shows. */
  readonly pressure: Stated<GaugePressure>;
  /** Of the pipework. */
  readonly pipeTemperature: Stated<Temperature>;
  /** Barometer on the spot at that moment. */
  readonly barometer?: Stated<Pressure>;
}

/** A reading of the vacuum gauge with the pump running. */
export interface JobEvacuation {
  /** Name of the absolute vacuum gauge. */
  readonly gauge: string;
  /** What it shows. */
  readonly pressure: Stated<Pressure>;
  /** What has to be reached, by the manual or the code that is followed. */
  readonly limit: Stated<Pressure>;
  /** Of the coldest part of the circuit. */
  readonly coldestTemperature: Stated<Temperature>;
}

/** Readings of the rise test. */
export interface JobVacuumRise {
  /** Name of the absolute vacuum gauge. */
  readonly gauge: string;
  /** Name of the log that the readings come from, if they do. */
  readonly log?: string;
  /** In the order taken. */
  readonly readings: readonly { readonly time: Stated<Duration>; readonly pressure: Stated<Pressure> }[];
  /** Standard uncertainty of one reading against the next. */
  readonly repeatability: Stated<PressureDifference>;
  /** Pressure at or below which the test may start. */
  readonly startMaximum: Stated<Pressure>;
  /** Time that is left out while the gas evens out. */
  readonly settlingTime: Stated<Duration>;
  /** Of the coldest part. */
  readonly coldestTemperature: Stated<Temperature>;
  /** Of the warmest part. */
  readonly warmestTemperature: Stated<Temperature>;
  /** Pressure that must not be exceeded after a time. */
  readonly limit?: { readonly pressure: Stated<Pressure>; readonly after: Stated<Duration> };
  /** Volume of the circuit. */
  readonly internalVolume?: Stated<Volume>;
}
