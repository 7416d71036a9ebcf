import type { Pair, PairGrade } from "../catalogue/index.js";
import type {
  Density,
  Outcome,
  Pressure,
  SpecificEnergy,
  SpecificEntropy,
  Speed,
  Temperature,
} from "../units/index.js";

/** Where a state lies. Above both critical values it is `supercritical`. */
export type Phase = "liquid" | "vapour" | "two-phase" | "supercritical";

/** What every state has, in one phase or two. Mass basis, SI. */
export interface CommonProperties {
  /** The refrigerant this is a state of; it knows its `.sources` and `.limits`. */
  readonly refrigerant: Refrigerant;
  /** Temperature, K. */
  readonly temperature: Temperature;
  /** Absolute pressure, Pa. */
  readonly pressure: Pressure;
  /** Density, kg/m3; in two phases that of the whole. */
  readonly density: Density;
  /** Specific enthalpy, J/kg, counted from the refrigerant's reference state. */
  readonly enthalpy: SpecificEnergy;
  /** Specific entropy, J/(kg K), counted from the refrigerant's reference state. */
  readonly entropy: SpecificEntropy;
  /** Specific internal energy, J/kg, u = h − p/ρ. */
  readonly internalEnergy: SpecificEnergy;
  /** Specific Gibbs energy, J/kg, g = h − T s. */
  readonly gibbsEnergy: SpecificEnergy;
  /** Specific Helmholtz energy, J/kg, a = u − T s. */
  readonly helmholtzEnergy: SpecificEnergy;
  /** Z = p/(ρ R T). */
  readonly compressibilityFactor: number;
  /** Mass fractions by designation. */
  readonly composition: Readonly<Record<string, number>>;
  /** Isobaric heat capacity of the ideal gas at this temperature, J/(kg K). */
  readonly cp0: SpecificEntropy;
  /** Of a blend: how well its mixing is known. Undefined for a pure refrigerant. */
  readonly mixing: Mixing | undefined;
  /** True when the caller opted in and the state lies outside the equation's range: less trustworthy. */
  readonly extrapolated: boolean;
}

/** A state in one phase. */
export interface SinglePhaseState extends CommonProperties {
  /** Which phase; tells this kind of state from the other. */
  readonly phase: "liquid" | "vapour" | "supercritical";
  /** 0 for saturated liquid, 1 for saturated vapour, undefined away from saturation. */
  readonly quality: 0 | 1 | undefined;
  /** Isobaric heat capacity, J/(kg K). */
  readonly cp: SpecificEntropy;
  /** Isochoric heat capacity, J/(kg K). */
  readonly cv: SpecificEntropy;
  /** Speed of sound, m/s. */
  readonly speedOfSound: Speed;
  /** Isentropic exponent κ = ρ w²/p = −(v/p)(∂p/∂v)ₛ; equals cp/cv only for an ideal gas. */
  readonly isentropicExponent: number;
  /** Joule–Thomson coefficient (∂T/∂p)ₕ, K/Pa. */
  readonly jouleThomson: number;
  /** Isothermal compressibility κ_T = (1/ρ)(∂ρ/∂p)_T, 1/Pa. */
  readonly isothermalCompressibility: number;
  /** Thermal expansion coefficient α = −(1/ρ)(∂ρ/∂T)_p, 1/K. */
  readonly thermalExpansion: number;
  /** Second virial coefficient B(T), m3/mol. */
  readonly secondVirial: number;
  /** Fugacity coefficient φ = f/p; of a blend that of the whole, ln φ = Σ xᵢ ln φᵢ. */
  readonly fugacityCoefficient: number;
  /** Fugacity coefficients φᵢ = fᵢ/(xᵢp) of the components by designation, xᵢ by amount. */
  readonly fugacityCoefficients: Readonly<Record<string, number>>;
}

/** A state with liquid and vapour in equilibrium. */
export interface TwoPhaseState extends CommonProperties {
  /** Tells this kind of state from the other. */
  readonly phase: "two-phase";
  /** Mass of vapour over mass of the whole, 0 to 1. */
  readonly quality: number;
  /** The liquid part. */
  readonly liquid: SinglePhaseState;
  /** The vapour part. */
  readonly vapour: SinglePhaseState;
  /**
   * Enthalpy of the vapour part less that of the liquid part, J/kg: the enthalpy of vaporisation. The two parts of a blend
   * differ in composition; what it takes to evaporate all of it at a pressure is `evaporationEnthalpy` of `glide`.
   */
  readonly latentHeat: SpecificEnergy;
}

