import { compressibility, enthalpy, entropy } from "../equation/index.js";
import {
  densityAt,
  type Model,
  saturationAtPressure,
  saturationAtTemperature,
} from "../equilibrium/index.js";
import { InputError, type Problem } from "../units/index.js";
import { lowestPressure } from "./input.js";
import type { ReferenceState } from "./types.js";

/** What is added to molar enthalpy (J/mol) and entropy (J/(mol K)) of the bare equation. */
export interface Offsets {
  readonly enthalpy: number;
  readonly entropy: number;
}

/** 0 °C and −40 °C, the temperatures of the two conventions; 101.325 kPa, the standard atmosphere of ISO 2533. */
export const iirTemperature = 273.15;
export const ashraeTemperature = 233.15;
export const standardAtmosphere = 101325;

/** Checks the form of a reference state; whether the refrigerant has that state shows when it is first needed. */
export function checkReferenceState(reference: unknown): void {
  if (reference === "iir" || reference === "ashrae" || reference === "nbp") return;
  const path = "referenceState";
  const expected =
    '"iir", "ashrae", "nbp", or { at: { temperature, pressure or quality }, enthalpy, entropy }';
  if (!isRecord(reference) || !isRecord(reference["at"])) {
    throw new InputError([{ path, value: reference, expected }]);
  }
  const { at, enthalpy, entropy } = reference;
  const problems: Problem[] = [];
  const demand = (name: string, value: unknown, inside: boolean, right: string): void => {
    if (!(typeof value === "number" && Number.isFinite(value) && inside)) {
      problems.push({ path: `${path}.${name}`, value, expected: right });
    }
  };
  demand("enthalpy", enthalpy, isMeant(enthalpy), `a number from -${largest} to ${largest}, J/kg`);
  demand("entropy", entropy, isMeant(entropy), `a number from -${largest} to ${largest}, J/(kg K)`);
  const { temperature, pressure, quality } = at;
  demand("at.temperature", temperature, isPositive(temperature), "a number above 0, K");
  if (quality === undefined) demand("at.pressure", pressure, isPositive(pressure), "a number above 0, Pa");
  else demand("at.quality", quality, quality === 0 || quality === 1, "0 or 1, without a pressure beside it");
  if (quality !== undefined && pressure !== undefined) {
    problems.push({ path: `${path}.at`, value: at, expected: "pressure or quality, not both" });
  }
  if (problems.length > 0) throw new InputError(problems);
}

/** A zero moved farther than this would take the digits of every enthalpy and entropy with it. */
const largest = 1e9;

function isMeant(value: unknown): boolean {
  return typeof value === "number" && Math.abs(value) <= largest;
}

function isPositive(value: unknown): boolean {
  return typeof value === "number" && value > 0;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null;
}

/**
 * Finds the offsets that give the reference state its agreed values.
 *
 * @throws {@link InputError} `malformed-input` if the refrigerant has no such state: nitrogen is never liquid at 0 °C.
 */
export function offsetsFor(model: Model, reference: ReferenceState): Offsets {
  const M = model.equation.fluid.molarMass;
  if (reference === "iir") {
    return offsetsAt(model, iirTemperature, liquidAt(model, iirTemperature, reference), 200e3 * M, 1e3 * M);
  }
  if (reference === "ashrae") {
    return offsetsAt(model, ashraeTemperature, liquidAt(model, ashraeTemperature, reference), 0, 0);
  }
  if (reference === "nbp") {
    const { critical, equation } = model;
    const lowest = saturationAtTemperature(model, equation.fluid.limits.minimumTemperature).pressure;
    if (!(standardAtmosphere > lowest && standardAtmosphere < critical.pressure)) refuse(model, reference);
    const point = saturationAtPressure(model, standardAtmosphere);
    return offsetsAt(model, point.temperature, point.liquidDensity, 0, 0);
  }
  // One of the two, as was checked; the other may be there and undefined.
  const { temperature, pressure, quality }: { temperature: number; pressure?: number; quality?: 0 | 1 } =
    reference.at;
  const h = reference.enthalpy * M;
  const s = reference.entropy * M;
  if (pressure === undefined) {
    if (!isSaturable(model, temperature)) refuse(model, `saturated at ${temperature} K`);
    const { liquidDensity, vapourDensity } = saturationAtTemperature(model, temperature);
    return offsetsAt(model, temperature, quality === 0 ? liquidDensity : vapourDensity, h, s);
  }
  const { minimumTemperature, maximumTemperature, maximumPressure } = model.equation.fluid.limits;
  const isInside =
    temperature >= minimumTemperature &&
    temperature <= maximumTemperature &&
    pressure >= lowestPressure &&
    pressure <= Math.max(maximumPressure, model.critical.pressure);
  if (!isInside) refuse(model, `${temperature} K, ${pressure} Pa`, "that lies outside its range");
  return offsetsAt(model, temperature, densityAt(model, temperature, pressure), h, s);
}

function liquidAt(model: Model, T: number, name: string): number {
  if (!isSaturable(model, T)) refuse(model, name);
  return saturationAtTemperature(model, T).liquidDensity;
}

function isSaturable({ equation, critical }: Model, T: number): boolean {
  return T >= equation.fluid.limits.minimumTemperature && T < critical.temperature - 1e-3;
}

function offsetsAt(model: Model, T: number, rho: number, h: number, s: number): Offsets {
  const { equation, at } = model;
  equation.evaluate(T, rho, at);
  if (!(compressibility(at) > 0)) refuse(model, "the state given");
  return { enthalpy: h - equation.R * T * enthalpy(at), entropy: s - equation.R * entropy(at) };
}

function refuse({ equation }: Model, reference: string, why?: string): never {
  refuseReference(equation.fluid.designation, reference, why);
}

/** Refuses a reference state that a refrigerant has not. */
export function refuseReference(
  designation: string,
  reference: string,
  why = "it is not liquid there",
): never {
  throw new InputError([
    {
      path: "referenceState",
      value: reference,
      expected: `a reference state that ${designation} has; ${why}`,
    },
  ]);
}
