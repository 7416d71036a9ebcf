import { componentPressure } from "./guess.js";
import { solveLinear } from "./linear.js";
import type { MixtureModel, PhaseEquation } from "./mixture-model.js";
import {
  gibbsOf,
  guessLiquidDensity,
  guessVapourDensity,
  liquidRoot,
  sameRoot,
  slopeOf,
  vapourRoot,
} from "./phase-density.js";

/** Which of the two density roots of one composition and pressure a phase has. */
export type Root = "liquid" | "vapour";

/** A phase that a mixture would rather be: where the tangent plane at the mixture lies above the Gibbs energy. */
export interface Trial {
  readonly root: Root;
  /** Amounts yᵢ ∝ mole fractions; that their sum exceeds 1 is what makes the mixture unstable. */
  readonly amounts: Float64Array;
}

/** One phase of a composition at (T, p), alone. */
export interface SinglePhaseRoot {
  readonly root: Root;
  /** Molar density, mol/m3. */
  readonly density: number;
  /** Whether the other root exists too, so that this one was chosen for its lower Gibbs energy. */
  readonly alone: boolean;
}

/**
 * At a higher temperature than this, reduced by its own reducing temperature, no liquid of any pair with parameters was
 * seen to split in two in a sweep over all of them: 0.69 was the highest.
 */
const suspectBelow = 0.72;

/** The guess of a saturated liquid's density is better than this. */
const denserThanSaturated = 1.2;
/** Rounds of substitution before and after Newton's method has had its try. */
const firstRounds = 8;
const mostRounds = 60;
const newtonSteps = 15;
/** The tangent plane must lie above by this much, in RT: less is rounding, on the boundary itself. */
const decided = 1e-11;
/** A trial this near to the mixture, in every component's amount, is the mixture itself. */
const same = 1e-5;

/**
 * The root that a composition has at (T, p) with P = p/(RT): of two the one of lower Gibbs energy. Undefined where the
 * equation has none. Both phases' equations are used up.
 */
export function singlePhaseRoot(
  model: MixtureModel,
  x: Float64Array,
  T: number,
  P: number,
): SinglePhaseRoot | undefined {
  const { liquid, vapour } = model;
  liquid.mixture.setComposition(x);
  vapour.mixture.setComposition(x);
  const dense = liquidRoot(liquid.mixture, T, P, guessLiquidDensity(model, liquid, x, T), liquid.at);
  const thin = vapourRoot(vapour.mixture, T, P, guessVapourDensity(vapour, P), vapour.at);
  if (!(dense > 0)) return thin > 0 ? { root: "vapour", density: thin, alone: true } : undefined;
  if (!(thin > 0)) return { root: "liquid", density: dense, alone: true };
  if (Math.abs(thin / dense - 1) < 1e-6) {
    return { root: dense > liquid.mixture.rhor ? "liquid" : "vapour", density: dense, alone: true };
  }
  return gibbsOf(liquid.at) < gibbsOf(vapour.at)
    ? { root: "liquid", density: dense, alone: false }
    : { root: "vapour", density: thin, alone: false };
}

/**
 * Tangent-plane test of one phase: looks for a trial phase whose Gibbs energy lies below the tangent plane at the
 * composition. Undefined when none was found: the phase is stable.
 *
 * Trials start vapour-like, liquid-like, and nearly pure in each component, which finds second liquids.
 *
 * @param density - The phase's molar density at (T, p), mol/m3.
 * @param among - Which trials to make: of a liquid in equilibrium with its vapour a second liquid alone is in question.
 * @source Michelsen, M. L., Fluid Phase Equilib. 9 (1982) 1, for the test and the substitution.
 */
export function findTrial(
  model: MixtureModel,
  x: Float64Array,
  T: number,
  P: number,
  density: number,
  among: "all phases" | "second liquids" = "all phases",
): Trial | undefined {
  const { count, liquid, scratch } = model;
  const { ratio } = liquid.mixture;
  for (let i = 0; i < count; i++) scratch[i] = x[i]! * density;
  liquid.mixture.evaluate(T, scratch, liquid.at);
  const target = new Float64Array(count);
  for (let i = 0; i < count; i++) target[i] = ratio[i]! * Math.log(scratch[i]!) + liquid.at.mu[i]!;
  const starts: { readonly root: Root; readonly amounts: Float64Array }[] = [];
  if (among === "all phases") {
    const ratios = Float64Array.from(
      model.pure,
      (_, i) => componentPressure(model, i, T) / (P * model.R * T),
    );
    starts.push({ root: "vapour", amounts: x.map((xi, i) => xi * ratios[i]!) });
    starts.push({ root: "liquid", amounts: x.map((xi, i) => xi / ratios[i]!) });
  }
  // A second liquid beside a liquid is nearly pure in one of the two least alike.
  for (let i = 0; i < count; i++) {
    starts.push({ root: "liquid", amounts: x.map((xi, j) => (i === j ? 1 : 1e-3 * xi)) });
  }
  for (const { root, amounts } of starts) {
    const trial = followTrial(model, x, T, P, target, root, amounts, density);
    if (trial !== undefined) return trial;
  }
  return undefined;
}

/** Whether any mixture of the components might split into two liquids at a temperature. */
export function maySplit({ pure }: MixtureModel, T: number): boolean {
  return T < suspectBelow * Math.max(...pure.map(({ equation }) => equation.Tr));
}

