import { type MixtureEvaluation, type MixtureIdeal, noMixtureIdeal } from "../../equation/index.js";
import { solveLinear } from "./linear.js";
import type { MixtureModel, PhaseEquation } from "./mixture-model.js";
import { isLocallyStable, isOuterLiquid } from "./phase-density.js";

/** One mole of a mixture in two phases: concentrations, mol/m3, and what volume each phase has, m3. Mutable. */
export interface PhaseSplit {
  /** Temperature, K. */
  temperature: number;
  /** Pressure, Pa, from the vapour. */
  pressure: number;
  /** Mole fractions of the whole. */
  readonly whole: Float64Array;
  readonly liquid: Float64Array;
  readonly vapour: Float64Array;
  liquidVolume: number;
  vapourVolume: number;
}

/** A quantity of the whole that is held at a value: K, Pa, or per mole in SI; `vapourFraction` by amount. */
export interface Hold {
  readonly what:
    | "temperature"
    | "pressure"
    | "volume"
    | "vapourFraction"
    | "massQuality"
    | "internalEnergy"
    | "enthalpy"
    | "entropy";
  readonly value: number;
}

const mostSteps = 40;
/** As for a bubble point: the error left by a step this small is its square. */
const last = 1e-10;
const fine = 1e-6;
const longest = 0.4;
/** Phases nearer than this in every concentration are one. */
const trivial = 1e-4;

/** A fresh split of a composition. */
export function phaseSplit(whole: Float64Array): PhaseSplit {
  const count = whole.length;
  return {
    temperature: 0,
    pressure: 0,
    whole,
    liquid: new Float64Array(count),
    vapour: new Float64Array(count),
    liquidVolume: 0,
    vapourVolume: 0,
  };
}

/** Sum of concentrations, mol/m3. */
export function densityOf(concentrations: Float64Array): number {
  let sum = 0;
  for (const concentration of concentrations) sum += concentration;
  return sum;
}

/** Energies of a phase per volume, divided by R or RT, and their derivatives. */
interface PhaseEnergy {
  readonly value: number;
  /** By each concentration. */
  readonly by: Float64Array;
  /** T ∂/∂T. */
  readonly byT: number;
}

/** The system of a split's equations: 2N + 3 rows for (ln ρᵢ′, ln ρᵢ″, V′, V″, ln T). */
class SplitSystem {
  readonly width: number;
  readonly jacobian: Float64Array;
  readonly residual: Float64Array;
  readonly #model: MixtureModel;
  readonly #ideal: MixtureIdeal;

  constructor(model: MixtureModel) {
    this.#model = model;
    this.width = 2 * model.count + 3;
    this.jacobian = new Float64Array(this.width * this.width);
    this.residual = new Float64Array(this.width);
    this.#ideal = noMixtureIdeal(model.count);
  }

  fill(split: PhaseSplit, holds: readonly [Hold, Hold]): void {
    const { count } = this.#model;
    const { width, jacobian, residual } = this;
    evaluateSplit(this.#model, split);
    this.#model.liquid.mixture.evaluateIdeal(split.temperature, this.#ideal);
    const { at: L } = this.#model.liquid;
    const { at: V } = this.#model.vapour;
    const { ratio } = this.#model.liquid.mixture;
    jacobian.fill(0);
    for (let i = 0; i < count; i++) {
      const row = i * width;
      residual[i] = ratio[i]! * Math.log(split.vapour[i]! / split.liquid[i]!) + V.mu[i]! - L.mu[i]!;
      for (let j = 0; j < count; j++) {
        const own = i === j ? ratio[i]! : 0;
        jacobian[row + j] = -L.x[j]! * L.hessian[i * count + j]! - own;
        jacobian[row + count + j] = V.x[j]! * V.hessian[i * count + j]! + own;
      }
      jacobian[row + width - 1] = V.muT[i]! - L.muT[i]!;
      const balance = (count + 1 + i) * width;
      const z = split.whole[i]!;
      const inLiquid = (split.liquidVolume * split.liquid[i]!) / z;
      const inVapour = (split.vapourVolume * split.vapour[i]!) / z;
      residual[count + 1 + i] = inLiquid + inVapour - 1;
      jacobian[balance + i] = inLiquid;
      jacobian[balance + count + i] = inVapour;
      jacobian[balance + 2 * count] = split.liquid[i]! / z;
      jacobian[balance + 2 * count + 1] = split.vapour[i]! / z;
    }
    const row = count * width;
    residual[count] = V.pressure - L.pressure;
    for (let j = 0; j < count; j++) {
      jacobian[row + j] = -split.liquid[j]! * L.pressureBy[j]!;
      jacobian[row + count + j] = split.vapour[j]! * V.pressureBy[j]!;
    }
    jacobian[row + width - 1] = V.pressureT - L.pressureT;
    this.#hold(split, holds[0], width - 2);
    this.#hold(split, holds[1], width - 1);
  }

  /** Writes the row of a quantity held: value and gradient, scaled to be of order one. */
  #hold(split: PhaseSplit, { what, value }: Hold, index: number): void {
    const { width, jacobian, residual } = this;
    const row = jacobian.subarray(index * width, (index + 1) * width);
    if (what === "temperature") {
      row[width - 1] = 1;
      residual[index] = Math.log(split.temperature / value);
      return;
    }
    residual[index] = this.quantity(split, what, row, value);
  }

