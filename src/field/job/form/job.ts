import type { IecEdition, Mounting } from "../../../safety/index.js";
import type {
  Area,
  Duration,
  GaugePressure,
  Length,
  LinearDensity,
  Mass,
  Pressure,
  PressureDifference,
  SiteAtmosphere,
  Temperature,
  TemperatureDifference,
  Volume,
} from "../../../units/index.js";
import type { PressureGauge, Thermometer } from "../../measurement/instrument.js";
import type { OperatingMode, ServicePort } from "../../running/line-reading.js";

/** Name and version of the form of a job. */
export const JOB_FORMAT = "dewline-job/1";

/** A quantity as it was written down, with its value in SI. */
export interface Stated<T> {
  /** Value, SI. */
  readonly si: T;
  /** SI unit of the value. */
  readonly unit: string;
  /** Text as written: what the technician read. */
  readonly text: string;
}

/** One installation: the site, the unit, the instruments, and what was read at each step. */
export interface Job {
  /** What the job is. */
  readonly title: string;
  /** Where it is. */
  readonly place: string;
  /** Day of the work, as text. */
  readonly date: string;
  /** Air pressure of the site. */
  readonly atmosphere: SiteAtmosphere;
  /** The unit that is installed. */
  readonly unit: JobUnit;
  /** Instruments by name; the steps refer to these names. */
  readonly instruments: {
    /** Pressure and vacuum gauges. */
    readonly gauges: Readonly<Record<string, PressureGauge>>;
    /** Thermometers. */
    readonly thermometers: Readonly<Record<string, Thermometer>>;
    /** Scales: half-width of the error, kg. */
    readonly scales: Readonly<Record<string, { readonly halfWidth: Mass }>>;
  };
  /** The room that the indoor unit serves. */
  readonly room?: JobRoom;
  /** The pipes between the units. */
  readonly lineSet?: JobLineSet;
  /** Pressure test with nitrogen. */
  readonly nitrogenHold?: JobNitrogenHold;
  /** Vacuum reached. */
  readonly evacuation?: JobEvacuation;
  /** Vacuum with the pump shut off. */
  readonly vacuumRise?: JobVacuumRise;
  /** Pressure of the system at rest, valves open, before the first start. */
  readonly standing?: JobStanding;
  /** Suction side in steady running. */
  readonly superheat?: JobLineReading;
  /** Liquid side in steady running. */
  readonly subcooling?: JobLineReading;
  /** A question: refrigerant was lost, may the rest be topped up? */
  readonly topUp?: JobTopUp;
}

/** The unit, as its nameplate says. */
export interface JobUnit {
  /** Designation of the refrigerant. */
  readonly refrigerant: string;
  /** What it does while readings are taken. */
  readonly mode: OperatingMode;
  /** Charge of the nameplate. */
  readonly nameplateCharge: Stated<Mass>;
  /** PS, the maximum allowable pressure of the weakest part. */
  readonly maximumAllowablePressure: Stated<GaugePressure>;
}

/** What the room rule needs. */
export interface JobRoom {
  /** Edition of IEC 60335-2-40 that is followed. */
  readonly edition: IecEdition;
  /** Floor area. */
  readonly floorArea: Stated<Area>;
  /** How the indoor unit is mounted. */
  readonly mounting: Mounting;
  /** Height of the room. */
  readonly height?: Stated<Length>;
  /** Distance from the underside of the unit up to where refrigerant can escape. */
  readonly releaseOffset?: Stated<Length>;
}

/** The line set and what was weighed in for it. */
export interface JobLineSet {
  /** Length, one way. */
  readonly length: Stated<Length>;
  /** Length that the nameplate covers, by the manual. */
  readonly chargeFreeLength: Stated<Length>;
  /** Extra charge per metre, by the manual. */
  readonly chargePerMetre: Stated<LinearDensity>;
  /** Longest line set allowed, by the manual. */
  readonly maximumLength: Stated<Length>;
  /** The liquid line. */
  readonly liquidLine: { readonly outerDiameter: Stated<Length>; readonly wall: Stated<Length> };
  /** Temperature of the liquid, for the most that the bore can hold. */
  readonly liquidTemperature: Stated<Temperature>;
  /** What was weighed in beyond the nameplate. */
  readonly added: Stated<Mass>;
  /** Name of the scale. */
  readonly scale: string;
  /** How far from the computed charge it may be, by the manual. */
  readonly tolerance: Stated<Mass>;
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

/** A reading at rest. */
export interface JobStanding {
  /** Name of the gauge. */
  readonly gauge: string;
  /** Name of the thermometer. */
  readonly thermometer: string;
  /** What the gauge shows. */
  readonly pressure: Stated<GaugePressure>;
  /** Of all parts. */
  readonly temperature: Stated<Temperature>;
}

/** A pressure and a pipe temperature in steady running, with the target of the manual. */
export interface JobLineReading {
  /** Name of the gauge. */
  readonly gauge: string;
  /** Name of the thermometer. */
  readonly thermometer: string;
  /** Where the gauge is connected. */
  readonly port: ServicePort;
  /** What the gauge shows. */
  readonly pressure: Stated<GaugePressure>;
  /** Of the pipe at the same point. */
  readonly lineTemperature: Stated<Temperature>;
  /** Of the air around it. */
  readonly ambientTemperature?: Stated<Temperature>;
  /** Lowest and highest value that the manual accepts; at least one of them. */
  readonly target: {
    readonly minimum?: Stated<TemperatureDifference>;
    readonly maximum?: Stated<TemperatureDifference>;
  };
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
