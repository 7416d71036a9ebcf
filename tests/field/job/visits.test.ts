import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CommissioningRecord,
  commission,
  readJob,
  readRecord,
  recordAsMarkdown,
  recordAsText,
  recordNameOf,
  tryReadJob,
  tryReadRecord,
} from "../../../src/field/index.js";
import { type InputError, isDewlineError, type Outcome } from "../../../src/units/index.js";
import {
  type Demonstration,
  demonstrationJob,
  demonstrationLogs,
  demonstrationRecord,
} from "./demonstration.js";

type AnyJob = ReturnType<typeof demonstrationJob>;

const pathsOf = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);

function recordOf(which: Demonstration, change: (job: AnyJob) => void = () => {}): CommissioningRecord {
  const job = demonstrationJob(which);
  change(job);
  const earlier = recordNameOf(job) === undefined ? undefined : readRecord(demonstrationRecord());
  return commission(readJob(job, demonstrationLogs(which), earlier));
}

const stepOf = (record: CommissioningRecord, name: string) =>
  record.steps.find((step) => step.name === name)!;

describe("the demonstrations", () => {
  it("at altitude stops at a wet evacuation, classified as moisture, and keeps the valves shut", () => {
    const record = recordOf("ridge-refuge");
    const rise = stepOf(record, "vacuumRise");
    expect(rise.verdict).toBe("fail");
    expect(rise.because).toContain("moisture-or-outgassing");
    expect(record.next[0]).toContain("Keep the stop valves shut");
    expect(record.next.join()).toContain("Break the vacuum with dry nitrogen");
    // ISO 2533 at 2350 m: 76.1 kPa.
    expect(record.facts.find(({ label }) => label.startsWith("air pressure"))?.text).toContain("76.1");
  });

  it("in heating reads superheat at the compressor and judges the splits of the other exchangers", () => {
    const record = recordOf("boat-house");
    expect(record.steps.every(({ verdict }) => verdict === "pass")).toBe(true);
    // 5 °C below the outdoor air and 20 K above the room, as the job was made to be.
    const [condensing, evaporating] = stepOf(record, "running").found;
    expect(condensing!.si).toBeGreaterThan(18);
    expect(evaporating!.si).toBeWithin(8, 0.05);
    expect(stepOf(record, "superheat").read.map(({ label }) => label)).toContain("readings");
    // On the gas line it would be the discharge.
    const wrong = demonstrationJob("boat-house");
    wrong.superheat.port = "gas-line";
    expect(pathsOf(tryReadJob(wrong, demonstrationLogs("boat-house")))).toEqual(["superheat.port"]);
  });

  it("with vapour lost from R-454B is refused a top-up", () => {
    const record = recordOf("weaving-studio-refused");
    expect(stepOf(record, "topUp").verdict).toBe("fail");
    expect(record.next.join()).toContain("Do not top up");
    expect(record.missing).toEqual(["Refrigerant weighed in"]);
  });
});

describe("a record that is continued", () => {
  it("is kept in a file that is what the first visit computes", () => {
    expect(JSON.parse(JSON.stringify(recordOf("boat-house")))).toEqual(demonstrationRecord());
  });

  it("keeps the visits before, unchanged, and compares with the first reading", () => {
    const record = recordOf("boat-house-second-winter");
    const first = readRecord(demonstrationRecord());
    expect(record.kind).toBe("yearly-check");
    expect(record.earlier).toHaveLength(1);
    expect(record.earlier[0]!.steps).toEqual(first.steps);
    const yearly = stepOf(record, "yearlyCheck");
    const change = yearly.found.find(({ label }) => label === "change of superheat since")!;
    const [before, now] = [
      stepOf(first as never, "superheat").found[0]!,
      stepOf(record, "superheat").found[0]!,
    ];
    expect(change.si).toBeWithin(now.si! - before.si!, 1e-9);
    expect(change.expandedUncertainty).toBeWithin(
      Math.hypot(now.expandedUncertainty!, before.expandedUncertainty!),
      1e-9,
    );
    // 120 g of 1.368 kg in more than a year: 8.77 % by hand.
    expect(yearly.found[0]!.text).toContain("8.8 %");
    expect(yearly.verdict).toBe("fail");
  });

  it("can be read again and continued further", () => {
    const second = readRecord(JSON.parse(JSON.stringify(recordOf("boat-house-second-winter"))));
    const job = demonstrationJob("boat-house-second-winter");
    job.date = "2028-11-20";
    const third = commission(readJob(job, demonstrationLogs("boat-house-second-winter"), second));
    expect(third.earlier.map(({ date }) => date)).toEqual(["2026-11-12", "2027-11-18"]);
    for (const printed of [recordAsText(third), recordAsMarkdown(third)]) {
      expect(printed).toContain("Earlier visits");
      expect(printed).not.toMatch(/NaN|undefined/);
    }
  });

  it("is refused another refrigerant, charge or an earlier day, and a record that is not there", () => {
    const refuse = (change: (job: AnyJob) => void) => {
      const job = demonstrationJob("boat-house-second-winter");
      change(job);
      return pathsOf(
        tryReadJob(job, demonstrationLogs("boat-house-second-winter"), readRecord(demonstrationRecord())),
      );
    };
    expect(refuse((job) => (job.unit.refrigerant = "R-407C"))).toContain("unit.refrigerant");
    expect(refuse((job) => (job.unit.nameplateCharge = "1.4 kg"))).toEqual(["unit.nameplateCharge"]);
    expect(refuse((job) => (job.date = "2026-01-01"))).toEqual(["date"]);
    expect(refuse((job) => delete job.continues)).toEqual(["continues"]);
    const alone = demonstrationJob("boat-house-second-winter");
    expect(pathsOf(tryReadJob(alone, demonstrationLogs("boat-house-second-winter")))).toEqual(["continues"]);
  });

  it("says that nothing can be compared where it holds nothing", () => {
    const record = recordOf("boat-house-second-winter", (job) => {
      delete job.superheat;
      delete job.subcooling;
      job.yearlyCheck.added = "0 g";
    });
    expect(stepOf(record, "yearlyCheck").verdict).toBe("inconclusive");
  });
});

