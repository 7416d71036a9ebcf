import { tryRefrigerant } from "../../../state/index.js";
import { attempt, InputCheck, InputError, type Outcome, type Problem } from "../../../units/index.js";
import type { PressureGauge, Thermometer } from "../../measurement/instrument.js";
import { checkGauge, checkThermometer } from "../../measurement/instrument-checks.js";
import { refusalsOf } from "../commission.js";
import { EARLIER_JOB_FORMAT, type Job } from "../form/job.js";
import { type CommissioningRecord, RECORD_STEPS } from "../record/record.js";
import { INSTRUMENT_KINDS, JOB_PARTS, parseInstrument, parsePart } from "../schema/job-schema.js";
import { type LogColumn, type LogRow, type LogTable, readLog } from "./log.js";

type Fields = Readonly<Record<string, unknown>>;

/** Parts of a job that have to be there. */
const required: readonly string[] = ["format", "visit", "title", "place", "date", "atmosphere", "unit"];

/** Steps that may hold a series: what their gauge reads, what a log has to have, and their name for a temperature. */
const serial = [
  ["nitrogenHold", "gauge", ["time", "pressure", "pipe temperature"], "pipeTemperature"],
  ["vacuumRise", "absolute", ["time", "pressure"], undefined],
  ["standing", "gauge", ["time", "pressure", "temperature"], "temperature"],
  ["superheat", "gauge", ["time", "pressure", "temperature"], "temperature"],
  ["subcooling", "gauge", ["time", "pressure", "temperature"], "temperature"],
] as const;

/** Fields of a single reading, of the steps that may hold one instead of a series. */
const single: Readonly<Record<string, readonly string[]>> = {
  standing: ["pressure", "temperature"],
  superheat: ["pressure", "lineTemperature"],
  subcooling: ["pressure", "lineTemperature"],
};

/** Which instruments a step names, and where they are described. */
const instrumentKinds = { gauge: "gauges", thermometer: "thermometers", scale: "scales" } as const;

/**
 * Checks a job and reads its quantities.
 *
 * Every part is read by itself, and every step that can be tried is tried, so that one look finds all there is to put
 * right: form, names, logs, and what the steps refuse.
 *
 * @param document - The parsed JSON of a job file.
 * @param logs - Logged series that the job names, by those names.
 * @param earlier - The record that the job continues, where it names one.
 * @throws {@link InputError} `malformed-input`, with every problem of the job and its logs at once.
 */
export function readJob(
  document: unknown,
  logs: Readonly<Record<string, LogTable>> = {},
  earlier?: CommissioningRecord,
): Job {
  if (!isFields(document)) throw new InputError([{ path: "", value: document, expected: "a job" }]);
  return readFields(fromEarlierForm(document), logs, earlier);
}

function readFields(
  document: Fields,
  logs: Readonly<Record<string, LogTable>>,
  earlier: CommissioningRecord | undefined,
): Job {
  const problems: Problem[] = [];
  const parts = readParts(document, problems);
  const instruments = readInstruments(document["instruments"], problems);
  checkNames(document, problems);
  const whole: Record<string, unknown> = { ...parts, instruments };
  for (const [name, kind, columns, temperature] of serial) {
    const step = parts[name];
    if (step === undefined) continue;
    const before = problems.length;
    const fields = (name: string): boolean => Object.hasOwn(step as object, name);
    whole[name] = (single[name] ?? []).some(fields)
      ? checkedSingle(step as Fields, name, problems)
      : withReadings(step as Series, name, kind, columns, temperature, logs, problems);
    if (problems.length > before) delete whole[name];
  }
  checkContinuing(document, earlier, problems);
  if (earlier !== undefined) whole["earlier"] = earlier;
  // What is left of a job with mistakes can still be tried, step by step.
  for (const name of RECORD_STEPS) if (!canTry(whole[name], instruments)) delete whole[name];
  const job = whole as unknown as Job;
  if ("unit" in parts && "atmosphere" in parts && tryRefrigerant(job.unit.refrigerant).ok) {
    problems.push(...refusalsOf(job));
  }
  const different = problems.filter(
    ({ path, expected }, index) =>
      problems.findIndex((other) => other.path === path && other.expected === expected) === index,
  );
  if (different.length > 0) throw new InputError(different);
  return job;
}

