import { OutOfRangeError } from "../units/index.js";
import type { StateOptions } from "./types.js";

/** Who opts in to extrapolate may go this far beyond the upper limits, as a factor. */
export const hotReach = 1.5;
export const denseReach = 2;

/** More than the last digits of any property here. */
export const rounding = 1e-9;

/** Added to a hint where the upper limit is the end of the two-phase region. */
export const nothingAbove = ", below the range only: above the critical point nothing boils";

/** A range that a value has to lie in. */
export interface Range {
  readonly minimum: number;
  readonly maximum: number;
  readonly unit: string;
}

/** Refuses a value outside its range, with a hint whether extrapolating would have helped. */
export function requireInside(
  subject: string,
  quantity: string,
  value: number,
  range: Range,
  { extrapolate = false }: StateOptions,
  hintEnd = "",
): void {
  // Written so that NaN is refused.
  if (value >= range.minimum && value <= range.maximum) return;
  // Above the end of a line there is nothing to extrapolate to.
  const isBeyondEnd = hintEnd !== "" && value > range.maximum;
  const allowed = `{ extrapolate: true } allows some way beyond and marks the result${hintEnd}`;
  let hint = extrapolate ? "extrapolation is not allowed this far" : allowed;
  if (isBeyondEnd) hint = "above it liquid and vapour do not coexist";
  throw new OutOfRangeError({ quantity, value, ...range, hint, subject });
}
