import data from "../../data/cycle/cycle.json" with { type: "json" };
import type { Refrigerant, Saturation, State, TwoPhaseState } from "../state/index.js";
import {
  attempt,
  formatNumber,
  InputError,
  type Outcome,
  OutOfRangeError,
  type Pressure,
  type Temperature,
  type VolumeFlow,
} from "../units/index.js";
import { type Carnot, carnot } from "./carnot.js";
import { compressWithoutLosses } from "./compression.js";
import { type CyclePerformance, cyclePerformance } from "./cycle-arithmetic.js";
import { type CycleInput, checkCycleInput } from "./cycle-input.js";
import { sizeOf } from "./cycle-size.js";
import {
  type CondensingLevel,
  condensingLevel,
  type EvaporatingLevel,
  pressureOf,
  type SaturationLevel,
} from "./saturation-level.js";

/** The points of the cycle, in the order of the flow. */
export interface CycleStates {
  /** Point 1: vapour that enters the compressor. */
  readonly suction: State;
  /** Point 2s: what a compressor without losses would discharge. */
  readonly isentropicDischarge: State;
  /** Point 2: vapour that leaves the compressor. */
  readonly discharge: State;
  /** Point 3: liquid before the expansion device. */
  readonly liquid: State;
  /** Point 4: what enters the evaporator. */
  readonly evaporatorInlet: TwoPhaseState;
}

/** Something about a cycle that a careful user should know; the numbers still stand. */
export interface CycleWarning {
  /** `wet-discharge`: the gas leaves the compressor with liquid in it. */
  readonly code: "wet-discharge";
  /** What is odd, with the numbers, in English. */
  readonly message: string;
}

/** A basic vapour-compression cycle. */
export interface VapourCompressionCycle extends CyclePerformance {
  /** The refrigerant that goes round. */
  readonly refrigerant: Refrigerant;
  /** Its points. */
  readonly states: CycleStates;
  /** Evaporation, with the temperatures that one may mean by it. */
  readonly evaporating: EvaporatingLevel;
  /** Condensation, likewise. */
  readonly condensing: CondensingLevel;
  /** Share of vapour in what enters the evaporator, by mass. */
  readonly flashGas: number;
  /** Cooling for each cubic metre that the compressor draws in, q_e ρ₁, J/m3. */
  readonly volumetricCapacity: number;
  /** Work without losses over work done, as given. */
  readonly isentropicEfficiency: number;
  /** Volume swept by the compressor, m3/s; undefined without a volumetric efficiency. */
  readonly displacement: VolumeFlow | undefined;
  /** Temperature of the gas that leaves the compressor, K. */
  readonly dischargeTemperature: Temperature;
  /** Condensing over evaporating pressure. */
  readonly compressionRatio: number;
  /**
   * Carnot's cycle between the mean temperatures of evaporation and condensation: of a pure refrigerant its two
   * saturation temperatures, of a blend Δh/Δs from inlet to dew point and from dew to bubble point.
   */
  readonly carnot: Carnot;
  /** COP for cooling over Carnot's. Subcooling and superheat lie outside those temperatures and raise it a little. */
  readonly carnotFraction: number;
  /** What is odd. */
  readonly warnings: readonly CycleWarning[];
  /** Citations: of the refrigerant's equations, then of the cycle. */
  readonly sources: readonly string[];
}

