import { guessPressure } from "../saturation-curve.js";
import { type Incipient, type IncipientPoint, incipientPoint } from "./incipient.js";
import type { MixtureModel } from "./mixture-model.js";
import { guessLiquidDensity, guessVapourDensity, liquidRoot, vapourRoot } from "./phase-density.js";

/**
 * Vapour pressure of a component, Pa: from its own curve where it boils, continued beyond both ends.
 *
 * @source Wilson, G. M., A Modified Redlich–Kwong Equation of State, 65th National Meeting, AIChE, Cleveland 1969, for
 *   the continuation; a first guess only.
 */
export function componentPressure(model: MixtureModel, i: number, T: number): number {
  const { equation, critical, curve } = model.pure[i]!;
  if (T >= curve.minimumTemperature && T < 0.998 * critical.temperature) return guessPressure(curve, T);
  const { acentricFactor } = equation.fluid;
  return critical.pressure * Math.exp(5.373 * (1 + acentricFactor) * (1 - critical.temperature / T));
}

/** Raoult's law: bubble or dew pressure of an ideal mixture, Pa, and the composition of the incipient phase. */
function raoult(
  model: MixtureModel,
  incipient: Incipient,
  parent: Float64Array,
  T: number,
  composition: Float64Array,
): number {
  let sum = 0;
  for (let i = 0; i < model.count; i++) {
    const pressure = componentPressure(model, i, T);
    composition[i] = incipient === "vapour" ? parent[i]! * pressure : parent[i]! / pressure;
    sum += composition[i]!;
  }
  for (let i = 0; i < model.count; i++) composition[i]! /= sum;
  return incipient === "vapour" ? sum : 1 / sum;
}

/**
 * A start for the bubble or dew point of a composition at a temperature: Raoult's law, improved by a few rounds in which
 * each phase's fugacities correct the other's composition. Undefined where a phase has no density at such a pressure.
 */
export function guessAtTemperature(
  model: MixtureModel,
  incipient: Incipient,
  parent: Float64Array,
  T: number,
  rounds: number,
): IncipientPoint | undefined {
  const { count, liquid, vapour, scratch } = model;
  const { ratio } = liquid.mixture;
  const composition = new Float64Array(count);
  const pressure = raoult(model, incipient, parent, T, composition);
  const point = incipientPoint(incipient, parent);
  point.temperature = T;
  let P = pressure / (model.R * T);
  const isBubble = incipient === "vapour";
  let liquidDensity = Number.NaN;
  for (let round = 0; ; round++) {
    const [x, y] = isBubble ? [parent, composition] : [composition, parent];
    liquid.mixture.setComposition(x);
    const start = Number.isNaN(liquidDensity) ? guessLiquidDensity(model, liquid, x, T) : liquidDensity;
    liquidDensity = liquidRoot(liquid.mixture, T, P, start, liquid.at);
    vapour.mixture.setComposition(y);
    const vapourDensity = vapourRoot(vapour.mixture, T, P, guessVapourDensity(vapour, P), vapour.at);
    if (!(liquidDensity > 0 && vapourDensity > 0)) return undefined;
    const [density, incipientDensity] = isBubble
      ? [liquidDensity, vapourDensity]
      : [vapourDensity, liquidDensity];
    point.density = density;
    for (let i = 0; i < count; i++) point.concentrations[i] = composition[i]! * incipientDensity;
    if (round >= rounds) return point;
    for (let i = 0; i < count; i++) scratch[i] = x[i]! * liquidDensity;
    liquid.mixture.evaluate(T, scratch, liquid.at);
    for (let i = 0; i < count; i++) scratch[i] = y[i]! * vapourDensity;
    vapour.mixture.evaluate(T, scratch, vapour.at);
    let sum = 0;
    for (let i = 0; i < count; i++) {
      const difference = (liquid.at.mu[i]! - vapour.at.mu[i]!) / ratio[i]!;
      composition[i] = parent[i]! * density * Math.exp(isBubble ? difference : -difference);
      sum += composition[i]!;
    }
    for (let i = 0; i < count; i++) composition[i]! /= sum;
    const correction = Math.min(Math.max(sum / incipientDensity, 0.5), 2);
    P *= isBubble ? correction : 1 / correction;
  }
}

/** The temperature at which Raoult's law gives a pressure, K, near enough to start from. */
export function raoultTemperature(
  model: MixtureModel,
  incipient: Incipient,
  parent: Float64Array,
  pressure: number,
): number {
  const composition = new Float64Array(model.count);
  let low = 0.3 * Math.min(...model.pure.map(({ critical }) => critical.temperature));
  let high = 1.2 * Math.max(...model.pure.map(({ critical }) => critical.temperature));
  // Halved in 1/T, in which ln p is nearly straight; a start need not be better.
  for (let halving = 0; halving < 24; halving++) {
    const middle = 2 / (1 / low + 1 / high);
    if (raoult(model, incipient, parent, middle, composition) < pressure) low = middle;
    else high = middle;
  }
  return 2 / (1 / low + 1 / high);
}
