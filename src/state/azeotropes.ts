import { binaryAzeotropes } from "../equilibrium/index.js";
import { attempt, InputError, type Outcome, type Pressure, type Temperature } from "../units/index.js";
import { blend, type OwnBlendOptions } from "./blend.js";
import { massFractionsOf } from "./blend-owner.js";
import { BlendRefrigerant } from "./blend-refrigerant.js";
import { checkOptions, checkSaturationInput } from "./input.js";
import { requireInside } from "./range-check.js";
import type { SaturationInput } from "./types.js";

/** A composition of two refrigerants that boils at one temperature, without changing. */
export interface AzeotropePoint {
  /** Temperature, K. */
  readonly temperature: Temperature;
  /** Absolute pressure, Pa. */
  readonly pressure: Pressure;
  /** Mass fractions by designation. */
  readonly composition: Readonly<Record<string, number>>;
  /** Mole fractions by designation. */
  readonly moleFractions: Readonly<Record<string, number>>;
  /** Whether it boils below, or above, all its neighbours in composition. */
  readonly kind: "minimum-boiling" | "maximum-boiling";
}

/**
 * The azeotropes of two refrigerants at a temperature or a pressure; an empty list where they have none.
 *
 * @param components - Two names of pure refrigerants.
 * @param at - `{ temperature }`, K, or `{ pressure }`, Pa.
 * @throws As {@link blend}; `out-of-range` for temperatures, given or found, outside the range that both equations share.
 * @source As {@link blend}; how sure the pair is stands in its grade.
 */
export function azeotropes(
  components: readonly [string, string],
  at: SaturationInput,
  options: Pick<OwnBlendOptions, "pairs" | "lowestGrade"> = {},
): readonly AzeotropePoint[] {
  checkOptions(options, ["pairs", "lowestGrade"], "{ pairs, lowestGrade }, either or both");
  const what = checkSaturationInput(at);
  if (!Array.isArray(components) || components.length !== 2) {
    throw new InputError([{ path: "components", value: components, expected: "two names" }]);
  }
  const [first, second] = components;
  const mixture = blend(
    [
      [first, 0.5],
      [second, 0.5],
    ],
    options,
  );
  // A designated blend was taken apart, and a refrigerant named twice counts once: neither leaves two halves.
  const halves = Object.values(mixture.composition).every((fraction) => Math.abs(fraction - 0.5) < 1e-9);
  if (!(mixture instanceof BlendRefrigerant) || mixture.model.system.count !== 2 || !halves) {
    throw new InputError([
      { path: "components", value: components, expected: "two different pure refrigerants" },
    ]);
  }
  const { model } = mixture;
  const value = (at as Readonly<Record<string, number>>)[what]!;
  const { minimumTemperature, maximumTemperature } = model.limits;
  const range = { minimum: minimumTemperature, maximum: maximumTemperature, unit: "K" };
  const requireTemperature = (T: number): void => {
    requireInside(mixture.designation, "temperature", T, range, { extrapolate: true });
  };
  if (what === "temperature") requireTemperature(value);
  const found = binaryAzeotropes(model.system, { what, value });
  for (const { temperature } of found) requireTemperature(temperature);
  return found.map(({ temperature, pressure, x, kind }) => ({
    temperature,
    pressure,
    composition: massFractionsOf(model, x),
    moleFractions: Object.fromEntries(model.system.fluids.map(({ designation }, i) => [designation, x[i]!])),
    kind,
  }));
}

/** As {@link azeotropes}, without throwing. */
export function tryAzeotropes(
  components: readonly [string, string],
  at: SaturationInput,
  options: Pick<OwnBlendOptions, "pairs" | "lowestGrade"> = {},
): Outcome<readonly AzeotropePoint[]> {
  return attempt(() => azeotropes(components, at, options));
}
