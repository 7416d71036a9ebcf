import { type Equation, noDerivatives } from "../equation/index.js";

/** A critical point of an equation: K, mol/m3, Pa. */
export interface CriticalPoint {
  readonly temperature: number;
  readonly density: number;
  readonly pressure: number;
}

/** Reduced derivatives of pressure on an isotherm; both vanish at a critical point. */
export interface CriticalResidual {
  /** p/(ρr R T). */
  readonly pressure: number;
  /** (∂p/∂ρ)_T/(RT). */
  readonly first: number;
  /** ρr (∂²p/∂ρ²)_T/(RT). */
  readonly second: number;
}

/** Evaluates the critical conditions at a reduced temperature τ = Tr/T and density δ = ρ/ρr. */
export function criticalResidual(equation: Equation, tau: number, delta: number): CriticalResidual {
  const at = noDerivatives();
  equation.evaluateResidual(tau, delta, at);
  return {
    pressure: delta + delta * delta * at.phi_d,
    first: 1 + delta * (2 * at.phi_d + delta * at.phi_dd),
    second: 2 * at.phi_d + delta * (4 * at.phi_dd + delta * at.phi_ddd),
  };
}

/** Residuals this small are rounding: a step from here would be noise. */
const settled = 1e-12;

/**
 * The equation's own critical point: ∂p/∂ρ = ∂²p/∂ρ² = 0, by Newton's method from the published point.
 *
 * The slope of the second condition is a difference quotient, because it would need fourth derivatives. An equation
 * with non-analytic terms has no such slope at its critical point, so the step with the smallest residual is kept
 * and the search ends when a step no longer improves it.
 */
export function findCriticalPoint(equation: Equation): CriticalPoint {
  const { critical } = equation.fluid;
  let tau = equation.Tr / critical.temperature;
  let delta = critical.density / equation.rhor;
  let best = criticalResidual(equation, tau, delta);
  const h = 1e-5;
  for (let step = 0; step < 40 && size(best) > settled; step++) {
    const hotter = criticalResidual(equation, tau - h, delta);
    const colder = criticalResidual(equation, tau + h, delta);
    const thinner = criticalResidual(equation, tau, delta - h);
    const denser = criticalResidual(equation, tau, delta + h);
    const first_t = (colder.first - hotter.first) / (2 * h);
    const second_t = (colder.second - hotter.second) / (2 * h);
    const second_d = (denser.second - thinner.second) / (2 * h);
    const determinant = first_t * second_d - second_t * best.second;
    let dTau = (-best.first * second_d + best.second * best.second) / determinant;
    let dDelta = (-first_t * best.second + second_t * best.first) / determinant;
    let improved = false;
    for (let halving = 0; halving < 8; halving++) {
      const trial = criticalResidual(equation, tau + dTau, delta + dDelta);
      if (size(trial) < size(best)) {
        tau += dTau;
        delta += dDelta;
        best = trial;
        improved = true;
        break;
      }
      dTau /= 2;
      dDelta /= 2;
    }
    if (!improved) break;
  }
  const temperature = equation.Tr / tau;
  return {
    temperature,
    density: delta * equation.rhor,
    pressure: best.pressure * equation.rhor * equation.R * temperature,
  };
}

function size({ first, second }: CriticalResidual): number {
  return Math.abs(first) + Math.abs(second);
}
