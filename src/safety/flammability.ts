import catalogue from "../../data/safety/flammability.json" with { type: "json" };
import { attempt, type Density, InputError, type Outcome } from "../units/index.js";
import type { SafetyClass } from "./safety-class.js";

/** How far a fact can be trusted; `given` is for the caller to say. */
export type Confidence = "high" | "medium" | "low" | "given";

/** Where a safety fact comes from. */
export interface SafetySource {
  /** Full citation. */
  readonly source: string;
  /** `read` on the page, `recalled` from memory of it, `computed`, or `given` by the caller. */
  readonly status: "read" | "recalled" | "computed" | "given";
  /** How far it can be trusted. */
  readonly confidence: Confidence;
}

/** A lower flammability limit published elsewhere, which a caller may choose instead. */
export interface AlternativeLimit {
  /** Lower flammability limit, kg/m3. */
  readonly value: Density;
  /** Full citation. */
  readonly source: string;
  /** `read` on the page or `recalled` from memory of it. */
  readonly status: "read" | "recalled";
}

/** Safety class and flammability of a refrigerant. `null` is unknown: whatever needs it refuses. */
export interface FlammabilityFacts {
  /** Designation of ISO 817. */
  readonly designation: string;
  /** Molar mass, kg/mol. */
  readonly molarMass: { readonly value: number };
  /** Safety class of ISO 817. */
  readonly safetyClass: SafetySource & { readonly value: SafetyClass | null };
  /** Lower flammability limit in air: kg/m3, and per cent by volume. Class 1 has none. */
  readonly lowerFlammabilityLimit: SafetySource & {
    readonly value: Density | null;
    readonly volumePercent: number | null;
  };
  /** Other published limits. */
  readonly alternatives: readonly AlternativeLimit[];
  /** What else to know. */
  readonly note?: string;
}

/**
 * Safety class and flammability of the pure refrigerants and the designated blends, with the source of every fact.
 *
 * @returns One entry a refrigerant, in the order of the designations.
 */
export function listFlammabilityFacts(): readonly FlammabilityFacts[] {
  // JSON knows no literal types; tests/safety/flammability.test.ts checks every entry.
  return catalogue.refrigerants as readonly FlammabilityFacts[];
}

/**
 * Safety class and flammability of one refrigerant, pure or a designated blend.
 *
 * Those of a blend are its own, from tests of its worst case; they do not follow from its components.
 *
 * @param designation - As in ISO 817, such as `R-32`.
 * @throws {@link InputError} `malformed-input` when nothing is known of that designation.
 *
 * @example
 * ```ts
 * flammabilityFacts("R-32").lowerFlammabilityLimit.value; // → 0.307 kg/m3
 * ```
 */
export function flammabilityFacts(designation: string): FlammabilityFacts {
  const facts = listFlammabilityFacts().find((entry) => entry.designation === designation);
  if (facts === undefined) {
    throw new InputError([
      {
        path: "refrigerant",
        value: designation,
        expected: "the designation of a refrigerant whose safety data are known, such as R-32, or its facts",
      },
    ]);
  }
  return facts;
}

/** As {@link flammabilityFacts}, without throwing. */
export function tryFlammabilityFacts(designation: string): Outcome<FlammabilityFacts> {
  return attempt(() => flammabilityFacts(designation));
}
