import data from "../../../data/field/charging.json" with { type: "json" };
import { InputCheck, type Warning } from "../../safety/index.js";
import { glide, type Refrigerant } from "../../state/index.js";
import { attempt, type Outcome, requireObject, type Temperature } from "../../units/index.js";
import type { Verdict } from "../measurement/decision.js";
import { shown } from "../measurement/shown.js";

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
  /** `pass` where nothing shifts, `inconclusive` where it shifts little, `fail` where it does. */
  readonly verdict: Verdict;
  /** Glide in the cylinder, K. */
  readonly glide: number;
  /** What is odd. */
  readonly warnings: readonly Warning<"throttle-liquid" | "small-glide">[];
  /** What decided, in words. */
  readonly because: string;
}

/**
 * Does drawing from the cylinder keep the composition of the refrigerant? A pure one cannot shift. A blend is drawn as liquid,
 * throttled into the suction side while the unit runs; drawn as vapour, what comes out is richer in its lighter components.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source common practice of suppliers' leaflets on blends; the glide from the mixture model
 */
export function checkChargePhase(charge: ChargePhase): ChargePhaseResult {
  requireObject("", charge, "a refrigerant and how it is drawn");
  const { refrigerant, temperature, drawnAs } = charge;
  const check = new InputCheck();
  const isOne = typeof refrigerant === "object" && refrigerant !== null;
  check.require(isOne, "refrigerant", refrigerant, "a refrigerant");
  check.positive("temperature", temperature);
  check.oneOf("drawnAs", drawnAs, ["liquid", "vapour"]);
  check.finish();
  const { designation, blend } = refrigerant;
  const { pressure } = refrigerant.dew({ temperature });
  const kelvin = blend === undefined ? 0 : glide(refrigerant, { pressure }).glide;
  const throttle: Warning<"throttle-liquid"> = {
    code: "throttle-liquid",
    message:
      "let liquid into the suction side only throttled and in small portions: the compressor cannot pump liquid",
  };
  if (blend === undefined) {
    return {
      verdict: "pass",
      glide: kelvin,
      warnings: drawnAs === "liquid" ? [throttle] : [],
      because: `${designation} is one substance: it cannot shift, liquid is quicker and vapour gentler`,
    };
  }
  if (drawnAs === "liquid") {
    return {
      verdict: "pass",
      glide: kelvin,
      warnings: [throttle],
      because: `${designation} drawn as liquid keeps its composition`,
    };
  }
  const isSmall = kelvin < data.smallGlide.value;
  return {
    verdict: isSmall ? "inconclusive" : "fail",
    glide: kelvin,
    warnings: isSmall
      ? [
          {
            code: "small-glide",
            message: `with a glide of ${shown(kelvin)} K the shift is small; the manual decides`,
          },
        ]
      : [],
    because: `${designation}, glide ${shown(kelvin)} K, drawn as vapour comes out richer in its lighter components`,
  };
}

/** As {@link checkChargePhase}, without throwing. */
export function tryCheckChargePhase(charge: ChargePhase): Outcome<ChargePhaseResult> {
  return attempt(() => checkChargePhase(charge));
}
