import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { commission, logsOf, readJob, tryReadJob } from "../../../src/field/index.js";
import { InputError, isDewlineError } from "../../../src/units/index.js";
import { demonstrationJob, demonstrationLogs } from "./demonstration.js";

/** Problems of a job, by path. */
function problemsOf(job: unknown, logs = demonstrationLogs()): Map<string, string> {
  const outcome = tryReadJob(job, logs);
  if (outcome.ok) return new Map();
  expect(outcome.error).toBeInstanceOf(InputError);
  return new Map((outcome.error as InputError).problems.map(({ path, expected }) => [path, expected]));
}

describe("a malformed job", () => {
  it("gets every problem of its form at once, each with its path", () => {
    const job = demonstrationJob();
    job.format = "dewline-job/9";
    job.unit.mode = "drying";
    job.unit.nameplateCharge = "1.75 bar";
    job.room.floorArea = "-3 m2";
    job.superheat.pressure = "0.862 MPa";
    job.superheat.lineTemprature = "18 °C";
    delete job.evacuation.limit;
    job.visit = "holiday";
    job.lineSet.length = 16;
    const problems = problemsOf(job);
    expect([...problems.keys()].sort()).toEqual([
      "evacuation.limit",
      "format",
      "lineSet.length",
      "room.floorArea",
      "superheat.lineTemprature",
      "superheat.pressure",
      "unit.mode",
      "unit.nameplateCharge",
      "visit",
    ]);
    expect(problems.get("superheat.pressure")).toContain("gauge or");
    expect(problems.get("superheat.lineTemprature")).toBe("no such field");
  });

  it("gets every unknown name at once: refrigerant, instruments, logs", () => {
    const job = demonstrationJob();
    job.unit.refrigerant = "R-33";
    job.superheat.gauge = "old manifold";
    job.nitrogenHold.thermometer = "thumb";
    job.lineSet.scale = "kitchen scale";
    job.vacuumRise.log = "elsewhere.csv";
    const problems = problemsOf(job);
    expect([...problems.keys()].sort()).toEqual([
      "lineSet.scale",
      "nitrogenHold.thermometer",
      "superheat.gauge",
      "unit.refrigerant",
      "vacuumRise.log",
    ]);
    expect(problems.get("unit.refrigerant")).toContain("R-32");
    expect(problems.get("superheat.gauge")).toContain("manifold");
  });

  it("gets problems of form, names and physics in one list", () => {
    const job = demonstrationJob();
    job.unit.refrigerant = "R-33";
    job.room.mounting = "wal";
    job.superheat.gauge = "old manifold";
    job.lineSet.added = "-50 g";
    job.unknown = 1;
    job.date = "2026-02-30";
    job.unit.nameplateCharge = "0 kg";
    expect([...problemsOf(job).keys()].sort()).toEqual([
      "date",
      "lineSet.added",
      "room.mounting",
      "superheat.gauge",
      "unit.nameplateCharge",
      "unit.refrigerant",
      "unknown",
    ]);
    job.unit.refrigerant = "R-32";
    job.unit.nameplateCharge = "1.75 kg";
    job.subcooling.port = "gas-line";
    expect([...problemsOf(job).keys()]).toContain("subcooling.port");
  });

  it("may not have both readings and a log, nor neither", () => {
    const both = demonstrationJob();
    both.vacuumRise.readings = [
      { time: "0 s", pressure: "40 Pa abs" },
      { time: "600 s", pressure: "41 Pa abs" },
    ];
    expect([...problemsOf(both).keys()]).toEqual(["vacuumRise"]);
    const neither = demonstrationJob();
    delete neither.nitrogenHold.log;
    expect([...problemsOf(neither).keys()]).toEqual(["nitrogenHold"]);
  });

  it("is refused whatever it is", () => {
    for (const value of [undefined, null, 3, "job", [], {}, { format: "dewline-job/1" }]) {
      expect(tryReadJob(value).ok).toBe(false);
      expect(logsOf(value)).toEqual([]);
    }
  });
});

