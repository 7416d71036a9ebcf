import data from "../../../data/field/extra-charge.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type Density,
  InputCheck,
  type Length,
  type LinearDensity,
  type Mass,
  type Outcome,
  requireObject,
  type Temperature,
} from "../../units/index.js";
import { checkTubeSize, type TubeSize, tubeBore } from "../line/tube.js";
import { shown } from "../measurement/shown.js";
import { checkRefrigerant } from "../refrigerant-check.js";

/** What is needed for the most that a liquid line can hold. */
export interface LiquidLine {
  /** Refrigerant of the system. */
  readonly refrigerant: Refrigerant;
  /** Temperature of the liquid, K: cold liquid is heavier. */
  readonly liquidTemperature: Temperature;
  /** Size of the liquid line. */
  readonly tube: TubeSize;
}

/** A line set and what the manual of the unit says about its charge. */
export interface LineSet {
  /** Length of the line set, one way, m. */
  readonly length: Length;
  /** Length that the charge on the nameplate covers, m, by the manual. */
  readonly chargeFreeLength: Length;
  /** Extra charge for each further metre, kg/m, by the manual. */
  readonly chargePerMetre: LinearDensity;
  /** Longest line set that the manual allows, m. */
  readonly maximumLength: Length;
  /** Shortest line set that the manual allows, m. */
  readonly minimumLength?: Length;
  /** The liquid line, to compare the printed value with what the bore can hold. */
  readonly liquidLine?: LiquidLine;
}

/** Codes of the warnings of a line charge. */
export type LineChargeWarningCode = "below-minimum-length" | "printed-above-bound";

