import { waterVapourPressure } from "../evacuation/water-vapour.js";
import { halfWidthUncertainty, thermometerUncertainty } from "../measurement/instrument.js";
import { shown } from "../measurement/shown.js";
import type { UncertainInput } from "../measurement/uncertainty.js";
import type { AirReading, AirSideReadings } from "./air-readings.js";
import {
  humidityRatioFromVapour,
  humidityRatioFromWetBulb,
  isIceBulb,
  moistEnthalpy,
  moistHeatCapacity,
  moistVolume,
} from "./psychrometrics.js";

/** What was read, as plain numbers; of humidity the wet bulb (K) or the relative humidity. */
export interface AirValues {
  readonly volumeFlow: number;
  readonly returnDryBulb: number;
  readonly returnHumidity: number;
  readonly supplyDryBulb: number;
  readonly supplyHumidity: number;
  readonly pressure: number;
}

/** Capacities in W, of either mode above 0; flows in kg/s. */
export interface AirFigures {
  readonly dryAirFlow: number;
  readonly returnRatio: number;
  readonly total: number;
  readonly sensible: number;
  readonly latent: number;
  readonly condensate: number;
}

/** The figures that a result carries with their uncertainty. */
export type FigureName = "total" | "sensible" | "latent" | "condensate";

/** The readings as numbers. */
export function valuesOf({ flow, returnAir, supplyAir, atmosphere }: AirSideReadings): AirValues {
  return {
    volumeFlow: flow.volumeFlow,
    returnDryBulb: returnAir.dryBulb,
    returnHumidity: returnAir.wetBulb ?? returnAir.relativeHumidity!,
    supplyDryBulb: supplyAir.dryBulb,
    // Of heating there is none; nothing asks for it then.
    supplyHumidity: supplyAir.wetBulb ?? supplyAir.relativeHumidity ?? 0,
    pressure: atmosphere.pressure,
  };
}

/** All figures at given values, which may lie a step beside what was read. */
export function figures({ mode, flow, returnAir, supplyAir }: AirSideReadings, at: AirValues): AirFigures {
  const ratio = (air: AirReading, dryBulb: number, humidity: number): number =>
    air.wetBulb === undefined
      ? humidityRatioFromVapour(humidity * waterVapourPressure(dryBulb), at.pressure)
      : humidityRatioFromWetBulb(dryBulb, humidity, at.pressure, isIceBulb(air.wetBulb));
  const returnRatio = ratio(returnAir, at.returnDryBulb, at.returnHumidity);
  const supplyRatio =
    mode === "heating" ? returnRatio : ratio(supplyAir, at.supplyDryBulb, at.supplyHumidity);
  const volume =
    flow.measuredAt === "supply"
      ? moistVolume(at.supplyDryBulb, supplyRatio, at.pressure)
      : moistVolume(at.returnDryBulb, returnRatio, at.pressure);
  const dryAirFlow = at.volumeFlow / volume;
  const sign = mode === "cooling" ? 1 : -1;
  const total =
    sign *
    dryAirFlow *
    (moistEnthalpy(at.returnDryBulb, returnRatio) - moistEnthalpy(at.supplyDryBulb, supplyRatio));
  const sensible = sign * dryAirFlow * moistHeatCapacity(supplyRatio) * (at.returnDryBulb - at.supplyDryBulb);
  return {
    dryAirFlow,
    returnRatio,
    total,
    sensible,
    latent: total - sensible,
    condensate: dryAirFlow * (returnRatio - supplyRatio),
  };
}

/** An input with the step that its sensitivity is taken by. */
export type SteppedInput = Omit<UncertainInput, "sensitivity"> & {
  readonly key: keyof AirValues;
  /** Step of the central difference: small beside what curves, large beside rounding. */
  readonly step: number;
};

/** What is not sure, with the half-widths of the instruments. */
export function inputsOf(readings: AirSideReadings): SteppedInput[] {
  const { mode, flow, returnAir, supplyAir, atmosphere, thermometer, hygrometer } = readings;
  const { standardUncertainty, because } = thermometerUncertainty(thermometer);
  const bulb = (input: string, key: keyof AirValues): SteppedInput => ({
    input,
    key,
    standardUncertainty,
    unit: "K",
    step: 0.01,
    because,
  });
  const humidity = (input: string, key: keyof AirValues, air: AirReading): SteppedInput =>
    air.wetBulb !== undefined
      ? bulb(input, key)
      : {
          input,
          key,
          // Checked: a relative humidity comes with its hygrometer.
          standardUncertainty: halfWidthUncertainty(hygrometer!.halfWidth),
          unit: "1",
          step: 1e-4,
          because: `relative humidity ± ${shown(100 * hygrometer!.halfWidth)} %`,
        };
  return [
    {
      input: "air-flow",
      key: "volumeFlow",
      standardUncertainty: halfWidthUncertainty(flow.halfWidthFraction * flow.volumeFlow),
      unit: "m3/s",
      step: 1e-4 * flow.volumeFlow,
      because: `flow ± ${shown(100 * flow.halfWidthFraction)} %, measured in the ${flow.measuredAt}`,
    },
    bulb("return-dry-bulb", "returnDryBulb"),
    humidity("return-humidity", "returnHumidity", returnAir),
    bulb("supply-dry-bulb", "supplyDryBulb"),
    ...(mode === "cooling" ? [humidity("supply-humidity", "supplyHumidity", supplyAir)] : []),
    {
      input: "atmosphere",
      key: "pressure",
      standardUncertainty: atmosphere.standardUncertainty,
      unit: "Pa",
      step: 10,
      because: atmosphere.because,
    },
  ];
}