/** A state point; `phase` tells which kind, and TypeScript narrows on it. */
export type State = SinglePhaseState | TwoPhaseState;

/**
 * Liquid and vapour in equilibrium. At a bubble point of a blend the liquid has the blend's composition and the vapour
 * that of the first bubble; at a dew point the vapour has it and the liquid that of the first drop.
 */
export interface Saturation {
  /** Temperature of both phases, K. */
  readonly temperature: Temperature;
  /** Absolute pressure of both phases, Pa. */
  readonly pressure: Pressure;
  /** Saturated liquid. */
  readonly liquid: SinglePhaseState;
  /** Saturated vapour. */
  readonly vapour: SinglePhaseState;
  /** Enthalpy of the vapour less that of the liquid, J/kg; see {@link TwoPhaseState.latentHeat}. */
  readonly latentHeat: SpecificEnergy;
}

/** A point of the saturation curve: by temperature or by pressure, not both. */
export type SaturationInput =
  | { readonly temperature: Temperature; readonly pressure?: never }
  | { readonly pressure: Pressure; readonly temperature?: never };

/** A pair that fixes one state. */
export type StateInput =
  | { readonly temperature: Temperature; readonly pressure: Pressure }
  | { readonly pressure: Pressure; readonly enthalpy: SpecificEnergy }
  | { readonly pressure: Pressure; readonly entropy: SpecificEntropy }
  | { readonly temperature: Temperature; readonly density: Density }
  | { readonly pressure: Pressure; readonly quality: number }
  | { readonly temperature: Temperature; readonly quality: number }
  | { readonly density: Density; readonly internalEnergy: SpecificEnergy }
  | { readonly enthalpy: SpecificEnergy; readonly entropy: SpecificEntropy };

/** Options of a property call. */
export interface StateOptions {
  /** Allow values outside the equation's range; the result is marked `extrapolated`. Default false. */
  readonly extrapolate?: boolean;
}

/**
 * Where enthalpy and entropy are counted from; of a blend saturated liquid means its bubble point. `iir`: h = 200 kJ/kg
 * and s = 1 kJ/(kg K) for saturated liquid at 0 °C; `ashrae`: both 0 for saturated liquid at −40 °C; `nbp`: both 0 for
 * saturated liquid at 101.325 kPa; or any state with the values it shall have.
 */
export type ReferenceState =
  | "iir"
  | "ashrae"
  | "nbp"
  | {
      readonly at:
        | { readonly temperature: Temperature; readonly pressure: Pressure }
        | { readonly temperature: Temperature; readonly quality: 0 | 1 };
      readonly enthalpy: SpecificEnergy;
      readonly entropy: SpecificEntropy;
    };

/** How well it is known how the components of a blend mix. */
export interface Mixing {
  /** The worst grade among its pairs: `published`, `regressed` by us, or `estimated` from the kind of substance. */
  readonly grade: PairGrade;
  /**
   * How far bubble and dew pressures may be off for it, relative: each pair's own stated deviation, counted by its share
   * 4 xᵢxⱼ by amount, which is 1 in an equal mixture of two. That weighting is ours, without a source.
   */
  readonly deviation: number;
}

/** What a blend has that a pure refrigerant has not. */
export interface BlendFacts extends Mixing {
  /** Mole fractions by designation; mass fractions are the refrigerant's `composition`. */
  readonly moleFractions: Readonly<Record<string, number>>;
  /** True for the designations of the 500 series, which are treated as boiling at one temperature. */
  readonly isAzeotropic: boolean;
  /** Every pair of components with its grade, stated deviation and sources. */
  readonly pairs: readonly Pair[];
  /** How far mass fractions may be off by designation, where the designation says so. */
  readonly tolerances: Readonly<Record<string, { readonly above: number; readonly below: number }>>;
  /** The boundary of the two-phase region, from the coldest bubble point through the critical point to the coldest dew point. */
  phaseBoundary(): PhaseBoundary;
}

/** The boundary of a blend's two-phase region. */
export interface PhaseBoundary {
  /** Critical point: K, Pa, kg/m3; undefined where the lines do not meet. */
  readonly critical: Refrigerant["critical"] | undefined;
  /** Highest temperature at which liquid and vapour coexist, and the pressure there. */
  readonly cricondentherm: { readonly temperature: Temperature; readonly pressure: Pressure };
  /** Highest pressure at which they do, and the temperature there. */
  readonly cricondenbar: { readonly temperature: Temperature; readonly pressure: Pressure };
  /** Solved points in order. */
  readonly points: readonly PhaseBoundaryPoint[];
}

