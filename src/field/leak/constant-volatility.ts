import { InputCheck } from "../../units/index.js";

/**
 * Part of the moles left when vapour has leaked from a standing binary until its liquid has a composition: Rayleigh's law with
 * a constant relative volatility, n/n₀ = (x/x₀)^(1/(α−1)) ((1−x₀)/(1−x))^(α/(α−1)). A law to understand by; `simulateLeak`
 * computes the equilibrium itself.
 *
 * @param volatility - α of the lighter component, above 1.
 * @param from - x₀, its mole fraction in the liquid at first, above 0 and below 1.
 * @param to - x, its mole fraction then: above 0, not above x₀.
 * @returns n/n₀, 0 to 1.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source Lord Rayleigh, Phil. Mag. 4 (1902) 521 (recalled); nearly all moles are liquid
 */
export function fractionLeft(volatility: number, from: number, to: number): number {
  const check = checkBinary(volatility, from);
  const isWithin = to > 0 && to <= from;
  check.require(isWithin, "to", to, `above 0 and not above ${from}: the lighter component leaves first`);
  const above = "above 1: with 1 nothing shifts, and the composition does not tell how much is left";
  if (isWithin) check.require(volatility !== 1, "volatility", volatility, above);
  check.finish();
  return Math.exp(logLeft(volatility, from, to));
}

/**
 * Mole fraction of the lighter component in the liquid when part of the moles is left: the inverse of {@link fractionLeft}.
 *
 * @param left - n/n₀, above 0, at most 1.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source Lord Rayleigh, Phil. Mag. 4 (1902) 521 (recalled)
 *
 * @example
 * ```ts
 * compositionLeft(2, 0.5, 0.7); // → 0.43963
 * ```
 */
export function compositionLeft(volatility: number, from: number, left: number): number {
  const check = checkBinary(volatility, from);
  check.require(left > 0 && left <= 1, "left", left, "a part above 0 and at most 1");
  check.finish();
  if (volatility === 1 || left === 1) return from;
  const wanted = Math.log(left);
  let low = 0;
  let high = from;
  for (let turn = 0; turn < 1100 && high - low > 1e-16 * high; turn++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (logLeft(volatility, from, middle) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function logLeft(volatility: number, from: number, to: number): number {
  const light = Math.log(to / from);
  const heavy = Math.log((1 - from) / (1 - to));
  return (light + volatility * heavy) / (volatility - 1);
}

function checkBinary(volatility: number, from: number): InputCheck {
  const check = new InputCheck();
  check.require(
    volatility >= 1 && volatility < Number.POSITIVE_INFINITY,
    "volatility",
    volatility,
    "a relative volatility of 1 or above",
  );
  check.require(from > 0 && from < 1, "from", from, "a mole fraction above 0 and below 1");
  return check;
}