/** Extra charge for a line set. */
export interface LineChargeResult {
  /** Refrigerant to add for the length, kg; 0 or above. */
  readonly extraCharge: Mass;
  /** Length beyond the one that the nameplate covers, m; 0 or above. */
  readonly chargedLength: Length;
  /** The most that each metre of the bore can hold, full of liquid, kg/m; undefined without a liquid line. */
  readonly boundPerMetre: LinearDensity | undefined;
  /** Density of that liquid, kg/m3. */
  readonly liquidDensity: Density | undefined;
  /** What is odd. */
  readonly warnings: readonly Warning<LineChargeWarningCode>[];
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/** An extra charge for each metre as printed by a maker, to compare with. */
export interface PrintedExtraCharge {
  /** Designation. */
  readonly refrigerant: string;
  /** Outer diameter of the liquid line, m. */
  readonly liquidLineOuterDiameter: Length;
  /** kg/m. */
  readonly chargePerMetre: LinearDensity;
  /** Where it was seen. */
  readonly source: string;
  /** `read` or `recalled`. */
  readonly status: "read" | "recalled";
  /** What else to know. */
  readonly note?: string;
}

/**
 * Extra charge for a line set longer than the nameplate covers: m = max(0, (L − L_free) g).
 *
 * @param line - Lengths (m) and charge for each metre (kg/m) from the manual of the unit.
 * @returns Charge in kg; never negative. Round it as the manual says.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a line set longer than the manual allows.
 * @source formula of installation manuals of split units; bound: saturated liquid density times bore
 *
 * @example
 * ```ts
 * lineCharge({ length: 9, chargeFreeLength: 5, chargePerMetre: 0.012, maximumLength: 20 }).extraCharge; // → 0.048 kg
 * ```
 */
export function lineCharge(line: LineSet): LineChargeResult {
  examine(line);
  const { length, chargeFreeLength, chargePerMetre, minimumLength } = line;
  const chargedLength = Math.max(0, length - chargeFreeLength);
  const extraCharge = chargedLength * chargePerMetre;
  const bound = line.liquidLine === undefined ? undefined : boundOf(line.liquidLine);
  const warnings: Warning<LineChargeWarningCode>[] = [];
  if (minimumLength !== undefined && length < minimumLength) {
    warnings.push({
      code: "below-minimum-length",
      message: `${shown(length)} m is shorter than the manual allows, ${shown(minimumLength)} m`,
    });
  }
  if (bound !== undefined && chargePerMetre > (1 + data.bound.excess) * bound.perMetre) {
    warnings.push({
      code: "printed-above-bound",
      message:
        `${shown(chargePerMetre * 1000)} g/m is more than the bore holds full of liquid, ` +
        `${shown(bound.perMetre * 1000)} g/m: it covers more than the liquid line, or the tube or the value is wrong`,
    });
  }
  return {
    extraCharge,
    chargedLength,
    boundPerMetre: bound?.perMetre,
    liquidDensity: bound?.density,
    warnings,
    because:
      `${shown(length)} m less ${shown(chargeFreeLength)} m covered by the nameplate, at ` +
      `${shown(chargePerMetre * 1000)} g/m: ${shown(extraCharge * 1000)} g`,
  };
}

/** As {@link lineCharge}, without throwing. */
export function tryLineCharge(line: LineSet): Outcome<LineChargeResult> {
  return attempt(() => lineCharge(line));
}

/**
 * Refrigerant that stays in a hose full of liquid, m = ρ π d² L/4: weigh with the hose handling stated.
 *
 * @param innerDiameter - m.
 * @param length - m.
 * @param liquidDensity - kg/m3.
 * @returns kg.
 * @throws {@link InputError} `malformed-input`.
 */
export function hoseHoldUp(innerDiameter: Length, length: Length, liquidDensity: Density): Mass {
  const check = new InputCheck();
  check.positive("innerDiameter", innerDiameter);
  check.positive("length", length);
  check.positive("liquidDensity", liquidDensity);
  check.finish();
  return liquidDensity * (Math.PI / 4) * innerDiameter * innerDiameter * length;
}

/**
 * Extra charges for each metre as printed by makers of split units: to compare, never to use in place of the manual.
 *
 * @throws {@link InputError} `malformed-input`.
 * @returns Those for a refrigerant and an outer diameter of the liquid line (m, within 0.03 mm); may be empty.
 */
export function printedExtraCharges(
  refrigerant: string,
  outerDiameter: Length,
): readonly PrintedExtraCharge[] {
  const check = new InputCheck();
  check.positive("outerDiameter", outerDiameter);
  check.finish();
  // JSON knows no literal types; tests/field/charging/line-charge.test.ts checks every entry.
  return (data.printed as readonly PrintedExtraCharge[]).filter(
    (row) => row.refrigerant === refrigerant && Math.abs(row.liquidLineOuterDiameter - outerDiameter) <= 3e-5,
  );
}

function boundOf({ refrigerant, liquidTemperature, tube }: LiquidLine): {
  readonly density: Density;
  readonly perMetre: LinearDensity;
} {
  const { density } = refrigerant.bubble({ temperature: liquidTemperature }).liquid;
  return { density, perMetre: density * tubeBore(tube).area };
}

function examine(line: LineSet): void {
  requireObject("", line, "a line set");
  const check = new InputCheck();
  const { length, maximumLength, minimumLength, liquidLine } = line;
  check.positive("length", length);
  check.notNegative("chargeFreeLength", line.chargeFreeLength);
  check.notNegative("chargePerMetre", line.chargePerMetre);
  if (check.positive("maximumLength", maximumLength)) {
    check.require(!(length > maximumLength), "length", length, `at most ${maximumLength} m, by the manual`);
  }
  if (minimumLength !== undefined) {
    check.notNegative("minimumLength", minimumLength);
    check.require(
      !(minimumLength > maximumLength),
      "minimumLength",
      minimumLength,
      `not above the maximum, ${maximumLength} m`,
    );
  }
  if (liquidLine !== undefined) {
    checkRefrigerant(check, "liquidLine.refrigerant", liquidLine.refrigerant);
    check.positive("liquidLine.liquidTemperature", liquidLine.liquidTemperature);
    checkTubeSize(check, "liquidLine.tube", liquidLine.tube);
  }
  check.finish();
}
