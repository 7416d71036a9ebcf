import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  InputCheck,
  type Mass,
  type Outcome,
  type Pressure,
  requireObject,
  type Temperature,
  type Volume,
} from "../../units/index.js";
import { type Decision, decide } from "../measurement/decision.js";
import { halfWidthUncertainty } from "../measurement/instrument.js";
import { shown } from "../measurement/shown.js";
import { combineUncertainties, type Uncertainty } from "../measurement/uncertainty.js";
import { residualVapour } from "./residual-vapour.js";

/** Refrigerant taken out of a system. */
export interface Recovered {
  /** Refrigerant. */
  readonly refrigerant: Refrigerant;
  /** What the scale showed with the cylinder on it, before, kg. */
  readonly before: Mass;
  /** And after, kg. */
  readonly after: Mass;
  /** Half-width of the error of the scale, kg. */
  readonly scaleHalfWidth: Mass;
  /** What should have been in the system, kg. */
  readonly expectedCharge: Mass;
  /** How far the amount may be from it, kg. */
  readonly tolerance: Mass;
  /** Volume of the circuit, m3. */
  readonly internalVolume: Volume;
  /** Absolute pressure at the end, Pa. */
  readonly endPressure: Pressure;
  /** Temperature of the circuit then, K. */
  readonly endTemperature: Temperature;
}

/** What was recovered, what is left, and what is missing. Its uncertainty is that of the missing mass, kg. */
export interface RecoveredResult extends Uncertainty {
  /** Mass in the cylinder, kg. */
  readonly recovered: Mass;
  /** Vapour left in the circuit, kg. */
  readonly left: Mass;
  /** Expected charge less both, kg: lost before, or more inside than thought where negative. */
  readonly missing: Mass;
  /** The missing mass against the tolerance, in g. */
  readonly decision: Decision;
  /** What decided, in words. */
  readonly because: string;
}

/**
 * Accounts for the charge: what was recovered, what is left as vapour, and what is missing.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a cylinder that became lighter.
 * @throws `no-such-state` where there is liquid left at the end.
 * @source balance of masses; JCGM 100:2008 (GUM) for the uncertainty
 */
export function accountForRecovery(recovery: Recovered): RecoveredResult {
  requireObject("", recovery, "a recovery");
  const { refrigerant, before, after, scaleHalfWidth, expectedCharge, tolerance } = recovery;
  const check = new InputCheck();
  check.positive("scaleHalfWidth", scaleHalfWidth);
  check.positive("expectedCharge", expectedCharge);
  check.positive("tolerance", tolerance);
  if (check.positive("before", before) && check.positive("after", after)) {
    check.require(after >= before, "after", after, `at least what the scale showed before, ${before} kg`);
  }
  check.finish();
  const recovered = after - before;
  const left = residualVapour({
    refrigerant,
    pressure: recovery.endPressure,
    temperature: recovery.endTemperature,
    volume: recovery.internalVolume,
  });
  const missing = expectedCharge - recovered - left;
  const uncertainty = combineUncertainties([
    {
      input: "scale",
      standardUncertainty: Math.SQRT2 * halfWidthUncertainty(scaleHalfWidth),
      unit: "kg",
      sensitivity: 1,
      because: "read before and after, its error taken as independent at both",
    },
  ]);
  const decision = decide(
    missing * 1000,
    uncertainty.expandedUncertainty * 1000,
    { minimum: -tolerance * 1000, maximum: tolerance * 1000 },
    { quantity: "missing", unit: "g" },
  );
  return {
    ...uncertainty,
    recovered,
    left,
    missing,
    decision,
    because:
      `${shown(recovered)} kg recovered and ${shown(left * 1000)} g left as vapour of ${shown(expectedCharge)} kg expected; ` +
      decision.because,
  };
}

/** As {@link accountForRecovery}, without throwing. */
export function tryAccountForRecovery(recovery: Recovered): Outcome<RecoveredResult> {
  return attempt(() => accountForRecovery(recovery));
}
