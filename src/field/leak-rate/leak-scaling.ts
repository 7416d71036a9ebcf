import data from "../../../data/field/leak-rate.json" with { type: "json" };
import { attempt, InputCheck, type Outcome, type Pressure, requireObject } from "../../units/index.js";
import { shownUncertainty } from "../measurement/shown.js";

/** A gas on both sides of a leak. */
export interface LeakingGas {
  /** Absolute pressure before the leak, Pa. */
  readonly inside: Pressure;
  /** Absolute pressure behind it, Pa; 0 for a vacuum. */
  readonly outside: Pressure;
  /** Dynamic viscosity of the gas, Pa s; this library has no equation for it. */
  readonly viscosity: number;
  /** Molar mass of the gas, kg/mol. */
  readonly molarMass: number;
}

/** How the gas passes a leak: as a viscous stream, molecule by molecule, or between the two. */
export type LeakRegime = "viscous" | "mixed" | "molecular";

/** A leak of one gas as a leak of another. */
export interface ScaledLeak {
  /** Throughput of the other gas if the flow is viscous and laminar, Pa m3/s. */
  readonly viscous: number;
  /** Throughput of the other gas if the flow is molecular, Pa m3/s. */
  readonly molecular: number;
  /** Factor of the viscous flow. */
  readonly viscousFactor: number;
  /** Factor of the molecular flow. */
  readonly molecularFactor: number;
  /** Which of the two the throughput that was measured suggests. */
  readonly regime: LeakRegime;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers it rests on. */
  readonly because: string;
}

/** A leak that was measured with one gas and is asked for with another. */
export interface LeakToScale {
  /** Throughput measured, Pa m3/s, 0 or above. */
  readonly throughput: number;
  /** The gas it was measured with. */
  readonly measured: LeakingGas;
  /** The gas it is asked for. */
  readonly wanted: LeakingGas;
}

/**
 * What a leak that was measured with one gas does with another, at other pressures: viscous
 * q_B/q_A = (η_A/η_B)(p₁² − p₂²)_B/(p₁² − p₂²)_A, molecular q_B/q_A = √(M_A/M_B)(p₁ − p₂)_B/(p₁ − p₂)_A.
 *
 * Both are given: nobody knows the shape of a leak, and the truth may lie a factor of 2 to 5 away. Liquid that leaks out
 * follows another law and is not covered.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source laws of Poiseuille and Knudsen; limits of the regimes: EN 1779:1999 (recalled)
 */
export function scaleLeak(leak: LeakToScale): ScaledLeak {
  requireObject("", leak, "a leak with both gases");
  const { throughput, measured: A, wanted: B } = leak;
  const check = new InputCheck();
  check.notNegative("throughput", throughput);
  checkGas(check, "measured", A);
  checkGas(check, "wanted", B);
  check.finish();
  const squares = ({ inside, outside }: LeakingGas): number => (inside - outside) * (inside + outside);
  const viscousFactor = (A.viscosity / B.viscosity) * (squares(B) / squares(A));
  const molecularFactor =
    Math.sqrt(A.molarMass / B.molarMass) * ((B.inside - B.outside) / (A.inside - A.outside));
  const regime = leakRegime(throughput);
  const viscous = viscousFactor * throughput;
  const molecular = molecularFactor * throughput;
  return {
    viscous,
    molecular,
    viscousFactor,
    molecularFactor,
    regime,
    assumptions: [
      "The leak has the same shape with both gases.",
      "Only gas leaks out, no liquid.",
      "An estimate: the truth may lie a factor of 2 to 5 away.",
    ],
    because:
      `${shownUncertainty(throughput)} Pa m³/s suggests ${regime} flow: ${shownUncertainty(viscous)} Pa m³/s of the ` +
      `other gas if viscous, ${shownUncertainty(molecular)} if molecular`,
  };
}

/** As {@link scaleLeak}, without throwing. */
export function tryScaleLeak(leak: LeakToScale): Outcome<ScaledLeak> {
  return attempt(() => scaleLeak(leak));
}

function leakRegime(throughput: number): LeakRegime {
  if (throughput > data.viscousAbove.value) return "viscous";
  return throughput < data.molecularBelow.value ? "molecular" : "mixed";
}

function checkGas(check: InputCheck, path: string, gas: LeakingGas): void {
  check.notNegative(`${path}.outside`, gas?.outside);
  if (check.positive(`${path}.inside`, gas?.inside)) {
    const expected = `above the pressure behind the leak, ${gas.outside} Pa`;
    check.require(!(gas.inside <= gas.outside), `${path}.inside`, gas.inside, expected);
  }
  check.positive(`${path}.viscosity`, gas?.viscosity);
  check.positive(`${path}.molarMass`, gas?.molarMass);
}
