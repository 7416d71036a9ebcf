import type { Coexistence } from "./coexistence.js";
import { type Equilibrium, onePhase, twoPhase } from "./flash.js";
import { criticalMargin, type Model } from "./model.js";
import { type SaturationPoint, saturationAtTemperature } from "./saturation.js";
import { guessCoexistence } from "./saturation-curve.js";

/** The series of the saturated densities are better than this, so beyond it they decide alone that there is one phase. */
const densityDoubt = 1e-3;

/** The state at a temperature and a molar density. */
export function flashTemperatureDensity(model: Model, T: number, rho: number): Equilibrium {
  if (T > model.critical.temperature - criticalMargin) return onePhase(T, rho);
  const edge: Coexistence = { liquid: 0, vapour: 0, pressure: 0 };
  guessCoexistence(model.curveFor(T), T, edge);
  const delta = rho / model.equation.rhor;
  if (delta > edge.liquid * (1 + densityDoubt) || delta < edge.vapour * (1 - densityDoubt))
    return onePhase(T, rho);
  const saturation = saturationAtTemperature(model, T);
  const quality = qualityAtDensity(saturation, rho);
  return quality >= 0 && quality <= 1 ? twoPhase(saturation, quality) : onePhase(T, rho);
}

/** Molar fraction of vapour by the lever rule on volumes; outside 0 to 1 when there is one phase. */
function qualityAtDensity({ liquidDensity, vapourDensity }: SaturationPoint, rho: number): number {
  return (1 / rho - 1 / liquidDensity) / (1 / vapourDensity - 1 / liquidDensity);
}
