import type { Warning } from "../../safety/index.js";
import type { Refrigerant, SinglePhaseState, State } from "../../state/index.js";
import {
  attempt,
  type Density,
  InputCheck,
  NoSuchStateError,
  type Outcome,
  type Pressure,
  requireObject,
  type Temperature,
} from "../../units/index.js";
import { shown, shownCelsius, shownKilopascal } from "../measurement/shown.js";
import { checkRefrigerant } from "../refrigerant-check.js";

/** Nearer to the critical temperature than this part of it liquid and vapour become alike: no answer is given there. */
const HIGHEST = 0.97;

/** Refrigerant shut in a vessel. */
export interface ShutIn {
  /** Refrigerant. */
  readonly refrigerant: Refrigerant;
  /** Mass over volume, kg/m3. */
  readonly density: Density;
}

/** When a vessel becomes full of liquid. */
export interface LiquidFull {
  /** Whether it does: `full-at`, already so when as cold as can be, or not below 0.97 of the critical temperature. */
  readonly state: "full-at" | "always-full" | "no-lock-below-limit";
  /** Temperature at which the last vapour is gone, K; undefined where there is none. */
  readonly temperature: Temperature | undefined;
  /** Highest temperature that was looked at, K. */
  readonly highest: Temperature;
  /** The numbers that decided. */
  readonly because: string;
}

/** What stands in a vessel at a temperature. */
export interface LiquidLevel {
  /** Liquid and vapour, no room left for vapour, or no liquid. */
  readonly state: "two-phase" | "liquid-full" | "vapour-only";
  /** Part of the volume that is liquid, 0 to 1. */
  readonly fraction: number;
}

