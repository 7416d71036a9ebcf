import data from "../../../data/field/piping.json" with { type: "json" };
import {
  attempt,
  type Density,
  InputCheck,
  type Length,
  type Outcome,
  type Power,
  requireObject,
  type SpecificEnergy,
  type Speed,
} from "../../units/index.js";
import { shown } from "../measurement/shown.js";

/** Standard acceleration of gravity, m/s2. */
const GRAVITY = 9.80665;

/** Gas that has to carry oil up. */
export interface OilRiser {
  /** Density of the gas, kg/m3. */
  readonly gasDensity: Density;
  /** Density of the oil with the refrigerant dissolved in it, kg/m3; 900 to 1000 is usual. */
  readonly oilDensity: Density;
  /** Inner diameter, m. */
  readonly innerDiameter: Length;
  /** Enthalpy that each kilogram takes up in the evaporator, J/kg; with it the smallest capacity is stated. */
  readonly evaporatorEnthalpy?: SpecificEnergy;
}

/** The least flow that carries oil up. */
export interface OilReturn {
  /** Mass flow per area, kg/(m2 s). */
  readonly massFlux: number;
  /** Velocity of the gas, m/s. */
  readonly velocity: Speed;
  /** Mass flow, kg/s. */
  readonly massFlow: number;
  /** Refrigerating capacity at that flow, W, where the enthalpy is known. */
  readonly capacity: Power | undefined;
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Least flow of gas that carries oil up a riser: G = j*² √(…) with √j* = 0.85, G = 0.7225 √(ρ_g g d (ρ_oil − ρ_g)).
 *
 * It has to be met at the smallest capacity that the compressor runs at.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; also for oil that is not denser than the gas.
 * @source Jacobs, M. L., Scheideman, F. C., Kazem, S. M., Macken, N. A., ASHRAE Transactions 82 (1976) 318, as given in
 *   ASHRAE Handbook, Refrigeration, chapter 1 (recalled)
 *
 * @example
 * ```ts
 * oilReturn({ gasDensity: 30.23, oilDensity: 1020, innerDiameter: millimetre(11.1) }).velocity; // → 1.364 m/s
 * ```
 */
export function oilReturn(riser: OilRiser): OilReturn {
  requireObject("", riser, "a riser and the densities in it");
  const { gasDensity, oilDensity, innerDiameter: d, evaporatorEnthalpy } = riser;
  const check = new InputCheck();
  const isGas = check.positive("gasDensity", gasDensity);
  if (check.positive("oilDensity", oilDensity) && isGas) {
    check.require(
      oilDensity > gasDensity,
      "oilDensity",
      oilDensity,
      `above that of the gas, ${gasDensity} kg/m3`,
    );
  }
  check.positive("innerDiameter", d);
  if (evaporatorEnthalpy !== undefined) check.positive("evaporatorEnthalpy", evaporatorEnthalpy);
  check.finish();
  const root = data.oilReturn.value;
  const massFlux = root * root * Math.sqrt(gasDensity * GRAVITY * d * (oilDensity - gasDensity));
  const massFlow = massFlux * (Math.PI / 4) * d * d;
  const velocity = massFlux / gasDensity;
  return {
    massFlux,
    velocity,
    massFlow,
    capacity: evaporatorEnthalpy === undefined ? undefined : massFlow * evaporatorEnthalpy,
    because:
      `√j* = ${root}: ${shown(massFlux)} kg/(m² s), ${shown(velocity)} m/s in ${shown(d * 1000)} mm ` +
      `with oil of ${shown(oilDensity)} kg/m3`,
  };
}

/** As {@link oilReturn}, without throwing. */
export function tryOilReturn(riser: OilRiser): Outcome<OilReturn> {
  return attempt(() => oilReturn(riser));
}
