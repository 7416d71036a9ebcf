import { afterAll, describe, expect, it } from "vitest";
import { listBlends } from "../../../src/catalogue/index.js";
import {
  BlendModel,
  boundaryAtPressure,
  boundaryAtTemperature,
  flashBlendQuality,
  flashBlendTemperatureDensity,
  flashBlendTemperaturePressure,
  type PhaseSplit,
} from "../../../src/equilibrium/mixture/index.js";
import { countMixtureEvaluations } from "../../support/count-mixture-evaluations.js";
import { blendModelOf } from "../../support/mixtures.js";

/*
 * How often mixture equations are evaluated, whatever the machine. Each limit is the worst count seen with a step of room,
 * because the engines' last digits differ; a step of a bubble point is two evaluations, and so is one of a flash.
 */
const evaluations = countMixtureEvaluations();
const seen = new Map<string, { most: number; sum: number; cases: number; limit: number; where: string }>();

afterAll(() => {
  const lines = [...seen].map(
    ([what, { most, sum, cases, limit, where }]) =>
      `  ${what}: at most ${most} of ${limit} at ${where}; ${(sum / cases).toFixed(1)} on average of ${cases}`,
  );
  console.log(["evaluations of mixture equations:", ...lines].join("\n"));
});

function atMost<Result>(limit: number, what: string, where: string, work: () => Result): Result {
  evaluations("reset");
  const result = work();
  const count = evaluations();
  const record = seen.get(what) ?? { most: 0, sum: 0, cases: 0, limit, where };
  record.sum += count;
  record.cases++;
  if (count > record.most) Object.assign(record, { most: count, where });
  seen.set(what, record);
  if (count > limit) expect.fail(`${what} took ${count} evaluations at ${where}, allowed ${limit}`);
  return result;
}

describe.each(listBlends().map(({ designation }) => designation))("a warm %s", (designation) => {
  const model = blendModelOf(designation);
  const { system, z, limits } = model;
  // The components' curves are made on first use.
  boundaryAtTemperature(system, "vapour", z, limits.minimumTemperature);

  it("follows its boundary, then answers in a few steps", () => {
    const { critical } = atMost(
      1800,
      "the boundary, once",
      designation,
      () => new BlendModel(system, z, "").envelope,
    );
    expect(model.envelope.critical.temperature).toBe(critical.temperature);
    atMost(13_000, "the search for two liquids, once", designation, () => model.envelope.oneLiquidFrom);
    for (let k = 0; k <= 30; k++) {
      const T =
        limits.minimumTemperature + (0.985 * critical.temperature - limits.minimumTemperature) * (k / 30);
      const at = `${designation} ${T} K`;
      // Beside the critical point the boundary is followed up to the point.
      const far = T < 0.95 * critical.temperature;
      const side = far ? "" : ", above 0.95 Tc";
      for (const incipient of ["vapour", "liquid"] as const) {
        const what = incipient === "vapour" ? "bubble point" : "dew point";
        const { pressure } = atMost(far ? 72 : 450, `${what} by T${side}`, at, () =>
          boundaryAtTemperature(system, incipient, z, T),
        )!;
        atMost(far ? 92 : 540, `${what} by p${side}`, at, () =>
          boundaryAtPressure(system, incipient, z, pressure),
        );
      }
      const hold = { what: "temperature", value: T } as const;
      atMost(34, "bubble and dew point on a known boundary", at, () => model.envelope.atTemperature(T));
      for (const quality of [0.1, 0.5, 0.9]) {
        const found = atMost(420, "(T, x)", at, () => flashBlendQuality(model, hold, quality));
        const { pressure, liquidVolume, vapourVolume } = (found as { split: PhaseSplit }).split;
        atMost(470, "(T, p) in two phases", at, () => flashBlendTemperaturePressure(model, T, pressure));
        atMost(420, "(T, ρ) in two phases", at, () =>
          flashBlendTemperatureDensity(model, T, 1 / (liquidVolume + vapourVolume)),
        );
        if (quality !== 0.5) continue;
        atMost(1600, "(T, p) of vapour", at, () => flashBlendTemperaturePressure(model, T, 0.5 * pressure));
        atMost(600, "(T, p) of liquid", at, () => flashBlendTemperaturePressure(model, T, 2 * pressure));
      }
    }
  });
});
