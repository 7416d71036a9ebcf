import data from "../../../data/field/air.json" with { type: "json" };
import { type InputCheck, OutOfRangeError, type Pressure, type Temperature } from "../../units/index.js";
import { waterVapourPressure } from "../evacuation/water-vapour.js";
import { humidityRatioFromWetBulb, vapourFromHumidityRatio } from "./psychrometrics.js";

/** Saturated air that was computed may come out a rounding above saturation. */
const ROUNDING = 1e-9;
/** No water, to the last digit of a wet bulb, kg/kg. */
const TRACE = 1e-12;
/** How far below its dry bulb a wick can be in dry air, K: generous, at 90 °C and 30 kPa it is 78 K. */
export const DRY_WICK = 100;

/** Throws unless a dry bulb lies in the range of the equations. */
export function requireDryBulb(quantity: string, value: Temperature): void {
  if (isInside(value)) return;
  const { minimum, maximum } = data.range.dryBulb;
  throw new OutOfRangeError({ quantity, value, minimum, maximum, unit: "K", subject: "moist air" });
}

type AnyHumidity = { readonly [K in "wetBulb" | "relativeHumidity" | "humidityRatio"]?: number | undefined };

/**
 * Records a measure of humidity that is none, or that no air can have.
 *
 * @param air - Where the two are good; without them only the numbers themselves are judged.
 */
export function checkHumidity(
  check: InputCheck,
  path: string,
  { wetBulb, relativeHumidity, humidityRatio }: AnyHumidity,
  air: { readonly dryBulb: Temperature; readonly pressure: Pressure } | undefined,
): void {
  const at = (name: string): string => (path === "" ? name : `${path}.${name}`);
  const { dryBulb, pressure } = air ?? { dryBulb: 0, pressure: 0 };
  // Out of the range of the equations nothing can be said; that is refused after all else.
  const isInRange = isInside(dryBulb);
  if (wetBulb !== undefined && check.positive(at("wetBulb"), wetBulb) && isInRange) {
    if (!check.require(wetBulb <= dryBulb, at("wetBulb"), wetBulb, `not above the dry bulb, ${dryBulb} K`))
      return;
    const isCold = wetBulb < dryBulb - DRY_WICK;
    const boils = !isCold && waterVapourPressure(wetBulb) >= pressure;
    check.require(!boils, at("wetBulb"), wetBulb, "below the boiling point of water at this air pressure");
    const dry = isCold || (!boils && humidityRatioFromWetBulb(dryBulb, wetBulb, pressure) < -TRACE);
    check.require(!dry, at("wetBulb"), wetBulb, "not colder than a wick gets in dry air");
  }
  if (relativeHumidity !== undefined) {
    const isShare = check.require(
      typeof relativeHumidity === "number" && relativeHumidity >= 0 && relativeHumidity <= 1,
      at("relativeHumidity"),
      relativeHumidity,
      "a fraction from 0 to 1: 0.5 for 50 %",
    );
    const isAir = !(isShare && isInRange && relativeHumidity * waterVapourPressure(dryBulb) >= pressure);
    check.require(
      isAir,
      at("relativeHumidity"),
      relativeHumidity,
      "a vapour pressure below the air pressure",
    );
  }
  if (humidityRatio !== undefined && check.notNegative(at("humidityRatio"), humidityRatio) && isInRange) {
    const vapour = vapourFromHumidityRatio(humidityRatio, pressure);
    check.require(
      vapour <= waterVapourPressure(dryBulb) * (1 + ROUNDING),
      at("humidityRatio"),
      humidityRatio,
      "not more water than air holds at this temperature and pressure",
    );
  }
}

/** Records an air pressure that no barometer shows; true when it is good. */
export function checkStationPressure(check: InputCheck, path: string, pressure: unknown): boolean {
  const { minimum, maximum } = data.stationPressure;
  return check.require(
    typeof pressure === "number" && pressure >= minimum && pressure <= maximum,
    path,
    pressure,
    `the air pressure of the site, ${minimum} to ${maximum} Pa absolute`,
  );
}

function isInside(dryBulb: Temperature): boolean {
  const { minimum, maximum } = data.range.dryBulb;
  return dryBulb >= minimum * (1 - ROUNDING) && dryBulb <= maximum * (1 + ROUNDING);
}
