import {
  type Area,
  attempt,
  type Density,
  formatNumber,
  InputError,
  type Length,
  type Mass,
  type Outcome,
  requireObject,
} from "../../units/index.js";
import type { Caution, Warning } from "../caution.js";
import { type ChargeCautionCode, chargeCautions } from "../charge-cautions.js";
import type { FlammabilityFacts, SafetySource } from "../flammability.js";
import { printedMaximumCharge, printedMinimumArea } from "../printed-limits.js";
import { type FlammabilityClass, flammabilityClass, type SafetyClass } from "../safety-class.js";
import { altitudeFactor } from "./altitude-factor.js";
import { bandOf, type ChargeBand, type ChargeBands, chargeBands } from "./charge-bands.js";
import { type ChargeBranch, type IecEdition, iecConstants, type Mounting } from "./constants.js";
import { examineRoom } from "./examine-room.js";
import { releaseHeight } from "./release-height.js";
import { unventilatedMaximumCharge, unventilatedMinimumArea } from "./unventilated-limits.js";

/** Codes of the warnings of {@link unventilatedRoom}. */
export type RoomWarningCode =
  | "low-confidence-data"
  | "several-published-limits"
  | "release-height-unusual"
  | "band-edition-uncertain";

/** An appliance with refrigerant in a room without ventilation. */
export interface UnventilatedRoom {
  /** Edition of IEC 60335-2-40 to follow; there is no default. */
  readonly edition: IecEdition;
  /** Designation of a refrigerant whose safety data are known here, or its facts. */
  readonly refrigerant: string | FlammabilityFacts;
  /** A lower flammability limit (kg/m3) to use instead of the one of the facts, with where it comes from. */
  readonly lowerFlammabilityLimit?: { readonly value: Density; readonly source: string };
  /** Refrigerant that can leak into the room: nameplate plus what was added on site, kg. */
  readonly charge: Mass;
  /** Floor area of the room, m2. */
  readonly floorArea: Area;
  /** How the indoor unit is mounted. */
  readonly mounting: Mounting;
  /**
   * Distance from the underside of the unit up to the point where refrigerant can escape, m. Edition 5.1 and later
   * only; left out, refrigerant is taken to escape at the underside, and the result says so.
   */
  readonly releaseOffset?: Length;
  /** Height of the room, m; when given, a release above the ceiling is refused. */
  readonly roomHeight?: Length;
  /** Asks for the altitude factor of the named rule at an elevation (0 to 3200 m). Not part of IEC 60335-2-40. */
  readonly altitude?: { readonly elevation: Length; readonly rule: "UL/CSA 60335-2-40" };
}

/** What the standard says about a charge in a room without ventilation. */
export interface UnventilatedRoomResult {
  /**
   * `pass`: the room is large enough, or need not be. `fail`: it is too small. `outside-clause`: no room is large
   * enough for this clause; ventilation, detection or another product is needed.
   */
  readonly verdict: "pass" | "fail" | "outside-clause";
  /** Where the charge lies among the bands. */
  readonly band: ChargeBand;
  /** The band limits, kg. */
  readonly bands: ChargeBands;
  /** What fixed the two limits: a formula, the end of a band, or nothing. */
  readonly branch: {
    readonly minimumArea: ChargeBranch | "none";
    readonly maximumCharge: ChargeBranch | "m1" | "m2" | "none";
  };
  /** Largest charge that this clause allows in this room, kg; undefined outside the clause. */
  readonly maximumCharge: Mass | undefined;
  /** Smallest floor area for this charge, m2; 0 up to m1, undefined outside the clause. */
  readonly minimumArea: Area | undefined;
  /** Charge still free (negative: too much), kg; undefined outside the clause. */
  readonly chargeMargin: Mass | undefined;
  /** Floor area to spare (negative: missing), m2; undefined outside the clause. */
  readonly areaMargin: Area | undefined;
  /** Charge asked about, kg. */
  readonly charge: Mass;
  /** Floor area asked about, m2. */
  readonly floorArea: Area;
  /** Height h0 used in the formulas, m. */
  readonly releaseHeight: Length;
  /** Factor on the minimum area for altitude; 1 unless asked for. */
  readonly altitudeFactor: number;
  /** Designation of the refrigerant. */
  readonly refrigerant: string;
  /** Safety class used. */
  readonly safetyClass: SafetyClass;
  /** Lower flammability limit used, kg/m3, and where it comes from. */
  readonly lowerFlammabilityLimit: SafetySource & { readonly value: Density };
  /** Name of the standard. */
  readonly standard: string;
  /** Edition followed. */
  readonly edition: IecEdition;
  /** That edition in full. */
  readonly editionTitle: string;
  /** Which part of the standard. */
  readonly clause: string;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** What is odd about the input or the data. */
  readonly warnings: readonly Warning<RoomWarningCode>[];
  /** What has to be shown with this result. */
  readonly cautions: readonly Caution<ChargeCautionCode>[];
  /** The rule and the numbers that decided. */
  readonly because: string;
}

