/** What feeds the evaporator. */
export type MeteringDevice =
  /** A piston, orifice or capillary tube: it lets through what the pressures push. */
  | "fixed-orifice"
  /** A thermostatic expansion valve: it keeps superheat. */
  | "thermostatic-valve"
  /** An electronic expansion valve: it keeps what the controller wants. */
  | "electronic-valve";

/** All metering devices. */
export const METERING_DEVICES: readonly MeteringDevice[] = [
  "fixed-orifice",
  "thermostatic-valve",
  "electronic-valve",
];
