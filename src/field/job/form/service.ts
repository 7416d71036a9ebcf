import type {
  Duration,
  GaugePressure,
  Mass,
  Temperature,
  TemperatureDifference,
  Volume,
} from "../../../units/index.js";
import type { Stated } from "./stated.js";

/** A later visit held against the earlier ones. */
export interface JobYearlyCheck {
  /** How far superheat and subcooling may have moved since they were first read. */
  readonly allowedChange: Stated<TemperatureDifference>;
  /** Full charge of the system. */
  readonly fullCharge: Stated<Mass>;
  /** Refrigerant that had to be added since the record began or refrigerant was last added; 0 where none was. */
  readonly added: Stated<Mass>;
  /** How long ago that was. */
  readonly since: Stated<Duration>;
  /** Most that may be lost in a year, per cent of the full charge, by the rule that is followed. */
  readonly allowedPercentPerYear: number;
}

/** What is known of a leak, and of the system that it left. */
export interface JobTopUp {
  /** Full charge. */
  readonly charge: Stated<Mass>;
  /** How much of it was lost. */
  readonly lost: Stated<Mass>;
  /** What escaped; where nobody knows, both ends are computed. */
  readonly leaving: "unknown" | "vapour" | "liquid";
  /** Volume of the whole circuit. */
  readonly internalVolume: Stated<Volume>;
  /** At which it stood while it leaked. */
  readonly restTemperature: Stated<Temperature>;
}

/** The refrigerant is taken out. */
export interface JobRecovery {
  /** Name of the scale that the cylinder stands on. */
  readonly scale: string;
  /** Name of the gauge. */
  readonly gauge: string;
  /** The cylinder. */
  readonly cylinder: {
    /** Water capacity. */
    readonly volume: Stated<Volume>;
    /** Most that it may hold, as marked on it. */
    readonly markedLimit: Stated<Mass>;
    /** What it held before. */
    readonly inside: Stated<Mass>;
    /** Whether it is made to be filled again. */
    readonly refillable: boolean;
  };
  /** What the scale showed before. */
  readonly before: Stated<Mass>;
  /** And after. */
  readonly after: Stated<Mass>;
  /** What should have been in the system. */
  readonly expectedCharge: Stated<Mass>;
  /** How far from it the amount may be. */
  readonly tolerance: Stated<Mass>;
  /** Volume of the whole circuit. */
  readonly internalVolume: Stated<Volume>;
  /** What the gauge shows at the end. */
  readonly endPressure: Stated<GaugePressure>;
  /** Of the circuit, then. */
  readonly endTemperature: Stated<Temperature>;
}
