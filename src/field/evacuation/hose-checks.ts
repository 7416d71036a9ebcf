import type { InputCheck } from "../../units/index.js";
import type { HoseElement, HoseGas } from "./hose.js";

/** Records what is wrong with a gas. */
export function checkGas(check: InputCheck, path: string, gas: HoseGas): void {
  check.positive(`${path}.viscosity`, gas?.viscosity);
  check.positive(`${path}.molarMass`, gas?.molarMass);
  check.positive(`${path}.temperature`, gas?.temperature);
}

/** Records what is wrong with a piece between system and pump. */
export function checkHoseElement(check: InputCheck, path: string, element: HoseElement): void {
  check.positive(`${path}.innerDiameter`, element?.innerDiameter);
  check.positive(`${path}.length`, element?.length);
}

/** Records what is wrong with all that stands between system and pump, and the gas in it. */
export function checkHoseChain(check: InputCheck, hose: readonly HoseElement[], gas: HoseGas): void {
  const isList = Array.isArray(hose) && hose.length > 0;
  if (check.require(isList, "hose", hose, "one piece or more between system and pump, as a list")) {
    for (const [index, element] of hose.entries()) checkHoseElement(check, `hose[${index}]`, element);
  }
  checkGas(check, "gas", gas);
}
