import { describe } from "vitest";
import {
  checkNonCondensables,
  designPressure,
  idealResidualVapour,
  markedPressure,
  residualVapour,
  standingPressure,
} from "../../../src/field/index.js";
import { annualLeakRate, chargeOfEquivalent } from "../../../src/safety/index.js";
import { refrigerant } from "../../../src/state/index.js";
import {
  celsius,
  gram,
  inBarGauge,
  inCelsius,
  inGram,
  inKilopascal,
  kilopascal,
  type LocalAtmosphere,
  litre,
  megapascalGauge,
} from "../../../src/units/index.js";
import { fieldCheck } from "../../support/field-check.js";

const r32 = refrigerant("R-32");
const eos32 = "computed for this check by another implementation of Tillner-Roth and Yokozeki (1997)";
const atmosphere: LocalAtmosphere = {
  pressure: 101325,
  standardUncertainty: 0,
  because: "as in the check value",
};
const thermometer = { accuracy: { kind: "half-width", halfWidth: 0.5 } } as const;

describe("a system at rest", () => {
  fieldCheck(
    "FP-089",
    "R-32 with liquid at 25 °C",
    eos32,
    { rel: 0.001 },
    { absolute: 1689.62, gauge: 1588.3 },
    () => {
      const { pressure, gaugePressure } = standingPressure({
        refrigerant: r32,
        temperature: celsius(25),
        thermometer,
        atmosphere,
        contents: { kind: "liquid-present" },
      });
      return { absolute: inKilopascal(pressure), gauge: gaugePressure / 1000 };
    },
  );

  fieldCheck(
    "FP-090",
    "60 g of R-32 in 2.5 L at 25 °C",
    eos32,
    { rel: 0.003 },
    { density: 24, saturated: 47.3386, absolute: 991.93 },
    () => {
      const { density, saturatedVapourDensity, pressure } = standingPressure({
        refrigerant: r32,
        temperature: celsius(25),
        thermometer,
        atmosphere,
        contents: { kind: "charge", charge: gram(60), internalVolume: litre(2.5) },
      });
      return {
        density: density ?? Number.NaN,
        saturated: saturatedVapourDensity ?? Number.NaN,
        absolute: inKilopascal(pressure),
      };
    },
  );

  fieldCheck(
    "FP-091",
    "R-32 at 30 °C and 2050 kPa: other gas",
    eos32,
    { rel: 0.02 },
    { kilopascal: 122.493, kelvin: 2.39483 },
    () => {
      const { excess, excessTemperature } = checkNonCondensables({
        refrigerant: r32,
        pressure: kilopascal(2050) - atmosphere.pressure,
        gauge: { accuracy: { kind: "half-width", halfWidth: 1e4 } },
        temperature: celsius(30),
        spread: 0.2,
        thermometer,
        atmosphere,
      });
      return { kilopascal: excess / 1000, kelvin: excessTemperature ?? Number.NaN };
    },
  );
});

describe("design pressure", () => {
  fieldCheck("FP-092", "PS of R-32 at 63 °C", eos32, { rel: 0.002 }, { bar: 40.9779 }, () => {
    // 63 °C: high side, condenser cooled by air, up to 43 °C outdoors.
    const { pressure } = designPressure({
      refrigerant: r32,
      side: "high-air-cooled",
      highestAmbient: celsius(43),
    });
    return { bar: inBarGauge(pressure) };
  });

  fieldCheck("FP-093", "R-32 at PS 4.15 MPa", eos32, { abs: 0.15 }, { temperature: 63.57109 }, () => ({
    temperature: inCelsius(markedPressure(r32, megapascalGauge(4.15)).temperature),
  }));
});

describe("recovery and loss", () => {
  fieldCheck(
    "FP-094",
    "R-32 left in 2 L at 101.325 kPa and 20 °C",
    eos32,
    { rel: 0.002 },
    { grams: 4.3833, ideal: 4.3254 },
    () => {
      const left = { refrigerant: r32, pressure: 101325, temperature: celsius(20), volume: litre(2) };
      return { grams: inGram(residualVapour(left)), ideal: inGram(idealResidualVapour(left)) };
    },
  );

  fieldCheck(
    "FP-108",
    "0.15 kg of 0.9 kg in 200 days",
    "40 CFR 82.152, recalled",
    { rel: 1e-5 },
    { percentPerYear: 30.41667 },
    () => {
      const addition = { added: 0.15, fullCharge: 0.9, daysSinceLastAddition: 200 };
      return { percentPerYear: annualLeakRate(addition).percentPerYear };
    },
  );

  fieldCheck(
    "FP-109",
    "charge of GWP 675 that equals 5 t of carbon dioxide",
    "7.4 kg in a leaflet of an installer's association on leak checks",
    { rel: 1e-5 },
    { kilograms: 7.407407 },
    () => ({ kilograms: chargeOfEquivalent(5000, 675) }),
  );
});
