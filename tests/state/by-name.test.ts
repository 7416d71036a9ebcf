import { describe, expect, it, test } from "vitest";
import { listFluids, UnknownRefrigerantError } from "../../src/catalogue/index.js";
import { r32 } from "../../src/fluids/r-32.js";
import { r717 } from "../../src/fluids/r-717.js";
import {
  fluids,
  refrigerant,
  refrigerantFrom,
  registerFluid,
  tryRefrigerant,
  tryRegisterFluid,
} from "../../src/state/index.js";
import { attempt, DewlineError, InputError, isDewlineError } from "../../src/units/index.js";

describe("a refrigerant by name", () => {
  it("carries what the literal says, and the critical point of the equation", () => {
    const asked = refrigerant("difluoromethane");
    expect(asked).toMatchObject({
      designation: "R-32",
      name: "difluoromethane",
      equation: "tillner-roth-1997",
      molarMass: r32.molarMass,
      limits: r32.limits,
      sources: r32.sources,
      notes: r32.notes,
    });
    expect(asked.specificGasConstant).toBeWithin(r32.gasConstant / r32.molarMass, 1e-15);
    expect(asked.critical.temperature).toBeWithin(r32.critical.temperature, 1e-8);
  });

  test.each(["R-32", "r32", "HFC-32", "75-10-5", "difluoromethane"])("is found as %s", (name) => {
    expect(refrigerant(name).designation).toBe("R-32");
  });

  test.each(["R-99", "R-1234ze", "R-410", "water"])("is refused as %s, with what is near", (name) => {
    const outcome = tryRefrigerant(name);
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    expect(outcome.error).toBeInstanceOf(UnknownRefrigerantError);
    expect(outcome.error).toMatchObject({ code: "unknown-refrigerant", asked: name });
    expect(() => refrigerant(name)).toThrow(UnknownRefrigerantError);
  });

  test.each([undefined, null, 7, "", "  ", "---", {}, [], Symbol("R-32")])("is refused as %o", (name) => {
    expect(tryRefrigerant(name as string)).toMatchObject({ ok: false, error: { code: "malformed-input" } });
  });

  test.each<[unknown, string]>([
    [null, "options"],
    ["iir", "options"],
    [{ referencestate: "nbp" }, "options.referencestate"],
    [{ extrapolate: true }, "options.extrapolate"],
  ])("is refused with the options %o, which would be dropped in silence", (options, path) => {
    for (const outcome of [
      tryRefrigerant("R-32", options as object),
      attempt(() => refrigerantFrom(r32, options as object)),
    ]) {
      expect(outcome).toMatchObject({ ok: false, error: { problems: [{ path }] } });
    }
  });

  test.each([undefined, null, "R-32", 7, {}, [], () => r32])(
    "is refused from %o, which is no literal",
    (literal) => {
      expect(() => refrigerantFrom(literal as never)).toThrow(InputError);
    },
  );

  test.each<[string, object, string]>([
    ["with an empty residual part", { residual: {} }, "fluid.residual.power"],
    ["without an ideal part", { ideal: undefined }, "fluid.ideal.power"],
    ["with a molar mass that is text", { molarMass: "52.024" }, "fluid.molarMass"],
    ["without limits", { limits: null }, "fluid.limits.minimumTemperature"],
    ["without sources", { sources: "a paper" }, "fluid.sources"],
  ])("is refused %s, by path", (_, change, path) => {
    const outcome = attempt(() => refrigerantFrom({ ...r32, ...change } as never));
    expect(outcome).toMatchObject({ ok: false, error: { code: "malformed-input" } });
    expect(JSON.stringify(outcome)).toContain(`"${path}"`);
  });

  it("is refused with an equation by name, which only the catalogue could look up", () => {
    const outcome = attempt(() => refrigerantFrom(r32, { equation: "gao-2023" } as object));
    expect(outcome).toMatchObject({ ok: false, error: { problems: [{ path: "options.equation" }] } });
  });
});

