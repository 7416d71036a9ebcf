import { describe, expect, it } from "vitest";
import {
  checkStandingPressure,
  type StandingReading,
  tryCheckStandingPressure,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, litre } from "../../../src/units/index.js";

const reading: StandingReading = {
  refrigerant: refrigerant("R-32"),
  temperature: celsius(25),
  thermometer: { accuracy: { kind: "half-width", halfWidth: 0.3 } },
  atmosphere: { pressure: 101325, standardUncertainty: 100, because: "barometer" },
  contents: { kind: "liquid-present" },
  pressure: 1.69e6 - 101325,
  gauge: { accuracy: { kind: "half-width", halfWidth: 5000 } },
};
const at = (absolute: number, change: Partial<StandingReading> = {}) =>
  checkStandingPressure({ ...reading, pressure: absolute - 101325, ...change });

describe("a reading at rest", () => {
  it("agrees, lies above or lies below", () => {
    // 1689.62 kPa at 25 °C: the same equation in another implementation.
    expect(at(1689.62e3)).toMatchObject({ verdict: "pass", state: "agrees" });
    expect(at(1800e3)).toMatchObject({ verdict: "fail", state: "above" });
    expect(at(1800e3).because).toContain("other gas inside");
    expect(at(1500e3)).toMatchObject({ verdict: "fail", state: "below" });
    expect(at(1500e3).because).toContain("hardly any refrigerant");
  });

  it("without liquid speaks of the amount", () => {
    // 991.93 kPa: 60 g in 2.5 L, the same equation in another implementation.
    const contents = { kind: "charge", charge: 0.06, internalVolume: litre(2.5) } as const;
    expect(at(991.93e3, { contents })).toMatchObject({ verdict: "pass", state: "agrees" });
    expect(at(991.93e3, { contents }).because).toContain("and the amount");
    expect(at(900e3, { contents }).because).toContain("refrigerant was lost");
    expect(at(1100e3, { contents }).because).toContain("more refrigerant");
  });

  it("tells nothing where a tenth stays open", () => {
    const gauge = { accuracy: { kind: "half-width", halfWidth: 2e5 } } as const;
    expect(at(1690e3, { gauge })).toMatchObject({ verdict: "inconclusive", state: "agrees" });
  });

  it("names what is wrong", () => {
    const paths = (change: object) => {
      const outcome = tryCheckStandingPressure({ ...reading, ...change });
      return outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);
    };
    expect(paths({ pressure: Number.NaN })).toEqual(["pressure"]);
    expect(paths({ gauge: null })).toEqual(["gauge.accuracy.kind"]);
    expect(tryCheckStandingPressure(null as never).ok).toBe(false);
  });
});
