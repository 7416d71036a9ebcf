import { type Density, InputCheck, type Mass } from "../../units/index.js";
import type { FlammabilityClass } from "../safety-class.js";
import { IEC_EDITIONS, type IecEdition, iecConstants } from "./constants.js";

/** Charge bands: up to m1 the room does not matter, from m1 to m2 it does, above it takes more than a room. */
export interface ChargeBands {
  /** Charge up to which no room size is required, kg. */
  readonly m1: Mass;
  /** Charge up to which a large enough room without ventilation is enough, kg. */
  readonly m2: Mass;
  /** Charge above which the standard covers no indoor parts, kg. */
  readonly m3: Mass;
}

/** Which band a charge falls into. */
export type ChargeBand = "up-to-m1" | "m1-to-m2" | "m2-to-m3" | "above-m3";

/**
 * Charge bands of IEC 60335-2-40: m1, m2 and m3 are a room volume times the lower flammability limit.
 *
 * Class 2L has its own, larger volumes from edition 5.1 on; before, it is treated as class 2.
 *
 * @param edition - Edition to follow.
 * @param flammability - 2L, 2 or 3; class 1 has no limit and is refused.
 * @param lowerFlammabilityLimit - kg/m3, above 0.
 * @throws {@link InputError} `malformed-input`.
 * @source IEC 60335-2-40, Annex GG; volumes in `data/safety/iec-60335-2-40.json`
 *
 * @example
 * ```ts
 * chargeBands("6", "2L", 0.307); // → { m1: 1.842, m2: 15.964, m3: 79.82 } kg
 * ```
 */
export function chargeBands(
  edition: IecEdition,
  flammability: FlammabilityClass,
  lowerFlammabilityLimit: Density,
): ChargeBands {
  const check = new InputCheck();
  check.oneOf("edition", edition, IEC_EDITIONS);
  check.oneOf("flammability", flammability, ["2L", "2", "3"]);
  check.positive("lowerFlammabilityLimit", lowerFlammabilityLimit);
  check.finish();
  const constants = iecConstants();
  const own2L = flammability === "2L" && constants.editions[edition].class2LBands;
  const volumes = own2L ? constants.bands.class2L : constants.bands.general;
  return {
    m1: volumes.m1 * lowerFlammabilityLimit,
    m2: volumes.m2 * lowerFlammabilityLimit,
    m3: volumes.m3 * lowerFlammabilityLimit,
  };
}

/** The band that a charge (kg) falls into; a limit belongs to the band below it. */
export function bandOf(charge: Mass, { m1, m2, m3 }: ChargeBands): ChargeBand {
  if (charge <= m1) return "up-to-m1";
  if (charge <= m2) return "m1-to-m2";
  return charge <= m3 ? "m2-to-m3" : "above-m3";
}
