import { describe, expect, it, test } from "vitest";
import {
  fluids,
  type Refrigerant,
  refrigerant,
  refrigerantFrom,
  type StateInput,
  type StateOptions,
} from "../../src/state/index.js";
import { NoSuchStateError, OutOfRangeError } from "../../src/units/index.js";

const r32 = refrigerant("R-32");
const { limits, critical } = r32;

function errorOf(work: () => unknown): unknown {
  try {
    work();
  } catch (error) {
    return error;
  }
  throw new Error("was not refused");
}

function rangeErrorOf(
  input: StateInput,
  options: StateOptions = {},
  asked: Refrigerant = r32,
): OutOfRangeError {
  const error = errorOf(() => asked.state(input, options));
  expect(error).toBeInstanceOf(OutOfRangeError);
  return error as OutOfRangeError;
}

describe("outside the range of the equation", () => {
  test.each<[string, StateInput, string, number]>([
    ["too cold", { temperature: 136, pressure: 1e6 }, "temperature", 136],
    ["too hot", { temperature: 436, pressure: 1e6 }, "temperature", 436],
    ["too hot, by density", { temperature: 436, density: 10 }, "temperature", 436],
    ["too cold, by quality", { temperature: 136, quality: 0.5 }, "temperature", 136],
    ["too high a pressure", { temperature: 300, pressure: 70.1e6 }, "pressure", 70.1e6],
    ["too high a pressure, by enthalpy", { pressure: 70.1e6, enthalpy: 3e5 }, "pressure", 70.1e6],
    ["too high a pressure, by entropy", { pressure: 70.1e6, entropy: 1e3 }, "pressure", 70.1e6],
  ])("%s: refused with the limits as data", (_, input, quantity, value) => {
    const error = rangeErrorOf(input);
    const unit = quantity === "temperature" ? "K" : "Pa";
    expect(error).toMatchObject({ code: "out-of-range", quantity, value, unit, subject: "R-32" });
    const maximum = quantity === "temperature" ? limits.maximumTemperature : limits.maximumPressure;
    expect(error.maximum).toBe(maximum);
    if (quantity === "temperature") expect(error.minimum).toBe(limits.minimumTemperature);
    expect(error.minimum).toBeLessThan(error.maximum);
    expect(error.message).toContain(String(value));
    expect(error.message).toContain("extrapolate");
  });

  it("names the highest temperature of saturation, not of the equation, for a quality", () => {
    const error = rangeErrorOf({ temperature: 400, quality: 0.5 });
    expect(error.maximum).toBe(critical.temperature - 1e-3);
    expect(rangeErrorOf({ pressure: 6e6, quality: 0.5 }).maximum).toBeLessThan(critical.pressure);
    // Extrapolation would not help there, and the message does not promise it.
    expect(error.message).not.toContain("{ extrapolate: true }");
    expect(error.message).toContain("do not coexist");
  });

  it("refuses a density whose pressure would be too high, with that pressure", () => {
    const error = rangeErrorOf({ temperature: 300, density: 1400 });
    expect(error).toMatchObject({ quantity: "pressure", maximum: limits.maximumPressure });
    expect(error.value).toBeGreaterThan(limits.maximumPressure);
  });

  test.each<[string, StateInput, string]>([
    ["colder by enthalpy", { pressure: 1e6, enthalpy: -3e5 }, "below 136.34 K"],
    ["hotter by enthalpy", { pressure: 1e6, enthalpy: 9e5 }, "above 435 K"],
    ["colder by entropy", { pressure: 1e6, entropy: -900 }, "below 136.34 K"],
    ["hotter by entropy", { pressure: 1e6, entropy: 4e3 }, "above 435 K"],
    ["colder by energy", { density: 30, internalEnergy: -3e5 }, "below 136.34 K"],
    ["hotter by energy", { density: 30, internalEnergy: 9e5 }, "above 435 K"],
    ["colder by enthalpy and entropy", { enthalpy: 0, entropy: 1e3 }, "below 136.34 K"],
    ["hotter by enthalpy and entropy", { enthalpy: 9e5, entropy: 2.5e3 }, "above 435 K"],
    ["of too high a pressure by enthalpy and entropy", { enthalpy: 6e5, entropy: 1.5e3 }, "pressure"],
    ["thinner than a vacuum by enthalpy and entropy", { enthalpy: 6e5, entropy: 5e4 }, "pressure"],
  ])("%s: no such state, and the inputs are repeated as they were given", (_, input, reason) => {
    const error = errorOf(() => r32.state(input));
    expect(error).toBeInstanceOf(NoSuchStateError);
    expect((error as NoSuchStateError).inputs).toEqual(input);
    expect((error as NoSuchStateError).message).toContain(reason);
    for (const value of Object.values(input)) expect((error as Error).message).toContain(String(value));
  });

  it("clamps nothing: every edge is inside, one step beyond it is not", () => {
    const up = (x: number): number => x * (1 + 2 ** -52);
    const down = (x: number): number => x * (1 - 2 ** -52);
    const { minimumTemperature, maximumTemperature, maximumPressure } = limits;
    for (const temperature of [minimumTemperature, maximumTemperature]) {
      expect(r32.state({ temperature, pressure: 1e5 })).toMatchObject({ temperature, extrapolated: false });
    }
    expect(r32.state({ temperature: 300, pressure: maximumPressure })).toMatchObject({
      pressure: maximumPressure,
    });
    expect(rangeErrorOf({ temperature: down(minimumTemperature), pressure: 1e5 }).quantity).toBe(
      "temperature",
    );
    expect(rangeErrorOf({ temperature: up(maximumTemperature), pressure: 1e5 }).quantity).toBe("temperature");
    expect(rangeErrorOf({ temperature: 300, pressure: up(maximumPressure) }).quantity).toBe("pressure");
  });

  it("takes the critical pressure for the limit where a paper's own lies below it", () => {
    const r161 = refrigerant("R-161");
    expect(r161.limits.maximumPressure).toBeLessThan(r161.critical.pressure);
    const { pressure } = r161.saturation({ temperature: r161.critical.temperature - 1e-3 });
    expect(pressure).toBeGreaterThan(r161.limits.maximumPressure);
    expect(rangeErrorOf({ temperature: 300, pressure: 6e6 }, {}, r161).maximum).toBe(r161.critical.pressure);
  });
});

