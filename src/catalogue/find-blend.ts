import type { Blend } from "./blend.js";
import { blendKeys, nameKey } from "./name-key.js";

/**
 * The blend of a list that a name leads to; undefined when there is none. Spelling is forgiven as for fluids: `R-410A`,
 * `r410a`, `410 A`.
 *
 * @param blends - Where to look; the first that fits is taken.
 * @param name - Designation, with R or without, or a synonym.
 */
export function findBlendIn(blends: readonly Blend[], name: string): Blend | undefined {
  const key = nameKey(name);
  return key === "" ? undefined : blends.find((blend) => blendKeys(blend).includes(key));
}
