import { type MixtureFlammability, mixtureFlammability } from "../../safety/index.js";
import { attempt, InputError, type Outcome, requireObject } from "../../units/index.js";
import type { LeakResult } from "./simulate-leak.js";

/** The flammability of what is in the vessel at one point of a leak. */
export interface LeakFlammability {
  /** Lost since the beginning, as a fraction of the charge. */
  readonly lostFraction: number;
  /** Of the vapour; undefined where there is none. */
  readonly vapour: MixtureFlammability | undefined;
  /** Of the liquid; undefined where there is none. */
  readonly liquid: MixtureFlammability | undefined;
}

/**
 * How the flammability of vapour and liquid moves along a leak: informative, in the spirit of the worst case of
 * fractionation of ISO 817 and ASHRAE 34, but neither their test nor a classification.
 *
 * @param leak - What {@link simulateLeak} computed.
 * @throws As {@link mixtureFlammability}: also for a designated blend with a flammable component whose limit is not known
 *   here, as R-438A with R-601a; `malformed-input` for what is no leak.
 */
export function leakFlammability(leak: LeakResult): readonly LeakFlammability[] {
  requireObject("", leak, "what simulateLeak has computed");
  if (!Array.isArray(leak.states)) {
    throw new InputError([{ path: "states", value: leak.states, expected: "the states of a leak" }]);
  }
  return leak.states.map(({ lostFraction, vapour, liquid }) => ({
    lostFraction,
    vapour: vapour && mixtureFlammability(vapour.composition),
    liquid: liquid && mixtureFlammability(liquid.composition),
  }));
}

/** As {@link leakFlammability}, without throwing. */
export function tryLeakFlammability(leak: LeakResult): Outcome<readonly LeakFlammability[]> {
  return attempt(() => leakFlammability(leak));
}
