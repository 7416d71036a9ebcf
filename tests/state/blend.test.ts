import { describe, expect, test } from "vitest";
import { r410a } from "../../src/blends/r-410a.js";
import { r454b } from "../../src/blends/r-454b.js";
import {
  azeotropes,
  type BlendPart,
  blend,
  blendFrom,
  blends,
  evaporatorMean,
  glide,
  type Refrigerant,
  refrigerant,
  tryAzeotropes,
  tryBlend,
  ZeotropeError,
} from "../../src/state/index.js";
import { InputError } from "../../src/units/index.js";

/* No outside source unless said: what the face of a blend promises. Values are in tests/handbook/. */

const zeotropic = refrigerant("R-454B");

/** The problems that an input is refused with. */
function problemsOf(parts: unknown, options?: unknown): InputError["problems"] {
  const outcome = tryBlend(parts as readonly BlendPart[], options as object | undefined);
  if (outcome.ok) throw new Error("was not refused");
  if (!(outcome.error instanceof InputError)) throw outcome.error;
  return outcome.error.problems;
}

describe("a designated blend", () => {
  test.each(["R-454B", "r454b", "454B", "R 454 b"])("is found as %s", (name) => {
    expect(refrigerant(name).designation).toBe("R-454B");
  });

  test("is the same through the small door, to the last digit", () => {
    const input = { pressure: 9e5, quality: 0.4 };
    expect(JSON.stringify(blendFrom(r454b).state(input))).toBe(JSON.stringify(zeotropic.state(input)));
  });

  test("knows its composition, its components and where the numbers come from", () => {
    expect(zeotropic.composition["R-32"]).toBeWithin(0.689, 1e-15);
    expect(zeotropic.name).toBe("R-32 68.9 %, R-1234yf 31.1 % by mass");
    // 68.9/52.024 over 68.9/52.024 + 31.1/114.0416, by hand.
    expect(zeotropic.blend?.moleFractions["R-32"]).toBeWithin(0.829249, 1e-5);
    expect(zeotropic.sources.join()).toContain("ISO 817");
    expect(zeotropic.sources.join()).toContain("Tillner-Roth");
    expect(zeotropic.notes.some((note) => note.startsWith("R-32 with R-1234yf: "))).toBe(true);
    expect(zeotropic.blend?.tolerances["R-32"]).toEqual({ above: 0.01, below: 0.01 });
  });

  test("refuses one saturation temperature and says what to ask instead", () => {
    const outcome = zeotropic.trySaturation({ temperature: 280 });
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    expect(outcome.error).toBeInstanceOf(ZeotropeError);
    expect(outcome.error.code).toBe("zeotrope");
    expect(outcome.error.message).toMatch(/dew\(.*superheat.*bubble\(.*subcooling/);
  });

  test.each(["R-507A", "R-513A", "R-515B"])("%s, an azeotrope by its designation, has one", (name) => {
    const azeotrope = refrigerant(name);
    for (const temperature of [250, 300, 0.98 * azeotrope.critical.temperature]) {
      const { pressure, liquid, vapour } = azeotrope.saturation({ temperature });
      expect(pressure).toBeLessThanOrEqual(azeotrope.bubble({ temperature }).pressure);
      expect(pressure).toBeGreaterThanOrEqual(azeotrope.dew({ temperature }).pressure);
      expect([liquid.quality, vapour.quality]).toEqual([0, 1]);
      expect(azeotrope.saturation({ pressure }).temperature).toBeWithin(temperature, 1e-9);
    }
  });

  test("has no other equation to choose", () => {
    expect(() => refrigerant("R-454B", { equation: "kunz-2012" })).toThrow("computed from its components");
  });

  test("carries grade and stated deviation into every state", () => {
    const { grade, deviation } = zeotropic.mixing ?? {};
    expect(grade).toBe("regressed");
    // R-32/R-1234yf states 2.4 %; its share is 4 × 0.829 × 0.171.
    expect(deviation).toBeWithin(0.014, 1e-12);
    for (const state of [
      zeotropic.state({ temperature: 300, pressure: 1e5 }),
      zeotropic.state({ pressure: 9e5, quality: 0.5 }),
      zeotropic.bubble({ temperature: 300 }).vapour,
    ]) {
      expect(state.mixing).toEqual({ grade, deviation });
      expect(JSON.parse(JSON.stringify(state)).mixing).toEqual({ grade, deviation });
    }
    expect(refrigerant("R-32").mixing).toBeUndefined();
  });

  test("refuses a literal that is none, with every path", () => {
    expect(() => blendFrom({ ...r410a, components: [r410a.components[0]!] })).toThrow("two components");
    const [first, second] = r410a.components;
    const wrong = { ...r410a, components: [first!, { ...second!, massFraction: 0.6 }] };
    expect(() => blendFrom(wrong)).toThrow("add up to 1");
    expect(() => blendFrom({ ...r410a, pairs: [] })).toThrow("a pair with parameters");
    expect(() => blendFrom("R-410A" as unknown as typeof r410a)).toThrow("a blend literal");
  });
});

describe("enthalpy and entropy of a blend count from its bubble point", () => {
  test("0 °C by default, −40 °C and 101.325 kPa where asked", () => {
    const iir = zeotropic.bubble({ temperature: 273.15 }).liquid;
    expect(iir.enthalpy).toBeWithin(200e3, 1e-12);
    expect(iir.entropy).toBeWithin(1e3, 1e-12);
    const ashrae = refrigerant("R-410A", { referenceState: "ashrae" }).bubble({ temperature: 233.15 }).liquid;
    expect(Math.abs(ashrae.enthalpy)).toBeLessThan(1e-6);
    const nbp = refrigerant("R-410A", { referenceState: "nbp" }).bubble({ pressure: 101325 }).liquid;
    expect(Math.abs(nbp.enthalpy)).toBeLessThan(1e-6);
  });

  test("and a state of the caller's own, unless that has two phases", () => {
    const at = { temperature: 300, pressure: 1e5 };
    const own = refrigerant("R-410A", { referenceState: { at, enthalpy: 7, entropy: 3 } });
    expect(own.state(at).enthalpy).toBeWithin(7, 1e-9);
    const { pressure } = zeotropic.state({ temperature: 280, quality: 0.5 });
    const two = refrigerant("R-454B", {
      referenceState: { at: { temperature: 280, pressure }, enthalpy: 0, entropy: 0 },
    });
    expect(() => two.state({ temperature: 300, pressure: 1e5 })).toThrow("two phases");
  });

  test("whatever is never liquid at 0 °C counts from its boiling point", () => {
    expect(
      blend([
        ["R-744", 0.02],
        ["R-170", 0.98],
      ]).referenceState,
    ).toBe("iir");
    expect(
      blend(
        [
          ["R-23", 0.5],
          ["R-170", 0.5],
        ],
        { lowestGrade: "estimated" },
      ).limits,
    ).toBeDefined();
  });
});

describe("a blend of one's own", () => {
  test("of the composition of a designated one is that one", () => {
    const own = blend([
      ["R-32", 0.689],
      ["R-1234yf", 0.311],
    ]);
    expect(own.designation).toBe("R-32/R-1234yf (68.9/31.1)");
    const pressure = zeotropic.dew({ temperature: 290 }).pressure;
    expect(own.dew({ temperature: 290 }).pressure).toBeWithin(pressure, 1e-12);
  });

  test("does not depend on the order of its components or on how often one is named", () => {
    const parts: BlendPart[] = [
      ["R-32", 0.26],
      ["R-125", 0.26],
      ["R-1234yf", 0.2],
      ["R-134a", 0.21],
      ["R-1234ze(E)", 0.07],
    ];
    const [first, ...others] = parts;
    const forms = [
      blend(parts),
      blend([...parts].reverse()),
      blend([["R-32", 0.1], ...others, ["r32", first![1] - 0.1], ["R-23", 0]]),
    ];
    const { pressure, vapour } = forms[0]!.bubble({ temperature: 280 });
    for (const form of forms) {
      const found = form.bubble({ temperature: 280 });
      expect(found.pressure).toBeWithin(pressure, 1e-11);
      expect(found.vapour.composition["R-32"]).toBeWithin(vapour.composition["R-32"]!, 1e-11);
    }
  });

  test("by amount is the same blend as by mass", () => {
    const byMass = blend([
      ["R-744", 0.03],
      ["R-32", 0.215],
      ["R-1234yf", 0.755],
    ]);
    const parts = Object.entries(byMass.blend!.moleFractions);
    const byAmount = blend(parts, { basis: "amount" });
    for (const [name, fraction] of Object.entries(byMass.composition)) {
      expect(byAmount.composition[name]).toBeWithin(fraction, 1e-12);
    }
  });

  test("takes designated blends apart, by mass and by amount", () => {
    const half: BlendPart[] = [
      ["R-410A", 0.5],
      ["R-744", 0.5],
    ];
    expect(blend(half).composition).toEqual({ "R-32": 0.25, "R-125": 0.25, "R-744": 0.5 });
    const { moleFractions } = blend(half, { basis: "amount" }).blend!;
    const inside = refrigerant("R-410A").blend!.moleFractions["R-32"]!;
    expect(moleFractions["R-32"]).toBeWithin(inside / 2, 1e-12);
  });

  test("with one component left is that pure refrigerant", () => {
    const pure = blend([
      ["R-32", 1],
      ["R-125", 0],
    ]);
    expect(pure.blend).toBeUndefined();
    expect(pure.saturation({ temperature: 280 }).pressure).toBe(
      refrigerant("R-32").saturation({ temperature: 280 }).pressure,
    );
  });

  test("comes to the pure refrigerant as the others vanish", () => {
    // The deviation falls with the fraction that is left; 1e-10 of R-1234yf lowers the pressure of R-32 by less than that.
    const pure = refrigerant("R-32").saturation({ temperature: 280 });
    for (const rest of [1e-6, 1e-8, 1e-10]) {
      const near = blend([
        ["R-32", 1 - rest],
        ["R-1234yf", rest],
      ]);
      for (const found of [near.bubble({ temperature: 280 }), near.dew({ temperature: 280 })]) {
        expect(found.pressure).toBeWithin(pure.pressure, 2 * rest + 1e-12);
        expect(found.liquid.density).toBeWithin(pure.liquid.density, 2 * rest + 1e-12);
        expect(found.vapour.enthalpy).toBeWithin(pure.vapour.enthalpy, 2 * rest + 1e-9);
      }
    }
  });

  test("of six components answers", () => {
    const six = blend([
      ["R-744", 0.05],
      ["R-32", 0.2],
      ["R-125", 0.2],
      ["R-134a", 0.2],
      ["R-1234yf", 0.2],
      ["R-1234ze(E)", 0.15],
    ]);
    const state = six.state({ temperature: 280, quality: 0.5 });
    expect(six.state({ pressure: state.pressure, enthalpy: state.enthalpy }).temperature).toBeWithin(
      280,
      1e-9,
    );
  });

  test("says that a pair is estimated, or is refused where the caller wants better", () => {
    const parts: BlendPart[] = [
      ["R-290", 0.5],
      ["R-1234yf", 0.5],
    ];
    expect(blend(parts).mixing?.grade).toBe("estimated");
    expect(problemsOf(parts, { lowestGrade: "regressed" })[0]).toMatchObject({
      path: "components",
      value: "R-290 with R-1234yf, estimated",
    });
    expect(problemsOf([["R-454B", 1]], { lowestGrade: "published" })[0]?.value).toBe(
      "R-32 with R-1234yf, regressed",
    );
  });

  test("takes parameters of the caller's own for a pair", () => {
    const parts: BlendPart[] = [
      ["R-32", 0.5],
      ["R-1234yf", 0.5],
    ];
    const known = blend(parts).blend!.pairs[0]!;
    const other = { ...known, reducing: { ...known.reducing, gammaT: 0.99 } } as typeof known;
    const pressure = blend(parts).bubble({ temperature: 280 }).pressure;
    expect(blend(parts, { pairs: [known] }).bubble({ temperature: 280 }).pressure).toBe(pressure);
    // Nearer to 1, γT means weaker deviations from Raoult's law and a lower bubble pressure.
    expect(blend(parts, { pairs: [other] }).bubble({ temperature: 280 }).pressure).toBeLessThan(
      0.97 * pressure,
    );
  });

  test.each<[string, unknown, unknown, string]>([
    [
      "a sum that is not 1",
      [
        ["R-32", 0.5],
        ["R-125", 0.6],
      ],
      {},
      "components",
    ],
    [
      "a fraction below 0",
      [
        ["R-32", 1.1],
        ["R-125", -0.1],
      ],
      {},
      "components[0][1]",
    ],
    [
      "a fraction that is none",
      [
        ["R-32", Number.NaN],
        ["R-125", 1],
      ],
      {},
      "components[0][1]",
    ],
    [
      "a row that is none",
      [
        ["R-32", 0.5, 1],
        ["R-125", 0.5],
      ],
      {},
      "components[0]",
    ],
    ["no rows", "R-32", {}, "components"],
    [
      "another basis",
      [
        ["R-32", 0.5],
        ["R-125", 0.5],
      ],
      { basis: "volume" },
      "options.basis",
    ],
    [
      "an unknown option",
      [
        ["R-32", 0.5],
        ["R-125", 0.5],
      ],
      { grade: 1 },
      "options.grade",
    ],
    [
      "a pair of no class",
      [
        ["R-32", 0.5],
        ["R-717", 0.5],
      ],
      {},
      "components",
    ],
    [
      "a grade that is none",
      [
        ["R-32", 0.5],
        ["R-125", 0.5],
      ],
      { lowestGrade: "good" },
      "options.lowestGrade",
    ],
    [
      "pairs that are none",
      [
        ["R-32", 0.5],
        ["R-125", 0.5],
      ],
      { pairs: [{}] },
      "options.pairs[0].between",
    ],
  ])("refuses %s", (_, parts, options, path) => {
    expect(problemsOf(parts, options).map((problem) => problem.path)).toContain(path);
  });
});

describe("glide", () => {
  test("is nothing for a pure refrigerant, and its mean is the saturation temperature", () => {
    const r32 = refrigerant("R-32");
    const found = glide(r32, { pressure: 8e5 });
    expect(found.glide).toBe(0);
    expect(found.mean).toBe(found.midpoint);
    expect(found.evaporationEnthalpy).toBe(r32.saturation({ pressure: 8e5 }).latentHeat);
  });

  test.each(blends().map(({ designation }) => designation))(
    "%s has its mean between bubble and dew",
    (name) => {
      const blended: Refrigerant = refrigerant(name);
      for (const pressure of [2e5, 1e6]) {
        const found = glide(blended, { pressure });
        expect(found.glide).toBeGreaterThanOrEqual(0);
        expect(found.mean).toBeGreaterThanOrEqual(found.bubble.temperature - 1e-9);
        expect(found.mean).toBeLessThanOrEqual(found.dew.temperature + 1e-9);
        // Of the same heat, taken up from half evaporated on, the mean lies higher.
        const half = blended.state({ pressure, quality: 0.5 });
        expect(evaporatorMean(blended, { pressure, enthalpy: half.enthalpy })).toBeGreaterThanOrEqual(
          found.mean - 1e-9,
        );
      }
    },
  );

  test("agrees with the mean of temperature over enthalpy, taken step by step", () => {
    const r407c = refrigerant("R-407C");
    const found = glide(r407c, { pressure: 5e5 });
    // 1/mean = ∫ dh/T over Δh: the entropy that 400 small heats bring, by the middle of each.
    const steps = 400;
    const start = found.bubble.liquid.enthalpy;
    let entropy = 0;
    for (let k = 0; k < steps; k++) {
      const enthalpy = start + ((k + 0.5) / steps) * found.evaporationEnthalpy;
      entropy += found.evaporationEnthalpy / steps / r407c.state({ pressure: 5e5, enthalpy }).temperature;
    }
    expect(found.evaporationEnthalpy / entropy).toBeWithin(found.mean, 1e-7);
  });
});

describe("azeotropes", () => {
  test("boil without changing", () => {
    const [point, ...more] = azeotropes(["R-134a", "R-1234yf"], { temperature: 300.15 });
    expect(more).toHaveLength(0);
    const own = blend(Object.entries(point!.composition));
    const { liquid, vapour, pressure } = own.bubble({ temperature: 300.15 });
    expect(pressure).toBeWithin(point!.pressure, 1e-9);
    expect(vapour.composition["R-134a"]).toBeWithin(liquid.composition["R-134a"]!, 1e-8);
  });

  test("are an empty list where there are none, and refused for what is no pair", () => {
    expect(azeotropes(["R-32", "R-134a"], { pressure: 101325 })).toEqual([]);
    for (const names of [["R-32"], ["R-32", "R-32"], ["R-32", "R-410A"]]) {
      expect(tryAzeotropes(names as unknown as [string, string], { pressure: 101325 }).ok).toBe(false);
    }
  });
});
