import type { Fluid } from "../catalogue/index.js";
import { type Derivatives, noDerivatives } from "./derivatives.js";
import { Ideal, type IdealDerivatives } from "./ideal.js";
import { Residual } from "./residual.js";

/** One evaluation of an equation: where it was made and everything that follows from derivatives. Molar basis. */
export interface Evaluation {
  /** Temperature, K. */
  T: number;
  /** Density, mol/m3. */
  rho: number;
  tau: number;
  delta: number;
  readonly ideal: IdealDerivatives;
  readonly residual: Derivatives;
}

/** A fresh place for an evaluation; make one and reuse it. */
export function noEvaluation(): Evaluation {
  return {
    T: 0,
    rho: 0,
    tau: 0,
    delta: 0,
    ideal: { phi: 0, phi_t: 0, phi_tt: 0 },
    residual: noDerivatives(),
  };
}

/**
 * A Helmholtz equation of state a(T, ρ)/(RT) = α⁰(τ, δ) + φʳ(τ, δ), τ = Tr/T, δ = ρ/ρr, ready to be evaluated.
 *
 * It holds working memory: one evaluation at a time, which in JavaScript is always so.
 */
export class Equation {
  /** The literal it was made from. */
  readonly fluid: Fluid;
  /** Molar gas constant of the publication, J/(mol K). */
  readonly R: number;
  /** Reducing temperature, K. */
  readonly Tr: number;
  /** Reducing density, mol/m3. */
  readonly rhor: number;
  readonly #ideal: Ideal;
  readonly #residual: Residual;

  constructor(fluid: Fluid) {
    this.fluid = fluid;
    this.R = fluid.gasConstant;
    this.Tr = fluid.reducing.temperature;
    this.rhor = fluid.reducing.density;
    this.#ideal = new Ideal(fluid.ideal, this.Tr);
    this.#residual = new Residual(fluid.residual);
  }

  /** The residual part alone, in reduced variables: all that pressure and phase equilibrium need. */
  evaluateResidual(tau: number, delta: number, out: Derivatives): void {
    this.#residual.evaluate(tau, delta, out);
  }

  /** The ideal part alone, without ln δ. */
  evaluateIdeal(tau: number, out: IdealDerivatives): void {
    this.#ideal.evaluate(tau, out);
  }

  /** Both parts at a temperature in K and a density in mol/m3. */
  evaluate(T: number, rho: number, out: Evaluation): void {
    const tau = this.Tr / T;
    const delta = rho / this.rhor;
    out.T = T;
    out.rho = rho;
    out.tau = tau;
    out.delta = delta;
    this.#ideal.evaluate(tau, out.ideal);
    this.#residual.evaluate(tau, delta, out.residual);
  }
}
