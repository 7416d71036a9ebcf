import { type Area, type Density, InputCheck, type Length, type Mass } from "../../units/index.js";
import { type ChargeBranch, IEC_EDITIONS, type IecEdition, iecConstants } from "./constants.js";

/** What the two formulas of the clause need. */
export interface ReleaseSituation {
  /** Edition of IEC 60335-2-40. */
  readonly edition: IecEdition;
  /** Lower flammability limit, kg/m3, above 0. */
  readonly lowerFlammabilityLimit: Density;
  /** Release height h0, m, 0.6 or more. */
  readonly releaseHeight: Length;
}

/**
 * Largest charge for a floor area, from the formulas alone (the bands are not applied):
 * root 2.5 LFL^(5/4) h0 √A; from edition 5.1 on the smaller of that and the linear 0.75 LFL h0 A.
 *
 * @param situation - Edition, lower flammability limit (kg/m3) and release height (m).
 * @param floorArea - m2, above 0.
 * @returns Charge in kg and the formula that gave it.
 * @throws {@link InputError} `malformed-input`.
 * @source IEC 60335-2-40, Annex GG. The root rule is empirical: its units do not cancel, SI numbers go in.
 */
export function unventilatedMaximumCharge(
  situation: ReleaseSituation,
  floorArea: Area,
): { readonly charge: Mass; readonly branch: ChargeBranch } {
  const check = new InputCheck();
  checkSituation(check, situation);
  check.positive("floorArea", floorArea);
  check.finish();
  const root = rootFactor(situation) * Math.sqrt(floorArea);
  const linear = linearFactor(situation) * floorArea;
  return isLinearKnown(situation.edition) && linear < root
    ? { charge: linear, branch: "linear" }
    : { charge: root, branch: "root" };
}

/**
 * Smallest floor area for a charge, from the formulas alone (the bands are not applied); the inverse of
 * {@link unventilatedMaximumCharge}.
 *
 * @param situation - Edition, lower flammability limit (kg/m3) and release height (m).
 * @param charge - kg, above 0.
 * @returns Area in m2 and the formula that gave it.
 * @throws {@link InputError} `malformed-input`.
 * @source IEC 60335-2-40, Annex GG
 */
export function unventilatedMinimumArea(
  situation: ReleaseSituation,
  charge: Mass,
): { readonly area: Area; readonly branch: ChargeBranch } {
  const check = new InputCheck();
  checkSituation(check, situation);
  check.positive("charge", charge);
  check.finish();
  const root = (charge / rootFactor(situation)) ** 2;
  const linear = charge / linearFactor(situation);
  return isLinearKnown(situation.edition) && linear > root
    ? { area: linear, branch: "linear" }
    : { area: root, branch: "root" };
}

function checkSituation(check: InputCheck, situation: ReleaseSituation): void {
  const lowest = iecConstants().releaseHeight.lowest;
  const { edition, lowerFlammabilityLimit, releaseHeight: height } = situation;
  check.oneOf("edition", edition, IEC_EDITIONS);
  check.positive("lowerFlammabilityLimit", lowerFlammabilityLimit);
  check.require(
    height >= lowest && height < Number.POSITIVE_INFINITY,
    "releaseHeight",
    height,
    `a height of ${lowest} m or more`,
  );
}

function isLinearKnown(edition: IecEdition): boolean {
  return iecConstants().editions[edition].branches.includes("linear");
}

function rootFactor({ lowerFlammabilityLimit, releaseHeight: height }: ReleaseSituation): number {
  return 2.5 * lowerFlammabilityLimit ** 1.25 * height;
}

function linearFactor({ lowerFlammabilityLimit, releaseHeight: height }: ReleaseSituation): number {
  return iecConstants().linearSafetyFactor.value * lowerFlammabilityLimit * height;
}
