import type { SafetyClass } from "../../../safety/index.js";
import type { Refrigerant } from "../../../state/index.js";
import type { LocalAtmosphere } from "../../../units/index.js";
import type { Job } from "../form/job.js";

/** What every step of a job knows. */
export interface JobContext {
  /** The job. */
  readonly job: Job;
  /** Refrigerant of the unit. */
  readonly refrigerant: Refrigerant;
  /** Nitrogen, for the pressure test. */
  readonly nitrogen: Refrigerant;
  /** Its safety class, if known. */
  readonly safetyClass: SafetyClass | undefined;
  /** Air pressure of the site. */
  readonly atmosphere: LocalAtmosphere;
  /** Charge beyond the nameplate, kg, and what it rests on; undefined where the job says nothing about it. */
  readonly extraCharge: { readonly kilograms: number; readonly label: string } | undefined;
}
