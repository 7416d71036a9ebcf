import { type Evaluation, enthalpy, entropy, isobaricHeatCapacity } from "../../equation/index.js";
import { NoSuchStateError, NotConvergedError } from "../../units/index.js";
import { type SearchRange, sameness } from "../flash.js";
import { findRoot } from "../root.js";
import { type BlendEquilibrium, coldEndsOf, oneBlendPhase, quantityOfSplit, splitAt } from "./blend-flash.js";
import type { BlendModel } from "./blend-model.js";
import { edgesAtPressure, lowestKnown, refuseTooCold } from "./edges.js";
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
  const { dense, thin } = edges;
  const ends = coldEndsOf(model, edges, pressure);
  if (thin === undefined || ends === undefined) {
    // Vapour down to the lowest temperature at which that is known.
    const known = thin?.point.temperature ?? lowestKnown(model);
    const minimum = Math.max(range.minimum, known);
    const coldest = valueAlong(model, minimum, pressure, what, "vapour");
    if (known > range.minimum && target < coldest) refuseTooCold(model, range.inputs);
    return solveAlong(model, pressure, what, target, "vapour", { ...range, minimum }, Number.NaN);
  }
  const { R } = model;
  const high = quantityOfSplit(model, ends.thin, what);
  const alone = dense?.line === thin.line || pressure > model.envelope.critical.pressure;
  if (target > high) {
    const T = thin.point.temperature;
    const slope = slopeOf(what, R, model.evaluate(T, thin.point.density));
    const start = T + (target - high) / slope;
    return solveAlong(
      model,
      pressure,
      what,
      target,
      alone ? "only" : "vapour",
      { ...range, minimum: T },
      start,
    );
  }
  const low = quantityOfSplit(model, ends.dense, what);
  if (target >= low) {
    return { phases: 2, split: splitAt(model, ends, { what: "pressure", value: pressure }, what, target) };
  }
  if (dense === undefined) {
    refuseTooCold(model, range.inputs);
  }
  const T = dense.point.temperature;
  const slope = slopeOf(what, R, model.evaluate(T, dense.point.density));
  const start = T + (target - low) / slope;
  return solveAlong(
    model,
    pressure,
    what,
    target,
    alone ? "only" : "liquid",
    { ...range, maximum: T },
    start,
  );
}

function slopeOf(what: Property, R: number, at: Evaluation): number {
  const cp = R * isobaricHeatCapacity(at);
  return what === "enthalpy" ? cp : cp / at.T;
}

/** The property at a temperature of the isobar, on one side of the two-phase region. */
function valueAlong(model: BlendModel, T: number, pressure: number, what: Property, side: Side): number {
  const at = model.evaluate(T, densityAlong(model, T, pressure, side));
  return what === "enthalpy" ? model.R * T * enthalpy(at) : model.R * entropy(at);
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
