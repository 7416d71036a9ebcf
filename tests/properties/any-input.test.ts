import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Fluid } from "../../src/catalogue/index.js";
import {
  fluids,
  type ReferenceState,
  type Refrigerant,
  refrigerantFrom,
  type Saturation,
  type State,
  type StateInput,
  type StateOptions,
} from "../../src/state/index.js";
import { isDewlineError } from "../../src/units/index.js";
import { anySize, inputPairs, numbersIn, scaleOf } from "../support/any-input.js";
import { countEvaluations } from "../support/count-evaluations.js";
import { anyFluid, refrigerantOf, share, singlePhaseAt } from "../support/states.js";

/*
 * No outside source: the promise that whatever is asked, the answer is a state without NaN, infinity or silent clamp,
 * or an error of the library's own, after a bounded number of evaluations of the equation.
 */

/**
 * The longest searches seen take 1600: (p, s) in the noise of R-22 beside its critical point, (h, s) far outside. What is
 * built on first use is not counted, because every refrigerant is warmed up.
 */
const mostEvaluations = 3000;

/** What is returned differs from what was asked by less than this, on the scale of {@link scaleOf}. */
const sameness = 1e-6;

const evaluations = countEvaluations();
let mostSeen = { evaluations: 0, where: "" };
const outcomes = new Map<string, number>();

beforeAll(() => {
  for (const fluid of fluids()) {
    const refrigerant = refrigerantOf(fluid);
    const { minimumTemperature: temperature, maximumPressure: pressure } = refrigerant.limits;
    refrigerant.saturation({ temperature });
    refrigerant.tryState({ temperature: temperature * 0.99, pressure }, { extrapolate: true });
    refrigerant.tryState({ pressure: 1e6, enthalpy: 3e5 }, { extrapolate: true });
  }
});
afterAll(() => {
  const lines = [...outcomes].sort().map(([outcome, count]) => `  ${outcome}: ${count}`);
  const most = `  at most ${mostSeen.evaluations} of ${mostEvaluations} evaluations, at ${mostSeen.where}`;
  console.log(["any input, what came of it:", ...lines, most].join("\n"));
});

function checkState(state: State, asked: Readonly<Record<string, unknown>>, where: string): void {
  const parts = state.phase === "two-phase" ? [state.liquid, state.vapour] : [state];
  const all = [...numbersIn({ ...state }), ...parts.flatMap((part) => [...numbersIn({ ...part })])];
  for (const part of parts) all.push([".secondVirial", part.secondVirial]);
  for (const [path, number] of all) {
    if (!Number.isFinite(number)) expect.fail(`${path} is ${number} for ${where}`);
  }
  for (const part of parts) {
    const positive = [part.temperature, part.pressure, part.density, part.cv, part.cp, part.speedOfSound];
    if (!positive.every((number) => number > 0))
      expect.fail(`a property is not above 0 for ${where}: ${positive}`);
  }
  expect(JSON.stringify(state)).not.toContain("null");
  for (const [name, value] of Object.entries(asked)) {
    const found = (state as unknown as Record<string, number>)[name];
    const miss = Math.abs((found ?? Number.NaN) - (value as number)) / scaleOf(name, value as number, state);
    // A quality or a density that differs from what was asked would be a silent clamp.
    if (!(miss <= sameness)) expect.fail(`${name} came back as ${found} for ${where}`);
  }
  const { limits, critical } = state.refrigerant;
  // Within 1e-9 of a limit rounding decides.
  const within = (room: number): boolean =>
    state.temperature >= limits.minimumTemperature * (1 - room) &&
    state.temperature <= limits.maximumTemperature &&
    state.pressure <= Math.max(limits.maximumPressure, critical.pressure) * (1 + room);
  const isWrong = state.extrapolated ? within(0.5e-9) : !within(2e-9);
  if (isWrong) expect.fail(`extrapolated is ${state.extrapolated} for ${where}`);
}

/** Runs a call of any input: a sound value, or one of our own errors; anything else fails with what was asked. */
function run<Value>(kind: string, where: string, call: () => Value, check: (value: Value) => void): void {
  evaluations("reset");
  let outcome = "answered";
  let value: Value | undefined;
  try {
    value = call();
  } catch (error) {
    if (!isDewlineError(error)) expect.fail(`${String(error)} for ${where}`);
    // An iteration that did not settle is a bug, as its own message says.
    if (error.code === "not-converged") expect.fail(`${error.message} for ${where}`);
    expect(error.message).not.toContain("[object");
    outcome = error.code;
  }
  const count = evaluations();
  if (count > mostSeen.evaluations) mostSeen = { evaluations: count, where };
  if (count > mostEvaluations) expect.fail(`${count} evaluations for ${where}`);
  outcomes.set(`${kind}, ${outcome}`, (outcomes.get(`${kind}, ${outcome}`) ?? 0) + 1);
  if (value !== undefined) check(value);
}

