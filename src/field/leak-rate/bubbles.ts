import { type Duration, InputCheck, type Length, type Pressure } from "../../units/index.js";

/**
 * Throughput of a leak from the bubbles that it blows: q = p_amb (π/6) d³ n, one bubble in each `interval`.
 *
 * @param diameter - Of a bubble, m, above 0.
 * @param interval - From one bubble to the next, s, above 0.
 * @param airPressure - Of the site, Pa absolute; there is no default.
 * @returns Pa m3/s at the temperature of the bubble.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source volume of a sphere at the pressure of the air
 *
 * @example
 * ```ts
 * bubbleThroughput(millimetre(1), second(10), 101325); // → 5.305e-6 Pa m3/s
 * ```
 */
export function bubbleThroughput(diameter: Length, interval: Duration, airPressure: Pressure): number {
  const check = new InputCheck();
  check.positive("interval", interval);
  checkBubble(check, diameter, airPressure);
  return energyOf(diameter, airPressure) / interval;
}

/**
 * Time from one bubble to the next of a leak: how long to look at a joint.
 *
 * @param diameter - Of a bubble, m, above 0.
 * @param throughput - Pa m3/s, above 0.
 * @param airPressure - Of the site, Pa absolute; there is no default.
 * @returns s.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source volume of a sphere at the pressure of the air
 */
export function bubbleInterval(diameter: Length, throughput: number, airPressure: Pressure): Duration {
  const check = new InputCheck();
  check.positive("throughput", throughput);
  checkBubble(check, diameter, airPressure);
  return energyOf(diameter, airPressure) / throughput;
}

/** Pressure times volume of one bubble, Pa m3. */
function energyOf(diameter: Length, airPressure: Pressure): number {
  return airPressure * (Math.PI / 6) * diameter ** 3;
}

function checkBubble(check: InputCheck, diameter: Length, airPressure: Pressure): void {
  check.positive("diameter", diameter);
  check.positive("airPressure", airPressure);
  check.finish();
}
