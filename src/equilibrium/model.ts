import type { Fluid } from "../catalogue/index.js";
import { Equation, type Evaluation, noEvaluation } from "../equation/index.js";
import { NotConvergedError } from "../units/index.js";
import { type CoexistenceScratch, coexistenceScratch } from "./coexistence.js";
import { type CriticalPoint, findCriticalPoint } from "./critical.js";
import type { SaturationPoint } from "./saturation.js";
import { type SaturationCurve, traceSaturation } from "./saturation-curve.js";

/** Saturation is answered up to this far below the critical temperature, K. */
export const criticalMargin = 1e-3;

/** A value computed from the end of a range may lie this far beyond it, relative. */
export const rounding = 1e-9;

/** How far below its range an equation may be asked to extrapolate, as a fraction of its lowest temperature. */
const coldReach = 0.85;

/**
 * An equation with what the solvers of this room find out about it once: its critical point and saturation curve,
 * each built on first use in about a millisecond.
 */
export class Model {
  readonly equation: Equation;
  /** Working memory of the solvers. */
  readonly scratch: CoexistenceScratch = coexistenceScratch();
  /** Where solvers evaluate. */
  readonly at: Evaluation = noEvaluation();
  /** Saturation at the few temperatures where ranges end; the saturation solver fills it in. */
  readonly ends: Map<number, SaturationPoint> = new Map();
  /** Reduced density that no search goes beyond; the density solver fills it in. */
  densest: number | undefined;
  #critical: CriticalPoint | undefined;
  #curve: SaturationCurve | undefined;
  #coldCurve: SaturationCurve | undefined;

  constructor(fluid: Fluid) {
    this.equation = new Equation(fluid);
  }

  /** The equation's own critical point. */
  get critical(): CriticalPoint {
    this.#critical ??= findCriticalPoint(this.equation);
    return this.#critical;
  }

  /** The saturation curve over the equation's range. */
  get curve(): SaturationCurve {
    if (this.#curve === undefined) {
      const { minimumTemperature } = this.equation.fluid.limits;
      this.#curve = traceSaturation(this.equation, this.critical, minimumTemperature);
      if (this.#curve === undefined) {
        throw new NotConvergedError(`the saturation curve of ${this.equation.fluid.designation}`, {
          minimumTemperature,
        });
      }
    }
    return this.#curve;
  }

  /** The same curve followed below the equation's range, as far as it can be, for those who ask to extrapolate. */
  get coldCurve(): SaturationCurve {
    if (this.#coldCurve === undefined) {
      const { minimumTemperature } = this.equation.fluid.limits;
      for (let reach = coldReach; reach < 1 && this.#coldCurve === undefined; reach += 0.03) {
        this.#coldCurve = traceSaturation(this.equation, this.critical, reach * minimumTemperature);
      }
      this.#coldCurve ??= this.curve;
    }
    return this.#coldCurve;
  }

  /** The curve that serves a temperature: the ordinary one wherever it reaches. */
  curveFor(T: number): SaturationCurve {
    const { minimumTemperature } = this.equation.fluid.limits;
    return T >= minimumTemperature * (1 - rounding) ? this.curve : this.coldCurve;
  }
}

// Made on first use: nothing at module level that a bundler would have to keep.
let models: WeakMap<Fluid, Model> | undefined;

/** The model of a fluid; the same literal always gives the same one, so its curve is built once. */
export function modelFor(fluid: Fluid): Model {
  models ??= new WeakMap();
  let model = models.get(fluid);
  if (model === undefined) {
    model = new Model(fluid);
    models.set(fluid, model);
  }
  return model;
}
