import { describe, expect, it } from "vitest";
import {
  carbonDioxideEquivalent,
  chargeOfEquivalent,
  tryCarbonDioxideEquivalent,
  tryChargeOfEquivalent,
} from "../../src/safety/index.js";
import { InputError } from "../../src/units/index.js";

describe("carbon dioxide equivalents", () => {
  it("of 5 t are 7.4 kg of GWP 675 and 2.4 kg of GWP 2088, as printed in a leaflet on leak checks", () => {
    expect(chargeOfEquivalent(5000, 675)).toBeCloseTo(7.4, 1);
    expect(chargeOfEquivalent(5000, 2088)).toBeCloseTo(2.4, 1);
    expect(carbonDioxideEquivalent(chargeOfEquivalent(5000, 675), 675)).toBeWithin(5000, 1e-14);
    expect(() => carbonDioxideEquivalent(-1, 0)).toThrow(InputError);
    expect(tryCarbonDioxideEquivalent(undefined as never, null as never).ok).toBe(false);
    expect(tryChargeOfEquivalent(-1, 675).ok).toBe(false);
    expect(() => chargeOfEquivalent(1, Number.NaN)).toThrow(InputError);
  });
});
