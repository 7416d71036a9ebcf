import type { Warning } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type Density,
  type GaugePressure,
  InputCheck,
  type LocalAtmosphere,
  type Mass,
  type Outcome,
  type Pressure,
  requireObject,
  type Temperature,
  toGauge,
  type Volume,
} from "../../units/index.js";
import { halfWidthUncertainty, type Thermometer, thermometerUncertainty } from "../measurement/instrument.js";
import { checkThermometer } from "../measurement/instrument-checks.js";
import { mixtureModelInput } from "../measurement/mixture-model.js";
import { shown, shownCelsius, shownKilopascal } from "../measurement/shown.js";
import { checkAtmosphere } from "../measurement/site.js";
import { combineUncertainties, type UncertainInput, type Uncertainty } from "../measurement/uncertainty.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { saturationSlope } from "../running/saturation-slope.js";

/** What is known about the refrigerant in a system at rest. */
export type SystemContents =
  | {
      /** Somebody knows that there is liquid, but not how much. */
      readonly kind: "liquid-present";
    }
  | {
      /** Charge and internal volume are known; whether there is liquid follows from them. */
      readonly kind: "charge";
      /** Refrigerant in the system, kg. */
      readonly charge: Mass;
      /** Internal volume of the whole system, m3. */
      readonly internalVolume: Volume;
    };

/** A system that has been off long enough for all its parts to have one temperature. */
export interface StandingSystem {
  /** Refrigerant in the system. */
  readonly refrigerant: Refrigerant;
  /** Temperature of all parts, K. */
  readonly temperature: Temperature;
  /** Thermometer used. */
  readonly thermometer: Thermometer;
  /** Air pressure of the site. */
  readonly atmosphere: LocalAtmosphere;
  /** What is known about its contents. */
  readonly contents: SystemContents;
}

/** Codes of the warnings of a standing pressure. */
export type StandingWarningCode = "vapour-only" | "liquid-full" | "composition-spread";

