import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { type Fluid, parseFluid, type ResidualPart } from "../../src/catalogue/index.js";
import { Equation } from "../../src/equation/index.js";
import { checkEquation, criticalResidual } from "../../src/equilibrium/index.js";
import { fluids, refrigerant, refrigerantFrom, registerFluid } from "../../src/state/index.js";
import { attempt } from "../../src/units/index.js";
import { anyFluid, share } from "../support/states.js";

/*
 * How much a slip of the pen in a coefficient is noticed when a fluid is registered. No outside source: what is refused
 * follows from the limits of the checks, and the shares are printed so that a loss shows.
 */

/** One slip: which number of which row, and what it became. */
interface Slip {
  readonly fluid: Fluid;
  readonly what: string;
}

const kinds = ["sign", "digit", "power of ten", "t ± 1", "d ± 1", "l ± 1"] as const;
type Kind = (typeof kinds)[number];

/** Tables whose rows begin with n, t, d; the fourth number is l in two of them. */
const tables = ["power", "doubleExp", "gaussian", "reciprocalBell"] as const;
type Table = (typeof tables)[number];

/** Every row that a slip of this kind can happen in. */
function rowsFor(kind: Kind, { residual }: Fluid): readonly (readonly [Table, number])[] {
  return tables
    .filter((table) => kind !== "l ± 1" || table === "power" || table === "doubleExp")
    .flatMap((table) => (residual[table] ?? []).map((_, index) => [table, index] as const));
}

/** Replaces one row of a fluid. */
function withRow(fluid: Fluid, table: Table, index: number, change: (row: number[]) => number[]): Fluid {
  const rows = (fluid.residual[table] ?? []).map((row, k) => (k === index ? change([...row]) : row));
  return { ...fluid, residual: { ...fluid.residual, [table]: rows } as ResidualPart };
}

function replaced(numbers: readonly number[], at: number, value: number): number[] {
  return numbers.map((number, k) => (k === at ? value : number));
}

/** Puts another digit for one of the first four of a number. */
function misread(value: number, u: number, v: number): number {
  const digits = [...value.toExponential()];
  const places = digits
    .flatMap((digit, k) => (/\d/.test(digit) && k < digits.indexOf("e") ? [k] : []))
    .slice(0, 4);
  const place = places[Math.floor(u * places.length)]!;
  const others = "0123456789".replace(digits[place]!, "").replace(place === places[0] ? "0" : "", "");
  digits[place] = others[Math.floor(v * others.length)]!;
  return Number(digits.join(""));
}

function slipIn(fluid: Fluid, kind: Kind, u: number, v: number, w: number): Slip | undefined {
  const rows = rowsFor(kind, fluid);
  const row = rows[Math.min(rows.length - 1, Math.floor(u * rows.length))];
  if (row === undefined) return undefined;
  const [table, index] = row;
  let change = "";
  const move =
    (at: number): ((numbers: number[]) => number[]) =>
    (numbers) => {
      const step = v < 0.5 && numbers[at]! >= 1 ? -1 : 1;
      change = `${numbers[at]} → ${numbers[at]! + step}`;
      return replaced(numbers, at, numbers[at]! + step);
    };
  const scale =
    (of: (n: number) => number): ((numbers: number[]) => number[]) =>
    (numbers) => {
      change = `${numbers[0]} → ${of(numbers[0]!)}`;
      return replaced(numbers, 0, of(numbers[0]!));
    };
  const changes: Readonly<Record<Kind, (numbers: number[]) => number[]>> = {
    sign: scale((n) => -n),
    digit: scale((n) => misread(n, v, w)),
    "power of ten": scale((n) => (v < 0.5 ? n * 10 : n / 10)),
    "t ± 1": move(1),
    "d ± 1": move(2),
    "l ± 1": move(3),
  };
  const mutated = withRow(fluid, table, index, changes[kind]);
  return {
    fluid: { ...mutated, designation: `${fluid.designation}-slip`, cas: "" },
    what: `${fluid.designation} ${fluid.equation} ${table}[${index}] ${kind} ${change}`,
  };
}

const seen = new Map<string, { refused: number; cases: number }>();

function record(what: string, refused: boolean): void {
  const share = seen.get(what) ?? { refused: 0, cases: 0 };
  share.cases++;
  if (refused) share.refused++;
  seen.set(what, share);
}

afterAll(() => {
  const lines = [...seen].map(
    ([what, { refused, cases }]) => `  ${what}: ${((100 * refused) / cases).toFixed(0)} % of ${cases}`,
  );
  console.log(["slips that are refused:", ...lines].join("\n"));
});

function isRefused(fluid: Fluid): boolean {
  const outcome = attempt(() => checkEquation(parseFluid(fluid)));
  if (!outcome.ok) expect(outcome.error.code).toBe("malformed-input");
  return !outcome.ok;
}

