import { NoSuchStateError, NotConvergedError } from "../units/index.js";
import type { Coexistence } from "./coexistence.js";
import { cubicDensity } from "./cubic-guess.js";
import { criticalMargin, type Model } from "./model.js";
import { findRoot } from "./root.js";
import { saturationAtTemperature } from "./saturation.js";
import { guessCoexistence, guessPressure } from "./saturation-curve.js";

/** Which side of the dome a density lies on; above the critical temperature there is only `fluid`. */
export type Branch = "liquid" | "vapour" | "fluid";

/** The series of the saturation pressure is better than this, so beyond it that series decides the branch alone. */
const pressureDoubt = 1e-5;
/** The same for its densities, which are steeper near the critical point; the spinodals lie farther away than this. */
const edgeDoubt = 1e-3;
/** Nearer to the saturation pressure than this, temperature and pressure do not tell liquid from vapour. */
const tooNear = 1e-11;

/** The branch on which the one stable state at (T, p) lies. */
function branchAt(model: Model, T: number, p: number): Branch {
  if (T > model.critical.temperature - criticalMargin) return "fluid";
  const guess = guessPressure(model.curveFor(T), T);
  if (Math.abs(p / guess - 1) > pressureDoubt) return p > guess ? "liquid" : "vapour";
  const { pressure } = saturationAtTemperature(model, T);
  if (Math.abs(p / pressure - 1) < tooNear) {
    throw new NoSuchStateError(
      { temperature: T, pressure: p },
      "the pair lies on the saturation curve, where it does not tell liquid from vapour; give the quality instead",
    );
  }
  return p > pressure ? "liquid" : "vapour";
}

/** Molar density of the stable state at (T, p), mol/m3. */
export function densityAt(model: Model, T: number, p: number): number {
  return densityOnBranch(model, T, p, branchAt(model, T, p));
}

/**
 * Molar density at (T, p) on a given branch, mol/m3: a bracketed Newton search that cannot leave the branch.
 *
 * @param start - A close value, where the caller has one.
 */
export function densityOnBranch(
  model: Model,
  T: number,
  p: number,
  branch: Branch,
  start: number = Number.NaN,
): number {
  const { equation, critical } = model;
  const { rhor } = equation;
  const tau = equation.Tr / T;
  const target = p / (rhor * equation.R * T);
  let low: number;
  let high: number;
  let guess: number;
  if (branch === "fluid") {
    low = Math.min(target, critical.density / rhor) * 1e-3;
    high = Math.max(densestFor(model), 2 * low);
    guess = cubicDensity(T, p, critical, equation.fluid.acentricFactor, equation.R) / rhor;
  } else {
    const edge: Coexistence = { liquid: 0, vapour: 0, pressure: 0 };
    guessCoexistence(model.curveFor(T), T, edge);
    if (branch === "vapour") {
      const edgePressure = guessPressure(model.curveFor(T), T) / (rhor * equation.R * T);
      low = target * 1e-3;
      high = edge.vapour * (1 + edgeDoubt);
      // p = δ − cδ² through the saturated vapour, solved without cancellation.
      const c = Math.max(0, (edge.vapour - edgePressure) / (edge.vapour * edge.vapour));
      guess = (2 * target) / (1 + Math.sqrt(Math.max(0, 1 - 4 * c * target)));
    } else {
      low = edge.liquid * (1 - edgeDoubt);
      high = densestFor(model) * colderRatio(model, T, edge.liquid);
      guess = edge.liquid;
    }
  }
  const delta = solvePressure(model, tau, target, low, high, Number.isNaN(start) ? guess : start / rhor);
  if (delta === Number.POSITIVE_INFINITY && branch !== "vapour") {
    throw new NoSuchStateError(
      { temperature: T, pressure: p },
      `this far outside its range the equation has no ${branch} so dense`,
    );
  }
  if (!Number.isFinite(delta)) {
    throw new NotConvergedError(`the ${branch} density of ${equation.fluid.designation}`, {
      temperature: T,
      pressure: p,
    });
  }
  return delta * rhor;
}

/** The reduced density between `low` and `high` at which p/(ρr R T) has its target. */
function solvePressure(
  { equation, at }: Model,
  tau: number,
  target: number,
  low: number,
  high: number,
  start: number,
): number {
  const { residual } = at;
  return findRoot(
    (delta, out) => {
      equation.evaluateResidual(tau, delta, residual);
      out.value = delta * (1 + delta * residual.phi_d) - target;
      out.slope = 1 + delta * (2 * residual.phi_d + delta * residual.phi_dd);
    },
    low,
    high,
    start,
  );
}

/** Margin for rounding, and for pressures a little beyond twice the highest. */
const denserStill = 1.04;

/** How much denser the saturated liquid is than the coldest in the range: above 1 for who extrapolates below it. */
function colderRatio(model: Model, T: number, liquid: number): number {
  const { minimumTemperature } = model.equation.fluid.limits;
  if (T >= minimumTemperature) return 1;
  const coldest: Coexistence = { liquid: 0, vapour: 0, pressure: 0 };
  guessCoexistence(model.curve, minimumTemperature, coldest);
  return liquid / coldest.liquid;
}

/**
 * The highest reduced density a search may look at: that of the coldest liquid under twice the highest pressure.
 * Far beyond it some equations fold back to negative pressures.
 */
function densestFor(model: Model): number {
  if (model.densest === undefined) {
    const { equation, critical } = model;
    const { minimumTemperature, maximumPressure } = equation.fluid.limits;
    const { liquidDensity } = saturationAtTemperature(model, minimumTemperature);
    const edge = liquidDensity / equation.rhor;
    const pressure = 2 * Math.max(maximumPressure, critical.pressure);
    const target = pressure / (equation.rhor * equation.R * minimumTemperature);
    const found = solvePressure(model, equation.Tr / minimumTemperature, target, edge, 2 * edge, edge);
    if (!Number.isFinite(found)) {
      throw new NotConvergedError(`the densest liquid of ${equation.fluid.designation}`, { pressure });
    }
    model.densest = denserStill * found;
  }
  return model.densest;
}
