import data from "../../../data/field/evacuation.json" with { type: "json" };
import {
  attempt,
  InputCheck,
  type Length,
  type Outcome,
  type Pressure,
  requireObject,
  type Temperature,
  type VolumeFlow,
} from "../../units/index.js";
import { shown } from "../measurement/shown.js";
import { checkGas, checkHoseElement } from "./hose-checks.js";
import { meanFreePathFactor, resistanceOf } from "./hose-resistance.js";

/** A gas, as far as its flow through a hose asks for it. */
export interface HoseGas {
  /** Dynamic viscosity at the temperature, Pa s. */
  readonly viscosity: number;
  /** Molar mass, kg/mol. */
  readonly molarMass: number;
  /** Temperature of the hose, K. */
  readonly temperature: Temperature;
}

/** A {@link HoseGas} with where its numbers are from. */
export interface SourcedHoseGas extends HoseGas {
  /** Where the numbers come from. */
  readonly source: string;
  /** `recalled`: from memory of the source. */
  readonly status: "recalled";
}

/** A round piece between system and pump: a hose, a pipe, a valve core that was left in. */
export interface HoseElement {
  /** Inner diameter, m. */
  readonly innerDiameter: Length;
  /** Length, m. */
  readonly length: Length;
}

/** A hose at a mean pressure. */
export interface HoseConductanceQuestion {
  /** The hose. */
  readonly element: HoseElement;
  /** Gas in it; {@link airAt20Celsius} for air. */
  readonly gas: HoseGas;
  /** Mean of the pressures at its two ends, Pa absolute. */
  readonly meanPressure: Pressure;
}

/** How a gas flows: as a fluid, as single molecules, or between. */
export type FlowRegime = "viscous" | "transition" | "molecular";

/** What a hose lets through at a mean pressure. */
export interface HoseConductance {
  /** Viscous and molecular part together, m3/s: the throughput for each Pa between the ends, at the gas temperature. */
  readonly conductance: VolumeFlow;
  /** Part of the gas that flows as a fluid, m3/s; proportional to the pressure. */
  readonly viscous: VolumeFlow;
  /** Part of the gas that flies as single molecules, m3/s; the same at any pressure. */
  readonly molecular: VolumeFlow;
  /** Mean free path of a molecule at the mean pressure, m. */
  readonly meanFreePath: Length;
  /** Mean free path over diameter. */
  readonly knudsenNumber: number;
  /** `viscous` below a Knudsen number of 0.01, `molecular` above 0.5, else `transition`. */
  readonly regime: FlowRegime;
  /** The numbers behind it. */
  readonly because: string;
}

/**
 * Air at 20 °C, to be passed on: nothing here takes it for granted.
 *
 * @returns 18.2 µPa s, 28.97 g/mol, 293.15 K.
 * @source `data/field/evacuation.json`: Lemmon and Jacobsen 2004, CIPM-2007 (recalled)
 */
export function airAt20Celsius(): SourcedHoseGas {
  const { viscosity, molarMass, temperature, source } = data.air;
  return { viscosity, molarMass, temperature, source, status: "recalled" };
}

/**
 * Conductance of a long round hose, C = π d⁴ p̄/(128 η L) + π d³ v̄/(12 L) with v̄ = √(8 R T/(π M)).
 *
 * The sum holds in molecular and in viscous flow; between them it is too large, by up to 15 % against Knudsen's own
 * formula, and it is too large for a piece that is short for its bore. So it is an upper bound.
 *
 * @param question - Diameter and length (m), gas, mean pressure (Pa absolute).
 * @returns m3/s.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source Hagen and Poiseuille; Knudsen, M., Ann. Phys. 333 (1909) 75; mean free path λ = (η/p) √(π R T/(2 M)), all as
 * in Jousten, K. (ed.), Handbook of Vacuum Technology, 2nd ed., Wiley-VCH (2016) (recalled)
 *
 * @example
 * ```ts
 * const { conductance, regime } = hoseConductance({
 *   element: { innerDiameter: millimetre(4.8), length: 1.5 },
 *   gas: airAt20Celsius(),
 *   meanPressure: micron(500),
 * });
 * inLitrePerSecond(conductance); // → 0.04075
 * regime; // → "transition"
 * ```
 */