describe("a job of the form before", () => {
  it("is read as an installation, the one kind of visit that it knew", () => {
    const job = demonstrationJob("boat-house");
    job.format = "dewline-job/1";
    delete job.visit;
    expect(commission(readJob(job, demonstrationLogs("boat-house"))).kind).toBe("installation");
    job.format = "dewline-job/2";
    expect(pathsOf(tryReadJob(job, demonstrationLogs("boat-house")))).toEqual(["visit"]);
  });
});

describe("a record as a file", () => {
  it("of the first form is read as the one visit that it is", () => {
    const { kind: _, next: __, earlier: ___, system: ____, ...rest } = demonstrationRecord();
    const steps = rest.steps.map(({ next: _____, ...step }: { next: unknown }) => step);
    const record = readRecord({ ...rest, format: "dewline-record/1", steps });
    expect(record).toMatchObject({ kind: "installation", system: { refrigerant: "R-410A" }, earlier: [] });
    expect(record.format).toBe("dewline-record/2");
  });

  it("is refused whole, with every path, where anything is wrong", () => {
    const record = demonstrationRecord();
    record.verdict = "fail";
    expect(pathsOf(tryReadRecord(record))).toEqual(["verdict"]);
    record.steps[0].verdict = "perhaps";
    record.extra = 1;
    record.format = "dewline-record/9";
    expect(pathsOf(tryReadRecord(record)).sort()).toEqual(["extra", "format", "steps[0].verdict"]);
    const twice = demonstrationRecord();
    twice.steps.push(twice.steps[0]);
    expect(pathsOf(tryReadRecord(twice))).toEqual([`steps[${twice.steps.length - 1}].name`]);
    for (const value of [undefined, null, 3, [], {}, "record"]) expect(tryReadRecord(value).ok).toBe(false);
  });
});

describe("series in place of one reading", () => {
  it("that drift have no verdict, and say so", () => {
    const record = recordOf("boat-house", (job) => {
      delete job.superheat.log;
      job.superheat.readings = [0, 1, 2, 3, 4, 5].map((minute) => ({
        time: `${minute} min`,
        pressure: "0.577 MPa gauge",
        temperature: `${1 + minute} °C`,
      }));
    });
    const step = stepOf(record, "superheat");
    expect(step.verdict).toBe("inconclusive");
    expect(step.because).toContain("did not keep still");
  });

  it("need an allowed drift, and do not mix with one reading", () => {
    const refuse = (change: (job: AnyJob) => void) => {
      const job = demonstrationJob("boat-house");
      change(job);
      return pathsOf(tryReadJob(job, demonstrationLogs("boat-house")));
    };
    expect(refuse((job) => delete job.superheat.allowedDrift)).toEqual(["superheat.allowedDrift"]);
    expect(refuse((job) => (job.subcooling.pressure = "2.3 MPa gauge"))).toEqual([
      "subcooling.lineTemperature",
      "subcooling.log",
      "subcooling.allowedDrift",
    ]);
    expect(refuse((job) => delete job.superheat.log)).toEqual(["superheat"]);
  });
});

