import { Decimal } from "decimal.js";
import type { IdealPart, ResidualPart } from "../../src/catalogue/index.js";

/** 60 digits leave 24 in a third difference with the step below; the step's own error is 1e-24 of the next derivative. */
const Precise = Decimal.clone({ precision: 60 });
const step = new Precise("1e-12");

/** A number of 60 digits. */
export type Long = Decimal;

/** The residual part of an equation, summed from the printed forms of its terms in 60-digit arithmetic. */
export function residualPrecisely(part: ResidualPart, tau: Long, delta: Long): Long {
  const power = (x: Long, y: number): Long => (y === 0 ? new Precise(1) : Precise.pow(x, y));
  let sum = new Precise(0);
  for (const [n, t, d, l] of part.power) {
    const envelope = l === 0 ? new Precise(1) : Precise.exp(power(delta, l).neg());
    sum = sum.plus(power(tau, t).times(n).times(power(delta, d)).times(envelope));
  }
  for (const [n, t, d, l, m, g, k] of part.doubleExp ?? []) {
    const exponent = power(delta, l).times(-g).minus(power(tau, m).times(k));
    sum = sum.plus(power(tau, t).times(n).times(power(delta, d)).times(Precise.exp(exponent)));
  }
  for (const [n, t, d, eta, beta, gamma, epsilon] of part.gaussian ?? []) {
    const exponent = power(delta.minus(epsilon), 2)
      .times(-eta)
      .minus(power(tau.minus(gamma), 2).times(beta));
    sum = sum.plus(power(tau, t).times(n).times(power(delta, d)).times(Precise.exp(exponent)));
  }
  for (const [n, t, d, eta, beta, gamma, epsilon, b] of part.reciprocalBell ?? []) {
    const bell = new Precise(1).div(power(tau.minus(gamma), 2).times(beta).plus(b));
    const exponent = power(delta.minus(epsilon), 2).times(-eta).plus(bell);
    sum = sum.plus(power(tau, t).times(n).times(power(delta, d)).times(Precise.exp(exponent)));
  }
  for (const [n, a, b, B, C, D, A, beta] of part.nonAnalytic ?? []) {
    const x2 = power(delta.minus(1), 2);
    // The published exponent 1/(2β) is meant as that fraction, so it is formed in 60 digits.
    const half = new Precise(1).div(new Precise(beta).times(2));
    const theta = new Precise(1).minus(tau).plus(x2.isZero() ? 0 : Precise.pow(x2, half).times(A));
    const Delta = power(theta, 2).plus(x2.isZero() ? 0 : power(x2, a).times(B));
    const psi = Precise.exp(x2.times(-C).minus(power(tau.minus(1), 2).times(D)));
    if (!Delta.isZero()) sum = sum.plus(power(Delta, b).times(n).times(delta).times(psi));
  }
  return sum;
}

/** The ideal part without ln δ, from its printed form; a cp0 form is integrated by its own closed terms. */
export function idealPrecisely(part: IdealPart, reducingTemperature: number, tau: Long): Long {
  const one = new Precise(1);
  const einstein = (n: number, theta: Long): Long =>
    Precise.ln(one.minus(Precise.exp(theta.times(tau).neg()))).times(n);
  let sum = new Precise(0);
  if (part.form === "alpha0") {
    sum = sum.plus(Precise.ln(tau).times(part.logTau));
    for (const [n, t] of part.power) sum = sum.plus(Precise.pow(tau, t).times(n));
    for (const [n, theta] of part.planckEinstein) sum = sum.plus(einstein(n, new Precise(theta)));
    return sum;
  }
  sum = sum.plus(Precise.ln(tau).times(part.constant - 1));
  const Tr = new Precise(reducingTemperature);
  for (const [n, e] of part.power) {
    const factor = new Precise(-n).div(new Precise(e).times(new Precise(e).plus(1)));
    sum = sum.plus(Precise.pow(Tr.div(tau), e).times(factor));
  }
  for (const [n, theta] of part.planckEinstein) sum = sum.plus(einstein(n, new Precise(theta).div(Tr)));
  return sum;
}

/** Value and derivatives in τ of a 60-digit function, by central differences. */
export function differentiateInTau(
  f: (tau: Long) => Long,
  tauAt: number,
): { phi: number; phi_t: number; phi_tt: number } {
  const tau = new Precise(tauAt);
  const [hot, centre, cold] = [f(tau.minus(step)), f(tau), f(tau.plus(step))];
  return {
    phi: centre.toNumber(),
    phi_t: cold.minus(hot).div(step.times(2)).toNumber(),
    phi_tt: cold.plus(hot).minus(centre.times(2)).div(step.pow(2)).toNumber(),
  };
}

/** Partial derivatives by central differences of a 60-digit function. */
export function differentiate(
  f: (tau: Long, delta: Long) => Long,
  tauAt: number,
  deltaAt: number,
): {
  phi: number;
  phi_d: number;
  phi_dd: number;
  phi_ddd: number;
  phi_t: number;
  phi_tt: number;
  phi_dt: number;
} {
  const tau = new Precise(tauAt);
  const delta = new Precise(deltaAt);
  const at = (i: number, j: number): Long => f(tau.plus(step.times(i)), delta.plus(step.times(j)));
  const centre = at(0, 0);
  const [down2, down, up, up2] = [at(0, -2), at(0, -1), at(0, 1), at(0, 2)];
  const [cold, hot] = [at(1, 0), at(-1, 0)];
  const h2 = step.times(2);
  return {
    phi: centre.toNumber(),
    phi_d: up.minus(down).div(h2).toNumber(),
    phi_dd: up.plus(down).minus(centre.times(2)).div(step.pow(2)).toNumber(),
    phi_ddd: up2.minus(up.times(2)).plus(down.times(2)).minus(down2).div(step.pow(3).times(2)).toNumber(),
    phi_t: cold.minus(hot).div(h2).toNumber(),
    phi_tt: cold.plus(hot).minus(centre.times(2)).div(step.pow(2)).toNumber(),
    phi_dt: at(1, 1).minus(at(1, -1)).minus(at(-1, 1)).plus(at(-1, -1)).div(h2.pow(2)).toNumber(),
  };
}
