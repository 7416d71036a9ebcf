import { compressibility } from "../equation/index.js";
import type { BoundaryPoint, IncipientPoint, PhaseSplit } from "../equilibrium/index.js";
import { densityOf } from "../equilibrium/index.js";
import { type BlendOwner, massFractionsOf, substanceOf } from "./blend-owner.js";
import { stateOf } from "./single-phase.js";
import { mixtureOfPhases } from "./two-phase.js";
import type { Saturation, SinglePhaseState, TwoPhaseState } from "./types.js";

/** The state of the blend in one phase, at a temperature and a molar density. */
export function blendPhaseState(
  owner: BlendOwner,
  temperature: number,
  molarDensity: number,
  options: { readonly pressure?: number; readonly extrapolated: boolean },
): SinglePhaseState {
  const { model } = owner;
  const { z } = model;
  const substance = substanceOf(owner, z);
  const { critical } = model.envelope;
  const at = model.evaluate(temperature, molarDensity);
  const pressure = options.pressure ?? molarDensity * model.R * temperature * compressibility(at);
  const { extrapolated } = options;
  return stateOf(substance, substance.offsets, at, { pressure, quality: undefined, extrapolated, critical });
}

/** One phase of an equilibrium, from its concentrations. */
function saturatedPhase(
  owner: BlendOwner,
  temperature: number,
  pressure: number,
  concentrations: Float64Array,
  quality: 0 | 1,
  extrapolated: boolean,
): SinglePhaseState {
  const { model } = owner;
  const rho = densityOf(concentrations);
  const x = concentrations.map((c) => c / rho);
  const substance = substanceOf(owner, x);
  const { critical } = model.envelope;
  const at = model.evaluatePhase(temperature, rho, x);
  return stateOf(substance, substance.offsets, at, { pressure, quality, extrapolated, critical });
}

function saturationOfPhases(
  owner: BlendOwner,
  { temperature, pressure }: { readonly temperature: number; readonly pressure: number },
  liquidConcentrations: Float64Array,
  vapourConcentrations: Float64Array,
  extrapolated: boolean,
): Saturation {
  const liquid = saturatedPhase(owner, temperature, pressure, liquidConcentrations, 0, extrapolated);
  const vapour = saturatedPhase(owner, temperature, pressure, vapourConcentrations, 1, extrapolated);
  return { temperature, pressure, liquid, vapour, latentHeat: vapour.enthalpy - liquid.enthalpy };
}

/** Both phases at a bubble or dew point. */
export function boundarySaturation(
  owner: BlendOwner,
  { line, point }: BoundaryPoint,
  extrapolated: boolean,
): Saturation {
  const parent = parentConcentrations(point);
  const [liquid, vapour] =
    line === "bubble" ? [parent, point.concentrations] : [point.concentrations, parent];
  return saturationOfPhases(owner, point, liquid, vapour, extrapolated);
}

function parentConcentrations({ parent, density }: IncipientPoint): Float64Array {
  return parent.map((z) => z * density);
}

/** The state of a blend in two phases. */
export function splitState(owner: BlendOwner, split: PhaseSplit, extrapolated: boolean): TwoPhaseState {
  const saturation = splitSaturation(owner, split, extrapolated);
  const { mixture } = owner.model.system.liquid;
  const mass = (concentrations: Float64Array, volume: number): number => {
    const rho = densityOf(concentrations);
    return volume * rho * mixture.molarMassOf(concentrations.map((c) => c / rho));
  };
  const liquid = mass(split.liquid, split.liquidVolume);
  const vapour = mass(split.vapour, split.vapourVolume);
  // A volume may be a rounding below nothing.
  const quality = Math.min(Math.max(vapour / (liquid + vapour), 0), 1);
  return mixtureOfPhases(saturation, quality, massFractionsOf(owner.model, owner.model.z));
}

/** Both phases of a split. */
export function splitSaturation(owner: BlendOwner, split: PhaseSplit, extrapolated: boolean): Saturation {
  return saturationOfPhases(owner, split, split.liquid, split.vapour, extrapolated);
}
