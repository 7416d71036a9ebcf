import type { Caution, Warning } from "../../../safety/index.js";
import type { Verdict } from "../../measurement/decision.js";

/** Name and version of the form of a commissioning record. */
export const RECORD_FORMAT = "dewline-record/2";

/** One number or fact of a record, with its text. */
export interface RecordEntry {
  /** What it is. */
  readonly label: string;
  /** How it is shown, with unit and, where it has one, expanded uncertainty (k = 2). */
  readonly text: string;
  /** Value, SI, where it is a number. */
  readonly si?: number;
  /** SI unit of the value. */
  readonly unit?: string;
  /** Expanded uncertainty (k = 2), SI, where it has one. */
  readonly expandedUncertainty?: number;
}

/** Names of the steps, which are also the names of their parts in a job, in the order of the work. */
export const RECORD_STEPS = [
  "room",
  "joints",
  "strengthTest",
  "nitrogenHold",
  "evacuation",
  "vacuumRise",
  "lineSet",
  "charge",
  "opening",
  "standing",
  "superheat",
  "subcooling",
  "running",
  "yearlyCheck",
  "topUp",
  "recovery",
] as const;

/** Name of a step. */
export type RecordStepName = (typeof RECORD_STEPS)[number];

/** Kinds of a visit: what is done decides which steps are expected. */
export const VISIT_KINDS = ["installation", "yearly-check", "top-up", "recovery"] as const;

/** Kind of a visit. */
export type VisitKind = (typeof VISIT_KINDS)[number];

/** One step of the job: what was read, what was expected, and what follows. */
export interface RecordStep {
  /** Which step. */
  readonly name: RecordStepName;
  /** Its title. */
  readonly title: string;
  /** Whether it is in order. */
  readonly verdict: Verdict;
  /** What was read or entered. */
  readonly read: readonly RecordEntry[];
  /** What was expected. */
  readonly expected: readonly RecordEntry[];
  /** What was found: the value that was judged first. */
  readonly found: readonly RecordEntry[];
  /** The rule and the numbers that decided. */
  readonly because: string;
  /** What to do about it, where it is not in order. */
  readonly next: readonly string[];
  /** What is odd. */
  readonly warnings: readonly Warning[];
  /** What was taken for granted. */
  readonly assumptions: readonly string[];
  /** Cautions that go with it. */
  readonly cautions: readonly Caution[];
}

/** What was done and found on one day. */
export interface RecordVisit {
  /** Kind of the visit. */
  readonly kind: VisitKind;
  /** What the job is. */
  readonly title: string;
  /** When: a day of the calendar, such as 2026-09-18. */
  readonly date: string;
  /** Refrigerant, unit and site. */
  readonly facts: readonly RecordEntry[];
  /** The worst verdict of all steps. */
  readonly verdict: Verdict;
  /** The steps, in the order of the work. */
  readonly steps: readonly RecordStep[];
  /** Titles of the steps that a visit of this kind should hold and does not: nothing is said about them. */
  readonly missing: readonly string[];
  /** What to do next, in the order in which to do it. */
  readonly next: readonly string[];
  /** Full citations of the equations used. */
  readonly sources: readonly string[];
}

/** What stays the same from visit to visit. */
export interface RecordSystem {
  /** Designation of the refrigerant. */
  readonly refrigerant: string;
  /** Charge of the nameplate, kg; not in records of the first form. */
  readonly nameplateCharge?: number;
}

/** The record of a system: the last visit, and those before it. */
export interface CommissioningRecord extends RecordVisit {
  /** Form of this record. */
  readonly format: typeof RECORD_FORMAT;
  /** Where. */
  readonly place: string;
  /** The system. */
  readonly system: RecordSystem;
  /** Earlier visits, the oldest first. */
  readonly earlier: readonly RecordVisit[];
}
