import { enthalpy, entropy, internalEnergy } from "../../equation/index.js";
import { attempt, NoSuchStateError, NotConvergedError } from "../../units/index.js";
import type { BlendModel } from "./blend-model.js";
import {
  type Edges,
  edgesAtPressure,
  edgesAtTemperature,
  isBesideCritical,
  lowestKnown,
  mayHaveTwoLiquids,
  type PressureEdges,
  refuseTooCold,
  refuseTwoLiquids,
  splitAtEdge,
} from "./edges.js";
import { densityOf, type Hold, type PhaseSplit, phaseSplit, solveSplit } from "./phase-split.js";
import { setVolumes, splitFromTrial } from "./split-guess.js";
import { findTrial, isSplitLiquid, singlePhaseRoot, stablePressure } from "./stability.js";

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

/** Bubble and dew pressures nearer than this, relative, leave no room for a pressure between them. */
const tooNarrow = 1e-7;

/** How near to the critical pressure, relative, is beside the critical point. */
const besidePressure = 1e-4;

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
  const split =
    splitFromTrial(system, z, T, pressure, trial) ??
    splitBetweenEdges(model, T, pressure) ??
    splitOnIsobar(model, T, pressure);
  if (split === undefined) {
    // Beside the critical point itself two phases are not told apart, by temperature and density neither.
    const { critical } = model.envelope;
    const isBeside =
      isBesideCritical(model, T) && Math.abs(pressure / critical.pressure - 1) < besidePressure;
    if (isBeside) return oneBlendPhase(T, root.density);
    refuseNarrow(model, inputs);
    if (root.root === "liquid" && trial.root === "liquid") refuseTwoLiquids(inputs);
    throw new NotConvergedError(`liquid and vapour of ${model.name}`, inputs);
  }
  const thinner = Math.min(densityOf(split.liquid), densityOf(split.vapour));
  system.liquid.mixture.setComposition(z);
  if (thinner > liquidLike * system.liquid.mixture.rhor) refuseTwoLiquids(inputs);
  refuseUnstable(model, split, inputs);
  return { phases: 2, split };
}

/** Where bubble and dew pressure are nearly the same, a pressure between them tells nothing of how much is vapour. */
function refuseNarrow(
  model: BlendModel,
  inputs: { readonly temperature: number; readonly pressure: number },
): void {
  const found = attempt(() => edgesAtTemperature(model, inputs.temperature));
  const edges = found.ok ? found.value : undefined;
  if (edges === undefined || edges.dense.point.pressure / edges.thin.point.pressure - 1 > tooNarrow) return;
  throw new NoSuchStateError(
    inputs,
    "the pair lies between bubble and dew pressure, which are nearly the same; give the quality instead",
  );
}

function splitBetweenEdges(model: BlendModel, T: number, pressure: number): PhaseSplit | undefined {
  const found = attempt(() => edgesAtTemperature(model, T));
  const edges = found.ok ? found.value : undefined;
  if (edges === undefined) return undefined;
  const ends = { dense: splitAtEdge(model, edges.dense), thin: splitAtEdge(model, edges.thin) };
  return splitBetween(model, ends, { what: "temperature", value: T }, "pressure", pressure);
}

/** The same from the edges of the isobar: at the critical temperature of a wide-boiling blend the isotherm has only one. */
function splitOnIsobar(model: BlendModel, T: number, pressure: number): PhaseSplit | undefined {
  const found = attempt(() => {
    const edges = edgesAtPressure(model, pressure);
    return edges && coldEndsOf(model, edges, pressure);
  });
  if (!found.ok || found.value === undefined) return undefined;
  const ends = found.value;
  const hold: Hold = { what: "pressure", value: pressure };
  const fraction = (T - ends.dense.temperature) / (ends.thin.temperature - ends.dense.temperature);
  if (!(fraction > 0 && fraction < 1)) return undefined;
  for (const start of [fraction, 0.5, 0.2, 0.8]) {
    const split = meanSplit(model, ends, start);
    if (solveSplit(model.system, split, [hold, { what: "temperature", value: T }])) return split;
  }
  return undefined;
}

/**
 * Refuses a split whose liquid would itself split: between edges that are stable, too, the model may have two liquids
 * beside the vapour.
 */
function refuseUnstable(
  { system }: BlendModel,
  { temperature, pressure, liquid }: PhaseSplit,
  inputs: Readonly<Record<string, number>>,
): void {
  const density = densityOf(liquid);
  const x = liquid.map((c) => c / density);
  const P = pressure / (system.R * temperature);
  if (isSplitLiquid(system, x, temperature, P, density)) refuseTwoLiquids(inputs);
}

/** The state at a temperature and a molar density. */
export function flashBlendTemperatureDensity(model: BlendModel, T: number, rho: number): BlendEquilibrium {
  if (mayHaveTwoLiquids(model, T)) {
    if (stablePressure(model.system, model.z, T, rho) !== undefined) return oneBlendPhase(T, rho);
    refuseTwoLiquids({ temperature: T, density: rho * model.molarMass });
  }
  const edges = edgesAtTemperature(model, T);
  if (edges === undefined || rho >= edges.dense.point.density || rho <= edges.thin.point.density) {
    return oneBlendPhase(T, rho);
  }
  const hold: Hold = { what: "temperature", value: T };
  return { phases: 2, split: splitAt(model, endsOf(model, edges), hold, "volume", 1 / rho) };
}