  /** How far a quantity of the whole is from a value, scaled, and its gradient, of a split just evaluated. */
  quantity(
    split: PhaseSplit,
    what: Exclude<Hold["what"], "temperature">,
    row: Float64Array,
    value: number,
  ): number {
    const { count, R } = this.#model;
    const { width } = this;
    const { at: L } = this.#model.liquid;
    const { at: V } = this.#model.vapour;
    const T = split.temperature;
    const { liquidVolume, vapourVolume } = split;
    switch (what) {
      case "pressure": {
        for (let j = 0; j < count; j++) row[count + j] = (split.vapour[j]! * V.pressureBy[j]!) / V.pressure;
        row[width - 1] = 1 + V.pressureT / V.pressure;
        return Math.log((V.pressure * R * T) / value);
      }
      case "volume": {
        row[2 * count] = 1 / value;
        row[2 * count + 1] = 1 / value;
        return (liquidVolume + vapourVolume) / value - 1;
      }
      case "vapourFraction":
      case "massQuality": {
        // Amounts or masses of both phases: n″(1 − q) = n′q.
        const { molarMass } = this.#model.liquid.mixture;
        let liquid = 0;
        let vapour = 0;
        let scale = 0;
        for (let i = 0; i < count; i++) {
          const weight = what === "massQuality" ? molarMass[i]! : 1;
          liquid += weight * split.liquid[i]!;
          vapour += weight * split.vapour[i]!;
          scale += weight * split.whole[i]!;
        }
        for (let i = 0; i < count; i++) {
          const weight = (what === "massQuality" ? molarMass[i]! : 1) / scale;
          row[i] = -value * liquidVolume * weight * split.liquid[i]!;
          row[count + i] = (1 - value) * vapourVolume * weight * split.vapour[i]!;
        }
        row[2 * count] = (-value * liquid) / scale;
        row[2 * count + 1] = ((1 - value) * vapour) / scale;
        return ((1 - value) * vapourVolume * vapour - value * liquidVolume * liquid) / scale;
      }
      default: {
        const scale = what === "entropy" ? R : R * T;
        const inLiquid = phaseEnergy(what, L, split.liquid, this.#ideal, this.#model.liquid);
        const inVapour = phaseEnergy(what, V, split.vapour, this.#ideal, this.#model.vapour);
        const total = liquidVolume * inLiquid.value + vapourVolume * inVapour.value;
        for (let j = 0; j < count; j++) {
          row[j] = liquidVolume * split.liquid[j]! * inLiquid.by[j]!;
          row[count + j] = vapourVolume * split.vapour[j]! * inVapour.by[j]!;
        }
        row[2 * count] = inLiquid.value;
        row[2 * count + 1] = inVapour.value;
        row[width - 1] = liquidVolume * inLiquid.byT + vapourVolume * inVapour.byT;
        // Energies are divided by RT, which changes with T: bring that back.
        if (what !== "entropy") row[width - 1]! += total;
        return total - value / scale;
      }
    }
  }
}

/** Evaluates both phases of a split. */
function evaluateSplit(model: MixtureModel, split: PhaseSplit): void {
  model.liquid.mixture.evaluate(split.temperature, split.liquid, model.liquid.at);
  model.vapour.mixture.evaluate(split.temperature, split.vapour, model.vapour.at);
}

/** u, h or s of a phase per volume, over RT or R, without integration constants. */
function phaseEnergy(
  what: "internalEnergy" | "enthalpy" | "entropy",
  at: MixtureEvaluation,
  concentrations: Float64Array,
  ideal: MixtureIdeal,
  { mixture }: PhaseEquation,
): PhaseEnergy {
  const { count, ratio } = mixture;
  const { rho, phi, phiT, phiTT } = at;
  const by = new Float64Array(count);
  let energy = rho * phiT;
  let entropy = rho * (phiT - phi);
  let heat = rho * (phiT - phiTT);
  let idealByT = 0;
  for (let i = 0; i < count; i++) {
    const c = concentrations[i]!;
    const log = ratio[i]! * Math.log(c);
    energy += c * ideal.energy[i]!;
    entropy += c * (ideal.energy[i]! - ideal.helmholtz[i]! - log);
    heat += c * ideal.heatCapacity[i]!;
    idealByT += c * (ideal.heatCapacity[i]! - ideal.energy[i]!);
    const byEnergy = ideal.energy[i]! - at.muT[i]!;
    if (what === "entropy") by[i] = byEnergy - ideal.helmholtz[i]! - log - ratio[i]! - at.mu[i]!;
    else by[i] = what === "enthalpy" ? byEnergy + at.pressureBy[i]! : byEnergy;
  }
  if (what === "entropy") return { value: entropy, by, byT: heat };
  const byT = idealByT - rho * phiTT;
  return what === "enthalpy"
    ? { value: energy + at.pressure, by, byT: byT + at.pressureT }
    : { value: energy, by, byT };
}

/**
 * Improves a split to equilibrium with two quantities held, by Newton's method in all variables together, and says
 * whether it got to one with two different phases of positive volume (or none: a bubble or dew point).
 */
export function solveSplit(model: MixtureModel, split: PhaseSplit, holds: readonly [Hold, Hold]): boolean {
  const { count } = model;
  const system = new SplitSystem(model);
  const { width, residual } = system;
  let previous = Number.POSITIVE_INFINITY;
  for (let step = 0; step < mostSteps; step++) {
    system.fill(split, holds);
    if (!solveLinear(system.jacobian, residual, width)) return false;
    // Volumes count by the amounts in them: a cold vapour takes up a million times the volume of its liquid.
    let size = Math.max(
      4 * Math.abs(residual[width - 1]!),
      Math.abs(residual[2 * count]!) * densityOf(split.liquid),
      Math.abs(residual[2 * count + 1]!) * densityOf(split.vapour),
    );
    for (let k = 0; k < 2 * count; k++) size = Math.max(size, Math.abs(residual[k]!));
    if (!Number.isFinite(size)) return false;
    const factor = size > longest ? longest / size : 1;
    for (let i = 0; i < count; i++) {
      split.liquid[i]! *= Math.exp(-factor * residual[i]!);
      split.vapour[i]! *= Math.exp(-factor * residual[count + i]!);
    }
    split.liquidVolume -= factor * residual[2 * count]!;
    split.vapourVolume -= factor * residual[2 * count + 1]!;
    split.temperature *= Math.exp(-factor * residual[width - 1]!);
    if (size < last || (size < fine && size >= previous / 2)) return finish(model, split, holds);
    previous = size;
  }
  return false;
}

function exchangePhases(split: PhaseSplit): void {
  const { liquidVolume } = split;
  const liquid = Float64Array.from(split.liquid);
  split.liquid.set(split.vapour);
  split.vapour.set(liquid);
  split.liquidVolume = split.vapourVolume;
  split.vapourVolume = liquidVolume;
}

/** An amount below zero by less than this part of the whole is none. */
const none = 1e-9;

function finish(model: MixtureModel, split: PhaseSplit, holds: readonly [Hold, Hold]): boolean {
  for (const { what, value } of holds) if (what === "temperature") split.temperature = value;
  if (densityOf(split.liquid) < densityOf(split.vapour)) {
    // The phases came out in each other's place. Where their ratio was asked for, it is now that of the wrong one.
    if (holds.some(({ what }) => what === "massQuality" || what === "vapourFraction")) return false;
    exchangePhases(split);
  }
  evaluateSplit(model, split);
  let gap = 0;
  for (let i = 0; i < model.count; i++) {
    gap = Math.max(gap, Math.abs(Math.log(split.vapour[i]! / split.liquid[i]!)));
  }
  if (!(gap > trivial)) return false;
  const held = holds.find(({ what }) => what === "pressure");
  split.pressure = held?.value ?? model.vapour.at.pressure * model.R * split.temperature;
  const isWhole =
    split.liquidVolume * densityOf(split.liquid) > -none &&
    split.vapourVolume * densityOf(split.vapour) > -none;
  if (!(split.pressure > 0 && isWhole)) return false;
  const { vapour } = model;
  return isLocallyStable(vapour.at, vapour.mixture.ratio) && isOuterLiquid(model, split.pressure);
}

/**
 * At a solved split: d(quantity)/dT along the path on which one other quantity stays as it is, per mole in SI.
 *
 * @param held - What stays: not the temperature.
 */
export function splitSlope(
  model: MixtureModel,
  split: PhaseSplit,
  held: Hold,
  of: "internalEnergy" | "enthalpy",
): number {
  const system = new SplitSystem(model);
  const { width, jacobian } = system;
  system.fill(split, [held, { what: "temperature", value: split.temperature }]);
  const gradient = new Float64Array(width);
  system.quantity(split, of, gradient, 0);
  const change = new Float64Array(width);
  change[width - 1] = 1;
  if (!solveLinear(jacobian, change, width)) return Number.NaN;
  let sum = 0;
  for (let k = 0; k < width; k++) sum += gradient[k]! * change[k]!;
  return model.R * sum;
}
