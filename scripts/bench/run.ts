/**
 * Prints how long the library takes: `npm run bench`, or `npm run bench -- R-290 R-717` for other refrigerants.
 *
 * What runs is `src` bundled with the settings of the package for this one purpose, in a temporary folder: `dist` has
 * no door to a single evaluation, may be stale, and a loader that names every closure would be measured with it.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "tsup";
import { findFluid } from "../../src/catalogue/index.js";
import { makers } from "./cases.js";
import { exponentialsOf } from "./exponentials.js";
import type { Measurement } from "./measure.js";

const usual = ["R-32", "R-134a", "R-744"];

function measureApart(bundle: string, designation: string, name: string): Measurement {
  const printed = execFileSync(process.execPath, [bundle, designation, name], { encoding: "utf8" });
  return JSON.parse(printed) as Measurement;
}

function line(name: string, { minimum, median }: Measurement, floor: Measurement): string {
  const columns = [minimum.toFixed(0), median.toFixed(0), (minimum / floor.minimum).toFixed(1)];
  return `  ${name.padEnd(28)}${columns.map((text) => text.padStart(10)).join("")}`;
}

async function main(): Promise<void> {
  const asked = process.argv.slice(2);
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  try {
    await build({
      entry: ["scripts/bench/measure.ts"],
      config: false,
      outDir: folder,
      format: "esm",
      outExtension: () => ({ js: ".mjs" }),
      target: "es2022",
      platform: "node",
      noExternal: [/./],
      silent: true,
    });
    console.log(`${cpus()[0]?.model ?? "unknown processor"}, Node ${process.version}`);
    console.log(
      "ns a call; ratio of minima to the floor, which is the exponentials of the equation and nothing else",
    );
    for (const designation of asked.length > 0 ? asked : usual) {
      const exponentials = exponentialsOf(findFluid(designation));
      console.log(
        `${designation}, ${exponentials} exponentials`.padEnd(30),
        "minimum",
        "  median",
        "   ratio",
      );
      let floor: Measurement | undefined;
      for (const name of Object.keys(makers)) {
        const measured = measureApart(join(folder, "measure.mjs"), designation, name);
        floor ??= measured;
        console.log(line(name, measured, floor));
      }
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}

await main();
