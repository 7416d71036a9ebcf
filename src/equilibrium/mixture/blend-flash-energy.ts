import {
  enthalpy,
  entropy,
  internalEnergy,
  isobaricHeatCapacity,
  isochoricHeatCapacity,
  pressureSlope,
  thermalPressure,
} from "../../equation/index.js";
import { NoSuchStateError, NotConvergedError } from "../../units/index.js";
import { type SearchRange, sameness } from "../flash.js";
import { findRoot } from "../root.js";
import {
  type BlendEquilibrium,
  endsOf,
  flashBlendTemperatureDensity,
  oneBlendPhase,
  quantityOfSplit,
  splitAt,
} from "./blend-flash.js";
import type { BlendModel } from "./blend-model.js";
import { edgesAtTemperature } from "./edges.js";
import { splitSlope } from "./phase-split.js";
import { singlePhaseRoot } from "./stability.js";

/** The state at a molar density and a molar internal energy: energy rises with temperature at constant volume. */
export function flashBlendDensityEnergy(
  model: BlendModel,
  rho: number,
  u: number,
  range: SearchRange,
): BlendEquilibrium {
  let found: BlendEquilibrium | undefined;
  let miss = Number.NaN;
  const sample = (T: number, out: { value: number; slope: number }): void => {
    found = flashBlendTemperatureDensity(model, T, rho);
    if (found.phases === 1) {
      const at = model.evaluate(T, rho);
      out.value = model.R * T * internalEnergy(at) - u;
      out.slope = model.R * isochoricHeatCapacity(at);
    } else {
      out.value = quantityOfSplit(model, found.split, "internalEnergy") - u;
      out.slope = splitSlope(model.system, found.split, { what: "volume", value: 1 / rho }, "internalEnergy");
    }
    miss = Math.abs(out.value) / (model.R * T);
  };
  return search(model, sample, () => (miss <= sameness ? found : undefined), range);
}

/** The state at a molar enthalpy and entropy: enthalpy rises with temperature along an isentrope. */
export function flashBlendEnthalpyEntropy(
  model: BlendModel,
  h: number,
  s: number,
  range: SearchRange,
): BlendEquilibrium {
  let found: BlendEquilibrium | undefined;
  let miss = Number.NaN;
  const sample = (T: number, out: { value: number; slope: number }): void => {
    found = flashTemperatureEntropy(model, T, s, range);
    if (found === undefined) {
      // Pressure above the range: far above the enthalpy sought.
      out.value = Number.POSITIVE_INFINITY;
      out.slope = Number.NaN;
      miss = Number.POSITIVE_INFINITY;
      return;
    }
    if (found.phases === 1) {
      const at = model.evaluate(T, found.density);
      out.value = model.R * T * enthalpy(at) - h;
      out.slope = (model.R * isobaricHeatCapacity(at) * pressureSlope(at)) / thermalPressure(at);
      if (Math.abs(model.R * entropy(at) - s) > sameness * model.R) {
        miss = Number.POSITIVE_INFINITY;
        return;
      }
    } else {
      out.value = quantityOfSplit(model, found.split, "enthalpy") - h;
      out.slope = splitSlope(model.system, found.split, { what: "entropy", value: s }, "enthalpy");
    }
    miss = Math.abs(out.value) / (model.R * T);
  };
  return search(model, sample, () => (miss <= sameness ? found : undefined), range);
}

function search(
  model: BlendModel,
  sample: (T: number, out: { value: number; slope: number }) => void,
  answer: () => BlendEquilibrium | undefined,
  { minimum, maximum, inputs }: SearchRange,
): BlendEquilibrium {
  const start = Math.min(0.9 * model.envelope.critical.temperature, (minimum + maximum) / 2);
  const T = findRoot(sample, minimum, maximum, Math.max(start, minimum));
  if (Number.isFinite(T)) {
    const found = answer();
    if (found !== undefined) return found;
    throw new NoSuchStateError(inputs, "its pressure would lie outside the range of the equation");
  }
  if (T === Number.NEGATIVE_INFINITY) {
    throw new NoSuchStateError(inputs, `its temperature would lie below ${minimum} K`);
  }
  if (T === Number.POSITIVE_INFINITY) {
    throw new NoSuchStateError(inputs, `its temperature would lie above ${maximum} K`);
  }
  throw new NotConvergedError(`the temperature of ${model.name}`, inputs);
}

/** A little above the range, so that a state on its edge lies inside the search. */
const aboveRange = 1.01;

/** ln of a density, mol/m3, that no vapour in any range goes below. */
const thinnest = -100;

/** The state at a temperature and a molar entropy; undefined where its pressure would lie above the range. */
function flashTemperatureEntropy(
  model: BlendModel,
  T: number,
  s: number,
  { highestPressure }: SearchRange,
): BlendEquilibrium | undefined {
  const edges = edgesAtTemperature(model, T);
  let low = thinnest;
  if (edges !== undefined) {
    const { dense, thin } = edges;
    const liquid = model.R * entropy(model.evaluate(T, dense.point.density));
    const vapour = model.R * entropy(model.evaluate(T, thin.point.density));
    if (s >= liquid && s <= vapour) {
      return {
        phases: 2,
        split: splitAt(model, endsOf(model, edges), { what: "temperature", value: T }, "entropy", s),
      };
    }
    if (s > vapour) return densityAtEntropy(model, T, s, thinnest, Math.log(thin.point.density));
    low = Math.log(dense.point.density);
  }
  const { system, z } = model;
  const densest = singlePhaseRoot(system, z, T, (aboveRange * highestPressure) / (system.R * T))?.density;
  if (densest === undefined)
    throw new NotConvergedError(`the densest state of ${model.name}`, { temperature: T });
  if (s < model.R * entropy(model.evaluate(T, densest))) return undefined;
  return densityAtEntropy(model, T, s, low, Math.log(densest));
}

/** Solves in ln ρ, in which the entropy of a gas is straight. */
function densityAtEntropy(
  model: BlendModel,
  T: number,
  s: number,
  low: number,
  high: number,
): BlendEquilibrium {
  const start = low === thinnest ? Math.min(idealStart(model, T, s), high) : low;
  const logDensity = findRoot(
    (x, out) => {
      const at = model.evaluate(T, Math.exp(x));
      out.value = s - model.R * entropy(at);
      out.slope = model.R * thermalPressure(at);
    },
    low,
    high,
    start,
  );
  return oneBlendPhase(T, Math.exp(Math.min(Math.max(logDensity, low), high)));
}

/** ln ρ of an ideal gas with this entropy, from the entropy at a density where the blend is one. */
function idealStart(model: BlendModel, T: number, s: number): number {
  return entropy(model.evaluate(T, 1e-6)) - s / model.R + Math.log(1e-6);
}
