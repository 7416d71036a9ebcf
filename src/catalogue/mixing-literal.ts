import type { Blend } from "./blend.js";
import type { ClassValues } from "./estimate-pair.js";
import { findPairIn } from "./find-pair.js";
import type { Fluid } from "./fluid.js";
import { type Bibliography, citationsOf, residualOf, sourceKeysOf } from "./literal.js";
import type { BlendData, ClassData, DepartureData, PairData, ReducingData } from "./mixing-data.js";
import type { DepartureFunction, Pair, PairReducing } from "./pair.js";

/** Turns a checked departure file into its literal. */
export function departureLiteral({ name, residual }: DepartureData): DepartureFunction {
  return { name, residual: residualOf(residual) };
}

/** Turns a checked pair file into its literal. */
export function pairLiteral(
  data: PairData,
  departureFunction: DepartureFunction | undefined,
  bibliography: Bibliography | undefined,
): Pair {
  return {
    between: data.between,
    grade: data.grade,
    reducing: reducingOf(data.reducing),
    ...(data.departure &&
      departureFunction && {
        departure: { factor: Number(data.departure.factor), function: departureFunction },
      }),
    deviation: { relative: Number(data.deviation.relative), basis: data.deviation.basis },
    sources: citationsOf(sourceKeysOf(data), bibliography),
    notes: data.notes,
  };
}

/**
 * Turns a checked blend file into its literal.
 *
 * @param fluids - The fluids of its components, in their order.
 * @param pairs - Where to look for its pairs.
 */
export function blendLiteral(
  data: BlendData,
  fluids: readonly Fluid[],
  pairs: readonly Pair[],
  bibliography: Bibliography | undefined,
): Blend {
  return {
    designation: data.designation,
    synonyms: data.synonyms,
    components: fluids.map((fluid, index) => {
      const { massFraction = "", tolerance } = data.components[index] ?? {};
      return {
        fluid,
        massFraction: Number(massFraction),
        ...(tolerance && {
          tolerance: { above: Number(tolerance.above), below: Number(tolerance.below) },
        }),
      };
    }),
    pairs: fluids.flatMap((first, index) =>
      fluids.slice(index + 1).flatMap((second) => {
        const found = findPairIn(pairs, first.designation, second.designation);
        return found === undefined ? [] : [found];
      }),
    ),
    sources: citationsOf(sourceKeysOf(data), bibliography),
    notes: data.notes,
  };
}

/** Turns the checked class values into their literal. */
export function classLiteral({ classes, estimates }: ClassData): ClassValues {
  return {
    classes: classes.map(({ name, fluids }) => ({ name, fluids })),
    estimates: estimates.map(({ between, reducing, deviation }) => ({
      between,
      reducing:
        reducing.form === "kunz-wagner"
          ? { form: "kunz-wagner", betaT: 1, gammaT: Number(reducing.gammaT), betaV: 1, gammaV: 1 }
          : { form: "lemmon-jacobsen", zeta: Number(reducing.zeta), xi: cubicMetres(reducing.xi) },
      deviation: { relative: Number(deviation.relative), basis: deviation.basis },
    })),
  };
}

function reducingOf(data: ReducingData): PairReducing {
  if (data.form === "lemmon-jacobsen") {
    return { form: data.form, zeta: Number(data.zeta.value), xi: cubicMetres(data.xi.value) };
  }
  return {
    form: data.form,
    betaT: Number(data.betaT),
    gammaT: Number(data.gammaT),
    betaV: Number(data.betaV),
    gammaV: Number(data.gammaV),
  };
}

/** dm3 to m3 in the text, so that the number is the nearest one to the digits; a division is not. */
function cubicMetres(digits: string): number {
  const [mantissa, exponent = "0"] = digits.toLowerCase().split("e");
  return Number(`${mantissa}e${Number(exponent) - 3}`);
}
