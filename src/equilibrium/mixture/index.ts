export { type Azeotrope, binaryAzeotropes } from "./azeotrope.js";
export {
  type BlendEquilibrium,
  flashBlendQuality,
  flashBlendTemperatureDensity,
  flashBlendTemperaturePressure,
} from "./blend-flash.js";
export { flashBlendDensityEnergy, flashBlendEnthalpyEntropy } from "./blend-flash-energy.js";
export { flashBlendPressure } from "./blend-flash-pressure.js";
export { BlendModel } from "./blend-model.js";
export { boundaryAtPressure, boundaryAtTemperature } from "./boundary.js";
export { edgesAtPressure, edgesAtTemperature, incipientFractions, linePointAt } from "./edges.js";
export type { BoundaryLine, BoundaryPoint, Extreme } from "./envelope.js";
export type { Incipient, IncipientPoint } from "./incipient.js";
export { criticalConditions } from "./mixture-critical.js";
export { MixtureModel } from "./mixture-model.js";
export { densityOf, type PhaseSplit } from "./phase-split.js";
export { findTrial, singlePhaseRoot } from "./stability.js";
export { vesselContents } from "./vessel.js";
