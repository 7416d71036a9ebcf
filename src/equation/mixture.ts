import type { Fluid, Pair } from "../catalogue/index.js";
import { type Derivatives, noDerivatives } from "./derivatives.js";
import type { Evaluation } from "./equation.js";
import { Ideal, type IdealDerivatives } from "./ideal.js";
import {
  type Departure,
  departuresOf,
  type PairOf,
  pairTable,
  temperatureRule,
  volumeRule,
} from "./mixing-pairs.js";
import type { MixtureEvaluation, MixtureIdeal } from "./mixture-evaluation.js";
import { ReducingFunction } from "./reducing.js";
import { Residual } from "./residual.js";

/**
 * The multi-fluid Helmholtz model: α(T, ρ, x) = Σ xᵢαᵢ⁰ + Σ xᵢ ln xᵢ + Σ xᵢαᵢʳ(τ, δ) + Σ xᵢxⱼFᵢⱼαᵢⱼʳ(τ, δ), with
 * τ = Tr(x)/T and δ = ρ/ρr(x).
 *
 * Each fluid keeps the gas constant it was fitted with: its part is counted as Rᵢαᵢ, so that a mixture that becomes pure
 * becomes that fluid to the last digit. Concentrations ρᵢ are the natural variables of an isotherm; all derivatives here
 * are in them.
 *
 * It remembers what depends on composition and temperature, so two phases are best given an instance each.
 *
 * @source Lemmon, E. W., Jacobsen, R. T, J. Phys. Chem. Ref. Data 33 (2004) 593, and Kunz, O., Wagner, W., J. Chem. Eng.
 *   Data 57 (2012) 3032, for the model; the derivatives in concentrations are our own.
 */
export class Mixture {
  readonly fluids: readonly Fluid[];
  readonly count: number;
  /** The gas constant that everything is divided by, J/(mol K). */
  readonly R: number;
  /** Rᵢ/R of each component; 1 within a few millionths. */
  readonly ratio: Float64Array;
  /** Molar masses, kg/mol. */
  readonly molarMass: Float64Array;
  /** The pairs in use. */
  readonly pairs: readonly Pair[];
  readonly #ideal: readonly Ideal[];
  readonly #idealAt: IdealDerivatives = { phi: 0, phi_t: 0, phi_tt: 0 };
  readonly #residual: readonly Residual[];
  readonly #at: readonly Derivatives[];
  readonly #departures: readonly Departure[];
  readonly #temperature: ReducingFunction;
  readonly #volume: ReducingFunction;
  readonly #x: Float64Array;
  // D_i ln v and D_i ln Tr, with D_i = ρ ∂/∂ρᵢ, and their own derivatives.
  readonly #a: Float64Array;
  readonly #b: Float64Array;
  readonly #aa: Float64Array;
  readonly #bb: Float64Array;
  // ∂φ/∂xᵢ, the same of L φ and T φ, and ∂²φ/∂xᵢ∂xⱼ, at constant τ and δ.
  readonly #byX: Float64Array;
  readonly #byXL: Float64Array;
  readonly #byXT: Float64Array;
  readonly #byXX: Float64Array;
  readonly #rowMean: Float64Array;

