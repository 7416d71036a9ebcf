import { type Evaluation, enthalpy, entropy, isobaricHeatCapacity } from "../../equation/index.js";
import { NoSuchStateError, NotConvergedError } from "../../units/index.js";
import { type SearchRange, sameness } from "../flash.js";
import { findRoot } from "../root.js";
import { type BlendEquilibrium, oneBlendPhase, quantityOf, splitAt } from "./blend-flash.js";
import type { BlendModel } from "./blend-model.js";
import { edgesAtPressure } from "./edges.js";
import { guessLiquidDensity, guessVapourDensity, liquidRoot, vapourRoot } from "./phase-density.js";
import { singlePhaseRoot } from "./stability.js";

type Property = "enthalpy" | "entropy";

/** Which density root one phase has along an isobar: below, above or without a two-phase region. */
type Side = "liquid" | "vapour" | "only";

/** The state at a pressure and a molar enthalpy or entropy, without integration constant. */
export function flashBlendPressure(
  model: BlendModel,
  pressure: number,
  what: Property,
  target: number,
  range: SearchRange,
): BlendEquilibrium {
  const edges = edgesAtPressure(model, pressure);
  if (edges === undefined) return solveAlong(model, pressure, what, target, "only", range, Number.NaN);
  if (edges.dense === undefined) {
    // Colder than this, it would be a mixture of phases whose bubble point is not known, or below what was followed.
    const minimum = Math.max(range.minimum, edges.thin?.point.temperature ?? model.envelope.coldest.dew);
    return solveAlong(model, pressure, what, target, "vapour", { ...range, minimum }, Number.NaN);
  }
  const { dense, thin } = edges;
  const low = quantityOf(model, dense.point.temperature, dense.point.density, what, 0);
  const lowSlope = slopeOf(what, model.R, model.at);
  const high = quantityOf(model, thin.point.temperature, thin.point.density, what, 1);
  const highSlope = slopeOf(what, model.R, model.at);
  if (target >= low && target <= high) {
    return { phases: 2, split: splitAt(model, edges, { what: "pressure", value: pressure }, what, target) };
  }
  const single = dense.line === thin.line || pressure > model.envelope.critical.pressure;
  return target < low
    ? solveAlong(
        model,
        pressure,
        what,
        target,
        single ? "only" : "liquid",
        { ...range, maximum: dense.point.temperature },
        dense.point.temperature + (target - low) / lowSlope,
      )
    : solveAlong(
        model,
        pressure,
        what,
        target,
        single ? "only" : "vapour",
        { ...range, minimum: thin.point.temperature },
        thin.point.temperature + (target - high) / highSlope,
      );
}

function slopeOf(what: Property, R: number, at: Evaluation): number {
  const cp = R * isobaricHeatCapacity(at);
  return what === "enthalpy" ? cp : cp / at.T;
}

/** Searches the isobar, on one side of the two-phase region, for the temperature of a property. */
function solveAlong(
  model: BlendModel,
  pressure: number,
  what: Property,
  target: number,
  side: Side,
  { minimum, maximum, inputs }: SearchRange,
  start: number,
): BlendEquilibrium {
  let density = Number.NaN;
  let miss = Number.NaN;
  const sample = (T: number, out: { value: number; slope: number }): void => {
    density = densityAlong(model, T, pressure, side);
    const at = model.evaluate(T, density);
    const value = what === "enthalpy" ? model.R * T * enthalpy(at) : model.R * entropy(at);
    out.value = value - target;
    out.slope = slopeOf(what, model.R, at);
    miss = Math.abs(out.value) / (what === "enthalpy" ? model.R * T : model.R);
  };
  const T = findRoot(sample, minimum, maximum, Number.isNaN(start) ? (minimum + maximum) / 2 : start);
  if (Number.isFinite(T) && miss <= sameness) return oneBlendPhase(T, density);
  if (T === Number.NEGATIVE_INFINITY) {
    throw new NoSuchStateError(inputs, `its temperature would lie below ${minimum} K`);
  }
  if (T === Number.POSITIVE_INFINITY) {
    throw new NoSuchStateError(inputs, `its temperature would lie above ${maximum} K`);
  }
  throw new NotConvergedError(`the temperature of ${model.name}`, inputs);
}

function densityAlong(model: BlendModel, T: number, pressure: number, side: Side): number {
  const { system, z } = model;
  const P = pressure / (system.R * T);
  let density: number;
  if (side === "only") {
    density = singlePhaseRoot(system, z, T, P)?.density ?? Number.NaN;
  } else {
    const phase = system[side];
    phase.mixture.setComposition(z);
    density =
      side === "liquid"
        ? liquidRoot(phase.mixture, T, P, guessLiquidDensity(system, phase, z, T), phase.at)
        : vapourRoot(phase.mixture, T, P, guessVapourDensity(phase, P), phase.at);
  }
  if (!(density > 0)) {
    throw new NotConvergedError(`the density of ${model.name}`, { temperature: T, pressure });
  }
  return density;
}