/** Expected standing pressure; the uncertainty is that of the gauge pressure, Pa. */
export interface StandingPressureResult extends Uncertainty {
  /** Liquid and vapour, vapour alone (also above the critical temperature), or no room left for vapour. */
  readonly state: "liquid-present" | "vapour-only" | "liquid-full";
  /** Absolute pressure, Pa. */
  readonly pressure: Pressure;
  /** What a gauge at the site should show, Pa gauge. */
  readonly gaugePressure: GaugePressure;
  /** Charge over volume, kg/m3, when both are known. */
  readonly density: Density | undefined;
  /** Density of saturated vapour at the temperature, kg/m3; above it there is liquid. Undefined above critical. */
  readonly saturatedVapourDensity: Density | undefined;
  /** Rise of pressure with temperature, Pa/K. */
  readonly slope: number;
  /** What is odd. */
  readonly warnings: readonly Warning<StandingWarningCode>[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Pressure that a gauge should show on a system at rest.
 *
 * With liquid inside it is the saturation pressure, whatever the amount; without, the vapour fills the volume and
 * p = p(T, m/V). Liquid is present when m/V exceeds the density of saturated vapour. Of a blend whose amount is not
 * known, the pressure lies between dew and bubble pressure: the middle is given and the spread counts as uncertainty.
 *
 * @param system - Refrigerant, temperature (K), contents and site.
 * @returns Pressures in Pa with expanded uncertainty (k = 2) from temperature and air pressure; of a blend also from the
 * stated deviation of its mixture model.
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @throws {@link OutOfRangeError} `out-of-range` beyond the equation of state; also for `liquid-present` above the
 * critical temperature.
 * @source saturation and p(T, ρ) from the equation of state; JCGM 100:2008 (GUM) for the uncertainty
 *
 * @example
 * ```ts
 * standingPressure({
 *   refrigerant: refrigerant("R-32"),
 *   temperature: celsius(25),
 *   thermometer: { accuracy: { kind: "half-width", halfWidth: kelvinDifference(1) } },
 *   atmosphere: localAtmosphere({ from: "altitude", altitude: 0 }),
 *   contents: { kind: "liquid-present" },
 * }).gaugePressure; // → 1.588e6 Pa
 * ```
 */
export function standingPressure(system: StandingSystem): StandingPressureResult {
  examine(system);
  const { temperature, thermometer, atmosphere, refrigerant } = system;
  const rest = restOf(system);
  const ofThermometer = thermometerUncertainty(thermometer);
  const inputs: UncertainInput[] = [
    {
      input: "thermometer",
      standardUncertainty: ofThermometer.standardUncertainty,
      unit: "K",
      sensitivity: rest.slope,
      because: ofThermometer.because,
    },
    {
      input: "atmosphere",
      standardUncertainty: atmosphere.standardUncertainty,
      unit: "Pa",
      sensitivity: -1,
      because: atmosphere.because,
    },
  ];
  if (rest.spread > 0) {
    inputs.push({
      input: "vapour-fraction",
      standardUncertainty: halfWidthUncertainty(rest.spread),
      unit: "Pa",
      sensitivity: 1,
      because: `between dew and bubble pressure, ± ${shown(rest.spread)} Pa`,
    });
  }
  const { mixing } = refrigerant;
  if (rest.state === "liquid-present" && mixing !== undefined) {
    inputs.push(mixtureModelInput(refrigerant, mixing, rest.pressure, 1));
  }
  const uncertainty = combineUncertainties(inputs);
  const gaugePressure = toGauge(rest.pressure, atmosphere.pressure);
  const density = rest.density === undefined ? "" : ` (${shown(rest.density)} kg/m3 in the system)`;
  return {
    ...uncertainty,
    state: rest.state,
    pressure: rest.pressure,
    gaugePressure,
    density: rest.density,
    saturatedVapourDensity: rest.saturatedVapourDensity,
    slope: rest.slope,
    warnings: warningsOf(rest),
    assumptions: [
      "The system has been off long enough for all parts to have the one temperature.",
      "There is no other gas in it.",
      ...(system.contents.kind === "charge" ? ["Charge and internal volume are taken as exact."] : []),
    ],
    because:
      `${refrigerant.designation} at ${shownCelsius(temperature)}, ${rest.state}${density}: ` +
      `${shownKilopascal(rest.pressure)} absolute, ${shownKilopascal(gaugePressure)} ± ` +
      `${shownKilopascal(uncertainty.expandedUncertainty)} gauge (k = 2)`,
  };
}

/** As {@link standingPressure}, without throwing. */
export function tryStandingPressure(system: StandingSystem): Outcome<StandingPressureResult> {
  return attempt(() => standingPressure(system));
}

interface Rest {
  readonly state: StandingPressureResult["state"];
  readonly pressure: Pressure;
  /** Rise with temperature, Pa/K. */
  readonly slope: number;
  /** Half-width from not knowing how much of a blend is vapour, Pa. */
  readonly spread: number;
  readonly density: Density | undefined;
  readonly saturatedVapourDensity: Density | undefined;
}

function restOf({ refrigerant, temperature, contents }: StandingSystem): Rest {
  if (contents.kind === "liquid-present") {
    const dew = refrigerant.dew({ temperature });
    const bubble = refrigerant.bubble({ temperature });
    return {
      state: "liquid-present",
      pressure: (dew.pressure + bubble.pressure) / 2,
      slope:
        (1 / saturationSlope(refrigerant, "dew", dew.pressure).slope +
          1 / saturationSlope(refrigerant, "bubble", bubble.pressure).slope) /
        2,
      spread: Math.abs(bubble.pressure - dew.pressure) / 2,
      density: undefined,
      saturatedVapourDensity: dew.vapour.density,
    };
  }
  const density = contents.charge / contents.internalVolume;
  const dew = refrigerant.tryDew({ temperature });
  const state = refrigerant.state({ temperature, density });
  const known = {
    pressure: state.pressure,
    spread: 0,
    density,
    saturatedVapourDensity: dew.ok ? dew.value.vapour.density : undefined,
  };
  if (state.phase === "two-phase") {
    return { ...known, state: "liquid-present", slope: heatingSlope(refrigerant, temperature, density) };
  }
  return {
    ...known,
    state: state.phase === "liquid" ? "liquid-full" : "vapour-only",
    // (∂p/∂T) at constant density is α/κ_T.
    slope: state.thermalExpansion / state.isothermalCompressibility,
  };
}

/** Step of the central difference, K: far above the noise of the solver, far below where curvature shows. */
const STEP = 0.01;

/** dp/dT of two phases in a closed volume, Pa/K: for a blend the amount of vapour shifts, so no saturation curve has it. */
function heatingSlope(refrigerant: Refrigerant, temperature: Temperature, density: Density): number {
  const at = (T: Temperature): Pressure => refrigerant.state({ temperature: T, density }).pressure;
  return (at(temperature + STEP) - at(temperature - STEP)) / (2 * STEP);
}

function warningsOf(rest: Rest): Warning<StandingWarningCode>[] {
  if (rest.state === "vapour-only") {
    return [
      {
        code: "vapour-only",
        message:
          "no liquid at this temperature: the pressure follows the amount, and no saturation table applies",
      },
    ];
  }
  if (rest.state === "liquid-full") {
    return [
      {
        code: "liquid-full",
        message: "liquid fills the volume: any warming raises the pressure steeply; check charge and volume",
      },
    ];
  }
  return rest.spread > 0
    ? [
        {
          code: "composition-spread",
          message: `a blend of unknown amount stands between dew and bubble pressure, ± ${shownKilopascal(rest.spread)}`,
        },
      ]
    : [];
}

function examine(system: StandingSystem): void {
  requireObject("", system, "a system at rest");
  const check = new InputCheck();
  const { refrigerant, contents } = system;
  checkRefrigerant(check, "refrigerant", refrigerant);
  check.positive("temperature", system.temperature);
  checkThermometer(check, "thermometer", system.thermometer);
  checkAtmosphere(check, "atmosphere", system.atmosphere);
  if (
    check.oneOf("contents.kind", contents?.kind, ["liquid-present", "charge"]) &&
    contents.kind === "charge"
  ) {
    check.positive("contents.charge", contents.charge);
    check.positive("contents.internalVolume", contents.internalVolume);
  }
  check.finish();
}
