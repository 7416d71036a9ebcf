import { execFile } from "node:child_process";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../../", import.meta.url));

interface Run {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs what `npm start` runs. */
function run(...args: string[]): Promise<Run> {
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      ["--import", "tsx", "scripts/commission.ts", ...args],
      { cwd: root },
      (error, out, err) => resolve({ code: Number(error?.code ?? 0), out, err }),
    );
  });
}

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "dewline-job-"));
});
afterAll(() => rm(folder, { recursive: true }));

describe("the command", () => {
  it("prints the record of the demonstration job", async () => {
    const { code, out } = await run();
    expect(code).toBe(0);
    expect(out).toMatch(/^Commissioning record: .* FAIL\n/);
    expect(out).toContain("superheat 13.2 ± 1.6 K");
  });

  it("prints another job, in each format", async () => {
    const markdown = await run("docs/jobs/weaving-studio.json", "--format", "markdown");
    expect(markdown.out).toMatch(/^# Commissioning record/);
    const json = await run("docs/jobs/weaving-studio.json", "--format=json");
    expect(JSON.parse(json.out).verdict).toBe("fail");
  });

  it("prints the demonstration with a blend, and its answer to the leak", async () => {
    const { code, out } = await run("docs/jobs/weaving-studio-r-454b.json");
    expect(code).toBe(0);
    expect(out).toMatch(/^Commissioning record: .* INCONCLUSIVE\n/);
    expect(out).toMatch(
      /\n13 Leak and top-up +R-32 after topping up, vapour escaped 67\.\d+ % +inconclusive\n/,
    );
    expect(out.replace(/\s+/g, " ")).toContain("recover what is left, evacuate, and weigh in a full charge");
  });

  it("lists all problems of a malformed job and computes nothing", async () => {
    const path = join(folder, "job.json");
    await writeFile(path, JSON.stringify({ format: "dewline-job/1", title: "" }));
    const { code, out, err } = await run(path);
    expect(code).toBe(1);
    expect(out).toBe("");
    for (const name of ["title", "place", "date", "atmosphere", "unit", "instruments"]) {
      expect(err).toContain(`  ${name}: `);
    }
  });

  it("refuses a field that is written twice, an empty file and a broken log", async () => {
    const twice = join(folder, "twice.json");
    await writeFile(twice, '{ "title": "a", "unit": { "mode": "cooling", "mode": "heating" } }');
    const { code, err } = await run(twice);
    expect(code).toBe(1);
    expect(err).toContain('unit.mode: "line 1"; expected a field that is written once');
    const empty = join(folder, "empty.json");
    await writeFile(empty, "");
    expect((await run(empty)).err).toContain("is empty");
    const broken = join(folder, "log.json");
    await writeFile(broken, JSON.stringify({ nitrogenHold: { log: "log.csv" } }));
    await writeFile(join(folder, "log.csv"), 'time (min),pressure (MPa gauge)\n0,"4.1\n');
    const run3 = await run(broken);
    expect(run3.err).toContain("is not CSV");
    expect(run3.err).not.toContain("    at ");
  });

  it("takes a job that begins with a byte order mark, in a folder with a space", async () => {
    const spaced = join(folder, "a b");
    await mkdir(spaced);
    await writeFile(join(spaced, "job.json"), `\uFEFF${JSON.stringify({ format: "dewline-job/1" })}`);
    expect((await run(join(spaced, "job.json"))).err).toContain("  title: missing");
  });

  it("explains itself when asked", async () => {
    const { code, out } = await run("--help");
    expect(code).toBe(0);
    expect(out).toContain("npm start -- path/to/job.json");
  });

  it("says in plain words what is wrong with a call", async () => {
    const path = join(folder, "broken.json");
    await writeFile(path, "{ not json");
    for (const args of [
      [path],
      ["no-such-file.json"],
      ["--format", "pdf"],
      ["--frmat", "text"],
      ["a", "b"],
    ]) {
      const { code, out, err } = await run(...args);
      expect(code).toBe(1);
      expect(out).toBe("");
      expect(err.length).toBeGreaterThan(10);
      expect(err).not.toContain("    at ");
    }
  });
});
