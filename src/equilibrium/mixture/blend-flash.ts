import { compressibility, enthalpy, entropy } from "../../equation/index.js";
import { NoSuchStateError, NotConvergedError } from "../../units/index.js";
import type { BlendModel } from "./blend-model.js";
import { type Edges, edgesAtPressure, edgesAtTemperature, refuseTwoLiquids, splitAtEdge } from "./edges.js";
import { densityOf, type Hold, type PhaseSplit, phaseSplit, solveSplit } from "./phase-split.js";
import { setVolumes, splitFromTrial } from "./split-guess.js";
import { findTrial, singlePhaseRoot } from "./stability.js";

/** A solved state of a blend, molar basis. */
export type BlendEquilibrium =
  | { readonly phases: 1; readonly temperature: number; readonly density: number }
  | { readonly phases: 2; readonly split: PhaseSplit };

/** One phase, at a temperature and a density. */
export function oneBlendPhase(temperature: number, density: number): BlendEquilibrium {
  return { phases: 1, temperature, density };
}

/** Both phases of a two-phase mixture at T < Tc are liquids when the thinner is denser than this, reduced. */
const liquidLike = 1.3;

/** The state at (T, p), its number of phases decided by the tangent-plane test. */
export function flashBlendTemperaturePressure(
  model: BlendModel,
  T: number,
  pressure: number,
): BlendEquilibrium {
  const { system, z } = model;
  const P = pressure / (system.R * T);
  const root = singlePhaseRoot(system, z, T, P);
  const inputs = { temperature: T, pressure };
  if (root === undefined) throw new NotConvergedError(`the density of ${model.name}`, inputs);
  const trial = findTrial(system, z, T, P, root.density);
  if (trial === undefined) return oneBlendPhase(T, root.density);
  const split = splitFromTrial(system, z, T, pressure, trial) ?? splitBetweenEdges(model, T, pressure);
  if (split === undefined) {
    if (root.root === "liquid" && trial.root === "liquid") refuseTwoLiquids(inputs);
    throw new NotConvergedError(`liquid and vapour of ${model.name}`, inputs);
  }
  const thinner = Math.min(densityOf(split.liquid), densityOf(split.vapour));
  system.liquid.mixture.setComposition(z);
  if (thinner > liquidLike * system.liquid.mixture.rhor) refuseTwoLiquids(inputs);
  return { phases: 2, split };
}

function splitBetweenEdges(model: BlendModel, T: number, pressure: number): PhaseSplit | undefined {
  const edges = edgesAtTemperature(model, T);
  if (edges === undefined) return undefined;
  const hold: Hold = { what: "temperature", value: T };
  const [low, high] = [Math.log(edges.thin.point.pressure), Math.log(edges.dense.point.pressure)];
  const fraction = (high - Math.log(pressure)) / (high - low);
  if (!(fraction > 0 && fraction < 1)) return undefined;
  return splitAlong(model, edges, hold, { what: "pressure", value: pressure }, fraction, high, (p) => ({
    what: "pressure",
    value: Math.exp(p),
  }));
}

/** The state at a temperature and a molar density. */
export function flashBlendTemperatureDensity(model: BlendModel, T: number, rho: number): BlendEquilibrium {
  const edges = edgesAtTemperature(model, T);
  if (edges === undefined || rho >= edges.dense.point.density || rho <= edges.thin.point.density) {
    return oneBlendPhase(T, rho);
  }
  const hold: Hold = { what: "temperature", value: T };
  return { phases: 2, split: splitAt(model, edges, hold, "volume", 1 / rho) };
}

/** The two-phase state at a temperature or pressure with a quality by mass, 0 and 1 included. */
export function flashBlendQuality(model: BlendModel, hold: Hold, quality: number): BlendEquilibrium {
  const edges =
    hold.what === "temperature" ? edgesAtTemperature(model, hold.value) : edgesAtPressure(model, hold.value);
  const inputs = { [hold.what]: hold.value, quality };
  if (edges === undefined) throw new NoSuchStateError(inputs, "liquid and vapour do not coexist there");
  if (edges.dense === undefined) {
    const { coldest } = model.envelope;
    throw new NoSuchStateError(inputs, `its bubble point would lie below ${coldest.bubble} K`);
  }
  if (edges.dense.line === edges.thin.line) {
    throw new NoSuchStateError(
      inputs,
      "between the critical point and the end of the two-phase region a quality is met twice or not at all; give the density instead",
    );
  }
  return { phases: 2, split: splitAt(model, edges, hold, "massQuality", quality) };
}

