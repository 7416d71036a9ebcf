import type { MixtureEvaluation } from "../../equation/index.js";
import { solveLinear } from "./linear.js";
import type { MixtureModel, PhaseEquation } from "./mixture-model.js";
import { isLocallyStable, isOuterLiquid } from "./phase-density.js";

/** Which phase there is only a trace of: the vapour at a bubble point, the liquid at a dew point. */
export type Incipient = "vapour" | "liquid";

/**
 * A point at which a phase of given composition, the parent, begins to form another, the incipient phase. Mutable: the
 * solver improves it in place.
 */
export interface IncipientPoint {
  readonly incipient: Incipient;
  /** Temperature, K. */
  temperature: number;
  /** Pressure, Pa, taken from the thinner phase, where no large numbers cancel. */
  pressure: number;
  /** Mole fractions of the parent. */
  readonly parent: Float64Array;
  /** Molar density of the parent, mol/m3. */
  density: number;
  /** Concentrations of the components in the incipient phase, mol/m3. */
  readonly concentrations: Float64Array;
}

/** What is held fixed beside the parent's composition. */
export type Held =
  | { readonly what: "temperature" }
  | { readonly what: "pressure"; readonly value: number }
  /** ln of a component's concentration in the incipient phase over that in the parent. */
  | { readonly what: "ratio"; readonly component: number; readonly value: number };

const mostSteps = 40;
/** A step this small, in logarithms, is the last: the error left is its square, times a thousand near a critical point. */
const last = 1e-10;
/** Below this, a step that no longer shrinks by half shows the noise of the equations. */
const fine = 1e-6;
/** No variable, in logarithms, is changed by more than this at once. */
const longest = 0.4;
/** Two phases nearer to each other than this, in every concentration, are one. */
const trivial = 1e-3;

/** A fresh point for a composition. */
export function incipientPoint(incipient: Incipient, parent: Float64Array): IncipientPoint {
  return {
    incipient,
    temperature: 0,
    pressure: 0,
    parent,
    density: 0,
    concentrations: new Float64Array(parent.length),
  };
}

/** A copy that shares nothing but the parent's composition. */
export function copyPoint(point: IncipientPoint): IncipientPoint {
  return { ...point, concentrations: Float64Array.from(point.concentrations) };
}

/** Evaluates both phases of a point. */
export function evaluatePoint(
  model: MixtureModel,
  point: IncipientPoint,
): { readonly parent: MixtureEvaluation; readonly incipient: MixtureEvaluation } {
  const [parent, incipient] = phasesOf(model, point);
  const concentrations = model.scratch;
  for (let i = 0; i < model.count; i++) concentrations[i] = point.parent[i]! * point.density;
  parent.mixture.evaluate(point.temperature, concentrations, parent.at);
  incipient.mixture.evaluate(point.temperature, point.concentrations, incipient.at);
  return { parent: parent.at, incipient: incipient.at };
}

function phasesOf(
  model: MixtureModel,
  { incipient }: IncipientPoint,
): readonly [PhaseEquation, PhaseEquation] {
  return incipient === "vapour" ? [model.liquid, model.vapour] : [model.vapour, model.liquid];
}

/**
 * Fills in the N + 1 conditions of equilibrium, equal chemical potentials and equal pressure, and their derivatives by
 * (ln ρ_parent, ln ρᵢ of the incipient phase, ln T): N + 2 columns, rows of width N + 2.
 */
export function conditionsOf(
  model: MixtureModel,
  point: IncipientPoint,
  residual: Float64Array,
  jacobian: Float64Array,
): void {
  const { count } = model;
  const { parent, incipient } = evaluatePoint(model, point);
  const { ratio } = model.liquid.mixture;
  const width = count + 2;
  for (let i = 0; i < count; i++) {
    const row = i * width;
    residual[i] =
      ratio[i]! * Math.log(point.concentrations[i]! / (point.parent[i]! * point.density)) +
      incipient.mu[i]! -
      parent.mu[i]!;
    jacobian[row] = -parent.pressureBy[i]!;
    for (let j = 0; j < count; j++) {
      jacobian[row + 1 + j] = incipient.x[j]! * incipient.hessian[i * count + j]! + (i === j ? ratio[i]! : 0);
    }
    jacobian[row + 1 + count] = incipient.muT[i]! - parent.muT[i]!;
  }
  const row = count * width;
  residual[count] = incipient.pressure - parent.pressure;
  let slope = 0;
  for (let j = 0; j < count; j++) {
    slope += parent.x[j]! * parent.pressureBy[j]!;
    jacobian[row + 1 + j] = point.concentrations[j]! * incipient.pressureBy[j]!;
  }
  jacobian[row] = -point.density * slope;
  jacobian[row + 1 + count] = incipient.pressureT - parent.pressureT;
}

