import { formatNumber } from "../../units/index.js";

/** A number for an explanation: four digits are more than any reading in the field has. */
export function shown(value: number): string {
  return String(Number(value.toPrecision(4)));
}

/**
 * A value with its uncertainty for an explanation: two digits of the uncertainty, and the value to the same place.
 *
 * @source JCGM 100:2008 (GUM), 7.2.6
 */
export function shownWithUncertainty(value: number, uncertainty: number): string {
  if (!(uncertainty > 0)) return `${shown(value)} ± 0`;
  const digits = Math.min(12, Math.max(0, 1 - Math.floor(Math.log10(uncertainty))));
  return `${formatNumber(value, digits)} ± ${formatNumber(uncertainty, digits)}`;
}

/**
 * An uncertainty, or what is computed from one, for an explanation: two digits.
 *
 * @source JCGM 100:2008 (GUM), 7.2.6
 */
export function shownUncertainty(value: number): string {
  return String(Number(value.toPrecision(2)));
}

/** A pressure difference (Pa) with its uncertainty for an explanation, in kPa. */
export function shownKilopascalWithUncertainty(value: number, uncertainty: number): string {
  return `${shownWithUncertainty(value / 1000, uncertainty / 1000)} kPa`;
}

/** A pressure (Pa) for an explanation, in kPa. */
export function shownKilopascal(value: number): string {
  return `${shown(value / 1000)} kPa`;
}

/** A temperature (K) for an explanation, in °C. */
export function shownCelsius(value: number): string {
  return `${Number((value - 273.15).toFixed(1))} °C`;
}
