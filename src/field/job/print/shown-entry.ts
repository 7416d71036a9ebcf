import { formatNumber } from "../../../units/index.js";
import type { Stated } from "../form/stated.js";
import type { RecordEntry } from "../record/record.js";

/** A unit to show numbers in: what SI is divided by, and how it is written. */
export interface ShownUnit {
  /** SI per unit. */
  readonly factor: number;
  /** Zero of the unit in SI. */
  readonly zero?: number;
  /** Symbol. */
  readonly symbol: string;
  /** The SI unit. */
  readonly si: string;
}

/** Names of the units of a record. */
type ShownUnitName =
  | "celsius"
  | "kelvinDifference"
  | "megapascalGauge"
  | "megapascal"
  | "kilopascalDifference"
  | "kilopascal"
  | "pascal"
  | "pascalDifference"
  | "gram"
  | "kilogram"
  | "gramPerMetre"
  | "percentByMass"
  | "kilowatt"
  | "minute"
  | "hour";

/** Units of a record. */
export const shownUnits: Readonly<Record<ShownUnitName, ShownUnit>> = {
  celsius: { factor: 1, zero: 273.15, symbol: "°C", si: "K" },
  kelvinDifference: { factor: 1, symbol: "K", si: "K" },
  megapascalGauge: { factor: 1e6, symbol: "MPa gauge", si: "Pa gauge" },
  megapascal: { factor: 1e6, symbol: "MPa abs", si: "Pa" },
  kilopascalDifference: { factor: 1e3, symbol: "kPa", si: "Pa" },
  kilopascal: { factor: 1e3, symbol: "kPa abs", si: "Pa" },
  pascal: { factor: 1, symbol: "Pa abs", si: "Pa" },
  pascalDifference: { factor: 1, symbol: "Pa", si: "Pa" },
  gram: { factor: 1e-3, symbol: "g", si: "kg" },
  kilogram: { factor: 1, symbol: "kg", si: "kg" },
  gramPerMetre: { factor: 1e-3, symbol: "g/m", si: "kg/m" },
  percentByMass: { factor: 1e-2, symbol: "%", si: "kg/kg" },
  kilowatt: { factor: 1e3, symbol: "kW", si: "W" },
  minute: { factor: 60, symbol: "min", si: "s" },
  hour: { factor: 3600, symbol: "h", si: "s" },
};

/** What was written down, as it was written. */
export function asRead(label: string, { si, unit, text }: Stated<number>): RecordEntry {
  return { label, text, si, unit };
}

/** A fact without number. */
export function fact(label: string, text: string): RecordEntry {
  return { label, text };
}

/** A number in a unit, with a fixed count of digits. */
export function shownNumber(label: string, si: number, unit: ShownUnit, digits: number): RecordEntry {
  return { label, text: `${inUnit(si, unit, digits)} ${unit.symbol}`, si, unit: unit.si };
}

/** A leak as throughput at 20 °C. */
export function shownThroughput(label: string, throughput: number): RecordEntry {
  return { label, text: `${throughput.toExponential(1)} Pa m³/s`, si: throughput, unit: "Pa m3/s" };
}

/** A duration, in hours from three hours up, else in minutes. */
export function shownDuration(label: string, seconds: number): RecordEntry {
  const long = seconds >= 3 * shownUnits.hour.factor;
  return shownNumber(label, seconds, long ? shownUnits.hour : shownUnits.minute, 1);
}

/**
 * A number with its expanded uncertainty, which has two significant digits and decides how many the number has.
 *
 * @source JCGM 100:2008 (GUM), 7.2.6: two digits of an uncertainty are enough
 */
export function shownUncertain(
  label: string,
  si: number,
  expandedUncertainty: number,
  unit: ShownUnit,
): RecordEntry {
  const spread = expandedUncertainty / unit.factor;
  const digits = spread > 0 ? Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(spread)))) : 1;
  const text = `${inUnit(si, unit, digits)} ± ${formatNumber(spread, digits)} ${unit.symbol}`;
  return { label, text, si, unit: unit.si, expandedUncertainty };
}

function inUnit(si: number, { factor, zero = 0 }: ShownUnit, digits: number): string {
  return formatNumber((si - zero) / factor, digits);
}
