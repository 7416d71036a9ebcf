import data from "../../../data/field/recovery.json" with { type: "json" };
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type GaugePressure,
  InputCheck,
  InputError,
  type Mass,
  type Outcome,
  requireObject,
  type Temperature,
  type Volume,
} from "../../units/index.js";
import { shown } from "../measurement/shown.js";
import { checkRefrigerant } from "../refrigerant-check.js";

/** Refrigerant that is to be shut in the outdoor unit. */
export interface PumpDown {
  /** Refrigerant. */
  readonly refrigerant: Refrigerant;
  /** Charge of the system, kg. */
  readonly charge: Mass;
  /** Volume of the high side of the outdoor unit, m3. */
  readonly highSideVolume: Volume;
  /** Temperature that it will have, K: the warmest that it may come to. */
  readonly temperature: Temperature;
  /** Whether a leak is suspected or a flare is open: then it must not be done. */
  readonly leakSuspected: boolean;
}

/** Whether it fits. */
export interface PumpDownResult {
  /** `pass` where it fits. */
  readonly verdict: "pass" | "fail";
  /** Part of the high side that its liquid fills. */
  readonly fraction: number;
  /** Pressures between which to stop, Pa gauge: never below the air. */
  readonly stopBetween: { readonly minimum: GaugePressure; readonly maximum: GaugePressure };
  /** The rule and the numbers that decided. */
  readonly because: string;
}

/**
 * Does the charge fit into the outdoor unit as liquid, with room left?
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; also where a leak is suspected: air drawn into a running
 *   compressor can explode.
 * @source common practice, no source: `data/field/recovery.json`; density of the liquid from the equation of state
 */
export function planPumpDown(pumpDown: PumpDown): PumpDownResult {
  requireObject("", pumpDown, "a pump-down");
  const { refrigerant, charge, highSideVolume, temperature, leakSuspected } = pumpDown;
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", refrigerant);
  check.positive("charge", charge);
  check.positive("highSideVolume", highSideVolume);
  check.positive("temperature", temperature);
  check.require(typeof leakSuspected === "boolean", "leakSuspected", leakSuspected, "true or false");
  check.finish();
  if (leakSuspected) {
    throw new InputError([
      {
        path: "leakSuspected",
        value: true,
        expected:
          "false: with a leak, recover with the unit off; air drawn into a running compressor can explode",
      },
    ]);
  }
  const liquid = refrigerant.bubble({ temperature }).liquid.density;
  const fraction = charge / liquid / highSideVolume;
  const { minimum, maximum } = data.stopPressure;
  return {
    verdict: fraction <= data.liquidRoom.fraction ? "pass" : "fail",
    fraction,
    stopBetween: { minimum, maximum },
    because:
      `${shown(charge)} kg of liquid fill ${shown(100 * fraction)} % of the high side, at most ` +
      `${100 * data.liquidRoom.fraction} % are allowed; stop between ${minimum / 1000} and ${maximum / 1000} kPa gauge`,
  };
}

/** As {@link planPumpDown}, without throwing. */
export function tryPlanPumpDown(pumpDown: PumpDown): Outcome<PumpDownResult> {
  return attempt(() => planPumpDown(pumpDown));
}
