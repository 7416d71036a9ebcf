import {
  attempt,
  InputError,
  type Outcome,
  type Pressure,
  type Problem,
  type SpecificEnergy,
  type Temperature,
  type TemperatureDifference,
} from "../units/index.js";
import type { Refrigerant, Saturation, StateOptions } from "./types.js";

/** The two-phase region of a refrigerant at one pressure, from bubble to dew. */
export interface Glide {
  /** Absolute pressure, Pa. */
  readonly pressure: Pressure;
  /** Bubble point: the liquid begins to boil; a pressure reading means this one for subcooling. */
  readonly bubble: Saturation;
  /** Dew point: the last liquid is gone; a pressure reading means this one for superheat. */
  readonly dew: Saturation;
  /** Temperature glide, dew less bubble temperature, K; 0 for a pure refrigerant. */
  readonly glide: TemperatureDifference;
  /** Mid-point temperature, the mean of bubble and dew, K. */
  readonly midpoint: Temperature;
  /**
   * Mean temperature at which the heat is taken up from bubble to dew, K: enthalpy over entropy of evaporation. For a
   * pure refrigerant it is the saturation temperature.
   */
  readonly mean: Temperature;
  /** Enthalpy to evaporate all of it at this pressure, J/kg. */
  readonly evaporationEnthalpy: SpecificEnergy;
}

/**
 * Bubble, dew, glide and mean temperatures at a pressure; for pure refrigerants and blends alike.
 *
 * @param at - `{ pressure }`, absolute, Pa.
 * @throws As `bubble` and `dew` of the refrigerant.
 * @source Mid-point: common practice, no source. Mean: T ds = dh at constant pressure.
 *
 * @example
 * ```ts
 * import { glide, kilopascal, refrigerant } from "dewline";
 *
 * glide(refrigerant("R-407C"), { pressure: kilopascal(500) }).glide // → 6.2 K
 * ```
 */
export function glide(
  refrigerant: Refrigerant,
  at: { readonly pressure: Pressure },
  options: StateOptions = {},
): Glide {
  checkPressure(refrigerant, at, []);
  const bubble = refrigerant.bubble(at, options);
  const dew = refrigerant.dew(at, options);
  const evaporationEnthalpy = dew.vapour.enthalpy - bubble.liquid.enthalpy;
  const isPure = refrigerant.blend === undefined;
  return {
    pressure: at.pressure,
    bubble,
    dew,
    glide: dew.temperature - bubble.temperature,
    midpoint: (bubble.temperature + dew.temperature) / 2,
    mean: isPure ? dew.temperature : evaporationEnthalpy / (dew.vapour.entropy - bubble.liquid.entropy),
    evaporationEnthalpy,
  };
}

/** As {@link glide}, without throwing. */
export function tryGlide(
  refrigerant: Refrigerant,
  at: { readonly pressure: Pressure },
  options: StateOptions = {},
): Outcome<Glide> {
  return attempt(() => glide(refrigerant, at, options));
}

/**
 * Mean temperature of an evaporator whose refrigerant enters with an enthalpy, below that of its dew point, and leaves
 * as saturated vapour, K: enthalpy over entropy taken up at constant pressure.
 *
 * @param at - Absolute pressure, Pa, and enthalpy at the inlet, J/kg: that of the liquid before the expansion device.
 * @throws `malformed-input` if the inlet is not wetter than the dew point, or for anything but those two; otherwise as
 *   `dew` and `state` of the refrigerant.
 * @source T ds = dh at constant pressure.
 */
export function evaporatorMean(
  refrigerant: Refrigerant,
  at: { readonly pressure: Pressure; readonly enthalpy: SpecificEnergy },
  options: StateOptions = {},
): Temperature {
  checkPressure(refrigerant, at, ["enthalpy"]);
  const { vapour } = refrigerant.dew({ pressure: at.pressure }, options);
  if (!(at.enthalpy < vapour.enthalpy)) {
    const expected = `an enthalpy below that of saturated vapour, ${vapour.enthalpy} J/kg`;
    throw new InputError([{ path: "enthalpy", value: at.enthalpy, expected }]);
  }
  const inlet = refrigerant.state({ pressure: at.pressure, enthalpy: at.enthalpy }, options);
  return (vapour.enthalpy - inlet.enthalpy) / (vapour.entropy - inlet.entropy);
}

/** As {@link evaporatorMean}, without throwing. */
export function tryEvaporatorMean(
  refrigerant: Refrigerant,
  at: { readonly pressure: Pressure; readonly enthalpy: SpecificEnergy },
  options: StateOptions = {},
): Outcome<Temperature> {
  return attempt(() => evaporatorMean(refrigerant, at, options));
}

/** Requires a refrigerant, and a pressure with the other fields named, all finite, and nothing else. */
function checkPressure(refrigerant: unknown, at: unknown, others: readonly string[]): void {
  const problems: Problem[] = [];
  const isOne =
    typeof refrigerant === "object" &&
    refrigerant !== null &&
    "composition" in refrigerant &&
    ["bubble", "dew", "state"].every(
      (name) => typeof (refrigerant as Readonly<Record<string, unknown>>)[name] === "function",
    );
  if (!isOne) problems.push({ path: "refrigerant", value: refrigerant, expected: "a refrigerant" });
  const names = ["pressure", ...others];
  const fields =
    typeof at === "object" && at !== null ? (at as Readonly<Record<string, unknown>>) : undefined;
  if (fields === undefined) {
    problems.push({ path: "", value: at, expected: `{ ${names.join(", ")} }` });
  } else {
    for (const name of new Set([...names, ...Object.keys(fields)])) {
      const value = fields[name];
      if (!names.includes(name))
        problems.push({ path: name, value, expected: `no such field; ${names.join(", ")}` });
      else if (typeof value !== "number" || !Number.isFinite(value)) {
        problems.push({ path: name, value, expected: "a finite number, SI" });
      }
    }
  }
  if (problems.length > 0) throw new InputError(problems);
}
