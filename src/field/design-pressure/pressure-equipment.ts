import data from "../../../data/field/pressure-equipment.json" with { type: "json" };
import { isFlammable, SAFETY_CLASSES, type SafetyClass, toxicityClass } from "../../safety/index.js";
import {
  attempt,
  type GaugePressure,
  InputCheck,
  type Length,
  type Outcome,
  OutOfRangeError,
  requireObject,
  type Volume,
} from "../../units/index.js";
import { shown } from "../measurement/shown.js";

/** Group of a fluid: 1 for flammable gases and others that are dangerous, 2 for the rest. */
export type FluidGroup = 1 | 2;

/** A vessel or a pipe for gas. */
export type PressureEquipment = {
  /** Group of the fluid; {@link fluidGroupOf} finds it from a safety class. */
  readonly fluidGroup: FluidGroup;
  /** PS, Pa gauge. */
  readonly maximumAllowablePressure: GaugePressure;
} & ({ readonly volume: Volume } | { readonly nominalDiameter: Length });

/** Category of it, for orientation. */
export interface EquipmentCategory {
  /** Sound engineering practice, a category, or beyond good practice for a pipe, whose category is not computed. */
  readonly category: "good-practice" | "I" | "II" | "III" | "IV" | "I-or-above";
  /** Always true: this replaces no classification by the maker. */
  readonly orientationOnly: true;
  /** Where the limits are from. */
  readonly source: string;
  /** `recalled`: from memory, so look them up. */
  readonly status: "read" | "recalled";
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers that decided. */
  readonly because: string;
}

/**
 * Fluid group that a safety class stands for: A1 is group 2, and whatever burns is group 1.
 *
 * The classification under Regulation (EC) No 1272/2008 decides, and comes close to it: a refrigerant of class 2L that does
 * not burn in its test is group 2.
 *
 * @throws {@link InputError} `malformed-input` for what is no safety class, and for B1, which does not tell the group.
 * @source Directive 2014/68/EU, article 13 (recalled)
 *
 * @example
 * ```ts
 * fluidGroupOf("A2L"); // → 1
 * ```
 */
export function fluidGroupOf(safetyClass: SafetyClass): FluidGroup {
  const check = new InputCheck();
  if (check.oneOf("safetyClass", safetyClass, SAFETY_CLASSES)) {
    check.require(
      isFlammable(safetyClass) || toxicityClass(safetyClass) === "A",
      "safetyClass",
      safetyClass,
      "a class that tells the fluid group; of B1 the classification of the fluid has to be looked up",
    );
  }
  check.finish();
  return isFlammable(safetyClass) ? 1 : 2;
}

/** As {@link fluidGroupOf}, without throwing. */
export function tryFluidGroupOf(safetyClass: SafetyClass): Outcome<FluidGroup> {
  return attempt(() => fluidGroupOf(safetyClass));
}

/**
 * Category of a vessel or pipe under the European directive on pressure equipment: orientation only, from memory.
 *
 * @param equipment - Fluid group, PS (Pa gauge), and the volume (m3) of a vessel or the nominal diameter (m) of a pipe.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws {@link OutOfRangeError} `out-of-range` for PS up to 0.5 bar, which the directive leaves out, and above 200 bar,
 * where other lines of the diagrams count.
 * @source Directive 2014/68/EU, article 1 and annex II, diagrams 1, 2, 6 and 7 (recalled)
 *
 * @example
 * ```ts
 * pressureEquipmentCategory({
 *   fluidGroup: fluidGroupOf("A2L"),
 *   maximumAllowablePressure: megapascalGauge(4.15),
 *   volume: litre(1.5),
 * }).category; // → "II"
 * ```
 */
export function pressureEquipmentCategory(equipment: PressureEquipment): EquipmentCategory {
  examine(equipment);
  const { fluidGroup, maximumAllowablePressure: PS } = equipment;
  const { category, size } =
    "nominalDiameter" in equipment
      ? ofPipe(fluidGroup, PS, equipment.nominalDiameter)
      : ofVessel(fluidGroup, PS, equipment.volume);
  return {
    category,
    orientationOnly: true,
    source: data.source,
    // JSON knows no literal types.
    status: data.status as "recalled",
    assumptions: [
      "It holds gas: the vapour pressure at the highest temperature is more than 0.5 bar above the atmosphere.",
      "It is no safety accessory, no fired vessel, and the gas is stable.",
    ],
    because: `from memory, for orientation: fluid group ${fluidGroup}, PS ${shown(PS / 1e5)} bar, ${size}: ${category}`,
  };
}

/** As {@link pressureEquipmentCategory}, without throwing. */
export function tryPressureEquipmentCategory(equipment: PressureEquipment): Outcome<EquipmentCategory> {
  return attempt(() => pressureEquipmentCategory(equipment));
}

type Found = { readonly category: EquipmentCategory["category"]; readonly size: string };

function ofPipe(fluidGroup: FluidGroup, PS: GaugePressure, nominalDiameter: Length): Found {
  const DN = nominalDiameter * 1000;
  const { group1, group2, group2Product } = data.piping;
  const isSmall = fluidGroup === 1 ? DN <= group1 : DN <= group2 || PS * DN <= group2Product;
  return { category: isSmall ? "good-practice" : "I-or-above", size: `DN ${shown(DN)}` };
}

function ofVessel(fluidGroup: FluidGroup, PS: GaugePressure, volume: Volume): Found {
  const limits = fluidGroup === 1 ? data.vessels.group1 : data.vessels.group2;
  const size = `${shown(volume * 1000)} L, ${shown((PS * volume) / 100)} bar L`;
  if (volume <= data.smallestVolume) return { category: "good-practice", size };
  const step = limits.findIndex((limit) => PS * volume <= limit);
  const names = ["good-practice", "I", "II", "III"] as const;
  return { category: names[step] ?? "IV", size };
}

function examine(equipment: PressureEquipment): void {
  requireObject("", equipment, "a vessel with its volume, or a pipe with its nominal diameter");
  const { fluidGroup, maximumAllowablePressure: PS } = equipment;
  const check = new InputCheck();
  check.require(fluidGroup === 1 || fluidGroup === 2, "fluidGroup", fluidGroup, "1 or 2");
  check.positive("maximumAllowablePressure", PS);
  if ("volume" in equipment) check.positive("volume", equipment.volume);
  else check.positive("nominalDiameter", equipment.nominalDiameter);
  check.require(
    !("volume" in equipment && "nominalDiameter" in equipment),
    "nominalDiameter",
    (equipment as { readonly nominalDiameter?: Length }).nominalDiameter,
    "nothing beside a volume: it is a vessel or a pipe",
  );
  check.finish();
  const { above, highest } = data.pressures;
  if (!(PS > above && PS <= highest)) {
    throw new OutOfRangeError({
      quantity: "maximumAllowablePressure",
      value: PS,
      minimum: above,
      maximum: highest,
      unit: "Pa",
      subject: "the categories that are known here",
    });
  }
}
