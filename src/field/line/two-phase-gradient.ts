import data from "../../../data/field/piping.json" with { type: "json" };
import {
  attempt,
  type Density,
  InputCheck,
  type Length,
  type Outcome,
  requireObject,
} from "../../units/index.js";
import { frictionFactor } from "./friction.js";

/** Liquid and vapour of one substance that flow together. */
export interface TwoPhaseFlow {
  /** Mass flow per area, kg/(m2 s). */
  readonly massFlux: number;
  /** Inner diameter, m. */
  readonly innerDiameter: Length;
  /** Mass fraction of vapour, 0 to 1. */
  readonly quality: number;
  /** Density of the liquid, kg/m3. */
  readonly liquidDensity: Density;
  /** Density of the vapour, kg/m3. */
  readonly vapourDensity: Density;
  /** Viscosity of the liquid, Pa s. */
  readonly liquidViscosity: number;
  /** Viscosity of the vapour, Pa s. */
  readonly vapourViscosity: number;
  /** Roughness of the wall, m, 0 or above. */
  readonly roughness: Length;
}

/** Frictional loss of two phases. */
export interface TwoPhaseGradient {
  /** Loss of pressure per length, Pa/m. */
  readonly gradient: number;
  /** How far measurements lie about the correlation, as part of it. */
  readonly scatter: number;
}

/**
 * Frictional loss of pressure of two phases: between all liquid, A, and all vapour, B,
 * dp/dz = (A + 2 (B − A) x)(1 − x)^⅓ + B x³. Acceleration and height are not in it.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source Müller-Steinhagen, H., Heck, K., Chem. Eng. Process. 20 (1986) 297 (recalled); friction factor: Churchill, S. W.,
 *   Chem. Eng. 84 (1977) no. 24, 91 (recalled)
 */
export function twoPhaseGradient(flow: TwoPhaseFlow): TwoPhaseGradient {
  requireObject("", flow, "a flow of two phases");
  const { massFlux: G, innerDiameter: d, quality: x, roughness } = flow;
  const check = new InputCheck();
  for (const name of [
    "massFlux",
    "innerDiameter",
    "liquidDensity",
    "vapourDensity",
    "liquidViscosity",
    "vapourViscosity",
  ] as const) {
    check.positive(name, flow[name]);
  }
  check.notNegative("roughness", roughness);
  // null and "1" compare like numbers.
  const isFraction = typeof x === "number" && x >= 0 && x <= 1;
  check.require(isFraction, "quality", x, "a mass fraction of vapour, 0 to 1");
  check.finish();
  const alone = (density: Density, viscosity: number): number =>
    (frictionFactor((G * d) / viscosity, roughness / d) * G * G) / (2 * density * d);
  const A = alone(flow.liquidDensity, flow.liquidViscosity);
  const B = alone(flow.vapourDensity, flow.vapourViscosity);
  return {
    gradient: (A + 2 * (B - A) * x) * Math.cbrt(1 - x) + B * x * x * x,
    scatter: data.twoPhaseScatter.value,
  };
}

/** As {@link twoPhaseGradient}, without throwing. */
export function tryTwoPhaseGradient(flow: TwoPhaseFlow): Outcome<TwoPhaseGradient> {
  return attempt(() => twoPhaseGradient(flow));
}
