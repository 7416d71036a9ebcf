import type { Masses } from "../../../src/state/index.js";

/** Left plus factor times right, name by name: written anew, so that nothing tested checks itself. */
export function plus(left: Masses, right: Masses, factor: number): Masses {
  return Object.fromEntries(
    Object.entries(left).map(([name, value]) => [name, value + factor * right[name]!]),
  );
}

export function total(masses: Masses): number {
  return Object.values(masses).reduce((whole, each) => whole + each, 0);
}

/** Integrates slopes over a span by the classical method of fourth order. */
export function withRungeKutta(
  from: Masses,
  slopes: (at: Masses) => Masses,
  span: number,
  steps: number,
): Masses {
  const step = span / steps;
  let at = from;
  for (let i = 0; i < steps; i++) {
    const k1 = slopes(at);
    const k2 = slopes(plus(at, k1, step / 2));
    const k3 = slopes(plus(at, k2, step / 2));
    const k4 = slopes(plus(at, k3, step));
    at = plus(plus(plus(plus(at, k1, step / 6), k2, step / 3), k3, step / 3), k4, step / 6);
  }
  return at;
}
