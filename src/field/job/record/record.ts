import type { Caution, Warning } from "../../../safety/index.js";
import type { Verdict } from "../../measurement/decision.js";

/** Name and version of the form of a commissioning record. */
export const RECORD_FORMAT = "dewline-record/1";

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

/**
 * Names of the steps, which are also the names of their parts in a job, in the order of the work; the last is a question
 * that may come up later.
 */
export const RECORD_STEPS = [
  "room",
  "nitrogenHold",
  "evacuation",
  "vacuumRise",
  "lineSet",
  "standing",
  "superheat",
  "subcooling",
  "topUp",
] as const;

/** Name of a step. */
export type RecordStepName = (typeof RECORD_STEPS)[number];

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
  /** What is odd. */
  readonly warnings: readonly Warning[];
  /** What was taken for granted. */
  readonly assumptions: readonly string[];
  /** Cautions that go with it. */
  readonly cautions: readonly Caution[];
}

/** The record of a job. */
export interface CommissioningRecord {
  /** Form of this record. */
  readonly format: typeof RECORD_FORMAT;
  /** What the job is. */
  readonly title: string;
  /** Where. */
  readonly place: string;
  /** When. */
  readonly date: string;
  /** Refrigerant, unit and site. */
  readonly facts: readonly RecordEntry[];
  /** The worst verdict of all steps. */
  readonly verdict: Verdict;
  /** The steps, in the order of the work. */
  readonly steps: readonly RecordStep[];
  /** Titles of the steps that the job does not hold: nothing is said about them. A question that nobody asked is not missing. */
  readonly missing: readonly string[];
  /** Full citations of the equations used. */
  readonly sources: readonly string[];
}
