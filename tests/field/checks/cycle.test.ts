import { describe } from "vitest";
import { carnot, cyclePerformance, vapourCompressionCycle } from "../../../src/cycle/index.js";
import { airSideCapacity, moistAir } from "../../../src/field/index.js";
import { r32 } from "../../../src/fluids/r-32.js";
import { r134a } from "../../../src/fluids/r-134a.js";
import { refrigerantFrom } from "../../../src/state/index.js";
import {
  celsius,
  cubicMetrePerHour,
  inCelsius,
  inKilojoulePerKilogram,
  inKilowatt,
  kilojoulePerKilogram,
  kilowatt,
  megapascal,
} from "../../../src/units/index.js";
import { fieldCheck } from "../../support/field-check.js";

const saturated = { superheat: 0, subcooling: 0, isentropicEfficiency: 1 } as const;
const ofR134a = { ...saturated, refrigerant: refrigerantFrom(r134a) };
const otherEquation = "computed for this check from the equation of state, another implementation";
const textbook =
  "Çengel, Y. A., Boles, M. A., Thermodynamics: An Engineering Approach, example 11-1 (recalled)";

describe("cycle", () => {
  fieldCheck(
    "FP-100",
    "capacity, power and COP from three enthalpies and 0.05 kg/s",
    textbook,
    { rel: 1e-4 },
    { coolingKilowatt: 7.1845, powerKilowatt: 1.8115, cop: 3.96605 },
    () => {
      const found = cyclePerformance({
        suction: kilojoulePerKilogram(239.16),
        discharge: kilojoulePerKilogram(275.39),
        liquid: kilojoulePerKilogram(95.47),
        massFlow: 0.05,
      });
      return {
        coolingKilowatt: inKilowatt(found.coolingCapacity!),
        powerKilowatt: inKilowatt(found.compressorPower!),
        cop: found.coolingCop,
      };
    },
  );

  fieldCheck(
    "FP-101",
    "ideal cycle of R-134a from 0.14 to 0.8 MPa",
    `${otherEquation}; ${textbook}`,
    { rel: 0.003 },
    { cooling: 143.675, work: 36.212, cop: 3.9676, dischargeCelsius: 38.977 },
    () => {
      const cycle = vapourCompressionCycle({
        ...ofR134a,
        evaporating: { pressure: megapascal(0.14) },
        condensing: { pressure: megapascal(0.8) },
      });
      return {
        cooling: inKilojoulePerKilogram(cycle.coolingEffect),
        work: inKilojoulePerKilogram(cycle.compressionWork),
        cop: cycle.coolingCop,
        dischargeCelsius: inCelsius(cycle.dischargeTemperature),
      };
    },
  );

  fieldCheck(
    "FP-102",
    "ideal cycle of R-134a from -20 °C to 30 °C, 50 kW",
    `${otherEquation}; ASHRAE Handbook Fundamentals, chapter 2, single-stage example (recalled)`,
    { rel: 0.003 },
    { h1: 386.554, h2: 423.057, h3: 241.722, cop: 3.96773, carnotFraction: 0.783671, massFlow: 0.345228 },
    () => {
      const cycle = vapourCompressionCycle({
        ...ofR134a,
        evaporating: { temperature: celsius(-20) },
        condensing: { temperature: celsius(30) },
        size: { coolingCapacity: kilowatt(50) },
      });
      const { suction, discharge, liquid } = cycle.states;
      return {
        h1: inKilojoulePerKilogram(suction.enthalpy),
        h2: inKilojoulePerKilogram(discharge.enthalpy),
        h3: inKilojoulePerKilogram(liquid.enthalpy),
        cop: cycle.coolingCop,
        carnotFraction: cycle.carnotFraction,
        massFlow: cycle.massFlow!,
      };
    },
  );

  fieldCheck(
    "FP-103",
    "ideal cycle of R-134a from -10 °C to 0.9 MPa, 0.08 kg/s",
    `${otherEquation}; Moran, M. J., Shapiro, H. N., Fundamentals of Engineering Thermodynamics, example 10.2 (recalled)`,
    { rel: 0.01 },
    { powerKilowatt: 2.49839, coolingKilowatt: 11.4308, cop: 4.57527 },
    () => {
      const cycle = vapourCompressionCycle({
        ...ofR134a,
        evaporating: { temperature: celsius(-10) },
        condensing: { pressure: megapascal(0.9) },
        size: { massFlow: 0.08 },
      });
      return {
        powerKilowatt: inKilowatt(cycle.compressorPower!),
        coolingKilowatt: inKilowatt(cycle.coolingCapacity!),
        cop: cycle.coolingCop,
      };
    },
  );

  fieldCheck(
    "FP-104",
    "cycle of R-32 from 7 °C to 45 °C with superheat, subcooling and losses",
    otherEquation,
    { rel: 0.005 },
    {
      lowKilopascal: 1011.5,
      highKilopascal: 2794.78,
      cooling: 247.506,
      work: 59.8213,
      dischargeCelsius: 92.1419,
      cop: 4.13742,
      kilojoulePerCubicMetre: 6583.13,
      carnotFraction: 0.561207,
    },
    () => {
      const cycle = vapourCompressionCycle({
        refrigerant: refrigerantFrom(r32),
        evaporating: { temperature: celsius(7) },
        condensing: { temperature: celsius(45) },
        superheat: 5,
        subcooling: 5,
        isentropicEfficiency: 0.7,
      });
      return {
        lowKilopascal: cycle.evaporating.pressure / 1e3,
        highKilopascal: cycle.condensing.pressure / 1e3,
        cooling: inKilojoulePerKilogram(cycle.coolingEffect),
        work: inKilojoulePerKilogram(cycle.compressionWork),
        dischargeCelsius: inCelsius(cycle.dischargeTemperature),
        cop: cycle.coolingCop,
        kilojoulePerCubicMetre: cycle.volumetricCapacity / 1e3,
        carnotFraction: cycle.carnotFraction,
      };
    },
  );

  fieldCheck(
    "FP-105",
    "Carnot's coefficient between 7 °C and 45 °C",
    "computed from its definition",
    { rel: 1e-6 },
    { cop: 7.3723684 },
    () => ({ cop: carnot({ cold: celsius(7), warm: celsius(45) }).coolingCop }),
  );
});

