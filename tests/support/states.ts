import fc from "fast-check";
import type { Fluid } from "../../src/catalogue/index.js";
import { fluids, type Refrigerant, refrigerantFrom, type SinglePhaseState } from "../../src/state/index.js";

/** Every equation of the catalogue, one picked at random. */
export function anyFluid(): fc.Arbitrary<Fluid> {
  return fc.constantFrom(...fluids());
}

/** A number from 0 to 1, evenly spread: fc.double would draw most of its values next to the ends. */
export function share(): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 1e9 }).map((n) => n / 1e9);
}

const made = new Map<Fluid, Refrigerant>();

/** The refrigerant of a fluid; each is made once. */
export function refrigerantOf(fluid: Fluid): Refrigerant {
  const known = made.get(fluid) ?? refrigerantFrom(fluid);
  made.set(fluid, known);
  return known;
}

/**
 * Above its melting curve, which no equation here carries, cold nitrogen is solid and its liquid equation folds; it
 * is tried to a tenth of its range only.
 */
function highestPressure({ designation, limits }: Refrigerant): number {
  return designation === "R-728" ? limits.maximumPressure / 10 : limits.maximumPressure;
}

/**
 * Maps two shares to a single-phase state: temperature evenly over the range, pressure evenly in its logarithm from
 * 1 kPa up. Undefined near the critical point, where compressibility runs away and no state comes back to nine digits.
 * A pair that the refrigerant refuses inside its range is a failure and passes through.
 */
export function singlePhaseAt(refrigerant: Refrigerant, u: number, v: number): SinglePhaseState | undefined {
  const { minimumTemperature, maximumTemperature } = refrigerant.limits;
  const temperature = minimumTemperature + u * (maximumTemperature - minimumTemperature);
  const highest = highestPressure(refrigerant);
  // At v = 1 rounding may lift the product above its limit.
  const pressure = Math.min(highest, 1e3 * (highest / 1e3) ** v);
  const found = refrigerant.state({ temperature, pressure });
  if (found.phase === "two-phase") throw new Error("a pure refrigerant has one phase here");
  return found.isothermalCompressibility * pressure < 1e3 ? found : undefined;
}

/** Saturation temperature from a share, evenly in √(1 − T/Tc): 0 is `margin` below the critical point, 1 the cold end. */
export function saturationTemperatureAt(
  { critical, limits }: Refrigerant,
  u: number,
  margin: number,
): number {
  const nearest = Math.sqrt(margin / critical.temperature);
  const farthest = Math.sqrt(1 - limits.minimumTemperature / critical.temperature);
  const s = nearest + u * (farthest - nearest);
  return Math.max(limits.minimumTemperature, critical.temperature * (1 - s * s));
}
