import { boundaryAtTemperature, densityOf, type PhaseSplit, vesselContents } from "../equilibrium/index.js";
import {
  type Mass,
  NotConvergedError,
  type Pressure,
  type Temperature,
  type Volume,
} from "../units/index.js";
import { massFractionsOf } from "./blend-owner.js";
import { BlendRefrigerant } from "./blend-refrigerant.js";
import type { Refrigerant } from "./types.js";

/** Masses by designation, kg. */
export type Masses = Readonly<Record<string, Mass>>;

/** One phase in a vessel. */
export interface VesselPhase {
  /** Mass, kg. */
  readonly mass: Mass;
  /** Volume, m3. */
  readonly volume: Volume;
  /** Mass fractions by designation. */
  readonly composition: Readonly<Record<string, number>>;
}

/** What a refrigerant does in a closed vessel at a temperature. */
export interface Vessel {
  /** Absolute pressure, Pa. */
  readonly pressure: Pressure;
  /** The liquid; undefined where there is none. */
  readonly liquid: VesselPhase | undefined;
  /** The vapour; undefined where there is none. */
  readonly vapour: VesselPhase | undefined;
}

/**
 * A vessel whose contents change step by step: it starts each search from what it found last.
 *
 * @internal
 */
export class VesselSearch {
  readonly #refrigerant: Refrigerant;
  readonly #temperature: Temperature;
  readonly #volume: Volume;
  #near: PhaseSplit | undefined;

  /**
   * @param refrigerant - A blend, whose composition does not matter here, or a pure refrigerant.
   * @param temperature - Of the vessel, K.
   * @param volume - Inside it, m3.
   */
  constructor(refrigerant: Refrigerant, temperature: Temperature, volume: Volume) {
    this.#refrigerant = refrigerant;
    this.#temperature = temperature;
    this.#volume = volume;
  }

  /** The designations that its masses are counted by. */
  get components(): readonly string[] {
    return Object.keys(this.#refrigerant.composition);
  }

  /**
   * Liquid and vapour of these masses.
   *
   * @throws `no-such-state` or `not-converged` where there is no such equilibrium.
   */
  contentsOf(masses: Masses): Vessel {
    const blend = this.#refrigerant;
    return blend instanceof BlendRefrigerant
      ? this.#blendContents(blend, masses)
      : this.#pureContents(masses);
  }

  /** Bubble and dew pressure of these masses together at the vessel's temperature, Pa. */
  boundaryOf(masses: Masses): { readonly bubble: Pressure; readonly dew: Pressure } {
    const blend = this.#refrigerant;
    const temperature = this.#temperature;
    if (!(blend instanceof BlendRefrigerant)) {
      const { pressure } = blend.saturation({ temperature });
      return { bubble: pressure, dew: pressure };
    }
    const { z } = amountsOf(blend, masses);
    const { system } = blend.model;
    const bubble = boundaryAtTemperature(system, "vapour", z, temperature);
    const dew = boundaryAtTemperature(system, "liquid", z, temperature);
    if (bubble === undefined || dew === undefined) {
      throw new NotConvergedError(`the bubble and dew points of what is left of ${blend.designation}`, {
        temperature,
      });
    }
    return { bubble: bubble.pressure, dew: dew.pressure };
  }

  #pureContents(masses: Masses): Vessel {
    const refrigerant = this.#refrigerant;
    const { composition } = refrigerant;
    const mass = masses[refrigerant.designation]!;
    const volume = this.#volume;
    const state = refrigerant.state({ temperature: this.#temperature, density: mass / volume });
    if (state.phase !== "two-phase") {
      const whole = { mass, volume, composition };
      const isLiquid = state.phase === "liquid";
      return {
        pressure: state.pressure,
        liquid: isLiquid ? whole : undefined,
        vapour: isLiquid ? undefined : whole,
      };
    }
    const part = (share: number, density: number): VesselPhase => ({
      mass: share * mass,
      volume: (share * mass) / density,
      composition,
    });
    return {
      pressure: state.pressure,
      liquid: part(1 - state.quality, state.liquid.density),
      vapour: part(state.quality, state.vapour.density),
    };
  }

  #blendContents(blend: BlendRefrigerant, masses: Masses): Vessel {
    const temperature = this.#temperature;
    const { model } = blend;
    const { amount, z } = amountsOf(blend, masses);
    const found = vesselContents(model.system, z, temperature, this.#volume / amount, this.#near);
    if (found === undefined) {
      throw new NotConvergedError(`liquid and vapour of what is left of ${blend.designation}`, {
        temperature,
        volume: this.#volume,
        ...masses,
      });
    }
    if (found.phases === 1) {
      this.#near = undefined;
      const mass = Object.values(masses).reduce((sum, each) => sum + each, 0);
      const whole = { mass, volume: this.#volume, composition: massFractionsOf(model, z) };
      model.system.liquid.mixture.setComposition(z);
      const isLiquid = found.density > model.system.liquid.mixture.rhor;
      return {
        pressure: found.pressure,
        liquid: isLiquid ? whole : undefined,
        vapour: isLiquid ? undefined : whole,
      };
    }
    const { split } = found;
    this.#near = split;
    const part = (concentrations: Float64Array, volume: number): VesselPhase => {
      const rho = densityOf(concentrations);
      const x = concentrations.map((c) => c / rho);
      return {
        mass: amount * volume * rho * model.system.liquid.mixture.molarMassOf(x),
        volume: amount * volume,
        composition: massFractionsOf(model, x),
      };
    };
    return {
      pressure: split.pressure,
      liquid: part(split.liquid, split.liquidVolume),
      vapour: part(split.vapour, split.vapourVolume),
    };
  }
}

function amountsOf(
  blend: BlendRefrigerant,
  masses: Masses,
): { readonly amount: number; readonly z: Float64Array } {
  const { fluids } = blend.model.system;
  const amounts = Float64Array.from(fluids, ({ designation, molarMass }) => masses[designation]! / molarMass);
  const amount = amounts.reduce((sum, each) => sum + each, 0);
  // A component that is gone leaves a trace: every condition of equilibrium holds its logarithm.
  const z = amounts.map((each) => Math.max(each / amount, 1e-30));
  return { amount, z };
}
