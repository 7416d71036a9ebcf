import type { IdealPart } from "../catalogue/index.js";

/** Below this exponent 1 − exp(−x) loses more than two binary digits. */
const careful = 0.25;

/** The part of an ideal gas's Helmholtz energy that depends on temperature, and its derivatives in τ. */
export interface IdealDerivatives {
  phi: number;
  phi_t: number;
  phi_tt: number;
}

/**
 * The ideal-gas part, brought into one form whichever way it was published:
 * α⁰(τ, δ) = ln δ + logTau ln τ + Σ n τ^t + Σ n ln(1 − exp(−θτ)).
 *
 * ln δ is left to the caller. There are no integration constants: enthalpy and entropy are counted from a reference
 * state that the room above applies.
 */
export class Ideal {
  readonly #logTau: number;
  readonly #power: readonly (readonly [n: number, t: number])[];
  readonly #planckEinstein: readonly (readonly [n: number, theta: number])[];

  constructor(part: IdealPart, reducingTemperature: number) {
    if (part.form === "alpha0") {
      this.#logTau = part.logTau;
      this.#power = part.power;
      this.#planckEinstein = part.planckEinstein;
      return;
    }
    // cp⁰/R = 1 − τ² α⁰_ττ, integrated twice. Powers 0 and −1 of T would give logarithms: the first belongs in the
    // constant, the second occurs in no published equation, and the check of a catalogue's literals refuses both.
    this.#logTau = part.constant - 1;
    this.#power = part.power.map(([n, e]) => [(-n * reducingTemperature ** e) / (e * (e + 1)), -e]);
    this.#planckEinstein = part.planckEinstein.map(([n, theta]) => [n, theta / reducingTemperature]);
  }

  /** Evaluates the part without ln δ. */
  evaluate(tau: number, out: IdealDerivatives): void {
    const logTau = Math.log(tau);
    let phi = this.#logTau * logTau;
    let t1 = this.#logTau;
    let t2 = -this.#logTau;
    for (const [n, t] of this.#power) {
      const X = n * Math.exp(t * logTau);
      phi += X;
      t1 += t * X;
      t2 += t * (t - 1) * X;
    }
    for (const [n, theta] of this.#planckEinstein) {
      const x = theta * tau;
      const decay = Math.exp(-x);
      // 1 − exp(−x), the careful way only where digits would cancel: expm1 costs several times as much as exp.
      const gap = x < careful ? -Math.expm1(-x) : 1 - decay;
      // x/(eˣ − 1), and x²eˣ/(eˣ − 1)², in the form that cannot overflow.
      const quotient = (x * decay) / gap;
      phi += n * Math.log(gap);
      t1 += n * quotient;
      t2 -= (n * x * quotient) / gap;
    }
    out.phi = phi;
    out.phi_t = t1 / tau;
    out.phi_tt = t2 / (tau * tau);
  }
}
