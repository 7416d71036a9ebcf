import { describe, expect, it } from "vitest";
import {
  type CommissioningRecord,
  commission,
  lineCharge,
  nitrogenHold,
  readJob,
  recordAsMarkdown,
  recordAsText,
  superheat,
  tryReadJob,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, localAtmosphere, megapascalGauge } from "../../../src/units/index.js";
import { demonstrationJob, demonstrationLogs } from "./demonstration.js";

function recordOf(
  change: (job: ReturnType<typeof demonstrationJob>) => void = () => {},
): CommissioningRecord {
  const job = demonstrationJob();
  change(job);
  return commission(readJob(job, demonstrationLogs()));
}

describe("the demonstration job", () => {
  it("has one reading that fails, one that cannot tell, and passes the rest", () => {
    const verdicts = recordOf().steps.map(({ name, verdict }) => [name, verdict]);
    expect(verdicts).toEqual([
      ["room", "pass"],
      ["joints", "pass"],
      ["strengthTest", "pass"],
      ["nitrogenHold", "pass"],
      ["evacuation", "pass"],
      ["vacuumRise", "pass"],
      ["lineSet", "pass"],
      ["opening", "pass"],
      ["standing", "pass"],
      ["superheat", "fail"],
      ["subcooling", "inconclusive"],
      ["running", "pass"],
    ]);
    expect(recordOf().verdict).toBe("fail");
  });

  it("shows for each step what the function of that step returns", () => {
    const record = recordOf();
    const found = (name: string) => record.steps.find((step) => step.name === name)?.found[0];
    const atmosphere = localAtmosphere({ from: "altitude", altitude: 612 });
    const direct = superheat({
      refrigerant: refrigerant("R-32"),
      mode: "cooling",
      port: "gas-line",
      pressure: megapascalGauge(0.862),
      lineTemperature: celsius(18.4),
      atmosphere,
      gauge: {
        accuracy: { kind: "percent-of-full-scale", percent: 0.5, fullScale: megapascalGauge(5.5) },
        resolution: 1000,
      },
      thermometer: { accuracy: { kind: "pipe-probe", probe: "clamp" }, resolution: 0.1 },
    });
    expect(found("superheat")?.si).toBeWithin(direct.value, 1e-12);
    expect(found("superheat")?.expandedUncertainty).toBeWithin(direct.expandedUncertainty, 1e-12);
    const charge = lineCharge({
      length: 16,
      chargeFreeLength: 7.5,
      chargePerMetre: 0.015,
      maximumLength: 30,
    });
    // 8.5 m beyond the nameplate at 15 g/m: 127.5 g by hand.
    expect(charge.extraCharge).toBeWithin(0.1275, 1e-12);
    expect(found("room")?.si).toBeWithin(1.75 + charge.extraCharge, 1e-12);
  });

  it("would have been called a leak by the printed rule of 0.01 MPa per °C", () => {
    const step = recordOf().steps.find(({ name }) => name === "nitrogenHold")!;
    const [corrected, rule] = step.expected.map(({ si }) => si!);
    const last = 3.97e6;
    expect(last).toBeGreaterThan(corrected! - step.found[0]!.expandedUncertainty!);
    expect(last).toBeLessThan(rule! - step.found[0]!.expandedUncertainty!);
  });

  it("takes two readings in place of a log", () => {
    const twice = recordOf((job) => {
      delete job.nitrogenHold.log;
      job.nitrogenHold.readings = [
        { time: "0 min", pressure: "4.10 MPa gauge", pipeTemperature: "24.2 °C" },
        { time: "18 h", pressure: "575.8 psig", pipeTemperature: "60.8 °F" },
      ];
      delete job.vacuumRise.log;
      job.vacuumRise.readings = [
        { time: "0 s", pressure: "43.7 Pa abs" },
        { time: "12 min", pressure: "44.9 Pa abs" },
      ];
    });
    const hold = twice.steps.find(({ name }) => name === "nitrogenHold")!;
    const direct = nitrogenHold({
      nitrogen: refrigerant("R-728"),
      readings: [
        { time: 0, pressure: 4.1e6, pipeTemperature: 297.35 },
        { time: 64800, pressure: 3.97e6, pipeTemperature: 289.15 },
      ],
      gauge: {
        accuracy: { kind: "accuracy-class", accuracyClass: 1, scaleMinimum: 0, scaleMaximum: 6e6 },
        resolution: 1e4,
      },
      thermometer: { accuracy: { kind: "pipe-probe", probe: "insulated-or-immersed" }, resolution: 0.1 },
      atmosphere: localAtmosphere({ from: "altitude", altitude: 612 }),
      maximumAllowablePressure: 4.15e6,
      requiredDuration: 3600,
      internalVolume: 2.1e-3,
    });
    // 575.8 psi is 3.97 MPa but for 0.1 psi of rounding, 0.7 kPa.
    expect(Math.abs(hold.found[0]!.si! - direct.deviation)).toBeLessThan(700);
    expect(hold.verdict).toBe("pass");
    expect(twice.steps.find(({ name }) => name === "vacuumRise")?.verdict).toBe("pass");
  });

  it("does not depend on the units of entry", () => {
    const other = recordOf((job) => {
      job.atmosphere.altitude = "2007.874 ft";
      job.superheat.pressure = "125.0225 psig";
      job.superheat.lineTemperature = "65.12 °F";
      job.superheat.target = { minimum: "7.2 °F", maximum: "14.4 °F" };
      job.room.floorArea = "263.7158 ft2";
      job.lineSet.added = "4.409245 oz";
    });
    const same = recordOf();
    expect(other.steps.map(({ verdict }) => verdict)).toEqual(same.steps.map(({ verdict }) => verdict));
    // Seven digits of entry leave six in a difference of two temperatures.
    const superheats = [other, same].map(({ steps }) => steps.find(({ name }) => name === "superheat")!);
    expect(superheats[0]!.found[0]!.si).toBeWithin(superheats[1]!.found[0]!.si!, 1e-5);
  });
});