/** A bubble or dew point: the blend as one phase, and the other phase that begins to form. */
export interface PhaseBoundaryPoint {
  /** Which side of the critical point it lies on. */
  readonly line: "bubble" | "dew";
  /** Temperature, K. */
  readonly temperature: Temperature;
  /** Absolute pressure, Pa. */
  readonly pressure: Pressure;
  /** Density of the blend, kg/m3. */
  readonly density: Density;
  /** Mass fractions of the phase that begins to form. */
  readonly incipient: Readonly<Record<string, number>>;
}

/** A refrigerant one can ask for states. */
export interface Refrigerant {
  /** Designation of ISO 817. */
  readonly designation: string;
  /** Chemical name; of a blend, its components with percentages by mass. */
  readonly name: string;
  /** Short name of the equation of state in use; of a blend `multi-fluid`. */
  readonly equation: string;
  /** Mass fractions by designation. */
  readonly composition: Readonly<Record<string, number>>;
  /** What a blend has that a pure refrigerant has not; undefined for a pure one. */
  readonly blend: BlendFacts | undefined;
  /** How well its mixing is known; undefined for a pure one. */
  readonly mixing: Mixing | undefined;
  /** Molar mass, kg/mol. */
  readonly molarMass: number;
  /** Gas constant per mass, R/M, J/(kg K), as used by the equation. */
  readonly specificGasConstant: number;
  /**
   * Critical point of the equation, found numerically: K, Pa, kg/m3.
   *
   * Reading it throws `no-such-state` for a blend whose bubble and dew lines do not meet, as some of R-744 with R-32 and
   * R-125 do not in their model.
   */
  readonly critical: {
    readonly temperature: Temperature;
    readonly pressure: Pressure;
    readonly density: Density;
  };
  /** Range of validity: K and Pa; of a blend the range that all its components share. */
  readonly limits: {
    readonly minimumTemperature: Temperature;
    readonly maximumTemperature: Temperature;
    readonly maximumPressure: Pressure;
  };
  /** Zero of enthalpy and entropy in use. */
  readonly referenceState: ReferenceState;
  /** Full citations, the equation of state first. */
  readonly sources: readonly string[];
  /** Doubts and corrections a careful user should know. */
  readonly notes: readonly string[];
  /**
   * Liquid and vapour in equilibrium. A blend of the 500 series answers half evaporated by mass.
   *
   * @throws `zeotrope` for any other blend, which has no one saturation temperature: it names what to ask instead.
   */
  saturation(at: SaturationInput, options?: StateOptions): Saturation;
  /** Bubble point; for a pure refrigerant the same as {@link Refrigerant.saturation}. */
  bubble(at: SaturationInput, options?: StateOptions): Saturation;
  /** Dew point; for a pure refrigerant the same as {@link Refrigerant.saturation}. */
  dew(at: SaturationInput, options?: StateOptions): Saturation;
  /**
   * The state that a pair of properties fixes. Its `phase` tells whether it has two phases, as a blend has at a temperature
   * and a pressure between those of dew and bubble; heat capacities and the speed of sound belong to one phase.
   */
  state(at: StateInput, options?: StateOptions): State;
  /** As {@link Refrigerant.saturation}, without throwing. */
  trySaturation(at: SaturationInput, options?: StateOptions): Outcome<Saturation>;
  /** As {@link Refrigerant.bubble}, without throwing. */
  tryBubble(at: SaturationInput, options?: StateOptions): Outcome<Saturation>;
  /** As {@link Refrigerant.dew}, without throwing. */
  tryDew(at: SaturationInput, options?: StateOptions): Outcome<Saturation>;
  /** As {@link Refrigerant.state}, without throwing. */
  tryState(at: StateInput, options?: StateOptions): Outcome<State>;
}

/** A refrigerant that is known to be pure. */
export interface PureRefrigerant extends Refrigerant {
  readonly blend: undefined;
  readonly mixing: undefined;
  /** The state at a temperature and a pressure: always one phase. */
  state(
    at: { readonly temperature: Temperature; readonly pressure: Pressure },
    options?: StateOptions,
  ): SinglePhaseState;
  /** The state that a pair of properties fixes. */
  state(at: StateInput, options?: StateOptions): State;
}
