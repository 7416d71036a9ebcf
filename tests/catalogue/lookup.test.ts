import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Fluid } from "../../src/catalogue/index.js";
import {
  findFluid,
  findFluidIn,
  listFluids,
  tryFindFluid,
  UnknownRefrigerantError,
} from "../../src/catalogue/index.js";
import type { DewlineError } from "../../src/units/index.js";
import { InputError } from "../../src/units/index.js";

/** What an unknown or ambiguous name is told. */
function refusal(name: string): UnknownRefrigerantError {
  const outcome = tryFindFluid(name);
  expect(outcome.ok, name).toBe(false);
  const error = (outcome as { error: DewlineError }).error;
  expect(error).toBeInstanceOf(UnknownRefrigerantError);
  expect(error.code).toBe("unknown-refrigerant");
  expect((error as UnknownRefrigerantError).asked).toBe(name);
  return error as UnknownRefrigerantError;
}

describe("findFluid", () => {
  // Chemical names, formulas and CAS numbers are common knowledge of the trade, no source.
  test.each([
    ["R-32", "r32"],
    ["R-32", "R 32"],
    ["R-32", "R32"],
    ["R-32", "32"],
    ["R-32", "HFC-32"],
    ["R-32", "HFC32"],
    ["R-32", "hfc 32"],
    ["R-32", "difluoromethane"],
    ["R-32", "Methylene fluoride"],
    ["R-32", "CH2F2"],
    ["R-32", "CH₂F₂"],
    ["R-32", "75-10-5"],
    ["R-32", " 75-10-5 "],
    ["R-22", "HCFC-22"],
    ["R-12", "cfc12"],
    ["R-1234ze(E)", "r1234ze(e)"],
    ["R-1234ze(E)", "R-1234ZE(E)"],
    ["R-1234ze(E)", "R1234zeE"],
    ["R-1234ze(E)", "HFO-1234ze(E)"],
    ["R-1234ze(E)", "trans-1,3,3,3-tetrafluoropropene"],
    ["R-1234ze(Z)", "r1234zez"],
    ["R-1233zd(E)", "HCFO-1233zd(E)"],
    ["R-1234yf", "2,3,3,3-tetrafluoroprop-1-ene"],
    ["R-290", "propane"],
    ["R-290", "C3H8"],
    ["R-600", "n-butane"],
    ["R-600a", "isobutane"],
    ["R-600a", "2-methylpropane"],
    ["R-601a", "isopentane"],
    ["R-1270", "propylene"],
    ["R-1270", "propene"],
    ["R-170", "ethane"],
    ["R-744", "carbon dioxide"],
    ["R-744", "CO2"],
    ["R-744", "co₂"],
    ["R-717", "ammonia"],
    ["R-717", "NH3"],
    ["R-728", "nitrogen"],
    ["R-728", "OFN"],
    ["R-E170", "RE170"],
    ["R-E170", "R-E170"],
    ["R-E170", "dimethyl ether"],
    ["R-13I1", "r13i1"],
    ["R-134a", "CF3CH2F"],
  ])("finds %s as %j", (designation, name) => {
    expect(findFluid(name).designation).toBe(designation);
  });

  test("finds every fluid by every name it carries that no other carries", () => {
    for (const { designation, name, cas } of listFluids()) {
      for (const asked of [designation, name, cas]) {
        expect(findFluid(asked).designation, asked).toBe(designation);
      }
    }
  });

  test("finds every designation under any case, with hyphens, spaces and brackets strewn in or left out", () => {
    const spelling = fc
      .record({
        fluid: fc.constantFrom(...listFluids()),
        upper: fc.infiniteStream(fc.boolean()),
        between: fc.infiniteStream(fc.constantFrom("", "", "", "-", " ", "–", "_", "(", ")", "/", ".")),
      })
      .map(({ fluid, upper, between }) => {
        const letters = [...fluid.designation.replaceAll(/[^A-Za-z0-9]/g, "")].map((letter) => {
          const cased = upper.next().value ? letter.toUpperCase() : letter.toLowerCase();
          return cased + between.next().value;
        });
        return { designation: fluid.designation, spelt: letters.join("") };
      });
    fc.assert(
      fc.property(spelling, ({ designation, spelt }) => {
        expect(findFluid(spelt).designation).toBe(designation);
      }),
      { numRuns: 500 },
    );
  });

  test("answers any text at all with a fluid or an error of ours, and quickly", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 200 }), (name) => {
        const outcome = tryFindFluid(name);
        expect(outcome.ok || ["unknown-refrigerant", "malformed-input"].includes(outcome.error.code)).toBe(
          true,
        );
      }),
      { numRuns: 500 },
    );
    expect(refusal("x".repeat(100_000)).near).toEqual([]);
  });

  test.each(["", "  ", "---", "()", 32, null, undefined, {}])("refuses %j as a name", (name) => {
    expect(() => findFluid(name as string)).toThrow(InputError);
  });
});