/** The two-phase state at a temperature or pressure with a quality by mass, 0 and 1 included. */
export function flashBlendQuality(model: BlendModel, hold: Hold, quality: number): BlendEquilibrium {
  const inputs = { [hold.what]: hold.value, quality };
  const edges =
    hold.what === "temperature" ? edgesAtTemperature(model, hold.value) : edgesAtPressure(model, hold.value);
  if (edges === undefined) throw new NoSuchStateError(inputs, "liquid and vapour do not coexist there");
  const { dense, thin } = edges;
  if (thin !== undefined && dense?.line === thin.line) {
    throw new NoSuchStateError(
      inputs,
      "between the critical point and the end of the two-phase region a quality is met twice or not at all; give the density instead",
    );
  }
  const ends = coldEndsOf(model, edges, hold.value);
  if (ends === undefined || quality < massQualityOf(model, ends.dense)) {
    refuseTooCold(model, inputs);
  }
  return { phases: 2, split: splitAt(model, ends, hold, "massQuality", quality) };
}

type Extensive = "volume" | "massQuality" | "enthalpy" | "entropy" | "internalEnergy";

/** Two solved splits on an isotherm or isobar between which others lie; the denser is the colder on an isobar. */
export interface SplitEnds {
  readonly dense: PhaseSplit;
  readonly thin: PhaseSplit;
}

/** Both edges as ends. */
export function endsOf(model: BlendModel, { dense, thin }: Edges): SplitEnds {
  return { dense: splitAtEdge(model, dense), thin: splitAtEdge(model, thin) };
}

/**
 * The ends of the part of an isobar in two phases that is known: where the bubble point is too cold, from the lowest known
 * temperature on. Undefined where that leaves nothing.
 */
export function coldEndsOf(model: BlendModel, edges: PressureEdges, pressure: number): SplitEnds | undefined {
  const { dense, thin } = edges;
  if (thin === undefined) return undefined;
  if (dense !== undefined) return endsOf(model, { dense, thin });
  const T = lowestKnown(model);
  if (!(T < thin.point.temperature)) return undefined;
  // Where even that has two liquids, nothing between is known.
  const found = attempt(() => flashBlendTemperaturePressure(model, T, pressure));
  if (!found.ok || found.value.phases === 1) return undefined;
  return { dense: found.value.split, thin: splitAtEdge(model, thin) };
}

/** The split between two ends at which a quantity of the whole, which rises from one to the other, has a value. */
export function splitAt(
  model: BlendModel,
  ends: SplitEnds,
  hold: Hold,
  what: Extensive,
  value: number,
): PhaseSplit {
  const found = splitBetween(model, ends, hold, what, value);
  const inputs = { [hold.what]: hold.value, [what]: value };
  if (found === undefined) throw new NotConvergedError(`liquid and vapour of ${model.name}`, inputs);
  refuseUnstable(model, found, inputs);
  return found;
}

/** A quantity of the whole in two phases, per mole. */
export function quantityOfSplit(model: BlendModel, split: PhaseSplit, what: Extensive): number {
  if (what === "massQuality") return massQualityOf(model, split);
  if (what === "volume") return split.liquidVolume + split.vapourVolume;
  const part = (concentrations: Float64Array, volume: number): number => {
    if (volume === 0) return 0;
    const rho = densityOf(concentrations);
    const x = concentrations.map((c) => c / rho);
    const R = model.system.liquid.mixture.gasConstantOf(x);
    const at = model.evaluatePhase(split.temperature, rho, x);
    if (what === "entropy") return volume * rho * R * entropy(at);
    const energy = what === "enthalpy" ? enthalpy(at) : internalEnergy(at);
    return volume * rho * R * split.temperature * energy;
  };
  return part(split.liquid, split.liquidVolume) + part(split.vapour, split.vapourVolume);
}

function massQualityOf(model: BlendModel, split: PhaseSplit): number {
  const { molarMass } = model.system.liquid.mixture;
  let liquid = 0;
  let vapour = 0;
  molarMass.forEach((M, i) => {
    liquid += M * split.liquid[i]! * split.liquidVolume;
    vapour += M * split.vapour[i]! * split.vapourVolume;
  });
  return vapour / (liquid + vapour);
}

const mostHalvings = 10;

/** Tries the target from a mean of both ends, then step by step from the denser end. */
function splitBetween(
  model: BlendModel,
  ends: SplitEnds,
  hold: Hold,
  what: Extensive | "pressure",
  value: number,
): PhaseSplit | undefined {
  const { system } = model;
  const amountOf = (split: PhaseSplit): number =>
    what === "pressure" ? split.pressure : quantityOfSplit(model, split, what);
  // Pressure falls and volume rises from the denser end on by orders of magnitude: steps are of their logarithms.
  const isLogarithmic = what === "pressure" || what === "volume";
  const coordinateOf = (v: number): number => (isLogarithmic ? Math.log(v) : v);
  const at = (c: number): Hold => ({ what, value: isLogarithmic ? Math.exp(c) : c });
  const [first, last] = [amountOf(ends.dense), amountOf(ends.thin)];
  if (value === first) return ends.dense;
  if (value === last) return ends.thin;
  const start = coordinateOf(first);
  const end = coordinateOf(value);
  const fraction =
    what === "pressure" ? (end - start) / (coordinateOf(last) - start) : (value - first) / (last - first);
  const target: Hold = { what, value };
  const guess = meanSplit(model, ends, Math.min(Math.max(fraction, 0), 1));
  if (hold.what === "temperature") guess.temperature = hold.value;
  if (solveSplit(system, guess, [hold, target])) return guess;
  let from = ends.dense;
  let coordinate = start;
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

/** Concentrations between those of both ends, by logarithms, with volumes by the lever rule. */
function meanSplit(model: BlendModel, { dense, thin }: SplitEnds, fraction: number): PhaseSplit {
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
