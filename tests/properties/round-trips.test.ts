import fc from "fast-check";
import { describe, it } from "vitest";
import type { Refrigerant, State } from "../../src/state/index.js";
import { deviation, pairsOf } from "../support/state-deviation.js";
import { anyFluid, refrigerantOf, saturationTemperatureAt, share, singlePhaseAt } from "../support/states.js";
import { trackWorst } from "../support/worst.js";

/*
 * No outside source: a state asked for by any pair of its properties must be the same state. 1e-9 is the promise;
 * what is seen is printed.
 */
const limit = 1e-9;
const worst = trackWorst("every input pair returns to its state");

/**
 * Near the critical point the phases grow alike and a quality loses digits as (1 − T/Tc)^−1.5: the promise is for a
 * thousandth of Tc below it and more, and ten times nearer to it two digits fewer are asked.
 */
const nearest = 1e-3;
const nearer = 1e-4;
const nearLimit = 1e-7;

function checkAllPairs(refrigerant: Refrigerant, from: State, kind: string, allowed: number): void {
  for (const [name, input] of Object.entries(pairsOf(from, limit))) {
    const where = `${refrigerant.designation} ${refrigerant.equation} ${from.temperature} K ${from.pressure} Pa ${from.phase} ${from.quality ?? ""}`;
    worst(`${name}, ${kind}`, deviation(refrigerant.state(input), from), allowed, where);
  }
}

describe("input pairs", () => {
  it("return to a state in one phase", () => {
    fc.assert(
      fc.property(anyFluid(), share(), share(), (fluid, u, v) => {
        const refrigerant = refrigerantOf(fluid);
        const from = singlePhaseAt(refrigerant, u, v);
        fc.pre(from !== undefined);
        checkAllPairs(refrigerant, from, "one phase", limit);
      }),
    );
  });

  it("return to a state in two phases", () => {
    fc.assert(
      fc.property(anyFluid(), share(), share(), (fluid, u, quality) => {
        const refrigerant = refrigerantOf(fluid);
        const margin = nearest * refrigerant.critical.temperature;
        const temperature = saturationTemperatureAt(refrigerant, u, margin);
        checkAllPairs(refrigerant, refrigerant.state({ temperature, quality }), "two phases", limit);
      }),
    );
  });

  it("return to a state in two phases near the critical point, with fewer digits", () => {
    fc.assert(
      fc.property(anyFluid(), share(), share(), (fluid, u, quality) => {
        const refrigerant = refrigerantOf(fluid);
        const { temperature: Tc } = refrigerant.critical;
        const temperature = Tc * (1 - nearer * (nearest / nearer) ** u);
        checkAllPairs(refrigerant, refrigerant.state({ temperature, quality }), "near-critical", nearLimit);
      }),
    );
  });
});
