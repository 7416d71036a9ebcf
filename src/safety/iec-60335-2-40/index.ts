export * from "./altitude-factor.js";
export { type ChargeBand, type ChargeBands, chargeBands } from "./charge-bands.js";
export { type ChargeBranch, IEC_EDITIONS, type IecEdition, MOUNTINGS, type Mounting } from "./constants.js";
export * from "./release-height.js";
export * from "./unventilated-limits.js";
export * from "./unventilated-room.js";
