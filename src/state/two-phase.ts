import type { SaturationPoint } from "../equilibrium/index.js";
import { type Owner, singlePhaseState } from "./single-phase.js";
import type { Mixing, Refrigerant, Saturation, SinglePhaseState, TwoPhaseState } from "./types.js";

/** Liquid and vapour together; every extensive property is the mean of both, weighted by mass. */
class TwoPhase implements TwoPhaseState {
  readonly phase = "two-phase";
  readonly temperature: number;
  readonly pressure: number;
  readonly density: number;
  readonly quality: number;
  readonly enthalpy: number;
  readonly entropy: number;
  readonly internalEnergy: number;
  readonly gibbsEnergy: number;
  readonly helmholtzEnergy: number;
  readonly cp0: number;
  readonly compressibilityFactor: number;
  readonly latentHeat: number;
  readonly liquid: SinglePhaseState;
  readonly vapour: SinglePhaseState;
  readonly composition: Readonly<Record<string, number>>;
  readonly extrapolated: boolean;

  constructor(
    { liquid, vapour, temperature, pressure, latentHeat }: Saturation,
    quality: number,
    composition: Readonly<Record<string, number>>,
  ) {
    const mean = (of: (part: SinglePhaseState) => number): number =>
      of(liquid) + quality * (of(vapour) - of(liquid));
    this.temperature = temperature;
    this.pressure = pressure;
    this.quality = quality;
    this.density = 1 / mean((part) => 1 / part.density);
    this.enthalpy = mean((part) => part.enthalpy);
    this.entropy = mean((part) => part.entropy);
    this.internalEnergy = mean((part) => part.internalEnergy);
    this.gibbsEnergy = mean((part) => part.gibbsEnergy);
    this.helmholtzEnergy = mean((part) => part.helmholtzEnergy);
    this.cp0 = mean((part) => part.cp0);
    this.compressibilityFactor =
      pressure / (this.density * liquid.refrigerant.specificGasConstant * temperature);
    this.latentHeat = latentHeat;
    this.liquid = liquid;
    this.vapour = vapour;
    this.composition = composition;
    this.extrapolated = liquid.extrapolated;
  }

  get refrigerant(): Refrigerant {
    return this.liquid.refrigerant;
  }

  get mixing(): Mixing | undefined {
    return this.refrigerant.mixing;
  }

  /** All properties, with the refrigerant by its designation. */
  toJSON(): Record<string, unknown> {
    return {
      refrigerant: this.refrigerant.designation,
      ...(this as object),
      ...(this.mixing && { mixing: this.mixing }),
    };
  }
}

/** Makes both saturated states of a solved point. */
export function saturationOf(owner: Owner, point: SaturationPoint, extrapolated: boolean): Saturation {
  const { temperature, pressure } = point;
  const liquid = singlePhaseState(owner, temperature, point.liquidDensity, {
    pressure,
    quality: 0,
    extrapolated,
  });
  const vapour = singlePhaseState(owner, temperature, point.vapourDensity, {
    pressure,
    quality: 1,
    extrapolated,
  });
  return { temperature, pressure, liquid, vapour, latentHeat: vapour.enthalpy - liquid.enthalpy };
}

/** Makes the state of a solved point with a mass fraction of vapour. */
export function twoPhaseState(
  owner: Owner,
  point: SaturationPoint,
  quality: number,
  extrapolated: boolean,
): TwoPhaseState {
  return mixtureOfPhases(saturationOf(owner, point, extrapolated), quality, owner.composition);
}

/** Makes the state of two phases in equilibrium; the composition is that of both together. */
export function mixtureOfPhases(
  saturation: Saturation,
  quality: number,
  composition: Readonly<Record<string, number>>,
): TwoPhaseState {
  return new TwoPhase(saturation, quality, composition);
}
