import { describe } from "vitest";
import {
  airAt20Celsius,
  effectivePumpingSpeed,
  evacuationTimeAtConstantSpeed,
  evacuationTimeThroughHose,
  type HoseEvacuation,
  hoseConductance,
  iceSublimationPressure,
  multipleEvacuation,
  pumpThroughHose,
  riseAsLeak,
  riseTest,
  waterBoilingTemperature,
  waterSaturationPressure,
  waterSaturationTemperature,
  waterVapourPressure,
  waterVapourVolume,
} from "../../../src/field/index.js";
import {
  celsius,
  gram,
  inCelsius,
  inGram,
  inLitre,
  inLitrePerSecond,
  litre,
  litrePerSecond,
  micron,
  micronDifference,
  millimetre,
  pascal,
  year,
} from "../../../src/units/index.js";
import { fieldCheck } from "../../support/field-check.js";
import { olderWaterSaturationPressure } from "../evacuation/older-water-curve.js";

const anotherIapws = "another implementation of IAPWS R7-97(2012) and R14-08(2011)";
const arithmetic = "computed for this check from the formulas, by another hand";
const ownThresholds = "our own thresholds, worked through by another hand";

describe("water", () => {
  fieldCheck(
    "FP-044",
    "saturation pressure at 20 °C",
    anotherIapws,
    { rel: 1e-6 },
    { pressure: 2339.2148 },
    () => ({
      pressure: waterSaturationPressure(celsius(20)),
    }),
  );
  fieldCheck(
    "FP-045",
    "saturation pressure at 30 °C",
    anotherIapws,
    { rel: 1e-6 },
    { pressure: 4246.6883 },
    () => ({
      pressure: waterSaturationPressure(celsius(30)),
    }),
  );
  fieldCheck(
    "FP-046",
    "saturation pressure at 300 K",
    "IAPWS R7-97(2012) table 35",
    { rel: 1e-8 },
    { pressure: 3536.589413 },
    () => ({ pressure: waterSaturationPressure(300) }),
  );
  fieldCheck(
    "FP-047",
    "boiling temperature at 0.1 MPa",
    "IAPWS R7-97(2012) table 36",
    { rel: 1e-8 },
    { temperature: 372.7559186 },
    () => ({ temperature: waterSaturationTemperature(1e5) }),
  );
  fieldCheck(
    "FP-048",
    "sublimation pressure at 230 K",
    "IAPWS R14-08(2011), check value",
    { rel: 1e-5 },
    { pressure: 8.947353 },
    () => ({ pressure: iceSublimationPressure(230) }),
  );
  fieldCheck(
    "FP-049",
    "sublimation pressure at −20 °C",
    anotherIapws,
    { rel: 1e-6 },
    { pressure: 103.23903 },
    () => ({
      pressure: iceSublimationPressure(celsius(-20)),
    }),
  );
  fieldCheck(
    "FP-050",
    "water leaves above, at 500 micron",
    anotherIapws,
    { abs: 0.005 },
    { temperature: -24.47679 },
    () => ({ temperature: inCelsius(waterBoilingTemperature(micron(500))) }),
  );
  fieldCheck(
    "FP-051",
    "water leaves above, at 1500 micron",
    anotherIapws,
    { abs: 0.005 },
    { temperature: -12.91748 },
    () => ({ temperature: inCelsius(waterBoilingTemperature(micron(1500))) }),
  );
  fieldCheck(
    "FP-052",
    "water leaves above, at 5000 micron",
    anotherIapws,
    { abs: 0.005 },
    { temperature: 1.199815 },
    () => ({ temperature: inCelsius(waterBoilingTemperature(micron(5000))) }),
  );
  fieldCheck(
    "FP-053",
    "water leaves above, at 270 Pa",
    anotherIapws,
    { abs: 0.005 },
    { temperature: -9.568766 },
    () => ({ temperature: inCelsius(waterBoilingTemperature(pascal(270))) }),
  );
  fieldCheck(
    "FP-054",
    "saturation pressure at 20 °C by the older release, and ours beside it",
    "IAPWS SR1-86(1992), from memory",
    // The two equations are 9e-6 apart here.
    { older: { rel: 1e-6 }, ours: { rel: 1e-5 } },
    { older: 2339.1937, ours: 2339.1937 },
    () => ({ older: olderWaterSaturationPressure(celsius(20)), ours: waterSaturationPressure(celsius(20)) }),
  );
  fieldCheck(
    "FP-065",
    "volume of 1 g of vapour at 20 °C",
    arithmetic,
    { rel: 1e-4 },
    { litres: 57.838 },
    () => ({
      litres: inLitre(waterVapourVolume(gram(1), waterVapourPressure(celsius(20)), celsius(20))),
    }),
  );
});

