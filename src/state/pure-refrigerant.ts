import type { Fluid } from "../catalogue/index.js";
import { noDerivatives } from "../equation/index.js";
import {
  criticalMargin,
  densityAt,
  type Equilibrium,
  flashDensityEnergy,
  flashEnthalpyEntropy,
  flashPressureEnthalpy,
  flashPressureEntropy,
  flashTemperatureDensity,
  type Model,
  modelFor,
  onePhase,
  type SaturationPoint,
  type SearchRange,
  saturationAtEnd,
  saturationAtPressure,
  saturationAtTemperature,
} from "../equilibrium/index.js";
import { Face } from "./face.js";
import {
  checkOptions,
  checkSaturationInput,
  checkStateInput,
  checkStateOptions,
  lowestPressure,
  usual,
} from "./input.js";
import { checkLiteralForm } from "./literal-form.js";
import { denseReach, hotReach, nothingAbove, type Range, requireInside, rounding } from "./range-check.js";
import { checkReferenceState, type Offsets, offsetsFor } from "./reference-state.js";
import { type Owner, singlePhaseState } from "./single-phase.js";
import { saturationOf, twoPhaseState } from "./two-phase.js";
import type {
  PureRefrigerant,
  ReferenceState,
  Refrigerant,
  Saturation,
  SaturationInput,
  SinglePhaseState,
  State,
  StateInput,
  StateOptions,
} from "./types.js";

/** What may be chosen when a refrigerant is made. */
export interface RefrigerantOptions {
  /** Zero of enthalpy and entropy; the fluid's own default, `iir` for almost all, if left out. */
  readonly referenceState?: ReferenceState;
}

/**
 * So thin a gas is ideal to the last digit, yet its φ_δ still shows the second virial coefficient. At 1e-12 a few
 * equations do not yet: one for R-152a has terms of δ^1.5, whose share of φ_δ falls as √δ only.
 */
const thinnest = 1e-40;

/** What a named pair of a state input holds; which fields are set was checked. */
type Given = Readonly<Record<string, number>>;

/** A pure refrigerant computed from one Helmholtz equation. */
class PureFace extends Face implements PureRefrigerant, Owner {
  readonly designation: string;
  readonly name: string;
  readonly equation: string;
  readonly molarMass: number;
  readonly specificGasConstant: number;
  readonly critical: { readonly temperature: number; readonly pressure: number; readonly density: number };
  readonly limits: Fluid["limits"];
  readonly referenceState: ReferenceState;
  readonly sources: readonly string[];
  readonly notes: readonly string[];
  readonly composition: Readonly<Record<string, number>>;
  readonly gasConstant: number;
  readonly blend: undefined;
  readonly mixing: undefined;
  readonly #model: Model;
  #offsets: Offsets | undefined;

  constructor(fluid: Fluid, options: RefrigerantOptions) {
    super();
    if (options.referenceState !== undefined) checkReferenceState(options.referenceState);
    this.#model = modelFor(fluid);
    this.designation = fluid.designation;
    this.name = fluid.name;
    this.equation = fluid.equation;
    this.molarMass = fluid.molarMass;
    this.specificGasConstant = fluid.gasConstant / fluid.molarMass;
    const { temperature, pressure, density } = this.#model.critical;
    this.critical = { temperature, pressure, density: density * fluid.molarMass };
    this.limits = fluid.limits;
    this.referenceState = options.referenceState ?? fluid.referenceState;
    this.sources = fluid.sources;
    this.notes = fluid.notes;
    this.composition = { [fluid.designation]: 1 };
    this.gasConstant = fluid.gasConstant;
  }

  get model(): Model {
    return this.#model;
  }

  get refrigerant(): Refrigerant {
    return this;
  }

  get offsets(): Offsets {
    this.#offsets ??= offsetsFor(this.#model, this.referenceState);
    return this.#offsets;
  }

  secondVirial(temperature: number): number {
    const { equation } = this.#model;
    const at = noDerivatives();
    equation.evaluateResidual(equation.Tr / temperature, thinnest, at);
    return at.phi_d / equation.rhor;
  }

  fugacityCoefficients(_temperature: number, _molarDensity: number, own: number): Record<string, number> {
    return { [this.designation]: own };
  }