function runState(kind: string, refrigerant: Refrigerant, input: unknown, options?: StateOptions): void {
  const where = `${refrigerant.designation} ${refrigerant.equation} ${fc.stringify([input, options])}`;
  run(
    kind,
    where,
    () => refrigerant.state(input as StateInput, options),
    (state) => checkState(state, input as Record<string, unknown>, where),
  );
}

/** The double so many steps above (or below) a positive one. */
function neighbour(x: number, steps: number): number {
  const bits = new BigInt64Array(new Float64Array([x]).buffer);
  bits[0] = (bits[0] ?? 0n) + BigInt(steps);
  return new Float64Array(bits.buffer)[0] ?? Number.NaN;
}

/** Values on a mark, a few doubles beside it, and at every distance from it. */
function around(marks: readonly number[]): fc.Arbitrary<number> {
  const mark = fc.constantFrom(...marks.filter((value) => Number.isFinite(value) && value > 0));
  return fc.oneof(
    fc.tuple(mark, fc.integer({ min: -2, max: 2 })).map(([value, steps]) => neighbour(value, steps)),
    fc
      .tuple(mark, anySize(-16, -1), fc.constantFrom(-1, 1))
      .map(([value, x, sign]) => value * (1 + sign * x)),
  );
}

const options: fc.Arbitrary<StateOptions | undefined> = fc.constantFrom(
  undefined,
  {},
  { extrapolate: false },
  { extrapolate: true },
);

/** The places of a fluid where something changes. */
interface Marks {
  readonly temperatures: readonly number[];
  readonly pressures: readonly number[];
  readonly densities: readonly number[];
}

const marked = new Map<Fluid, Marks>();

function marksOf(fluid: Fluid): Marks {
  let marks = marked.get(fluid);
  if (marks === undefined) {
    const { critical, limits, trySaturation } = bound(refrigerantOf(fluid));
    const { minimumTemperature, maximumTemperature, maximumPressure } = limits;
    const Tc = critical.temperature;
    const saturations = [minimumTemperature, 0.7 * Tc, 0.9 * Tc, 0.999 * Tc, Tc - 2e-3, Tc - 1e-3].flatMap(
      (T) => {
        const found = trySaturation(T);
        return found === undefined ? [] : [found];
      },
    );
    const highest = Math.max(maximumPressure, critical.pressure);
    marks = {
      temperatures: [
        ...[minimumTemperature, 0.85 * minimumTemperature, maximumTemperature, 1.5 * maximumTemperature],
        ...[Tc, Tc - 1e-3, Tc - 0.5e-3, Tc - 1e-6, Tc + 1e-3],
        ...saturations.map(({ temperature }) => temperature),
      ],
      pressures: [
        ...[maximumPressure, highest, 2 * highest, critical.pressure, 1e-250],
        ...saturations.map(({ pressure }) => pressure),
      ],
      densities: [
        critical.density,
        ...saturations.flatMap(({ liquid, vapour }) => [liquid.density, vapour.density]),
      ],
    };
    marked.set(fluid, marks);
  }
  return marks;
}

function bound(refrigerant: Refrigerant) {
  const trySaturation = (temperature: number): Saturation | undefined => {
    const outcome = refrigerant.trySaturation({ temperature });
    return outcome.ok ? outcome.value : undefined;
  };
  return { critical: refrigerant.critical, limits: refrigerant.limits, trySaturation };
}

/** A value for each field: anything a double can be, everything near a mark, and what is usual. */
function fieldsOf(fluid: Fluid): Readonly<Record<string, fc.Arbitrary<number>>> {
  const { temperatures, pressures, densities } = marksOf(fluid);
  const { minimumTemperature, maximumTemperature, maximumPressure } = fluid.limits;
  const between = (low: number, high: number): fc.Arbitrary<number> =>
    share().map((u) => low + u * (high - low));
  const either = (positive: fc.Arbitrary<number>): fc.Arbitrary<number> =>
    fc.tuple(positive, fc.constantFrom(-1, 1)).map(([x, sign]) => sign * x);
  return {
    temperature: fc.oneof(
      fc.double(),
      anySize(),
      around(temperatures),
      between(0.8 * minimumTemperature, 1.6 * maximumTemperature),
    ),
    pressure: fc.oneof(
      fc.double(),
      anySize(),
      around(pressures),
      anySize(0, Math.log10(2.1 * maximumPressure)),
    ),
    density: fc.oneof(fc.double(), anySize(), around(densities), anySize(-3, 4)),
    quality: fc.oneof(
      fc.double(),
      fc.constantFrom(0, -0, 1, 1e-300, Number.MIN_VALUE, -Number.MIN_VALUE, 1 - 2 ** -53, 1 + 2 ** -52),
      share(),
    ),
    enthalpy: fc.oneof(fc.double(), either(anySize()), between(-2e6, 5e6)),
    entropy: fc.oneof(fc.double(), either(anySize()), between(-1e4, 2e4)),
    internalEnergy: fc.oneof(fc.double(), either(anySize()), between(-2e6, 5e6)),
  };
}

