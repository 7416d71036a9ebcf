export { type Azeotrope, binaryAzeotropes } from "./azeotrope.js";
export {
  type BlendEquilibrium,
  flashBlendQuality,
  flashBlendTemperatureDensity,
  flashBlendTemperaturePressure,
  oneBlendPhase,
} from "./blend-flash.js";
export { flashBlendDensityEnergy, flashBlendEnthalpyEntropy } from "./blend-flash-energy.js";
export { flashBlendPressure } from "./blend-flash-pressure.js";
export { BlendModel } from "./blend-model.js";
export { boundaryAtPressure, boundaryAtTemperature } from "./boundary.js";
export {
  edgesAtPressure,
  edgesAtTemperature,
  incipientFractions,
  linePointAt,
  splitAtEdge,
} from "./edges.js";
export type { BoundaryLine, BoundaryPoint, Envelope, Extreme } from "./envelope.js";
export { type Incipient, type IncipientPoint, incipientPoint, solveIncipient } from "./incipient.js";
export { criticalConditions, type MixtureCriticalPoint } from "./mixture-critical.js";
export { MixtureModel } from "./mixture-model.js";
export { densityOf, type PhaseSplit, phaseSplit, solveSplit } from "./phase-split.js";
export { findTrial, singlePhaseRoot } from "./stability.js";
export { type VesselContents, vesselContents } from "./vessel.js";
