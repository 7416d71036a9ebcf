import { existsSync, readFileSync } from "node:fs";
import type { Comparison } from "./comparisons.js";

/** Where the worst deviations seen are kept; `scripts/accuracy.ts` writes it. */
export const limitsFile: URL = new URL("worst-deviations.json", import.meta.url);

/** Worst deviation by fluid and equation, source, region and property. */
export type Limits = Record<string, Record<string, Record<string, Record<string, number>>>>;

/** Below this a deviation is rounding, and other engines round otherwise. */
const floor = 1e-9;
/** A critical density is found where the isotherm is flat: fewer of its digits are sure. */
const flatFloor = 1e-6;

/** The size of a deviation, or of what rounding could make of it. */
export function sizeOf({ property, deviation, isRelative, expected }: Comparison): number {
  const share = property === "criticalDensity" ? flatFloor : floor;
  return Math.max(Math.abs(deviation), isRelative ? share : share * Math.max(1, Math.abs(expected)));
}

/** The worst deviation of each group, rounded up in its second digit. */
export function limitsOf(comparisons: readonly Comparison[]): Limits {
  const limits: Limits = {};
  for (const comparison of comparisons) {
    const { property } = comparison;
    const byProperty = groupOf(limits, comparison);
    byProperty[property] = Math.max(byProperty[property] ?? 0, roundedUp(sizeOf(comparison)));
  }
  return limits;
}

/** The limit kept for a comparison, if there is one. */
export function limitFor(
  limits: Limits,
  { fluid, equation, source, region, property }: Comparison,
): number | undefined {
  return limits[`${fluid} ${equation}`]?.[source]?.[region]?.[property];
}

/** The limits of a comparison's fluid, source and region, by property; made if there are none yet. */
function groupOf(limits: Limits, { fluid, equation, source, region }: Comparison): Record<string, number> {
  const bySource = limits[`${fluid} ${equation}`] ?? {};
  const byRegion = bySource[source] ?? {};
  const byProperty = byRegion[region] ?? {};
  limits[`${fluid} ${equation}`] = bySource;
  bySource[source] = byRegion;
  byRegion[region] = byProperty;
  return byProperty;
}

/** Reads the limits kept. */
export function readLimits(): Limits {
  if (!existsSync(limitsFile)) return {};
  return JSON.parse(readFileSync(limitsFile, "utf8")).limits;
}

/** A positive number with two digits, never smaller: 1.234e-4 becomes 1.3e-4. */
export function roundedUp(value: number): number {
  const text = value.toExponential(1);
  if (Number(text) >= value) return Number(text);
  const [mantissa, exponent] = text.split("e");
  return Number(`${Math.round(Number(mantissa) * 10) + 1}e${Number(exponent) - 1}`);
}
