import {
  compressibility,
  type Evaluation,
  enthalpy,
  entropy,
  idealHeatCapacity,
  internalEnergy,
  isobaricHeatCapacity,
  isochoricHeatCapacity,
  jouleThomson,
  logFugacityCoefficient,
  pressureSlope,
  soundSpeedSquared,
  thermalPressure,
} from "../equation/index.js";
import type { Model } from "../equilibrium/index.js";
import { NoSuchStateError } from "../units/index.js";
import type { Offsets } from "./reference-state.js";
import type { Mixing, Refrigerant, SinglePhaseState } from "./types.js";

/** What a phase needs to know about the substance it is a phase of: of a blend, at the phase's own composition. */
export interface Substance {
  readonly refrigerant: Refrigerant;
  readonly composition: Readonly<Record<string, number>>;
  /** kg/mol. */
  readonly molarMass: number;
  /** J/(mol K). */
  readonly gasConstant: number;
  /** Added to enthalpy and entropy so that they count from the reference state; molar. */
  readonly offsets: Offsets;
  /** Second virial coefficient, m3/mol. */
  secondVirial(temperature: number): number;
  /** Of every component, by designation; `own` is that of the whole. */
  fugacityCoefficients(
    temperature: number,
    molarDensity: number,
    own: number,
  ): Readonly<Record<string, number>>;
}

/** A pure refrigerant as a substance, with the model that finds its states. */
export interface Owner extends Substance {
  readonly model: Model;
}

/** So small a reduced ∂p/∂ρ means the critical point: heat capacity and compressibility run to infinity there. */
const flattest = 1e-10;

/** A state in one phase, all its properties from one evaluation of the equation. */
class SinglePhase implements SinglePhaseState {
  readonly #substance: Substance;
  readonly phase: "liquid" | "vapour" | "supercritical";
  readonly temperature: number;
  readonly pressure: number;
  readonly density: number;
  readonly quality: 0 | 1 | undefined;
  readonly enthalpy: number;
  readonly entropy: number;
  readonly internalEnergy: number;
  readonly gibbsEnergy: number;
  readonly helmholtzEnergy: number;
  readonly cp: number;
  readonly cv: number;
  readonly cp0: number;
  readonly speedOfSound: number;
  readonly compressibilityFactor: number;
  readonly isentropicExponent: number;
  readonly jouleThomson: number;
  readonly isothermalCompressibility: number;
  readonly thermalExpansion: number;
  readonly fugacityCoefficient: number;
  readonly composition: Readonly<Record<string, number>>;
  readonly extrapolated: boolean;

  constructor(
    substance: Substance,
    offsets: Offsets,
    at: Evaluation,
    pressure: number,
    phase: "liquid" | "vapour" | "supercritical",
    quality: 0 | 1 | undefined,
    extrapolated: boolean,
  ) {
    const M = substance.molarMass;
    const R = substance.gasConstant / M;
    const RT = R * at.T;
    const slope = pressureSlope(at);
    const density = at.rho * M;
    this.#substance = substance;
    this.phase = phase;
    this.temperature = at.T;
    this.pressure = pressure;
    this.density = density;
    this.quality = quality;
    this.enthalpy = RT * enthalpy(at) + offsets.enthalpy / M;
    this.entropy = R * entropy(at) + offsets.entropy / M;
    // h − p/ρ, but from the equation itself: no digits are lost in a liquid.
    this.internalEnergy = RT * internalEnergy(at) + offsets.enthalpy / M;
    this.gibbsEnergy = this.enthalpy - at.T * this.entropy;
    this.helmholtzEnergy = this.internalEnergy - at.T * this.entropy;
    this.cp = R * isobaricHeatCapacity(at);
    this.cv = R * isochoricHeatCapacity(at);
    this.cp0 = R * idealHeatCapacity(at);
    const soundSquared = RT * soundSpeedSquared(at);
    this.speedOfSound = Math.sqrt(soundSquared);
    this.compressibilityFactor = pressure / (density * RT);
    this.isentropicExponent = (soundSquared * density) / pressure;
    this.jouleThomson = jouleThomson(at) / (at.rho * substance.gasConstant);
    this.isothermalCompressibility = 1 / (density * RT * slope);
    this.thermalExpansion = thermalPressure(at) / (at.T * slope);
    this.fugacityCoefficient = Math.exp(logFugacityCoefficient(at, this.compressibilityFactor));
    this.composition = substance.composition;
    this.extrapolated = extrapolated;
  }

