import {
  attempt,
  type Flavoured,
  formatNumber,
  InputCheck,
  type Outcome,
  type Power,
  requireObject,
  type SpecificEnergy,
} from "../units/index.js";

/** Mass flow of refrigerant, kg/s. */
export type RefrigerantFlow = Flavoured<"kg/s">;

/** Enthalpies around a vapour-compression cycle, all counted from the same zero. */
export interface CycleEnthalpies {
  /** Point 1: vapour that enters the compressor, J/kg. */
  readonly suction: SpecificEnergy;
  /** Point 2: vapour that leaves the compressor, J/kg. */
  readonly discharge: SpecificEnergy;
  /** Point 3: liquid before the expansion device, J/kg. */
  readonly liquid: SpecificEnergy;
  /** Point 4: what enters the evaporator, J/kg. Left out: as the liquid, throttled without heat. */
  readonly evaporatorInlet?: SpecificEnergy;
  /** Point 2s: vapour after a compression without losses, J/kg; gives the isentropic efficiency. */
  readonly isentropicDischarge?: SpecificEnergy;
  /** Refrigerant that goes round, kg/s; gives capacities and power. */
  readonly massFlow?: RefrigerantFlow;
}

/** What a cycle does, for each kilogram that goes round and, when the flow is known, in watts. */
export interface CyclePerformance {
  /** Heat taken up in the evaporator, q_e = h₁ − h₄, J/kg. */
  readonly coolingEffect: SpecificEnergy;
  /** Work put in, w = h₂ − h₁, J/kg. */
  readonly compressionWork: SpecificEnergy;
  /** Heat given off from discharge to liquid, q_c = h₂ − h₃, J/kg. */
  readonly heatRejected: SpecificEnergy;
  /** Coefficient of performance for cooling, q_e/w. */
  readonly coolingCop: number;
  /** Coefficient of performance for heating, q_c/w. */
  readonly heatingCop: number;
  /** (h₂ₛ − h₁)/(h₂ − h₁); undefined where the compression without losses is not known. */
  readonly isentropicEfficiency: number | undefined;
  /** Refrigerant that goes round, kg/s; this and the powers are undefined where no size is known. */
  readonly massFlow: RefrigerantFlow | undefined;
  /** Cooling capacity, W. */
  readonly coolingCapacity: Power | undefined;
  /** Power that the refrigerant takes up in the compressor, W; the electrical input is larger. */
  readonly compressorPower: Power | undefined;
  /** Heating capacity, W. */
  readonly heatingCapacity: Power | undefined;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Cooling, work and coefficients of performance from enthalpies that are already known, from a table or a chart.
 *
 * Tables differ in where they count enthalpy from: take all from one table. Only differences count here, so it does not
 * matter which.
 *
 * @param enthalpies - J/kg, and the mass flow (kg/s) when known.
 * @returns J/kg, W, and pure numbers.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a discharge not above the suction, a
 * liquid that is not below the vapour, or a compression better than one without losses.
 * @source Çengel, Y. A., Boles, M. A., Thermodynamics: An Engineering Approach, 8th ed., McGraw-Hill (2015), chapter 11
 * (recalled)
 *
 * @example
 * ```ts
 * import { cyclePerformance, kilojoulePerKilogram } from "dewline";
 *
 * cyclePerformance({
 *   suction: kilojoulePerKilogram(239.16),
 *   discharge: kilojoulePerKilogram(275.39),
 *   liquid: kilojoulePerKilogram(95.47),
 * }).coolingCop // → 3.966
 * ```
 */
export function cyclePerformance(enthalpies: CycleEnthalpies): CyclePerformance {
  requireObject("", enthalpies, "enthalpies around a cycle");
  examine(enthalpies);
  const { suction, discharge, liquid, evaporatorInlet, isentropicDischarge, massFlow } = enthalpies;
  const coolingEffect = suction - (evaporatorInlet ?? liquid);
  const compressionWork = discharge - suction;
  const heatRejected = discharge - liquid;
  const coolingCop = coolingEffect / compressionWork;
  const heatingCop = heatRejected / compressionWork;
  const times = (energy: SpecificEnergy): Power | undefined =>
    massFlow === undefined ? undefined : massFlow * energy;
  return {
    coolingEffect,
    compressionWork,
    heatRejected,
    coolingCop,
    heatingCop,
    isentropicEfficiency:
      isentropicDischarge === undefined ? undefined : (isentropicDischarge - suction) / compressionWork,
    massFlow,
    coolingCapacity: times(coolingEffect),
    compressorPower: times(compressionWork),
    heatingCapacity: times(heatRejected),
    assumptions: [
      "The machine runs steadily.",
      "The compressor gives no heat to its surroundings: all its work is in the discharge gas.",
      ...(evaporatorInlet === undefined
        ? [
            "The expansion device neither takes up nor gives off heat: what leaves it has the enthalpy of the liquid.",
          ]
        : []),
    ],
    because:
      `cooling ${kilojoule(coolingEffect)}, work ${kilojoule(compressionWork)}, heat given off ` +
      `${kilojoule(heatRejected)}: COP ${formatNumber(coolingCop, 3)} cooling, ${formatNumber(heatingCop, 3)} heating`,
  };
}

/** As {@link cyclePerformance}, without throwing. */
export function tryCyclePerformance(enthalpies: CycleEnthalpies): Outcome<CyclePerformance> {
  return attempt(() => cyclePerformance(enthalpies));
}

function examine(enthalpies: CycleEnthalpies): void {
  const { suction, discharge, liquid, evaporatorInlet, isentropicDischarge, massFlow } = enthalpies;
  const check = new InputCheck();
  const isSuction = check.finite("suction", suction);
  const aboveSuction = (path: string, value: number): void => {
    if (check.finite(path, value) && isSuction) {
      check.require(value > suction, path, value, `above the suction, ${suction} J/kg`);
    }
  };
  const belowSuction = (path: string, value: number): void => {
    if (check.finite(path, value) && isSuction) {
      check.require(value < suction, path, value, `below the suction, ${suction} J/kg`);
    }
  };
  aboveSuction("discharge", discharge);
  belowSuction("liquid", liquid);
  if (evaporatorInlet !== undefined) belowSuction("evaporatorInlet", evaporatorInlet);
  if (isentropicDischarge !== undefined) {
    aboveSuction("isentropicDischarge", isentropicDischarge);
    check.require(
      !(isentropicDischarge > discharge),
      "isentropicDischarge",
      isentropicDischarge,
      `not above the discharge, ${discharge} J/kg: no compressor is better than one without losses`,
    );
  }
  if (massFlow !== undefined) check.positive("massFlow", massFlow);
  check.finish();
}

function kilojoule(energy: SpecificEnergy): string {
  return `${formatNumber(energy / 1000, 2)} kJ/kg`;
}
