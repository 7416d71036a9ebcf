import type { GaugePressure, Mass, SiteAtmosphere } from "../../../units/index.js";
import type { PressureGauge, Thermometer } from "../../measurement/instrument.js";
import type { OperatingMode } from "../../running/line-reading.js";
import type { CommissioningRecord, VisitKind } from "../record/record.js";
import type { JobCharge, JobJoints, JobLineSet, JobOpening, JobRoom } from "./installation.js";
import type { JobEvacuation, JobNitrogenHold, JobStrengthTest, JobVacuumRise } from "./pressure.js";
import type { JobLineReading, JobRunning, JobStanding } from "./running.js";
import type { JobRecovery, JobTopUp, JobYearlyCheck } from "./service.js";
import type { Stated } from "./stated.js";

/** Name and version of the form of a job. */
export const JOB_FORMAT = "dewline-job/2";

/** The form before it: it knew one kind of visit, an installation, and does not say so. */
export const EARLIER_JOB_FORMAT = "dewline-job/1";

/** One visit to a system: the site, the unit, the instruments, and what was read at each step. */
export interface Job {
  /** What the visit is for. */
  readonly visit: VisitKind;
  /** Name of the record of the visits before, where this one continues it. */
  readonly continues?: string;
  /** That record. */
  readonly earlier?: CommissioningRecord;
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
  /** The flared joints. */
  readonly joints?: JobJoints;
  /** Strength test with nitrogen, in stages. */
  readonly strengthTest?: JobStrengthTest;
  /** The pipes between the units. */
  readonly lineSet?: JobLineSet;
  /** Hold test with nitrogen. */
  readonly nitrogenHold?: JobNitrogenHold;
  /** Vacuum reached. */
  readonly evacuation?: JobEvacuation;
  /** Vacuum with the pump shut off. */
  readonly vacuumRise?: JobVacuumRise;
  /** Refrigerant weighed in. */
  readonly charge?: JobCharge;
  /** Valves opened, joints searched. */
  readonly opening?: JobOpening;
  /** Pressure of the system at rest, valves open, before the first start. */
  readonly standing?: JobStanding;
  /** Suction side in steady running. */
  readonly superheat?: JobLineReading;
  /** Liquid side in steady running. */
  readonly subcooling?: JobLineReading;
  /** The running unit as a whole. */
  readonly running?: JobRunning;
  /** What has changed since the visits before. */
  readonly yearlyCheck?: JobYearlyCheck;
  /** A question: refrigerant was lost, may the rest be topped up? */
  readonly topUp?: JobTopUp;
  /** Refrigerant taken out. */
  readonly recovery?: JobRecovery;
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
