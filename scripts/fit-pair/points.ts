import type { Fluid, Provenance } from "../../src/catalogue/index.js";

/** The quantities of a point that are uncertain. */
export const inputs = ["temperature", "pressure", "liquid", "vapour"] as const;

/**
 * One equilibrium as given, in SI units.
 *
 * `bubble` and `dew`: a boundary of the composition of the parent phase. `vle`: both phases, as measured. `azeotrope`: a
 * liquid that boils at the temperature without changing.
 */
export interface EquilibriumPoint {
  /** What it is a point of, such as a blend's designation; a fit takes points by it. */
  readonly name: string;
  readonly kind: "bubble" | "dew" | "vle" | "azeotrope";
  readonly fluids: readonly Fluid[];
  /** What the fractions are of. */
  readonly basis: "mass" | "mole";
  /** Fractions in the order of the fluids. */
  readonly liquid?: readonly number[];
  readonly vapour?: readonly number[];
  /** K. */
  readonly temperature: number;
  /** Pa. */
  readonly pressure?: number;
  /** Standard uncertainties; 0 for what is exact. */
  readonly uncertainty: Readonly<Record<(typeof inputs)[number], number>>;
}

/** What a file of `data/equilibria/` holds. */
export interface EquilibriumSet extends Provenance {
  readonly title: string;
  readonly points: readonly EquilibriumPoint[];
  readonly notes: readonly string[];
}

/** Mole fractions of a phase of a point. */
export function moleFractions(
  { fluids, basis }: EquilibriumPoint,
  fractions: readonly number[],
): Float64Array {
  const amounts = fractions.map((fraction, i) =>
    basis === "mass" ? fraction / fluids[i]!.molarMass : fraction,
  );
  const sum = amounts.reduce((total, amount) => total + amount, 0);
  return Float64Array.from(amounts, (amount) => amount / sum);
}

/**
 * The point with each of its uncertain quantities in turn raised by its standard uncertainty; of a composition every
 * fraction but the last, which makes up the rest.
 */
export function shiftedPoints(point: EquilibriumPoint): readonly EquilibriumPoint[] {
  const { temperature, pressure, uncertainty } = point;
  return inputs
    .filter((input) => uncertainty[input] > 0 && point[input] !== undefined)
    .flatMap((input): readonly EquilibriumPoint[] => {
      const by = uncertainty[input];
      if (input === "temperature") return [{ ...point, temperature: temperature + by }];
      if (input === "pressure") return [{ ...point, pressure: pressure! + by }];
      const fractions = point[input]!;
      const last = fractions.length - 1;
      return fractions.slice(0, last).map((_, shifted) => ({
        ...point,
        [input]: fractions.map((fraction, i) => fraction + (i === shifted ? by : i === last ? -by : 0)),
      }));
    });
}
