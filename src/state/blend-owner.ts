import { noMixtureEvaluation } from "../equation/index.js";
import type { BlendModel } from "../equilibrium/index.js";
import type { Offsets } from "./reference-state.js";
import type { Substance } from "./single-phase.js";
import type { Refrigerant } from "./types.js";

/** So thin a gas is ideal to the last digit; see the same of a pure refrigerant. */
const thinnest = 1e-40;

/** A blend as something that phases of any of its compositions belong to. */
export interface BlendOwner {
  readonly refrigerant: Refrigerant;
  readonly model: BlendModel;
  /** Added per kilogram of whichever composition: so mixing phases keeps the sum. */
  readonly specificOffsets: Offsets;
}

/** Mass fractions by designation of mole fractions. */
export function massFractionsOf(model: BlendModel, x: Float64Array): Readonly<Record<string, number>> {
  const { mixture } = model.system.liquid;
  const M = mixture.molarMassOf(x);
  return Object.fromEntries(
    model.system.fluids.map(({ designation }, i) => [designation, (x[i]! * mixture.molarMass[i]!) / M]),
  );
}

/** The substance of a phase with these mole fractions. */
export function substanceOf(owner: BlendOwner, x: Float64Array): Substance {
  const { model, refrigerant, specificOffsets } = owner;
  const { mixture } = model.system.liquid;
  const molarMass = mixture.molarMassOf(x);
  return {
    refrigerant,
    composition: massFractionsOf(model, x),
    molarMass,
    gasConstant: mixture.gasConstantOf(x),
    offsets: {
      enthalpy: specificOffsets.enthalpy * molarMass,
      entropy: specificOffsets.entropy * molarMass,
    },
    secondVirial(temperature) {
      mixture.setComposition(x);
      const at = noMixtureEvaluation(model.system.count);
      const rho = thinnest * mixture.rhor;
      mixture.evaluateFixed(temperature, rho, at);
      // B = φ_δ/ρr = L φ/ρ, with φ counted per R of this composition.
      return at.phiL / rho / (mixture.gasConstantOf(x) / mixture.R);
    },
    fugacityCoefficients(temperature, molarDensity) {
      const logarithms = model.logFugacityCoefficients(temperature, molarDensity, x);
      return Object.fromEntries(
        model.system.fluids.map(({ designation }, i) => [designation, Math.exp(logarithms[i]!)]),
      );
    },
  };
}