/** Liquid that has nowhere to go. */
export interface TrappedLiquid {
  /** Pressure after warming, Pa absolute. */
  readonly pressure: Pressure;
  /** Rise of pressure with temperature when it has just become full, Pa/K. */
  readonly slope: number;
  /** Always one: shut-in liquid bursts what holds it. */
  readonly warnings: readonly Warning<"trapped-liquid">[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
}

/**
 * Temperature at which a filled vessel has no room left for vapour: ρ_liquid(T) = m/V, of a blend at its bubble point.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source density of saturated liquid from the equation of state
 *
 * @example
 * ```ts
 * liquidFullTemperature({ refrigerant: refrigerant("R-32"), density: 780 }).temperature; // → 332.2 K
 * ```
 */
export function liquidFullTemperature(shut: ShutIn): LiquidFull {
  checkShutIn(shut).finish();
  const { refrigerant, density } = shut;
  const liquidAt = (temperature: Temperature): Density => refrigerant.bubble({ temperature }).liquid.density;
  let low: Temperature = refrigerant.limits.minimumTemperature;
  let high: Temperature = HIGHEST * refrigerant.critical.temperature;
  const highest = high;
  if (density >= liquidAt(low)) {
    return {
      state: "always-full",
      temperature: undefined,
      highest,
      because: becauseOf(density, "always full"),
    };
  }
  if (density <= liquidAt(high)) {
    const words = `not full of liquid up to ${shownCelsius(high)}`;
    return {
      state: "no-lock-below-limit",
      temperature: undefined,
      highest,
      because: becauseOf(density, words),
    };
  }
  // The density of saturated liquid falls all the way: 60 halvings leave nothing of 300 K.
  for (let turn = 0; turn < 60 && high - low > 1e-10; turn++) {
    const middle = (low + high) / 2;
    if (liquidAt(middle) > density) low = middle;
    else high = middle;
  }
  const temperature = (low + high) / 2;
  return {
    state: "full-at",
    temperature,
    highest,
    because: becauseOf(density, `full of liquid from ${shownCelsius(temperature)} up`),
  };
}

/** As {@link liquidFullTemperature}, without throwing. */
export function tryLiquidFullTemperature(shut: ShutIn): Outcome<LiquidFull> {
  return attempt(() => liquidFullTemperature(shut));
}

/**
 * How much of a vessel is liquid at a temperature.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; `out-of-range` above the critical temperature.
 * @source densities from the equation of state; of a blend the flash at that density
 */
export function liquidLevel(shut: ShutIn & { readonly temperature: Temperature }): LiquidLevel {
  const check = checkShutIn(shut);
  check.positive("temperature", shut.temperature);
  check.finish();
  const { refrigerant, density, temperature } = shut;
  const { liquid } = refrigerant.bubble({ temperature });
  if (density >= liquid.density) return { state: "liquid-full", fraction: 1 };
  const whole: State = refrigerant.state({ temperature, density });
  if (whole.phase !== "two-phase") return { state: "vapour-only", fraction: 0 };
  return { state: "two-phase", fraction: ((1 - whole.quality) * density) / whole.liquid.density };
}

/** As {@link liquidLevel}, without throwing. */
export function tryLiquidLevel(shut: ShutIn & { readonly temperature: Temperature }): Outcome<LiquidLevel> {
  return attempt(() => liquidLevel(shut));
}

/**
 * Pressure of liquid that filled its space at one temperature and was warmed to another at constant density. Walls give way a
 * little, which is not counted: one more reason never to shut liquid in.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; `out-of-range` beyond the equation of state.
 * @source p(T, ρ) of the equation of state
 */
export function trappedLiquid(trapped: {
  readonly refrigerant: Refrigerant;
  /** Temperature at which liquid filled the space, K. */
  readonly fullAt: Temperature;
  /** Its absolute pressure then, Pa, where it was subcooled; left out, it was at its bubble point. */
  readonly shutInAt?: Pressure;
  /** Temperature it was warmed to, K. */
  readonly warmedTo: Temperature;
}): TrappedLiquid {
  requireObject("", trapped, "a refrigerant and two temperatures");
  const { refrigerant, fullAt, shutInAt, warmedTo } = trapped;
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", refrigerant);
  if (check.positive("fullAt", fullAt) && check.positive("warmedTo", warmedTo)) {
    check.require(
      warmedTo >= fullAt,
      "warmedTo",
      warmedTo,
      `not below the temperature it was full at, ${fullAt} K`,
    );
  }
  if (shutInAt !== undefined) check.positive("shutInAt", shutInAt);
  check.finish();
  const liquid = liquidWhenShut(refrigerant, fullAt, shutInAt);
  const { pressure } =
    warmedTo === fullAt ? liquid : refrigerant.state({ temperature: warmedTo, density: liquid.density });
  const slope = liquid.thermalExpansion / liquid.isothermalCompressibility;
  return {
    pressure,
    slope,
    warnings: [
      {
        code: "trapped-liquid",
        message: `liquid shut in at ${shownCelsius(fullAt)} gains ${shownKilopascal(slope)} for each kelvin: leave it a way out`,
      },
    ],
    assumptions: [
      "The walls are rigid: real ones give way a little.",
      ...(shutInAt === undefined
        ? [
            "The liquid was at its bubble point when it was shut in: subcooled liquid is denser and goes higher.",
          ]
        : []),
    ],
  };
}

function liquidWhenShut(
  refrigerant: Refrigerant,
  temperature: Temperature,
  pressure: Pressure | undefined,
): SinglePhaseState {
  if (pressure === undefined) return refrigerant.bubble({ temperature }).liquid;
  const state = refrigerant.state({ temperature, pressure });
  if (state.phase === "liquid") return state;
  throw new NoSuchStateError({ temperature, pressure }, "liquid alone when it was shut in");
}

/** As {@link trappedLiquid}, without throwing. */
export function tryTrappedLiquid(trapped: Parameters<typeof trappedLiquid>[0]): Outcome<TrappedLiquid> {
  return attempt(() => trappedLiquid(trapped));
}

function becauseOf(density: Density, words: string): string {
  return `${shown(density)} kg/m3 of volume: ${words}`;
}

function checkShutIn(shut: ShutIn): InputCheck {
  requireObject("", shut, "a refrigerant and its density");
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", shut.refrigerant);
  check.positive("density", shut.density);
  return check;
}
