import { describe, expect, it, test } from "vitest";
import { modelFor, saturationAtTemperature } from "../../src/equilibrium/index.js";
import { r22 } from "../../src/fluids/r-22.js";
import { fluids, refrigerantFrom } from "../../src/state/index.js";
import { OutOfRangeError } from "../../src/units/index.js";
import { trackWorst } from "../support/worst.js";

const worst = trackWorst("ends of the saturation curve");
const everyFluid = fluids().map((fluid) => [`${fluid.designation} ${fluid.equation}`, fluid] as const);

function refusal(work: () => unknown): OutOfRangeError {
  try {
    work();
  } catch (error) {
    if (error instanceof OutOfRangeError) return error;
    throw error;
  }
  throw new Error("was not refused");
}

describe.each(everyFluid)("saturation of %s", (name, fluid) => {
  const refrigerant = refrigerantFrom(fluid);
  const { critical, limits } = refrigerant;

  it("is answered at the lowest temperature and at its pressure", () => {
    const temperature = limits.minimumTemperature;
    const found = refrigerant.saturation({ temperature });
    expect(found.temperature).toBe(temperature);
    expect(found.liquid.extrapolated).toBe(false);
    const back = refrigerant.saturation({ pressure: found.pressure });
    expect(back.liquid.extrapolated).toBe(false);
    worst("T(p) at the cold end", Math.abs(back.temperature / temperature - 1), 1e-10, name);
    expect(back.liquid.density).toBeWithin(found.liquid.density, 1e-10);
    // Fugacities of both phases are equal in equilibrium; a cold liquid has its own from the pressure, not from itself.
    const fugacity = found.liquid.fugacityCoefficient / found.vapour.fugacityCoefficient;
    worst("fugacity at the cold end", Math.abs(fugacity - 1), 1e-11, name);
  });

  it("is refused below the lowest temperature and pressure, with the limits", () => {
    const temperature = limits.minimumTemperature * (1 - 1e-6);
    const cold = refusal(() => refrigerant.saturation({ temperature }));
    expect(cold).toMatchObject({ quantity: "temperature", value: temperature, unit: "K" });
    expect(cold.minimum).toBe(limits.minimumTemperature);
    const lowest = refrigerant.saturation({ temperature: limits.minimumTemperature }).pressure;
    const thin = refusal(() => refrigerant.saturation({ pressure: lowest * (1 - 1e-6) }));
    expect(thin).toMatchObject({ quantity: "pressure", unit: "Pa", subject: fluid.designation });
    expect(thin.minimum).toBeWithin(lowest, 1e-8);
  });

  it("is answered 1 mK below the critical temperature and refused 0.5 mK below", () => {
    const hottest = critical.temperature - 1e-3;
    const found = refrigerant.saturation({ temperature: hottest });
    expect(found.liquid.density).toBeGreaterThan(critical.density);
    expect(found.vapour.density).toBeLessThan(critical.density);
    expect(found.pressure).toBeLessThan(critical.pressure);
    expect(refrigerant.saturation({ pressure: found.pressure }).temperature).toBeWithin(hottest, 1e-11);
    const refused = refusal(() => refrigerant.saturation({ temperature: critical.temperature - 0.5e-3 }));
    expect(refused).toMatchObject({ quantity: "temperature", unit: "K", minimum: limits.minimumTemperature });
    expect(refused.maximum).toBe(hottest);
    const above = refusal(() => refrigerant.saturation({ pressure: critical.pressure }));
    expect(above.maximum).toBe(found.pressure);
    refusal(() => refrigerant.saturation({ temperature: critical.temperature }));
    refusal(() => refrigerant.saturation({ temperature: critical.temperature * 1.1 }));
  });

  it("is answered everywhere in the last millikelvins before that", () => {
    // Where large terms cancel, Newton's steps never get smaller than noise; each of these must still settle.
    const model = modelFor(fluid);
    let last = Number.POSITIVE_INFINITY;
    for (let k = 0; k <= 500; k++) {
      const { pressure, liquidDensity, vapourDensity } = saturationAtTemperature(
        model,
        critical.temperature - 1.0000001e-3 * 10 ** (k / 500),
      );
      expect(liquidDensity).toBeGreaterThan(vapourDensity);
      expect(pressure).toBeLessThan(last);
      last = pressure;
    }
  });
});

test("R-22 settles in the noise of its equation, which 1 mK below the critical point is 3e-7 of a density", () => {
  const model = modelFor(r22);
  const Tc = model.critical.temperature;
  // Where Newton's method once never got below a limit of 1e-7.
  const once = [369.29384906911423, Tc - 0.0011076434927773868];
  const dense = Array.from({ length: 20_000 }, (_, k) => Tc - 1.0000001e-3 * (1 + k / 20_000));
  for (const T of [...once, ...dense]) {
    const { liquidDensity, vapourDensity } = saturationAtTemperature(model, T);
    if (!(liquidDensity > vapourDensity)) throw new Error(`no pair of densities at ${T} K`);
  }
});

test("two copies of one literal do not share what was solved", () => {
  const [fluid] = fluids();
  expect(fluid).toBeDefined();
  const copy = structuredClone(fluid!);
  expect(modelFor(copy)).not.toBe(modelFor(fluid!));
  expect(modelFor(copy)).toBe(modelFor(copy));
});