/** As {@link readJob}, without throwing. */
export function tryReadJob(
  document: unknown,
  logs: Readonly<Record<string, LogTable>> = {},
  earlier?: CommissioningRecord,
): Outcome<Job> {
  return attempt(() => readJob(document, logs, earlier));
}

/** Names of the logs that a job asks for, so that a caller knows what to read first; empty for a malformed job. */
export function logsOf(document: unknown): readonly string[] {
  if (!isFields(document)) return [];
  return serial
    .map(([name]) => document[name])
    .map((step) => (isFields(step) ? step["log"] : undefined))
    .filter((name) => typeof name === "string");
}

/** Name of the record that a job continues, so that a caller knows what to read first. */
export function recordNameOf(document: unknown): string | undefined {
  const name = isFields(document) ? document["continues"] : undefined;
  return typeof name === "string" ? name : undefined;
}

function isFields(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** A job of the form before: an installation, the one kind of visit that it knew. */
function fromEarlierForm(document: Fields): Fields {
  const isEarlier = document["format"] === EARLIER_JOB_FORMAT && !Object.hasOwn(document, "visit");
  return isEarlier ? { ...document, visit: "installation" } : document;
}

/** A job that continues a record needs it, and a record is continued only by a job that says so. */
function checkContinuing(
  document: Fields,
  earlier: CommissioningRecord | undefined,
  problems: Problem[],
): void {
  const name = recordNameOf(document);
  if (name !== undefined && earlier === undefined) {
    problems.push({ path: "continues", value: name, expected: "the name of a record that can be read" });
  }
  if (name === undefined && earlier !== undefined && !Object.hasOwn(document, "continues")) {
    problems.push({
      path: "continues",
      value: undefined,
      expected: "the name of the record that is continued",
    });
  }
}

/** Reads every part but the instruments; a part with a problem is left out of the result. */
function readParts(document: Fields, problems: Problem[]): Record<string, unknown> {
  const parts: Record<string, unknown> = {};
  for (const name of Object.keys(document)) {
    if (name !== "instruments" && !(JOB_PARTS as readonly string[]).includes(name)) {
      problems.push({ path: name, value: document[name], expected: "no such field" });
    }
  }
  for (const name of JOB_PARTS) {
    if (!Object.hasOwn(document, name) && !required.includes(name)) continue;
    const part = parsePart(name, document[name]);
    if (part.ok) parts[name] = part.value;
    else problems.push(...part.problems);
  }
  return parts;
}

/** Reads every instrument; one with a problem is left out, so that the others can still be used. */
function readInstruments(given: unknown, problems: Problem[]): Job["instruments"] {
  const read: Record<string, Record<string, unknown>> = { gauges: {}, thermometers: {}, scales: {} };
  const expected = "the instruments: gauges, thermometers and scales, each by name";
  if (!isFields(given)) {
    problems.push({ path: "instruments", value: given, expected });
    return read as unknown as Job["instruments"];
  }
  for (const name of Object.keys(given)) {
    if (!Object.hasOwn(read, name))
      problems.push({ path: `instruments.${name}`, value: given[name], expected: "no such field" });
  }
  for (const kind of INSTRUMENT_KINDS) {
    const list = given[kind];
    if (!isFields(list)) {
      problems.push({ path: `instruments.${kind}`, value: list, expected: `${kind} by name` });
      continue;
    }
    for (const [name, value] of Object.entries(list)) {
      const instrument = parseInstrument(kind, name, value);
      const found = instrument.ok ? faultsOf(kind, name, instrument.value) : instrument.problems;
      if (instrument.ok && found.length === 0) read[kind]![name] = instrument.value;
      problems.push(...found);
    }
  }
  return read as unknown as Job["instruments"];
}

/** What no instrument of a kind can be, though its form is right. */
function faultsOf(kind: string, name: string, value: unknown): readonly Problem[] {
  const check = new InputCheck();
  if (kind === "gauges") checkGauge(check, `instruments.gauges.${name}`, value as PressureGauge);
  if (kind === "thermometers")
    checkThermometer(check, `instruments.thermometers.${name}`, value as Thermometer);
  return check.problems;
}

/** Names are looked at in the document itself: a step with another mistake may name them wrongly as well. */
function checkNames(document: Fields, problems: Problem[]): void {
  const unit = document["unit"];
  const name = isFields(unit) ? unit["refrigerant"] : undefined;
  if (typeof name === "string" && name !== "") {
    const found = tryRefrigerant(name);
    if (!found.ok) {
      problems.push({
        path: "unit.refrigerant",
        value: name,
        expected: `a refrigerant of the catalogue: ${found.error.message}`,
      });
    }
  }
  const instruments = isFields(document["instruments"]) ? document["instruments"] : {};
  for (const step of RECORD_STEPS) {
    const fields = document[step];
    if (!isFields(fields)) continue;
    for (const [field, kind] of Object.entries(instrumentKinds)) {
      const wanted = fields[field];
      const list = instruments[kind];
      const known = isFields(list) ? Object.keys(list) : [];
      if (typeof wanted !== "string" || known.includes(wanted)) continue;
      const expected = known.length === 0 ? `a name under instruments.${kind}` : `one of ${known.join(", ")}`;
      problems.push({ path: `${step}.${field}`, value: wanted, expected });
    }
  }
}

/** Whether the instruments that a step names are all there. */
function canTry(step: unknown, instruments: Job["instruments"]): boolean {
  if (!isFields(step)) return false;
  return Object.entries(instrumentKinds).every(([field, kind]) => {
    const name = step[field];
    return typeof name !== "string" || Object.hasOwn(instruments[kind], name);
  });
}

/** One reading: all of its fields, and none of a series. */
function checkedSingle(step: Fields, path: string, problems: Problem[]): Fields {
  for (const field of single[path] ?? []) {
    if (step[field] === undefined) {
      problems.push({
        path: `${path}.${field}`,
        value: undefined,
        expected: "the other half of the reading",
      });
    }
  }
  for (const field of ["readings", "log", "allowedDrift"]) {
    if (step[field] === undefined) continue;
    problems.push({
      path: `${path}.${field}`,
      value: field === "readings" ? "a series" : step[field],
      expected: "one reading or a series, not both",
    });
  }
  return step;
}

/** A step with a series, as its form leaves it: readings, or the name of a log. */
type Series = Fields & { readonly readings?: readonly unknown[]; readonly log?: string };

function withReadings(
  step: Series,
  path: string,
  kind: "gauge" | "absolute",
  columns: readonly LogColumn[],
  temperature: string | undefined,
  logs: Readonly<Record<string, LogTable>>,
  problems: Problem[],
): Series {
  if ((step.log === undefined) === (step.readings === undefined)) {
    const value = step.log === undefined ? "neither" : "both";
    const or = Object.hasOwn(single, path) ? `${single[path]?.join(" and ")}, ` : "";
    problems.push({ path, value, expected: `${or}readings or the name of a log, one of them` });
    return step;
  }
  if (Object.hasOwn(single, path) && step["allowedDrift"] === undefined) {
    const expected = "how far the value may still move during a series, such as 1 K";
    problems.push({ path: `${path}.allowedDrift`, value: undefined, expected });
  }
  if (step.log === undefined) return step;
  const table = Object.hasOwn(logs, step.log) ? logs[step.log] : undefined;
  if (table === undefined) {
    problems.push({ path: `${path}.log`, value: step.log, expected: "the name of a log that can be read" });
    return step;
  }
  const rows = readLog(table, `${path}.log`, kind, columns, problems);
  return { ...step, readings: rows.map((row) => toReading(row, temperature)) };
}

function toReading(row: LogRow, temperatureName: string | undefined): unknown {
  const { time, pressure, barometer } = row;
  const temperature = row["pipe temperature"] ?? row.temperature;
  return {
    time,
    pressure,
    ...(temperature === undefined || temperatureName === undefined ? {} : { [temperatureName]: temperature }),
    ...(barometer === undefined ? {} : { barometer }),
  };
}
