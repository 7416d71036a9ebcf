import { attempt, type Density, InputError, type Outcome, type Problem } from "../units/index.js";
import { flammabilityFacts } from "./flammability.js";
import { isFlammable } from "./safety-class.js";

/** What the flammability of a mixture's vapour looks like from its components: informative, no classification. */
export interface MixtureFlammability {
  /** Mass fraction of components that burn (class 2L, 2 or 3). */
  readonly flammableFraction: number;
  /**
   * Lower flammability limit by the rule of Le Chatelier, kg/m3; undefined where nothing in it burns. Components that do
   * not burn only dilute here, although some of them inhibit: the true limit of such a mixture lies higher, or there is
   * none.
   */
  readonly lowerFlammabilityLimit: Density | undefined;
  /** The limits that were used, kg/m3, with their sources, by designation. */
  readonly used: Readonly<Record<string, { readonly value: Density; readonly source: string }>>;
  /** Why this decides nothing. */
  readonly because: string;
}

/**
 * The flammability of a vapour from its components: 1/L = Σ wᵢ/Lᵢ over those that burn, by mass.
 *
 * Informative: the safety class of a blend is that of its worst case of formulation and fractionation in the tests of ISO
 * 817 or ASHRAE 34, and a limit in a table is a tested number. Beside the listed limits of six blends this one lies
 * between 30 % below (R-455A) and 18 % above (R-457A). Never use it for compliance.
 *
 * @param composition - Mass fractions by designation.
 * @throws `malformed-input`, all problems at once: fractions that do not add up to 1, a component whose class or, where it
 *   burns, whose limit is unknown.
 * @source Le Chatelier, H., Annales des Mines 19 (1891) 388, for the rule (recalled); with limits per mass the
 *   mole fractions of the rule become mass fractions, because a limit in kg/m3 is one in per cent by volume times the molar mass.
 */
export function mixtureFlammability(composition: Readonly<Record<string, number>>): MixtureFlammability {
  if (typeof composition !== "object" || composition === null) {
    throw new InputError([
      { path: "composition", value: composition, expected: "mass fractions by designation" },
    ]);
  }
  const problems: Problem[] = [];
  const demand = (path: string, value: unknown, isRight: boolean, expected: string): void => {
    if (!isRight) problems.push({ path, value, expected });
  };
  let sum = 0;
  let flammableFraction = 0;
  let reciprocal = 0;
  const used: Record<string, { value: number; source: string }> = {};
  for (const [designation, fraction] of Object.entries(composition)) {
    const path = `composition.${designation}`;
    const isFraction = typeof fraction === "number" && fraction >= 0 && fraction <= 1 + 1e-9;
    demand(path, fraction, isFraction, "a mass fraction from 0 to 1");
    sum += Number(fraction);
    const facts = attempt(() => flammabilityFacts(designation));
    const safetyClass = facts.ok ? facts.value.safetyClass.value : null;
    if (!facts.ok || safetyClass === null) {
      demand(path, designation, false, "a refrigerant whose safety class is known");
      continue;
    }
    if (!isFlammable(safetyClass)) continue;
    const { value, source } = facts.value.lowerFlammabilityLimit;
    if (value === null) {
      demand(path, designation, false, "a flammable refrigerant whose lower flammability limit is known");
      continue;
    }
    flammableFraction += fraction;
    reciprocal += fraction / value;
    used[designation] = { value, source };
  }
  demand("composition", sum, Math.abs(sum - 1) < 1e-6, "mass fractions that add up to 1");
  if (problems.length > 0) throw new InputError(problems);
  return {
    flammableFraction,
    lowerFlammabilityLimit: reciprocal > 0 ? 1 / reciprocal : undefined,
    used,
    because:
      "by the rule of Le Chatelier from the components' limits; informative: the class of a blend is decided by tests of " +
      "its worst case of formulation and fractionation (ISO 817, ASHRAE 34), not by this",
  };
}

/** As {@link mixtureFlammability}, without throwing. */
export function tryMixtureFlammability(
  composition: Readonly<Record<string, number>>,
): Outcome<MixtureFlammability> {
  return attempt(() => mixtureFlammability(composition));
}
