import type { Refrigerant } from "../../state/index.js";
import { attempt, InputCheck, type Outcome } from "../../units/index.js";
import type { Verdict } from "../measurement/decision.js";
import { shown } from "../measurement/shown.js";
import { checkRefrigerant } from "../refrigerant-check.js";

/** One component of a composition beside what its designation allows. */
export interface ComponentShift {
  /** Designation of the component. */
  readonly component: string;
  /** Mass fraction found. */
  readonly fraction: number;
  /** Mass fraction of the designation. */
  readonly nominal: number;
  /** How far it may lie above and below; undefined where the designation's tolerance is not known. */
  readonly tolerance: { readonly above: number; readonly below: number } | undefined;
  /** Whether it lies inside; undefined where the tolerance is not known. */
  readonly isWithin: boolean | undefined;
}

/** A composition held against a designation. */
export interface CompositionCheck {
  /** `pass` inside all tolerances, `fail` outside of one, `inconclusive` where those that are known do not decide. */
  readonly verdict: Verdict;
  /** Every component, in the order of the designation. */
  readonly shifts: readonly ComponentShift[];
  /** The rule and the numbers that decided. */
  readonly because: string;
}

/** Fractions are read with four decimals at most: a sum farther from 1 than this is a slip. */
const wholeness = 1e-4;

/** A fraction this near its limit lies on it. */
const rounding = 1e-9;

/**
 * Is a composition still what its designation says? Each mass fraction is held against nominal plus and minus tolerance.
 *
 * @param refrigerant - A designated blend; a pure refrigerant passes with nothing but itself.
 * @param composition - Mass fractions by designation, of the same components.
 * @throws `malformed-input`: no refrigerant, or a fraction missing or not from 0 to 1.
 * @source Tolerances of ISO 817 / ASHRAE 34 as the blend's data give them.
 */
export function checkComposition(
  refrigerant: Refrigerant,
  composition: Readonly<Record<string, number>>,
): CompositionCheck {
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", refrigerant);
  check.require(
    typeof composition === "object" && composition !== null,
    "composition",
    composition,
    "mass fractions by designation",
  );
  check.finish();
  const names = Object.keys(refrigerant.composition);
  for (const name of names) {
    const fraction = composition[name];
    const isFraction = typeof fraction === "number" && fraction >= 0 && fraction <= 1 + rounding;
    check.require(isFraction, `composition.${name}`, fraction, "a mass fraction from 0 to 1");
  }
  for (const name of Object.keys(composition)) {
    check.require(
      names.includes(name),
      `composition.${name}`,
      composition[name],
      `no such component: ${names.join(", ")}`,
    );
  }
  check.finish();
  const whole = names.reduce((total, name) => total + composition[name]!, 0);
  check.require(Math.abs(whole - 1) < wholeness, "composition", whole, "mass fractions that add up to 1");
  check.finish();
  const tolerances = refrigerant.blend?.tolerances ?? {};
  const shifts = names.map((component): ComponentShift => {
    const fraction = composition[component]!;
    const nominal = refrigerant.composition[component]!;
    const tolerance = refrigerant.blend === undefined ? { above: 0, below: 0 } : tolerances[component];
    const shift = fraction - nominal;
    return {
      component,
      fraction,
      nominal,
      tolerance,
      isWithin:
        tolerance === undefined
          ? undefined
          : shift <= tolerance.above + rounding && shift >= -tolerance.below - rounding,
    };
  });
  const outside = shifts.filter(({ isWithin }) => isWithin === false);
  const unknown = shifts.filter(({ isWithin }) => isWithin === undefined);
  const verdict: Verdict = outside.length > 0 ? "fail" : unknown.length > 0 ? "inconclusive" : "pass";
  return { verdict, shifts, because: explain(verdict, outside, unknown) };
}

/** As {@link checkComposition}, without throwing. */
export function tryCheckComposition(
  refrigerant: Refrigerant,
  composition: Readonly<Record<string, number>>,
): Outcome<CompositionCheck> {
  return attempt(() => checkComposition(refrigerant, composition));
}

function explain(
  verdict: Verdict,
  outside: readonly ComponentShift[],
  unknown: readonly ComponentShift[],
): string {
  if (verdict === "pass") return "every mass fraction lies within the tolerance of the designation";
  if (verdict === "inconclusive") {
    return `no tolerance is known of ${unknown.map(({ component }) => component).join(", ")}`;
  }
  return outside
    .map(({ component, fraction, nominal, tolerance }) => {
      const { above, below } = tolerance!;
      const limits = `${percent(nominal - below)} to ${percent(nominal + above)}`;
      return `${component} ${percent(fraction)} % lies outside ${limits} %`;
    })
    .join("; ");
}

function percent(fraction: number): string {
  return shown(100 * fraction);
}