/**
 * May this charge stand in this room without ventilation? The rule of IEC 60335-2-40, Annex GG.
 *
 * Up to m1 the room does not matter. From m1 to m2 the floor must be at least A_min. Above m2 the clause has no
 * answer: the verdict is `outside-clause` and no limit is given.
 *
 * @param room - Edition, refrigerant, charge, room and mounting; SI.
 * @returns Verdict, limits, margins and everything they rest on.
 * @throws {@link InputError} `malformed-input` for bad numbers, class 1 or B refrigerants, an unknown lower
 * flammability limit, a vapour not heavier than air (M ≤ 42 g/mol); all problems at once.
 * @throws {@link OutOfRangeError} `out-of-range` for an elevation outside 0 to 3200 m.
 * @source IEC 60335-2-40, Annex GG; constants with their sources in `data/safety/iec-60335-2-40.json`
 *
 * @example
 * ```ts
 * unventilatedRoom({ edition: "6", refrigerant: "R-32", charge: 2, floorArea: 20, mounting: "wall" }).minimumArea;
 * // → 4.826 m2 (linear branch)
 * ```
 */
export function unventilatedRoom(room: UnventilatedRoom): UnventilatedRoomResult {
  requireObject("", room, "a charge and a room");
  const { edition, charge, floorArea, mounting } = room;
  const constants = iecConstants();
  const { facts, safetyClass, limit } = examineRoom(room);
  const height = releaseHeight(edition, mounting, room.releaseOffset);
  if (room.roomHeight !== undefined && !(height <= room.roomHeight)) {
    throw new InputError([
      {
        path: "roomHeight",
        value: room.roomHeight,
        expected: `at least the release height, ${height} m`,
      },
    ]);
  }
  const factor = room.altitude === undefined ? 1 : altitudeFactor(room.altitude.elevation);
  const flammability = flammabilityClass(safetyClass);
  const bands = chargeBands(edition, flammability, limit.value);
  const band = bandOf(charge, bands);
  const situation = { edition, lowerFlammabilityLimit: limit.value, releaseHeight: height };
  const needed = unventilatedMinimumArea(situation, charge);
  const allowed = unventilatedMaximumCharge(situation, floorArea / factor);
  const { title } = constants.editions[edition];
  const common = {
    band,
    bands,
    charge,
    floorArea,
    releaseHeight: height,
    altitudeFactor: factor,
    refrigerant: facts.designation,
    safetyClass,
    lowerFlammabilityLimit: limit,
    standard: constants.standard,
    edition,
    editionTitle: title,
    clause: constants.clause,
    assumptions: assumptionsOf(room, flammability),
    warnings: warningsOf(room, facts, limit, height, band, flammability),
    cautions: chargeCautions({
      standard: title,
      lowerFlammabilityLimit: limit.value,
      source: limit.source,
    }),
  };
  if (band === "m2-to-m3" || band === "above-m3") {
    const [name, end] = band === "above-m3" ? ["m3", bands.m3] : ["m2", bands.m2];
    return {
      ...common,
      verdict: "outside-clause",
      branch: { minimumArea: "none", maximumCharge: "none" },
      maximumCharge: undefined,
      minimumArea: undefined,
      chargeMargin: undefined,
      areaMargin: undefined,
      because:
        `charge ${shown(charge)} kg is above ${name} = ${shown(end)} kg: no room without ventilation is large ` +
        `enough by ${constants.clause} of ${title}`,
    };
  }
  // The bands frame the formula: m1 is allowed in any room, more than m2 in none.
  const maximum =
    allowed.charge < bands.m1
      ? { charge: bands.m1, branch: "m1" as const }
      : allowed.charge > bands.m2
        ? { charge: bands.m2, branch: "m2" as const }
        : allowed;
  const free = band === "up-to-m1";
  const minimumArea = free ? 0 : needed.area * factor;
  // Decided by the charge: exactly at the limit the two comparisons could differ by rounding.
  const pass = charge <= maximum.charge;
  return {
    ...common,
    verdict: pass ? "pass" : "fail",
    branch: { minimumArea: free ? "none" : needed.branch, maximumCharge: maximum.branch },
    maximumCharge: maximum.charge,
    minimumArea,
    chargeMargin: maximum.charge - charge,
    areaMargin: floorArea - minimumArea,
    because: free
      ? `charge ${formatNumber(charge, 3)} kg is not above m1 = ${printedMaximumCharge(bands.m1, 3)}: ${title} asks for no room size`
      : `charge ${formatNumber(charge, 3)} kg in ${shown(floorArea)} m²: ${printedMaximumCharge(maximum.charge, 3)} allowed, ` +
        `${printedMinimumArea(minimumArea, 2)} needed (${needed.branch} rule, h0 = ${shown(height)} m, ` +
        `LFL = ${shown(limit.value)} kg/m3${factor === 1 ? "" : `, altitude factor ${shown(factor)}`}; ${title})`,
  };
}

