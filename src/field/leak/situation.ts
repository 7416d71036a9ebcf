import type { Refrigerant } from "../../state/index.js";
import { InputCheck, type Mass, requireObject, type Temperature, type Volume } from "../../units/index.js";
import { checkRefrigerant } from "../refrigerant-check.js";

/** What leaves a vessel: its vapour, its liquid, or both with a mass fraction of vapour. Where one is gone, the other. */
export type Leaving = "vapour" | "liquid" | { readonly quality: number };

/** A closed system or cylinder at one temperature that loses refrigerant. */
export interface LeakSituation {
  /** The refrigerant with the composition that it was charged with. */
  readonly refrigerant: Refrigerant;
  /** What was in it at first, kg. */
  readonly charge: Mass;
  /** Volume inside, m3. */
  readonly volume: Volume;
  /** Of the whole, K. It is held, as it is in a slow leak. */
  readonly temperature: Temperature;
  /** What leaves. */
  readonly leaving: Leaving;
  /** How much is lost in the end, as a fraction of the charge: above 0, at most 0.98. */
  readonly lostFraction: number;
}

/** Beyond this so little is left that the last of it decides nothing any more. */
export const mostLost = 0.98;

/** Checks a situation; `what` names it for the caller. */
export function checkLeakSituation(
  situation: LeakSituation,
  what: string,
  more: (check: InputCheck) => void = () => {},
): void {
  requireObject("", situation, what);
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", situation.refrigerant);
  check.positive("charge", situation.charge);
  check.positive("volume", situation.volume);
  check.positive("temperature", situation.temperature);
  checkLeaving(check, "leaving", situation.leaving);
  checkLostFraction(check, situation.lostFraction);
  more(check);
  check.finish();
}

/** Requires one of the three ways to leave. */
export function checkLeaving(check: InputCheck, path: string, leaving: unknown): void {
  const quality =
    typeof leaving === "object" && leaving !== null
      ? (leaving as { readonly quality?: unknown }).quality
      : undefined;
  const isMixed = typeof quality === "number" && quality >= 0 && quality <= 1;
  check.require(
    leaving === "vapour" || leaving === "liquid" || isMixed,
    path,
    leaving,
    '"vapour", "liquid" or { quality } from 0 to 1',
  );
}

/** Requires a fraction that can be lost. */
export function checkLostFraction(check: InputCheck, lost: unknown, path: string = "lostFraction"): void {
  const isInside = typeof lost === "number" && lost > 0 && lost <= mostLost;
  check.require(isInside, path, lost, `a number above 0, at most ${mostLost}`);
}
