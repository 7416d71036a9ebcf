import {
  type Masses,
  type Mixing,
  type Refrigerant,
  type Vessel,
  type VesselPhase,
  VesselSearch,
} from "../../state/index.js";
import { attempt, type Mass, type Outcome, OutOfRangeError, type Pressure } from "../../units/index.js";
import { checkLeakSituation, type LeakSituation, type Leaving } from "./situation.js";

/** What is in the vessel after some of it was lost. */
export interface LeakState {
  /** Lost since the beginning, as a fraction of the charge. */
  readonly lostFraction: number;
  /** Lost since the beginning, kg. */
  readonly lostMass: Mass;
  /** Left, kg. */
  readonly remainingMass: Mass;
  /** Absolute pressure, Pa. */
  readonly pressure: Pressure;
  /** The liquid; undefined where there is none. */
  readonly liquid: VesselPhase | undefined;
  /** The vapour; undefined where there is none. */
  readonly vapour: VesselPhase | undefined;
  /** Mass fractions by designation of all that is left. */
  readonly composition: Readonly<Record<string, number>>;
  /** Bubble pressure of all that is left at the vessel's temperature, Pa. */
  readonly bubblePressure: Pressure;
  /** Its dew pressure, Pa. */
  readonly dewPressure: Pressure;
}

/** A leak from the first state to the last. */
export interface LeakResult {
  /** States in order, the full vessel first. */
  readonly states: readonly LeakState[];
  /** Mass fractions by designation of all that was lost. */
  readonly escaped: Readonly<Record<string, number>>;
  /**
   * The worst balance of any component in any state, relative to its first mass: left and lost against the beginning,
   * liquid and vapour against what is left.
   */
  readonly imbalance: number;
  /** How well the components' mixing is known; undefined for a pure refrigerant. */
  readonly mixing: Mixing | undefined;
  /** What was taken for granted. */
  readonly assumptions: readonly string[];
}

/** States that are reported, and steps of integration between two of them. */
const reports = 20;
const stepsBetween = 5;

const assumptions: readonly string[] = [
  "The whole vessel is at one temperature all the time, and liquid and vapour are in equilibrium: a slow leak at rest.",
  "No refrigerant is dissolved in oil.",
];

/**
 * What a leak does to a refrigerant: a rigid vessel at a temperature loses vapour, liquid or both, with equilibrium at
 * every step and the mass of every component kept account of.
 *
 * dmᵢ = −wᵢ dm with w the mass fractions of what leaves, by the classical Runge–Kutta method.
 *
 * @throws `malformed-input`, all problems at once; `out-of-range` where the refrigerant has no bubble point at the
 *   temperature, or the charge is more than the volume holds below the highest pressure of its equation; `no-such-state` or
 *   `not-converged` where there is no equilibrium.
 * @source Mass balance per component; for a vapour leak of nearly all liquid it becomes the equation of Rayleigh, Lord,
 *   Philos. Mag. 4 (1902) 521.
 *
 * @example
 * ```ts
 * import { celsius, kilogram, litre, refrigerant, simulateLeak } from "dewline";
 *
 * const { states } = simulateLeak({
 *   refrigerant: refrigerant("R-407C"),
 *   charge: kilogram(1.5),
 *   volume: litre(3),
 *   temperature: celsius(25),
 *   leaving: "vapour",
 *   lostFraction: 0.4,
 * });
 * states.at(-1)?.liquid?.composition["R-134a"] // → 0.616 (0.52 as charged)
 * ```
 */
export function simulateLeak(situation: LeakSituation): LeakResult {
  checkLeakSituation(situation, "a leak");
  const { refrigerant, charge } = situation;
  const masses = scaled(refrigerant.composition, charge);
  return leakFrom(situation, masses);
}

/** As {@link simulateLeak}, without throwing. */
export function trySimulateLeak(situation: LeakSituation): Outcome<LeakResult> {
  return attempt(() => simulateLeak(situation));
}

