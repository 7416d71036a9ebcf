import { describe, expect, it, test } from "vitest";
import {
  fluids,
  type ReferenceState,
  refrigerant,
  refrigerantFrom,
  type SinglePhaseState,
} from "../../src/state/index.js";
import { celsius, InputError } from "../../src/units/index.js";
import { trackWorst } from "../support/worst.js";

const worst = trackWorst("reference states");
const everyFluid = fluids().map((fluid) => [`${fluid.designation} ${fluid.equation}`, fluid] as const);

/** Why a reference state is refused: when the refrigerant is made, or when it is first needed. */
function refusal(designation: string, referenceState: unknown): InputError {
  try {
    const asked = refrigerant(designation, { referenceState: referenceState as ReferenceState });
    asked.state({ temperature: 300, pressure: 1e5 });
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error("was not refused");
}

/**
 * On the scales RT and R, because the zero is arbitrary. In the equation of R-22 terms several thousand times as large
 * cancel, which leaves 1e-12; in all others no more than 1e-14 is seen.
 */
const closeEnough = 5e-12;

describe("the conventions", () => {
  // IIR: 200 kJ/kg and 1 kJ/(kg K) for saturated liquid at 0 °C. ASHRAE: zero for saturated liquid at −40 °C. NBP: zero
  // for saturated liquid at 101.325 kPa. As stated in the front matter of the tables of ASHRAE Handbook: Fundamentals,
  // chapter 30; written down from memory.
  test.each(everyFluid)("of %s have their agreed values wherever it has that state", (name, fluid) => {
    let had = 0;
    for (const [reference, at, h, s] of [
      ["iir", { temperature: celsius(0) }, 200e3, 1e3],
      ["ashrae", { temperature: celsius(-40) }, 0, 0],
      ["nbp", { pressure: 101325 }, 0, 0],
    ] as const) {
      const asked = refrigerantFrom(fluid, { referenceState: reference });
      expect(asked.referenceState).toBe(reference);
      const point = asked.trySaturation(at);
      if (!point.ok) {
        expect(point.error.code).toMatch(/out-of-range|malformed-input/);
        continue;
      }
      had++;
      const { liquid } = point.value;
      const R = asked.specificGasConstant;
      worst("enthalpy", Math.abs(liquid.enthalpy - h) / (R * liquid.temperature), closeEnough, name);
      worst("entropy", Math.abs(liquid.entropy - s) / R, closeEnough, name);
    }
    expect(had).toBeGreaterThan(0);
  });

  it("may have an undefined pressure beside the quality", () => {
    const at = { temperature: celsius(0), pressure: undefined, quality: 0 as const };
    const referenceState = { at, enthalpy: 200e3, entropy: 1e3 } as unknown as ReferenceState;
    const input = { temperature: 300, pressure: 1e5 };
    expect(refrigerant("R-32", { referenceState }).state(input).enthalpy).toBe(
      refrigerant("R-32").state(input).enthalpy,
    );
  });

  it("are iir unless the fluid has another default", () => {
    expect(refrigerant("R-32").referenceState).toBe("iir");
    for (const [, fluid] of everyFluid)
      expect(refrigerantFrom(fluid).referenceState).toBe(fluid.referenceState);
    // Never liquid at 0 °C.
    expect(refrigerant("R-728").referenceState).toBe("nbp");
  });

  test.each<[string, string, string]>([
    ["R-728", "iir", "nitrogen is above its critical point at 0 °C"],
    ["R-728", "ashrae", "and at −40 °C"],
    ["R-744", "nbp", "carbon dioxide is solid at 101.325 kPa"],
    ["R-1234ze(Z)", "ashrae", "its equation begins at 0 °C"],
  ])("%s has no %s: %s", (designation, reference) => {
    const error = refusal(designation, reference);
    expect(error.problems).toHaveLength(1);
    expect(error.problems[0]).toMatchObject({ path: "referenceState", value: reference });
    expect(error.problems[0]?.expected).toContain(designation);
  });
});

describe("a reference state of one's own", () => {
  it("may be any state in one phase", () => {
    const at = { temperature: 298.15, pressure: 101325 };
    const asked = refrigerant("R-32", { referenceState: { at, enthalpy: 1234, entropy: 56 } });
    const state = asked.state(at);
    expect(state.enthalpy).toBeWithin(1234, 1e-12);
    expect(state.entropy).toBeWithin(56, 1e-12);
  });

  test.each([0, 1] as const)("may be saturated, of quality %s", (quality) => {
    const referenceState = { at: { temperature: 250, quality }, enthalpy: -5e3, entropy: 7 };
    const { liquid, vapour } = refrigerant("R-32", { referenceState }).saturation({ temperature: 250 });
    const state = quality === 0 ? liquid : vapour;
    expect(state.enthalpy).toBeWithin(-5e3, 1e-11);
    expect(state.entropy).toBeWithin(7, 1e-10);
  });

  it("is kept as it was given", () => {
    const referenceState = { at: { temperature: 250, quality: 0 as const }, enthalpy: 0, entropy: 0 };
    expect(refrigerant("R-32", { referenceState }).referenceState).toEqual(referenceState);
  });

  test.each<[string, unknown, readonly string[]]>([
    ["another word", "IIR", [""]],
    ["an empty word", "", [""]],
    ["a number", 3, [""]],
    ["null", null, [""]],
    ["a list", [], [""]],
    ["nothing in it", {}, [""]],
    ["no state", { enthalpy: 0, entropy: 0 }, [""]],
    ["null for a state", { at: null, enthalpy: 0, entropy: 0 }, [""]],
    ["an empty state", { at: {}, enthalpy: 0, entropy: 0 }, [".at.temperature", ".at.pressure"]],
    ["no values", { at: { temperature: 300, pressure: 1e5 } }, [".enthalpy", ".entropy"]],
    [
      "text for a value",
      { at: { temperature: 300, pressure: 1e5 }, enthalpy: "0", entropy: 0 },
      [".enthalpy"],
    ],
    [
      "no number for a value",
      { at: { temperature: 300, pressure: 1e5 }, enthalpy: 0, entropy: Number.NaN },
      [".entropy"],
    ],
    [
      "an endless value",
      { at: { temperature: 300, pressure: 1e5 }, enthalpy: Number.POSITIVE_INFINITY, entropy: 0 },
      [".enthalpy"],
    ],
    [
      "a value that would swallow all digits",
      { at: { temperature: 300, pressure: 1e5 }, enthalpy: 1e300, entropy: 0 },
      [".enthalpy"],
    ],
    [
      "a temperature below zero",
      { at: { temperature: -1, pressure: 1e5 }, enthalpy: 0, entropy: 0 },
      [".at.temperature"],
    ],
    [
      "a symbol for a temperature",
      { at: { temperature: Symbol("T"), pressure: 1e5 }, enthalpy: 0, entropy: 0 },
      [".at.temperature"],
    ],
    [
      "a list for a pressure",
      { at: { temperature: 300, pressure: [1e5] }, enthalpy: 0, entropy: 0 },
      [".at.pressure"],
    ],
    [
      "a quality between",
      { at: { temperature: 280, quality: 0.5 }, enthalpy: 0, entropy: 0 },
      [".at.quality"],
    ],
    [
      "a quality of text",
      { at: { temperature: 280, quality: "0" }, enthalpy: 0, entropy: 0 },
      [".at.quality"],
    ],
    [
      "pressure and quality",
      { at: { temperature: 280, quality: 0, pressure: 1e5 }, enthalpy: 0, entropy: 0 },
      [".at"],
    ],
  ])("is refused with %s, and every problem has its path", (_, referenceState, paths) => {
    const { problems } = refusal("R-32", referenceState);
    expect(problems.map(({ path }) => path)).toEqual(paths.map((path) => `referenceState${path}`));
    // Its form is looked at when the refrigerant is made, not when it is first used.
    expect(() => refrigerant("R-32", { referenceState: referenceState as ReferenceState })).toThrow(
      InputError,
    );
  });

  test.each<[string, unknown]>([
    ["colder than the range", { temperature: 100, pressure: 1e5 }],
    ["hotter than the range", { temperature: 1e9, pressure: 1e5 }],
    ["at a pressure above the range", { temperature: 300, pressure: 1e9 }],
    ["at no pressure to speak of", { temperature: 300, pressure: 1e-300 }],
    ["saturated above the critical point", { temperature: 360, quality: 0 }],
    ["saturated below the range", { temperature: 130, quality: 0 }],
  ])("is refused where it lies %s", (_, at) => {
    const { problems } = refusal("R-32", { at, enthalpy: 0, entropy: 0 });
    expect(problems[0]?.path).toBe("referenceState");
    expect(problems[0]?.expected).toContain("R-32");
  });
});

describe("what does not depend on the reference state", () => {
  const references: readonly ReferenceState[] = [
    "iir",
    "ashrae",
    "nbp",
    { at: { temperature: 298.15, pressure: 101325 }, enthalpy: 5e5, entropy: -2e3 },
    { at: { temperature: 300, quality: 1 }, enthalpy: -1e6, entropy: 1e4 },
  ];
  const asked = references.map((referenceState) => refrigerant("R-134a", { referenceState }));

  it("are differences of enthalpy, entropy and internal energy", () => {
    const [one, two] = [
      { temperature: 260, pressure: 5e6 },
      { temperature: 420, pressure: 1e5 },
    ] as const;
    const differences = asked.map((refrigerant) => {
      const [from, to] = [refrigerant.state(one), refrigerant.state(two)];
      return [
        to.enthalpy - from.enthalpy,
        to.entropy - from.entropy,
        to.internalEnergy - from.internalEnergy,
      ];
    });
    for (const found of differences) {
      for (const [k, value] of found.entries()) expect(value).toBeWithin(differences[0]![k]!, 1e-11);
    }
  });

  it("is every property without a zero, and the state found by enthalpy or entropy", () => {
    const plain = asked[0]!.state({ temperature: 320, pressure: 1e6 }) as SinglePhaseState;
    for (const refrigerant of asked) {
      const state = refrigerant.state({ temperature: 320, pressure: 1e6 }) as SinglePhaseState;
      for (const name of [
        "density",
        "cp",
        "cv",
        "speedOfSound",
        "jouleThomson",
        "fugacityCoefficient",
        "secondVirial",
      ] as const) {
        expect(state[name]).toBe(plain[name]);
      }
      const { enthalpy, entropy, density, internalEnergy } = state;
      for (const input of [
        { pressure: 1e6, enthalpy },
        { pressure: 1e6, entropy },
        { density, internalEnergy },
        { enthalpy, entropy },
      ]) {
        expect(refrigerant.state(input).temperature).toBeWithin(320, 1e-10);
      }
    }
  });

  it("is the model behind it: two refrigerants of one literal give the same bits", () => {
    const twice = [refrigerant("R-134a"), refrigerant("R-134a")];
    expect(twice[0]!.state({ temperature: 320, pressure: 1e6 }).toString()).toBe("[object Object]");
    expect({ ...twice[0]!.state({ temperature: 320, pressure: 1e6 }) }).toEqual({
      ...twice[1]!.state({ temperature: 320, pressure: 1e6 }),
    });
  });
});
