import { describe, expect, it } from "vitest";
import { type StandingSystem, standingPressure, tryStandingPressure } from "../../../src/field/index.js";
import { r32 } from "../../../src/fluids/r-32.js";
import { refrigerantFrom, refrigerant as toRefrigerant } from "../../../src/state/index.js";
import { celsius, type InputError, litre } from "../../../src/units/index.js";
import { changed } from "../changed.js";

const refrigerant = refrigerantFrom(r32);
const system: StandingSystem = {
  refrigerant,
  temperature: celsius(25),
  thermometer: { accuracy: { kind: "half-width", halfWidth: 1 } },
  atmosphere: { pressure: 101325, standardUncertainty: 1732, because: "sea level" },
  contents: { kind: "liquid-present" },
};
const charged = (charge: number, volume: number): StandingSystem => ({
  ...system,
  contents: { kind: "charge", charge, internalVolume: litre(volume) },
});

describe("standing pressure", () => {
  it("R-32 with liquid at 25 °C", () => {
    // Row tolerance 1e-3 (room for another equation); ours is the same one: its printed digits.
    const result = standingPressure(system);
    expect(result.pressure).toBeWithin(1689.62e3, 5e-6);
    expect(result.gaugePressure).toBeWithin(1588.3e3, 5e-5);
    expect(result.state).toBe("liquid-present");
    expect(result.warnings).toEqual([]);
  });

  it("R-32, 60 g in 2.5 L at 25 °C: vapour only", () => {
    const result = standingPressure(charged(0.06, 2.5));
    expect(result.density).toBeWithin(24, 1e-12);
    expect(result.saturatedVapourDensity).toBeWithin(47.3386, 2e-6);
    expect(result.pressure).toBeWithin(991.93e3, 1e-5);
    expect(result.state).toBe("vapour-only");
    expect(result.warnings[0]?.code).toBe("vapour-only");
  });

  it("is that of saturation as soon as there is a drop of liquid, whatever the amount", () => {
    const { pressure } = standingPressure(system);
    for (const charge of [0.119, 0.5, 1.0, 2.0]) {
      const result = standingPressure(charged(charge, 2.5));
      expect(result.state).toBe("liquid-present");
      expect(result.pressure).toBeWithin(pressure, 1e-9);
    }
    expect(standingPressure(charged(0.118, 2.5)).state).toBe("vapour-only");
  });

  it("warns when liquid fills the volume", () => {
    // Saturated liquid at 25 °C is 961 kg/m3.
    const result = standingPressure(charged(2.43, 2.5));
    expect(result.state).toBe("liquid-full");
    expect(result.pressure).toBeGreaterThan(1.69e6);
    expect(result.warnings[0]?.code).toBe("liquid-full");
  });

  it("takes its uncertainty from temperature and air pressure", () => {
    for (const each of [system, charged(1, 2.5), charged(0.06, 2.5)]) {
      const at = (temperature: number) => standingPressure({ ...each, temperature }).pressure;
      const slope = (at(celsius(25.1)) - at(celsius(24.9))) / 0.2;
      const result = standingPressure(each);
      // A difference over 0.2 K: its own error is below 1e-5.
      expect(result.slope).toBeWithin(slope, 1e-5);
      expect(result.standardUncertainty).toBeWithin(Math.hypot(result.slope / Math.sqrt(3), 1732), 1e-9);
    }
  });

  it("gives a blend of unknown amount the middle of its glide, with the spread as uncertainty", () => {
    // R-32 with a dew line 2 % below its bubble line, to stand for a blend.
    const split = changed(refrigerant, {
      dew: (at) => {
        const point = refrigerant.dew(at);
        return "temperature" in at ? { ...point, pressure: point.pressure * 0.98 } : point;
      },
    });
    const result = standingPressure({ ...system, refrigerant: split });
    expect(result.pressure).toBeWithin(0.99 * 1689.62e3, 5e-6);
    expect(result.warnings[0]?.code).toBe("composition-spread");
    expect(result.budget.find(({ input }) => input === "vapour-fraction")?.contribution).toBeWithin(
      (0.01 * 1689.62e3) / Math.sqrt(3),
      1e-5,
    );
  });

  it("puts a blend between its dew and bubble pressure, as sure as its mixture model", () => {
    const r454b = toRefrigerant("R-454B");
    const at = { temperature: celsius(25) };
    const [dew, bubble] = [r454b.dew(at).pressure, r454b.bubble(at).pressure];
    const result = standingPressure({ ...system, refrigerant: r454b });
    expect(result.pressure).toBeWithin((dew + bubble) / 2, 1e-12);
    const part = (name: string) => result.budget.find(({ input }) => input === name)!.contribution;
    expect(part("vapour-fraction")).toBeWithin((bubble - dew) / 2 / Math.sqrt(3), 1e-12);
    expect(part("mixture-model")).toBeWithin(
      (r454b.mixing!.deviation * result.pressure) / Math.sqrt(3),
      1e-12,
    );
    // With charge and volume known there is no spread: full it stands at the bubble point, with a drop at the dew point.
    const known = (charge: number) => standingPressure({ ...charged(charge, 2.5), refrigerant: r454b });
    const saturated = r454b.dew(at).vapour.density * 2.5e-3;
    expect(known(2.4).pressure).toBeWithin(bubble, 1e-3);
    expect(known(1.0001 * saturated).pressure).toBeWithin(dew, 1e-3);
    for (const charge of [0.2, 0.5, 1, 2]) {
      const { pressure, warnings, state } = known(charge);
      expect(state).toBe("liquid-present");
      expect(warnings).toEqual([]);
      expect(pressure).toBeGreaterThan(dew);
      expect(pressure).toBeLessThan(bubble);
    }
    expect(known(0.06).budget.map(({ input }) => input)).toEqual(["thermometer", "atmosphere"]);
  });

  it("knows vapour only above the critical temperature", () => {
    const result = standingPressure({ ...charged(0.06, 2.5), temperature: celsius(90) });
    expect(result.state).toBe("vapour-only");
    expect(result.saturatedVapourDensity).toBeUndefined();
    expect(tryStandingPressure({ ...system, temperature: celsius(90) }).ok).toBe(false);
  });

  it("refuses nonsense, all of it at once", () => {
    const paths = (change: object) => {
      const outcome = tryStandingPressure({ ...system, ...change });
      if (outcome.ok) throw new Error("nothing was refused");
      return (outcome.error as InputError).problems.map(({ path }) => path);
    };
    expect(
      paths({ temperature: -1, contents: { kind: "charge", charge: 0, internalVolume: Number.NaN } }),
    ).toEqual(["temperature", "contents.charge", "contents.internalVolume"]);
    expect(paths({ refrigerant: null, thermometer: null, contents: null })).toEqual([
      "refrigerant",
      "thermometer.accuracy.kind",
      "contents.kind",
    ]);
  });
});
