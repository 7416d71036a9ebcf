/**
 * A reduced Helmholtz energy φ(τ, δ) and its partial derivatives, d for δ and t for τ. Mutable on purpose: the
 * caller owns one and hands it in, so that an evaluation allocates nothing.
 */
export interface Derivatives {
  phi: number;
  phi_d: number;
  phi_dd: number;
  /** Third derivative in δ, needed at critical points only. */
  phi_ddd: number;
  phi_t: number;
  phi_tt: number;
  phi_dt: number;
}

/** A fresh set of derivatives, all zero: the residual part of an ideal gas. */
export function noDerivatives(): Derivatives {
  return { phi: 0, phi_d: 0, phi_dd: 0, phi_ddd: 0, phi_t: 0, phi_tt: 0, phi_dt: 0 };
}
