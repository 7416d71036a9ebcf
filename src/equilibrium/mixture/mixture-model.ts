import type { Fluid } from "../../catalogue/index.js";
import { Mixture, type MixtureEvaluation, noMixtureEvaluation, type PairOf } from "../../equation/index.js";
import { type Model, modelFor } from "../model.js";

/** A phase's mixture equation with the place its evaluations go to. */
export interface PhaseEquation {
  readonly mixture: Mixture;
  readonly at: MixtureEvaluation;
}

/**
 * A set of components with their pairs, at no particular composition: what all solvers of mixtures work on.
 *
 * Two phases have an equation each, because an equation remembers what depends on its composition.
 */
export class MixtureModel {
  readonly fluids: readonly Fluid[];
  readonly count: number;
  /** Gas constant of the reduced quantities, J/(mol K). */
  readonly R: number;
  readonly liquid: PhaseEquation;
  readonly vapour: PhaseEquation;
  /** The pure components, whose saturation gives first guesses. */
  readonly pure: readonly Model[];
  /** Working memory for one set of concentrations. */
  readonly scratch: Float64Array;
  /** Range in which all components' equations are valid, K and Pa. */
  readonly limits: Fluid["limits"];

  constructor(fluids: readonly Fluid[], pairOf: PairOf) {
    this.fluids = fluids;
    this.count = fluids.length;
    const phase = (): PhaseEquation => ({
      mixture: new Mixture(fluids, pairOf),
      at: noMixtureEvaluation(fluids.length),
    });
    this.liquid = phase();
    this.vapour = phase();
    this.R = this.liquid.mixture.R;
    this.pure = fluids.map(modelFor);
    this.scratch = new Float64Array(fluids.length);
    this.limits = {
      minimumTemperature: Math.max(...fluids.map(({ limits }) => limits.minimumTemperature)),
      maximumTemperature: Math.min(...fluids.map(({ limits }) => limits.maximumTemperature)),
      maximumPressure: Math.min(...fluids.map(({ limits }) => limits.maximumPressure)),
    };
  }
}
