import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const here = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** Set by `.ci/run`, which counts what passed. */
const resultsFile = process.env["TEST_RESULTS"];

/** Matchers, and the seed of every random case: a room may have properties too. */
const setupFiles = [here("tests/support/matchers.ts"), here("tests/support/fuzz-seed.ts")];

/** One project, a folder or a few; a browser project can be added to the list with its `browser` setting in `more`. */
const project = (name: string, include: string[], more: object = {}) => ({
  extends: true as const,
  test: { name, include, setupFiles, ...more },
});

export default defineConfig({
  root: here(""),
  resolve: {
    alias: [
      { find: /^dewline\/fluids\/(.*)$/, replacement: here("src/fluids/$1.ts") },
      { find: /^dewline\/blends\/(.*)$/, replacement: here("src/blends/$1.ts") },
      { find: /^dewline\/core$/, replacement: here("src/core.ts") },
      { find: /^dewline$/, replacement: here("src/index.ts") },
    ],
  },
  test: {
    reporters: resultsFile === undefined ? ["default"] : ["default", ["json", { outputFile: resultsFile }]],
    projects: [
      project(
        "rooms",
        ["tests/{units,catalogue,equation,equilibrium,state,cycle,safety,field,chart,lesson}/**/*.test.ts"],
        { testTimeout: 60_000 },
      ),
      project("properties", ["tests/properties/**/*.test.ts"], {
        globalSetup: [here("tests/support/announce-fuzz-seed.ts")],
        testTimeout: 120_000,
      }),
      project("handbook", ["tests/handbook/**/*.test.ts"], { testTimeout: 60_000 }),
      project("examples", ["tests/generated/**/*.test.ts"], { testTimeout: 30_000 }),
      project("scripts", ["tests/scripts/**/*.test.ts"], { testTimeout: 60_000 }),
      project("types", [], {
        typecheck: {
          enabled: true,
          only: true,
          include: ["tests/types/**/*.test-d.ts"],
          tsconfig: "tsconfig.json",
        },
      }),
    ],
  },
});