describe("a log", () => {
  const breakLog = (change: (table: { header: string[]; rows: string[][] }) => void): Map<string, string> => {
    const logs = demonstrationLogs() as Record<string, { header: string[]; rows: string[][] }>;
    change(logs["weaving-studio-hold.csv"]!);
    return problemsOf(demonstrationJob(), logs);
  };

  it("is taken whole or not at all: each bad cell is named", () => {
    const problems = breakLog(({ rows }) => {
      rows[3]![1] = "";
      rows[7]![2] = "16,4";
      rows[9]!.pop();
      rows[11]![0] = "noon";
    });
    expect([...problems.keys()].sort()).toEqual([
      "nitrogenHold.log.rows[11].time",
      "nitrogenHold.log.rows[3].pressure",
      "nitrogenHold.log.rows[7].pipe temperature",
      "nitrogenHold.log.rows[9]",
    ]);
  });

  it("has to name its columns with their units", () => {
    expect([...breakLog(({ header }) => header.splice(1, 1, "pressure")).keys()]).toEqual([
      "nitrogenHold.log.header[1]",
      "nitrogenHold.log.header",
    ]);
    expect(
      breakLog(({ header }) => header.splice(1, 1, "pressure (MPa)")).get("nitrogenHold.log.header[1]"),
    ).toContain("gauge");
    expect([...breakLog(({ header }) => header.push("Pressure (bar gauge)")).keys()]).toContain(
      "nitrogenHold.log.header[3]",
    );
    expect([...breakLog(({ header }) => header.splice(0, 3, header.join(";"))).values()]).toContain(
      "columns separated by commas",
    );
    expect([...breakLog(({ rows }) => rows.splice(1)).keys()]).toEqual(["nitrogenHold.log.rows"]);
  });

  it("with times that do not increase is refused by the step", () => {
    const logs = demonstrationLogs() as Record<string, { header: string[]; rows: string[][] }>;
    logs["weaving-studio-hold.csv"]!.rows[5]![0] = "10";
    expect(() => commission(readJob(demonstrationJob(), logs))).toThrow(/nitrogenHold\..*time/);
  });
});

describe("any change to a job", () => {
  it.each([
    ["weaving-studio", 500],
    ["weaving-studio-r-454b", 150],
  ] as const)("gives a record or a typed error, never anything else: %s", (which, numRuns) => {
    const leaves: (readonly (string | number)[])[] = [];
    const walk = (value: unknown, path: readonly (string | number)[]): void => {
      if (typeof value === "object" && value !== null) {
        for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key]);
      } else leaves.push(path);
    };
    walk(demonstrationJob(which), []);
    const junk = fc.oneof(
      fc.constantFrom(
        "",
        "0 Pa",
        "-1 m",
        "1e400 K",
        "NaN bar gauge",
        "5",
        null,
        0,
        -1,
        [],
        {},
        true,
        "4 MPa gauge",
      ),
      fc.string(),
      fc.double(),
    );
    fc.assert(
      fc.property(fc.constantFrom(...leaves), junk, (path, value) => {
        const job = demonstrationJob(which);
        const last = path[path.length - 1]!;
        const parent = path.slice(0, -1).reduce((at, key) => at[key], job);
        parent[last] = value;
        try {
          const record = commission(readJob(job, demonstrationLogs(which)));
          // JSON writes what is not a finite number as null.
          expect(JSON.stringify(record)).not.toContain("null");
          const texts = record.steps.flatMap(({ read, expected, found, because }) => [
            because,
            ...[...read, ...expected, ...found].map(({ text }) => text),
          ]);
          for (const text of texts) expect(text).not.toMatch(/NaN|Infinity|undefined/);
        } catch (error) {
          if (!isDewlineError(error)) throw error;
        }
      }),
      { numRuns },
    );
  });
});
