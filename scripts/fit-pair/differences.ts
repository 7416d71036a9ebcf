import {
  boundaryAtPressure,
  boundaryAtTemperature,
  type MixtureModel,
} from "../../src/equilibrium/mixture/index.js";
import { type EquilibriumPoint, moleFractions } from "./points.js";

/** A quantity of a point in which model and data are compared. */
export interface Difference {
  readonly what: "temperature" | "pressure" | "vapour";
  /** Designation, of a vapour's fraction. */
  readonly component?: string;
  /** Computed less given: K, of the logarithm of pressure, or of a mole fraction. */
  readonly value: number;
}

/** What a bubble or dew point is compared in: where its pressure is exact in its temperature, else in its pressure. */
export function comparedIn({ uncertainty }: EquilibriumPoint): "temperature" | "pressure" {
  return uncertainty.pressure === 0 ? "temperature" : "pressure";
}

/**
 * What the model makes of a point less what is given; undefined where it has no such equilibrium.
 *
 * A point with both phases is compared in the logarithm of its pressure and in all mole fractions of the vapour but the last,
 * at its temperature and liquid; an azeotrope in what its vapour has beyond the liquid.
 *
 * @param compared - What a bubble or dew point is compared in.
 */
export function differencesOf(
  model: MixtureModel,
  point: EquilibriumPoint,
  compared: "temperature" | "pressure" = comparedIn(point),
): readonly Difference[] | undefined {
  const { kind, liquid, vapour, temperature, pressure, fluids } = point;
  const isBoundary = kind === "bubble" || kind === "dew";
  const parent = moleFractions(point, kind === "dew" ? vapour! : liquid!);
  const incipient = kind === "dew" ? "liquid" : "vapour";
  if (isBoundary && compared === "temperature") {
    const found = boundaryAtPressure(model, incipient, parent, pressure!);
    return found && [{ what: "temperature", value: found.temperature - temperature }];
  }
  const found = boundaryAtTemperature(model, incipient, parent, temperature);
  if (found === undefined) return undefined;
  const inPressure: readonly Difference[] =
    pressure === undefined ? [] : [{ what: "pressure", value: Math.log(found.pressure / pressure) }];
  if (isBoundary) return inPressure;
  const sum = found.concentrations.reduce((total, concentration) => total + concentration, 0);
  const given = kind === "azeotrope" ? parent : moleFractions(point, vapour!);
  const inVapour = fluids.slice(0, -1).map(
    ({ designation }, i): Difference => ({
      what: "vapour",
      component: designation,
      value: found.concentrations[i]! / sum - given[i]!,
    }),
  );
  return [...inPressure, ...inVapour];
}
