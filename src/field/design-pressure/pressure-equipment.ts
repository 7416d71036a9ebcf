import data from "../../../data/field/pressure-equipment.json" with { type: "json" };
import { InputCheck } from "../../safety/index.js";
import {
  attempt,
  type GaugePressure,
  type Length,
  type Outcome,
  requireObject,
  type Volume,
} from "../../units/index.js";

/** A vessel or a pipe for gas. */
export type PressureEquipment = {
  /** Group of the fluid: 1 for flammable gases and others that are dangerous, 2 for the rest. */
  readonly fluidGroup: 1 | 2;
  /** PS, Pa gauge. */
  readonly maximumAllowablePressure: GaugePressure;
} & ({ readonly volume: Volume } | { readonly nominalDiameter: Length });

/** Category of it, for orientation. */
export interface EquipmentCategory {
  /** Sound engineering practice, a category, or beyond good practice for a pipe, whose category is not computed. */
  readonly category: "good-practice" | "I" | "II" | "III" | "IV" | "I-or-above";
  /** Where the limits are from; recalled, so look them up. */
  readonly source: string;
}

/**
 * Category of a vessel or pipe under the European directive on pressure equipment: orientation only, from memory.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source Directive 2014/68/EU, annex II, diagrams 1, 2, 6 and 7 (recalled)
 */
export function pressureEquipmentCategory(equipment: PressureEquipment): EquipmentCategory {
  requireObject("", equipment, "a vessel with its volume, or a pipe with its nominal diameter");
  const { fluidGroup, maximumAllowablePressure: PS } = equipment;
  const check = new InputCheck();
  check.require(fluidGroup === 1 || fluidGroup === 2, "fluidGroup", fluidGroup, "1 or 2");
  check.positive("maximumAllowablePressure", PS);
  if ("volume" in equipment) check.positive("volume", equipment.volume);
  else check.positive("nominalDiameter", equipment.nominalDiameter);
  check.finish();
  const { source } = data;
  if ("nominalDiameter" in equipment) {
    const DN = equipment.nominalDiameter * 1000;
    const { group1, group2, group2Product } = data.piping;
    const isSmall = fluidGroup === 1 ? DN <= group1 : DN <= group2 || PS * DN <= group2Product;
    return { category: isSmall ? "good-practice" : "I-or-above", source };
  }
  const limits = fluidGroup === 1 ? data.vessels.group1 : data.vessels.group2;
  if (equipment.volume <= data.smallestVolume && PS <= 20e6) return { category: "good-practice", source };
  const step = limits.findIndex((limit) => PS * equipment.volume <= limit);
  const names = ["good-practice", "I", "II", "III"] as const;
  return { category: names[step] ?? "IV", source };
}

/** As {@link pressureEquipmentCategory}, without throwing. */
export function tryPressureEquipmentCategory(equipment: PressureEquipment): Outcome<EquipmentCategory> {
  return attempt(() => pressureEquipmentCategory(equipment));
}
