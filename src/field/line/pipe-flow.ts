import data from "../../../data/field/piping.json" with { type: "json" };
import {
  attempt,
  type Density,
  InputCheck,
  type Length,
  type Outcome,
  type PressureDifference,
  requireObject,
  type Speed,
} from "../../units/index.js";
import { frictionFactor } from "./friction.js";

/** A fluid of one density that flows through a round pipe. */
export interface PipeFlow {
  /** Mass flow, kg/s, above 0. */
  readonly massFlow: number;
  /** Density, kg/m3. */
  readonly density: Density;
  /** Dynamic viscosity, Pa s; this library has no equation for it. */
  readonly viscosity: number;
  /** Inner diameter, m. */
  readonly innerDiameter: Length;
  /** Length with the equivalent lengths of fittings, m, 0 or above. */
  readonly length: Length;
  /** Height of the roughness of the wall, m; for drawn copper `DRAWN_COPPER_ROUGHNESS`. */
  readonly roughness: Length;
}

/** What the flow does. */
export interface PipeFlowResult {
  /** Mean velocity, m/s. */
  readonly velocity: Speed;
  /** Reynolds number. */
  readonly reynolds: number;
  /** Darcy friction factor. */
  readonly frictionFactor: number;
  /** Loss of pressure, Pa. */
  readonly pressureDrop: PressureDifference;
}

/** Roughness of drawn copper tube, m; common practice, no source. */
export const DRAWN_COPPER_ROUGHNESS: Length = data.roughness.value;

/**
 * Velocity and loss of pressure of one fluid of one density in a round pipe: v = 4 ṁ/(π ρ d²),
 * Δp = f (L/d) ρ v²/2 with Darcy's f.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source Darcy and Weisbach; friction factor: Churchill, S. W., Chem. Eng. 84 (1977) no. 24, 91 (recalled)
 *
 * @example
 * ```ts
 * pipeFlow({
 *   massFlow: 0.0139,
 *   density: 27.56,
 *   viscosity: 12.2e-6,
 *   innerDiameter: millimetre(7.92),
 *   length: 5,
 *   roughness: DRAWN_COPPER_ROUGHNESS,
 * }).pressureDrop; // → 15744 Pa
 * ```
 */
export function pipeFlow(flow: PipeFlow): PipeFlowResult {
  requireObject("", flow, "a flow and the pipe that it fills");
  const { massFlow, density, viscosity, innerDiameter: d, length, roughness } = flow;
  const check = new InputCheck();
  check.positive("massFlow", massFlow);
  check.positive("density", density);
  check.positive("viscosity", viscosity);
  check.notNegative("length", length);
  const isRough = check.notNegative("roughness", roughness);
  if (check.positive("innerDiameter", d) && isRough) {
    check.require(roughness < 0.1 * d, "roughness", roughness, "below a tenth of the inner diameter");
  }
  check.finish();
  const velocity = massFlow / (density * (Math.PI / 4) * d * d);
  const reynolds = (density * velocity * d) / viscosity;
  const f = frictionFactor(reynolds, roughness / d);
  return {
    velocity,
    reynolds,
    frictionFactor: f,
    pressureDrop: ((f * length) / d) * ((density * velocity * velocity) / 2),
  };
}

/** As {@link pipeFlow}, without throwing. */
export function tryPipeFlow(flow: PipeFlow): Outcome<PipeFlowResult> {
  return attempt(() => pipeFlow(flow));
}
