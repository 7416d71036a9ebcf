import type { Fluid, Pair } from "../catalogue/index.js";
import {
  type BlendEquilibrium,
  BlendModel,
  type BoundaryLine,
  type Extreme,
  flashBlendDensityEnergy,
  flashBlendEnthalpyEntropy,
  flashBlendPressure,
  flashBlendQuality,
  flashBlendTemperatureDensity,
  flashBlendTemperaturePressure,
  incipientFractions,
  linePointAt,
  MixtureModel,
  type SearchRange,
} from "../equilibrium/index.js";
import { NoSuchStateError } from "../units/index.js";
import { type BlendOwner, massFractionsOf } from "./blend-owner.js";
import { BlendRanges } from "./blend-ranges.js";
import { specificOffsetsFor } from "./blend-reference.js";
import { blendPhaseState, boundarySaturation, splitSaturation, splitState } from "./blend-states.js";
import { Face } from "./face.js";
import { checkSaturationInput, checkStateInput, checkStateOptions, usual } from "./input.js";
import { mixingOf } from "./mixing.js";
import { rounding } from "./range-check.js";
import { checkReferenceState, iirTemperature, type Offsets } from "./reference-state.js";
import type {
  BlendFacts,
  Mixing,
  PhaseBoundary,
  ReferenceState,
  Refrigerant,
  Saturation,
  SaturationInput,
  SinglePhaseState,
  State,
  StateInput,
  StateOptions,
} from "./types.js";
import { ZeotropeError } from "./zeotrope-error.js";

/** A blend with everything decided: the door that made it has checked its input. */
export interface BlendRecipe {
  readonly designation: string;
  readonly fluids: readonly Fluid[];
  /** In the order of the fluids; adds up to 1. */
  readonly massFractions: readonly number[];
  readonly pairOf: (first: Fluid, second: Fluid) => Pair;
  readonly isAzeotropic: boolean;
  readonly tolerances: BlendFacts["tolerances"];
  /** Where the composition comes from; empty for one of the caller's own. */
  readonly sources: readonly string[];
  readonly notes: readonly string[];
  /** By default `iir`, or `nbp` for a blend that is never liquid at 0 °C. */
  readonly referenceState?: ReferenceState;
}

/** What a named pair of a state input holds; which fields are set was checked. */
type Given = Readonly<Record<string, number>>;

/** A blend computed from its components' equations and how each pair of them mixes. */
export class BlendRefrigerant extends Face implements Refrigerant, BlendOwner {
  readonly designation: string;
  readonly name: string;
  readonly equation = "multi-fluid";
  readonly composition: Readonly<Record<string, number>>;
  readonly blend: BlendFacts;
  readonly mixing: Mixing;
  readonly molarMass: number;
  readonly specificGasConstant: number;
  readonly limits: Fluid["limits"];
  readonly sources: readonly string[];
  readonly notes: readonly string[];
  readonly #model: BlendModel;
  readonly #ranges: BlendRanges;
  readonly #reference: ReferenceState | undefined;
  #offsets: Offsets | undefined;

