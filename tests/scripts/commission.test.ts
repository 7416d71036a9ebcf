import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
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
