import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import type { Refrigerant, Saturation, State, StateInput, StateOptions } from "../../src/state/index.js";
import { isDewlineError } from "../../src/units/index.js";
import { anySize, inputPairs, numbersIn, scaleOf } from "../support/any-input.js";
import { anyDesignatedBlend } from "../support/blends.js";
import { share } from "../support/states.js";

/*
 * No outside source: the promise that whatever is asked of a blend, the answer is a state without NaN, infinity or silent
 * clamp, or an error of the library's own.
 */

const outcomes = new Map<string, number>();
afterAll(() => {
  const lines = [...outcomes].sort().map(([outcome, count]) => `  ${outcome}: ${count}`);
  console.log(["any input to blends, what came of it:", ...lines].join("\n"));
});

/** What is returned differs from what was asked by less than this, on the scale of a large change. */
const sameness = 1e-6;

function checkFinite(value: object, where: string): void {
  for (const [path, number] of numbersIn(value)) {
    if (!Number.isFinite(number)) expect.fail(`${path} is ${number} for ${where}`);
  }
}

function checkState(state: State, asked: Readonly<Record<string, number>>, where: string): void {
  const parts = state.phase === "two-phase" ? [state.liquid, state.vapour] : [state];
  checkFinite({ ...state }, where);
  for (const part of parts) {
    checkFinite({ ...part, virial: part.secondVirial, fugacities: part.fugacityCoefficients }, where);
    const positive = [part.temperature, part.pressure, part.density, part.cv, part.cp, part.speedOfSound];
    if (!positive.every((number) => number > 0)) {
      expect.fail(`a property is not above 0 for ${where}: ${positive}`);
    }
  }
  for (const [name, value] of Object.entries(asked)) {
    const found = (state as unknown as Record<string, number>)[name] ?? Number.NaN;
    const miss = Math.abs(found - value) / scaleOf(name, value, state);
    if (!(miss <= sameness)) expect.fail(`${name} came back as ${found} for ${where}`);
  }
}

function run<Value>(kind: string, where: string, call: () => Value, check: (value: Value) => void): void {
  let outcome = "answered";
  let value: Value | undefined;
  try {
    value = call();
  } catch (error) {
    if (!isDewlineError(error)) expect.fail(`${String(error)} for ${where}`);
    // An iteration that did not settle is a bug, as its own message says.
    if (error.code === "not-converged") expect.fail(`${error.message} for ${where}`);
    outcome = error.code;
  }
  outcomes.set(`${kind}, ${outcome}`, (outcomes.get(`${kind}, ${outcome}`) ?? 0) + 1);
  if (value !== undefined) check(value);
}

function between(low: number, high: number): fc.Arbitrary<number> {
  return share().map((u) => low + u * (high - low));
}

function fieldsOf({ limits, critical }: Refrigerant): Readonly<Record<string, fc.Arbitrary<number>>> {
  const { minimumTemperature, maximumTemperature, maximumPressure } = limits;
  const either = (positive: fc.Arbitrary<number>): fc.Arbitrary<number> =>
    fc.tuple(positive, fc.constantFrom(-1, 1)).map(([x, sign]) => sign * x);
  const near = (mark: number): fc.Arbitrary<number> =>
    fc.tuple(anySize(-16, -1), fc.constantFrom(-1, 0, 1)).map(([x, sign]) => mark * (1 + sign * x));
  return {
    temperature: fc.oneof(
      fc.double(),
      anySize(),
      near(critical.temperature),
      near(minimumTemperature),
      between(0.8 * minimumTemperature, 1.6 * maximumTemperature),
    ),
    pressure: fc.oneof(
      fc.double(),
      anySize(),
      near(critical.pressure),
      near(maximumPressure),
      anySize(0, Math.log10(2.1 * maximumPressure)),
    ),
    density: fc.oneof(fc.double(), anySize(), near(critical.density), anySize(-3, 4)),
    quality: fc.oneof(
      fc.double(),
      fc.constantFrom(0, -0, 1, 1e-300, Number.MIN_VALUE, 1 - 2 ** -53, 1 + 2 ** -52),
      share(),
    ),
    enthalpy: fc.oneof(fc.double(), either(anySize()), between(-2e5, 1.5e6)),
    entropy: fc.oneof(fc.double(), either(anySize()), between(-1e3, 6e3)),
    internalEnergy: fc.oneof(fc.double(), either(anySize()), between(-2e5, 1.5e6)),
  };
}

const options: fc.Arbitrary<StateOptions | undefined> = fc.constantFrom(
  undefined,
  { extrapolate: false },
  { extrapolate: true },
);

describe("a state of a blend is sound or refused with an error of our own", () => {
  it.each(inputPairs)("for any numbers as %s and %s", (one, two) => {
    const cases = anyDesignatedBlend().chain((blend) => {
      const fields = fieldsOf(blend);
      return fc.tuple(fc.constant(blend), fields[one]!, fields[two]!, options);
    });
    fc.assert(
      fc.property(cases, ([blend, x, y, how]) => {
        const where = `${blend.designation} ${fc.stringify([{ [one]: x, [two]: y }, how])}`;
        const input = { [one]: x, [two]: y };
        run(
          `${one} + ${two}`,
          where,
          () => blend.state(input as unknown as StateInput, how),
          (state) => checkState(state, input, where),
        );
      }),
    );
  });
});

describe("bubble and dew points of a blend are sound or refused with an error of our own", () => {
  it.each(["temperature", "pressure"] as const)("for any number as %s", (name) => {
    const cases = anyDesignatedBlend().chain((blend) =>
      fc.tuple(fc.constant(blend), fieldsOf(blend)[name]!, options),
    );
    fc.assert(
      fc.property(cases, ([blend, value, how]) => {
        const where = `${blend.designation} ${fc.stringify([{ [name]: value }, how])}`;
        const at = { [name]: value } as { temperature: number };
        for (const end of ["bubble", "dew"] as const) {
          const call = (): Saturation => blend[end](at, how);
          run(`${end} by ${name}`, where, call, ({ liquid, vapour, temperature, pressure }) => {
            checkState(liquid, { [name]: value }, where);
            checkState(vapour, { [name]: value }, where);
            if (!(liquid.density > vapour.density && temperature > 0 && pressure > 0)) {
              expect.fail(`liquid and vapour are no pair for ${where}`);
            }
          });
        }
      }),
    );
  });
});
