import { boundaryAtPressure, boundaryAtTemperature } from "./boundary.js";
import type { IncipientPoint } from "./incipient.js";
import type { MixtureModel } from "./mixture-model.js";

/** A composition of two components that boils without changing. */
export interface Azeotrope {
  /** Temperature, K. */
  readonly temperature: number;
  /** Pressure, Pa. */
  readonly pressure: number;
  /** Mole fractions. */
  readonly x: Float64Array;
  /** Whether the mixture boils below (`minimum-boiling`) or above both its neighbours in composition. */
  readonly kind: "minimum-boiling" | "maximum-boiling";
}

/** Beside a pure component azeotropes lie close to it; in between so many compositions are looked at. */
const besidePure = [1e-5, 1e-3, 0.01];
const between = 24;
const mostSteps = 60;

/**
 * All azeotropes of two components at a temperature or a pressure: where the first is neither enriched nor impoverished in
 * the vapour, found by its change of sign along the bubble line.
 */
export function binaryAzeotropes(
  model: MixtureModel,
  held: { readonly what: "temperature" | "pressure"; readonly value: number },
): readonly Azeotrope[] {
  const solve = (x: number): { readonly point: IncipientPoint; readonly enrichment: number } | undefined => {
    const parent = Float64Array.of(x, 1 - x);
    const point =
      held.what === "temperature"
        ? boundaryAtTemperature(model, "vapour", parent, held.value)
        : boundaryAtPressure(model, "vapour", parent, held.value);
    if (point === undefined) return undefined;
    const [first, second] = point.concentrations;
    return { point, enrichment: Math.log((first! / x) * ((1 - x) / second!)) };
  };
  const found: Azeotrope[] = [];
  const inner = Array.from({ length: between }, (_, k) => (k + 1) / (between + 1));
  const stations = [...besidePure, ...inner, ...[...besidePure].reverse().map((x) => 1 - x)];
  let before: { readonly x: number; readonly enrichment: number } | undefined;
  for (const x of stations) {
    const here = solve(x);
    if (here === undefined) {
      before = undefined;
      continue;
    }
    if (before !== undefined && before.enrichment > 0 !== here.enrichment > 0) {
      const kind = before.enrichment > 0 ? "minimum-boiling" : "maximum-boiling";
      const root = rootBetween(before, { x, enrichment: here.enrichment }, (at) => solve(at)?.enrichment);
      const solved = root === undefined ? undefined : solve(root);
      if (solved !== undefined) {
        const { temperature, pressure, parent } = solved.point;
        found.push({ temperature, pressure, x: parent, kind });
      }
    }
    before = { x, enrichment: here.enrichment };
  }
  return found;
}

/** Illinois' variant of false position: it keeps the bracket and does not creep. */
function rootBetween(
  left: { readonly x: number; readonly enrichment: number },
  right: { readonly x: number; readonly enrichment: number },
  of: (x: number) => number | undefined,
): number | undefined {
  let a = left.x;
  let b = right.x;
  let fa = left.enrichment;
  let fb = right.enrichment;
  for (let step = 0; step < mostSteps; step++) {
    const x = b - (fb * (b - a)) / (fb - fa);
    const f = of(x);
    if (f === undefined) return undefined;
    if (Math.abs(f) < 1e-13 || Math.abs(b - a) < 1e-14) return x;
    if (f > 0 === fb > 0) fa /= 2;
    else {
      a = b;
      fa = fb;
    }
    b = x;
    fb = f;
    if (Math.abs(b - a) < 1e-13) return b;
  }
  return b;
}