/** The same from other masses than those of the refrigerant's own composition; the situation has been checked. */
export function leakFrom(situation: LeakSituation, first: Masses): LeakResult {
  const { refrigerant, charge, volume, temperature, leaving, lostFraction } = situation;
  // The search below knows no ranges: a bubble point does.
  refrigerant.bubble({ temperature });
  const search = new VesselSearch(refrigerant, temperature, volume);
  const rates = (masses: Masses): Masses => leavingFractions(search.contentsOf(masses), leaving);
  const states = [stateOf(search, first, 0, charge)];
  requirePressure(refrigerant, states[0]!.pressure);
  let masses = first;
  let escaped: Masses = scaled(first, 0);
  let imbalance = imbalanceOf(states[0]!, masses, escaped, first);
  const step = (lostFraction * charge) / (reports * stepsBetween);
  for (let report = 1; report <= reports; report++) {
    for (let k = 0; k < stepsBetween; k++) {
      const gone = increment(masses, step, rates);
      masses = sum(masses, gone, -1);
      escaped = sum(escaped, gone, 1);
    }
    const state = stateOf(search, masses, (report / reports) * lostFraction * charge, charge);
    imbalance = Math.max(imbalance, imbalanceOf(state, masses, escaped, first));
    states.push(state);
  }
  return {
    states,
    escaped: fractionsOf(escaped),
    imbalance,
    mixing: refrigerant.mixing,
    assumptions,
  };
}

/** A vessel too small for its charge has a pressure that no equation was made for. */
function requirePressure({ designation, limits }: Refrigerant, pressure: Pressure): void {
  if (pressure <= limits.maximumPressure) return;
  throw new OutOfRangeError({
    quantity: "pressure",
    value: pressure,
    minimum: 0,
    maximum: limits.maximumPressure,
    unit: "Pa",
    subject: designation,
    hint: "the volume is too small for the charge",
  });
}

/** What leaves in one step, by Runge and Kutta's four looks at the rates. */
function increment(masses: Masses, step: Mass, rates: (masses: Masses) => Masses): Masses {
  const k1 = rates(masses);
  const k2 = rates(sum(masses, k1, -step / 2));
  const k3 = rates(sum(masses, k2, -step / 2));
  const k4 = rates(sum(masses, k3, -step));
  return mapped(masses, (_, name) => (step * (k1[name]! + 2 * k2[name]! + 2 * k3[name]! + k4[name]!)) / 6);
}

function leavingFractions({ liquid, vapour }: Vessel, leaving: Leaving): Masses {
  const whole = (liquid ?? vapour)!.composition;
  if (liquid === undefined || vapour === undefined) return whole;
  if (leaving === "vapour") return vapour.composition;
  if (leaving === "liquid") return liquid.composition;
  const { quality } = leaving;
  return mapped(
    whole,
    (_, name) => quality * vapour.composition[name]! + (1 - quality) * liquid.composition[name]!,
  );
}

function stateOf(search: VesselSearch, masses: Masses, lostMass: Mass, charge: Mass): LeakState {
  const { pressure, liquid, vapour } = search.contentsOf(masses);
  const { bubble, dew } = search.boundaryOf(masses);
  return {
    lostFraction: lostMass / charge,
    lostMass,
    remainingMass: total(masses),
    pressure,
    liquid,
    vapour,
    composition: fractionsOf(masses),
    bubblePressure: bubble,
    dewPressure: dew,
  };
}

function imbalanceOf({ liquid, vapour }: LeakState, masses: Masses, escaped: Masses, first: Masses): number {
  const inPhases = (name: string): number =>
    (liquid === undefined ? 0 : liquid.mass * liquid.composition[name]!) +
    (vapour === undefined ? 0 : vapour.mass * vapour.composition[name]!);
  return Math.max(
    ...Object.keys(first).flatMap((name) => [
      Math.abs(masses[name]! + escaped[name]! - first[name]!) / first[name]!,
      Math.abs(inPhases(name) - masses[name]!) / first[name]!,
    ]),
  );
}

/** Masses from mass fractions. */
export function scaled(fractions: Masses, factor: number): Masses {
  return mapped(fractions, (value) => factor * value);
}

/** Left plus factor times right, component by component. */
export function sum(left: Masses, right: Masses, factor: number): Masses {
  return mapped(left, (value, name) => value + factor * right[name]!);
}

/** Mass fractions of masses. */
export function fractionsOf(masses: Masses): Readonly<Record<string, number>> {
  const whole = total(masses);
  return mapped(masses, (value) => value / whole);
}

function total(masses: Masses): Mass {
  return Object.values(masses).reduce((whole, each) => whole + each, 0);
}

function mapped(masses: Masses, of: (value: number, name: string) => number): Masses {
  return Object.fromEntries(Object.entries(masses).map(([name, value]) => [name, of(value, name)]));
}