  constructor(recipe: BlendRecipe) {
    super();
    const { designation, fluids, massFractions, pairOf, isAzeotropic, tolerances, referenceState } = recipe;
    if (referenceState !== undefined) checkReferenceState(referenceState);
    const system = new MixtureModel(fluids, pairOf);
    const amounts = Float64Array.from(fluids, ({ molarMass }, i) => massFractions[i]! / molarMass);
    const total = amounts.reduce((sum, amount) => sum + amount, 0);
    const z = amounts.map((amount) => amount / total);
    this.#model = new BlendModel(system, z, designation);
    this.#ranges = new BlendRanges(this.#model);
    this.#reference = referenceState;
    this.designation = designation;
    this.name = fluids
      .map((fluid, i) => `${fluid.designation} ${percent(massFractions[i]!)}`)
      .join(", ")
      .concat(" by mass");
    this.composition = massFractionsOf(this.#model, z);
    this.molarMass = this.#model.molarMass;
    this.specificGasConstant = this.#model.R / this.molarMass;
    this.limits = this.#model.limits;
    const { pairs } = system.liquid.mixture;
    const moleFractions = Object.fromEntries(fluids.map((fluid, i) => [fluid.designation, z[i]!]));
    this.mixing = mixingOf(pairs, moleFractions);
    this.blend = {
      ...this.mixing,
      moleFractions,
      isAzeotropic,
      pairs,
      tolerances,
      phaseBoundary: () => this.#phaseBoundary(),
    };
    this.sources = [
      ...new Set([
        ...recipe.sources,
        ...fluids.flatMap((f) => f.sources),
        ...pairs.flatMap((p) => p.sources),
      ]),
    ];
    this.notes = [
      ...recipe.notes,
      ...fluids.flatMap((fluid) => fluid.notes.map((note) => `${fluid.designation}: ${note}`)),
      ...pairs.flatMap(({ between, notes }) => notes.map((note) => `${between.join(" with ")}: ${note}`)),
    ];
  }

  get model(): BlendModel {
    return this.#model;
  }

  get refrigerant(): Refrigerant {
    return this;
  }

  get specificOffsets(): Offsets {
    this.#offsets ??= specificOffsetsFor(this.#model, this.referenceState);
    return this.#offsets;
  }

  get referenceState(): ReferenceState {
    if (this.#reference !== undefined) return this.#reference;
    const isLiquidAtZero =
      this.limits.minimumTemperature <= iirTemperature &&
      this.#model.envelope.critical.temperature > iirTemperature;
    return isLiquidAtZero ? "iir" : "nbp";
  }

  get critical(): { readonly temperature: number; readonly pressure: number; readonly density: number } {
    const { critical, openFrom } = this.#model.envelope;
    if (openFrom !== undefined) {
      throw new NoSuchStateError(
        this.composition,
        `the bubble and dew lines of this mixture model do not meet in a critical point; they are known up to ${openFrom.temperature} K`,
      );
    }
    const { temperature, pressure, density } = critical;
    return { temperature, pressure, density: density * this.molarMass };
  }

  saturation(at: SaturationInput, options: StateOptions = usual): Saturation {
    checkStateOptions(options);
    const what = checkSaturationInput(at);
    if (!this.blend.isAzeotropic) throw new ZeotropeError(this.designation);
    const value = (at as Given)[what]!;
    this.#ranges.requireOnLine("dew", what, value, options);
    const found = flashBlendQuality(this.#model, { what, value }, 0.5);
    if (found.phases === 1) throw new ZeotropeError(this.designation);
    return splitSaturation(this, found.split, this.#ranges.isOutside(found.split.temperature));
  }

  bubble(at: SaturationInput, options: StateOptions = usual): Saturation {
    return this.#onLine("bubble", at, options);
  }

  dew(at: SaturationInput, options: StateOptions = usual): Saturation {
    return this.#onLine("dew", at, options);
  }

  state(at: StateInput, options: StateOptions = usual): State {
    checkStateOptions(options);
    const pair = checkStateInput(at);
    const given = at as unknown as Given;
    const model = this.#model;
    const M = this.molarMass;
    const range = (): SearchRange => ({ ...this.#ranges.search(options), inputs: given });
    // Checked to be there, as the pair says.
    const temperature = given["temperature"]!;
    const pressure = given["pressure"]!;
    const quality = given["quality"]!;
    const molarEnthalpy = (): number => (given["enthalpy"]! - this.specificOffsets.enthalpy) * M;
    const molarEntropy = (): number => (given["entropy"]! - this.specificOffsets.entropy) * M;
    if ("temperature" in given) this.#ranges.requireTemperature(temperature, options);
    if ("pressure" in given) this.#ranges.requirePressure(pressure, options);
    switch (pair) {
      case "pressure+temperature":
        return this.#assemble(flashBlendTemperaturePressure(model, temperature, pressure), options, pressure);
      case "density+temperature":
        return this.#assemble(
          flashBlendTemperatureDensity(model, temperature, given["density"]! / M),
          options,
        );
      case "quality+temperature": {
        this.#ranges.requireOnLine("dew", "temperature", temperature, options);
        return this.#assemble(
          flashBlendQuality(model, { what: "temperature", value: temperature }, quality),
          options,
        );
      }
      case "pressure+quality": {
        this.#ranges.requireBoiling(pressure, options);
        return this.#assemble(
          flashBlendQuality(model, { what: "pressure", value: pressure }, quality),
          options,
        );
      }
      case "enthalpy+pressure":
        return this.#assemble(
          flashBlendPressure(model, pressure, "enthalpy", molarEnthalpy(), range()),
          options,
          pressure,
        );
      case "entropy+pressure":
        return this.#assemble(
          flashBlendPressure(model, pressure, "entropy", molarEntropy(), range()),
          options,
          pressure,
        );
      case "density+internalEnergy": {
        const u = (given["internalEnergy"]! - this.specificOffsets.enthalpy) * M;
        return this.#assemble(flashBlendDensityEnergy(model, given["density"]! / M, u, range()), options);
      }
      case "enthalpy+entropy":
        return this.#assemble(
          flashBlendEnthalpyEntropy(model, molarEnthalpy(), molarEntropy(), range()),
          options,
        );
    }
  }

