import { describe, expect, it, test } from "vitest";
import { r32 } from "../../src/fluids/r-32.js";
import {
  type Refrigerant,
  refrigerantFrom,
  type SaturationInput,
  type StateInput,
  type StateOptions,
} from "../../src/state/index.js";
import { InputError, isDewlineError } from "../../src/units/index.js";

const refrigerant = refrigerantFrom(r32);

/** A vapour and a mixture, from which every pair is taken. */
const vapour = refrigerant.state({ temperature: 300, pressure: 1e6 });
const mixture = refrigerant.state({ temperature: 280, quality: 0.3 });

/** The problems of what must be refused as malformed. */
function problemsOf(work: () => unknown): readonly { path: string; value: unknown; expected: string }[] {
  try {
    work();
  } catch (error) {
    if (error instanceof InputError) {
      expect(error.code).toBe("malformed-input");
      expect(error.message.length).toBeGreaterThan(10);
      for (const { expected } of error.problems) expect(expected.length).toBeGreaterThan(3);
      return error.problems;
    }
    throw error;
  }
  throw new Error("was not refused");
}

const pairs: readonly (readonly [string, StateInput])[] = [
  ["temperature and pressure", { temperature: 300, pressure: 1e6 }],
  ["pressure and enthalpy", { pressure: 1e6, enthalpy: vapour.enthalpy }],
  ["pressure and entropy", { pressure: 1e6, entropy: vapour.entropy }],
  ["temperature and density", { temperature: 300, density: vapour.density }],
  ["density and internal energy", { density: vapour.density, internalEnergy: vapour.internalEnergy }],
  ["enthalpy and entropy", { enthalpy: vapour.enthalpy, entropy: vapour.entropy }],
];

const mixturePairs: readonly (readonly [string, StateInput])[] = [
  ["pressure and quality", { pressure: mixture.pressure, quality: 0.3 }],
  ["temperature and quality", { temperature: 280, quality: 0.3 }],
  ["pressure and enthalpy", { pressure: mixture.pressure, enthalpy: mixture.enthalpy }],
  ["pressure and entropy", { pressure: mixture.pressure, entropy: mixture.entropy }],
  ["temperature and density", { temperature: 280, density: mixture.density }],
  ["density and internal energy", { density: mixture.density, internalEnergy: mixture.internalEnergy }],
  ["enthalpy and entropy", { enthalpy: mixture.enthalpy, entropy: mixture.entropy }],
];

describe("a state in one phase", () => {
  test.each(pairs)("by %s", (_, input) => {
    const found = refrigerant.state(input);
    if (found.phase === "two-phase") throw new Error("is a mixture");
    expect(found.phase).toBe("vapour");
    expect(found.temperature).toBeWithin(300, 1e-11);
    expect(found.pressure).toBeWithin(1e6, 1e-11);
    expect(found.density).toBeWithin(vapour.density, 1e-11);
    expect(found.speedOfSound).toBeWithin(vapour.speedOfSound, 1e-11);
    // What was asked for is what is returned.
    for (const [name, value] of Object.entries(input)) {
      if (name === "temperature" || name === "pressure") expect(found[name]).toBe(value);
    }
  });

  it("takes the fields in any order", () => {
    expect(refrigerant.state({ pressure: 1e6, temperature: 300 })).toEqual(vapour);
  });
});

describe("a state in two phases", () => {
  test.each(mixturePairs)("by %s", (_, input) => {
    const found = refrigerant.state(input);
    expect(found.phase).toBe("two-phase");
    expect(found.temperature).toBeWithin(280, 1e-11);
    expect(found.quality).toBeWithin(0.3, 1e-10);
  });
});

