/**
 * The front door: refrigerants by name, their states, quantities, and the arithmetic of installing and servicing.
 *
 * @packageDocumentation
 */
export {
  type Blend,
  type BlendComponent,
  type DepartureFunction,
  type FindOptions,
  type Fluid,
  type IdealPart,
  type Pair,
  type PairGrade,
  type PairReducing,
  type ResidualPart,
  UnknownRefrigerantError,
} from "./catalogue/index.js";
export * from "./field/index.js";
export {
  type AlternativeLimit,
  altitudeFactor,
  type Caution,
  type ChargeBand,
  type ChargeBands,
  type ChargeBranch,
  type ChargeCautionCode,
  type ChargeCautionFacts,
  type Confidence,
  chargeBands,
  chargeCautions,
  type FlammabilityClass,
  type FlammabilityFacts,
  flammabilityClass,
  flammabilityFacts,
  IEC_EDITIONS,
  type IecEdition,
  isFlammable,
  listFlammabilityFacts,
  MOUNTINGS,
  type Mounting,
  printedMaximumCharge,
  printedMinimumArea,
  type ReleaseSituation,
  type RoomWarningCode,
  releaseHeight,
  SAFETY_CLASSES,
  type SafetyClass,
  type SafetySource,
  type ToxicityClass,
  toxicityClass,
  tryFlammabilityFacts,
  tryUnventilatedRoom,
  type UnventilatedRoom,
  type UnventilatedRoomResult,
  unventilatedMaximumCharge,
  unventilatedMinimumArea,
  unventilatedRoom,
  type Warning,
} from "./safety/index.js";
export * from "./state/index.js";
export * from "./units/index.js";