describe("a state is sound or refused with an error of our own", () => {
  it.each(inputPairs)("for any numbers as %s and %s", (one, two) => {
    const cases = anyFluid().chain((fluid) => {
      const fields = fieldsOf(fluid);
      return fc.tuple(fc.constant(fluid), fields[one]!, fields[two]!, options);
    });
    fc.assert(
      fc.property(cases, ([fluid, x, y, how]) => {
        runState(`${one} + ${two}`, refrigerantOf(fluid), { [one]: x, [two]: y }, how);
      }),
    );
  });

  it("for properties of a state that exists, one of them moved a little or taken from another state", () => {
    const moves = fc.oneof(
      fc.constant((x: number) => x),
      fc.integer({ min: -3, max: 3 }).map((steps) => (x: number) => x + steps * Math.abs(x) * 2 ** -52),
      fc.tuple(anySize(-14, 0), fc.constantFrom(-1, 1)).map(
        ([size, sign]) =>
          (x: number) =>
            x * (1 + sign * size),
      ),
      anySize(-2, 6).map((size) => (x: number) => x + size),
      anySize(-2, 6).map((size) => (x: number) => x - size),
      fc.constant((x: number) => -x),
    );
    const cases = fc.tuple(
      anyFluid(),
      fc.constantFrom(...inputPairs),
      share(),
      share(),
      share(),
      moves,
      moves,
      options,
    );
    fc.assert(
      fc.property(cases, ([fluid, [one, two], u, v, w, move, otherMove, how]) => {
        const refrigerant = refrigerantOf(fluid);
        const { critical, limits } = refrigerant;
        const hottest = critical.temperature - 1.0001e-3;
        const temperature = limits.minimumTemperature + v * (hottest - limits.minimumTemperature);
        const state =
          w < 0.5 ? singlePhaseAt(refrigerant, u, v) : refrigerant.state({ temperature, quality: u });
        fc.pre(state !== undefined);
        const from = state as unknown as Readonly<Record<string, number | undefined>>;
        const input = { [one]: move(from[one] ?? w), [two]: otherMove(from[two] ?? w) };
        runState("neighbours", refrigerant, input, how);
      }),
    );
  });

  it("for points of the saturation curve, as temperature and pressure or as a density on it", () => {
    const steps = fc.integer({ min: -4, max: 4 });
    fc.assert(
      fc.property(anyFluid(), share(), steps, steps, options, (fluid, u, n, m, how) => {
        const refrigerant = refrigerantOf(fluid);
        const { critical, limits } = refrigerant;
        const hottest = critical.temperature - 1.0001e-3;
        const temperature = limits.minimumTemperature + (1 - u * u) * (hottest - limits.minimumTemperature);
        const { pressure, liquid, vapour } = refrigerant.saturation({ temperature });
        const T = neighbour(temperature, n);
        runState("on saturation", refrigerant, { temperature: T, pressure: neighbour(pressure, m) }, how);
        for (const part of [liquid, vapour]) {
          const { density, enthalpy, entropy, internalEnergy } = part;
          runState("on saturation", refrigerant, { temperature: T, density: neighbour(density, m) }, how);
          runState("on saturation", refrigerant, { pressure: neighbour(pressure, n), enthalpy }, how);
          runState("on saturation", refrigerant, { pressure: neighbour(pressure, n), entropy }, how);
          runState("on saturation", refrigerant, { density: neighbour(density, m), internalEnergy }, how);
          runState("on saturation", refrigerant, { enthalpy, entropy }, how);
        }
      }),
    );
  });

  it("for points around the critical point, nearer than it can be resolved", () => {
    const offset = fc
      .tuple(anySize(-16, -2), fc.constantFrom(-1, 0, 1))
      .map(([size, sign]) => 1 + sign * size);
    fc.assert(
      fc.property(anyFluid(), offset, offset, options, (fluid, x, y, how) => {
        const refrigerant = refrigerantOf(fluid);
        const { temperature, pressure, density } = refrigerant.critical;
        runState("critical", refrigerant, { temperature: x * temperature, pressure: y * pressure }, how);
        runState("critical", refrigerant, { temperature: x * temperature, density: y * density }, how);
        runState("critical", refrigerant, { temperature: x * temperature, quality: 0.5 }, how);
        runState("critical", refrigerant, { pressure: x * pressure, quality: 0.5 }, how);
        const near = refrigerant.state(
          { temperature: 1.0001 * temperature, density: y * density },
          { extrapolate: true },
        );
        const { enthalpy, entropy, internalEnergy } = near;
        const drop = 1e-4 * refrigerant.specificGasConstant;
        runState(
          "critical",
          refrigerant,
          { pressure: x * pressure, enthalpy: enthalpy - drop * temperature },
          how,
        );
        runState("critical", refrigerant, { pressure: x * pressure, entropy: entropy - drop }, how);
        runState(
          "critical",
          refrigerant,
          { density: x * density, internalEnergy: internalEnergy - drop * temperature },
          how,
        );
        runState(
          "critical",
          refrigerant,
          { enthalpy: enthalpy - drop * temperature, entropy: entropy - drop },
          how,
        );
      }),
    );
  });
});

