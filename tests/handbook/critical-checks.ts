import { readFileSync } from "node:fs";
import { type Fluid, findFluid } from "../../src/catalogue/index.js";
import { criticalResidual, modelFor } from "../../src/equilibrium/index.js";
import { pseudoPure, pseudoPureBlends } from "./pseudo-pure.js";
import type { Check } from "./verification.js";

/** One residual at the published critical point. */
export interface CriticalCheck extends Check {
  readonly property: "pressure" | "slope" | "curvature" | "pressureAtCritical";
  /** Set where the printed digits were corrected, and says why. */
  readonly remark?: string;
}

/** Every number of `critical.json`. */
export function criticalChecks(): readonly CriticalCheck[] {
  const { entries } = JSON.parse(
    readFileSync(new URL("verification/critical.json", import.meta.url), "utf8"),
  ) as { readonly entries: readonly Readonly<Record<string, string>>[] };
  return entries.flatMap((entry) => {
    const { fluid = "", equation = "", remark } = entry;
    const computed = residualsOf(literalOf(fluid, equation));
    return (["pressure", "slope", "curvature", "pressureAtCritical"] as const).flatMap((property) => {
      const printed = entry[property];
      if (printed === undefined) return [];
      return [
        {
          ...{ id: `${fluid} ${equation} ${property}`, fluid, equation, property, printed },
          unit: property === "pressureAtCritical" ? "Pa" : "1",
          computed: computed[property],
          ...(remark === undefined || property !== "curvature" ? {} : { remark }),
        },
      ];
    });
  });
}

/** The literal of an equation, of the catalogue or of a blend as one fluid. */
export function literalOf(fluid: string, equation: string): Fluid {
  return pseudoPureBlends.includes(fluid) ? pseudoPure(fluid).fluid : findFluid(fluid, { equation });
}

function residualsOf(fluid: Fluid): Record<CriticalCheck["property"], number> {
  const { equation } = modelFor(fluid);
  const { temperature, density, pressure } = fluid.critical;
  const delta = density / equation.rhor;
  const residual = criticalResidual(equation, equation.Tr / temperature, delta);
  const found = residual.pressure * equation.rhor * equation.R * temperature;
  return {
    pressure: found / pressure - 1,
    slope: residual.first,
    // Reduced by the critical density there, by the reducing density here.
    curvature: residual.second * delta,
    pressureAtCritical: found,
  };
}
