import { InputError } from "./errors.js";

/** A unit of measurement: how it is written and how large it is. One constant each, so that a bundler can drop it. */
export interface Unit {
  /** How it is printed; read back exactly as it stands. */
  readonly symbol: string;
  /** SI value of one unit. */
  readonly factor: number;
  /** The number in this unit that means zero in SI, where that is not 0: −273.15 for °C. */
  readonly zero?: number;
  /** Other spellings in which capitals do not matter. */
  readonly spellings: readonly string[];
  /** Other spellings in which they do, because mPa is not MPa. */
  readonly exactSpellings?: readonly string[];
}

/** The units of one quantity by name; the name is also that of the converter. */
export type Units<Name extends string> = Readonly<Record<Name, Unit>>;

/** What holds for a quantity whatever its unit. */
export interface Quantity {
  /** In words, with its article. */
  readonly name: string;
  /** Symbol of the SI unit. */
  readonly si: string;
  /** Present where nature stops at zero; absent where a negative value has a meaning. */
  readonly minimum?: 0;
  /** True for a difference: it has no zero to count from, so the {@link Unit.zero} of a unit does not enter. */
  readonly difference?: true;
  /** A text that is read, shown in error messages. */
  readonly example: string;
  /** True where the trade writes several units after each other: `2 lb 3 oz`. */
  readonly compound?: true;
  /** True where the trade writes vulgar fractions: `3/8 in`. */
  readonly fractions?: true;
}

/** A converter into SI: `value` in the unit of its name. */
export function from<Q extends number>(quantity: Quantity, unit: Unit): (value: number) => Q {
  return (value) => toSi(quantity, unit, value, "", value) as Q;
}

/** A converter out of SI, into the unit of its name. */
export function into<Q extends number>(quantity: Quantity, unit: Unit): (value: Q) => number {
  return (value) => fromSi(quantity, unit, value);
}

/**
 * Turns a number of `unit` into SI.
 *
 * @param path - Where the number came from, for the error.
 * @param received - What was received there, for the error: the number itself, or the text it was read from.
 * @throws {@link InputError} `malformed-input`, unless the result is finite and not below what nature allows.
 */
export function toSi(quantity: Quantity, unit: Unit, value: number, path: string, received: unknown): number {
  const si = typeof value === "number" ? (value - zero(quantity, unit)) * unit.factor : Number.NaN;
  if (!exists(quantity, si)) {
    const lowest = quantity.minimum === undefined ? "" : `, ${zero(quantity, unit)} or more`;
    throw new InputError([
      { path, value: received, expected: `${quantity.name} in ${unit.symbol}, a finite number${lowest}` },
    ]);
  }
  return si;
}

/**
 * Turns an SI value into a number of `unit`.
 *
 * @throws {@link InputError} `malformed-input`, unless `value` is finite and not below what nature allows.
 */
export function fromSi(quantity: Quantity, unit: Unit, value: number): number {
  if (typeof value !== "number" || !exists(quantity, value)) {
    const lowest = quantity.minimum === undefined ? "" : ", 0 or more";
    throw new InputError([
      { path: "", value, expected: `${quantity.name} in ${quantity.si}, a finite number${lowest}` },
    ]);
  }
  return value / unit.factor + zero(quantity, unit);
}

function exists(quantity: Quantity, si: number): boolean {
  return si >= (quantity.minimum ?? -Number.MAX_VALUE) && si <= Number.MAX_VALUE;
}

function zero(quantity: Quantity, unit: Unit): number {
  return quantity.difference ? 0 : (unit.zero ?? 0);
}