describe("several equations of one refrigerant", () => {
  test.each([
    ["R-717", "tillner-roth-1993", "gao-2023"],
    ["R-152a", "tillner-roth-1995", "outcalt-1996"],
  ])("%s has %s for default and %s by its name", (designation, usual, other) => {
    const [one, two] = [refrigerant(designation), refrigerant(designation, { equation: other })];
    expect([one.equation, two.equation]).toEqual([usual, other]);
    expect(two.sources[0]).not.toBe(one.sources[0]);
    const input = { temperature: 273.15 };
    const [pressure, alternative] = [one.saturation(input).pressure, two.saturation(input).pressure];
    // Two good equations of one substance: alike to a per mille and not the same.
    expect(alternative).toBeWithin(pressure, 2e-3);
    expect(alternative).not.toBe(pressure);
    expect(two.critical.temperature).not.toBe(one.critical.temperature);
  });

  it("do not disturb one another, and each has its own zero", () => {
    const [one, two] = [refrigerant("R-717"), refrigerant("R-717", { equation: "gao-2023" })];
    const before = one.saturation({ temperature: 300 }).pressure;
    two.saturation({ temperature: 300 });
    expect(one.saturation({ temperature: 300 }).pressure).toBe(before);
    for (const asked of [one, two]) {
      expect(asked.saturation({ temperature: 273.15 }).liquid.enthalpy).toBeWithin(200e3, 1e-12);
    }
  });

  it("are refused under a name that none of them has, with those they have", () => {
    const outcome = tryRefrigerant("R-717", { equation: "span-1996" });
    expect(outcome).toMatchObject({ ok: false, error: { code: "malformed-input" } });
    if (!outcome.ok) expect(outcome.error.message).toContain("gao-2023");
  });
});

describe("a fluid of one's own", () => {
  // One test, because what is registered stays: of the file's order nothing else may depend.
  it("is found by its name and computes the same as its original", () => {
    const before = fluids().length;
    const own = {
      ...structuredClone(r32),
      designation: "R-32-own",
      name: "own difluoromethane",
      synonyms: [],
      cas: "",
      formula: "",
    };
    expect(tryRefrigerant("R-32-own").ok).toBe(false);
    const checked = registerFluid(own);
    expect(fluids()).toHaveLength(before + 1);
    expect(listFluids()).toHaveLength(before);
    const asked = refrigerant("r32 own");
    expect(asked.designation).toBe("R-32-own");
    for (const input of [
      { temperature: 280, quality: 0.4 },
      { temperature: 300, pressure: 1e6 },
    ]) {
      // Only the name may differ, wherever it stands.
      const found = JSON.stringify(asked.state(input)).replaceAll("R-32-own", "R-32");
      expect(found).toBe(JSON.stringify(refrigerant("R-32").state(input)));
      expect(asked.state(input).composition).toEqual({ "R-32-own": 1 });
    }
    // A copy was kept: what the caller does with the original later changes nothing.
    const pressure = asked.saturation({ temperature: 280 }).pressure;
    own.residual.power.length satisfies number;
    (own.residual.power as unknown[]).length = 1;
    expect(checked.residual.power.length).toBe(r32.residual.power.length);
    expect(refrigerant("R-32-own").saturation({ temperature: 280 }).pressure).toBe(pressure);
    // The name is taken now.
    const again = tryRegisterFluid({ ...own, residual: r32.residual });
    expect(again).toMatchObject({ ok: false, error: { problems: [{ path: "equation" }] } });
    // A name, a number or another spelling that leads to a refrigerant already would afterwards lead to neither.
    const greedy = tryRegisterFluid({ ...structuredClone(r32), designation: "R32", equation: "greedy-2026" });
    expect(greedy.ok).toBe(false);
    const paths = greedy.ok ? [] : (greedy.error as InputError).problems.map(({ path }) => path);
    expect(paths).toEqual(expect.arrayContaining(["designation", "name", "cas"]));
    expect(refrigerant("difluoromethane").designation).toBe("R-32");
    expect(refrigerant("75-10-5").designation).toBe("R-32");
    // Another equation of a known refrigerant is found beside the usual one, which stays the default.
    registerFluid({ ...structuredClone(r717), equation: "own-1993" });
    expect(refrigerant("R-717").equation).toBe("tillner-roth-1993");
    expect(refrigerant("R-717", { equation: "own-1993" }).equation).toBe("own-1993");
  });

  test.each([
    undefined,
    null,
    "R-32",
    7,
    [],
    {},
    Symbol("x"),
    { ...r32, residual: null },
    { ...r32, limits: {} },
  ])("is refused as %o", (literal) => {
    expect(tryRegisterFluid(literal)).toMatchObject({ ok: false, error: { code: "malformed-input" } });
    expect(() => registerFluid(literal)).toThrow(InputError);
  });

  const mutations: readonly (readonly [string, (fluid: ReturnType<typeof copy>) => void])[] = [
    ["a misspelt table", (fluid) => Object.assign(fluid.residual, { gausian: [] })],
    ["a row with a hole", (fluid) => Object.assign(fluid.residual.power, { 3: undefined })],
    ["a row too short", (fluid) => Object.assign(fluid.residual.power, { 3: [1, 2, 3] })],
    ["text in a row", (fluid) => Object.assign(fluid.residual.power, { 3: [1, "2", 3, 0] })],
    ["no number in a row", (fluid) => Object.assign(fluid.residual.power, { 3: [Number.NaN, 2, 3, 0] })],
    [
      "a density exponent no memory could hold",
      (fluid) => Object.assign(fluid.residual.power, { 3: [1, 2, 1e300, 0] }),
    ],
    ["a long density exponent", (fluid) => Object.assign(fluid.residual.power, { 3: [1e-3, 2, 1e8, 0] })],
    [
      "a vibration of negative temperature, which has no entropy",
      (fluid) => Object.assign(fluid.ideal, { planckEinstein: [[1, -2]] }),
    ],
    [
      "a lowest temperature at the critical point",
      (fluid) =>
        Object.assign(fluid, {
          limits: { ...fluid.limits, minimumTemperature: 351.2549 },
          referenceState: "nbp",
        }),
    ],
    ["a molar mass in g/mol", (fluid) => Object.assign(fluid, { molarMass: 52.024 })],
    ["densities in mol/dm3", (fluid) => Object.assign(fluid.reducing, { density: 8.15 })],
    ["an acentric factor of another fluid", (fluid) => Object.assign(fluid, { acentricFactor: 0.15 })],
    ["itself inside", (fluid) => Object.assign(fluid, { self: fluid })],
  ];

  function copy() {
    return { ...structuredClone(r32), designation: "R-32-wrong", cas: "" };
  }

  test.each(mutations)("is refused with %s, at once", (_, mutate) => {
    const fluid = copy();
    mutate(fluid);
    const outcome = tryRegisterFluid(fluid);
    expect(outcome).toMatchObject({ ok: false, error: { code: "malformed-input" } });
    expect(tryRefrigerant("R-32-wrong").ok).toBe(false);
  });
});