export function hoseConductance(question: HoseConductanceQuestion): HoseConductance {
  requireObject("", question, "a hose, a gas and a mean pressure");
  const { element, gas, meanPressure } = question;
  const check = new InputCheck();
  checkHoseElement(check, "element", element);
  checkGas(check, "gas", gas);
  check.positive("meanPressure", meanPressure);
  check.finish();
  const { viscousPerPascal, molecular } = resistanceOf(element, gas);
  const viscous = viscousPerPascal * meanPressure;
  const meanFreePath = meanFreePathFactor(gas) / meanPressure;
  const knudsenNumber = meanFreePath / element.innerDiameter;
  const { viscousBelow, molecularAbove } = data.flowRegime;
  const regime =
    knudsenNumber < viscousBelow ? "viscous" : knudsenNumber > molecularAbove ? "molecular" : "transition";
  const conductance = viscous + molecular;
  return {
    conductance,
    viscous,
    molecular,
    meanFreePath,
    knudsenNumber,
    regime,
    because:
      `Knudsen number ${shown(knudsenNumber)} at ${shown(meanPressure)} Pa in ` +
      `${shown(1000 * element.innerDiameter)} mm: ${regime}; ${shown(1000 * viscous)} + ${shown(1000 * molecular)} L/s`,
  };
}

/** As {@link hoseConductance}, without throwing. */
export function tryHoseConductance(question: HoseConductanceQuestion): Outcome<HoseConductance> {
  return attempt(() => hoseConductance(question));
}

/**
 * Conductance of pieces one after another, 1/C = Σ 1/Cᵢ.
 *
 * @param conductances - m3/s, one or more.
 * @returns m3/s; below the smallest of them.
 * @throws {@link InputError} `malformed-input`.
 * @source steady flow: the same throughput in each piece
 */
export function conductancesInSeries(conductances: readonly VolumeFlow[]): VolumeFlow {
  const check = new InputCheck();
  const isList = Array.isArray(conductances) && conductances.length > 0;
  if (!check.require(isList, "conductances", conductances, "one conductance or more")) check.finish();
  for (const [index, each] of conductances.entries()) check.positive(`conductances[${index}]`, each);
  check.finish();
  return 1 / conductances.reduce((sum, each) => sum + 1 / each, 0);
}

/** As {@link conductancesInSeries}, without throwing. */
export function tryConductancesInSeries(conductances: readonly VolumeFlow[]): Outcome<VolumeFlow> {
  return attempt(() => conductancesInSeries(conductances));
}

/**
 * Pumping speed that arrives behind a given conductance, 1/S_eff = 1/S + 1/C. A conductance goes with the pressure:
 * {@link pumpThroughHose} finds both together.
 *
 * @param pumpingSpeed - At the inlet of the pump, m3/s.
 * @param conductance - m3/s.
 * @returns m3/s; below either.
 * @throws {@link InputError} `malformed-input`.
 * @source steady flow: the same throughput in hose and pump
 *
 * @example
 * ```ts
 * // A pump of 1.4 L/s behind a thin hose at 66.7 Pa: what arrives is what the hose lets through.
 * inLitrePerSecond(effectivePumpingSpeed(litrePerSecond(1.416), litrePerSecond(0.0407483))); // → 0.0396085
 * ```
 */
export function effectivePumpingSpeed(pumpingSpeed: VolumeFlow, conductance: VolumeFlow): VolumeFlow {
  const check = new InputCheck();
  check.positive("pumpingSpeed", pumpingSpeed);
  check.positive("conductance", conductance);
  check.finish();
  return conductancesInSeries([pumpingSpeed, conductance]);
}

/** As {@link effectivePumpingSpeed}, without throwing. */
export function tryEffectivePumpingSpeed(
  pumpingSpeed: VolumeFlow,
  conductance: VolumeFlow,
): Outcome<VolumeFlow> {
  return attempt(() => effectivePumpingSpeed(pumpingSpeed, conductance));
}