  get refrigerant(): Refrigerant {
    return this.#substance.refrigerant;
  }

  get mixing(): Mixing | undefined {
    return this.refrigerant.mixing;
  }

  get secondVirial(): number {
    return this.#substance.secondVirial(this.temperature);
  }

  get fugacityCoefficients(): Readonly<Record<string, number>> {
    const molarDensity = this.density / this.#substance.molarMass;
    return this.#substance.fugacityCoefficients(this.temperature, molarDensity, this.fugacityCoefficient);
  }

  /** All properties, with the refrigerant by its designation. */
  toJSON(): Record<string, unknown> {
    return {
      refrigerant: this.refrigerant.designation,
      ...(this as object),
      secondVirial: this.secondVirial,
      fugacityCoefficients: this.fugacityCoefficients,
      ...(this.mixing && { mixing: this.mixing }),
    };
  }
}

/** What is known of a state beside its evaluation. */
export interface PhaseFacts {
  /** Absolute pressure, Pa. */
  readonly pressure: number;
  readonly quality: 0 | 1 | undefined;
  readonly extrapolated: boolean;
  /** The critical point: K, Pa, mol/m3. */
  readonly critical: { readonly temperature: number; readonly pressure: number; readonly density: number };
}

/**
 * Makes a state of an evaluation.
 *
 * @param offsets - Those of the substance: finding them may evaluate too, in the same working memory, so they are taken
 *   before the evaluation is made.
 * @throws {@link NoSuchStateError} where the properties diverge: at the critical point itself.
 */
export function stateOf(
  substance: Substance,
  offsets: Offsets,
  at: Evaluation,
  { pressure, quality, extrapolated, critical }: PhaseFacts,
): SinglePhaseState {
  // Far beyond its range an equation can give a heat capacity or a squared sound speed below zero.
  const stable = pressureSlope(at) > flattest && isochoricHeatCapacity(at) > 0 && soundSpeedSquared(at) > 0;
  if (!stable) {
    throw new NoSuchStateError(
      { temperature: at.T, density: at.rho * substance.molarMass },
      "no stable single phase; at the critical point heat capacity and compressibility are infinite",
    );
  }
  let phase: "liquid" | "vapour" | "supercritical";
  if (quality !== undefined) phase = quality === 0 ? "liquid" : "vapour";
  else if (at.T > critical.temperature) phase = pressure > critical.pressure ? "supercritical" : "vapour";
  else phase = at.rho > critical.density ? "liquid" : "vapour";
  return new SinglePhase(substance, offsets, at, pressure, phase, quality, extrapolated);
}

/**
 * Makes the state of a pure refrigerant at a temperature and a molar density.
 *
 * @param pressure - Where it was the input it is kept, so that what was asked for is what is returned.
 */
export function singlePhaseState(
  owner: Owner,
  temperature: number,
  molarDensity: number,
  options: { readonly pressure?: number; readonly quality?: 0 | 1; readonly extrapolated: boolean },
): SinglePhaseState {
  const { model, offsets } = owner;
  const { equation, critical } = model;
  equation.evaluate(temperature, molarDensity, model.at);
  const pressure = options.pressure ?? molarDensity * equation.R * temperature * compressibility(model.at);
  const { quality, extrapolated } = options;
  return stateOf(owner, offsets, model.at, { pressure, quality, extrapolated, critical });
}
