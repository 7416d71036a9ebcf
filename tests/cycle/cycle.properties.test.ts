import fc from "fast-check";
import { describe, it } from "vitest";
import { r407c } from "../../src/blends/r-407c.js";
import { r454b } from "../../src/blends/r-454b.js";
import {
  type CycleInput,
  type VapourCompressionCycle,
  vapourCompressionCycle,
} from "../../src/cycle/index.js";
import { r32 } from "../../src/fluids/r-32.js";
import { r134a } from "../../src/fluids/r-134a.js";
import { r290 } from "../../src/fluids/r-290.js";
import { r717 } from "../../src/fluids/r-717.js";
import { blendFrom, type Refrigerant, refrigerantFrom } from "../../src/state/index.js";
import { share } from "../support/states.js";
import { trackWorst } from "../support/worst.js";

const pure = [r32, r134a, r290, r717].map((fluid) => refrigerantFrom(fluid));
const blends = [r454b, r407c].map((recipe) => blendFrom(recipe));

/** Few for blends, which cost milliseconds each. */
const runs = { pure: 200, blends: 25 } as const;
/** A midpoint is solved to 1e-11 of its temperature, which the lift divides: 2.3e-10 is the worst seen. */
const limit = 1e-9;
const worst = trackWorst("cycles");

/**
 * A cycle between 240 K and 0.9 of the critical temperature, lifted by 10 to 50 K: R-32 discharges hotter than its
 * equation reaches when it is lifted more by a poor compressor.
 */
function anyCycle(refrigerants: readonly Refrigerant[]): fc.Arbitrary<CycleInput> {
  return fc
    .tuple(fc.constantFrom(...refrigerants), share(), share(), share(), share(), share())
    .map(([refrigerant, cold, lift, superheat, subcooling, efficiency]) => {
      const highest = 0.9 * refrigerant.critical.temperature;
      const evaporating = 240 + cold * (highest - 240 - 10);
      const condensing = evaporating + 10 + lift * Math.min(40, highest - evaporating - 10);
      return {
        refrigerant,
        evaporating: { temperature: evaporating, at: "dew" },
        condensing: { temperature: condensing, at: "dew" },
        superheat: 20 * superheat,
        // A blend's bubble point lies below the dew point that was asked for: half of the 10 K stays.
        subcooling: Math.min(10, (condensing - evaporating) / 5) * subcooling,
        isentropicEfficiency: 0.6 + 0.4 * efficiency,
      };
    });
}

function each(check: (cycle: VapourCompressionCycle, input: CycleInput, where: string) => void): void {
  for (const [refrigerants, numRuns] of [
    [pure, runs.pure],
    [blends, runs.blends],
  ] as const) {
    fc.assert(
      fc.property(anyCycle(refrigerants), (input) => {
        const { refrigerant, evaporating, condensing } = input;
        const where = `${refrigerant.designation} ${evaporating.temperature} K to ${condensing.temperature} K`;
        check(vapourCompressionCycle(input), input, where);
      }),
      { numRuns },
    );
  }
}

describe("any cycle", () => {
  it("keeps energy and loses no entropy", () => {
    each((cycle, _input, where) => {
      const { coolingEffect, compressionWork, heatRejected, states } = cycle;
      const { suction, isentropicDischarge, discharge, liquid, evaporatorInlet } = states;
      worst("q_c = q_e + w", Math.abs(heatRejected / (coolingEffect + compressionWork) - 1), limit, where);
      worst("h₄ = h₃", Math.abs(evaporatorInlet.enthalpy - liquid.enthalpy) / coolingEffect, limit, where);
      const R = suction.refrigerant.specificGasConstant;
      worst("s₂ₛ = s₁", Math.abs(isentropicDischarge.entropy - suction.entropy) / R, limit, where);
      worst("s₂ ≥ s₁", Math.max(0, suction.entropy - discharge.entropy) / R, limit, where);
      worst("s₄ ≥ s₃", Math.max(0, liquid.entropy - evaporatorInlet.entropy) / R, limit, where);
      worst("COP_heating = COP + 1", Math.abs(cycle.heatingCop / (cycle.coolingCop + 1) - 1), limit, where);
    });
  });

  it("does no better than Carnot's between the mean temperatures at which it moves heat", () => {
    each((cycle, input, where) => {
      const { suction, discharge, liquid, evaporatorInlet } = cycle.states;
      const cold = cycle.coolingEffect / (suction.entropy - evaporatorInlet.entropy);
      const warm = cycle.heatRejected / (discharge.entropy - liquid.entropy);
      worst("COP ≤ T/(T − T)", Math.max(0, (cycle.coolingCop * (warm - cold)) / cold - 1), limit, where);
      // Without superheat and subcooling a pure refrigerant takes up heat at one temperature and gives none off below
      // the other: then it stays below the fraction 1 that the result states.
      if (input.refrigerant.blend === undefined) {
        const saturated = vapourCompressionCycle({ ...input, superheat: 0, subcooling: 0 });
        worst("fraction of Carnot ≤ 1", Math.max(0, saturated.carnotFraction - 1), limit, where);
      }
    });
  });

  it("discharges hotter the worse the compressor, and takes more work", () => {
    each((cycle, input, where) => {
      const { isentropicEfficiency } = input;
      const worse = vapourCompressionCycle({ ...input, isentropicEfficiency: 0.95 * isentropicEfficiency });
      const cooler = Math.max(0, cycle.dischargeTemperature - worse.dischargeTemperature);
      worst("T₂ rises with 1/η", cooler / cycle.dischargeTemperature, limit, where);
      const ratio = worse.compressionWork / cycle.compressionWork;
      worst("w ∝ 1/η", Math.abs(0.95 * ratio - 1), limit, where);
    });
  });

  it("does worse the higher it lifts", () => {
    each((cycle, input, where) => {
      const temperature = input.condensing.temperature! + 1;
      const higher = vapourCompressionCycle({ ...input, condensing: { temperature, at: "dew" } });
      worst("COP falls with lift", Math.max(0, higher.coolingCop / cycle.coolingCop - 1), 0, where);
      worst("ratio rises", Math.max(0, cycle.compressionRatio / higher.compressionRatio - 1), 0, where);
    });
  });

  it("is the same by pressure and by every temperature", () => {
    each((cycle, input, where) => {
      const { evaporating, condensing } = cycle;
      const levels: Pick<CycleInput, "evaporating" | "condensing">[] = [
        { evaporating: { pressure: evaporating.pressure }, condensing: { pressure: condensing.pressure } },
        {
          evaporating: { temperature: evaporating.bubbleTemperature, at: "bubble" },
          condensing: { temperature: condensing.bubbleTemperature, at: "bubble" },
        },
        {
          evaporating: { temperature: evaporating.midpoint, at: "midpoint" },
          condensing: { temperature: condensing.midpoint, at: "midpoint" },
        },
        {
          evaporating: { temperature: evaporating.inletMidpoint, at: "inlet-midpoint" },
          condensing: { pressure: condensing.pressure },
        },
      ];
      for (const [index, level] of levels.entries()) {
        const again = vapourCompressionCycle({ ...input, ...level });
        worst(`COP, way ${index}`, Math.abs(again.coolingCop / cycle.coolingCop - 1), limit, where);
        const T = cycle.dischargeTemperature;
        worst(`T₂, way ${index}`, Math.abs(again.dischargeTemperature / T - 1), limit, where);
      }
    });
  });
});