  #onLine(line: BoundaryLine, at: SaturationInput, options: StateOptions): Saturation {
    checkStateOptions(options);
    const what = checkSaturationInput(at);
    const value = (at as Given)[what]!;
    this.#ranges.requireOnLine(line, what, value, options);
    const point = linePointAt(this.#model, line, what, value);
    this.#ranges.requireFound(point.point.temperature, options);
    return boundarySaturation(this, point, this.#ranges.isOutside(point.point.temperature));
  }

  /** Turns a solved state into one with all its properties, after a look at what was not an input. */
  #assemble(found: BlendEquilibrium, options: StateOptions, pressure?: number): State {
    if (found.phases === 2) {
      const { split } = found;
      this.#ranges.requireFound(split.temperature, options);
      return splitState(this, split, this.#ranges.isOutside(split.temperature));
    }
    const { temperature, density } = found;
    const make = (extrapolated: boolean): SinglePhaseState =>
      blendPhaseState(this, temperature, density, {
        ...(pressure === undefined ? {} : { pressure }),
        extrapolated,
      });
    const state = make(false);
    // A pressure that was found, not given, may lie on the limit and a rounding above it.
    if (pressure === undefined) this.#ranges.requirePressure(state.pressure * (1 - rounding), options);
    return this.#ranges.isInside(state) ? state : make(true);
  }

  #phaseBoundary(): PhaseBoundary {
    const { cricondentherm, cricondenbar, openFrom, points } = this.#model.envelope;
    return {
      critical: openFrom === undefined ? this.critical : undefined,
      cricondentherm: placeOf(cricondentherm),
      cricondenbar: placeOf(cricondenbar),
      points: points.map(({ line, point }) => ({
        line,
        temperature: point.temperature,
        pressure: point.pressure,
        density: point.density * this.molarMass,
        incipient: massFractionsOf(this.#model, incipientFractions(point)),
      })),
    };
  }
}

/** A mass fraction as it is printed in designations: per cent, without trailing zeros. */
function percent(fraction: number): string {
  return `${Number((100 * fraction).toPrecision(6))} %`;
}

/** Where an extreme lies, without the line that solvers want to know. */
function placeOf({ temperature, pressure }: Extreme): PhaseBoundary["cricondentherm"] {
  return { temperature, pressure };
}
