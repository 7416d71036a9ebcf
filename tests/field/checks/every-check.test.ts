import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";

/** The check values of field work are numbered 001 to 109. */
const ids = Array.from({ length: 109 }, (_, index) => `FP-${String(index + 1).padStart(3, "0")}`);

it("every check value has one test, named by its id", () => {
  const here = new URL(".", import.meta.url);
  const found = readdirSync(here)
    .filter((name) => name.endsWith(".test.ts"))
    .flatMap(
      (name) => readFileSync(new URL(name, here), "utf8").match(/(?<=fieldCheck\(\s*")FP-\d{3}/g) ?? [],
    );
  expect(found.sort()).toEqual(ids);
});
