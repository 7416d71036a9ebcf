import type { Derivatives } from "./derivatives.js";
import { integerPower } from "./integer-power.js";

/**
 * Adds one non-analytic term n Δ^b δ ψ and its derivatives, with
 * Δ = θ² + B |δ − 1|^(2a), θ = (1 − τ) + A |δ − 1|^(1/β), ψ = exp(−C(δ − 1)² − D(τ − 1)²).
 *
 * At τ = δ = 1 the term and its first two derivatives in δ vanish while the second in τ diverges, as the isochoric
 * heat capacity of the real fluid does; nothing is added there.
 *
 * @source Span, R., Wagner, W., J. Phys. Chem. Ref. Data 25 (1996) 1509, eq. (6.1) and table 32; the third
 *   derivative is our own.
 */
export function addNonAnalytic(
  [n, a, b, B, C, D, A, beta]: readonly [number, number, number, number, number, number, number, number],
  tau: number,
  delta: number,
  out: Derivatives,
): void {
  const x = delta - 1;
  const y = tau - 1;
  const size = Math.abs(x);
  const sign = Math.sign(x);
  const q = 1 / beta;
  const r = 2 * a;

  // |δ − 1| to the powers q, q − 1 and so on, and r likewise: `**` costs as much as all the rest of a term.
  const q0 = size ** q;
  const q1 = lower(q0, size, q - 1);
  const q2 = lower(q1, size, q - 2);
  const q3 = lower(q2, size, q - 3);
  const r0 = integerPower(size, r);
  const r1 = lower(r0, size, r - 1);
  const r2 = lower(r1, size, r - 2);
  const r3 = lower(r2, size, r - 3);

  const theta = -y + A * q0;
  const theta1 = A * q * q1 * sign;
  const theta2 = A * q * (q - 1) * q2;
  const theta3 = A * q * (q - 1) * (q - 2) * q3 * sign;

  const Delta = theta * theta + B * r0;
  if (Delta === 0) return;
  const Delta1 = 2 * theta * theta1 + B * r * r1 * sign;
  const Delta2 = 2 * (theta1 * theta1 + theta * theta2) + B * r * (r - 1) * r2;
  const Delta3 = 2 * (3 * theta1 * theta2 + theta * theta3) + B * r * (r - 1) * (r - 2) * r3 * sign;
  const Delta_t = -2 * theta;
  const Delta_dt = -2 * theta1;

  // F = Δ^b, written with the ratios of neighbouring powers.
  const F = n * Delta ** b;
  const f1 = (b * F) / Delta;
  const f2 = ((b - 1) * f1) / Delta;
  const f3 = ((b - 2) * f2) / Delta;
  const F_d = f1 * Delta1;
  const F_dd = f2 * Delta1 * Delta1 + f1 * Delta2;
  const F_ddd = f3 * Delta1 * Delta1 * Delta1 + 3 * f2 * Delta1 * Delta2 + f1 * Delta3;
  const F_t = f1 * Delta_t;
  const F_tt = f2 * Delta_t * Delta_t + 2 * f1;
  const F_dt = f2 * Delta_t * Delta1 + f1 * Delta_dt;

  const psi = Math.exp(-C * x * x - D * y * y);
  const p1 = -2 * C * x;
  const psi_d = p1 * psi;
  const psi_dd = (p1 * p1 - 2 * C) * psi;
  const psi_ddd = p1 * (p1 * p1 - 6 * C) * psi;
  const u = -2 * D * y;
  const uu = u * u - 2 * D;
  const G = delta * psi;
  const G_d = psi + delta * psi_d;
  const G_dd = 2 * psi_d + delta * psi_dd;
  const G_ddd = 3 * psi_dd + delta * psi_ddd;

  out.phi += F * G;
  out.phi_d += F_d * G + F * G_d;
  out.phi_dd += F_dd * G + 2 * F_d * G_d + F * G_dd;
  out.phi_ddd += F_ddd * G + 3 * F_dd * G_d + 3 * F_d * G_dd + F * G_ddd;
  out.phi_t += (F_t + F * u) * G;
  out.phi_tt += (F_tt + 2 * F_t * u + F * uu) * G;
  out.phi_dt += (F_dt + F_d * u) * G + (F_t + F * u) * G_d;
}

/** x to a power, from x to the power one higher. */
function lower(higher: number, x: number, exponent: number): number {
  return x === 0 ? x ** exponent : higher / x;
}
