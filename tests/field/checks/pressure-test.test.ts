import { describe } from "vitest";
import {
  bubbleThroughput,
  type HoldReading,
  leakMassFlow,
  leakThroughput,
  lossPerYear,
  massFlowOfLoss,
  type NitrogenHold,
  type NitrogenHoldResult,
  nitrogenHold,
  scaleLeak,
  storedGasEnergy,
  testPressures,
} from "../../../src/field/index.js";
import { r32 } from "../../../src/fluids/r-32.js";
import { r134a } from "../../../src/fluids/r-134a.js";
import { r728 } from "../../../src/fluids/r-728.js";
import { refrigerantFrom } from "../../../src/state/index.js";
import {
  celsius,
  gram,
  inGram,
  inMegapascalGauge,
  type LocalAtmosphere,
  litre,
  megapascal,
  megapascalGauge,
  millimetre,
  second,
} from "../../../src/units/index.js";
import { fieldCheck } from "../../support/field-check.js";

const nitrogen = refrigerantFrom(r728);
const site: LocalAtmosphere = { pressure: 101325, standardUncertainty: 0, because: "as in the check value" };
const span = "computed for this check by another implementation of Span et al. (2000)";
const computed = "computed for this check by another implementation";

function held(
  [p1, t1]: readonly [number, number],
  [p2, t2]: readonly [number, number],
  seconds: number,
  change: Partial<NitrogenHold> = {},
): NitrogenHoldResult {
  const reading = (time: number, pressure: number, temperature: number): HoldReading => ({
    time,
    pressure: megapascalGauge(pressure),
    pipeTemperature: celsius(temperature),
  });
  return nitrogenHold({
    nitrogen,
    readings: [reading(0, p1, t1), reading(seconds, p2, t2)],
    gauge: { accuracy: { kind: "half-width", halfWidth: 20e3 }, resolution: 10e3 },
    thermometer: { accuracy: { kind: "standard-uncertainty", standardUncertainty: 0.5 } },
    atmosphere: site,
    maximumAllowablePressure: megapascalGauge(4.15),
    ...change,
  });
}

describe("nitrogen", () => {
  fieldCheck(
    "FP-028",
    "virial coefficients at 293.15 K",
    span,
    { B: { abs: 0.02 }, C: { rel: 0.002 } },
    { B: -5.900257, C: 1426.258 },
    () => {
      const at = (density: number) =>
        nitrogen.state({ temperature: 293.15, density: density * nitrogen.molarMass });
      const B = nitrogen.state({ temperature: 293.15, pressure: 1e5 }).secondVirial;
      // Z − 1 = B ρ + C ρ² + D ρ³: two densities give C without D.
      const over = (density: number) => ((at(density).compressibilityFactor - 1) / density - B) / density;
      return { B: B * 1e6, C: (2 * over(100) - over(200)) * 1e12 };
    },
  );

  fieldCheck(
    "FP-029",
    "gas at 293.15 K and 4.25 MPa",
    span,
    { rel: 2e-4 },
    { Z: 0.994076, density: 49.1371 },
    () => {
      const { compressibilityFactor: Z, density } = nitrogen.state({
        temperature: 293.15,
        pressure: megapascal(4.25),
      });
      return { Z, density };
    },
  );

  fieldCheck("FP-030", "gas at 300 K and 1 MPa", span, { rel: 2e-4 }, { Z: 0.998399 }, () => ({
    Z: nitrogen.state({ temperature: 300, pressure: megapascal(1) }).compressibilityFactor,
  }));
});

describe("a hold test", () => {
  fieldCheck(
    "FP-031",
    "4.15 MPa gauge from 20 to 10 °C",
    span,
    { abs: 0.0005 },
    { real: 3.990051, ideal: 4.004978 },
    () => {
      const { expectedPressure, comparison } = held([4.15, 20], [4.15, 10], 3600);
      return { real: inMegapascalGauge(expectedPressure), ideal: inMegapascalGauge(comparison.idealGas) };
    },
  );

  fieldCheck("FP-032", "4.15 MPa gauge from 20 to 30 °C", span, { abs: 0.0005 }, { real: 4.30978 }, () => ({
    real: inMegapascalGauge(held([4.15, 20], [4.15, 30], 3600).expectedPressure),
  }));

  fieldCheck(
    "FP-033",
    "slope at 4.15 MPa gauge and 20 °C",
    span,
    { rel: 0.003 },
    { real: 0.015988, ideal: 0.0145022 },
    () => {
      const { slope } = held([4.15, 20], [4.15, 20], 3600);
      const { idealGas } = held([4.15, 20], [4.15, 21], 3600).comparison;
      return { real: slope / 1e6, ideal: inMegapascalGauge(idealGas) - 4.15 };
    },
  );

  fieldCheck(
    "FP-034",
    "3.8 MPa gauge from 27 to 20 °C",
    `${span}; the rule of 0.01 MPa per °C: printed installation manual of a split unit`,
    { abs: 0.0005 },
    { real: 3.700916, rule: 3.73 },
    () => {
      const { expectedPressure, comparison } = held([3.8, 27], [3.73, 20], 3600);
      return { real: inMegapascalGauge(expectedPressure), rule: inMegapascalGauge(comparison.printedRule) };
    },
  );
});

