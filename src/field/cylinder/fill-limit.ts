import data from "../../../data/field/filling-ratios.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  InputCheck,
  InputError,
  type Mass,
  type Outcome,
  requireObject,
  type Volume,
} from "../../units/index.js";
import { halfWidthUncertainty } from "../measurement/instrument.js";
import { shown } from "../measurement/shown.js";
import { COVERAGE_FACTOR } from "../measurement/uncertainty.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { fillingRatio, fillingRule, recoveredLimit } from "./filling-ratio.js";

/** A cylinder that refrigerant is to be put into. */
export interface CylinderToFill {
  /** What it is for; recovered refrigerant of unknown kind has no limit here. */
  readonly refrigerant: Refrigerant;
  /** Water capacity, m3. */
  readonly volume: Volume;
  /** Whether it is made to be filled again; one that is not must never be. */
  readonly refillable: boolean;
  /** Most that it may hold, as marked on it, kg; a cylinder without such a mark goes by the rules alone. */
  readonly markedLimit?: Mass;
  /** New refrigerant, or recovered: that may hold oil, and gets more room. */
  readonly contents: "new" | "recovered";
  /** What is in it already, kg. */
  readonly inside: Mass;
  /** Half-width of the error of the scale, kg. */
  readonly scaleHalfWidth: Mass;
}

/** What decided how full a cylinder may be. */
export type FillBound = "marked" | "filling-ratio" | "0.95-at-50" | "full-at-60" | "0.8-at-21";

/** How full a cylinder may be. */
export interface FillLimit {
  /** Most that it may hold, kg. */
  readonly maximum: Mass;
  /** What decided. */
  readonly bound: FillBound;
  /** Each bound that is known, kg. */
  readonly bounds: Readonly<Partial<Record<FillBound, Mass>>>;
  /** Whether anything may still be put in; `overfilled` holds more than it may. */
  readonly state: "has-room" | "full" | "overfilled";
  /** Most that may still be put in, kg, with the error of the scale taken off; 0 unless it has room. */
  readonly room: Mass;
  /** What is odd. */
  readonly warnings: readonly Warning<"overfilled">[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The rule and the numbers that decided. */
  readonly because: string;
}

/**
 * How much a cylinder may hold: the smallest of the mark, the tabulated filling ratio, and the rule for liquefied gases.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a cylinder that is not made to be filled
 *   again, and for a gas that only a table by test pressure can speak for while the cylinder has no mark.
 * @source `data/field/filling-ratios.json`; densities from the equation of state
 */
export function fillLimit(cylinder: CylinderToFill): FillLimit {
  checkCylinder(cylinder);
  const { refrigerant, volume, contents, markedLimit, inside, scaleHalfWidth } = cylinder;
  const rule = fillingRule(refrigerant);
  const table = fillingRatio(refrigerant);
  // Above its critical temperature a gas has no liquid, and its table holds for one test pressure only.
  if (rule === undefined && markedLimit === undefined) {
    throw new InputError([
      {
        path: "markedLimit",
        value: markedLimit,
        expected: `the limit marked on the cylinder: ${refrigerant.designation} may be filled by a table for its test pressure only`,
      },
    ]);
  }
  const bounds: Partial<Record<FillBound, Mass>> = {
    ...(markedLimit === undefined ? {} : { marked: markedLimit }),
    // Without the rule the table holds for one test pressure of the cylinder, which its mark knows and we do not.
    ...(rule === undefined || table?.ratio === undefined ? {} : { "filling-ratio": table.ratio * volume }),
    ...(rule === undefined ? {} : { "0.95-at-50": rule.warm * volume, "full-at-60": rule.hot * volume }),
    ...(contents === "new" ? {} : { "0.8-at-21": recoveredLimit(refrigerant) * volume }),
  };
  const [bound, maximum] = (Object.entries(bounds) as [FillBound, Mass][]).reduce((least, each) =>
    each[1] < least[1] ? each : least,
  );
  const U = COVERAGE_FACTOR * halfWidthUncertainty(scaleHalfWidth);
  const left = maximum - inside - U;
  const state = inside > maximum ? "overfilled" : left > 0 ? "has-room" : "full";
  const room = state === "has-room" ? left : 0;
  return {
    maximum,
    bound,
    bounds,
    state,
    room,
    warnings:
      state === "overfilled"
        ? [
            {
              code: "overfilled",
              message: `${shown(inside)} kg are inside, ${shown(maximum)} kg are allowed: keep it cool and empty it into another one now`,
            },
          ]
        : [],
    assumptions: [
      contents === "new"
        ? `It holds nothing but ${refrigerant.designation}, and no oil.`
        : `It holds ${refrigerant.designation} that was recovered, with little oil.`,
      "The mark on the cylinder and local rules win where they allow less.",
    ],
    because: `${shown(maximum)} kg by ${bound}; ${shown(inside)} kg inside and ± ${shown(U)} kg of the scale: ${state}, ${shown(room)} kg may go in`,
  };
}

/** As {@link fillLimit}, without throwing. */
export function tryFillLimit(cylinder: CylinderToFill): Outcome<FillLimit> {
  return attempt(() => fillLimit(cylinder));
}

/**
 * How many cylinders of one kind a mass needs.
 *
 * @param mass - kg, above 0.
 * @param room - What each can take, kg, above 0: see {@link fillLimit}.
 * @throws {@link InputError} `malformed-input`.
 */
export function cylindersNeeded(mass: Mass, room: Mass): number {
  const check = new InputCheck();
  check.positive("mass", mass);
  check.positive("room", room);
  check.finish();
  return Math.ceil(mass / room);
}

/**
 * Gross weight of a filled cylinder by the US rule, kg: 0.8 times water capacity times specific gravity at 77 °F, plus tare.
 * Without the specific gravity the rule would overfill: liquids lighter than water need more room.
 *
 * It can allow more than {@link fillLimit}: of R-410A 0.849 kg/L against 0.815. Take the smaller.
 *
 * @param waterCapacity - Mass of water that the cylinder holds, kg.
 * @param specificGravity - Of the liquid at 77 °F, 25 °C.
 * @param tare - Of the empty cylinder, kg.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source AHRI Guideline K, as in a trade press article (read)
 */
export function grossWeightLimit(waterCapacity: Mass, specificGravity: number, tare: Mass): Mass {
  const check = new InputCheck();
  check.positive("waterCapacity", waterCapacity);
  check.positive("specificGravity", specificGravity);
  check.positive("tare", tare);
  check.finish();
  return data.grossWeight.fraction * waterCapacity * specificGravity + tare;
}

function checkCylinder(cylinder: CylinderToFill): void {
  requireObject("", cylinder, "a cylinder and what it is for");
  const { refrigerant, volume, refillable, markedLimit, inside, scaleHalfWidth } = cylinder;
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", refrigerant);
  check.positive("volume", volume);
  check.require(
    refillable === true,
    "refillable",
    refillable,
    "true: a cylinder made to be filled once is never filled again",
  );
  if (markedLimit !== undefined) check.positive("markedLimit", markedLimit);
  check.oneOf("contents", cylinder.contents, ["new", "recovered"]);
  check.notNegative("inside", inside);
  check.notNegative("scaleHalfWidth", scaleHalfWidth);
  check.finish();
}