describe("a job with steps left out", () => {
  it("says which, and says nothing about them", () => {
    const record = recordOf((job) => {
      delete job.nitrogenHold;
      delete job.subcooling;
    });
    expect(record.missing).toEqual(["Pressure test with nitrogen", "Subcooling in steady running"]);
    expect(record.steps).toHaveLength(10);
    expect(recordAsText(record)).toContain("Not in this job: Pressure test with nitrogen;");
    expect(record.sources.join()).not.toContain("Span");
  });
});

describe("a job that no step can answer", () => {
  it("names everything that any step refuses, by its path in the job and with its text", () => {
    const job = demonstrationJob();
    job.atmosphere.altitude = "600 m";
    job.lineSet.length = "31 m";
    job.superheat.pressure = "7 MPa gauge";
    job.standing.temperature = "95 °C";
    job.subcooling.port = "gas-line";
    job.unit.maximumAllowablePressure = "3 MPa gauge";
    job.room.height = "1 m";
    job.superheat.target = { minimum: "9 K", maximum: "8 K" };
    const outcome = tryReadJob(job, demonstrationLogs());
    expect(outcome.ok).toBe(false);
    const problems = outcome.ok ? [] : (outcome.error as InputError).problems;
    const found = Object.fromEntries(problems.map(({ path, value }) => [path, value]));
    expect(found).toMatchObject({
      "lineSet.length": "31 m",
      "superheat.pressure": "7 MPa gauge",
      "standing.temperature": "95 °C",
      "subcooling.port": "gas-line",
      "nitrogenHold.readings[0].pressure": "4.10 MPa gauge",
      "room.height": "1 m",
    });
  });

  it("hears of a bad instrument once, whoever uses it or nobody", () => {
    const job = demonstrationJob();
    job.instruments.gauges.manifold.accuracy.percent = -1;
    job.instruments.gauges["spare gauge"] = { accuracy: { kind: "half-width", halfWidth: "-5 Pa" } };
    const outcome = tryReadJob(job, demonstrationLogs());
    const problems = outcome.ok ? [] : (outcome.error as InputError).problems;
    expect(problems.map(({ path }) => path)).toEqual([
      "instruments.gauges.manifold.accuracy.percent",
      "instruments.gauges.spare gauge.accuracy.halfWidth",
    ]);
  });
});