type Extensive = "volume" | "massQuality" | "enthalpy" | "entropy" | "internalEnergy";

/** The split between two edges at which a quantity of the whole, which rises from one to the other, has a value. */
export function splitAt(
  model: BlendModel,
  edges: Edges,
  hold: Hold,
  what: Extensive,
  value: number,
): PhaseSplit {
  const dense = quantityOf(model, edges.dense.point.temperature, edges.dense.point.density, what, 0);
  const thin = quantityOf(model, edges.thin.point.temperature, edges.thin.point.density, what, 1);
  const fraction = (value - dense) / (thin - dense);
  if (fraction === 0) return splitAtEdge(model, edges.dense);
  if (fraction === 1) return splitAtEdge(model, edges.thin);
  const target: Hold = { what, value };
  const found = splitAlong(model, edges, hold, target, fraction, dense, (v) => ({ what, value: v }));
  if (found === undefined) {
    throw new NotConvergedError(`liquid and vapour of ${model.name}`, {
      [hold.what]: hold.value,
      [what]: value,
    });
  }
  return found;
}

/** A quantity of the whole in one phase, per mole; a quality is that of the edge. */
export function quantityOf(
  model: BlendModel,
  T: number,
  rho: number,
  what: Extensive,
  edgeQuality: 0 | 1,
): number {
  if (what === "massQuality") return edgeQuality;
  if (what === "volume") return 1 / rho;
  const at = model.evaluate(T, rho);
  if (what === "entropy") return model.R * entropy(at);
  const h = enthalpy(at);
  return model.R * T * (what === "enthalpy" ? h : h - compressibility(at));
}

const mostHalvings = 10;

/** Tries the target from a mean of both edges, then step by step from the denser edge. */
function splitAlong(
  model: BlendModel,
  edges: Edges,
  hold: Hold,
  target: Hold,
  fraction: number,
  denseCoordinate: number,
  at: (coordinate: number) => Hold,
): PhaseSplit | undefined {
  const { system } = model;
  const guess = meanSplit(model, edges, fraction);
  if (hold.what === "temperature") guess.temperature = hold.value;
  if (solveSplit(system, guess, [hold, target])) return guess;
  let from = splitAtEdge(model, edges.dense);
  let coordinate = denseCoordinate;
  const end = target.what === "pressure" ? Math.log(target.value) : target.value;
  for (let halving = 0; halving < mostHalvings; ) {
    const next = halving === 0 ? end : coordinate + (end - coordinate) / 2 ** halving;
    const candidate = copySplit(from);
    if (solveSplit(system, candidate, [hold, next === end ? target : at(next)])) {
      if (next === end) return candidate;
      from = candidate;
      coordinate = next;
      halving = Math.max(0, halving - 1);
    } else {
      halving++;
    }
  }
  return undefined;
}

/** Concentrations between those of both edges, by logarithms, with volumes by the lever rule. */
function meanSplit(model: BlendModel, edges: Edges, fraction: number): PhaseSplit {
  const dense = splitAtEdge(model, edges.dense);
  const thin = splitAtEdge(model, edges.thin);
  const split = phaseSplit(model.z);
  const between = (left: number, right: number): number => left * (right / left) ** fraction;
  split.temperature = between(dense.temperature, thin.temperature);
  for (let i = 0; i < model.z.length; i++) {
    split.liquid[i] = between(dense.liquid[i]!, thin.liquid[i]!);
    split.vapour[i] = between(dense.vapour[i]!, thin.vapour[i]!);
  }
  setVolumes(split);
  return split;
}

function copySplit(split: PhaseSplit): PhaseSplit {
  return { ...split, liquid: Float64Array.from(split.liquid), vapour: Float64Array.from(split.vapour) };
}
