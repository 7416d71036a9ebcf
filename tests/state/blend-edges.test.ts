import { describe, expect, test } from "vitest";
import { r32 } from "../../src/fluids/r-32.js";
import {
  type BlendPart,
  blend,
  evaporatorMean,
  type Glide,
  glide,
  type Refrigerant,
  refrigerant,
  tryAzeotropes,
  tryBlend,
  tryEvaporatorMean,
  tryGlide,
  tryRefrigerant,
  tryRegisterFluid,
} from "../../src/state/index.js";
import { InputError, type Outcome } from "../../src/units/index.js";

/* No outside source: edges at which an answer could be wrong without looking wrong. */

function pathsOf(outcome: Outcome<unknown>): readonly string[] {
  if (outcome.ok) throw new Error("was not refused");
  if (!(outcome.error instanceof InputError)) throw outcome.error;
  return outcome.error.problems.map(({ path }) => path);
}

/** boil over a hundred kelvins: at its critical temperature this blend is deep inside its dome. */
const wide = blend([
  ["R-744", 0.5],
  ["R-600", 0.5],
]);

describe("at the critical temperature of a wide-boiling blend", () => {
  test.each([0.9, 0.99, 0.999])("%f of the critical pressure has two phases, by every pair", (share) => {
    const { temperature, pressure: pc } = wide.critical;
    const pressure = share * pc;
    const state = wide.state({ temperature, pressure });
    expect(state.phase).toBe("two-phase");
    const again = wide.state({ pressure, enthalpy: state.enthalpy });
    expect(again.temperature).toBeWithin(temperature, 1e-9);
    expect(again.quality).toBeWithin(state.quality!, 1e-6);
  });
});

describe("near-azeotropes beyond the critical point", () => {
  test.each(["R-410A", "R-513A", "R-515B", "R-407C"])(
    "%s answers by pressure what it answers by temperature",
    (name) => {
      const near: Refrigerant = refrigerant(name);
      const { critical, cricondenbar } = near.blend!.phaseBoundary();
      const pressure = critical!.pressure + 0.4 * (cricondenbar.pressure - critical!.pressure);
      for (const end of ["tryBubble", "tryDew"] as const) {
        const byPressure = near[end]({ pressure });
        if (!byPressure.ok) {
          // Only one line turns beyond the critical point; the other has its end there.
          expect(["out-of-range", "no-such-state"]).toContain(byPressure.error.code);
          continue;
        }
        const found = near[end === "tryBubble" ? "bubble" : "dew"]({
          temperature: byPressure.value.temperature,
        });
        expect(found.pressure).toBeWithin(pressure, 1e-4);
      }
    },
  );
});

describe("a blend whose lines do not meet", () => {
  const open = blend([
    ["R-744", 0.05],
    ["R-32", 0.475],
    ["R-125", 0.475],
  ]);

  test("answers below the gap, says so where a critical point is asked for, and draws what it knows", () => {
    expect(open.dew({ temperature: 283 }).pressure).toBeLessThan(open.bubble({ temperature: 283 }).pressure);
    expect(() => open.critical).toThrow("do not meet");
    const { critical, points } = open.blend!.phaseBoundary();
    expect(critical).toBeUndefined();
    expect(points.length).toBeGreaterThan(20);
    const state = open.state({ temperature: 283, quality: 0.3 });
    const again = open.state({ pressure: state.pressure, enthalpy: state.enthalpy });
    expect(again.temperature).toBeWithin(283, 1e-9);
  });
});

describe("what would be dropped in silence is refused", () => {
  const r407c = refrigerant("R-407C");

  test("a glide by temperature, and an evaporator without its pressure", () => {
    expect(pathsOf(tryGlide(r407c, { temperature: 273 } as unknown as { pressure: number }))).toEqual([
      "pressure",
      "temperature",
    ]);
    expect(pathsOf(tryGlide(undefined as unknown as Refrigerant, { pressure: 5e5 }))).toEqual([
      "refrigerant",
    ]);
    const nothing = undefined as unknown as { pressure: number; enthalpy: number };
    expect(pathsOf(tryEvaporatorMean(r407c, nothing))).toEqual([""]);
    expect(pathsOf(tryEvaporatorMean(r407c, { pressure: 5e5, enthalpy: 9e5 }))).toEqual(["enthalpy"]);
    const { temperature }: Glide["dew"] = glide(r407c, { pressure: 5e5 }).dew;
    expect(evaporatorMean(r407c, { pressure: 5e5, enthalpy: 3e5 })).toBeLessThan(temperature);
  });

  test("a designation that belongs to another refrigerant", () => {
    const parts: BlendPart[] = [
      ["R-290", 0.5],
      ["R-600a", 0.5],
    ];
    for (const designation of ["R-410A", "r32", "propane"]) {
      expect(pathsOf(tryBlend(parts, { designation }))).toEqual(["options.designation"]);
    }
    expect(
      pathsOf(
        tryRegisterFluid({ ...r32, designation: "R-410A", name: "own", synonyms: [], formula: "", cas: "" }),
      ),
    ).toContain("designation");
  });

  test("options of a blend that comes down to one component, and pairs that it does not have", () => {
    const one: BlendPart[] = [["R-32", 1]];
    expect(pathsOf(tryBlend(one, { lowestGrade: "bogus" } as object))).toEqual(["options.lowestGrade"]);
    const other = blend([
      ["R-32", 0.5],
      ["R-13I1", 0.5],
    ]).blend!.pairs;
    expect(pathsOf(tryBlend([["R-454B", 1]], { pairs: other }))).toEqual(["options.pairs[0].between"]);
  });

  test("a lowest grade, by name too", () => {
    expect(pathsOf(tryRefrigerant("R-454B", { lowestGrade: "published" }))).toEqual(["components"]);
    expect(refrigerant("R-507A", { lowestGrade: "published" }).blend?.isAzeotropic).toBe(true);
    expect(refrigerant("R-32", { lowestGrade: "published" }).designation).toBe("R-32");
    expect(pathsOf(tryRefrigerant("R-32", { lowestGrade: "good" } as object))).toEqual([
      "options.lowestGrade",
    ]);
  });

  test("an azeotrope outside the range of its equations", () => {
    for (const at of [{ pressure: 1 }, { temperature: 5 }]) {
      const outcome = tryAzeotropes(["R-744", "R-170"], at);
      expect(outcome.ok ? "" : outcome.error.code).toBe("out-of-range");
    }
    expect(pathsOf(tryAzeotropes(["R-32", "R-125"], { pressure: 1e5 }, { basis: "mass" } as object))).toEqual(
      ["options.basis"],
    );
  });

  test("a reference state outside the range", () => {
    const at = { temperature: 5000, pressure: 1e5 };
    const far = refrigerant("R-407C", { referenceState: { at, enthalpy: 0, entropy: 0 } });
    expect(() => far.state({ temperature: 300, pressure: 1e5 })).toThrow("outside its range");
  });
});