describe("errors", () => {
  it("are told apart from others also where they come from another copy of the package", () => {
    // As another copy would throw it: no class in common, only the name and the fields.
    class DewlineErrorOfAnotherCopy extends Error {
      readonly code = "out-of-range";
      override readonly name = "DewlineError";
    }
    const foreign = new DewlineErrorOfAnotherCopy("temperature 1 K is outside");
    expect(foreign).not.toBeInstanceOf(DewlineError);
    expect(isDewlineError(foreign)).toBe(true);
    const outcome = attempt(() => {
      throw foreign;
    });
    expect(outcome).toEqual({ ok: false, error: foreign });
  });

  test.each([
    undefined,
    null,
    "DewlineError",
    7,
    new TypeError("x"),
    { name: "DewlineError" },
    Object.assign(new Error("x"), { code: "out-of-range" }),
  ])("are not seen in %o", (other) => {
    expect(isDewlineError(other)).toBe(false);
    expect(() =>
      attempt(() => {
        throw other;
      }),
    ).toThrow();
  });

  it("of every class carry the one name and their code", () => {
    const asked = refrigerant("R-32");
    const thrown = [
      attempt(() => asked.state({ temperature: Number.NaN, pressure: 1 })),
      attempt(() => asked.state({ temperature: 1, pressure: 1 })),
      attempt(() => asked.state({ pressure: 1e6, enthalpy: 1e9 })),
      attempt(() => refrigerant("R-99")),
    ].map((outcome) => (outcome.ok ? undefined : outcome.error));
    expect(thrown.map((error) => error?.code)).toEqual([
      "malformed-input",
      "out-of-range",
      "no-such-state",
      "unknown-refrigerant",
    ]);
    for (const error of thrown) {
      expect(error?.name).toBe("DewlineError");
      expect(error).toBeInstanceOf(Error);
      expect(error?.stack).toContain("DewlineError");
    }
  });
});