/** As {@link unventilatedRoom}, without throwing. */
export function tryUnventilatedRoom(room: UnventilatedRoom): Outcome<UnventilatedRoomResult> {
  return attempt(() => unventilatedRoom(room));
}

function assumptionsOf(room: UnventilatedRoom, flammability: FlammabilityClass): string[] {
  const { editions } = iecConstants();
  const assumptions = [
    "The whole charge can leak into this one room, which has no ventilation.",
    "The floor area is that of the room alone, without rooms joined only by ducts or a false ceiling.",
  ];
  if (editions[room.edition].releaseOffset && room.releaseOffset === undefined) {
    assumptions.push(
      "No release offset was given: refrigerant is taken to escape at the underside of the unit.",
    );
  }
  if (flammability === "2L" && !editions[room.edition].class2LBands) {
    assumptions.push(`Edition ${room.edition} has no class 2L: the refrigerant is treated as class 2.`);
  }
  return assumptions;
}

function warningsOf(
  room: UnventilatedRoom,
  facts: FlammabilityFacts,
  limit: SafetySource & { readonly value: Density },
  height: Length,
  band: ChargeBand,
  flammability: FlammabilityClass,
): Warning<RoomWarningCode>[] {
  const { releaseHeight: heights, bands } = iecConstants();
  const warnings: Warning<RoomWarningCode>[] = [];
  if (limit.confidence === "low" || facts.safetyClass.confidence === "low") {
    warnings.push({
      code: "low-confidence-data",
      message: `safety data of ${facts.designation} are of low confidence: the result is indicative only`,
    });
  }
  if (room.lowerFlammabilityLimit === undefined && facts.alternatives.length > 0) {
    const others = facts.alternatives.map(({ value, source }) => `${value} kg/m3 (${source})`);
    warnings.push({
      code: "several-published-limits",
      message: `used LFL ${limit.value} kg/m3; also published: ${others.join("; ")}`,
    });
  }
  if (height > heights.unusualAbove) {
    warnings.push({
      code: "release-height-unusual",
      message: `release height ${height} m is above ${heights.unusualAbove} m: check the offset against the manual`,
    });
  }
  if (
    room.edition === "5.1" &&
    flammability === "2L" &&
    room.charge > bands.general.m2 * limit.value &&
    band !== "above-m3"
  ) {
    warnings.push({
      code: "band-edition-uncertain",
      message:
        "above 26 m3 times the LFL it is not certain that edition 5.1 already has the larger class 2L bands of " +
        "edition 6: read the standard",
    });
  }
  return warnings;
}

function shown(value: number): string {
  return String(Number(value.toPrecision(4)));
}
