import { findFluid } from "../../src/catalogue/index.js";
import type { Refrigerant, SinglePhaseState } from "../../src/state/index.js";
import { curveTemperature, type PseudoPure } from "./pseudo-pure.js";

/** Both phases at one temperature: a saturation, or what bubble and dew line give of one. */
export interface Point {
  readonly temperature: number;
  readonly pressure: number;
  readonly liquid: SinglePhaseState;
  readonly vapour: SinglePhaseState;
  readonly latentHeat: number;
}

/** A property of a point by its name in the tables, such as `pressure` or `liquidDensity`, SI. */
export function saturationValue(point: Point, name: string): number {
  if (name === "temperature" || name === "pressure" || name === "latentHeat") return point[name];
  const [, side, property = ""] = /^(liquid|vapour)([A-Z]\w*)$/.exec(name) ?? [];
  if (side !== "liquid" && side !== "vapour") throw new Error(`no saturation property ${name}`);
  return stateValue(point[side], property.charAt(0).toLowerCase() + property.slice(1));
}

const properties = [
  "pressure",
  "density",
  "enthalpy",
  "entropy",
  "cp",
  "cv",
  "speedOfSound",
  "jouleThomson",
] as const;

/** A property of a state by its name in the tables, SI. */
export function stateValue(state: SinglePhaseState, name: string): number {
  const property = properties.find((known) => known === name);
  if (property === undefined) throw new Error(`no property ${name}`);
  return state[property];
}

/** The standard atmosphere, Pa: what a normal boiling point is normal to (ISO 2533). */
export const atmosphere = 101325;

/** A constant of a refrigerant by its name in the tables, SI. */
export function constantOf(asked: Refrigerant, name: string): number {
  switch (name) {
    case "criticalTemperature":
      return asked.critical.temperature;
    case "criticalPressure":
      return asked.critical.pressure;
    case "criticalDensity":
      return asked.critical.density;
    case "molarMass":
      return asked.molarMass;
    case "normalBoilingPoint":
      return asked.saturation({ pressure: atmosphere }).temperature;
    case "normalBubblePoint":
      return asked.bubble({ pressure: atmosphere }).temperature;
    case "triplePointTemperature":
      return asked.limits.minimumTemperature;
    case "acentricFactor":
      return acentricFactor(asked, findFluid(asked.designation, { equation: asked.equation }).critical);
    default:
      throw new Error(`no constant ${name}`);
  }
}

/** ω = −1 − log₁₀(p/pc) at 0.7 of the critical temperature, with the published critical point as papers do. */
export function acentricFactor(
  asked: Refrigerant,
  critical: { readonly temperature: number; readonly pressure: number },
): number {
  // For R-744 that lies below the triple point.
  const { pressure } = asked.saturation({ temperature: 0.7 * critical.temperature }, { extrapolate: true });
  return -1 - Math.log10(pressure / critical.pressure);
}

/** A constant of a blend as one fluid. Its critical point is the published one, where both curves end. */
export function pseudoPureConstantOf({ fluid, bubble, dew }: PseudoPure, name: string): number {
  switch (name) {
    case "criticalTemperature":
      return fluid.critical.temperature;
    case "criticalPressure":
      return fluid.critical.pressure;
    case "criticalDensity":
      return fluid.critical.density * fluid.molarMass;
    case "molarMass":
      return fluid.molarMass;
    // R-507A boils at one temperature, as far as tables say.
    case "normalBoilingPoint":
    case "normalBubblePoint":
      return curveTemperature(bubble, atmosphere);
    case "normalDewPoint":
      return curveTemperature(dew, atmosphere);
    default:
      throw new Error(`no constant ${name}`);
  }
}
