import { describe, expect, it } from "vitest";
import {
  checkNonCondensables,
  identifyRefrigerant,
  type NonCondensableReading,
  tryCheckNonCondensables,
  tryIdentifyRefrigerant,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, type Outcome } from "../../../src/units/index.js";

const pathsOf = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);

const atmosphere = { pressure: 101325, standardUncertainty: 100, because: "barometer" };
const classGauge = {
  accuracy: { kind: "accuracy-class", accuracyClass: 1.6, scaleMinimum: -1e5, scaleMaximum: 3.8e6 },
} as const;
const fine = { accuracy: { kind: "half-width", halfWidth: 4e3 } } as const;
const thermometer = { accuracy: { kind: "half-width", halfWidth: 0.3 } } as const;

const reading: NonCondensableReading = {
  refrigerant: refrigerant("R-32"),
  pressure: 1.926e6 - 101325,
  gauge: fine,
  temperature: celsius(30),
  spread: 0.3,
  thermometer,
  atmosphere,
};

describe("other gas in a system at rest", () => {
  it("is seen above what the instruments leave open, and bounded by Dalton", () => {
    const air = checkNonCondensables({ ...reading, pressure: reading.pressure + 1.5e5 });
    expect(air.state).toBe("excess");
    expect(air.partialPressureBound).toBeGreaterThan(1.5e5);
    expect(checkNonCondensables(reading).state).toBe("none-seen");
    expect(checkNonCondensables({ ...reading, pressure: 1.4e6 }).state).toBe("below-saturation");
    expect(checkNonCondensables({ ...reading, spread: 2, pressure: 2.2e6 }).state).toBe("not-uniform");
  });

  it("is held against the bubble point of a blend, whose model counts", () => {
    const r454b = refrigerant("R-454B");
    const { pressure } = r454b.bubble({ temperature: celsius(30) });
    const result = checkNonCondensables({ ...reading, refrigerant: r454b, pressure: pressure - 101325 });
    expect(Math.abs(result.excess)).toBeLessThan(1e-3);
    expect(result.budget.map(({ input }) => input)).toContain("mixture-model");
  });

  it("is a smaller or no finding with a coarser gauge, never a larger one", () => {
    const air = { ...reading, pressure: reading.pressure + 1.0e5 };
    expect(checkNonCondensables(air).state).toBe("excess");
    expect(
      checkNonCondensables({ ...air, gauge: { accuracy: { kind: "half-width", halfWidth: 1e5 } } }).state,
    ).toBe("none-seen");
  });

  it("names everything that is wrong", () => {
    expect(pathsOf(tryCheckNonCondensables(undefined as never))).toEqual([""]);
    expect(pathsOf(tryCheckNonCondensables({ ...reading, spread: -1, temperature: 0 }))).toEqual([
      "temperature",
      "spread",
    ]);
  });
});

describe("which refrigerant it may be", () => {
  const candidates = ["R-32", "R-410A", "R-134a", "R-290"].map((name) => refrigerant(name));
  const unknown = {
    candidates,
    pressure: refrigerant("R-410A").bubble({ temperature: celsius(25) }).pressure - 101325,
    gauge: classGauge,
    temperature: celsius(25),
    thermometer,
    atmosphere,
  };

  it("cannot be told between R-32 and R-410A with a class 1.6 gauge: 2 % apart at 25 °C", () => {
    const { state, candidates: found } = identifyRefrigerant(unknown);
    expect(state).toBe("tie");
    expect(
      found
        .filter(({ fits }) => fits)
        .map((each) => each.refrigerant.designation)
        .sort(),
    ).toEqual(["R-32", "R-410A"]);
    expect(found[0]!.refrigerant.designation).toBe("R-410A");
  });

  it("is one of them, or none", () => {
    const { pressure } = refrigerant("R-134a").saturation({ temperature: celsius(25) });
    expect(identifyRefrigerant({ ...unknown, pressure: pressure - 101325 }).state).toBe("one-fits");
    expect(identifyRefrigerant({ ...unknown, pressure: 3e6 }).state).toBe("none-fits");
    expect(pathsOf(tryIdentifyRefrigerant({ ...unknown, candidates: [] }))).toEqual(["candidates"]);
    expect(pathsOf(tryIdentifyRefrigerant(undefined as never))).toEqual([""]);
  });
});
