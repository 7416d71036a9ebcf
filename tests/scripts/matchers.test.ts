import { describe, expect, test } from "vitest";
import { readFuzzSettings } from "../support/read-fuzz-settings.js";

describe("toBeWithin", () => {
  test("compares relative to the expected value", () => {
    expect(101).toBeWithin(100, 0.0101);
    expect(-101).toBeWithin(-100, 0.0101);
    expect(101).not.toBeWithin(100, 0.0099);
    expect(-100).not.toBeWithin(100, 1);
  });

  test("lets nothing but zero pass for an expected zero", () => {
    expect(0).toBeWithin(0, 0);
    expect(1e-300).not.toBeWithin(0, 1);
  });

  test("lets no value pass that is not a finite number", () => {
    for (const actual of [Number.NaN, Number.POSITIVE_INFINITY, undefined, "100"]) {
      expect(actual).not.toBeWithin(100, 1e9);
    }
  });

  test("refuses a meaningless expectation", () => {
    expect(() => expect(1).toBeWithin(Number.NaN, 1)).toThrow("finite");
    expect(() => expect(1).toBeWithin(1, Number.NaN)).toThrow("finite");
    expect(() => expect(1).toBeWithin(1, -1)).toThrow("finite");
  });

  test("says how far off the value is", () => {
    expect(() => expect(101).toBeWithin(100, 1e-3)).toThrow(
      "101 differs from 100 by 1.00e-2 relative; allowed 1.00e-3",
    );
  });
});

describe("readFuzzSettings", () => {
  test("takes seed and runs from the environment, and has fixed ones without", () => {
    expect(readFuzzSettings({ FC_SEED: "-7", FC_RUNS: "30" })).toEqual({ seed: -7, runs: 30 });
    expect(readFuzzSettings({})).toEqual(readFuzzSettings({}));
    expect(readFuzzSettings({}).runs).toBe(2000);
  });

  test.each(["", " ", "abc", "1e3", "0x10", "1.5", "NaN", "99999999999"])("refuses %j", (text) => {
    expect(() => readFuzzSettings({ FC_SEED: text })).toThrow(/FC_SEED must be a whole number/);
    expect(() => readFuzzSettings({ FC_RUNS: text })).toThrow(/FC_RUNS must be a whole number/);
  });

  test("refuses no runs at all", () => {
    expect(() => readFuzzSettings({ FC_RUNS: "0" })).toThrow("FC_RUNS");
  });
});
