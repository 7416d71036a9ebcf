import data from "../../../data/field/air.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import { attempt, InputError, type Outcome, type Power, type Pressure } from "../../units/index.js";
import { waterVapourPressure } from "../evacuation/water-vapour.js";
import { shown, shownCelsius, shownWithUncertainty } from "../measurement/shown.js";
import { combineUncertainties, type Uncertainty } from "../measurement/uncertainty.js";
import type { OperatingMode } from "../running/line-reading.js";
import { requireDryBulb } from "./air-checks.js";
import { type AirReading, type AirSideReadings, checkAirSideReadings } from "./air-readings.js";
import { type FigureName, figures, inputsOf, valuesOf } from "./air-side-figures.js";
import { type MoistAir, moistAir } from "./moist-air.js";
import { humidityRatioFromVapour, moistHeatCapacity } from "./psychrometrics.js";

/** Something measured on the air side, with its uncertainty in the same unit. */
export interface AirSideQuantity extends Uncertainty {
  /** W; of the condensate kg/s. */
  readonly value: number;
}

/** Codes of the warnings of an air-side capacity. */
export type AirSideWarningCode = "check-probes" | "wrong-direction" | "below-uncertainty";

/** What an indoor unit does to the air. */
export interface AirSideCapacity {
  /** Cooling or heating; the capacity of either counts above 0. */
  readonly mode: OperatingMode;
  /** Total capacity, W: of heating the sensible one, since no water is added. */
  readonly total: AirSideQuantity;
  /** Sensible part, W: what changes the temperature. */
  readonly sensible: AirSideQuantity;
  /** Latent part, W: what takes out water; undefined in heating. */
  readonly latent: AirSideQuantity | undefined;
  /** Water taken out, kg/s; undefined in heating. */
  readonly condensate: AirSideQuantity | undefined;
  /** Sensible over total capacity; undefined where the total is not above 0. */
  readonly sensibleHeatRatio: number | undefined;
  /** Dry air through the unit, kg/s. */
  readonly dryAirFlow: number;
  /** Air that enters. */
  readonly returnAir: MoistAir;
  /** Air that leaves. */
  readonly supplyAir: MoistAir;
  /** The same by quick rules, 1.2 kg/m3 times p/101 325 Pa: to compare, never used for anything else. */
  readonly quickRules: {
    /** 1.2 V̇ Δh, W; in heating as the sensible one. */
    readonly total: Power;
    /** 1.2 · 1.006 V̇ Δt, W. */
    readonly sensible: Power;
  };
  /** What is odd. */
  readonly warnings: readonly Warning<AirSideWarningCode>[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Capacity of an indoor unit from its air: flow of dry air times the change of enthalpy, ṁ = V̇/v, Q = ṁ (h_return −
 * h_supply); sensible at the humidity of the supply; the rest is latent; condensate ṁ (W_return − W_supply). In heating
 * no water is added: Q = ṁ c (t_supply − t_return).
 *
 * The flow is rarely known better than ±10 %, and that is most of what is not sure about the capacity.
 *
 * @param readings - Flow (m3/s) and where it was measured, air states (K), instruments and the air pressure of the site.
 * @returns W and kg/s, each with expanded uncertainty (k = 2) and budget.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws {@link OutOfRangeError} `out-of-range` for air outside −60 to 90 °C.
 * @source ISO 5151:2017, indoor air enthalpy method (recalled); moist air: see {@link moistAir}; quick rules: common
 * practice, no source; JCGM 100:2008 (GUM) for the uncertainty
 *
 * @example
 * ```ts
 * const { total, condensate } = airSideCapacity({
 *   mode: "cooling",
 *   flow: { volumeFlow: cubicMetrePerHour(600), measuredAt: "supply", halfWidthFraction: 0.1 },
 *   returnAir: { dryBulb: celsius(27), wetBulb: celsius(19) },
 *   supplyAir: { dryBulb: celsius(14), wetBulb: celsius(13) },
 *   thermometer: { accuracy: { kind: "half-width", halfWidth: kelvinDifference(0.3) } },
 *   atmosphere: localAtmosphere({ from: "altitude", altitude: 0 }),
 * });
 * total.value; // → 3475 W
 * total.expandedUncertainty; // → 499 W
 * condensate?.value; // → 3.097e-4 kg/s
 * ```
 */
export function airSideCapacity(readings: AirSideReadings): AirSideCapacity {
  checkAirSideReadings(readings);
  requireDryBulb("returnAir.dryBulb", readings.returnAir.dryBulb);
  requireDryBulb("supplyAir.dryBulb", readings.supplyAir.dryBulb);
  const { mode, flow, atmosphere } = readings;
  const at = valuesOf(readings);
  const found = figures(readings, at);
  requireAboveDewPoint(readings, found.returnRatio);
  const { pressure } = atmosphere;
  const returnAir = airOf(readings.returnAir, pressure);
  const supplyAir =
    mode === "heating"
      ? moistAir({ dryBulb: readings.supplyAir.dryBulb, humidityRatio: found.returnRatio, pressure })
      : airOf(readings.supplyAir, pressure);
  const inputs = inputsOf(readings);
  const quantity = (name: FigureName): AirSideQuantity => {
    const parts = inputs.map(({ key, step, ...input }) => {
      const above = figures(readings, { ...at, [key]: at[key] + step })[name];
      const below = figures(readings, { ...at, [key]: at[key] - step })[name];
      return { ...input, sensitivity: (above - below) / (2 * step) };
    });
    return { value: found[name], ...combineUncertainties(parts) };
  };
  const total = quantity("total");
  const condensate = mode === "cooling" ? quantity("condensate") : undefined;
  const mass = data.quickRule.density * (pressure / data.quickRule.seaLevel) * flow.volumeFlow;
  const sign = mode === "cooling" ? 1 : -1;
  const quickSensible = sign * mass * moistHeatCapacity(0) * (at.returnDryBulb - at.supplyDryBulb);
  return {
    mode,
    total,
    sensible: quantity("sensible"),
    latent: mode === "cooling" ? quantity("latent") : undefined,
    condensate,
    sensibleHeatRatio: total.value > 0 ? found.sensible / total.value : undefined,
    dryAirFlow: found.dryAirFlow,
    returnAir,
    supplyAir,
    quickRules: {
      total: mode === "cooling" ? mass * (returnAir.enthalpy - supplyAir.enthalpy) : quickSensible,
      sensible: quickSensible,
    },
    warnings: warningsOf(readings, total, condensate),
    assumptions: [
      ...ASSUMPTIONS,
      ...(mode === "heating" ? ["No water is added or taken out."] : []),
      ...new Set([...returnAir.assumptions, ...supplyAir.assumptions]),
    ],
    because:
      `${shown(found.dryAirFlow)} kg/s of dry air from ${shownCelsius(at.returnDryBulb)} to ` +
      `${shownCelsius(at.supplyDryBulb)}: ${shownWithUncertainty(total.value, total.expandedUncertainty)} W ` +
      `(k = 2) of ${mode}, ${shown(found.sensible)} W of it sensible`,
  };
}

/** As {@link airSideCapacity}, without throwing. */
export function tryAirSideCapacity(readings: AirSideReadings): Outcome<AirSideCapacity> {
  return attempt(() => airSideCapacity(readings));
}

const ASSUMPTIONS = [
  "The unit has run steadily for a while; return and supply are well mixed where they were read.",
  "Wicks were clean, wet and in moving air.",
  "The heat that the condensate carries away and that of the fan count as part of the capacity.",
  "The errors of all readings are independent of each other.",
] as const;

function airOf({ dryBulb, wetBulb, relativeHumidity }: AirReading, pressure: Pressure): MoistAir {
  return wetBulb === undefined
    ? moistAir({ dryBulb, relativeHumidity: relativeHumidity!, pressure })
    : moistAir({ dryBulb, wetBulb, pressure });
}

/** In heating the supply holds the water of the return: air colder than its dew point cannot. */
function requireAboveDewPoint({ mode, supplyAir, atmosphere }: AirSideReadings, returnRatio: number): void {
  if (mode !== "heating") return;
  const most = humidityRatioFromVapour(waterVapourPressure(supplyAir.dryBulb), atmosphere.pressure);
  if (most > 0 && returnRatio > most) {
    const expected = "above the dew point of the return: a unit that heats does not dry the air";
    throw new InputError([{ path: "supplyAir.dryBulb", value: supplyAir.dryBulb, expected }]);
  }
}

function warningsOf(
  { mode, returnAir, supplyAir }: AirSideReadings,
  total: AirSideQuantity,
  condensate: AirSideQuantity | undefined,
): Warning<AirSideWarningCode>[] {
  const warnings: Warning<AirSideWarningCode>[] = [];
  const change = supplyAir.dryBulb - returnAir.dryBulb;
  if (mode === "cooling" ? change >= 0 : change <= 0) {
    warnings.push({
      code: "wrong-direction",
      message: `the supply is ${shown(Math.abs(change))} K ${change < 0 ? "colder" : "warmer"} than the return in ${mode}`,
    });
  }
  if (condensate !== undefined && condensate.value < 0) {
    const isSure = -condensate.value > condensate.expandedUncertainty;
    warnings.push({
      code: "check-probes",
      message:
        "the supply holds more water than the return, which a coil that cools cannot do: " +
        (isSure
          ? "more than the readings can be off; check wicks, hygrometer and places"
          : "no more than the readings can be off, so the coil may be dry; check wicks, hygrometer and places"),
    });
  }
  if (Math.abs(total.value) < total.expandedUncertainty) {
    warnings.push({
      code: "below-uncertainty",
      message: `${shownWithUncertainty(total.value, total.expandedUncertainty)} W says nothing about the capacity`,
    });
  }
  return warnings;
}