describe("leak rates", () => {
  const M = { r32: refrigerantFrom(r32).molarMass, r134a: refrigerantFrom(r134a).molarMass };

  fieldCheck("FP-035", "5 g of R-32 a year", computed, { rel: 1e-4 }, { throughput: 7.42312e-6 }, () => ({
    throughput: leakThroughput(massFlowOfLoss(gram(5)), M.r32, celsius(20)),
  }));

  fieldCheck("FP-036", "1 g of R-134a a year", computed, { rel: 1e-4 }, { throughput: 7.56979e-7 }, () => ({
    throughput: leakThroughput(massFlowOfLoss(gram(1)), M.r134a, celsius(20)),
  }));

  fieldCheck("FP-037", "1e-6 Pa m³/s of R-32", computed, { rel: 1e-4 }, { grams: 0.673571 }, () => ({
    grams: inGram(lossPerYear(leakMassFlow(1e-6, M.r32, celsius(20)))),
  }));

  fieldCheck(
    "FP-038",
    "what 1.5 L, one hour, 10 kPa steps and 0.5 K can show",
    `${computed}, slope rounded to 0.016 MPa/K`,
    { rel: 0.001 },
    { kilopascal: 12.0277, throughput: 0.0100231, grams: 6751.29 },
    () => {
      const { standardUncertainty, leak } = held([4.15, 20], [4.15, 20], 3600, {
        internalVolume: litre(1.5),
      });
      const throughput = leak?.smallestVisible ?? Number.NaN;
      const grams = inGram(lossPerYear(leakMassFlow(throughput, M.r32, celsius(20))));
      return { kilopascal: standardUncertainty / 1000, throughput, grams };
    },
  );

  fieldCheck(
    "FP-039",
    "leak behind a drop in 2 L over a day",
    span,
    { rel: 0.005 },
    { expected: 4.11802, throughput: 0.000423875 },
    () => {
      const { expectedPressure, leak } = held([4.15, 20], [4.1, 18], 86400, { internalVolume: litre(2) });
      return {
        expected: inMegapascalGauge(expectedPressure),
        throughput: leak?.throughput ?? Number.NaN,
      };
    },
  );

  fieldCheck(
    "FP-040",
    "a leak of nitrogen as one of R-32",
    `${computed}; viscosities are inputs`,
    { rel: 0.001 },
    { viscous: 0.169762, molecular: 0.242824 },
    () => {
      const { viscousFactor, molecularFactor } = scaleLeak({
        throughput: 1e-5,
        measured: {
          inside: megapascal(4.15) + 101325,
          outside: 101325,
          viscosity: 17.57e-6,
          molarMass: nitrogen.molarMass,
        },
        wanted: { inside: 1474600, outside: 101325, viscosity: 12.4e-6, molarMass: M.r32 },
      });
      return { viscous: viscousFactor, molecular: molecularFactor };
    },
  );

  fieldCheck(
    "FP-041",
    "one bubble of 1 mm in 10 s",
    `${computed}: volume of a sphere`,
    { rel: 1e-4 },
    { throughput: 5.30536e-6 },
    () => ({ throughput: bubbleThroughput(millimetre(1), second(10), 101325) }),
  );
});

describe("pressures and energy", () => {
  fieldCheck(
    "FP-042",
    "test pressures of PS 4.15 MPa",
    "factors of EN 378-2, recalled",
    { rel: 1e-9 },
    { assembled: 4.565, parts: 5.9345 },
    () => {
      const { assembledSystem, separateParts } = testPressures(megapascalGauge(4.15));
      return { assembled: inMegapascalGauge(assembledSystem), parts: inMegapascalGauge(separateParts) };
    },
  );

  fieldCheck(
    "FP-043",
    "2 L at 4.15 MPa gauge",
    "Brode (1955), recalled",
    { rel: 1e-6 },
    { kilojoule: 20.75 },
    () => ({
      kilojoule:
        storedGasEnergy({ pressure: megapascalGauge(4.15), volume: litre(2), heatCapacityRatio: 1.4 }) / 1000,
    }),
  );
});