describe("extrapolation", () => {
  const extrapolate = { extrapolate: true };

  test.each<[string, StateInput]>([
    ["colder", { temperature: 130, pressure: 1e6 }],
    ["colder, saturated", { temperature: 130, quality: 0.5 }],
    ["hotter", { temperature: 600, pressure: 1e6 }],
    ["hotter, by density", { temperature: 600, density: 10 }],
    ["at higher pressure", { temperature: 300, pressure: 100e6 }],
    ["hotter, by enthalpy", { pressure: 1e6, enthalpy: 7.5e5 }],
    ["colder, by entropy", { pressure: 1e6, entropy: -150 }],
  ])("%s: refused without it, marked with it", (_, input) => {
    expect(r32.tryState(input).ok).toBe(false);
    const found = r32.state(input, extrapolate);
    expect(found.extrapolated).toBe(true);
    if (found.phase === "two-phase") {
      expect([found.liquid.extrapolated, found.vapour.extrapolated]).toEqual([true, true]);
    }
    expect(JSON.parse(JSON.stringify(found))).toHaveProperty("extrapolated", true);
  });

  it("marks saturation below the range on both sides", () => {
    const found = r32.saturation({ temperature: 130 }, extrapolate);
    expect([found.liquid.extrapolated, found.vapour.extrapolated]).toEqual([true, true]);
    const back = r32.saturation({ pressure: found.pressure }, extrapolate);
    expect(back.temperature).toBeWithin(130, 1e-10);
    expect(back.liquid.extrapolated).toBe(true);
  });

  it("marks nothing inside the range, edges included", () => {
    for (const input of [
      { temperature: 300, pressure: 1e6 },
      { temperature: limits.minimumTemperature, pressure: 1e6 },
      { temperature: limits.maximumTemperature, pressure: 1e6 },
      { temperature: 300, pressure: limits.maximumPressure },
      { temperature: 280, quality: 0.4 },
      { temperature: limits.minimumTemperature, quality: 0 },
    ]) {
      expect(r32.state(input, extrapolate).extrapolated).toBe(false);
    }
  });

  it("reaches 0.85 of the lowest temperature at every pressure of the range", () => {
    for (const fluid of fluids()) {
      const asked = refrigerantFrom(fluid);
      const { minimumTemperature, maximumPressure } = asked.limits;
      // Far above its melting curve the liquid equation of nitrogen folds.
      const highest = fluid.designation === "R-728" ? maximumPressure / 10 : maximumPressure;
      for (let i = 0; i <= 10; i++) {
        const temperature = minimumTemperature * (0.85 + 0.149 * (i / 10));
        let last = 0;
        for (let j = 0; j <= 10; j++) {
          const state = asked.state(
            { temperature, pressure: 1e3 * (highest / 1e3) ** (j / 10) },
            extrapolate,
          );
          expect(state.density).toBeGreaterThanOrEqual(last * (1 - 1e-11));
          last = state.density;
        }
      }
    }
  });

  it("goes on smoothly from the last state inside", () => {
    const edge = limits.minimumTemperature;
    const inside = r32.saturation({ temperature: edge });
    const outside = r32.saturation({ temperature: edge * (1 - 1e-7) }, extrapolate);
    expect(outside.pressure).toBeWithin(inside.pressure, 1e-5);
    expect(outside.liquid.density).toBeWithin(inside.liquid.density, 1e-6);
    expect(outside.vapour.density).toBeWithin(inside.vapour.density, 1e-5);
  });

  test.each<[string, StateInput, string]>([
    ["far too cold", { temperature: 90, pressure: 1e6 }, "temperature"],
    ["far too hot", { temperature: 900, pressure: 1e6 }, "temperature"],
    ["far too high a pressure", { temperature: 300, pressure: 1e9 }, "pressure"],
    ["far too cold, saturated", { temperature: 90, quality: 0.5 }, "temperature"],
    ["above the critical temperature, saturated", { temperature: 360, quality: 0.5 }, "temperature"],
    ["far too high a pressure, by enthalpy", { pressure: 1e9, enthalpy: 3e5 }, "pressure"],
  ])("is refused %s, with its own limits", (_, input, quantity) => {
    const error = rangeErrorOf(input, extrapolate);
    expect(error.quantity).toBe(quantity);
    expect(error.message).not.toContain("{ extrapolate: true }");
    if (quantity === "pressure") expect(error.maximum).toBeGreaterThan(limits.maximumPressure);
  });

  it("has a floor below which properties run out of the range of numbers, never zero or infinity", () => {
    const thin = r32.state({ temperature: 300, pressure: 1e-200 });
    if (thin.phase === "two-phase") throw new Error("a thin gas is one phase");
    expect(thin.isothermalCompressibility * thin.pressure).toBeWithin(1, 1e-12);
    for (const options of [{}, extrapolate]) {
      expect(rangeErrorOf({ temperature: 300, pressure: 1e-300 }, options).quantity).toBe("pressure");
      expect(rangeErrorOf({ temperature: 300, density: 1e-300 }, options).quantity).toBe("pressure");
    }
  });
});

