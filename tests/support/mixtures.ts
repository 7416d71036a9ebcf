import {
  type Blend,
  estimatePair,
  type Fluid,
  findBlendIn,
  findPairIn,
  listBlends,
  listFluids,
  listPairs,
  type Pair,
} from "../../src/catalogue/index.js";
import { BlendModel, MixtureModel } from "../../src/equilibrium/mixture/index.js";

/** A fluid by its designation, with the equation in use. */
export function fluidOf(designation: string): Fluid {
  const found = listFluids().find((fluid) => fluid.designation === designation);
  if (found === undefined) throw new Error(`no fluid ${designation}`);
  return found;
}

/** The pair of two fluids: from the catalogue, or estimated. */
export function pairOf(first: Fluid, second: Fluid): Pair {
  const found = findPairIn(listPairs(), first.designation, second.designation) ?? estimatePair(first, second);
  if (found === undefined) throw new Error(`no pair ${first.designation}/${second.designation}`);
  return found;
}

/** A mixture model of fluids by designation. */
export function systemOf(...designations: readonly string[]): MixtureModel {
  return new MixtureModel(designations.map(fluidOf), pairOf);
}

/** Mole fractions from amounts in any unit. */
export function fractionsOf(amounts: readonly number[]): Float64Array {
  const sum = amounts.reduce((total, amount) => total + amount, 0);
  return Float64Array.from(amounts, (amount) => amount / sum);
}

/** Mole fractions of a blend as designated. */
export function moleFractionsOf({ components }: Blend): Float64Array {
  return fractionsOf(components.map(({ fluid, massFraction }) => massFraction / fluid.molarMass));
}

/** A blend of the catalogue as designated. */
export function blendModelOf(designation: string): BlendModel {
  const blend = findBlendIn(listBlends(), designation);
  if (blend === undefined) throw new Error(`no blend ${designation}`);
  const fluids = blend.components.map(({ fluid }) => fluid);
  return new BlendModel(new MixtureModel(fluids, pairOf), moleFractionsOf(blend), designation);
}

/** A mixture of any fluids, by amounts. */
export function mixtureOf(parts: Readonly<Record<string, number>>): BlendModel {
  const name = Object.entries(parts)
    .map(([designation, amount]) => `${designation} ${amount}`)
    .join(" + ");
  return new BlendModel(systemOf(...Object.keys(parts)), fractionsOf(Object.values(parts)), name);
}
