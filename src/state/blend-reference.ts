import { enthalpy, entropy } from "../equation/index.js";
import {
  type BlendModel,
  edgesAtPressure,
  edgesAtTemperature,
  flashBlendTemperaturePressure,
} from "../equilibrium/index.js";
import { isDewlineError } from "../units/index.js";
import { lowestPressure } from "./input.js";
import {
  ashraeTemperature,
  iirTemperature,
  type Offsets,
  refuseReference,
  standardAtmosphere,
} from "./reference-state.js";
import type { ReferenceState } from "./types.js";

/**
 * Offsets of a blend per kilogram, J/kg and J/(kg K), that give its reference state the agreed values: at its bubble point
 * where a pure refrigerant has saturated liquid.
 *
 * @throws {@link InputError} `malformed-input` if the blend has no such state.
 */
export function specificOffsetsFor(model: BlendModel, reference: ReferenceState): Offsets {
  if (reference === "iir") {
    return offsetsAt(model, iirTemperature, edgeDensity(model, iirTemperature, 0, reference), 200e3, 1e3);
  }
  if (reference === "ashrae") {
    return offsetsAt(model, ashraeTemperature, edgeDensity(model, ashraeTemperature, 0, reference), 0, 0);
  }
  if (reference === "nbp") {
    const point = orRefuse(model, reference, () => edgesAtPressure(model, standardAtmosphere)?.dense?.point);
    return offsetsAt(model, point.temperature, point.density, 0, 0);
  }
  const { at, enthalpy: h, entropy: s } = reference;
  const { temperature, pressure, quality }: { temperature: number; pressure?: number; quality?: 0 | 1 } = at;
  if (pressure === undefined) {
    const name = `saturated at ${temperature} K`;
    return offsetsAt(model, temperature, edgeDensity(model, temperature, quality ?? 0, name), h, s);
  }
  const name = `${temperature} K, ${pressure} Pa`;
  const { minimumTemperature, maximumTemperature, maximumPressure } = model.limits;
  const isInside =
    temperature >= minimumTemperature &&
    temperature <= maximumTemperature &&
    pressure >= lowestPressure &&
    pressure <= Math.max(maximumPressure, model.envelope.cricondenbar.pressure);
  if (!isInside) refuseReference(model.name, name, "that lies outside its range");
  const found = orRefuse(model, name, () => flashBlendTemperaturePressure(model, temperature, pressure));
  if (found.phases === 2) refuseReference(model.name, name, "it has two phases there");
  return offsetsAt(model, temperature, found.density, h, s);
}

function edgeDensity(model: BlendModel, T: number, quality: 0 | 1, name: string): number {
  return orRefuse(model, name, () => {
    if (T < model.limits.minimumTemperature) return undefined;
    const edges = edgesAtTemperature(model, T);
    const point = quality === 0 ? edges?.dense : edges?.thin;
    return point?.line === (quality === 0 ? "bubble" : "dew") ? point.point.density : undefined;
  });
}

/** What was found, or a refusal that names the reference state: the caller asked for that, not for what was sought. */
function orRefuse<Found>(model: BlendModel, name: string, find: () => Found | undefined): Found {
  try {
    const found = find();
    if (found !== undefined) return found;
  } catch (error) {
    if (!isDewlineError(error)) throw error;
  }
  return refuseReference(model.name, name);
}

function offsetsAt(model: BlendModel, T: number, rho: number, h: number, s: number): Offsets {
  const at = model.evaluate(T, rho);
  const R = model.R / model.molarMass;
  return { enthalpy: h - R * T * enthalpy(at), entropy: s - R * entropy(at) };
}
