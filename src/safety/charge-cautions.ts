import type { Density } from "../units/index.js";
import type { Caution } from "./caution.js";

/** Codes of the cautions that go with every charge limit. */
export type ChargeCautionCode =
  | "indicative-only"
  | "certified-persons-only"
  | "inputs-decide"
  | "pass-is-not-safe"
  | "harm-below-flammability"
  | "no-other-safety-class"
  | "standards-change"
  | "unverified-data"
  | "toxic-combustion-products"
  | "duties-differ";

/** What the cautions name: the rule that was used and the limit that it was fed with. */
export interface ChargeCautionFacts {
  /** Standard and edition, such as `IEC 60335-2-40:2018 (edition 6)`. */
  readonly standard: string;
  /** Lower flammability limit used, kg/m3. */
  readonly lowerFlammabilityLimit: Density;
  /** Where that limit comes from. */
  readonly source: string;
}

/** What every result of this library has to say; the same words wherever it stands. */
export const certifiedPersonsOnly: string =
  "These numbers help a trained and certified person. They replace neither the manual and the nameplate of the unit " +
  "nor local code and law, which reserve work on refrigerant circuits to licensed people in most countries; flammable " +
  "(2L, 2, 3) and toxic (B) refrigerants ask for further training.";

/**
 * The cautions that every charge limit must be shown with.
 *
 * @param facts - The rule and the lower flammability limit (kg/m3) that the result rests on.
 * @returns All of them, in the order in which to show them.
 * @source our own wording; the duty to show them is this library's, no standard's
 */
export function chargeCautions(facts: ChargeCautionFacts): readonly Caution<ChargeCautionCode>[] {
  const { standard, lowerFlammabilityLimit, source } = facts;
  return [
    {
      code: "indicative-only",
      text:
        "This is arithmetic for orientation. The manual of the appliance, the local code and the authority in " +
        "charge decide; where they differ from this result, follow them.",
    },
    {
      code: "certified-persons-only",
      text: certifiedPersonsOnly,
    },
    {
      code: "inputs-decide",
      text:
        "The limit holds for the system as entered: safety class, full charge with what was added on site, floor " +
        "area and mounting height as built. A wrong entry makes an unsafe answer.",
    },
    {
      code: "pass-is-not-safe",
      text:
        "A room that is large enough is not free of danger. Leaked gas lies near the floor: look separately at " +
        "ignition sources, pits, cellars, cupboards and rooms without air change.",
    },
    {
      code: "harm-below-flammability",
      text:
        "Refrigerant drives out oxygen and can harm long before it can burn. If it leaks: get out, let air in, " +
        "light and switch nothing, and go back only with a gas detector.",
    },
    {
      code: "no-other-safety-class",
      text: "Never fill equipment with a refrigerant of another safety class than the one it is designed and marked for.",
    },
    {
      code: "standards-change",
      text:
        `Computed to ${standard} with a lower flammability limit of ${lowerFlammabilityLimit} kg/m3 (${source}). ` +
        "Standards are revised: check which edition is in force where you are.",
    },
    {
      code: "unverified-data",
      text:
        "Where a warning says that a fact is of low confidence, it was not checked against the standard: the result is " +
        "indicative at best.",
    },
    {
      code: "toxic-combustion-products",
      text: "Burning or overheated fluorinated refrigerants give off hydrogen fluoride and other poisonous gases.",
    },
    {
      code: "duties-differ",
      text:
        "Leak checks, records, certificates and bans depend on the country and the date; ask the competent " +
        "authority.",
    },
  ];
}
