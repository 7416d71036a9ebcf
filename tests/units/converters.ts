import * as units from "../../src/units/index.js";

/** A pair of converters as plain functions, found by name as a user would guess it. */
export interface Converters {
  readonly from: (value: number) => number;
  readonly into: (value: number) => number;
}

type Exports = Readonly<Record<string, unknown>>;

/** `bar` and `inBar`, for the name `bar`. */
export function convertersOf(name: string): Converters {
  const { [name]: from, [`in${name.charAt(0).toUpperCase()}${name.slice(1)}`]: into } = units as Exports;
  if (typeof from !== "function" || typeof into !== "function") throw new Error(`no converters for ${name}`);
  return { from: from as Converters["from"], into: into as Converters["into"] };
}

/** Every exported name that has a way back. */
export const CONVERTER_NAMES: readonly string[] = Object.keys(units).filter(
  (name) => `in${name.charAt(0).toUpperCase()}${name.slice(1)}` in units,
);

/** Names of all ways back, for finding one that has no way in. */
export const WAYS_BACK: readonly string[] = Object.keys(units).filter((name) => /^in[A-Z]/.test(name));