/** The row of the condition that is held, and how far it is missed. */
function holdRow(model: MixtureModel, point: IncipientPoint, held: Held, row: Float64Array): number {
  const { count } = model;
  const [parent, incipient] = phasesOf(model, point);
  row.fill(0);
  switch (held.what) {
    case "temperature":
      row[count + 1] = 1;
      return 0;
    case "ratio": {
      row[0] = -1;
      row[1 + held.component] = 1;
      const c = held.component;
      return Math.log(point.concentrations[c]! / (point.parent[c]! * point.density)) - held.value;
    }
    case "pressure": {
      // From the vapour.
      const { at } = point.incipient === "vapour" ? incipient : parent;
      if (point.incipient === "vapour") {
        for (let j = 0; j < count; j++) {
          row[1 + j] = (point.concentrations[j]! * at.pressureBy[j]!) / at.pressure;
        }
      } else {
        let slope = 0;
        for (let j = 0; j < count; j++) slope += at.x[j]! * at.pressureBy[j]!;
        row[0] = (point.density * slope) / at.pressure;
      }
      row[count + 1] = 1 + at.pressureT / at.pressure;
      return Math.log((at.pressure * model.R * point.temperature) / held.value);
    }
  }
}

/**
 * Improves a point to equilibrium by Newton's method in the logarithms of densities, concentrations and temperature, and
 * says whether it got to one with two different phases.
 */
export function solveIncipient(model: MixtureModel, point: IncipientPoint, held: Held): boolean {
  const { count } = model;
  const width = count + 2;
  const jacobian = new Float64Array(width * width);
  const residual = new Float64Array(width);
  const row = new Float64Array(width);
  let previous = Number.POSITIVE_INFINITY;
  for (let step = 0; step < mostSteps; step++) {
    conditionsOf(model, point, residual, jacobian);
    const missed = holdRow(model, point, held, row);
    jacobian.set(row, (count + 1) * width);
    residual[count + 1] = missed;
    if (!solveLinear(jacobian, residual, width)) return false;
    let size = 0;
    for (let k = 0; k < width; k++) size = Math.max(size, Math.abs(residual[k]!));
    if (!Number.isFinite(size)) return false;
    applyStep(point, residual, size > longest ? longest / size : 1);
    if (size < last || (size < fine && size >= previous / 2)) return finish(model, point, held);
    previous = size;
  }
  return false;
}

/** Subtracts a step in the logarithms from a point's variables. */
export function applyStep(point: IncipientPoint, step: Float64Array, factor: number): void {
  const count = point.parent.length;
  point.density *= Math.exp(-factor * step[0]!);
  for (let i = 0; i < count; i++) point.concentrations[i]! *= Math.exp(-factor * step[1 + i]!);
  point.temperature *= Math.exp(-factor * step[1 + count]!);
}

function finish(model: MixtureModel, point: IncipientPoint, held: Held): boolean {
  const { parent, incipient } = evaluatePoint(model, point);
  let gap = 0;
  for (let i = 0; i < model.count; i++) {
    gap = Math.max(gap, Math.abs(Math.log(point.concentrations[i]! / (point.parent[i]! * point.density))));
  }
  if (!(gap > trivial)) return false;
  const thinner = parent.rho < incipient.rho ? parent : incipient;
  if (!isLocallyStable(thinner, model.liquid.mixture.ratio)) return false;
  point.pressure = held.what === "pressure" ? held.value : thinner.pressure * model.R * point.temperature;
  return point.pressure > 0 && Number.isFinite(point.pressure) && isOuterLiquid(model, point.pressure);
}