/**
 * The basic vapour-compression cycle: four states and what they say.
 *
 * 1 suction: superheated above the dew point. 2s: same entropy at the condensing pressure; 2: h₂ = h₁ + (h₂ₛ − h₁)/η.
 * 3 liquid: subcooled below the bubble point. 4: h₄ = h₃ at the evaporating pressure.
 *
 * @param input - Levels by pressure (Pa) or temperature (K), superheat and subcooling (K), isentropic efficiency.
 * @returns States, J/kg, W, K, Pa, and pure numbers; temperatures of both levels by every convention.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for condensing not above evaporating, a
 * blend's temperature without `at`, and a liquid so cold that it would not boil in the evaporator.
 * @throws {@link OutOfRangeError} `out-of-range` for condensing at or above 0.95 of the critical pressure, and beyond
 * the equation of state.
 * @throws `no-such-state` for a blend whose bubble and dew lines do not meet in a critical point.
 * @source Çengel, Y. A., Boles, M. A., Thermodynamics: An Engineering Approach, 8th ed., McGraw-Hill (2015), chapter 11
 * (recalled); the states from the refrigerant's equation of state; the limit of 0.95: our own rule
 *
 * @example
 * ```ts
 * import { celsius, refrigerant, vapourCompressionCycle } from "dewline";
 *
 * const cycle = vapourCompressionCycle({
 *   refrigerant: refrigerant("R-32"),
 *   evaporating: { temperature: celsius(7) },
 *   condensing: { temperature: celsius(45) },
 *   superheat: 5,
 *   subcooling: 5,
 *   isentropicEfficiency: 0.7,
 * });
 * cycle.coolingCop // → 4.137
 * cycle.dischargeTemperature // → 365.29 K
 * ```
 */
export function vapourCompressionCycle(input: CycleInput): VapourCompressionCycle {
  checkCycleInput(input);
  const { refrigerant, isentropicEfficiency, superheat, subcooling } = input;
  const highPressure = pressureOf(refrigerant, input.condensing);
  requireBelowCritical(refrigerant, highPressure);
  const hot = endsAt(refrigerant, highPressure);
  const liquid = beside(hot.bubble, hot.bubble.liquid, -subcooling);
  const lowPressure = pressureOf(refrigerant, input.evaporating, liquidEnthalpyFor(input, liquid));
  if (!(highPressure > lowPressure)) throw notAbove(input, lowPressure);
  const cold = endsAt(refrigerant, lowPressure);
  const suction = beside(cold.dew, cold.dew.vapour, superheat);
  const evaporatorInlet = refrigerant.state({ pressure: lowPressure, enthalpy: liquid.enthalpy });
  if (evaporatorInlet.phase !== "two-phase") throw tooCold(subcooling, hot.bubble, cold.bubble);
  const isentropicDischarge = compressWithoutLosses(refrigerant, suction, highPressure);
  const discharge =
    isentropicEfficiency === 1
      ? isentropicDischarge
      : refrigerant.state({
          pressure: highPressure,
          enthalpy:
            suction.enthalpy + (isentropicDischarge.enthalpy - suction.enthalpy) / isentropicEfficiency,
        });
  const condensing = condensingLevel(refrigerant, input.condensing, hot);
  const evaporating = evaporatingLevel(refrigerant, input.evaporating, cold, evaporatorInlet);
  const size = sizeOf(input.size, { suction, discharge, liquid });
  const performance = cyclePerformance({
    suction: suction.enthalpy,
    discharge: discharge.enthalpy,
    liquid: liquid.enthalpy,
    ...(size.massFlow === undefined ? {} : { massFlow: size.massFlow }),
  });
  const ideal = carnot({ cold: evaporating.mean, warm: condensing.mean });
  return {
    ...performance,
    refrigerant,
    states: { suction, isentropicDischarge, discharge, liquid, evaporatorInlet },
    evaporating,
    condensing,
    flashGas: evaporatorInlet.quality,
    volumetricCapacity: performance.coolingEffect * suction.density,
    isentropicEfficiency,
    displacement: size.displacement,
    dischargeTemperature: discharge.temperature,
    compressionRatio: highPressure / lowPressure,
    carnot: ideal,
    carnotFraction: performance.coolingCop / ideal.coolingCop,
    warnings: warningsOf(discharge),
    assumptions: [...performance.assumptions, ...assumptionsOf(refrigerant, size.displacement)],
    sources: [...refrigerant.sources, data.definitions.source],
    because:
      `${refrigerant.designation}, evaporating ${levelWords(evaporating)}, condensing ${levelWords(condensing)}, ` +
      `efficiency ${isentropicEfficiency}: ${performance.because}`,
  };
}

/** As {@link vapourCompressionCycle}, without throwing. */
export function tryVapourCompressionCycle(input: CycleInput): Outcome<VapourCompressionCycle> {
  return attempt(() => vapourCompressionCycle(input));
}

interface Ends {
  readonly bubble: Saturation;
  readonly dew: Saturation;
}

