import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LeakSituation, type Leaving, simulateLeak, topUp } from "../../../src/field/index.js";
import { blend, blends, type Refrigerant, refrigerant } from "../../../src/state/index.js";
import { share } from "../../support/states.js";
import { trackWorst } from "../../support/worst.js";
import { total } from "./integrate.js";

const worst = trackWorst("leaks");

/** A leak costs some tens of milliseconds: a fiftieth of the usual number of cases. */
const numRuns = Math.ceil((fc.readConfigureGlobal().numRuns ?? 2000) / 50);
const timeout = 2000 * numRuns;

const ownNames = ["R-32", "R-125", "R-134a", "R-1234yf"] as const;

const made = new Map<string, Refrigerant>();
/** Each is made once: its bubble and dew lines are followed once. */
function designated(name: string): Refrigerant {
  const known = made.get(name) ?? refrigerant(name);
  made.set(name, known);
  return known;
}

/** Designated blends, and blends of any composition of four components. */
const refrigerants: fc.Arbitrary<Refrigerant> = fc.oneof(
  fc.constantFrom(...blends().map(({ designation }) => designation)).map(designated),
  fc.tuple(share(), share(), share(), share()).map((shares) => {
    // From equal parts to traces of a hundred-thousandth.
    const weights = shares.map((u) => 10 ** (-5 * u * u));
    const whole = weights.reduce((sum, each) => sum + each, 0);
    return blend(ownNames.map((name, i) => [name, weights[i]! / whole] as const));
  }),
);

const leaving: fc.Arbitrary<Leaving> = fc.oneof(
  fc.constant("vapour" as const),
  fc.constant("liquid" as const),
  share().map((quality) => ({ quality })),
);

/** Vessels from gas alone to nearly full of liquid, at temperatures of the weather. */
const situations: fc.Arbitrary<LeakSituation> = fc
  .record({ refrigerant: refrigerants, leaving, charge: share(), t: share(), fill: share(), lost: share() })
  .map(({ charge, t, fill, lost, ...rest }) => {
    const temperature = 243 + 75 * t;
    const kilograms = 0.05 + 10 * charge;
    const { density } = rest.refrigerant.bubble({ temperature }).liquid;
    return {
      ...rest,
      temperature,
      charge: kilograms,
      volume: kilograms / (density * (0.005 + 0.98 * fill)),
      lostFraction: 0.01 + 0.97 * lost,
    };
  });

describe("any leak", () => {
  it(
    "keeps account of every component and stays a composition",
    () => {
      fc.assert(
        fc.property(situations, (situation) => {
          const { states, escaped, imbalance } = simulateLeak(situation);
          const { designation } = situation.refrigerant;
          worst("balance of a component", imbalance, 1e-12, designation);
          const compositions = states.flatMap(({ composition, liquid, vapour }) => [
            composition,
            ...(liquid === undefined ? [] : [liquid.composition]),
            ...(vapour === undefined ? [] : [vapour.composition]),
          ]);
          for (const composition of [...compositions, escaped]) {
            worst("sum of fractions", Math.abs(total(composition) - 1), 1e-12, designation);
            for (const fraction of Object.values(composition)) {
              expect(fraction).toBeGreaterThanOrEqual(0);
              expect(fraction).toBeLessThanOrEqual(1 + 1e-12);
            }
          }
          for (const { lostMass, remainingMass, liquid, vapour } of states) {
            worst("mass", Math.abs((lostMass + remainingMass) / situation.charge - 1), 1e-12, designation);
            const filled = (liquid?.volume ?? 0) + (vapour?.volume ?? 0);
            worst("volume", Math.abs(filled / situation.volume - 1), 1e-9, designation);
          }
        }),
        { numRuns },
      );
    },
    timeout,
  );

  it(
    "keeps its pressure between dew and bubble point, and never gains any by losing vapour",
    () => {
      fc.assert(
        fc.property(situations, (situation) => {
          const { states } = simulateLeak({ ...situation, leaving: "vapour" });
          const { designation } = situation.refrigerant;
          for (const [i, { pressure, bubblePressure, dewPressure, liquid, vapour }] of states.entries()) {
            if (liquid !== undefined && vapour !== undefined) {
              worst("above the bubble point", pressure / bubblePressure - 1, 1e-8, designation);
              worst("below the dew point", dewPressure / pressure - 1, 1e-8, designation);
            }
            if (i > 0) worst("gain", pressure / states[i - 1]!.pressure - 1, 1e-9, designation);
          }
        }),
        { numRuns },
      );
    },
    timeout,
  );
});

describe("any top-up", () => {
  it(
    "comes nearer to the designation than what was left, and is decided by its cases",
    () => {
      fc.assert(
        fc.property(situations, (situation) => {
          const { verdict, cases } = topUp({ ...situation, leaving: "unknown" });
          const verdicts = new Set(cases.map(({ check }) => check.verdict));
          expect(verdict).toBe(verdicts.size === 1 ? [...verdicts][0] : "inconclusive");
          for (const { left, resulting } of cases) {
            for (const [name, nominal] of Object.entries(situation.refrigerant.composition)) {
              const before = Math.abs(left.composition[name]! - nominal);
              expect(Math.abs(resulting[name]! - nominal)).toBeLessThanOrEqual(before + 1e-14);
            }
          }
        }),
        { numRuns },
      );
    },
    timeout,
  );
});