describe("a pair that fixes no state", () => {
  const values = {
    temperature: 300,
    pressure: 1e6,
    density: 30,
    quality: 0.5,
    enthalpy: 5e5,
    entropy: 2e3,
    internalEnergy: 4e5,
  };
  const names = Object.keys(values) as (keyof typeof values)[];
  const allowed = new Set([...pairs, ...mixturePairs].map(([, input]) => Object.keys(input).sort().join()));

  it("is refused, and the eight that do are named", () => {
    let refused = 0;
    for (const [k, one] of names.entries()) {
      for (const two of names.slice(k + 1)) {
        if (allowed.has([one, two].sort().join())) continue;
        const [problem] = problemsOf(() =>
          refrigerant.state({ [one]: values[one], [two]: values[two] } as never),
        );
        expect(problem?.expected).toContain("pressure + temperature");
        expect(problem?.expected).toContain("density + internalEnergy");
        expect(problem?.value).toContain(one);
        refused++;
      }
    }
    expect(allowed.size).toBe(8);
    expect(refused).toBe(21 - 8);
  });

  it("is refused with one field or none, with three, or with all", () => {
    for (const [k, one] of names.entries()) {
      problemsOf(() => refrigerant.state({ [one]: values[one] } as never));
      problemsOf(() =>
        refrigerant.state({ temperature: 300, pressure: 1e6, [names[(k % 5) + 2]!]: 0.5 } as never),
      );
    }
    problemsOf(() => refrigerant.state({} as never));
    problemsOf(() => refrigerant.state(values as never));
  });
});

describe("an input that is malformed", () => {
  test.each([undefined, null, 7, "300 K", true, Symbol("x"), 3n, () => 1, [], [300, 1e6], new Date(0)])(
    "is refused: %o",
    (input) => {
      for (const method of ["state", "saturation", "bubble", "dew"] as const) {
        problemsOf(() => (refrigerant[method] as (at: unknown) => unknown)(input));
      }
    },
  );

  test.each<[string, unknown]>([
    ["text", "300"],
    ["not a number", Number.NaN],
    ["infinite", Number.POSITIVE_INFINITY],
    ["minus infinite", Number.NEGATIVE_INFINITY],
    ["null", null],
    ["undefined", undefined],
    ["a list", [300]],
    ["an object", { kelvin: 300 }],
    ["a boxed number", Object(300)],
    ["a big integer", 300n],
    ["a symbol", Symbol("300")],
  ])("is refused in every field where its value is %s", (_, value) => {
    for (const [, input] of [...pairs, ...mixturePairs]) {
      for (const name of Object.keys(input)) {
        const [problem] = problemsOf(() => refrigerant.state({ ...input, [name]: value } as never));
        expect(problem).toEqual({ path: name, value, expected: "a finite number, SI" });
      }
    }
    for (const name of ["temperature", "pressure"]) {
      problemsOf(() => refrigerant.saturation({ [name]: value } as never));
    }
  });

  it("is refused where a temperature, pressure or density is zero or below, also minus zero", () => {
    for (const value of [0, -0, -1, -300, -Number.MIN_VALUE]) {
      for (const input of [
        { temperature: value, pressure: 1e6 },
        { temperature: 300, pressure: value },
        { temperature: 300, density: value },
      ]) {
        expect(problemsOf(() => refrigerant.state(input))).toHaveLength(1);
      }
      problemsOf(() => refrigerant.saturation({ temperature: value }));
      problemsOf(() => refrigerant.saturation({ pressure: value }));
    }
  });

  it("is refused where a quality lies outside 0 to 1, and 0, −0 and 1 are inside", () => {
    for (const quality of [-1e-300, -0.1, 1 + 2 ** -52, 1.5, 30]) {
      const [problem] = problemsOf(() => refrigerant.state({ temperature: 280, quality }));
      expect(problem).toMatchObject({ path: "quality", value: quality });
      problemsOf(() => refrigerant.state({ pressure: 1e6, quality }));
    }
    for (const quality of [0, -0, 1])
      expect(refrigerant.state({ temperature: 280, quality }).quality).toBe(quality);
  });

  it("is refused with every problem at once, in the order of the names", () => {
    const problems = problemsOf(() =>
      refrigerant.state({ temperature: -5, pressure: "high", heat: 3, quality: 2 } as never),
    );
    expect(problems.map(({ path }) => path)).toEqual(["heat", "pressure", "quality", "temperature"]);
  });

  it("is refused where a field has another name, also one that every object has", () => {
    for (const name of ["Temperature", "t", "temp", "toString", "constructor", "hasOwnProperty", ""]) {
      const [problem] = problemsOf(() => refrigerant.state({ temperature: 300, [name]: 1e6 } as never));
      expect(problem?.path).toBe(name);
      expect(problem?.expected).toContain("internalEnergy");
    }
    problemsOf(() => refrigerant.state(JSON.parse('{ "__proto__": 300, "pressure": 1000000 }') as never));
  });

  it("is refused where the fields are inherited, not its own", () => {
    problemsOf(() => refrigerant.state(Object.create({ temperature: 300, pressure: 1e6 }) as never));
  });
});

