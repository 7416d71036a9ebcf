import data from "../../../data/field/filling-ratios.json" with { type: "json" };
import type { Refrigerant } from "../../state/index.js";
import type { Density } from "../../units/index.js";

/** How much a cylinder may hold, by a table. */
export interface FillingRatio {
  /** Mass for each volume of water capacity, kg/m3; undefined where no value is known for sure. */
  readonly ratio: Density | undefined;
  /** Where it is from, or why there is none. */
  readonly source: string;
  /** `read` or `recalled`. */
  readonly status: string;
}

/** The tabulated filling ratio of a refrigerant; undefined where the table does not hold it. */
export function fillingRatio(refrigerant: Refrigerant): FillingRatio | undefined {
  const found = data.ratios.find((each) => each.refrigerant === refrigerant.designation);
  if (found === undefined) return undefined;
  const { kilogramPerLitre, source, status } = found;
  return { ratio: kilogramPerLitre === null ? undefined : kilogramPerLitre * 1000, source, status };
}

/** What the rule for liquefied gases allows. */
export interface FillingRule {
  /** 0.95 times the density of the liquid at 50 °C, kg/m3. */
  readonly warm: Density;
  /** Density of the liquid at 60 °C, kg/m3: a cylinder fuller than that has no room for vapour there. */
  readonly hot: Density;
  /** The smaller of the two, kg/m3. */
  readonly limit: Density;
  /** Where the rule is from. */
  readonly source: string;
}

/**
 * The rule for low-pressure liquefied gases: at most 0.95 of the density of the liquid at 50 °C, and not full of liquid up to
 * 60 °C. Of a blend the liquid at its bubble point.
 *
 * @returns Undefined for a critical temperature below 65 °C, as of R-744: there only a table by test pressure counts.
 * @source ADR 4.3.3.2.2 ff. (read for tanks; P200 recalled)
 */
export function fillingRule(refrigerant: Refrigerant): FillingRule | undefined {
  const { fractionAtWarm, warm, hot, lowestCriticalTemperature, source } = data.rule;
  if (refrigerant.critical.temperature < lowestCriticalTemperature) return undefined;
  const liquidAt = (temperature: number): Density => refrigerant.bubble({ temperature }).liquid.density;
  const byWarm = fractionAtWarm * liquidAt(warm);
  const byHot = liquidAt(hot);
  return { warm: byWarm, hot: byHot, limit: Math.min(byWarm, byHot), source };
}

/**
 * Most recovered refrigerant for each volume, kg/m3: 0.8 of the density of the liquid at 21 °C, since it may hold oil. Of a gas
 * without liquid there, no limit of its own.
 *
 * @internal
 */
export function recoveredLimit(refrigerant: Refrigerant): Density {
  const { fraction, temperature } = data.recovered;
  const bubble = refrigerant.tryBubble({ temperature });
  return bubble.ok ? fraction * bubble.value.liquid.density : Number.POSITIVE_INFINITY;
}
