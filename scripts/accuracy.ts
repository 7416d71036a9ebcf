/**
 * Compares Dewline with everything in `tests/handbook/`, by the same code as the tests, and writes what came out:
 * `docs/accuracy.md` for readers, `tests/handbook/worst-deviations.json` as the limits the tests hold.
 *
 * `tsx scripts/accuracy.ts` writes; with `--check` it only compares and fails when either is stale.
 */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { blendChecks } from "../tests/handbook/blend-checks.js";
import { compareCurves } from "../tests/handbook/blend-curves.js";
import { type Comparison, compareTable } from "../tests/handbook/comparisons.js";
import { criticalChecks } from "../tests/handbook/critical-checks.js";
import { type Exceptions, exceptionFor, readExceptions } from "../tests/handbook/exceptions.js";
import { limitsFile, limitsOf } from "../tests/handbook/limits.js";
import { listedGlides, listedPoints } from "../tests/handbook/listings.js";
import { pseudoPureBlends } from "../tests/handbook/pseudo-pure.js";
import { ammoniaRecorded, recordingSource, waterRecorded } from "../tests/handbook/reference-library.js";
import { readTables } from "../tests/handbook/rows.js";
import { evaluatedChecks, publishedChecks } from "../tests/handbook/verification.js";
import type { BlendFindings } from "./accuracy-blends.js";
import { accuracyDocument } from "./accuracy-document.js";

const documentFile = new URL("../docs/accuracy.md", import.meta.url);

/** Both files, with the text they should have. */
function expectedFiles(): readonly (readonly [file: URL, text: string])[] {
  const exceptions = readExceptions();
  const compared = readTables().flatMap(compareTable);
  const comparisons = compared.filter((one) => exceptionFor(exceptions, one) === undefined);
  const blends = blendFindings(compared, exceptions);
  const limits = {
    about:
      "Worst deviation seen of each property in each region, by fluid and equation, and source: relative, or in the " +
      "SI unit of the property where the tolerance of the row is absolute. Rounded up in the second digit; explained " +
      "exceptions are left out. Written by scripts/accuracy.ts; the tests fail when one is exceeded.",
    limits: limitsOf([...comparisons, ...blends.curves]),
  };
  return [
    [limitsFile, `${JSON.stringify(limits, undefined, 2)}\n`],
    [
      documentFile,
      accuracyDocument({
        comparisons,
        exceptions,
        evaluated: [...evaluatedChecks(), ...criticalChecks()],
        published: publishedChecks(),
        recorded: [...ammoniaRecorded(), ...waterRecorded()],
        recordedFrom: recordingSource("ammonia"),
        blends,
      }),
    ],
  ];
}

function blendFindings(compared: readonly Comparison[], exceptions: Exceptions): BlendFindings {
  const tables = compared.filter(({ equation }) => equation === "multi-fluid");
  return {
    curves: pseudoPureBlends.flatMap(compareCurves),
    tables,
    exceptions: tables.filter((one) => exceptionFor(exceptions, one) !== undefined),
    listings: listedPoints(),
    glides: listedGlides(),
    checks: blendChecks(),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [file, text] of expectedFiles()) {
    if (!process.argv.includes("--check")) {
      writeFileSync(file, text);
    } else if (!existsSync(file) || readFileSync(file, "utf8") !== text) {
      process.stderr.write(
        `stale: ${fileURLToPath(file)}; run "npm run accuracy" and look at what changed\n`,
      );
      process.exitCode = 1;
    }
  }
}
