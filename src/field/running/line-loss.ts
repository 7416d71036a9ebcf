import data from "../../../data/field/running.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import {
  attempt,
  InputCheck,
  type Outcome,
  type Pressure,
  type PressureDifference,
  requireObject,
  type Temperature,
  type TemperatureDifference,
} from "../../units/index.js";
import { shown, shownKilopascal } from "../measurement/shown.js";
import { evaluateLineReading, type LineReading, type LineResult } from "./line-reading.js";
import { superheat } from "./superheat.js";

/** A suction line: read at the port, with what is known of the way from the coil. */
export interface SuctionLineReading {
  /** Pressure and pipe temperature at the port, on the low side. */
  readonly atPort: LineReading;
  /** Temperature of the pipe at the outlet of the coil, K, read with the same thermometer. */
  readonly coilOutletTemperature: Temperature;
  /** Pressure lost from the coil to the port, Pa, 0 or above: computed for the line, or from its design. */
  readonly lineLoss: PressureDifference;
  /** Limit of error of that loss, Pa, 0 or above. */
  readonly lineLossHalfWidth: PressureDifference;
}

/** Codes of the warnings of a suction line. */
export type SuctionLineWarningCode = "large-line-loss";

/** Superheat at both ends of a suction line. */
export interface SuctionSuperheat {
  /** At the port, with the pressure there: what the compressor gets. */
  readonly atPort: LineResult;
  /** At the outlet of the coil, with the pressure there: what the expansion device has to keep. */
  readonly atCoil: LineResult;
  /** Pressure in the coil, Pa absolute: that at the port and the loss of the line. */
  readonly coilPressure: Pressure;
  /** The loss as fall of the dew point, K. */
  readonly equivalentLoss: TemperatureDifference;
  /** Rise of the pipe temperature on the way, K: superheat at the port is that at the coil and both of these. */
  readonly warming: TemperatureDifference;
  /** What is odd. */
  readonly warnings: readonly Warning<SuctionLineWarningCode>[];
  /** The numbers it rests on. */
  readonly because: string;
}

/**
 * Superheat at the outlet of the coil and at the port, which differ by the loss of the line between them: the pressure in
 * the coil is that at the port plus the loss. A thermometer at one end with the pressure of the other is neither.
 *
 * @param line - Reading at the port, pipe temperature at the coil (K) and loss of the line (Pa).
 * @returns Both superheats in K with expanded uncertainty (k = 2), and the loss in kelvin.
 * @throws {@link InputError} `malformed-input`, all problems of one part at once; also for a port that is not on the low
 * side in this mode.
 * @throws {@link OutOfRangeError} `out-of-range` where the refrigerant has no dew point at one of the pressures.
 * @source definition; allowance for the loss: common practice, no source, `data/field/running.json`
 */
export function superheatAlongLine(line: SuctionLineReading): SuctionSuperheat {
  requireObject("", line, "a suction line");
  const { atPort: reading, coilOutletTemperature, lineLoss, lineLossHalfWidth } = line;
  const check = new InputCheck();
  check.require(typeof reading === "object" && reading !== null, "atPort", reading, "a line reading");
  check.positive("coilOutletTemperature", coilOutletTemperature);
  check.notNegative("lineLoss", lineLoss);
  check.notNegative("lineLossHalfWidth", lineLossHalfWidth);
  check.finish();
  const atPort = superheat(reading);
  const atCoil = evaluateLineReading(
    { ...reading, lineTemperature: coilOutletTemperature },
    "superheat",
    "dew",
    1,
    { pressure: lineLoss, halfWidth: lineLossHalfWidth },
  );
  const equivalentLoss = atCoil.saturationTemperature - atPort.saturationTemperature;
  return {
    atPort,
    atCoil,
    coilPressure: atCoil.pressure,
    equivalentLoss,
    warming: reading.lineTemperature - coilOutletTemperature,
    warnings: warningsOf(equivalentLoss),
    because:
      `${shownKilopascal(atPort.pressure)} at the port and ${shownKilopascal(lineLoss)} of line, worth ` +
      `${shown(equivalentLoss)} K: superheat ${shown(atCoil.value)} K at the coil, ${shown(atPort.value)} K at the port`,
  };
}

/** As {@link superheatAlongLine}, without throwing. */
export function trySuperheatAlongLine(line: SuctionLineReading): Outcome<SuctionSuperheat> {
  return attempt(() => superheatAlongLine(line));
}

function warningsOf(equivalentLoss: TemperatureDifference): Warning<SuctionLineWarningCode>[] {
  const { allowance } = data.lineLoss;
  if (equivalentLoss <= allowance) return [];
  return [
    {
      code: "large-line-loss",
      message: `the line costs ${shown(equivalentLoss)} K of saturation temperature, usual is up to ${allowance} K: kinked, too thin or too long`,
    },
  ];
}
