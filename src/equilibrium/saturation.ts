import { NotConvergedError } from "../units/index.js";
import { type Coexistence, solveCoexistence } from "./coexistence.js";
import { type Model, rounding } from "./model.js";
import { guessCoexistence, guessTemperature } from "./saturation-curve.js";

/** Liquid and vapour in equilibrium: K, Pa, mol/m3. */
export interface SaturationPoint {
  readonly temperature: number;
  readonly pressure: number;
  readonly liquidDensity: number;
  readonly vapourDensity: number;
}

/** Equilibrium at a temperature that the caller has found to lie on the curve. */
export function saturationAtTemperature(model: Model, T: number): SaturationPoint {
  const pair: Coexistence = { liquid: 0, vapour: 0, pressure: 0 };
  solveAt(model, T, pair);
  return toPoint(model, T, pair);
}

/** Equilibrium at an end of the range, where every search asks again: each temperature is solved once. */
export function saturationAtEnd(model: Model, T: number): SaturationPoint {
  let point = model.ends.get(T);
  if (point === undefined) {
    point = saturationAtTemperature(model, T);
    model.ends.set(T, point);
  }
  return point;
}

/**
 * Equilibrium at a pressure that the caller has found to lie on the curve: Newton's method in temperature, with the
 * slope of Clausius and Clapeyron, each step solved to the end.
 */
export function saturationAtPressure(model: Model, pressure: number): SaturationPoint {
  const { equation } = model;
  const lowest = saturationAtEnd(model, equation.fluid.limits.minimumTemperature).pressure;
  const curve = pressure >= lowest * (1 - rounding) ? model.curve : model.coldCurve;
  const pair: Coexistence = { liquid: 0, vapour: 0, pressure: 0 };
  let T = guessTemperature(curve, pressure);
  let previous = Number.POSITIVE_INFINITY;
  let isLast = false;
  for (let step = 0; step < 20; step++) {
    solveAt(model, T, pair);
    if (isLast) return { ...toPoint(model, T, pair), pressure };
    const found = pair.pressure * equation.rhor * equation.R * T;
    const deviation = (pressure - found) / pressure;
    const dT = (deviation * pressure) / clapeyronSlope(model, T, pair);
    if (Math.abs(dT) <= 2 ** -52 * T || Math.abs(deviation) >= previous / 2) {
      return { ...toPoint(model, T, pair), pressure };
    }
    previous = Math.abs(deviation);
    // The error that is left is the square of this, times ten or so: rounding.
    isLast = Math.abs(dT) <= 1e-9 * T;
    T = Math.min(T + dT, curve.critical.temperature * (1 - 1e-7));
  }
  throw new NotConvergedError(`the saturation temperature of ${equation.fluid.designation}`, { pressure });
}

/** dp/dT along the saturation curve at a solved point, Pa/K. */
export function saturationSlope(model: Model, point: SaturationPoint): number {
  const { rhor } = model.equation;
  return clapeyronSlope(model, point.temperature, {
    liquid: point.liquidDensity / rhor,
    vapour: point.vapourDensity / rhor,
    pressure: 0,
  });
}

/** dp/dT = (s″ − s′)/(v″ − v′), Pa/K. */
function clapeyronSlope(model: Model, T: number, { liquid, vapour }: Coexistence): number {
  const { equation, scratch } = model;
  const tau = equation.Tr / T;
  equation.evaluateResidual(tau, liquid, scratch.liquid);
  equation.evaluateResidual(tau, vapour, scratch.vapour);
  const { liquid: L, vapour: V } = scratch;
  const entropyStep = tau * (V.phi_t - L.phi_t) - (V.phi - L.phi) - Math.log(vapour / liquid);
  const volumeStep = 1 / vapour - 1 / liquid;
  return (equation.R * equation.rhor * entropyStep) / volumeStep;
}

function solveAt(model: Model, T: number, pair: Coexistence): void {
  const { equation } = model;
  guessCoexistence(model.curveFor(T), T, pair);
  if (!solveCoexistence(equation, equation.Tr / T, pair, model.scratch)) {
    throw new NotConvergedError(`the saturation of ${equation.fluid.designation}`, { temperature: T });
  }
}

function toPoint({ equation }: Model, T: number, pair: Coexistence): SaturationPoint {
  return {
    temperature: T,
    pressure: pair.pressure * equation.rhor * equation.R * T,
    liquidDensity: pair.liquid * equation.rhor,
    vapourDensity: pair.vapour * equation.rhor,
  };
}
