import type { Blend } from "./blend.js";
import type { Fluid } from "./fluid.js";

/**
 * What is left of a name when spelling habits are taken away: letters and digits, in small letters.
 *
 * `R-1234ze(E)`, `r1234ZE E` and `R1234zeE` all become `r1234zee`; `CO₂` becomes `co2`.
 */
export function nameKey(name: string): string {
  // NFKC turns subscript and full-width digits into plain ones.
  return name
    .normalize("NFKC")
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]/gu, "");
}

/** Keys by which one fluid is found, in the order in which they are tried. */
export interface FluidKeys {
  /** With R and without: `r32`, `32`. */
  readonly designations: readonly string[];
  /** Chemical name and synonyms. */
  readonly names: readonly string[];
  /** Chemical formula. */
  readonly formulas: readonly string[];
}

/** The keys of one fluid. */
export function keysOf({ designation, name, synonyms, formula }: Fluid): FluidKeys {
  return {
    designations: designationKeys(designation),
    names: [name, ...synonyms].map(nameKey),
    formulas: formula === "" ? [] : [nameKey(formula)],
  };
}

/** The keys by which one blend is found: designation with R and without, synonyms. */
export function blendKeys({ designation, synonyms }: Blend): readonly string[] {
  return [...designationKeys(designation), ...synonyms.map(nameKey)];
}

/** With R and without. */
function designationKeys(designation: string): readonly string[] {
  const key = nameKey(designation);
  return key.startsWith("r") ? [key, key.slice(1)] : [key];
}
