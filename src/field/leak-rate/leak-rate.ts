import { InputCheck, type Temperature } from "../../units/index.js";
import { MOLAR_GAS_CONSTANT } from "../molar-gas-constant.js";

/**
 * Mass flow of a leak from its throughput, ṁ = q M/(R T), ideal gas.
 *
 * @param throughput - q, Pa m3/s at `temperature`, 0 or above.
 * @param molarMass - kg/mol, above 0.
 * @param temperature - K, above 0.
 * @returns kg/s; one gram a year is 3.169e-11 kg/s.
 * @throws {@link InputError} `malformed-input`.
 * @source ideal gas law; R = 8.31446261815324 J/(mol K), exact since 2019
 */
export function leakMassFlow(throughput: number, molarMass: number, temperature: Temperature): number {
  const check = new InputCheck();
  check.notNegative("throughput", throughput);
  checkGas(check, molarMass, temperature);
  return (throughput * molarMass) / (MOLAR_GAS_CONSTANT * temperature);
}

/**
 * Throughput of a leak from its mass flow, q = ṁ R T/M, ideal gas: the inverse of {@link leakMassFlow}.
 *
 * @param massFlow - kg/s, 0 or above.
 * @param molarMass - kg/mol, above 0.
 * @param temperature - K, above 0.
 * @returns Pa m3/s at `temperature`.
 * @throws {@link InputError} `malformed-input`.
 * @source ideal gas law
 */
export function leakThroughput(massFlow: number, molarMass: number, temperature: Temperature): number {
  const check = new InputCheck();
  check.notNegative("massFlow", massFlow);
  checkGas(check, molarMass, temperature);
  return (massFlow * MOLAR_GAS_CONSTANT * temperature) / molarMass;
}

function checkGas(check: InputCheck, molarMass: number, temperature: Temperature): void {
  check.positive("molarMass", molarMass);
  check.positive("temperature", temperature);
  check.finish();
}
