import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  InputCheck,
  type Mass,
  type Outcome,
  requireObject,
  type Temperature,
  type Volume,
} from "../../units/index.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { simulateLeak } from "./simulate-leak.js";
import { checkLostFraction } from "./situation.js";
import { type CompositionCheck, checkComposition } from "./tolerance.js";

/** A cylinder that refrigerant is drawn from. */
export interface CylinderDraw {
  /** What it holds, of nominal composition at first. */
  readonly refrigerant: Refrigerant;
  /** How much it holds at first, kg. */
  readonly content: Mass;
  /** Its volume (water capacity), m3. */
  readonly volume: Volume;
  /** Its temperature, K. */
  readonly temperature: Temperature;
  /** What is drawn: depends on the valve, the dip tube, and which way up the cylinder stands. */
  readonly drawn: "vapour" | "liquid";
  /** How much is drawn, as a fraction of the content at first. */
  readonly drawnFraction: number;
}

/** What went where. */
export interface CylinderDrawResult {
  /** Mass fractions by designation of the first that came out. */
  readonly first: Readonly<Record<string, number>>;
  /** Mass fractions by designation of all that was drawn. */
  readonly drawn: Readonly<Record<string, number>>;
  /** Mass fractions by designation of what is left. */
  readonly remaining: Readonly<Record<string, number>>;
  /** All that was drawn held against the designation. */
  readonly drawnCheck: CompositionCheck;
  /** What is left held against the designation. */
  readonly remainingCheck: CompositionCheck;
}

/**
 * What leaves a cylinder as vapour or as liquid, and what stays behind.
 *
 * A zeotropic blend is to be charged as liquid: its vapour is richer in what boils first.
 *
 * @throws As {@link simulateLeak}.
 * @source Mass balance as in {@link simulateLeak}; that zeotropic blends are drawn as liquid is common practice, no source.
 */
export function drawFromCylinder(draw: CylinderDraw): CylinderDrawResult {
  requireObject("", draw, "a cylinder and what is drawn");
  const { refrigerant, content, volume, temperature, drawn, drawnFraction } = draw;
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", refrigerant);
  check.positive("content", content);
  check.positive("volume", volume);
  check.positive("temperature", temperature);
  check.oneOf("drawn", drawn, ["vapour", "liquid"]);
  checkLostFraction(check, drawnFraction, "drawnFraction");
  check.finish();
  const { states, escaped } = simulateLeak({
    refrigerant,
    charge: content,
    volume,
    temperature,
    leaving: drawn,
    lostFraction: drawnFraction,
  });
  const full = states[0]!;
  const remaining = states[states.length - 1]!.composition;
  return {
    first: (full[drawn] ?? full.vapour ?? full.liquid)!.composition,
    drawn: escaped,
    remaining,
    drawnCheck: checkComposition(refrigerant, escaped),
    remainingCheck: checkComposition(refrigerant, remaining),
  };
}

/** As {@link drawFromCylinder}, without throwing. */
export function tryDrawFromCylinder(draw: CylinderDraw): Outcome<CylinderDrawResult> {
  return attempt(() => drawFromCylinder(draw));
}
