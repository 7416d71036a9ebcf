import {
  attempt,
  type Duration,
  InputCheck,
  type Outcome,
  type Pressure,
  type PressureDifference,
  requireObject,
  type Volume,
  year,
} from "../../units/index.js";
import { leakMassFlow } from "../leak-rate/leak-rate.js";
import { type ScaledLeak, scaleLeak } from "../leak-rate/leak-scaling.js";
import { shownUncertainty } from "../measurement/shown.js";
import type { HoseGas } from "./hose.js";
import { checkGas } from "./hose-checks.js";

/** A rise of a vacuum that is taken for one leak. */
export interface RiseAsLeak {
  /** Volume of the system, m3. */
  readonly internalVolume: Volume;
  /** Rise of the pressure, Pa, 0 or above. */
  readonly rise: PressureDifference;
  /** Time that it took, s. */
  readonly duration: Duration;
  /** Absolute pressure of the air around the system, Pa. */
  readonly airPressure: Pressure;
  /** That air; {@link airAt20Celsius} for 20 °C. Its temperature is taken for the refrigerant too. */
  readonly air: HoseGas;
  /** The refrigerant as gas at rest in the charged system. */
  readonly refrigerant: {
    /** Its absolute pressure, Pa. */
    readonly pressure: Pressure;
    /** Dynamic viscosity of its vapour, Pa s; this library has no equation for it. */
    readonly viscosity: number;
    /** Molar mass, kg/mol. */
    readonly molarMass: number;
  };
}

/** What a rise would mean as a leak of the charged system. */
export interface RiseAsLeakResult {
  /** V Δp/Δt: air that came in, Pa m3/s. */
  readonly throughput: number;
  /** The same leak with refrigerant, viscous and molecular, Pa m3/s. */
  readonly scaled: ScaledLeak;
  /** Refrigerant lost if flow is viscous, kg/s. */
  readonly viscousMassFlow: number;
  /** Refrigerant lost if flow is molecular, kg/s. */
  readonly molecularMassFlow: number;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers behind it. */
  readonly because: string;
}

/**
 * What a rise of a vacuum would be, were it one leak: q = V Δp/Δt of air from outside, and that leak with refrigerant at
 * rest inside.
 *
 * The answer is large even for a small rise, which is the point: a rise test finds wet and open systems, and sees no leak of
 * the size that matters. Tightness is shown under pressure.
 *
 * @param question - Volume (m3), rise (Pa), time (s), both gases.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for refrigerant not above the pressure of the air.
 * @source q = V dp/dt; scaling as in {@link scaleLeak}, with the vacuum as no pressure at all
 *
 * @example
 * ```ts
 * // 1000 micron in ten minutes in 1.5 L: as a viscous leak of R-32 at 20 °C some 69 kg a year.
 * const { throughput, viscousMassFlow } = riseAsLeak({
 *   internalVolume: litre(1.5),
 *   rise: micronDifference(1000),
 *   duration: minute(10),
 *   airPressure: 101325,
 *   air: airAt20Celsius(),
 *   refrigerant: { pressure: kilopascal(1474.6), viscosity: 12.4e-6, molarMass: 0.052024 },
 * });
 * throughput; // → 3.333e-4 Pa m3/s
 * inKilogram(viscousMassFlow * year(1)); // → 69.46
 * ```
 */
export function riseAsLeak(question: RiseAsLeak): RiseAsLeakResult {
  requireObject("", question, "a rise, air and refrigerant");
  const { internalVolume, rise, duration, airPressure, air, refrigerant } = question;
  const check = new InputCheck();
  check.positive("internalVolume", internalVolume);
  check.notNegative("rise", rise);
  check.positive("duration", duration);
  check.positive("airPressure", airPressure);
  checkGas(check, "air", air);
  if (check.positive("refrigerant.pressure", refrigerant?.pressure)) {
    check.require(
      !(refrigerant.pressure <= airPressure),
      "refrigerant.pressure",
      refrigerant.pressure,
      `above the pressure of the air, ${airPressure} Pa`,
    );
  }
  check.positive("refrigerant.viscosity", refrigerant?.viscosity);
  check.positive("refrigerant.molarMass", refrigerant?.molarMass);
  check.finish();
  const throughput = (internalVolume * rise) / duration;
  const scaled = scaleLeak({
    throughput,
    measured: { inside: airPressure, outside: 0, viscosity: air.viscosity, molarMass: air.molarMass },
    wanted: {
      inside: refrigerant.pressure,
      outside: airPressure,
      viscosity: refrigerant.viscosity,
      molarMass: refrigerant.molarMass,
    },
  });
  const massFlow = (each: number) => leakMassFlow(each, refrigerant.molarMass, air.temperature);
  const viscousMassFlow = massFlow(scaled.viscous);
  const molecularMassFlow = massFlow(scaled.molecular);
  const yearly = (each: number) => shownUncertainty(each * year(1));
  return {
    throughput,
    scaled,
    viscousMassFlow,
    molecularMassFlow,
    assumptions: [
      "All of the rise is air through one leak: none of it is water, oil or refrigerant that was still inside.",
      ...scaled.assumptions,
    ],
    because:
      `${shownUncertainty(throughput)} Pa m³/s of air; with refrigerant inside ${yearly(viscousMassFlow)} kg a year if ` +
      `viscous, ${yearly(molecularMassFlow)} kg if molecular`,
  };
}

/** As {@link riseAsLeak}, without throwing. */
export function tryRiseAsLeak(question: RiseAsLeak): Outcome<RiseAsLeakResult> {
  return attempt(() => riseAsLeak(question));
}
