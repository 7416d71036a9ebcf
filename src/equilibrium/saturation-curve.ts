import type { Equation } from "../equation/index.js";
import { type ChebyshevSeries, chebyshevAt, chebyshevNodes, chebyshevThrough } from "./chebyshev.js";
import {
  type Coexistence,
  type CoexistenceScratch,
  coexistenceScratch,
  solveCoexistence,
} from "./coexistence.js";
import { type CriticalPoint, criticalResidual } from "./critical.js";

/**
 * The saturation curve of an equation as smooth series, accurate enough to start every solver in this room next to
 * its answer. The variable is s = √(1 − T/Tc), in which densities and pressure are smooth up to the critical point.
 */
export interface SaturationCurve {
  readonly critical: CriticalPoint;
  /** Lowest temperature covered, K. */
  readonly minimumTemperature: number;
  /** ln δ′ over s. */
  readonly logLiquid: ChebyshevSeries;
  /** ln δ″ over s. */
  readonly logVapour: ChebyshevSeries;
  /** ln(p/pc) over s. */
  readonly logPressure: ChebyshevSeries;
  /** s over √(ln(pc/p)). */
  readonly inversePressure: ChebyshevSeries;
}

/** So close to the critical point the densities of the phases differ by rounding; 0.35 mK for R-32. */
const smallestS = 1e-3;
/** Where the search begins: far enough to tell the phases apart, near enough to guess them from the spinodals. */
const firstS = 0.03;
const nodeCount = 56;

/** The points solved so far, from which the next is guessed: (ln δ − ln δc)/s of both phases, smooth down to s = 0. */
interface Trail {
  readonly logCritical: number;
  readonly s: number[];
  readonly liquid: number[];
  readonly vapour: number[];
}

/**
 * Follows the coexistence curve from the critical point down to a temperature and fits the series.
 *
 * Starting at the critical point keeps to the outer branch: equations with bell terms have a second loop inside the
 * dome, which no step from here can reach. Returns undefined if the curve cannot be followed that far.
 */
export function traceSaturation(
  equation: Equation,
  critical: CriticalPoint,
  minimumTemperature: number,
): SaturationCurve | undefined {
  const scratch = coexistenceScratch();
  const largestS = Math.sqrt(1 - minimumTemperature / critical.temperature);
  const nodes = chebyshevNodes(smallestS, largestS, nodeCount);
  const first = solveNearCritical(equation, critical, scratch);
  if (first === undefined) return undefined;

  const pc = critical.pressure;
  const logLiquid = new Float64Array(nodeCount);
  const logVapour = new Float64Array(nodeCount);
  const logPressure = new Float64Array(nodeCount);
  const record = (index: number, s: number, pair: Coexistence): void => {
    logLiquid[index] = Math.log(pair.liquid);
    logVapour[index] = Math.log(pair.vapour);
    const T = temperatureAt(critical, s);
    logPressure[index] = Math.log((pair.pressure * equation.rhor * equation.R * T) / pc);
  };

  // Nodes run from the lowest temperature to the highest; walk from the first solved point both ways.
  let split = nodeCount - 1;
  while (split > 0 && nodes[split]! < firstS) split--;
  const walk = (from: number, to: number, direction: 1 | -1): boolean => {
    const trail: Trail = {
      logCritical: Math.log(critical.density / equation.rhor),
      s: [],
      liquid: [],
      vapour: [],
    };
    remember(trail, firstS, first);
    for (let index = from; index !== to; index += direction) {
      const pair = follow(equation, critical, trail, nodes[index]!, scratch, 0);
      if (pair === undefined) return false;
      record(index, nodes[index]!, pair);
    }
    return true;
  };
  if (!walk(split, -1, -1) || !walk(split + 1, nodeCount, 1)) return undefined;

  const curve = {
    critical,
    minimumTemperature,
    logLiquid: chebyshevThrough(smallestS, largestS, logLiquid),
    logVapour: chebyshevThrough(smallestS, largestS, logVapour),
    logPressure: chebyshevThrough(smallestS, largestS, logPressure),
  };
  return { ...curve, inversePressure: invert(curve.logPressure) };
}

/** T = Tc(1 − s²). */
function temperatureAt(critical: CriticalPoint, s: number): number {
  return critical.temperature * (1 - s * s);
}

/** Close values of both reduced densities at a temperature, written into `pair`. */
export function guessCoexistence(curve: SaturationCurve, T: number, pair: Coexistence): void {
  const s = Math.sqrt(Math.max(0, 1 - T / curve.critical.temperature));
  pair.liquid = Math.exp(chebyshevAt(curve.logLiquid, s));
  pair.vapour = Math.exp(chebyshevAt(curve.logVapour, s));
}