  constructor(fluids: readonly Fluid[], pairOf: PairOf) {
    const count = fluids.length;
    this.fluids = fluids;
    this.count = count;
    this.R = fluids[0]!.gasConstant;
    this.ratio = Float64Array.from(fluids, ({ gasConstant }) => gasConstant / this.R);
    this.molarMass = Float64Array.from(fluids, ({ molarMass }) => molarMass);
    this.#ideal = fluids.map(({ ideal, reducing }) => new Ideal(ideal, reducing.temperature));
    this.#residual = fluids.map(({ residual }) => new Residual(residual));
    this.#at = fluids.map(() => noDerivatives());
    const pairs = pairTable(fluids, pairOf);
    this.pairs = pairs.flat();
    const of = (i: number, j: number): Pair => pairs[i]![j - i - 1]!;
    this.#departures = departuresOf(fluids, this.ratio, of);
    this.#temperature = new ReducingFunction(
      fluids.map(({ reducing }) => reducing.temperature),
      (i, j) => temperatureRule(fluids[i]!, fluids[j]!, of(i, j)),
    );
    this.#volume = new ReducingFunction(
      fluids.map(({ reducing }) => 1 / reducing.density),
      (i, j) => volumeRule(fluids[i]!, fluids[j]!, of(i, j)),
    );
    this.#x = new Float64Array(count).fill(Number.NaN);
    this.#a = new Float64Array(count);
    this.#b = new Float64Array(count);
    this.#aa = new Float64Array(count * count);
    this.#bb = new Float64Array(count * count);
    this.#byX = new Float64Array(count);
    this.#byXL = new Float64Array(count);
    this.#byXT = new Float64Array(count);
    this.#byXX = new Float64Array(count * count);
    this.#rowMean = new Float64Array(count);
  }

  /** Reducing temperature at the composition set last, K. */
  get Tr(): number {
    return this.#temperature.value;
  }

  /** Reducing density at the composition set last, mol/m3. */
  get rhor(): number {
    return 1 / this.#volume.value;
  }

  /** Sets the mole fractions; they add up to 1. */
  setComposition(x: Float64Array): void {
    const own = this.#x;
    const { count } = this;
    let same = true;
    for (let i = 0; i < count; i++) {
      same &&= own[i] === x[i]!;
      own[i] = x[i]!;
    }
    if (same) return;
    logDerivatives(this.#temperature, own, this.#b, this.#bb);
    logDerivatives(this.#volume, own, this.#a, this.#aa);
  }

  /** φ and its derivatives in ln δ and ln τ at the composition set last: what a density search needs. */
  evaluateFixed(T: number, rho: number, out: MixtureEvaluation): void {
    const { count, ratio } = this;
    const x = this.#x;
    const tau = this.#temperature.value / T;
    const delta = rho * this.#volume.value;
    let phi = 0;
    let phiL = 0;
    let phiLL = 0;
    let phiT = 0;
    let phiTT = 0;
    let phiLT = 0;
    for (let i = 0; i < count; i++) {
      const at = this.#at[i]!;
      this.#residual[i]!.evaluate(tau, delta, at);
      toLogarithmic(at, tau, delta, ratio[i]!);
      const xi = x[i]!;
      phi += xi * at.phi;
      phiL += xi * at.phi_d;
      phiLL += xi * at.phi_dd;
      phiT += xi * at.phi_t;
      phiTT += xi * at.phi_tt;
      phiLT += xi * at.phi_dt;
    }
    for (const { residual, at, pairs } of this.#departures) {
      residual.evaluate(tau, delta, at);
      toLogarithmic(at, tau, delta, 1);
      let weight = 0;
      for (const [i, j, factor] of pairs) weight += factor * x[i]! * x[j]!;
      phi += weight * at.phi;
      phiL += weight * at.phi_d;
      phiLL += weight * at.phi_dd;
      phiT += weight * at.phi_t;
      phiTT += weight * at.phi_tt;
      phiLT += weight * at.phi_dt;
    }
    let idealPressure = 0;
    for (let i = 0; i < count; i++) idealPressure += x[i]! * ratio[i]!;
    out.T = T;
    out.rho = rho;
    out.x.set(x);
    out.tau = tau;
    out.delta = delta;
    out.phi = phi;
    out.phiL = phiL;
    out.phiLL = phiLL;
    out.phiT = phiT;
    out.phiTT = phiTT;
    out.phiLT = phiLT;
    out.pressure = rho * (idealPressure + phiL);
    out.pressureT = -rho * phiLT;
  }

  /** Everything, at a temperature and the concentrations of the components, mol/m3. */
  evaluate(T: number, concentrations: Float64Array, out: MixtureEvaluation): void {
    const { count } = this;
    let rho = 0;
    for (let i = 0; i < count; i++) rho += concentrations[i]!;
    for (let i = 0; i < count; i++) out.x[i] = concentrations[i]! / rho;
    this.setComposition(out.x);
    this.evaluateFixed(T, rho, out);
    this.#addComposition(out);
  }

  /** Adds chemical potentials and the matrix of their derivatives to a fixed-composition evaluation just made. */
  #addComposition(out: MixtureEvaluation): void {
    const { count, ratio } = this;
    const x = this.#x;
    const a = this.#a;
    const b = this.#b;
    const aa = this.#aa;
    const bb = this.#bb;
    const byX = this.#byX;
    const byXL = this.#byXL;
    const byXT = this.#byXT;
    const byXX = this.#byXX;
    const rowMean = this.#rowMean;
    for (let i = 0; i < count; i++) {
      const at = this.#at[i]!;
      byX[i] = at.phi;
      byXL[i] = at.phi_d;
      byXT[i] = at.phi_t;
    }
    byXX.fill(0);
    for (const { at, pairs } of this.#departures) {
      for (const [i, j, factor] of pairs) {
        byX[i]! += factor * x[j]! * at.phi;
        byX[j]! += factor * x[i]! * at.phi;
        byXL[i]! += factor * x[j]! * at.phi_d;
        byXL[j]! += factor * x[i]! * at.phi_d;
        byXT[i]! += factor * x[j]! * at.phi_t;
        byXT[j]! += factor * x[i]! * at.phi_t;
        byXX[i * count + j]! += factor * at.phi;
        byXX[j * count + i]! += factor * at.phi;
      }
    }
    let meanX = 0;
    let meanXL = 0;
    let meanXT = 0;
    let meanXX = 0;
    for (let i = 0; i < count; i++) {
      meanX += x[i]! * byX[i]!;
      meanXL += x[i]! * byXL[i]!;
      meanXT += x[i]! * byXT[i]!;
      let row = 0;
      for (let j = 0; j < count; j++) row += x[j]! * byXX[i * count + j]!;
      rowMean[i] = row;
      meanXX += x[i]! * row;
    }
    const { phi, phiL, phiLL, phiT, phiTT, phiLT, mu, muT, hessian, pressureBy } = out;
    for (let i = 0; i < count; i++) {
      const ai = 1 + a[i]!;
      const bi = b[i]!;
      mu[i] = phi + phiL * ai + phiT * bi + byX[i]! - meanX;
      muT[i] = -(phiT + phiLT * ai + phiTT * bi + byXT[i]! - meanXT);
    }
    for (let i = 0; i < count; i++) {
      const ai = 1 + a[i]!;
      const bi = b[i]!;
      const xL = byXL[i]! - meanXL;
      const xT = byXT[i]! - meanXT;
      for (let j = i; j < count; j++) {
        const aj = 1 + a[j]!;
        const bj = b[j]!;
        // D_jφ, then D_j D_iφ term by term.
        const D = phiL * aj + phiT * bj + byX[j]! - meanX;
        const L = phiLL * aj + phiLT * bj + byXL[j]! - meanXL;
        const T = phiLT * aj + phiTT * bj + byXT[j]! - meanXT;
        const X = byXX[i * count + j]! - rowMean[i]! - (byX[j]! - meanX) - (rowMean[j]! - meanXX);
        const value =
          D + L * ai + phiL * aa[i * count + j]! + T * bi + phiT * bb[i * count + j]! + xL * aj + xT * bj + X;
        hessian[i * count + j] = value;
        hessian[j * count + i] = value;
      }
    }
    for (let j = 0; j < count; j++) {
      let sum = ratio[j]!;
      for (let i = 0; i < count; i++) sum += x[i]! * hessian[i * count + j]!;
      pressureBy[j] = sum;
    }
  }

  /** The ideal parts at a temperature; composition does not matter. */
  evaluateIdeal(T: number, out: MixtureIdeal): void {
    for (let i = 0; i < this.count; i++) {
      const { reducing } = this.fluids[i]!;
      const tau = reducing.temperature / T;
      const at = this.#idealAt;
      this.#ideal[i]!.evaluate(tau, at);
      const ratio = this.ratio[i]!;
      out.helmholtz[i] = ratio * (at.phi - Math.log(reducing.density));
      out.energy[i] = ratio * tau * at.phi_t;
      out.heatCapacity[i] = -ratio * tau * tau * at.phi_tt;
    }
  }

  /**
   * The same as an evaluation of one fluid of this composition, from which all its properties follow; its gas constant is
   * {@link gasConstantOf}.
   */
  toEvaluation(from: MixtureEvaluation, out: Evaluation): void {
    const { count, ratio } = this;
    const { x, T, rho, tau, delta } = from;
    const rhor = rho / delta;
    let share = 0;
    let phi = 0;
    let phi1 = 0;
    let phi2 = 0;
    for (let i = 0; i < count; i++) {
      const xi = x[i]!;
      if (xi === 0) continue;
      const { reducing } = this.fluids[i]!;
      const ownTau = reducing.temperature / T;
      const at = this.#idealAt;
      this.#ideal[i]!.evaluate(ownTau, at);
      const weight = xi * ratio[i]!;
      share += weight;
      phi += weight * (at.phi + Math.log((xi * rhor) / reducing.density));
      phi1 += weight * ownTau * at.phi_t;
      phi2 += weight * ownTau * ownTau * at.phi_tt;
    }
    const { ideal, residual } = out;
    out.T = T;
    out.rho = rho;
    out.tau = tau;
    out.delta = delta;
    ideal.phi = phi / share;
    ideal.phi_t = phi1 / (share * tau);
    ideal.phi_tt = phi2 / (share * tau * tau);
    residual.phi = from.phi / share;
    residual.phi_d = from.phiL / (share * delta);
    // Divided twice: δ² of the thinnest gases is too small a number.
    residual.phi_dd = (from.phiLL - from.phiL) / share / delta / delta;
    residual.phi_ddd = 0;
    residual.phi_t = from.phiT / (share * tau);
    residual.phi_tt = (from.phiTT - from.phiT) / (share * tau * tau);
    residual.phi_dt = from.phiLT / (share * delta * tau);
  }

  /** R of a mixture of this composition, J/(mol K): the mean of its components' by amount. */
  gasConstantOf(x: Float64Array): number {
    let sum = 0;
    for (let i = 0; i < this.count; i++) sum += x[i]! * this.ratio[i]!;
    return sum * this.R;
  }

  /** Molar mass of a mixture of this composition, kg/mol. */
  molarMassOf(x: Float64Array): number {
    let sum = 0;
    for (let i = 0; i < this.count; i++) sum += x[i]! * this.molarMass[i]!;
    return sum;
  }
}

