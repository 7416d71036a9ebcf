import {
  type Evaluation,
  enthalpy,
  entropy,
  isobaricHeatCapacity,
  pressureSlope,
  thermalPressure,
} from "../equation/index.js";
import { NoSuchStateError, NotConvergedError } from "../units/index.js";
import { type Branch, densityOnBranch } from "./density.js";
import { type Equilibrium, evaluate, onePhase, type SearchRange, sameness, twoPhase } from "./flash.js";
import { criticalMargin, type Model, rounding } from "./model.js";
import { findRoot } from "./root.js";
import { saturationAtEnd, saturationAtPressure } from "./saturation.js";

/** A molar property that rises with temperature at constant pressure, without integration constant. */
interface Property {
  value(R: number, at: Evaluation): number;
  slope(R: number, at: Evaluation): number;
  /** The size of a large change: RT or R. */
  unit(R: number, T: number): number;
}

const molarEnthalpy: Property = {
  value: (R, at) => R * at.T * enthalpy(at),
  slope: (R, at) => R * isobaricHeatCapacity(at),
  unit: (R, T) => R * T,
};

const molarEntropy: Property = {
  value: (R, at) => R * entropy(at),
  slope: (R, at) => (R * isobaricHeatCapacity(at)) / at.T,
  unit: (R) => R,
};

/** The state at a pressure and a molar enthalpy (without integration constant), J/mol. */
export function flashPressureEnthalpy(model: Model, p: number, h: number, range: SearchRange): Equilibrium {
  return flashPressure(model, p, h, molarEnthalpy, range);
}

/** The state at a pressure and a molar entropy (without integration constant), J/(mol K). */
export function flashPressureEntropy(model: Model, p: number, s: number, range: SearchRange): Equilibrium {
  return flashPressure(model, p, s, molarEntropy, range);
}

function flashPressure(
  model: Model,
  p: number,
  target: number,
  property: Property,
  range: SearchRange,
): Equilibrium {
  const { R } = model.equation;
  const hottest = saturationAtEnd(model, model.critical.temperature - criticalMargin);
  if (p >= hottest.pressure) return solveOnBranch(model, p, target, property, "fluid", range, Number.NaN);
  const coldest = saturationAtEnd(model, range.minimum);
  if (p < coldest.pressure * (1 - rounding))
    return solveOnBranch(model, p, target, property, "vapour", range, Number.NaN);

  const saturation = saturationAtPressure(model, p);
  const { temperature } = saturation;
  const liquid = property.value(R, evaluate(model, temperature, saturation.liquidDensity));
  const liquidSlope = property.slope(R, model.at);
  const vapour = property.value(R, evaluate(model, temperature, saturation.vapourDensity));
  const vapourSlope = property.slope(R, model.at);
  if (target >= liquid && target <= vapour) {
    return twoPhase(saturation, (target - liquid) / (vapour - liquid));
  }
  return target < liquid
    ? solveOnBranch(
        model,
        p,
        target,
        property,
        "liquid",
        { ...range, maximum: temperature },
        temperature + (target - liquid) / liquidSlope,
      )
    : solveOnBranch(
        model,
        p,
        target,
        property,
        "vapour",
        { ...range, minimum: temperature },
        temperature + (target - vapour) / vapourSlope,
      );
}

/** Searches one branch for the temperature at which the property has its target; density follows along. */
function solveOnBranch(
  model: Model,
  p: number,
  target: number,
  property: Property,
  branch: Branch,
  { minimum, maximum, inputs }: SearchRange,
  start: number,
): Equilibrium {
  const { R } = model.equation;
  let density = Number.NaN;
  let lastT = Number.NaN;
  let miss = Number.NaN;
  let expansion = 0;
  const sample = (T: number, out: { value: number; slope: number }): void => {
    const near = density * (1 - expansion * (T - lastT));
    density = densityOnBranch(model, T, p, sideAt(model, T, branch), near > 0 ? near : Number.NaN);
    const at = evaluate(model, T, density);
    expansion = thermalPressure(at) / (T * pressureSlope(at));
    lastT = T;
    out.value = property.value(R, at) - target;
    out.slope = property.slope(R, at);
    miss = Math.abs(out.value) / property.unit(R, T);
  };
  const T = findRoot(sample, minimum, maximum, Number.isNaN(start) ? (minimum + maximum) / 2 : start);
  if (Number.isFinite(T)) {
    if (!(miss <= sameness)) {
      throw new NoSuchStateError(
        inputs,
        `it lies less than ${criticalMargin} K below the critical temperature, where phases are not told apart`,
      );
    }
    return onePhase(T, density);
  }
  if (T === Number.NEGATIVE_INFINITY) {
    throw new NoSuchStateError(inputs, `its temperature would lie below ${minimum} K`);
  }
  if (T === Number.POSITIVE_INFINITY) {
    throw new NoSuchStateError(inputs, `its temperature would lie above ${maximum} K`);
  }
  throw new NotConvergedError(`the temperature of ${model.equation.fluid.designation}`, inputs);
}

/** Every path ends above the critical temperature; one that starts above the dome passes through compressed liquid. */
function sideAt(model: Model, T: number, branch: Branch): Branch {
  if (T > model.critical.temperature - criticalMargin) return "fluid";
  return branch === "fluid" ? "liquid" : branch;
}