describe("saturation is sound or refused with an error of our own", () => {
  it.each(["temperature", "pressure"] as const)("for any number as %s", (name) => {
    const cases = anyFluid().chain((fluid) => fc.tuple(fc.constant(fluid), fieldsOf(fluid)[name]!, options));
    fc.assert(
      fc.property(cases, ([fluid, value, how]) => {
        const refrigerant = refrigerantOf(fluid);
        const where = `${fluid.designation} ${fluid.equation} ${fc.stringify([{ [name]: value }, how])}`;
        const call = (): Saturation =>
          refrigerant.saturation({ [name]: value } as { temperature: number }, how);
        run(`saturation by ${name}`, where, call, ({ liquid, vapour, temperature, pressure, latentHeat }) => {
          checkState(liquid, { [name]: value }, where);
          checkState(vapour, { [name]: value }, where);
          if (!(latentHeat > 0 && liquid.density > vapour.density && temperature > 0 && pressure > 0)) {
            expect.fail(`liquid and vapour are no pair for ${where}`);
          }
        });
      }),
    );
  });
});

describe("anything at all", () => {
  /** Texts, lists, symbols, functions, objects with and without prototype, and objects with our own names in them. */
  const anything = fc.oneof(
    fc.anything({
      withBigInt: true,
      withDate: true,
      withMap: true,
      withNullPrototype: true,
      withSparseArray: true,
    }),
    fc.constantFrom<unknown>(Symbol("x"), () => 300, Object(300), new Float64Array([300, 1e5])),
    fc.dictionary(
      fc.constantFrom(
        "temperature",
        "pressure",
        "density",
        "quality",
        "enthalpy",
        "entropy",
        "internalEnergy",
        "T",
      ),
      fc.oneof(fc.double(), fc.anything(), fc.constantFrom(300, 1e5, 0.5)),
    ),
  );

  it("as input or options is refused with an error of our own, and never with another", () => {
    fc.assert(
      fc.property(anyFluid(), anything, fc.option(anything, { nil: undefined }), (fluid, input, how) => {
        const refrigerant = refrigerantOf(fluid);
        const where = `${fluid.designation} ${fc.stringify([input, how])}`;
        for (const method of ["state", "saturation", "bubble", "dew"] as const) {
          const call = refrigerant[method] as (at: unknown, how?: unknown) => State | Saturation;
          run(
            "anything",
            where,
            () => call.call(refrigerant, input, how),
            (value) => {
              for (const [path, number] of numbersIn({ ...value })) {
                if (!Number.isFinite(number)) expect.fail(`${path} is ${number} for ${where}`);
              }
            },
          );
        }
      }),
    );
  });

  it("as a reference state is refused with an error of our own, or gives finite enthalpies", () => {
    const numbers = fc.oneof(fc.double(), fc.constantFrom(0, 2e5, 300, 1e5, 1), anySize());
    const own = fc.record(
      {
        at: fc.record(
          { temperature: numbers, pressure: numbers, quality: fc.constantFrom<unknown>(0, 1, 0.5, "0") },
          { requiredKeys: ["temperature"] },
        ),
        enthalpy: numbers,
        entropy: numbers,
      },
      { requiredKeys: ["at", "enthalpy", "entropy"] },
    );
    const words = fc.constantFrom<unknown>("iir", "ashrae", "nbp", "IIR", "constructor");
    fc.assert(
      fc.property(anyFluid(), fc.oneof(own, words, anything), share(), (fluid, reference, u) => {
        const where = `${fluid.designation} ${fluid.equation} ${fc.stringify(reference)}`;
        const plain = singlePhaseAt(refrigerantOf(fluid), u, 0.5);
        fc.pre(plain !== undefined);
        const { temperature, pressure } = plain;
        const call = (): State =>
          refrigerantFrom(fluid, { referenceState: reference as ReferenceState }).state({
            temperature,
            pressure,
          });
        run("reference state", where, call, (state) => checkState(state, { temperature, pressure }, where));
      }),
    );
  });
});
