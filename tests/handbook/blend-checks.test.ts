import { describe, expect, test } from "vitest";
import { trackWorst } from "../support/worst.js";
import { type BlendCheck, blendChecks } from "./blend-checks.js";
import { digitsOff, isPrinted } from "./printed.js";

/*
 * The designated blends by the same model and parameters, evaluated by another program with a solver of its own
 * (verification/blends.json): this says that the model is evaluated rightly, not that its parameters are right.
 */
const checks = blendChecks();
const track = trackWorst("blends by another program, units of the last digit");
const blends = [...new Set(checks.map(({ fluid }) => fluid))];
const describeCheck = ({ id, printed, unit, computed }: BlendCheck): string =>
  `${id}: got ${computed} ${unit}, printed ${printed}`;

describe("with one gas constant for all components, to half a unit of the last digit", () => {
  test.each(blends)("%s", (blend) => {
    const ofBlend = checks.filter(({ fluid }) => fluid === blend);
    expect(ofBlend).toHaveLength(20);
    for (const { id, computed, printed } of ofBlend) {
      track("one gas constant", Math.abs(digitsOff(computed, printed)), 0.5 + 1e-6, id);
    }
    expect(
      ofBlend.filter(({ computed, printed }) => !isPrinted(computed, printed)).map(describeCheck),
    ).toEqual([]);
  });

  test("are of all 26 designated blends", () => {
    expect(blends).toHaveLength(26);
  });
});

/*
 * At one temperature a pressure is proportional to the gas constant; the components' own are up to 1.2e-6 below the common
 * one, that of R-744 is 4.6e-6 above it. Worst seen: 1.42 units and 1.1e-6, the bubble pressure of R-515B at 50 °C.
 */
test("with the components' own gas constants, as computed for users, to 1.5 units and 1.5e-6", () => {
  for (const { id, computed, asShipped, printed, unit } of checks) {
    track("own gas constants", Math.abs(digitsOff(asShipped, printed)), 1.5, id);
    if (unit === "kPa") track("own gas constants, relative", Math.abs(asShipped / computed - 1), 1.5e-6, id);
  }
  const missed = checks.filter(({ asShipped, printed }) => !isPrinted(asShipped, printed));
  expect(missed).toHaveLength(39);
  expect(new Set(missed.map(({ unit }) => unit))).toEqual(new Set(["kPa"]));
});
