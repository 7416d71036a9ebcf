import { describe, it } from "vitest";
import { r32 as literal } from "../../src/fluids/r-32.js";
import { celsius, type Density, kilopascal, refrigerant, refrigerantFrom } from "../../src/index.js";

const r32 = refrigerant("R-32");
const pure = refrigerantFrom(literal);
const temperature = celsius(25);
const pressure = kilopascal(100);

/** Never run: the compiler alone judges it. */
describe("saturation", () => {
  it("is asked for by temperature or by pressure, not by both and not by another quantity", () => {
    r32.saturation({ temperature });
    r32.trySaturation({ pressure });
    // @ts-expect-error one of them fixes the point
    r32.saturation({ temperature, pressure });
    // @ts-expect-error neither
    r32.saturation({});
    // @ts-expect-error no such input
    r32.saturation({ density: 30 as Density });
  });

  it("does not take one flavour for another", () => {
    // @ts-expect-error a pressure where a temperature belongs
    r32.saturation({ temperature: pressure });
    // @ts-expect-error a temperature where a pressure belongs
    r32.dew({ pressure: temperature });
  });
});

describe("a state", () => {
  it("of what is known to be pure is one phase at a temperature and a pressure, which needs no look at it", () => {
    pure.state({ temperature, pressure }).speedOfSound.toFixed(0);
    // @ts-expect-error what a name leads to may be a blend, and that may have two phases there
    r32.state({ temperature, pressure }).speedOfSound.toFixed(0);
    // @ts-expect-error two phases have no speed of sound
    r32.state({ temperature, quality: 0.5 }).speedOfSound.toFixed(0);
  });

  it("takes two properties", () => {
    // @ts-expect-error one does not fix a state
    r32.state({ temperature });
    // @ts-expect-error not a pair that can be solved for
    r32.state({ quality: 0.5, enthalpy: 3e5 });
  });
});
