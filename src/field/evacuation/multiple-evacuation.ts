import { attempt, InputCheck, type Outcome, type Pressure, requireObject } from "../../units/index.js";
import { shown, shownKilopascal } from "../measurement/shown.js";

/** A system evacuated several times, its vacuum broken with dry nitrogen in between. */
export interface MultipleEvacuation {
  /** Pressure at the end of each pull, in order, Pa absolute; three for a triple evacuation. */
  readonly pulls: readonly Pressure[];
  /** Pressure that each break fills up to, in order, Pa absolute: one fewer than the pulls. */
  readonly breaks: readonly Pressure[];
}

/** What is left of the air that was in a system. */
export interface MultipleEvacuationResult {
  /** Pressure of the original air after the last pull, Pa absolute. */
  readonly residualAir: Pressure;
  /** The same after each pull, in order, Pa absolute. */
  readonly residualAirAfterPulls: readonly Pressure[];
  /** Part of the air left by the first pull that is still there, 0 to 1. */
  readonly dilution: number;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers behind it. */
  readonly because: string;
}

/**
 * Air left after several evacuations with nitrogen between them: p_air = p₁ Π (pᵢ/p_break), all pressures absolute.
 *
 * It speaks of air alone. Liquid water, and what is dissolved in oil, leaves only by evaporating, however often the vacuum
 * is broken: see {@link evaluateVacuum}.
 *
 * @param evacuation - Pressures in Pa absolute.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a break that is not above the pulls before
 * and after it.
 * @source each break mixes, each pull takes the same part of every gas: ideal gas
 *
 * @example
 * ```ts
 * multipleEvacuation({ pulls: [199.98, 199.98, 66.66], breaks: [101325, 101325] }).residualAir; // → 2.597e-4 Pa
 * ```
 */
export function multipleEvacuation(evacuation: MultipleEvacuation): MultipleEvacuationResult {
  requireObject("", evacuation, "the pressures of the pulls and of the breaks");
  examine(evacuation);
  const { pulls, breaks } = evacuation;
  const residualAirAfterPulls: Pressure[] = [];
  let air = pulls[0]!;
  for (const [index, pull] of pulls.entries()) {
    if (index > 0) air *= pull / breaks[index - 1]!;
    residualAirAfterPulls.push(air);
  }
  return {
    residualAir: air,
    residualAirAfterPulls,
    dilution: air / pulls[0]!,
    assumptions: [
      "The breaks are dry nitrogen alone, and it mixes with what is left before the next pull.",
      "All pressures are at one temperature, and nothing leaks in.",
      "This says nothing about liquid water, ice, or what is dissolved in oil: they leave only by evaporating.",
    ],
    because:
      `pulls to ${pulls.map(shown).join(", ")} Pa` +
      `${breaks.length === 0 ? "" : ` with nitrogen up to ${breaks.map(shownKilopascal).join(", ")} absolute between them`}` +
      `: ${shown(air)} Pa of the original air are left`,
  };
}

/** As {@link multipleEvacuation}, without throwing. */
export function tryMultipleEvacuation(evacuation: MultipleEvacuation): Outcome<MultipleEvacuationResult> {
  return attempt(() => multipleEvacuation(evacuation));
}

function examine({ pulls, breaks }: MultipleEvacuation): void {
  const check = new InputCheck();
  const havePulls = Array.isArray(pulls) && pulls.length > 0;
  check.require(havePulls, "pulls", pulls, "a list of one pressure or more");
  check.require(Array.isArray(breaks), "breaks", breaks, "a list of pressures, one fewer than the pulls");
  check.finish();
  check.require(
    breaks.length === pulls.length - 1,
    "breaks",
    breaks.length,
    `${pulls.length - 1}, one fewer than the pulls`,
  );
  for (const [index, pull] of pulls.entries()) check.positive(`pulls[${index}]`, pull);
  for (const [index, each] of breaks.entries()) {
    if (!check.positive(`breaks[${index}]`, each)) continue;
    const around = [pulls[index], pulls[index + 1]];
    check.require(
      !around.some((pull) => pull !== undefined && each <= pull),
      `breaks[${index}]`,
      each,
      `above the pulls before and after it, ${around.join(" and ")} Pa: breaks are absolute pressures too`,
    );
  }
  check.finish();
}