describe("air side", () => {
  fieldCheck(
    "FP-106",
    "moist air at 27 °C with a wet bulb of 19 °C",
    "computed for this check; ASHRAE Handbook Fundamentals, chapter 1 (recalled)",
    { rel: 0.002 },
    { humidityRatio: 0.0104528, kilojoule: 53.8294, percent: 46.9405 },
    () => {
      const air = moistAir({ dryBulb: celsius(27), wetBulb: celsius(19), pressure: 101325 });
      return {
        humidityRatio: air.humidityRatio,
        kilojoule: inKilojoulePerKilogram(air.enthalpy),
        percent: 100 * air.relativeHumidity,
      };
    },
  );

  fieldCheck(
    "FP-107",
    "capacity of 600 m3/h of supply air, from 27/19 °C to 14/13 °C",
    "computed for this check",
    { rel: 0.003 },
    {
      dryAirFlow: 0.201989,
      totalKilowatt: 3.47536,
      sensibleKilowatt: 2.68517,
      condensateKilogramPerHour: 1.11503,
      quickRuleKilowatt: 3.44115,
    },
    () => {
      const found = airSideCapacity({
        mode: "cooling",
        flow: { volumeFlow: cubicMetrePerHour(600), measuredAt: "supply", halfWidthFraction: 0.1 },
        returnAir: { dryBulb: celsius(27), wetBulb: celsius(19) },
        supplyAir: { dryBulb: celsius(14), wetBulb: celsius(13) },
        thermometer: { accuracy: { kind: "half-width", halfWidth: 0.3 } },
        atmosphere: { pressure: 101325, standardUncertainty: 0, because: "given" },
      });
      return {
        dryAirFlow: found.dryAirFlow,
        totalKilowatt: inKilowatt(found.total.value),
        sensibleKilowatt: inKilowatt(found.sensible.value),
        condensateKilogramPerHour: 3600 * found.condensate!.value,
        quickRuleKilowatt: inKilowatt(found.quickRules.total),
      };
    },
  );
});
