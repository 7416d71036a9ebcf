import type { Refrigerant, Saturation } from "../state/index.js";
import {
  type InputCheck,
  NotConvergedError,
  type Pressure,
  type SpecificEnergy,
  type Temperature,
  type TemperatureDifference,
} from "../units/index.js";

/**
 * Which temperature of a blend is meant. `dew` and `bubble`: the ends of the glide; compressor data of EN 12900 and
 * AHRI 540 are by dew points (recalled). `midpoint`: half-way between the two. `inlet-midpoint`: half-way between the
 * inlet of the evaporator, which boils already, and the dew point.
 */
export type GlidePoint = "dew" | "bubble" | "midpoint" | "inlet-midpoint";

/** How high evaporation or condensation lies: by pressure or by temperature, not both. */
export type SaturationLevel<At extends GlidePoint = GlidePoint> =
  | {
      /** Absolute pressure, Pa. */
      readonly pressure: Pressure;
      readonly temperature?: never;
      readonly at?: never;
    }
  | {
      /** Saturation temperature, K. */
      readonly temperature: Temperature;
      /** Which temperature of the blend is meant: no default. A pure refrigerant has only one. */
      readonly at?: At;
      readonly pressure?: never;
    };

/** Two phases at the pressure of the condenser, K and Pa. */
export interface CondensingLevel {
  /** Absolute pressure, Pa. */
  readonly pressure: Pressure;
  /** How the caller gave it; `saturation` for a temperature of a pure refrigerant. */
  readonly givenAs: "pressure" | "saturation" | GlidePoint;
  /** Bubble point: the last vapour is gone, K. Subcooling counts from here. */
  readonly bubbleTemperature: Temperature;
  /** Dew point: superheat counts from here, K. */
  readonly dewTemperature: Temperature;
  /** Dew less bubble temperature, K; 0 for a pure refrigerant. */
  readonly glide: TemperatureDifference;
  /** Half-way between dew and bubble point, K. */
  readonly midpoint: Temperature;
  /** Mean temperature at which the heat of the two phases is moved, Δh/Δs, K: from dew to bubble point. */
  readonly mean: Temperature;
}

/** Two phases at the pressure of the evaporator, K and Pa. Its `mean` is from the inlet to the dew point. */
export interface EvaporatingLevel extends CondensingLevel {
  /** Temperature of what enters the evaporator, K: above the bubble point of a blend, since part has boiled already. */
  readonly inletTemperature: Temperature;
  /** Half-way between the inlet and the dew point, K. */
  readonly inletMidpoint: Temperature;
}

/** What a level may be given by; an inlet has only the evaporator. */
export const CONDENSING_POINTS: readonly GlidePoint[] = ["dew", "bubble", "midpoint"];
export const EVAPORATING_POINTS: readonly GlidePoint[] = ["dew", "bubble", "midpoint", "inlet-midpoint"];

/** Records what is wrong with a level. */
export function checkLevel(
  check: InputCheck,
  path: string,
  level: SaturationLevel,
  allowed: readonly GlidePoint[],
  isBlend: boolean,
): void {
  const expected = "{ pressure } or { temperature, at }, one of them";
  if (!check.require(typeof level === "object" && level !== null, path, level, expected)) return;
  const { pressure, temperature, at } = level;
  const isOne = (pressure === undefined) !== (temperature === undefined);
  if (!check.require(isOne, path, level, expected)) return;
  const words = `one of ${allowed.join(", ")}`;
  if (pressure !== undefined) {
    check.positive(`${path}.pressure`, pressure);
    check.require(at === undefined, `${path}.at`, at, "nothing: a pressure needs no end of the glide");
  } else {
    check.positive(`${path}.temperature`, temperature);
    if (at !== undefined || isBlend) {
      const reason = at === undefined ? `${words}: a blend has more than one temperature` : words;
      check.require(allowed.includes(at as GlidePoint), `${path}.at`, at, reason);
    }
  }
}

/**
 * Absolute pressure of a level that was checked, Pa.
 *
 * @param inlet - Enthalpy of what enters the evaporator, J/kg; only needed for `inlet-midpoint`.
 */
export function pressureOf(
  refrigerant: Refrigerant,
  level: SaturationLevel,
  inlet?: SpecificEnergy,
): Pressure {
  const { pressure, temperature, at } = level;
  if (pressure !== undefined) return pressure;
  if (refrigerant.blend === undefined || at === "dew") return refrigerant.dew({ temperature }).pressure;
  if (at === "bubble") return refrigerant.bubble({ temperature }).pressure;
  const low = refrigerant.dew({ temperature }).pressure;
  const high = refrigerant.bubble({ temperature }).pressure;
  return midpointPressure(temperature, low, high, (p) => {
    const dew = refrigerant.dew({ pressure: p }).temperature;
    return inlet === undefined
      ? (refrigerant.bubble({ pressure: p }).temperature + dew) / 2
      : (refrigerant.state({ pressure: p, enthalpy: inlet }).temperature + dew) / 2;
  });
}

/** How a level was given, in one word. */
function givenAs(refrigerant: Refrigerant, level: SaturationLevel): CondensingLevel["givenAs"] {
  if (level.pressure !== undefined) return "pressure";
  return refrigerant.blend === undefined ? "saturation" : level.at!;
}

/** What the two phases of a condenser are like. */
export function condensingLevel(
  refrigerant: Refrigerant,
  level: SaturationLevel,
  { bubble, dew }: { readonly bubble: Saturation; readonly dew: Saturation },
): CondensingLevel {
  return {
    pressure: dew.pressure,
    givenAs: givenAs(refrigerant, level),
    bubbleTemperature: bubble.temperature,
    dewTemperature: dew.temperature,
    glide: dew.temperature - bubble.temperature,
    midpoint: (bubble.temperature + dew.temperature) / 2,
    mean:
      refrigerant.blend === undefined
        ? dew.temperature
        : (dew.vapour.enthalpy - bubble.liquid.enthalpy) / (dew.vapour.entropy - bubble.liquid.entropy),
  };
}

/** A midpoint is met when it is this close, relative: some ten times what bubble and dew points scatter. */
const SETTLED = 1e-11;

/**
 * Pressure at which a middle temperature is `target`, between the dew pressure there (where the middle is too cold) and
 * the bubble pressure (too warm): false position in ln p, the stale end halved (Illinois).
 */
function midpointPressure(
  target: Temperature,
  low: Pressure,
  high: Pressure,
  middleAt: (pressure: Pressure) => Temperature,
): Pressure {
  let a = Math.log(low);
  let b = Math.log(high);
  let fa = middleAt(low) - target;
  let fb = middleAt(high) - target;
  // Only a rounding apart at an azeotrope; an inlet that is liquid still is refused by the caller.
  if (!(fa < 0)) return low;
  if (!(fb > 0)) return high;
  let moved: "a" | "b" | undefined;
  for (let step = 0; step < 60; step++) {
    const x = (a * fb - b * fa) / (fb - fa);
    const f = middleAt(Math.exp(x)) - target;
    if (Math.abs(f) <= SETTLED * target) return Math.exp(x);
    if (f < 0) {
      a = x;
      fa = f;
      if (moved === "a") fb /= 2;
      moved = "a";
    } else {
      b = x;
      fb = f;
      if (moved === "b") fa /= 2;
      moved = "b";
    }
  }
  throw new NotConvergedError("the pressure of a midpoint temperature", { temperature: target, low, high });
}