/** Whether a liquid in equilibrium with vapour would rather be two: {@link findTrial} where that may be. */
export function isSplitLiquid(
  model: MixtureModel,
  x: Float64Array,
  T: number,
  P: number,
  density: number,
): boolean {
  const { mixture } = model.liquid;
  mixture.setComposition(x);
  return T < suspectBelow * mixture.Tr && findTrial(model, x, T, P, density, "second liquids") !== undefined;
}

/**
 * The pressure over RT of a composition as one phase of a density, mol/m3, if it is stable as that: the root it has at that
 * pressure, which a density inside the dome is not, though some equations have a branch there that passes the plane test.
 */
export function stablePressure(
  model: MixtureModel,
  x: Float64Array,
  T: number,
  density: number,
): number | undefined {
  const { mixture, at } = model.liquid;
  mixture.setComposition(x);
  mixture.evaluateFixed(T, density, at);
  const { pressure: P } = at;
  if (!(P > 0 && slopeOf(at) > 0)) return undefined;
  // Denser than a saturated liquid nothing lies beyond; a search need not reach what is denser than any fluid.
  if (density < denserThanSaturated * guessLiquidDensity(model, model.liquid, x, T)) {
    const root = singlePhaseRoot(model, x, T, P);
    if (root === undefined || !(Math.abs(root.density / density - 1) < sameRoot)) return undefined;
  }
  return findTrial(model, x, T, P, density) === undefined ? P : undefined;
}

function followTrial(
  model: MixtureModel,
  x: Float64Array,
  T: number,
  P: number,
  target: Float64Array,
  root: Root,
  start: Float64Array,
  density: number,
): Trial | undefined {
  const { count } = model;
  const phase = root === "liquid" ? model.liquid : model.vapour;
  const { ratio } = phase.mixture;
  const amounts = Float64Array.from(start);
  const fractions = new Float64Array(count);
  const concentrations = new Float64Array(count);
  for (let round = 0; round < mostRounds; round++) {
    normalise(amounts, fractions);
    const rho = outerRoot(model, root, fractions, T, P);
    if (!(rho > 0)) return undefined;
    for (let i = 0; i < count; i++) concentrations[i] = fractions[i]! * rho;
    phase.mixture.evaluate(T, concentrations, phase.at);
    let tangent = 0;
    let change = 0;
    let toMixture = 0;
    for (let i = 0; i < count; i++) {
      const difference = target[i]! - phase.at.mu[i]! - ratio[i]! * Math.log(concentrations[i]!);
      tangent -= fractions[i]! * difference;
      const next = fractions[i]! * Math.exp(difference / ratio[i]!);
      change = Math.max(change, Math.abs(Math.log(next / amounts[i]!)));
      toMixture = Math.max(toMixture, Math.abs(Math.log((x[i]! * density) / concentrations[i]!)));
      amounts[i] = next;
    }
    if (toMixture < same) return undefined;
    if (tangent < -decided) return { root, amounts };
    if (change < 1e-9) return undefined;
    if (round === firstRounds) {
      // Newton's method may leap into the dome, where some equations have a second loop: its end is tested like any other.
      const end = newtonTrial(phase, T, target, concentrations);
      if (end !== undefined) amounts.set(end);
    }
  }
  return undefined;
}

/** The density root of a trial that is reached from outside the dome, mol/m3; NaN where there is none. */
function outerRoot(model: MixtureModel, root: Root, fractions: Float64Array, T: number, P: number): number {
  const phase = root === "liquid" ? model.liquid : model.vapour;
  phase.mixture.setComposition(fractions);
  if (root === "vapour") return vapourRoot(phase.mixture, T, P, guessVapourDensity(phase, P), phase.at);
  // Always anew: the density of the round before may lie inside the dome of another composition.
  return liquidRoot(phase.mixture, T, P, guessLiquidDensity(model, phase, fractions, T), phase.at);
}

/**
 * Mole fractions of a phase with the chemical potentials of the mixture, by Newton's method in concentrations, for trials
 * near the critical point where substitution creeps. Undefined where it does not settle.
 */
function newtonTrial(
  { mixture, at }: PhaseEquation,
  T: number,
  target: Float64Array,
  start: Float64Array,
): Float64Array | undefined {
  const { count, ratio } = mixture;
  const concentrations = Float64Array.from(start);
  const jacobian = new Float64Array(count * count);
  const step = new Float64Array(count);
  for (let round = 0; round < newtonSteps; round++) {
    mixture.evaluate(T, concentrations, at);
    for (let i = 0; i < count; i++) {
      step[i] = ratio[i]! * Math.log(concentrations[i]!) + at.mu[i]! - target[i]!;
      for (let j = 0; j < count; j++) {
        jacobian[i * count + j] = at.x[j]! * at.hessian[i * count + j]! + (i === j ? ratio[i]! : 0);
      }
    }
    if (!solveLinear(jacobian, step, count)) return undefined;
    let size = 0;
    for (let i = 0; i < count; i++) size = Math.max(size, Math.abs(step[i]!));
    if (!(size < 1)) return undefined;
    const factor = size > 0.3 ? 0.3 / size : 1;
    for (let i = 0; i < count; i++) concentrations[i]! *= Math.exp(-factor * step[i]!);
    if (size < 1e-10) {
      mixture.evaluate(T, concentrations, at);
      return Float64Array.from(at.x);
    }
  }
  return undefined;
}

function normalise(amounts: Float64Array, fractions: Float64Array): void {
  let sum = 0;
  for (const amount of amounts) sum += amount;
  for (let i = 0; i < amounts.length; i++) fractions[i] = amounts[i]! / sum;
}