describe("a saturation input", () => {
  it("is one of temperature and pressure, not both and nothing else", () => {
    for (const input of [
      {},
      { temperature: 280, pressure: 1e6 },
      { quality: 0.5 },
      { temperature: 280, quality: 0 },
      { density: 30 },
      { enthalpy: 3e5 },
    ]) {
      const problems = problemsOf(() => refrigerant.saturation(input as SaturationInput));
      expect(problems[0]?.expected).toContain("{ temperature } or { pressure }");
    }
  });

  it("gives the same by bubble and dew, which a pure refrigerant does not tell apart", () => {
    const input = { temperature: 280 };
    expect(refrigerant.bubble(input)).toEqual(refrigerant.saturation(input));
    expect(refrigerant.dew(input)).toEqual(refrigerant.saturation(input));
  });
});

describe("the options of a call", () => {
  const inputs = { temperature: 300, pressure: 1e6 };

  test.each<[unknown, string]>([
    [null, "options"],
    ["extrapolate", "options"],
    [1, "options"],
    [{ extrapolat: true }, "options.extrapolat"],
    [{ extrapolate: true, phase: "liquid" }, "options.phase"],
    [{ extrapolate: "no" }, "options.extrapolate"],
    [{ extrapolate: 1 }, "options.extrapolate"],
    [{ extrapolate: null }, "options.extrapolate"],
  ])("are refused as %o", (options, path) => {
    const wrong = options as StateOptions;
    expect(problemsOf(() => refrigerant.state(inputs, wrong))[0]?.path).toBe(path);
    expect(problemsOf(() => refrigerant.saturation({ temperature: 280 }, wrong))[0]?.path).toBe(path);
    expect(problemsOf(() => refrigerant.bubble({ temperature: 280 }, wrong))[0]?.path).toBe(path);
    expect(problemsOf(() => refrigerant.dew({ temperature: 280 }, wrong))[0]?.path).toBe(path);
  });

  it("may be left out, be empty or say what is usual", () => {
    const expected = refrigerant.state(inputs);
    for (const options of [undefined, {}, { extrapolate: false }, { extrapolate: true }]) {
      expect(refrigerant.state(inputs, options)).toEqual(expected);
    }
  });
});

describe("the twins that do not throw", () => {
  const calls: readonly (readonly [
    string,
    (asked: Refrigerant, input: unknown, options?: unknown) => unknown,
  ])[] = [
    ["tryState", (asked, input, options) => asked.tryState(input as never, options as never)],
    ["trySaturation", (asked, input, options) => asked.trySaturation(input as never, options as never)],
    ["tryBubble", (asked, input, options) => asked.tryBubble(input as never, options as never)],
    ["tryDew", (asked, input, options) => asked.tryDew(input as never, options as never)],
  ];

  test.each(calls)("%s gives the error as a value", (_, call) => {
    const wrong = [
      undefined,
      null,
      "x",
      {},
      { temperature: Number.NaN },
      { temperature: 1e9 },
      { pressure: 1e12 },
    ];
    for (const input of wrong) {
      const outcome = call(refrigerant, input) as { ok: boolean; error: unknown };
      expect(outcome.ok).toBe(false);
      expect(outcome.error).toSatisfy(isDewlineError);
    }
    expect(call(refrigerant, { temperature: 280, quality: 0.5 }, null)).toMatchObject({ ok: false });
  });

  it("give the value otherwise, the same as the call that throws", () => {
    expect(refrigerant.tryState({ temperature: 300, pressure: 1e6 })).toEqual({ ok: true, value: vapour });
    const input = { temperature: 280 };
    const value = refrigerant.saturation(input);
    for (const outcome of [
      refrigerant.trySaturation(input),
      refrigerant.tryBubble(input),
      refrigerant.tryDew(input),
    ]) {
      expect(outcome).toEqual({ ok: true, value });
    }
  });
});
