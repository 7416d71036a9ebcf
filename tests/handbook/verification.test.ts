import { afterAll, describe, expect, test } from "vitest";
import { modelFor } from "../../src/equilibrium/index.js";
import { differentiate, residualPrecisely } from "../support/decimal-terms.js";
import { criticalChecks, literalOf } from "./critical-checks.js";
import { isStillThere, readExceptions } from "./exceptions.js";
import { digitsOff, isPrinted, lastDigit } from "./printed.js";
import { type Check, evaluatedChecks, publishedChecks } from "./verification.js";

const worst = new Map<string, { off: number; values: number }>();

/** True if a check is met to half a unit of its last digit; how near it came is kept for the end of the run. */
function isMet(group: string, { computed, printed, printedTo }: Check): boolean {
  const digits = Math.abs(digitsOff(computed, printed, printedTo));
  const seen = worst.get(group) ?? { off: 0, values: 0 };
  worst.set(group, { off: Math.max(seen.off, digits), values: seen.values + 1 });
  return isPrinted(computed, printed, printedTo);
}

function describeCheck({ id, printed, printedTo, unit, computed }: Check): string {
  const range = printedTo === undefined ? printed : `${printed} to ${printedTo}`;
  return `${id}: got ${computed} ${unit}, printed ${range}`;
}

function byEquation<One extends Check>(checks: readonly One[]): (readonly [name: string, checks: One[]])[] {
  const names = [...new Set(checks.map(({ fluid, equation }) => `${fluid} ${equation}`))];
  return names.map((name) => [name, checks.filter((check) => `${check.fluid} ${check.equation}` === name)]);
}

/*
 * The same equations, evaluated independently in 25 to 40 digits and printed with four to ten.
 */
describe("saturation and constants evaluated in many digits, to half a unit of the last", () => {
  test.each(byEquation(evaluatedChecks()))("%s", (_, checks) => {
    expect(checks.length).toBeGreaterThanOrEqual(1);
    expect(checks.filter((check) => !isMet("evaluated", check)).map(describeCheck)).toEqual([]);
  });
});

/*
 * The floor is what doubles leave of the sums that make a residual: 2^-52 times terms that add up to ten for most
 * equations and to several hundred for the oldest. Worst seen beyond the print: 1.4e-14.
 */
const floor = 1e-13;

describe("residuals at the published critical point, to half a unit of the last digit or 1e-13", () => {
  const checks = criticalChecks();

  test.each(byEquation(checks))("%s", (_, residuals) => {
    expect(residuals.length).toBeGreaterThanOrEqual(3);
    const failed = residuals.filter(({ computed, printed, unit }) => {
      const allowed = lastDigit(printed) / 2 + (unit === "1" ? floor : 0);
      return !(Math.abs(computed - Number(printed)) <= allowed);
    });
    expect(failed.map(describeCheck)).toEqual([]);
  });

  // Four of the printed curvatures were corrected: the sum of the printed terms in 60 digits decided.
  test.each(checks.filter(({ remark }) => remark !== undefined))("$id in 60 digits", (check) => {
    const fluid = literalOf(check.fluid, check.equation);
    const { Tr, rhor } = modelFor(fluid).equation;
    const delta = fluid.critical.density / rhor;
    const at = differentiate(
      (tau, density) => residualPrecisely(fluid.residual, tau, density),
      Tr / fluid.critical.temperature,
      delta,
    );
    expect(delta * (2 * at.phi_d + delta * (4 * at.phi_dd + delta * at.phi_ddd))).toRoundTo(check.printed);
  });
});

/*
 * Values remembered before the equations were evaluated, each with its source in published.json; all from memory.
 */
describe("published values", () => {
  const checks = publishedChecks();
  const { published } = readExceptions();
  const exceptions = new Map(published.flatMap(({ values }) => values.map((value) => [value.check, value])));

  test.each(byEquation(checks))("%s are met to the last digit, or deviate as explained", (_, remembered) => {
    const problems = remembered.flatMap((check) => {
      if (check.loose) return [];
      const exception = exceptions.get(check.id);
      if (exception === undefined) return isMet("published", check) ? [] : [describeCheck(check)];
      if (isMet("exceptions", check)) return [`${describeCheck(check)}: an exception that is none any more`];
      const deviation = check.computed / Number(check.printed) - 1;
      return isStillThere(deviation, exception)
        ? []
        : [`${describeCheck(check)}: deviates by ${deviation}, explained was ${exception.deviation}`];
    });
    expect(problems).toEqual([]);
  });

  // Also those remembered loosely: the same equation in many digits.
  test.each(byEquation(checks.filter(({ evaluated }) => evaluated !== undefined)))(
    "%s are what the evaluation in many digits made of them",
    (_, remembered) => {
      const again = remembered.map(({ printedTo, ...check }) => ({
        ...check,
        printed: check.evaluated ?? "",
      }));
      const failed = again.filter((check) => !isMet("published, evaluated in many digits", check));
      expect(failed.map(describeCheck)).toEqual([]);
    },
  );

  test("hold the five states of propane in eight digits: p, cv, cp and w", () => {
    // Lemmon, E. W., McLinden, M. O., Wagner, W., J. Chem. Eng. Data 54 (2009) 3141, check values; from memory.
    const states = checks.filter(({ source }) => source.startsWith("table of check values"));
    expect(states).toHaveLength(20);
    for (const { loose, printed } of states) {
      expect(loose).toBe(false);
      expect(printed.replace(".", "").replace(/^0+/, "")).toHaveLength(8);
    }
  });

  test("are named by the exceptions, each once", () => {
    const names = published.flatMap(({ values }) => values.map(({ check }) => check));
    expect(new Set(names).size).toBe(names.length);
    const strict = checks.filter(({ loose }) => !loose).map(({ id }) => id);
    expect(names.filter((name) => !strict.includes(name))).toEqual([]);
    expect(new Set(strict).size).toBe(strict.length);
  });
});

afterAll(() => {
  const lines = [...worst].map(
    ([group, seen]) => `  ${group}: ${seen.values} values, ${seen.off.toFixed(2)}`,
  );
  console.log(["verification, worst deviation in units of the last digit:", ...lines].join("\n"));
});