describe("further steps", () => {
  it("judge joints by the manual or the lists, each by its place", () => {
    const record = recordOf("boat-house", (job) => {
      job.joints.list[1].torque = "70 N m";
      delete job.joints.list[0].manual;
    });
    const { verdict, next, warnings } = stepOf(record, "joints");
    expect(verdict).toBe("fail");
    expect(next.join()).toContain("indoor unit, gas side");
    expect(warnings.map(({ code }) => code)).toContain("no-manual");
    const job = demonstrationJob("boat-house");
    job.joints.list[2].manual = { minimum: "20 N m", maximum: "10 N m" };
    expect(pathsOf(tryReadJob(job, demonstrationLogs("boat-house")))).toEqual([
      "joints.list[2].manual.minimum",
    ]);
  });

  it("fail an opening with a leak, and leave one open that was searched too coarsely", () => {
    const of = (change: (search: AnyJob) => void) =>
      stepOf(
        recordOf("boat-house", (job) => change(job.opening.search)),
        "opening",
      ).verdict;
    expect(of((search) => (search.leaks = 1))).toBe("fail");
    expect(of((search) => (search.seenPerYear = "20 g"))).toBe("inconclusive");
    const job = demonstrationJob("boat-house");
    job.opening.search.leaks = 9;
    expect(pathsOf(tryReadJob(job, demonstrationLogs("boat-house")))).toEqual(["opening.search.leaks"]);
  });

  it("fail a blend drawn as vapour and a charge that is wrong", () => {
    const of = (change: (charge: AnyJob) => void) =>
      stepOf(
        recordOf("boat-house", (job) => change(job.charge)),
        "charge",
      ).verdict;
    expect(of((charge) => (charge.after = "9.7 kg"))).toBe("fail");
    // Its vapour is richer in R-32 than the designation allows.
    expect(of((charge) => (charge.drawnAs = "vapour"))).toBe("fail");
  });

  it("account for a recovery, and refuse a cylinder that may not be filled", () => {
    const recovery = {
      scale: "charging scale",
      gauge: "manifold",
      cylinder: { volume: "12 L", markedLimit: "9 kg", inside: "1.2 kg", refillable: true },
      before: "7.310 kg",
      after: "8.650 kg",
      expectedCharge: "1.368 kg",
      tolerance: "60 g",
      internalVolume: "3 L",
      endPressure: "20 kPa gauge",
      endTemperature: "8 °C",
    };
    const of = (change: object) =>
      recordOf("boat-house", (job) => {
        job.visit = "recovery";
        job.recovery = { ...recovery, ...change };
      });
    const good = stepOf(of({}), "recovery");
    expect(good.verdict).toBe("pass");
    expect(stepOf(of({ after: "8.2 kg" }), "recovery").verdict).toBe("fail");
    const nearlyFull = { ...recovery.cylinder, inside: "8 kg" };
    expect(stepOf(of({ cylinder: nearlyFull }), "recovery").next.join()).toContain("second cylinder");
    const job = demonstrationJob("boat-house");
    job.recovery = { ...recovery, cylinder: { ...recovery.cylinder, refillable: false } };
    expect(pathsOf(tryReadJob(job, demonstrationLogs("boat-house")))).toEqual([
      "recovery.cylinder.refillable",
    ]);
  });
});

describe("any change to a demonstration", () => {
  it.each(["ridge-refuge", "boat-house", "boat-house-second-winter", "weaving-studio-refused"] as const)(
    "gives a record or a typed error: %s",
    (which) => {
      const logs = demonstrationLogs(which);
      const earlier = readRecord(demonstrationRecord());
      const leaves = leavesOf(demonstrationJob(which));
      fc.assert(
        fc.property(
          fc.constantFrom(...leaves),
          fc.constantFrom(
            "0 K",
            "-5 MPa gauge",
            "9 kg",
            "",
            7,
            null,
            [],
            {},
            true,
            "1e9 °C",
            "3 N m",
            "unknown",
          ),
          (path, value) => {
            const job = demonstrationJob(which);
            let at = job;
            for (const key of path.slice(0, -1)) at = at[key];
            at[path[path.length - 1]!] = value;
            const outcome = tryReadJob(job, logs, job.continues === undefined ? undefined : earlier);
            if (outcome.ok) expect(recordAsText(commission(outcome.value))).not.toMatch(/NaN|undefined/);
            else expect(isDewlineError(outcome.error)).toBe(true);
          },
        ),
        { numRuns: 120 },
      );
    },
  );
});

/** Paths of all values in a document. */
function leavesOf(value: unknown, path: string[] = []): string[][] {
  if (typeof value !== "object" || value === null) return [path];
  return Object.entries(value).flatMap(([key, each]) => leavesOf(each, [...path, key]));
}