/** Turns derivatives in δ and τ into those in ln δ and ln τ, in place, times a factor. */
function toLogarithmic(at: Derivatives, tau: number, delta: number, factor: number): void {
  const L = factor * delta * at.phi_d;
  const T = factor * tau * at.phi_t;
  at.phi *= factor;
  at.phi_dd = L + factor * delta * delta * at.phi_dd;
  at.phi_tt = T + factor * tau * tau * at.phi_tt;
  at.phi_dt *= factor * delta * tau;
  at.phi_d = L;
  at.phi_t = T;
}

/** D_i ln Y and D_j D_i ln Y with D_i = ρ ∂/∂ρᵢ; Y is of degree two in x. */
function logDerivatives(Y: ReducingFunction, x: Float64Array, one: Float64Array, two: Float64Array): void {
  Y.setComposition(x);
  const { value, first, second } = Y;
  const count = one.length;
  for (let i = 0; i < count; i++) one[i] = first[i]! / value - 2;
  // D_j(Y_i/Y) = (Y_ij − Σ xₖY_ik)/Y − (Y_i/Y) D_j ln Y, and Σ xₖY_ik = Y_i.
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      two[i * count + j] = (second[i * count + j]! - first[i]! - first[i]! * one[j]!) / value;
    }
  }
}
