import type { ResidualPart } from "../catalogue/index.js";
import type { Derivatives } from "./derivatives.js";
import { integerPower } from "./integer-power.js";
import { addNonAnalytic } from "./non-analytic.js";
import { type BellTerms, compileTerms, type PowerTerms } from "./terms.js";

/**
 * The residual part φʳ(τ, δ) of a Helmholtz equation.
 *
 * Apart from the non-analytic terms every term is a product A(τ)·D(δ). The A's are kept from call to call: at an
 * unchanged temperature, as in a density search, only the D's are computed anew.
 */
export class Residual {
  readonly #power: PowerTerms;
  readonly #bells: BellTerms;
  readonly #nonAnalytic: NonNullable<ResidualPart["nonAnalytic"]>;
  readonly #deltaPower: Float64Array;
  #tau = Number.NaN;

  constructor(part: ResidualPart) {
    const { power, bells } = compileTerms(part);
    this.#power = power;
    this.#bells = bells;
    this.#nonAnalytic = part.nonAnalytic ?? [];
    this.#deltaPower = new Float64Array(power.highestPower + 1);
  }

  /**
   * Evaluates φʳ and all its derivatives.
   *
   * With θ = δ ∂/∂δ and c = θ ln D, a term X = A D gives θX = cX, θ²X = (c² + θc)X and
   * θ³X = (c³ + 3cθc + θ²c)X; the sums over these become derivatives in δ at the end.
   */
  evaluate(tau: number, delta: number, out: Derivatives): void {
    if (tau !== this.#tau) {
      this.#power.setTau(tau);
      this.#bells.setTau(tau);
      this.#tau = tau;
    }
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    let t1 = 0;
    let t2 = 0;
    let s1t1 = 0;

    const powers = this.#deltaPower;
    powers[0] = 1;
    for (let k = 1; k < powers.length; k++) powers[k] = powers[k - 1]! * delta;

    const { A, B, C, d } = this.#power;
    const integerPowers = this.#power.integerPowers;
    const logDelta = integerPowers ? 0 : Math.log(delta);
    for (const group of this.#power.groups) {
      const { l, g, start, end } = group;
      const inner = l === 0 ? 0 : g * (Number.isInteger(l) ? integerPower(delta, l) : delta ** l);
      const envelope = l === 0 ? 1 : Math.exp(-inner);
      const lead = l * inner;
      const dc = -l * lead;
      const ddc = l * dc;
      let g0 = 0;
      let g1 = 0;
      let g2 = 0;
      let g3 = 0;
      let gt1 = 0;
      let gt2 = 0;
      let g1t1 = 0;
      for (let i = start; i < end; i++) {
        const di = d[i]!;
        const X = A[i]! * (integerPowers ? powers[di]! : Math.exp(di * logDelta));
        const c = di - lead;
        const cX = c * X;
        const second = c * c + dc;
        g0 += X;
        g1 += cX;
        g2 += second * X;
        g3 += (c * (second + 2 * dc) + ddc) * X;
        gt1 += B[i]! * X;
        gt2 += C[i]! * X;
        g1t1 += B[i]! * cX;
      }
      s0 += envelope * g0;
      s1 += envelope * g1;
      s2 += envelope * g2;
      s3 += envelope * g3;
      t1 += envelope * gt1;
      t2 += envelope * gt2;
      s1t1 += envelope * g1t1;
    }

    const bells = this.#bells;
    for (let i = 0; i < bells.count; i++) {
      const eta = bells.eta[i]!;
      const epsilon = bells.epsilon[i]!;
      const di = bells.d[i]!;
      const shift = delta - epsilon;
      const X = bells.A[i]! * integerPower(delta, di) * Math.exp(-eta * shift * shift);
      const slope = -2 * eta * delta;
      const c = di + slope * shift;
      const dc = slope * (delta + shift);
      const ddc = slope * (3 * delta + shift);
      const cX = c * X;
      const second = c * c + dc;
      s0 += X;
      s1 += cX;
      s2 += second * X;
      s3 += (c * (second + 2 * dc) + ddc) * X;
      t1 += bells.B[i]! * X;
      t2 += bells.C[i]! * X;
      s1t1 += bells.B[i]! * cX;
    }

    const perDelta = 1 / delta;
    const perTau = 1 / tau;
    out.phi = s0;
    out.phi_d = s1 * perDelta;
    out.phi_dd = (s2 - s1) * perDelta * perDelta;
    out.phi_ddd = (s3 - 3 * s2 + 2 * s1) * perDelta * perDelta * perDelta;
    out.phi_t = t1 * perTau;
    out.phi_tt = t2 * perTau * perTau;
    out.phi_dt = s1t1 * perDelta * perTau;

    for (const term of this.#nonAnalytic) addNonAnalytic(term, tau, delta, out);
  }
}