describe("a slip in one coefficient", () => {
  it("is refused, or leaves an equation that still gives sound states", () => {
    fc.assert(
      fc.property(
        anyFluid(),
        fc.constantFrom(...kinds),
        share(),
        share(),
        share(),
        (fluid, kind, u, v, w) => {
          const slip = slipIn(fluid, kind, u, v, w);
          fc.pre(slip !== undefined);
          const refused = isRefused(slip.fluid);
          record(kind, refused);
          record("all", refused);
          if (refused) return;
          // What got through is a fluid like another: it answers with numbers or with an error of our own.
          const asked = refrigerantFrom(slip.fluid, { referenceState: "nbp" });
          const temperature =
            asked.limits.minimumTemperature +
            u * (asked.limits.maximumTemperature - asked.limits.minimumTemperature);
          const outcome = asked.tryState({ temperature, pressure: 1e3 * 1e5 ** v });
          if (!outcome.ok) return;
          for (const [name, value] of Object.entries(outcome.value)) {
            if (typeof value === "number" && !Number.isFinite(value))
              expect.fail(`${name} is ${value}: ${slip.what}`);
          }
        },
      ),
    );
    // Measured over 10 000 slips, less a few per cent for the chance of a shorter run.
    for (const [what, least] of [
      ["sign", 0.87],
      ["digit", 0.47],
      ["power of ten", 0.87],
      ["t ± 1", 0.5],
      ["d ± 1", 0.8],
      ["l ± 1", 0.9],
      ["all", 0.78],
    ] as const) {
      const { refused, cases } = seen.get(what) ?? { refused: 0, cases: 0 };
      if (cases >= 200) expect(refused / cases, what).toBeGreaterThan(least);
    }
  });

  it("of sign is always refused where the term matters at the critical point", () => {
    let mattered = 0;
    for (const fluid of fluids()) {
      const { temperature, density, pressure } = fluid.critical;
      const tau = fluid.reducing.temperature / temperature;
      const delta = density / fluid.reducing.density;
      const conditions = (part: ResidualPart) =>
        criticalResidual(new Equation({ ...fluid, residual: part }), tau, delta);
      const none = conditions({ power: [] });
      const whole = conditions(fluid.residual);
      const reduced = pressure / (fluid.reducing.density * fluid.gasConstant * temperature);
      for (const [table, index] of rowsFor("sign", fluid)) {
        const row = fluid.residual[table]?.[index];
        const term = conditions({ power: [], [table]: [row] } as ResidualPart);
        // With the sign turned the term is missing twice; the limits are those that the check states.
        const off = (name: "pressure" | "first" | "second", target: number): number =>
          Math.abs(whole[name] - 2 * (term[name] - none[name]) - target);
        const matters =
          off("pressure", reduced) > 0.011 * reduced || off("first", 0) > 0.021 || off("second", 0) > 0.051;
        if (!matters) continue;
        mattered++;
        const wrong = withRow(fluid, table, index, (numbers) => replaced(numbers, 0, -numbers[0]!));
        expect(isRefused(wrong), `${fluid.designation} ${fluid.equation} ${table}[${index}]`).toBe(true);
      }
    }
    const rows = fluids().reduce((sum, fluid) => sum + rowsFor("sign", fluid).length, 0);
    console.log(`signs that matter at the critical point: ${mattered} of ${rows}`);
    expect(mattered).toBeGreaterThan(0.8 * rows);
  });

  it("of the first digit or a power of ten is refused in the leading term of every equation", () => {
    for (const fluid of fluids()) {
      const largest = fluid.residual.power.reduce(
        (best, [n], k, rows) => (Math.abs(n) > Math.abs(rows[best]![0]) ? k : best),
        0,
      );
      for (const factor of [0.1, 10, 1.1, 0.9, -1]) {
        const wrong = withRow(fluid, "power", largest, (numbers) =>
          replaced(numbers, 0, factor * numbers[0]!),
        );
        expect(isRefused(wrong), `${fluid.designation} ${fluid.equation} × ${factor}`).toBe(true);
      }
    }
  });
});

describe("an equation without a slip", () => {
  it("is accepted under another name, whichever it is", () => {
    for (const fluid of fluids())
      expect(isRefused({ ...fluid, designation: `${fluid.designation}-copy`, cas: "" })).toBe(false);
  });

  it("is accepted with rows in another order, which is the same equation", () => {
    for (const fluid of fluids()) {
      const power = [...fluid.residual.power].reverse();
      expect(isRefused({ ...fluid, residual: { ...fluid.residual, power } }), fluid.designation).toBe(false);
    }
  });

  it("is found by its name once registered, and a refused one is not", () => {
    const original = fluids().find(({ designation }) => designation === "R-134a")!;
    const own = {
      ...structuredClone(original),
      designation: "R-own",
      name: "own gas",
      synonyms: [],
      formula: "",
      cas: "",
    };
    const wrong = withRow(own, "power", 0, (numbers) => replaced(numbers, 0, -numbers[0]!));
    expect(attempt(() => registerFluid(wrong)).ok).toBe(false);
    expect(attempt(() => refrigerant("R-own")).ok).toBe(false);
    registerFluid(own);
    const input = { temperature: 300, pressure: 1e5 };
    expect(refrigerant("own gas").state(input).enthalpy).toBe(refrigerant("R-134a").state(input).enthalpy);
  });
});