describe("rooms and charges", () => {
  it("take nothing for granted where the job holds no line set", () => {
    const record = recordOf((job) => {
      delete job.lineSet;
    });
    const room = record.steps.find(({ name }) => name === "room")!;
    expect(room.found[0]?.si).toBe(1.75);
    expect(room.read.map(({ label }) => label)).not.toContain("added for the line set");
    expect(room.assumptions.join()).toContain("Nothing is added to the nameplate charge");
  });

  it("pass a short line set that nothing was added for", () => {
    const record = recordOf((job) => {
      job.lineSet.length = "5 m";
      job.lineSet.added = "0 g";
    });
    expect(record.steps.find(({ name }) => name === "lineSet")?.verdict).toBe("pass");
  });

  it("say that the rule is not about refrigerants that do not burn", () => {
    const record = recordOf((job) => {
      job.unit.refrigerant = "R-134a";
      for (const step of ["standing", "superheat", "subcooling", "running"]) delete job[step];
    });
    expect(record.steps[0]).toMatchObject({ name: "room", verdict: "inconclusive" });
    expect(record.steps[0]?.because).toContain("does not burn");
  });

  it("give no pass to a hold above PS, nor to one that instruments are too coarse for", () => {
    const above = recordOf((job) => {
      job.unit.maximumAllowablePressure = "4.05 MPa gauge";
    });
    expect(above.steps.find(({ name }) => name === "nitrogenHold")?.verdict).toBe("inconclusive");
    const coarse = recordOf((job) => {
      job.instruments.gauges["nitrogen gauge"].resolution = "1 MPa";
    });
    expect(coarse.steps.find(({ name }) => name === "nitrogenHold")?.verdict).toBe("inconclusive");
  });

  it("count the steps beside a verdict that rests on few", () => {
    const record = recordOf((job) => {
      for (const step of [
        "room",
        "joints",
        "strengthTest",
        "nitrogenHold",
        "vacuumRise",
        "lineSet",
        "opening",
        "standing",
        "superheat",
        "subcooling",
        "running",
      ]) {
        delete job[step];
      }
    });
    expect(recordAsText(record)).toMatch(/ PASS, 1 of 12 steps\n/);
  });
});

describe("printing", () => {
  it("puts every verdict, every caution and every source into text and Markdown", () => {
    const record = recordOf();
    for (const printed of [recordAsText(record), recordAsMarkdown(record)]) {
      for (const { title, verdict } of record.steps) {
        expect(printed).toContain(title);
        expect(printed).toContain(verdict);
      }
      const flat = printed.replace(/\s+/g, " ");
      for (const { text } of record.steps.flatMap(({ cautions }) => cautions)) expect(flat).toContain(text);
      for (const source of record.sources) expect(flat).toContain(source);
      expect(printed).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  it("keeps text within 100 columns", () => {
    for (const line of recordAsText(recordOf()).split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  it("gives JSON that holds the numbers in SI with their unit", () => {
    const again = JSON.parse(JSON.stringify(recordOf())) as CommissioningRecord;
    const entries = again.steps.flatMap(({ read, expected, found }) => [...read, ...expected, ...found]);
    for (const { si, unit } of entries) expect(si === undefined).toBe(unit === undefined);
    expect(again.format).toBe("dewline-record/2");
  });
});