describe("equations", () => {
  test("the first listed is the default, the other is found by its short name", () => {
    expect(findFluid("R-717").equation).toBe("tillner-roth-1993");
    expect(findFluid("R-717", { equation: "gao-2023" }).equation).toBe("gao-2023");
    expect(findFluid("ammonia", { equation: "Gao 2023" }).equation).toBe("gao-2023");
    expect(findFluid("R-152a").equation).toBe("tillner-roth-1995");
    expect(findFluid("R-152a", { equation: "outcalt-1996" }).equation).toBe("outcalt-1996");
  });

  test("an unknown one is told which there are", () => {
    expect(() => findFluid("R-717", { equation: "span-1996" })).toThrow(
      'equation: expected "tillner-roth-1993" or "gao-2023" for R-717, got "span-1996"',
    );
    expect(() => findFluid("R-32", { equation: 1997 as unknown as string })).toThrow(InputError);
  });

  test("no two of one refrigerant have the same short name", () => {
    const names = listFluids().map(({ designation, equation }) => `${designation} ${equation}`);
    expect(new Set(names).size).toBe(names.length);
  });
});

describe("what is not found", () => {
  test.each([
    ["R-23a", ["R-23"]],
    ["R-123a", ["R-123", "R-143a"]],
    ["R-1234", ["R-123", "R-1234yf", "R-1234ze(E)", "R-1234ze(Z)"]],
    ["propan", ["R-290"]],
    ["amonia", ["R-717"]],
    ["izobutane", ["R-600a"]],
    ["HFC-290", ["R-290"]],
    ["R-345", []],
    ["something else", []],
  ])("%s has the near names %j", (name, near) => {
    const told = refusal(name).near;
    if (near.length === 0) expect(told).toEqual([]);
    else expect(told.slice(0, near.length).sort()).toEqual([...near].sort());
    for (const designation of told) expect(refusal(name).message).toContain(designation);
  });

  test("one slip of the pen in a designation leads to it", () => {
    const slip = fc.record({
      fluid: fc.constantFrom(...listFluids()),
      place: fc.nat(),
      kind: fc.constantFrom("drop", "double", "swap"),
    });
    fc.assert(
      fc.property(slip, ({ fluid, place, kind }) => {
        const { designation } = fluid;
        const letters = [...designation.replaceAll(/[^A-Za-z0-9]/g, "")];
        const at = 1 + (place % (letters.length - 1));
        const [letter = ""] = letters.splice(at, 1);
        if (kind === "double") letters.splice(at, 0, letter, letter);
        if (kind === "swap") letters.splice(at - 1, 0, letter);
        const outcome = tryFindFluid(letters.join(""));
        // A slip may lead to another name, to a blend's number, or to the question which isomer was meant.
        if (outcome.ok) return;
        const { near, message } = outcome.error as UnknownRefrigerantError;
        const explained = /isomer|left out|blend/.test(message);
        if (!explained && near.length < 5) expect(near).toContain(designation);
      }),
      { numRuns: 500 },
    );
  });

  test.each([
    ["R-410A", "R-410A"],
    ["r410a", "R-410A"],
    ["R 454B", "R-454B"],
    ["HFC-507A", "R-507A"],
    ["513a", "R-513A"],
  ])("%s is the blend %s, and that is said", (name, blend) => {
    expect(refusal(name).message).toContain(`is the blend ${blend}, not a single fluid`);
  });

  test.each([
    ["R-454D", ["R-454A", "R-454B", "R-454C"]],
    ["R-454", ["R-454A", "R-454B", "R-454C"]],
    ["R-507", ["R-507A"]],
    ["r499z", []],
  ])("%s is a blend that is not there; near are %j", (name, near) => {
    const error = refusal(name);
    expect(error.message).toContain("is a blend that the catalogue does not hold; blend([...]) takes any");
    expect(error.near).toEqual(expect.arrayContaining(near));
    for (const designation of error.near) expect(designation).toMatch(/^R-[45]\d\d[A-Z]$/);
  });

  test.each([
    ["R-14", "miss the critical pressure"],
    ["R-115", "no formal publication"],
    ["r13", "wrong digit"],
    ["R-1224yd(Z)", "not at hand"],
    ["R-1224yd", "not at hand"],
    ["HFO-1132a", "not at hand"],
  ])("%s is left out, and why is said", (name, reason) => {
    const error = refusal(name);
    expect(error.message).toContain("is left out of the catalogue");
    expect(error.message).toContain(reason);
  });

  test.each([
    ["R-1234ze", ["R-1234ze(E)", "R-1234ze(Z)"]],
    ["HFO-1234ze", ["R-1234ze(E)", "R-1234ze(Z)"]],
    ["1234ZE", ["R-1234ze(E)", "R-1234ze(Z)"]],
    ["R-1233zd", ["R-1233zd(E)"]],
    ["R-1336mzz", ["R-1336mzz(Z)"]],
  ])("%s does not say which isomer, so none is taken", (name, near) => {
    const error = refusal(name);
    expect(error.near).toEqual(near);
    expect(error.message).toContain("isomer");
  });

  test.each([
    ["C4H10", ["R-600", "R-600a"]],
    ["C3H2F4", ["R-1234yf", "R-1234ze(E)", "R-1234ze(Z)"]],
    ["CHF=CHCF3", ["R-1234ze(E)", "R-1234ze(Z)"]],
  ])("%s fits several refrigerants, so none is taken", (name, near) => {
    const error = refusal(name);
    expect(error.near).toEqual(near);
    expect(error.message).toContain("more than one");
  });
});

