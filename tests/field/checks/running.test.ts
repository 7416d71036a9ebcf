import { describe } from "vitest";
import {
  type LineReading,
  liquidColumnLoss,
  superheat,
  type TargetSuperheatQuestion,
  targetSuperheat,
} from "../../../src/field/index.js";
import { refrigerant } from "../../../src/state/index.js";
import {
  celsius,
  fahrenheit,
  inCelsius,
  inFahrenheitDifference,
  inKilopascal,
  inKilopascalDifference,
  megapascalGauge,
  pressureAtAltitude,
} from "../../../src/units/index.js";
import { fieldCheck } from "../../support/field-check.js";

const anotherImplementation =
  "computed for this check from the same equation of state, another implementation";

const suction: LineReading = {
  refrigerant: refrigerant("R-32"),
  mode: "cooling",
  port: "gas-line",
  pressure: megapascalGauge(0.8),
  lineTemperature: celsius(10),
  atmosphere: { pressure: 101325, standardUncertainty: 0, because: "sea level, stated" },
  gauge: { accuracy: { kind: "half-width", halfWidth: 1e4 } },
  thermometer: { accuracy: { kind: "half-width", halfWidth: 1 } },
};

describe("check values: superheat and saturation", () => {
  fieldCheck(
    "FP-021",
    "R-32, 0.8 MPa gauge at sea level, pipe at 10 °C",
    anotherImplementation,
    { abs: 0.1 },
    { dewPoint: 3.25631, superheat: 6.74369 },
    () => {
      const { saturationTemperature, value } = superheat(suction);
      return { dewPoint: inCelsius(saturationTemperature), superheat: value };
    },
  );

  fieldCheck(
    "FP-022",
    "the same at 2000 m geopotential, and what sea level would get wrong",
    anotherImplementation,
    { abs: 0.1 },
    { dewPoint: 2.473877, error: 0.7824333 },
    () => {
      const atmosphere = { ...suction.atmosphere, pressure: pressureAtAltitude(2000) };
      const { saturationTemperature, value } = superheat({ ...suction, atmosphere });
      return { dewPoint: inCelsius(saturationTemperature), error: value - superheat(suction).value };
    },
  );

  fieldCheck(
    "FP-023",
    "R-410A at 25 °C, kPa",
    "computed for this check from a mixture model of the same form, another implementation",
    { rel: 0.002 },
    { bubble: 1657.25, dew: 1652.14 },
    () => {
      const r410a = refrigerant("R-410A");
      const temperature = celsius(25);
      return {
        bubble: inKilopascal(r410a.bubble({ temperature }).pressure),
        dew: inKilopascal(r410a.dew({ temperature }).pressure),
      };
    },
  );
});

const thermometer = { accuracy: { kind: "half-width", halfWidth: 0.5 } } as const;
const orifice: Omit<TargetSuperheatQuestion, "returnAirWetBulb" | "outdoorDryBulb"> = {
  meteringDevice: "fixed-orifice",
  mode: "cooling",
  wetBulbThermometer: thermometer,
  dryBulbThermometer: thermometer,
};

describe("check values: target superheat", () => {
  fieldCheck(
    "FP-024",
    "wet bulb 64 °F, dry bulb 96 °F",
    "common practice formula",
    { abs: 1e-6 },
    { fahrenheit: 8, kelvin: 4.444444 },
    () => {
      const { target = Number.NaN } = targetSuperheat({
        ...orifice,
        returnAirWetBulb: fahrenheit(64),
        outdoorDryBulb: fahrenheit(96),
      });
      return { fahrenheit: inFahrenheitDifference(target), kelvin: target };
    },
  );

  fieldCheck(
    "FP-025",
    "wet bulb 19 °C, dry bulb 35 °C",
    "common practice formula, rewritten for °C",
    { abs: 1e-6 },
    { kelvin: 6.555556 },
    () => ({
      kelvin:
        targetSuperheat({ ...orifice, returnAirWetBulb: celsius(19), outdoorDryBulb: celsius(35) }).target ??
        Number.NaN,
    }),
  );

  fieldCheck(
    "FP-026",
    "wet bulb 60 °F, dry bulb 100 °F: below 5 °F, not to be offered",
    "common practice formula",
    { raw: { abs: 1e-6 }, state: "exact", target: "exact" },
    { raw: 0, state: "below-usable-range", target: "undefined" },
    () => {
      const { raw, state, target } = targetSuperheat({
        ...orifice,
        returnAirWetBulb: fahrenheit(60),
        outdoorDryBulb: fahrenheit(100),
      });
      return { raw: inFahrenheitDifference(raw), state, target: String(target) };
    },
  );
});

describe("check values: liquid column", () => {
  fieldCheck(
    "FP-027",
    "5 m of liquid of 893.04 kg/m3 on a curve of 16.55 K/MPa",
    "computed",
    { rel: 1e-4 },
    { kilopascal: 43.7887, kelvin: 0.724702 },
    () => {
      const column = { density: 893.04, rise: 5, friction: 0, slope: 16.55e-6 };
      const { pressureDrop, subcoolingLoss } = liquidColumnLoss(column);
      return { kilopascal: inKilopascalDifference(pressureDrop), kelvin: subcoolingLoss };
    },
  );
});
