import type { Fluid, ResidualPart } from "../../src/catalogue/index.js";
import { type Derivatives, Equation, noDerivatives } from "../../src/equation/index.js";
import { r32 } from "../../src/fluids/r-32.js";

/** The derivatives in the order of the kernel. */
export const names = ["phi", "phi_d", "phi_dd", "phi_ddd", "phi_t", "phi_tt", "phi_dt"] as const;

/** An equation with a residual part of one's own; the rest, which a residual part never sees, is that of R-32. */
export function equationWith(residual: ResidualPart): Equation {
  return new Equation({ ...r32, residual });
}

/** All derivatives of a residual part at a point. */
export function residualAt(residual: ResidualPart, tau: number, delta: number): Derivatives {
  return evaluateAt(equationWith(residual), tau, delta);
}

/** All residual derivatives of an equation at a point, in a place of their own. */
export function evaluateAt(equation: Equation, tau: number, delta: number): Derivatives {
  const out = noDerivatives();
  equation.evaluateResidual(tau, delta, out);
  return out;
}

/** Every term of a fluid as a residual part of its own. */
export function singleTerms({ residual }: Pick<Fluid, "residual">): readonly ResidualPart[] {
  const { power, doubleExp = [], gaussian = [], reciprocalBell = [], nonAnalytic = [] } = residual;
  return [
    ...power.map((row) => ({ power: [row] })),
    ...doubleExp.map((row) => ({ power: [], doubleExp: [row] })),
    ...gaussian.map((row) => ({ power: [], gaussian: [row] })),
    ...reciprocalBell.map((row) => ({ power: [], reciprocalBell: [row] })),
    ...nonAnalytic.map((row) => ({ power: [], nonAnalytic: [row] })),
  ];
}

/** Largest deviation of one set of derivatives from another, each relative to a scale of its own. */
export function largestDeviation(found: Derivatives, expected: Derivatives, scale: Derivatives): number {
  return Math.max(...names.map((name) => Math.abs(found[name] - expected[name]) / scale[name]));
}

/** Adds up sets of derivatives. */
export function sumOf(parts: readonly Derivatives[]): Derivatives {
  const sum = noDerivatives();
  for (const part of parts) for (const name of names) sum[name] += part[name];
  return sum;
}

/**
 * The size of the numbers from which the derivatives of a sum are made: terms cancel one another, and within a term
 * δ²φ_δδ, say, is a difference of numbers as large as φ and δφ_δ.
 */
export function sizeOf(parts: readonly Derivatives[], tau: number, delta: number): Derivatives {
  const sum = noDerivatives();
  for (const part of parts) {
    const [zero, one, two, three, t, tt, dt] = [
      part.phi,
      delta * part.phi_d,
      delta ** 2 * part.phi_dd,
      delta ** 3 * part.phi_ddd,
      tau * part.phi_t,
      tau ** 2 * part.phi_tt,
      tau * delta * part.phi_dt,
    ].map(Math.abs) as [number, number, number, number, number, number, number];
    sum.phi += zero;
    sum.phi_d += Math.max(zero, one) / delta;
    sum.phi_dd += Math.max(zero, one, two) / delta ** 2;
    sum.phi_ddd += Math.max(zero, one, two, three) / delta ** 3;
    sum.phi_t += Math.max(zero, t) / tau;
    sum.phi_tt += Math.max(zero, t, tt) / tau ** 2;
    sum.phi_dt += Math.max(zero, one, t, dt) / (tau * delta);
  }
  return sum;
}
