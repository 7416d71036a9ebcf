import { describe } from "vitest";
import {
  compositionLeft,
  fillingRule,
  fillLimit,
  fractionLeft,
  grossWeightLimit,
  hoseHoldUp,
  lineCharge,
  liquidFullTemperature,
  liquidLevel,
  mixCharges,
  trappedLiquid,
  tubeBore,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import { celsius, inCelsius, inGram, litre, millimetre } from "../../../src/units/index.js";
import { fieldCheck } from "../../support/field-check.js";

const r32 = refrigerant("R-32");
const r410a = refrigerant("R-410A");
const computed = "computed for this check by another implementation";
const eos32 = `${computed} of Tillner-Roth and Yokozeki (1997)`;
const eos410 = `${computed} of Lemmon (2003)`;
const small = { outerDiameter: millimetre(6.35), wall: millimetre(0.8) };

describe("line sets", () => {
  fieldCheck(
    "FP-071",
    "bore of 6.35 × 0.8 mm",
    "geometry",
    { rel: 1e-5 },
    { squareMillimetres: 17.72055 },
    () => ({
      squareMillimetres: tubeBore(small).area * 1e6,
    }),
  );

  fieldCheck(
    "FP-072",
    "bore of 9.52 × 0.8 mm",
    "geometry",
    { rel: 1e-5 },
    { squareMillimetres: 49.2652 },
    () => ({
      squareMillimetres: tubeBore({ outerDiameter: millimetre(9.52), wall: millimetre(0.8) }).area * 1e6,
    }),
  );

  const line = { chargeFreeLength: 5, chargePerMetre: 0.012, maximumLength: 20 };

  fieldCheck(
    "FP-073",
    "R-32 liquid at 40 °C in each metre of 6.35 mm",
    eos32,
    { rel: 0.003 },
    { gramsPerMetre: 15.8251 },
    () => {
      const liquidLine = { refrigerant: r32, liquidTemperature: celsius(40), tube: small };
      return {
        gramsPerMetre: inGram(lineCharge({ ...line, length: 9, liquidLine }).boundPerMetre ?? Number.NaN),
      };
    },
  );

  fieldCheck(
    "FP-074",
    "9 m with 5 m free at 12 g/m",
    "12 g/m: printed installation manual of a split unit, R-32, 6.35 mm liquid line",
    { abs: 1e-9 },
    { grams: 48 },
    () => ({ grams: inGram(lineCharge({ ...line, length: 9 }).extraCharge) }),
  );

  fieldCheck("FP-075", "4 m with 5 m free", "never negative", { abs: 1e-9 }, { grams: 0 }, () => ({
    grams: inGram(lineCharge({ ...line, length: 4 }).extraCharge),
  }));

  fieldCheck("FP-076", "hose of 1.5 m and 4.8 mm", computed, { rel: 1e-4 }, { grams: 26.0848 }, () => ({
    grams: inGram(hoseHoldUp(millimetre(4.8), 1.5, 961)),
  }));
});

describe("cylinders", () => {
  fieldCheck(
    "FP-077",
    "R-32 in 26.2 L by its filling ratio",
    "0.78 kg/L: official publication of an agreement under ADR",
    { rel: 1e-9 },
    { kilograms: 20.436 },
    () => {
      const { bounds } = fillLimit({
        refrigerant: r32,
        volume: litre(26.2),
        refillable: true,
        contents: "new",
        inside: 0,
        scaleHalfWidth: 0,
      });
      return { kilograms: bounds["filling-ratio"] ?? Number.NaN };
    },
  );

  fieldCheck(
    "FP-078",
    "gross weight of R-22 by the US rule, lb",
    "worked example of a trade press article on AHRI Guideline K",
    { abs: 0.01 },
    { pounds: 1337.6 },
    () => ({ pounds: grossWeightLimit(1000, 1.197, 380) }),
  );

  fieldCheck(
    "FP-079",
    "rule for R-32",
    eos32,
    { rel: 0.003 },
    { warm: 797.293, hot: 773.311, limit: 773.311 },
    () => {
      const rule = fillingRule(r32);
      return { warm: rule?.warm ?? 0, hot: rule?.hot ?? 0, limit: rule?.limit ?? 0 };
    },
  );

  fieldCheck(
    "FP-080",
    "rule for R-410A",
    eos410,
    { rel: 0.005 },
    { warm: 861.62, hot: 815.37, limit: 815.37 },
    () => {
      const rule = fillingRule(r410a);
      return { warm: rule?.warm ?? 0, hot: rule?.hot ?? 0, limit: rule?.limit ?? 0 };
    },
  );

  fieldCheck("FP-081", "R-32 at 0.78 kg/L is full at", eos32, { abs: 0.3 }, { temperature: 59.0977 }, () => ({
    temperature: inCelsius(liquidFullTemperature({ refrigerant: r32, density: 780 }).temperature ?? 0),
  }));

  fieldCheck(
    "FP-082",
    "R-410A, 80 % of the volume liquid at 21 °C",
    eos410,
    { fill: { rel: 0.005 }, temperature: { abs: 0.4 } },
    { fill: 0.8627961, temperature: 55.29204 },
    () => {
      // The check value counts the liquid alone, without the vapour above it.
      const density = 0.8 * r410a.bubble({ temperature: celsius(21) }).liquid.density;
      const { temperature } = liquidFullTemperature({ refrigerant: r410a, density });
      return { fill: density / 1000, temperature: inCelsius(temperature ?? 0) };
    },
  );

  fieldCheck(
    "FP-083",
    "R-32 shut in full at 20 °C, warmed to 30 °C",
    eos32,
    { rel: 0.01 },
    { megapascal: 8.76896, slope: 0.726479 },
    () => {
      const { pressure, slope } = trappedLiquid({
        refrigerant: r32,
        fullAt: celsius(20),
        warmedTo: celsius(30),
      });
      return { megapascal: pressure / 1e6, slope: slope / 1e6 };
    },
  );

  fieldCheck(
    "FP-084",
    "liquid of R-32 at 0.78 kg/L and 20 °C",
    eos32,
    { rel: 0.003 },
    { fraction: 0.785882 },
    () => ({
      fraction: liquidLevel({ refrigerant: r32, density: 780, temperature: celsius(20) }).fraction,
    }),
  );
});

describe("compositions", () => {
  fieldCheck(
    "FP-085",
    "moles left, α = 2, from 0.5 to 0.4",
    computed,
    { rel: 1e-6 },
    { left: 0.55555556 },
    () => ({
      left: fractionLeft(2, 0.5, 0.4),
    }),
  );

  fieldCheck(
    "FP-086",
    "composition at 0.7 left, α = 2",
    computed,
    { rel: 1e-5 },
    { light: 0.4396262 },
    () => ({
      light: compositionLeft(2, 0.5, 0.7),
    }),
  );

  fieldCheck(
    "FP-087",
    "mole fraction and molar mass of R-410A",
    `${computed}: 52.024 and 120.0214 g/mol`,
    { rel: 1e-5 },
    { r32: 0.6976147, molarMass: 72.58541 },
    () => ({
      r32: r410a.blend?.moleFractions["R-32"] ?? Number.NaN,
      molarMass: r410a.molarMass * 1000,
    }),
  );

  fieldCheck(
    "FP-088",
    "0.6 kg at 65 % with 0.3 kg at 68.9 %",
    "balance of masses",
    { rel: 1e-6 },
    { r32: 0.663 },
    () => ({
      r32:
        mixCharges([
          { mass: 0.6, composition: { "R-32": 0.65, "R-1234yf": 0.35 } },
          { mass: 0.3, composition: { "R-32": 0.689, "R-1234yf": 0.311 } },
        ])["R-32"] ?? Number.NaN,
    }),
  );
});
