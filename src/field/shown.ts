/** A number for an explanation: five digits are more than any reading in the field has. */
export function shown(value: number): string {
  return String(Number(value.toPrecision(5)));
}

/** A pressure (Pa) for an explanation, in kPa. */
export function shownKilopascal(value: number): string {
  return `${shown(value / 1000)} kPa`;
}

/** A temperature (K) for an explanation, in °C. */
export function shownCelsius(value: number): string {
  return `${Number((value - 273.15).toFixed(2))} °C`;
}