describe("hose and pump", () => {
  const air = airAt20Celsius();
  const element = { innerDiameter: millimetre(4.8), length: 1.5 };
  const evacuation: HoseEvacuation = {
    internalVolume: litre(5),
    startPressure: 101325,
    targetPressure: 66.66,
    hose: [element],
    gas: air,
    pumpingSpeed: litrePerSecond(1.416),
    ultimatePressure: 0,
  };

  fieldCheck(
    "FP-055",
    "conductance of 1.5 m of 4.8 mm at 66.66 Pa",
    arithmetic,
    { rel: 1e-3 },
    { viscous: 0.0318132, molecular: 0.00893508, sum: 0.0407483 },
    () => {
      const { viscous, molecular, conductance } = hoseConductance({ element, gas: air, meanPressure: 66.66 });
      return {
        viscous: inLitrePerSecond(viscous),
        molecular: inLitrePerSecond(molecular),
        sum: inLitrePerSecond(conductance),
      };
    },
  );
  fieldCheck("FP-056", "pump behind a conductance", arithmetic, { rel: 1e-4 }, { speed: 0.0396085 }, () => ({
    speed: inLitrePerSecond(effectivePumpingSpeed(litrePerSecond(1.416), litrePerSecond(0.0407483))),
  }));
  fieldCheck(
    "FP-057",
    "pump behind a hose at 66.66 Pa",
    arithmetic,
    { rel: 1e-3 },
    { speed: 0.0246811, inlet: 1.16189 },
    () => {
      const { effectiveSpeed, pumpInletPressure } = pumpThroughHose({ ...evacuation, systemPressure: 66.66 });
      return { speed: inLitrePerSecond(effectiveSpeed), inlet: pumpInletPressure };
    },
  );

  const constant = { ...evacuation, effectiveSpeed: litrePerSecond(0.05) };
  fieldCheck("FP-058", "time at a constant speed", arithmetic, { rel: 1e-4 }, { time: 732.648 }, () => ({
    time: evacuationTimeAtConstantSpeed(constant).time!,
  }));
  fieldCheck(
    "FP-059",
    "time at a constant speed with an ultimate pressure of 13.33 Pa",
    arithmetic,
    { rel: 1e-4 },
    { time: 754.946 },
    () => ({ time: evacuationTimeAtConstantSpeed({ ...constant, ultimatePressure: 13.33 }).time! }),
  );
  fieldCheck("FP-060", "time through 1.5 m of 4.8 mm", arithmetic, { rel: 5e-3 }, { time: 262.241 }, () => ({
    time: evacuationTimeThroughHose(evacuation).time!,
  }));
  fieldCheck("FP-061", "time through 1.5 m of 9.5 mm", arithmetic, { rel: 5e-3 }, { time: 39.1124 }, () => ({
    time: evacuationTimeThroughHose({
      ...evacuation,
      hose: [{ innerDiameter: millimetre(9.5), length: 1.5 }],
    }).time!,
  }));
  fieldCheck(
    "FP-062",
    "air left by a triple evacuation",
    arithmetic,
    { rel: 1e-4 },
    { air: 0.00025966 },
    () => ({
      air: multipleEvacuation({ pulls: [199.98, 199.98, 66.66], breaks: [101325, 101325] }).residualAir,
    }),
  );
});

/** A rise test of the check values: 15 °C at the coldest, 25 °C at the warmest part. */
const riseOf = (samples: readonly { time: number; pressure: number }[], volume?: number) =>
  riseTest({
    samples,
    gauge: { accuracy: { kind: "percent-of-reading", percent: 10 } },
    repeatability: 0.5,
    startMaximum: 66.7,
    settlingTime: 60,
    coldestTemperature: celsius(15),
    warmestTemperature: celsius(25),
    ...(volume === undefined ? {} : { internalVolume: volume }),
  });

describe("rise", () => {
  fieldCheck(
    "FP-063",
    "throughput of a rise in 2 L",
    arithmetic,
    { rel: 1e-4 },
    { throughput: 0.0002222 },
    () => ({
      throughput: riseOf(
        [
          { time: 0, pressure: 66.66 },
          { time: 600, pressure: 133.32 },
        ],
        litre(2),
      ).throughput!,
    }),
  );
  fieldCheck(
    "FP-064",
    "the rise that a standard allows, as one viscous leak of R-32 a year",
    arithmetic,
    { rel: 1e-3 },
    { throughput: 0.000333306, factor: 309.392, grams: 69460.2 },
    () => {
      const { throughput, scaled, viscousMassFlow } = riseAsLeak({
        internalVolume: litre(1.5),
        rise: micronDifference(1000),
        duration: 600,
        airPressure: 101325,
        air: airAt20Celsius(),
        refrigerant: { pressure: 1474.6e3, viscosity: 12.4e-6, molarMass: 0.052024 },
      });
      return { throughput, factor: scaled.viscousFactor, grams: inGram(viscousMassFlow * year(1)) };
    },
  );

  /** The state that readings of each minute lead to. */
  const stateOf = (pressures: readonly number[]) =>
    riseOf(pressures.map((pressure, minute) => ({ time: 60 * minute, pressure }))).state;
  fieldCheck("FP-066", "a straight rise", ownThresholds, "exact", { state: "leak-suspected" }, () => ({
    state: stateOf([55, 73, 91, 109, 127, 145, 163, 181, 199, 217, 235]),
  }));
  fieldCheck("FP-067", "levelling near saturation", ownThresholds, "exact", { state: "free-water" }, () => ({
    state: stateOf([60, 474.8, 745, 921, 1035.7, 1110.4, 1159.1, 1190.8, 1211.4, 1224.9, 1233.6]),
  }));
  fieldCheck("FP-068", "noise alone", ownThresholds, "exact", { state: "tight-dry" }, () => ({
    state: stateOf([58, 57.8, 58.3, 57.5, 58.6, 57.4, 58.6, 57.5, 58.4, 57.8, 58]),
  }));
  fieldCheck("FP-069", "between the patterns", ownThresholds, "exact", { state: "inconclusive" }, () => ({
    state: stateOf([60, 139.9, 212.3, 277.7, 336.9, 390.5, 439, 482.9, 522.6, 558.5, 591]),
  }));
  fieldCheck(
    "FP-070",
    "above all that water can do",
    ownThresholds,
    "exact",
    { state: "leak-or-gas" },
    () => ({
      state: stateOf([60, 540, 1020, 1500, 1980, 2460, 2940, 3420, 3900, 4380, 4860]),
    }),
  );
});
