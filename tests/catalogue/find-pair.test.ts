import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findBlendIn, findPairIn, listBlends, listFluids, listPairs } from "../../src/catalogue/index.js";

describe("findPairIn", () => {
  test("finds every pair in either order, as the same object", () => {
    for (const pair of listPairs()) {
      const [first, second] = pair.between;
      expect(findPairIn(listPairs(), first, second)).toBe(pair);
      expect(findPairIn(listPairs(), second, first)).toBe(pair);
    }
  });

  test("finds nothing for one fluid with itself, for strangers, and in an empty list", () => {
    expect(findPairIn(listPairs(), "R-32", "R-32")).toBeUndefined();
    expect(findPairIn(listPairs(), "R-32", "R-717")).toBeUndefined();
    expect(findPairIn([], "R-32", "R-125")).toBeUndefined();
  });

  test("takes the first of several", () => {
    const [first] = listPairs();
    if (first === undefined) throw new Error("no pairs");
    const mine = { ...first, between: [first.between[1], first.between[0]] as const };
    expect(findPairIn([mine, first], ...first.between)).toBe(mine);
  });
});

describe("findBlendIn", () => {
  test.each([
    ["R-410A", "R-410A"],
    ["r410a", "R-410A"],
    ["410A", "R-410A"],
    ["R410A", "R-410A"],
    [" r 410 a ", "R-410A"],
    ["HFC-410A", "R-410A"],
    ["hfc407c", "R-407C"],
    ["R–454B", "R-454B"],
    ["R-507A", "R-507A"],
  ])("takes %j for %s", (name, designation) => {
    expect(findBlendIn(listBlends(), name)?.designation).toBe(designation);
  });

  test.each(["R-410", "R-410B", "R-32", "", "---", "R-507", "propane"])("finds nothing for %j", (name) => {
    expect(findBlendIn(listBlends(), name)).toBeUndefined();
  });

  test("finds every designation under any case, with hyphens, spaces and brackets strewn in or left out", () => {
    const spelling = fc
      .record({
        blend: fc.constantFrom(...listBlends()),
        upper: fc.infiniteStream(fc.boolean()),
        between: fc.infiniteStream(fc.constantFrom("", "", "-", " ", "–", "_", "(", ")", "/", ".")),
      })
      .map(({ blend, upper, between }) => {
        const letters = [...blend.designation.replaceAll("-", "")].map((letter) => {
          const cased = upper.next().value ? letter.toUpperCase() : letter.toLowerCase();
          return cased + between.next().value;
        });
        return { blend, spelt: letters.join("") };
      });
    fc.assert(
      fc.property(spelling, ({ blend, spelt }) => {
        expect(findBlendIn(listBlends(), spelt)).toBe(blend);
      }),
      { numRuns: 300 },
    );
  });

  test("shares no name with a fluid or another blend", () => {
    const fluids = new Set(listFluids().map(({ designation }) => designation));
    const names = listBlends().flatMap(({ designation, synonyms }) => [designation, ...synonyms]);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(fluids).not.toContain(name);
  });
});
