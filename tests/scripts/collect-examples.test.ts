import { describe, expect, test } from "vitest";
import { findDocCommentBlocks, findMarkdownBlocks } from "../../scripts/examples/find-blocks.js";
import { writeTest } from "../../scripts/examples/write-test.js";

const block = (code: string, runs = true) => ({ file: "guide.md", line: 10, code, runs });
const written = (code: string) => writeTest(block(code)).code;

describe("finding blocks", () => {
  test("takes the ts blocks of a Markdown text, with the line of their first code", () => {
    const text = [
      "# Title",
      "```sh",
      "npm start",
      "```",
      "",
      "```ts",
      "one();",
      "```",
      "- in a list:",
      "  ```ts no-run",
      "  two();",
      "  ```",
    ];
    expect(findMarkdownBlocks("guide.md", text.join("\n"))).toEqual([
      { file: "guide.md", line: 7, code: "one();", runs: true },
      { file: "guide.md", line: 11, code: "two();", runs: false },
    ]);
  });

  test("takes the ts blocks of doc comments", () => {
    const text = [
      "const a = 1;",
      "/**",
      " * One.",
      " *",
      " * @example",
      " * ```ts",
      " * if (a) {",
      " *   one();",
      " * }",
      " * ```",
      " */",
      "export const b = 2;",
      "// ```ts",
    ];
    expect(findDocCommentBlocks("one.ts", text.join("\n"))).toEqual([
      { file: "one.ts", line: 7, code: "if (a) {\n  one();\n}", runs: true },
    ]);
  });

  test("refuses what would pass unseen", () => {
    expect(() => findMarkdownBlocks("guide.md", "```ts norun\none();\n```")).toThrow("guide.md:1: expected");
    expect(() => findMarkdownBlocks("guide.md", "```ts\none();")).toThrow("not closed");
    expect(() => findDocCommentBlocks("one.ts", "\n/**\n * @example one()\n */")).toThrow(
      "one.ts:2: 1 @example",
    );
  });
});

describe("writing a test", () => {
  test("checks a number to the digits printed, whatever its unit", () => {
    expect(written("p() // → 697724 Pa")).toContain(
      'expect(p(), "guide.md:10").toEqual(expect.toRoundTo("697724"))',
    );
    expect(written("t(); // → −12.50 °C")).toContain('toRoundTo("-12.50")');
    expect(written("q(); // → 1.2e-3")).toContain('toRoundTo("1.2e-3")');
  });

  test("checks strings, booleans, arrays and objects, numbers within them to the digits printed", () => {
    expect(written('s(); // → "R-32"')).toContain('.toEqual("R-32")');
    expect(written("b(); // → true")).toContain(".toEqual(true)");
    expect(written('a(); // → ["x", 0.70, -1]')).toContain(
      '.toEqual(["x", expect.toRoundTo("0.70"), expect.toRoundTo("-1")])',
    );
    expect(written("a(); // → { m: 1.5 } kg")).toContain('.toEqual({ m: expect.toRoundTo("1.5") })');
    expect(written('o(); // → { "R-32": 0.5, ok: true }')).toContain(
      '.toEqual({ "R-32": expect.toRoundTo("0.5"), ok: true })',
    );
  });

  test("takes the result from the next line, from console.log and from a declaration", () => {
    expect(written("long(\n  1,\n);\n// → 3")).toContain('expect(long(\n  1,\n), "guide.md:10")');
    expect(written("console.log(p); // → 3")).toContain('expect(p, "guide.md:10")');
    expect(written("one();\nconst p = f(); // → 3")).toContain('const p = f();\nexpect(p, "guide.md:11")');
  });

  test("counts the results", () => {
    expect(writeTest(block("a(); // → 1\nb(); // plain words\nc(); // → 2")).checks).toBe(2);
  });

  test("turns imports into dynamic ones and types into aliases", () => {
    expect(written('import { a, b as c, type T } from "dewline";')).toContain(
      'type T = import("dewline").T;\nconst { a, b: c } = await import("dewline");',
    );
    expect(written('import type { T as U } from "dewline/core";')).toContain(
      'type U = import("dewline/core").T;',
    );
    expect(written('import * as all from "dewline";')).toContain('const all = await import("dewline");');
  });

  test("imports names left out from the first door that has them, unless the block declares them", () => {
    const doors = { dewline: ["a", "b"], "dewline/core": ["a", "c"] };
    const { code } = writeTest(block("const b = 1;\nthing.a(c, b, { d });"), doors);
    expect(code).toContain(
      'const { a } = await import("dewline");\nconst { c } = await import("dewline/core");',
    );
  });

  test("skips a block that is not to run, and keeps it for the type check", () => {
    expect(writeTest(block("a();", false)).code).toContain("test.skip(");
  });

  test.each([
    ["if (a) {\n  b(); // → 1\n}", "1 results are printed but 0 follow"],
    ["a();\n\n\n// → 1", "1 results are printed but 0 follow"],
    ["a(); //=> 12", "behind"],
    ["a(); // → about 12", "expected a number"],
    ["a(); // → 12 345 Pa", "expected a number"],
    ["a(); // → f(3)", "expected a number"],
    ["function f() {} // → 3", "a printed result must follow"],
    ["console.log(a, b); // → 3", "one value"],
  ])("refuses %j", (code, message) => {
    expect(() => written(code)).toThrow(message);
    expect(() => written(code)).toThrow("guide.md:10");
  });
});

describe("rounding to the digits printed", () => {
  test.each([
    [697_724.4, "697724"],
    [-0.0449, "-0.04"],
    [1_474_600, "1.47e6"],
    [0.000_52, "0.5e-3"],
    [0, "0.0"],
  ])("%d rounds to %s", (value, printed) => {
    expect(value).toRoundTo(printed);
  });

  test.each([
    [697_724.6, "697724"],
    [697_724.6, "697723"],
    [1_475_100, "1.47e6"],
    [Number.NaN, "0"],
    [Number.POSITIVE_INFINITY, "0"],
  ])("%d does not round to %s", (value, printed) => {
    expect(value).not.toRoundTo(printed);
  });

  test("works inside a structure", () => {
    expect({ x: [1.04] }).toEqual({ x: [expect.toRoundTo("1.0")] });
    expect({ x: [1.06] }).not.toEqual({ x: [expect.toRoundTo("1.0")] });
    expect("1").not.toEqual(expect.toRoundTo("1"));
  });
});