  saturation(at: SaturationInput, options: StateOptions = usual): Saturation {
    checkStateOptions(options);
    const point =
      checkSaturationInput(at) === "temperature"
        ? this.#saturationAt((at as { temperature: number }).temperature, options)
        : this.#boilingAt((at as { pressure: number }).pressure, options);
    return saturationOf(this, point, this.#isTooCold(point.temperature));
  }

  bubble(at: SaturationInput, options: StateOptions = usual): Saturation {
    return this.saturation(at, options);
  }

  dew(at: SaturationInput, options: StateOptions = usual): Saturation {
    return this.saturation(at, options);
  }

  state(
    at: { readonly temperature: number; readonly pressure: number },
    options?: StateOptions,
  ): SinglePhaseState;
  state(at: StateInput, options?: StateOptions): State;
  state(at: StateInput, options: StateOptions = usual): State {
    checkStateOptions(options);
    const pair = checkStateInput(at);
    const given = at as unknown as Given;
    const search = (): SearchRange => ({ ...this.#searchRange(options), inputs: given });
    const model = this.#model;
    const M = this.molarMass;
    // Checked to be there, as the pair says.
    const temperature = given["temperature"]!;
    const pressure = given["pressure"]!;
    const quality = given["quality"]!;
    if ("temperature" in given) this.#requireTemperature(temperature, options);
    if ("pressure" in given) this.#requirePressure(pressure, options);
    switch (pair) {
      case "pressure+temperature":
        return this.#assemble(
          onePhase(temperature, densityAt(model, temperature, pressure)),
          options,
          pressure,
        );
      case "density+temperature":
        return this.#assemble(flashTemperatureDensity(model, temperature, given["density"]! / M), options);
      case "quality+temperature":
        return this.#withQuality(this.#saturationAt(temperature, options), quality);
      case "pressure+quality":
        return this.#withQuality(this.#boilingAt(pressure, options), quality);
      case "enthalpy+pressure": {
        const h = given["enthalpy"]! * M - this.offsets.enthalpy;
        return this.#assemble(flashPressureEnthalpy(model, pressure, h, search()), options, pressure);
      }
      case "entropy+pressure": {
        const s = given["entropy"]! * M - this.offsets.entropy;
        return this.#assemble(flashPressureEntropy(model, pressure, s, search()), options, pressure);
      }
      case "density+internalEnergy": {
        const u = given["internalEnergy"]! * M - this.offsets.enthalpy;
        return this.#assemble(flashDensityEnergy(model, given["density"]! / M, u, search()), options);
      }
      case "enthalpy+entropy": {
        const h = given["enthalpy"]! * M - this.offsets.enthalpy;
        const s = given["entropy"]! * M - this.offsets.entropy;
        return this.#assemble(flashEnthalpyEntropy(model, h, s, search()), options);
      }
    }
  }

  #saturationAt(temperature: number, options: StateOptions): SaturationPoint {
    this.#require(
      "temperature",
      temperature,
      {
        minimum: this.#searchRange(options).minimum,
        maximum: this.critical.temperature - criticalMargin,
        unit: "K",
      },
      options,
      nothingAbove,
    );
    return saturationAtTemperature(this.#model, temperature);
  }

  #boilingAt(pressure: number, options: StateOptions): SaturationPoint {
    const { minimum } = this.#searchRange(options);
    this.#require(
      "pressure",
      pressure,
      {
        minimum: saturationAtEnd(this.#model, minimum).pressure * (1 - rounding),
        maximum: saturationAtEnd(this.#model, this.critical.temperature - criticalMargin).pressure,
        unit: "Pa",
      },
      options,
      nothingAbove,
    );
    return saturationAtPressure(this.#model, pressure);
  }

  #withQuality(point: SaturationPoint, quality: number): State {
    return twoPhaseState(this, point, quality, this.#isTooCold(point.temperature));
  }

  #isTooCold(temperature: number): boolean {
    return temperature < this.limits.minimumTemperature * (1 - rounding);
  }

  /** Turns a solved state into one with all its properties, after a look at what was not an input. */
  #assemble(found: Equilibrium, options: StateOptions, pressure?: number): State {
    if (found.phases === 2) return this.#withQuality(found.saturation, found.quality);
    const { temperature, density } = found;
    const state = singlePhaseState(this, temperature, density, {
      ...(pressure === undefined ? {} : { pressure }),
      extrapolated: false,
    });
    // A pressure that was found, not given, may lie on the limit and a rounding above it.
    if (pressure === undefined) this.#requirePressure(state.pressure * (1 - rounding), options);
    return this.#isInside(state)
      ? state
      : singlePhaseState(this, temperature, density, { pressure: state.pressure, extrapolated: true });
  }

  #isInside({ temperature, pressure }: State): boolean {
    return (
      !this.#isTooCold(temperature) &&
      temperature <= this.limits.maximumTemperature &&
      pressure * (1 - rounding) <= this.#highestPressure
    );
  }

  /** A few papers give a limit below the critical pressure, though their saturation curves run to the end. */
  get #highestPressure(): number {
    return Math.max(this.limits.maximumPressure, this.critical.pressure);
  }

  #searchRange({ extrapolate = false }: StateOptions): Omit<SearchRange, "inputs"> {
    const { minimumTemperature, maximumTemperature } = this.limits;
    const highestPressure = this.#highestPressure;
    return extrapolate
      ? {
          minimum: this.#model.coldCurve.minimumTemperature,
          maximum: hotReach * maximumTemperature,
          highestPressure: denseReach * highestPressure,
        }
      : { minimum: minimumTemperature, maximum: maximumTemperature, highestPressure };
  }

  #requireTemperature(value: number, options: StateOptions): void {
    const { minimum, maximum } = this.#searchRange(options);
    this.#require("temperature", value, { minimum, maximum, unit: "K" }, options);
  }

  #requirePressure(value: number, options: StateOptions): void {
    const maximum = this.#searchRange(options).highestPressure;
    const minimum = lowestPressure;
    this.#require("pressure", value, { minimum, maximum, unit: "Pa" }, options);
  }

  #require(quantity: string, value: number, range: Range, options: StateOptions, hintEnd?: string): void {
    requireInside(this.designation, quantity, value, range, options, hintEnd);
  }
}

/**
 * Makes a refrigerant from its literal: the small door, which carries no other fluid and no schema.
 *
 * @param fluid - A literal of `dewline/fluids/*`, or one that a catalogue has checked.
 * @throws `malformed-input` for something else, or a reference state that has not its form.
 * @source The equation named in the literal; property relations as in Span, R., Multiparameter Equations of State,
 *   Springer 2000, chapter 3.
 *
 * @example
 * ```ts
 * import { refrigerantFrom } from "dewline/core";
 * import { r32 } from "dewline/fluids/r-32";
 *
 * refrigerantFrom(r32).saturation({ temperature: 298.15 }).pressure // → 1.6896e6 Pa
 * ```
 */
export function refrigerantFrom(fluid: Fluid, options: RefrigerantOptions = {}): PureRefrigerant {
  checkLiteralForm(fluid);
  checkOptions(options, ["referenceState"], "{ referenceState }");
  return new PureFace(fluid, options);
}
