import type { Warning } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import { attempt, InputCheck, type Outcome, requireObject, type Temperature } from "../../units/index.js";
import { type CompositionCheck, checkComposition } from "../leak/tolerance.js";
import type { Verdict } from "../measurement/decision.js";
import { checkRefrigerant } from "../refrigerant-check.js";

/** How refrigerant is drawn from its cylinder. */
export interface ChargePhase {
  /** Refrigerant. */
  readonly refrigerant: Refrigerant;
  /** Temperature of the cylinder, K. */
  readonly temperature: Temperature;
  /** How it is drawn. */
  readonly drawnAs: "liquid" | "vapour";
}

/** Whether that keeps its composition. */
export interface ChargePhaseResult {
  /** `pass` where what comes out is within the tolerance of the designation. */
  readonly verdict: Verdict;
  /** Mass fractions of the first that comes out of a full cylinder, held against the designation. */
  readonly first: CompositionCheck;
  /** What is odd. */
  readonly warnings: readonly Warning<"throttle-liquid" | "rest-shifts">[];
  /** What decided, in words. */
  readonly because: string;
}

/**
 * Does drawing from a full cylinder keep the composition of the refrigerant? A pure one cannot shift. A blend is drawn as
 * liquid, throttled into the suction side while the unit runs; as vapour it comes out richer in its lighter components, and
 * that first vapour is held against the tolerance of the designation. How it goes on as the cylinder empties, and what is left
 * in it, is for `drawFromCylinder`.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source vapour in equilibrium from the mixture model; tolerances of ISO 817 / ASHRAE 34; that blends are drawn as liquid:
 *   suppliers' leaflets, common practice
 */
export function checkChargePhase(charge: ChargePhase): ChargePhaseResult {
  requireObject("", charge, "a refrigerant and how it is drawn");
  const { refrigerant, temperature, drawnAs } = charge;
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", refrigerant);
  check.positive("temperature", temperature);
  check.oneOf("drawnAs", drawnAs, ["liquid", "vapour"]);
  check.finish();
  const { designation, blend, composition } = refrigerant;
  const out = drawnAs === "liquid" ? composition : refrigerant.bubble({ temperature }).vapour.composition;
  const first = checkComposition(refrigerant, out);
  const warnings: Warning<"throttle-liquid" | "rest-shifts">[] = [];
  if (drawnAs === "liquid") {
    warnings.push({
      code: "throttle-liquid",
      message:
        "let liquid into the suction side only throttled and in small portions: the compressor cannot pump liquid",
    });
  }
  if (blend !== undefined) {
    warnings.push({
      code: "rest-shifts",
      message: "what is left in the cylinder shifts as it empties: do not charge from the last of it",
    });
  }
  // A full cylinder gives liquid of nominal composition, whether or not its tolerance is known.
  const verdict = blend === undefined || drawnAs === "liquid" ? "pass" : first.verdict;
  return {
    verdict,
    first,
    warnings,
    because:
      blend === undefined
        ? `${designation} is one substance: it cannot shift, liquid is quicker and vapour gentler`
        : drawnAs === "liquid"
          ? `${designation} drawn as liquid comes out as it is designated`
          : `${designation} drawn as vapour comes out richer in its lighter components: ${first.because}`,
  };
}

/** As {@link checkChargePhase}, without throwing. */
export function tryCheckChargePhase(charge: ChargePhase): Outcome<ChargePhaseResult> {
  return attempt(() => checkChargePhase(charge));
}
