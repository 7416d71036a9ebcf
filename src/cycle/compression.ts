import type { Refrigerant, State } from "../state/index.js";
import { attempt, InputCheck, type Outcome, type Pressure, requireObject } from "../units/index.js";

/** Vapour before and after a compressor, as two states of one refrigerant. */
export interface Compression {
  /** What enters. */
  readonly suction: State;
  /** What leaves: higher in pressure and enthalpy. */
  readonly discharge: State;
}

/**
 * Isentropic efficiency of a compressor that gives off no heat: the work that would have been enough over the work done,
 * (h₂ₛ − h₁)/(h₂ − h₁).
 *
 * A compressor that loses heat through its shell discharges cooler gas and looks better than it is.
 *
 * @param compression - States before and after; both from the same refrigerant object, so that they share a zero.
 * @returns Above 0, at most 1.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a discharge cooler than one without losses.
 * @source definition; any textbook of thermodynamics
 *
 * @example
 * ```ts
 * import { celsius, isentropicEfficiency, megapascal, refrigerant } from "dewline";
 *
 * const r134a = refrigerant("R-134a");
 * isentropicEfficiency({
 *   suction: r134a.state({ temperature: celsius(-10), pressure: megapascal(0.14) }),
 *   discharge: r134a.state({ temperature: celsius(50), pressure: megapascal(0.8) }),
 * }) // → 0.937
 * ```
 */
export function isentropicEfficiency(compression: Compression): number {
  requireObject("", compression, "{ suction, discharge }");
  const { suction, discharge } = compression;
  const check = new InputCheck();
  check.require(isState(suction), "suction", suction, "a state of a refrigerant");
  check.require(isState(discharge), "discharge", discharge, "a state of a refrigerant");
  check.finish();
  check.require(
    suction.refrigerant === discharge.refrigerant,
    "discharge.refrigerant",
    discharge.refrigerant,
    "the same object as that of the suction",
  );
  check.require(
    discharge.pressure > suction.pressure,
    "discharge.pressure",
    discharge.pressure,
    `above that of the suction, ${suction.pressure} Pa`,
  );
  check.finish();
  const { enthalpy } = compressWithoutLosses(suction.refrigerant, suction, discharge.pressure);
  // A discharge that was computed without losses may lie a rounding below.
  const least = enthalpy - ROUNDING * Math.abs(enthalpy - suction.enthalpy);
  check.require(
    discharge.enthalpy >= least,
    "discharge.enthalpy",
    discharge.enthalpy,
    `at least ${enthalpy} J/kg, that after a compression without losses`,
  );
  check.finish();
  return Math.min(1, (enthalpy - suction.enthalpy) / (discharge.enthalpy - suction.enthalpy));
}

/** As {@link isentropicEfficiency}, without throwing. */
export function tryIsentropicEfficiency(compression: Compression): Outcome<number> {
  return attempt(() => isentropicEfficiency(compression));
}

/** How far the solver may be off, relative to the work. */
const ROUNDING = 1e-9;

/** The state at a higher pressure and the same entropy. */
export function compressWithoutLosses(refrigerant: Refrigerant, suction: State, pressure: Pressure): State {
  return refrigerant.state({ pressure, entropy: suction.entropy });
}

function isState(value: unknown): value is State {
  return (
    typeof value === "object" &&
    value !== null &&
    ["pressure", "enthalpy", "entropy"].every((name) =>
      Number.isFinite((value as Readonly<Record<string, unknown>>)[name]),
    ) &&
    typeof (value as Partial<State>).refrigerant?.state === "function"
  );
}
