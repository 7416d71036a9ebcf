import { describe, expect, it } from "vitest";
import {
  accountForRecovery,
  planPumpDown,
  residualVapour,
  tryAccountForRecovery,
  tryPlanPumpDown,
  tryResidualVapour,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, litre, type Outcome } from "../../../src/units/index.js";

const r32 = refrigerant("R-32");
const pathsOf = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? [] : (outcome.error as InputError).problems.map(({ path }) => path);

describe("pumping down", () => {
  const plan = {
    refrigerant: r32,
    charge: 1.2,
    highSideVolume: litre(2.5),
    temperature: celsius(40),
    leakSuspected: false,
  };

  it("fits where the liquid fills at most 80 % of the high side, common practice", () => {
    // 893.04 kg/m³ at 40 °C, computed for this check by another implementation: 1.2 kg are 1.344 L.
    const { verdict, fraction, stopBetween } = planPumpDown(plan);
    expect(verdict).toBe("pass");
    expect(fraction).toBeWithin(1.2 / 893.04 / 2.5e-3, 1e-3);
    expect(stopBetween.minimum).toBeGreaterThanOrEqual(0);
    expect(planPumpDown({ ...plan, charge: 2 }).verdict).toBe("fail");
  });

  it("is refused where a leak is suspected, and where nobody says", () => {
    expect(pathsOf(tryPlanPumpDown({ ...plan, leakSuspected: true }))).toEqual(["leakSuspected"]);
    expect(pathsOf(tryPlanPumpDown({ ...plan, leakSuspected: undefined as never, charge: 0 }))).toEqual([
      "charge",
      "leakSuspected",
    ]);
    expect(pathsOf(tryPlanPumpDown(null as never))).toEqual([""]);
  });
});

describe("what is left and what is missing", () => {
  const circuit = { refrigerant: r32, pressure: 101325, temperature: celsius(20), volume: litre(2) };

  it("is vapour alone: with liquid the pressure says nothing", () => {
    expect(residualVapour({ ...circuit, pressure: 50000 })).toBeLessThan(residualVapour(circuit) / 2);
    expect(tryResidualVapour({ ...circuit, pressure: 2e6 })).toMatchObject({
      ok: false,
      error: { code: "no-such-state" },
    });
    expect(pathsOf(tryResidualVapour({ ...circuit, volume: 0 }))).toEqual(["volume"]);
  });

  it("adds up to the expected charge", () => {
    const recovery = {
      refrigerant: r32,
      before: 11.2,
      after: 12.9,
      scaleHalfWidth: 0.005,
      expectedCharge: 1.72,
      tolerance: 0.05,
      internalVolume: litre(3),
      endPressure: 101325,
      endTemperature: celsius(20),
    };
    const { recovered, left, missing, decision, expandedUncertainty } = accountForRecovery(recovery);
    expect(recovered + left + missing).toBeWithin(1.72, 1e-12);
    expect(decision.verdict).toBe("pass");
    expect(expandedUncertainty).toBeWithin(2 * Math.SQRT2 * (0.005 / Math.sqrt(3)), 1e-12);
    expect(accountForRecovery({ ...recovery, expectedCharge: 2.1 }).decision.verdict).toBe("fail");
    expect(pathsOf(tryAccountForRecovery({ ...recovery, after: 11 }))).toEqual(["after"]);
    expect(pathsOf(tryAccountForRecovery(undefined as never))).toEqual([""]);
  });
});
