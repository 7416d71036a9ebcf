import {
  attempt,
  formatNumber,
  InputCheck,
  type Outcome,
  requireObject,
  type Temperature,
} from "../units/index.js";

/** Two temperatures between which heat is moved. */
export interface CarnotTemperatures {
  /** Temperature at which heat is taken up, K. */
  readonly cold: Temperature;
  /** Temperature at which heat is given off, K; above the other. */
  readonly warm: Temperature;
}

/** The best that any machine can do between two temperatures. */
export interface Carnot extends CarnotTemperatures {
  /** Heat taken up for each unit of work, T_cold/(T_warm − T_cold). */
  readonly coolingCop: number;
  /** Heat given off for each unit of work, T_warm/(T_warm − T_cold). */
  readonly heatingCop: number;
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Coefficients of performance of Carnot's cycle between two temperatures.
 *
 * @param temperatures - Cold and warm side, K. For a blend, which boils over a range, say which temperatures they are.
 * @returns Coefficients for cooling and for heating; heating = cooling + 1.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a warm side not above the cold one.
 * @source second law; any textbook of thermodynamics
 *
 * @example
 * ```ts
 * import { carnot, celsius } from "dewline";
 *
 * carnot({ cold: celsius(7), warm: celsius(45) }).coolingCop // → 7.37237
 * ```
 */
export function carnot(temperatures: CarnotTemperatures): Carnot {
  requireObject("", temperatures, "{ cold, warm }");
  const { cold, warm } = temperatures;
  const check = new InputCheck();
  const areBoth = [check.positive("cold", cold), check.positive("warm", warm)];
  if (!areBoth.includes(false)) {
    check.require(warm > cold, "warm", warm, `above the cold side, ${cold} K`);
  }
  check.finish();
  const lift = warm - cold;
  const coolingCop = cold / lift;
  return {
    cold,
    warm,
    coolingCop,
    heatingCop: warm / lift,
    because:
      `T_cold/(T_warm − T_cold) with ${formatNumber(cold, 2)} K and ${formatNumber(warm, 2)} K: ` +
      formatNumber(coolingCop, 3),
  };
}

/** As {@link carnot}, without throwing. */
export function tryCarnot(temperatures: CarnotTemperatures): Outcome<Carnot> {
  return attempt(() => carnot(temperatures));
}
