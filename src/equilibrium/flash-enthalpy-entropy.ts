import {
  enthalpy,
  entropy,
  isobaricHeatCapacity,
  pressureSlope,
  thermalPressure,
} from "../equation/index.js";
import { NoSuchStateError, NotConvergedError } from "../units/index.js";
import { densityOnBranch } from "./density.js";
import { type Equilibrium, evaluate, onePhase, type SearchRange, sameness, twoPhase } from "./flash.js";
import { criticalMargin, type Model } from "./model.js";
import { findRoot } from "./root.js";
import { saturationAtTemperature, saturationSlope } from "./saturation.js";

/**
 * The state at a molar enthalpy and entropy (both without integration constant), J/mol and J/(mol K).
 *
 * Along an isentrope dh = v dp, and pressure rises with temperature: enthalpy rises with temperature through both
 * phases, so one search along the isentrope finds the state wherever it lies.
 */
export function flashEnthalpyEntropy(model: Model, h: number, s: number, range: SearchRange): Equilibrium {
  const { R } = model.equation;
  let found: Equilibrium | undefined;
  let miss = Number.NaN;
  const sample = (T: number, out: { value: number; slope: number }): void => {
    found = flashTemperatureEntropy(model, T, s, range);
    if (found === undefined) {
      // Pressure above the range: far above the enthalpy sought.
      out.value = Number.POSITIVE_INFINITY;
      out.slope = Number.NaN;
      return;
    }
    if (found.phases === 1) {
      const at = evaluate(model, T, found.density);
      out.value = R * T * enthalpy(at) - h;
      miss = Math.abs(out.value) / (R * T);
      // (∂h/∂T)ₛ = cp/(αT)
      out.slope = (R * isobaricHeatCapacity(at) * pressureSlope(at)) / thermalPressure(at);
      return;
    }
    const { saturation, quality } = found;
    const liquid = R * T * enthalpy(evaluate(model, T, saturation.liquidDensity));
    const vapour = R * T * enthalpy(evaluate(model, T, saturation.vapourDensity));
    const volume = (1 - quality) / saturation.liquidDensity + quality / saturation.vapourDensity;
    out.value = liquid + quality * (vapour - liquid) - h;
    miss = Math.abs(out.value) / (R * T);
    out.slope = volume * saturationSlope(model, saturation);
  };
  const start = Math.min(0.9 * model.critical.temperature, (range.minimum + range.maximum) / 2);
  const T = findRoot(sample, range.minimum, range.maximum, start);
  const { inputs } = range;
  if (Number.isFinite(T)) {
    // An enthalpy between that of the highest pressure and infinity is met nowhere: the search ends beside the jump.
    if (found !== undefined && miss <= sameness && hasEntropy(model, found, s)) return found;
    throw new NoSuchStateError(inputs, "its pressure would lie outside the range of the equation");
  }
  if (T === Number.NEGATIVE_INFINITY) {
    throw new NoSuchStateError(inputs, `its temperature would lie below ${range.minimum} K`);
  }
  if (T === Number.POSITIVE_INFINITY) {
    throw new NoSuchStateError(inputs, `its temperature would lie above ${range.maximum} K`);
  }
  throw new NotConvergedError(`the temperature of ${model.equation.fluid.designation}`, inputs);
}

/** Whether a state has the entropy sought: a vapour of more than a vacuum could hold has not, it ends a search. */
function hasEntropy(model: Model, found: Equilibrium, s: number): boolean {
  if (found.phases === 2) return true;
  const { R } = model.equation;
  return Math.abs(R * entropy(evaluate(model, found.temperature, found.density)) - s) <= sameness * R;
}

/**
 * The state at a temperature and a molar entropy, or undefined where its pressure would lie above the range: there
 * an equation may be nonsense, and so the search must not look.
 */
function flashTemperatureEntropy(
  model: Model,
  T: number,
  s: number,
  { highestPressure }: SearchRange,
): Equilibrium | undefined {
  const { R } = model.equation;
  const fluid = T > model.critical.temperature - criticalMargin;
  let edge = thinnest;
  if (!fluid) {
    const saturation = saturationAtTemperature(model, T);
    const liquid = R * entropy(evaluate(model, T, saturation.liquidDensity));
    const vapour = R * entropy(evaluate(model, T, saturation.vapourDensity));
    if (s >= liquid && s <= vapour) return twoPhase(saturation, (s - liquid) / (vapour - liquid));
    if (s > vapour) {
      const top = Math.log(saturation.vapourDensity);
      return densityAtEntropy(model, T, s, thinnest, top, idealStart(model, T, s));
    }
    edge = Math.log(saturation.liquidDensity);
  }
  const densest = densityOnBranch(model, T, aboveRange * highestPressure, fluid ? "fluid" : "liquid");
  if (s < R * entropy(evaluate(model, T, densest))) return undefined;
  return densityAtEntropy(model, T, s, edge, Math.log(densest), fluid ? idealStart(model, T, s) : edge);
}

/** A little above the range, so that a state on its edge lies inside the search. */
const aboveRange = 1.01;

/** ln of a density, mol/m3, that no vapour in any range goes below. */
const thinnest = -100;

/** Solves in ln ρ, in which the entropy of a gas is straight. */
function densityAtEntropy(
  model: Model,
  T: number,
  s: number,
  low: number,
  high: number,
  start: number,
): Equilibrium {
  const { R } = model.equation;
  const logDensity = findRoot(
    (x, out) => {
      const at = evaluate(model, T, Math.exp(x));
      out.value = s - R * entropy(at);
      out.slope = R * thermalPressure(at);
    },
    low,
    high,
    start,
  );
  // Outside the bracket by rounding only: an end of it.
  return onePhase(T, Math.exp(Math.min(Math.max(logDensity, low), high)));
}

/** ln ρ of an ideal gas with this entropy. */
function idealStart(model: Model, T: number, s: number): number {
  const { equation } = model;
  const ideal = model.at.ideal;
  const tau = equation.Tr / T;
  equation.evaluateIdeal(tau, ideal);
  return tau * ideal.phi_t - ideal.phi - s / equation.R + Math.log(equation.rhor);
}