describe("findFluidIn", () => {
  const mine: Fluid = {
    ...findFluid("R-32"),
    designation: "R-9999zz(E)",
    name: "testane",
    synonyms: [],
    formula: "",
    cas: "",
    equation: "nobody-2030",
  };

  test("looks only where it is told to", () => {
    expect(findFluidIn([mine], "r9999zz e")).toBe(mine);
    expect(() => findFluidIn([mine], "R-32")).toThrow(UnknownRefrigerantError);
    expect(() => findFluidIn([], "R-32")).toThrow(UnknownRefrigerantError);
    expect(() => findFluidIn([mine], "R-9999zz")).toThrow(/isomer/);
  });

  test("a fluid added at the end is another equation of a refrigerant that is there, or a new refrigerant", () => {
    const newer = { ...findFluid("R-32"), equation: "nobody-2030" };
    const fluids = [...listFluids(), newer, mine];
    expect(findFluidIn(fluids, "R-32").equation).toBe("tillner-roth-1997");
    expect(findFluidIn(fluids, "R-32", { equation: "nobody-2030" })).toBe(newer);
    expect(findFluidIn(fluids, "testane")).toBe(mine);
  });

  test("a missing CAS number or formula is found by nothing", () => {
    expect(() => findFluidIn([mine], "")).toThrow(InputError);
  });
});
