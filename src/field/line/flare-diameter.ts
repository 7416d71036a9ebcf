import data from "../../../data/field/flares.json" with { type: "json" };
import { attempt, InputCheck, InputError, type Length, type Outcome } from "../../units/index.js";
import { shown } from "../measurement/shown.js";
import { isSameDiameter } from "./tube.js";

/** How wide a flare has to be. */
export interface FlareDiameter {
  /** Smallest diameter, m. */
  readonly minimum: Length;
  /** Largest diameter, m. */
  readonly maximum: Length;
  /** Where it is printed. */
  readonly source: string;
  /** `read` or `recalled`. */
  readonly status: "read" | "recalled";
}

/**
 * How wide a flare has to be for a refrigerant: wider for R-32 and R-410A than for R-22 and R-407C. For any other the
 * manual of the unit has to say it.
 *
 * @param outerDiameter - Of the tube, m; 0.03 mm off is taken as the same size.
 * @param designation - Of the refrigerant, such as `R-32`.
 * @throws {@link InputError} `malformed-input` with the sizes and refrigerants that are listed.
 * @source `data/field/flares.json`: printed service manuals; for the older ones JIS B 8607, class 1 (recalled)
 *
 * @example
 * ```ts
 * flareDiameter(millimetre(9.52), "R-32").maximum; // → 13.2e-3 m
 * flareDiameter(millimetre(9.52), "R-22").maximum; // → 13.0e-3 m
 * ```
 */
export function flareDiameter(outerDiameter: Length, designation: string): FlareDiameter {
  const check = new InputCheck();
  check.positive("outerDiameter", outerDiameter);
  check.oneOf("designation", designation, [...data.flareRefrigerants, ...data.olderRefrigerants]);
  check.finish();
  const rows = data.olderRefrigerants.includes(designation) ? data.olderFlares : data.flares;
  const row = rows.find((each) => isSameDiameter(each.outerDiameter, outerDiameter));
  if (row === undefined) {
    const sizes = rows.map((each) => shown(each.outerDiameter * 1000)).join(", ");
    throw new InputError([
      { path: "outerDiameter", value: outerDiameter, expected: `a listed size: ${sizes} mm` },
    ]);
  }
  // JSON knows no literal types; tests/field/line/flare-diameter.test.ts checks every entry.
  return { ...row.flareDiameter, source: row.source, status: row.status as FlareDiameter["status"] };
}

/** As {@link flareDiameter}, without throwing. */
export function tryFlareDiameter(outerDiameter: Length, designation: string): Outcome<FlareDiameter> {
  return attempt(() => flareDiameter(outerDiameter, designation));
}
