import { describe, expect, it } from "vitest";
import { blends, refrigerant, VesselSearch } from "../../src/state/index.js";
import { celsius } from "../../src/units/index.js";
import { trackWorst } from "../support/worst.js";

const worst = trackWorst("vessels");
const temperatures = [-50, -40, -30, -20, -10, 0, 15, 30, 45, 60];
/** Of the way from the density of the dew point to that of the bubble point. */
const ways = [0.002, 0.05, 0.2, 0.35, 0.4, 0.45, 0.5, 0.6, 0.9, 0.995];

describe("a vessel", () => {
  it.each(blends())("of $designation holds what its state at that density has", ({ designation }) => {
    // Another route: the state goes along the isotherm between its edges, the vessel searches from a start of its own. In
    // the middle several equations have a branch that passes for a phase, of 2 MPa to 1e14 Pa.
    const blend = refrigerant(designation);
    for (const temperature of temperatures.map(celsius)) {
      const bubble = blend.tryBubble({ temperature });
      const dew = blend.tryDew({ temperature });
      if (!bubble.ok || !dew.ok) continue;
      const thin = dew.value.vapour.density;
      const dense = bubble.value.liquid.density;
      for (const way of ways) {
        const density = thin + way * (dense - thin);
        const state = blend.state({ temperature, density });
        if (state.phase !== "two-phase")
          throw new Error(`one phase: ${designation}, ${temperature} K, ${way}`);
        const search = new VesselSearch(blend, temperature, 1 / density);
        const { pressure, liquid, vapour } = search.contentsOf(blend.composition);
        const where = `${designation}, ${temperature} K, ${way}`;
        worst("pressure", Math.abs(pressure / state.pressure - 1), 1e-10, where);
        worst("quality", Math.abs((vapour?.mass ?? 1) - state.quality), 1e-10, where);
        for (const name of Object.keys(blend.composition)) {
          const shift = liquid!.composition[name]! - state.liquid.composition[name]!;
          worst("liquid's composition", Math.abs(shift), 1e-10, where);
        }
      }
    }
  });

  it("holds one phase outside of that", () => {
    const blend = refrigerant("R-454B");
    const temperature = celsius(0);
    const thin = blend.dew({ temperature }).vapour.density;
    const dense = blend.bubble({ temperature }).liquid.density;
    const at = (density: number) =>
      new VesselSearch(blend, temperature, 1 / density).contentsOf(blend.composition);
    expect(at(0.999 * thin)).toMatchObject({ liquid: undefined, vapour: { mass: 1 } });
    expect(at(1.001 * dense)).toMatchObject({ vapour: undefined, liquid: { volume: 1 / (1.001 * dense) } });
    expect(at(0.999 * thin).pressure).toBeWithin(
      blend.state({ temperature, density: 0.999 * thin }).pressure,
      1e-12,
    );
  });
});