describe("between 1 mK below the critical temperature and it", () => {
  it("refuses what liquid and vapour cannot be told apart for, rather than answer with another state", () => {
    const { temperature, pressure } = critical;
    const hottest = r32.saturation({ temperature: temperature - 1e-3 });
    const between = (hottest.pressure + pressure) / 2;
    let refused = 0;
    for (let k = 0; k <= 20; k++) {
      const enthalpy =
        hottest.liquid.enthalpy + ((hottest.vapour.enthalpy - hottest.liquid.enthalpy) * k) / 20;
      const outcome = r32.tryState({ pressure: between, enthalpy });
      if (outcome.ok) {
        const RT = r32.specificGasConstant * temperature;
        expect(Math.abs(outcome.value.enthalpy - enthalpy) / RT).toBeLessThan(1e-6);
      } else {
        refused++;
        expect(outcome.error.code).toBe("no-such-state");
        expect(outcome.error.message).toContain("critical");
      }
    }
    expect(refused).toBeGreaterThan(0);
  });

  it("refuses the critical point itself, where heat capacity is infinite", () => {
    const { temperature, density, pressure } = critical;
    expect(errorOf(() => r32.state({ temperature, density }))).toBeInstanceOf(NoSuchStateError);
    // By pressure rounding decides on which side of the point the answer lies; it is never a number without meaning.
    const outcome = r32.tryState({ temperature, pressure });
    if (outcome.ok) expect((outcome.value as { cp: number }).cp).toBeGreaterThan(1e6);
    else expect(outcome.error.code).toBe("no-such-state");
  });

  it("refuses a temperature and a pressure on the saturation curve, and says what to give instead", () => {
    const { pressure } = r32.saturation({ temperature: 280 });
    const error = errorOf(() => r32.state({ temperature: 280, pressure }));
    expect(error).toBeInstanceOf(NoSuchStateError);
    expect((error as Error).message).toContain("quality");
    expect(r32.state({ temperature: 280, pressure: pressure * (1 + 1e-9) }).phase).toBe("liquid");
    expect(r32.state({ temperature: 280, pressure: pressure * (1 - 1e-9) }).phase).toBe("vapour");
  });
});
