import type {
  Duration,
  GaugePressure,
  Temperature,
  TemperatureDifference,
  VolumeFlow,
} from "../../../units/index.js";
import type { ServicePort } from "../../running/line-reading.js";
import type { Stated } from "./stated.js";

/** One reading of a pressure and a temperature that belong together. */
export interface JobPairReading {
  /** Since the first. */
  readonly time: Stated<Duration>;
  /** What the gauge shows. */
  readonly pressure: Stated<GaugePressure>;
  /** What the thermometer shows. */
  readonly temperature: Stated<Temperature>;
}

/** A reading at rest: one, or a series. */
export interface JobStanding {
  /** Name of the gauge. */
  readonly gauge: string;
  /** Name of the thermometer. */
  readonly thermometer: string;
  /** What the gauge shows, where there is one reading. */
  readonly pressure?: Stated<GaugePressure>;
  /** Of all parts, where there is one reading. */
  readonly temperature?: Stated<Temperature>;
  /** A series, in the order taken. */
  readonly readings?: readonly JobPairReading[];
  /** Name of the log that the series comes from, if it does. */
  readonly log?: string;
  /** How far the pressure may still move during a series, as temperature of saturation. */
  readonly allowedDrift?: Stated<TemperatureDifference>;
}

/** A pressure and a pipe temperature in steady running, once or as a series, with the target of the manual. */
export interface JobLineReading {
  /** Name of the gauge. */
  readonly gauge: string;
  /** Name of the thermometer. */
  readonly thermometer: string;
  /** Where the gauge is connected. */
  readonly port: ServicePort;
  /** What the gauge shows, where there is one reading. */
  readonly pressure?: Stated<GaugePressure>;
  /** Of the pipe at the same point, where there is one reading. */
  readonly lineTemperature?: Stated<Temperature>;
  /** A series, in the order taken. */
  readonly readings?: readonly JobPairReading[];
  /** Name of the log that the series comes from, if it does. */
  readonly log?: string;
  /** How far the value may still move during a series. */
  readonly allowedDrift?: Stated<TemperatureDifference>;
  /** Of the air around it. */
  readonly ambientTemperature?: Stated<Temperature>;
  /** Lowest and highest value that the manual accepts; at least one of them. */
  readonly target: JobRange<TemperatureDifference>;
}

/** Lowest and highest value that is accepted; at least one of them. */
export interface JobRange<T> {
  /** Lowest. */
  readonly minimum?: Stated<T>;
  /** Highest. */
  readonly maximum?: Stated<T>;
}

/** Air, by its dry and perhaps its wet bulb. */
export interface JobAir {
  /** Dry-bulb temperature. */
  readonly dryBulb: Stated<Temperature>;
  /** Wet-bulb temperature. */
  readonly wetBulb?: Stated<Temperature>;
}

/** What somebody knows of a condition. */
export type JobKnown = "yes" | "no" | "unknown";

/** The running unit as a whole: its air, and what superheat and subcooling mean together. */
export interface JobRunning {
  /** What feeds the evaporator. */
  readonly meteringDevice: "fixed-orifice" | "thermostatic-valve" | "electronic-valve";
  /** Name of the thermometer for the air. */
  readonly thermometer: string;
  /** Of the outdoor air. */
  readonly outdoorTemperature: Stated<Temperature>;
  /** Air that enters the indoor unit. */
  readonly returnAir: JobAir;
  /** Air that leaves it. */
  readonly supplyAir?: JobAir;
  /** How much of it, measured where it leaves. */
  readonly airFlow?: {
    /** Flow. */
    readonly flow: Stated<VolumeFlow>;
    /** How far it may be off, per cent. */
    readonly percent: number;
  };
  /** Of the discharge line, near the compressor. */
  readonly dischargeTemperature?: Stated<Temperature>;
  /** What is expected, by the manual. */
  readonly targets: {
    /** Condensing temperature less that of the air that cools the condenser. */
    readonly condensingSplit: JobRange<TemperatureDifference>;
    /** Temperature of the air that warms the evaporator less the evaporating temperature. */
    readonly evaporatingSplit: JobRange<TemperatureDifference>;
    /** Discharge temperature. */
    readonly discharge?: JobRange<Temperature>;
  };
  /** Whether the readings mean anything together. */
  readonly conditions: {
    /** How long the unit has run steadily. */
    readonly steadyFor: Stated<Duration>;
    /** Coils and filters are clean. */
    readonly cleanCoils: JobKnown;
    /** The air flow is as it should be. */
    readonly airFlowKnown: JobKnown;
    /** The compressor runs at one speed. */
    readonly fixedSpeed: JobKnown;
  };
}
