import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const root = new URL("../../", import.meta.url);
const readme = readFileSync(new URL("README.md", root), "utf8");

describe("README", () => {
  it("shows the first lines that npm start prints", () => {
    const shown = /```text\n(Commissioning record:[\s\S]*?)```/.exec(readme)?.[1];
    const printed = execFileSync(process.execPath, ["--import", "tsx", "scripts/commission.ts"], {
      cwd: fileURLToPath(root),
      encoding: "utf8",
    });
    expect(shown).toBeDefined();
    expect(printed.startsWith(shown!)).toBe(true);
  });

  it("quotes a line that stands in the accuracy table", () => {
    const quote = /\*\*(R-\S+)\*\*, ([^,]+), ([^,]+): (\d+) points, worst (\S+ %), mean (\S+ %)/.exec(readme);
    expect(quote).not.toBeNull();
    const [, fluid, region, property, points, worst, mean] = quote!;
    const table = readFileSync(new URL("docs/accuracy.md", root), "utf8");
    const section = table.slice(table.indexOf(`### ${fluid},`)).split("\n### ")[0]!;
    expect(section).toContain(`| ${region} | ${property} | ${points} | ${worst} | ${mean} |`);
  });
});