/** A close value of the saturation pressure at a temperature, Pa. */
export function guessPressure(curve: SaturationCurve, T: number): number {
  const s = Math.sqrt(Math.max(0, 1 - T / curve.critical.temperature));
  return curve.critical.pressure * Math.exp(chebyshevAt(curve.logPressure, s));
}

/** A close value of the saturation temperature at a pressure, K. */
export function guessTemperature(curve: SaturationCurve, pressure: number): number {
  const y = Math.sqrt(Math.max(0, Math.log(curve.critical.pressure / pressure)));
  return temperatureAt(curve.critical, chebyshevAt(curve.inversePressure, y));
}

/** Solves at `firstS`, starting from the spinodals, which bisection finds without a guess. */
function solveNearCritical(
  equation: Equation,
  critical: CriticalPoint,
  scratch: CoexistenceScratch,
): Coexistence | undefined {
  const tau = equation.Tr / temperatureAt(critical, firstS);
  const deltaC = critical.density / equation.rhor;
  const denser = spinodal(equation, tau, deltaC, 1);
  const thinner = spinodal(equation, tau, deltaC, -1);
  // On a cubic the binodal is √3 times as wide as the spinodal; flatter isotherms bring it nearer.
  for (const widening of [Math.sqrt(3), 1.5, 2.2, 1.3, 2.8]) {
    const pair = {
      liquid: deltaC * (1 + widening * denser),
      vapour: deltaC * (1 - widening * thinner),
      pressure: 0,
    };
    if (solveCoexistence(equation, tau, pair, scratch)) return pair;
  }
  return undefined;
}

/** Relative distance from the critical density to where ∂p/∂ρ turns positive, on one side. */
function spinodal(equation: Equation, tau: number, deltaC: number, side: 1 | -1): number {
  let inside = 0;
  let outside = 0.01;
  while (outside < 0.9 && criticalResidual(equation, tau, deltaC * (1 + side * outside)).first < 0) {
    inside = outside;
    outside *= 1.5;
  }
  for (let halving = 0; halving < 40; halving++) {
    const middle = (inside + outside) / 2;
    if (criticalResidual(equation, tau, deltaC * (1 + side * middle)).first < 0) inside = middle;
    else outside = middle;
  }
  return outside;
}

/** The next point of the curve, guessed by extrapolating the trail; halves the step where that fails. */
function follow(
  equation: Equation,
  critical: CriticalPoint,
  trail: Trail,
  s: number,
  scratch: CoexistenceScratch,
  depth: number,
): Coexistence | undefined {
  const pair = {
    liquid: Math.exp(trail.logCritical + s * extrapolate(trail.s, trail.liquid, s)),
    vapour: Math.exp(trail.logCritical + s * extrapolate(trail.s, trail.vapour, s)),
    pressure: 0,
  };
  if (!solveCoexistence(equation, equation.Tr / temperatureAt(critical, s), pair, scratch)) {
    if (depth > 12) return undefined;
    const before = trail.s[trail.s.length - 1]!;
    const half = follow(equation, critical, trail, (before + s) / 2, scratch, depth + 1);
    return half === undefined ? undefined : follow(equation, critical, trail, s, scratch, depth + 1);
  }
  remember(trail, s, pair);
  return pair;
}

function remember(trail: Trail, s: number, { liquid, vapour }: Coexistence): void {
  trail.s.push(s);
  trail.liquid.push((Math.log(liquid) - trail.logCritical) / s);
  trail.vapour.push((Math.log(vapour) - trail.logCritical) / s);
}

/** Lagrange's polynomial through the last four points at most. */
function extrapolate(x: readonly number[], y: readonly number[], at: number): number {
  const from = Math.max(0, x.length - 4);
  let sum = 0;
  for (let i = from; i < x.length; i++) {
    let weight = y[i]!;
    for (let j = from; j < x.length; j++) if (j !== i) weight *= (at - x[j]!) / (x[i]! - x[j]!);
    sum += weight;
  }
  return sum;
}

/** The series of s over y = √(ln(pc/p)): p falls as s rises, so bisection on the direct series is enough. */
function invert(logPressure: ChebyshevSeries): ChebyshevSeries {
  const { low, high } = logPressure;
  const yAt = (s: number): number => Math.sqrt(Math.max(0, -chebyshevAt(logPressure, s)));
  const yLow = yAt(low);
  const yHigh = yAt(high);
  const values = chebyshevNodes(yLow, yHigh, nodeCount).map((y) => {
    let cold = high;
    let hot = low;
    for (let halving = 0; halving < 50; halving++) {
      const middle = (cold + hot) / 2;
      if (yAt(middle) > y) cold = middle;
      else hot = middle;
    }
    return (cold + hot) / 2;
  });
  return chebyshevThrough(yLow, yHigh, values);
}
