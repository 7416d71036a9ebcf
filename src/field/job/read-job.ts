import { UnknownRefrigerantError } from "../../catalogue/index.js";
import { tryRefrigerant } from "../../state/index.js";
import { attempt, InputError, type Outcome, type Problem } from "../../units/index.js";
import type { Job, JobHoldReading, JobNitrogenHold, JobVacuumRise, Stated } from "./job.js";
import { parseJobDocument } from "./job-schema.js";
import { type LogColumn, type LogTable, readLog } from "./log.js";

/** A job as the schema leaves it: series may still be names of logs. */
type Draft = Omit<Job, "nitrogenHold" | "vacuumRise"> & {
  readonly nitrogenHold?: Omit<JobNitrogenHold, "readings"> & {
    readonly readings?: readonly JobHoldReading[];
  };
  readonly vacuumRise?: Omit<JobVacuumRise, "readings"> & { readonly readings?: JobVacuumRise["readings"] };
};

/**
 * Checks a job and reads its quantities.
 *
 * @param document - The parsed JSON of a job file.
 * @param logs - Logged series that the job names, by those names.
 * @throws {@link InputError} `malformed-input`, with every problem of the job and its logs at once.
 */
export function readJob(document: unknown, logs: Readonly<Record<string, LogTable>> = {}): Job {
  const draft = parseJobDocument(document) as Draft;
  const problems: Problem[] = [];
  checkRefrigerant(draft, problems);
  checkInstruments(draft, problems);
  const job = withLogs(draft, logs, problems);
  if (problems.length > 0) throw new InputError(problems);
  return job;
}

/** As {@link readJob}, without throwing. */
export function tryReadJob(document: unknown, logs: Readonly<Record<string, LogTable>> = {}): Outcome<Job> {
  return attempt(() => readJob(document, logs));
}

/** Names of the logs that a job asks for, so that a caller knows what to read first; empty for a malformed job. */
export function logsOf(document: unknown): readonly string[] {
  if (typeof document !== "object" || document === null) return [];
  const { nitrogenHold, vacuumRise } = document as Readonly<
    Record<string, { readonly log?: unknown } | undefined>
  >;
  return [nitrogenHold?.log, vacuumRise?.log].filter((name) => typeof name === "string");
}

function checkRefrigerant({ unit }: Draft, problems: Problem[]): void {
  const found = tryRefrigerant(unit.refrigerant);
  if (found.ok) return;
  const near =
    found.error instanceof UnknownRefrigerantError && found.error.near.length > 0
      ? `, such as ${found.error.near.join(" or ")}`
      : "";
  problems.push({
    path: "unit.refrigerant",
    value: unit.refrigerant,
    expected: `a refrigerant of the catalogue${near} (${found.error.message})`,
  });
}

/** Every step has to name instruments that the job describes. */
function checkInstruments(draft: Draft, problems: Problem[]): void {
  const steps = [
    "lineSet",
    "nitrogenHold",
    "evacuation",
    "vacuumRise",
    "standing",
    "superheat",
    "subcooling",
  ] as const;
  const kinds = { gauge: "gauges", thermometer: "thermometers", scale: "scales" } as const;
  for (const step of steps) {
    const names = draft[step] as Readonly<Record<string, unknown>> | undefined;
    for (const [kind, list] of Object.entries(kinds)) {
      const name = names?.[kind];
      if (typeof name !== "string" || Object.hasOwn(draft.instruments[list], name)) continue;
      const known = Object.keys(draft.instruments[list]);
      problems.push({
        path: `${step}.${kind}`,
        value: name,
        expected: known.length === 0 ? `a name under instruments.${list}` : `one of ${known.join(", ")}`,
      });
    }
  }
}

function withLogs(draft: Draft, logs: Readonly<Record<string, LogTable>>, problems: Problem[]): Job {
  const { nitrogenHold: hold, vacuumRise: rise, ...rest } = draft;
  const holdColumns = ["time", "pressure", "pipe temperature"] as const;
  return {
    ...rest,
    ...(hold === undefined
      ? {}
      : {
          nitrogenHold: {
            ...hold,
            readings:
              seriesOf(hold, "nitrogenHold", "gauge", holdColumns, logs, problems)?.map((row) => ({
                time: row.time as Stated<number>,
                pressure: row.pressure as Stated<number>,
                pipeTemperature: row["pipe temperature"] as Stated<number>,
                ...(row.barometer === undefined ? {} : { barometer: row.barometer }),
              })) ??
              hold.readings ??
              [],
          },
        }),
    ...(rise === undefined
      ? {}
      : {
          vacuumRise: {
            ...rise,
            readings:
              seriesOf(rise, "vacuumRise", "absolute", ["time", "pressure"], logs, problems)?.map((row) => ({
                time: row.time as Stated<number>,
                pressure: row.pressure as Stated<number>,
              })) ??
              rise.readings ??
              [],
          },
        }),
  };
}

/** The rows of a step's log, or undefined where it has readings of its own. */
function seriesOf(
  step: { readonly log?: string; readonly readings?: unknown },
  path: string,
  kind: "gauge" | "absolute",
  columns: readonly LogColumn[],
  logs: Readonly<Record<string, LogTable>>,
  problems: Problem[],
): ReturnType<typeof readLog> | undefined {
  if ((step.log === undefined) === (step.readings === undefined)) {
    problems.push({ path, value: step, expected: "readings or the name of a log, one of the two" });
    return undefined;
  }
  if (step.log === undefined) return undefined;
  const table = Object.hasOwn(logs, step.log) ? logs[step.log] : undefined;
  if (table === undefined) {
    problems.push({ path: `${path}.log`, value: step.log, expected: "the name of a log that can be read" });
    return [];
  }
  return readLog(table, `${path}.log`, kind, columns, problems);
}
