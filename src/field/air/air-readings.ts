import {
  InputCheck,
  type LocalAtmosphere,
  requireObject,
  type Temperature,
  type VolumeFlow,
} from "../../units/index.js";
import type { Thermometer } from "../measurement/instrument.js";
import { checkThermometer } from "../measurement/instrument-checks.js";
import { checkAtmosphere } from "../measurement/site.js";
import type { OperatingMode } from "../running/line-reading.js";
import { checkHumidity, checkStationPressure } from "./air-checks.js";

/** Air as it was read at one place: dry bulb, and wet bulb or relative humidity. */
export interface AirReading {
  /** Temperature, K. */
  readonly dryBulb: Temperature;
  /** Temperature of a wet wick in moving air, K. */
  readonly wetBulb?: Temperature;
  /** Relative humidity, 0 to 1; below 0 °C over ice. */
  readonly relativeHumidity?: number;
}

/** An air flow as it was measured. */
export interface AirFlowReading {
  /** Volume of the air as it is at that place, m3/s: not "standard air". */
  readonly volumeFlow: VolumeFlow;
  /** Where: the same mass fills less volume in the cold supply than in the return. */
  readonly measuredAt: "return" | "supply";
  /** Error as a half-width over the flow: 0.1 for ±10 %. In the field ±10 to 15 % is common (common practice, no source). */
  readonly halfWidthFraction: number;
}

/** A hygrometer. */
export interface Hygrometer {
  /** Error as a half-width of the relative humidity: 0.03 for ±3 %. */
  readonly halfWidth: number;
}

/** What was read on the air side of an indoor unit that runs steadily. */
export interface AirSideReadings {
  /** Whether the unit cools or heats. */
  readonly mode: OperatingMode;
  /** Air through the indoor unit. */
  readonly flow: AirFlowReading;
  /** Air that enters the indoor unit, with its humidity. */
  readonly returnAir: AirReading;
  /** Air that leaves it; in cooling with its humidity, in heating without: no water is added, the return's counts. */
  readonly supplyAir: AirReading;
  /** Thermometer of all dry and wet bulbs. */
  readonly thermometer: Thermometer;
  /** Hygrometer, where a relative humidity was read. */
  readonly hygrometer?: Hygrometer;
  /** Air pressure of the site. */
  readonly atmosphere: LocalAtmosphere;
}

/** Judges the readings, all problems at once. */
export function checkAirSideReadings(readings: AirSideReadings): void {
  requireObject("", readings, "readings of the air side");
  const check = new InputCheck();
  const { mode, flow, returnAir, supplyAir, thermometer, hygrometer, atmosphere } = readings;
  const isMode = check.oneOf("mode", mode, ["cooling", "heating"]);
  check.positive("flow.volumeFlow", flow?.volumeFlow);
  check.oneOf("flow.measuredAt", flow?.measuredAt, ["return", "supply"]);
  check.require(
    flow?.halfWidthFraction > 0 && flow?.halfWidthFraction < 1,
    "flow.halfWidthFraction",
    flow?.halfWidthFraction,
    "above 0 and below 1: 0.1 for ±10 %",
  );
  const isSite =
    checkAtmosphere(check, "atmosphere", atmosphere) &&
    checkStationPressure(check, "atmosphere.pressure", atmosphere.pressure);
  const pressure = isSite ? atmosphere.pressure : undefined;
  checkReadingOfAir(check, "returnAir", returnAir, true, pressure);
  if (isMode) checkReadingOfAir(check, "supplyAir", supplyAir, mode === "cooling", pressure);
  checkThermometer(check, "thermometer", thermometer);
  check.require(
    thermometer?.accuracy?.kind !== "pipe-probe",
    "thermometer.accuracy.kind",
    thermometer?.accuracy?.kind,
    "half-width or standard-uncertainty: what is taken for pipe probes does not hold in air",
  );
  const isHygrometer = [returnAir, supplyAir].some((air) => air?.relativeHumidity !== undefined);
  if (isHygrometer || hygrometer !== undefined) {
    check.require(
      hygrometer !== undefined && hygrometer?.halfWidth > 0 && hygrometer?.halfWidth < 1,
      "hygrometer.halfWidth",
      hygrometer?.halfWidth,
      "above 0 and below 1: 0.03 for ±3 % relative humidity",
    );
  }
  check.finish();
}

function checkReadingOfAir(
  check: InputCheck,
  path: string,
  air: AirReading,
  isHumidityNeeded: boolean,
  pressure: number | undefined,
): void {
  const isTemperature = check.positive(`${path}.dryBulb`, air?.dryBulb);
  const given = [air?.wetBulb, air?.relativeHumidity].filter((each) => each !== undefined).length;
  if (isHumidityNeeded) {
    if (!check.require(given === 1, path, air, "one of wetBulb and relativeHumidity")) return;
  } else {
    check.require(
      given === 0,
      path,
      air,
      "dryBulb alone: heating adds no water, the humidity of the return counts",
    );
    return;
  }
  const isJudged = isTemperature && pressure !== undefined;
  checkHumidity(check, path, air, isJudged ? { dryBulb: air.dryBulb, pressure } : undefined);
}