function endsAt(refrigerant: Refrigerant, pressure: Pressure): Ends {
  return { bubble: refrigerant.bubble({ pressure }), dew: refrigerant.dew({ pressure }) };
}

/** The saturated state itself, or the one so many kelvin beside it at the same pressure. */
function beside(at: Saturation, saturated: State, kelvin: number): State {
  if (kelvin === 0) return saturated;
  return saturated.refrigerant.state({ temperature: at.temperature + kelvin, pressure: at.pressure });
}

function liquidEnthalpyFor({ evaporating }: CycleInput, liquid: State): number | undefined {
  return evaporating.at === "inlet-midpoint" ? liquid.enthalpy : undefined;
}

function evaporatingLevel(
  refrigerant: Refrigerant,
  level: SaturationLevel,
  ends: Ends,
  inlet: TwoPhaseState,
): EvaporatingLevel {
  const { vapour, temperature } = ends.dew;
  return {
    ...condensingLevel(refrigerant, level, ends),
    mean:
      refrigerant.blend === undefined
        ? temperature
        : (vapour.enthalpy - inlet.enthalpy) / (vapour.entropy - inlet.entropy),
    inletTemperature: inlet.temperature,
    inletMidpoint: (inlet.temperature + temperature) / 2,
  };
}

function requireBelowCritical(refrigerant: Refrigerant, pressure: Pressure): void {
  const maximum = data.nearCritical.fractionOfCriticalPressure * refrigerant.critical.pressure;
  if (pressure < maximum) return;
  throw new OutOfRangeError({
    quantity: "condensing pressure",
    value: pressure,
    minimum: 0,
    maximum,
    unit: "Pa",
    subject: `a cycle of ${refrigerant.designation} that condenses`,
    hint: `the critical pressure is ${formatNumber(refrigerant.critical.pressure, 0)} Pa`,
  });
}

function notAbove({ condensing }: CycleInput, evaporating: Pressure): InputError {
  const name = condensing.pressure === undefined ? "temperature" : "pressure";
  const expected = `condensing above evaporation, which is at ${formatNumber(evaporating, 0)} Pa`;
  return new InputError([{ path: `condensing.${name}`, value: condensing[name], expected }]);
}

function tooCold(subcooling: number, hot: Saturation, cold: Saturation): InputError {
  const most = formatNumber(hot.temperature - cold.temperature, 2);
  const expected = `less than about ${most} K: colder liquid would enter the evaporator without boiling`;
  return new InputError([{ path: "subcooling", value: subcooling, expected }]);
}

function warningsOf(discharge: State): CycleWarning[] {
  if (discharge.phase !== "two-phase") return [];
  const wet = formatNumber(100 * (1 - discharge.quality), 1);
  const message = `${wet} % of what leaves the compressor is liquid: this refrigerant needs more superheat`;
  return [{ code: "wet-discharge", message }];
}

function assumptionsOf({ mixing, blend }: Refrigerant, displacement: VolumeFlow | undefined): string[] {
  const assumptions = [
    "No pressure is lost in pipes, coils and valves: there are two pressures only.",
    "Superheat counts from the dew point and all of it cools; subcooling counts from the bubble point.",
  ];
  if (displacement !== undefined) {
    assumptions.push("The volumetric efficiency is that of the vapour at the compressor inlet.");
  }
  if (blend !== undefined && mixing !== undefined) {
    assumptions.push(
      "The blend goes round with its designated composition: no component stays behind in oil or liquid.",
      `Its mixture model is ${mixing.grade}: bubble and dew pressures may be ` +
        `${formatNumber(100 * mixing.deviation, 1)} % off.`,
    );
  }
  return assumptions;
}

function levelWords({ pressure, bubbleTemperature, dewTemperature, glide }: CondensingLevel): string {
  const celsius = (temperature: Temperature): string => formatNumber(temperature - 273.15, 1);
  const span =
    glide === 0
      ? `${celsius(dewTemperature)} °C`
      : `${celsius(bubbleTemperature)} °C bubble to ${celsius(dewTemperature)} °C dew`;
  return `at ${span} (${formatNumber(pressure / 1000, 1)} kPa)`;
}
