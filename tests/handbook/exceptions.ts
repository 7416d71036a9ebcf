import { readFileSync } from "node:fs";
import type { Comparison } from "./comparisons.js";
import { digitsOff } from "./printed.js";

/** A value of a table that lies outside its tolerance, and is known to. */
export interface TableException {
  readonly row: string;
  readonly equation: string;
  readonly property: string;
  /** Three digits: relative or in the SI unit of the property, as the tolerance of the row. */
  readonly deviation: string;
}

/** A remembered value that is not met in its last digit, and is known not to be. */
export interface PublishedException {
  readonly check: string;
  /** Three digits, relative. */
  readonly deviation: string;
}

/** Values that deviate for one reason. */
export interface Explained<Exception> {
  readonly cause: string;
  readonly values: readonly Exception[];
}

/** `exceptions.json`. */
export interface Exceptions {
  readonly tables: readonly Explained<TableException>[];
  readonly published: readonly Explained<PublishedException>[];
}

/** Reads the explained exceptions. */
export function readExceptions(): Exceptions {
  return JSON.parse(readFileSync(new URL("exceptions.json", import.meta.url), "utf8"));
}

/** The exception that a comparison falls under, if any. */
export function exceptionFor(
  { tables }: Exceptions,
  { id, equation, property }: Comparison,
): TableException | undefined {
  return tables
    .flatMap(({ values }) => values)
    .find((value) => value.row === id && value.equation === equation && value.property === property);
}

/** True while the deviation is what it was when it was explained: more or less of it would be something else. */
export function isStillThere(
  deviation: number,
  { deviation: explained }: { readonly deviation: string },
): boolean {
  // A unit in the third digit, for other engines.
  return Math.abs(digitsOff(deviation, explained)) <= 1;
}
