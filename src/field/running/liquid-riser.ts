import type { Warning } from "../../safety/index.js";
import type { Refrigerant } from "../../state/index.js";
import {
  attempt,
  type Density,
  InputCheck,
  InputError,
  type Length,
  type Outcome,
  type Pressure,
  type PressureDifference,
  requireObject,
  type Temperature,
  type TemperatureDifference,
} from "../../units/index.js";
import { decide, type Verdict } from "../measurement/decision.js";
import { halfWidthUncertainty } from "../measurement/instrument.js";
import { shown, shownCelsius, shownKilopascal } from "../measurement/shown.js";
import { COVERAGE_FACTOR, combineUncertainties, type Uncertainty } from "../measurement/uncertainty.js";
import { checkRefrigerant } from "../refrigerant-check.js";
import { saturationSlope } from "./saturation-slope.js";

/** Standard gravity, m/s2. */
const GRAVITY = 9.80665;

/** A column of liquid, with everything stated. */
export interface LiquidColumn {
  /** Density of the liquid, kg/m3. */
  readonly density: Density;
  /** How far the far end lies above the near end, m; negative where the line goes down. */
  readonly rise: Length;
  /** Pressure lost by friction, fittings and drier, Pa, 0 or above. */
  readonly friction: PressureDifference;
  /** Slope dT/dp of the bubble curve, K/Pa; {@link saturationSlope} finds it. */
  readonly slope: number;
}

/** What a column of liquid costs. */
export interface LiquidColumnLoss {
  /** Pressure of the column alone, ρ g Δz, Pa; negative where the line goes down. */
  readonly head: PressureDifference;
  /** Fall of pressure from the near to the far end, with friction, Pa; negative where the far end has more. */
  readonly pressureDrop: PressureDifference;
  /** Subcooling lost on the way, pressure drop times slope, K; negative where it grows. */
  readonly subcoolingLoss: TemperatureDifference;
}

/** Liquid at the near end of a line that goes up or down. */
export interface LiquidRiser {
  /** Refrigerant in the line. */
  readonly refrigerant: Refrigerant;
  /** Pressure at the near end, Pa absolute. */
  readonly pressure: Pressure;
  /** Temperature of the liquid, K. */
  readonly liquidTemperature: Temperature;
  /** Expanded uncertainty (k = 2) of the subcooling at the near end, K: that of {@link subcooling}; 0 for a design. */
  readonly subcoolingUncertainty: TemperatureDifference;
  /** How far the far end lies above the near end, m; negative where the line goes down. */
  readonly rise: Length;
  /** Pressure lost by friction, fittings and drier, Pa, 0 or above. */
  readonly friction: PressureDifference;
  /** Limit of error of that loss, Pa, 0 or above; taken as exact when left out. */
  readonly frictionHalfWidth?: PressureDifference;
}

/** Codes of the warnings of a liquid riser. */
export type RiserWarningCode = "flash-gas-at-inlet" | "flash-gas-expected" | "saturated-within-uncertainty";

/** Liquid at the far end of a line. */
export interface LiquidRiserResult extends Uncertainty {
  /** `pass`: the liquid stays liquid; `fail`: flash gas is to be expected; else too close to tell. */
  readonly verdict: Verdict;
  /** Subcooling left at the far end, K; negative where part of the liquid has boiled. */
  readonly subcooling: TemperatureDifference;
  /** Subcooling at the near end, K. */
  readonly subcoolingAtInlet: TemperatureDifference;
  /** Density of the liquid, kg/m3. */
  readonly density: Density;
  /** Pressure of the column alone, Pa; negative where the line goes down. */
  readonly head: PressureDifference;
  /** Fall of pressure from the near to the far end, Pa. */
  readonly pressureDrop: PressureDifference;
  /** Pressure at the far end, Pa absolute. */
  readonly pressureAtTop: Pressure;
  /** Bubble point at the far end, K. */
  readonly bubbleTemperatureAtTop: Temperature;
  /** What is odd. */
  readonly warnings: readonly Warning<RiserWarningCode>[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The rule and the numbers it rests on. */
  readonly because: string;
}

/**
 * Pressure and subcooling lost in a column of liquid of stated density and slope: Δp = ρ g Δz + Δp_friction and
 * ΔSC = Δp dT/dp. {@link liquidRiser} does the same for a refrigerant along its own bubble curve.
 *
 * @param column - Density (kg/m3), rise (m), friction (Pa) and slope of the bubble curve (K/Pa).
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source hydrostatics; first order in the pressure
 *
 * @example
 * ```ts
 * liquidColumnLoss({ density: 893.04, rise: 5, friction: 0, slope: 16.55e-6 }).pressureDrop; // → 43789 Pa
 * ```
 */
export function liquidColumnLoss(column: LiquidColumn): LiquidColumnLoss {
  requireObject("", column, "a column of liquid");
  const { density, rise, friction, slope } = column;
  const check = new InputCheck();
  check.positive("density", density);
  check.finite("rise", rise);
  check.notNegative("friction", friction);
  check.positive("slope", slope);
  check.finish();
  const head = density * GRAVITY * rise;
  const pressureDrop = head + friction;
  return { head, pressureDrop, subcoolingLoss: pressureDrop * slope };
}

/** As {@link liquidColumnLoss}, without throwing. */
export function tryLiquidColumnLoss(column: LiquidColumn): Outcome<LiquidColumnLoss> {
  return attempt(() => liquidColumnLoss(column));
}

/**
 * Does the liquid arrive as liquid at the far end of a line that goes up or down? Its pressure falls by column and
 * friction, and the subcooling that is left is counted from the bubble point at the pressure that remains.
 *
 * @param riser - State of the liquid at the near end (Pa absolute, K), rise (m) and friction (Pa).
 * @returns Subcooling at the far end in K with expanded uncertainty (k = 2) and a verdict on flash gas.
 * @throws {@link InputError} `malformed-input`, all problems at once; also where nothing is left of the pressure.
 * @throws {@link OutOfRangeError} `out-of-range` where the refrigerant has no bubble point at one of the pressures.
 * @source hydrostatics and the bubble curve of the refrigerant; JCGM 100:2008 (GUM) for the uncertainty
 *
 * @example
 * ```ts
 * const result = liquidRiser({
 *   refrigerant: refrigerant("R-32"),
 *   pressure: megapascal(2.6),
 *   liquidTemperature: celsius(36),
 *   subcoolingUncertainty: 1.5,
 *   rise: 8,
 *   friction: kilopascalDifference(30),
 * });
 * result.subcooling; // → 4.33 K
 * result.verdict; // → "pass"
 * ```
 */
export function liquidRiser(riser: LiquidRiser): LiquidRiserResult {
  examine(riser);
  const { refrigerant, pressure, liquidTemperature, rise, friction, frictionHalfWidth = 0 } = riser;
  const near = saturationSlope(refrigerant, "bubble", pressure);
  const subcoolingAtInlet = near.temperature - liquidTemperature;
  const density = densityOf(riser, subcoolingAtInlet > 0);
  const { head, pressureDrop } = liquidColumnLoss({ density, rise, friction, slope: near.slope });
  const pressureAtTop = pressure - pressureDrop;
  if (!(pressureAtTop > 0)) {
    const expected = `less: column and friction take ${shownKilopascal(pressureDrop)} of ${shownKilopascal(pressure)}`;
    throw new InputError([{ path: "rise", value: rise, expected }]);
  }
  const top = saturationSlope(refrigerant, "bubble", pressureAtTop);
  const left = top.temperature - liquidTemperature;
  const uncertainty = combineUncertainties([
    {
      input: "subcooling",
      standardUncertainty: riser.subcoolingUncertainty / COVERAGE_FACTOR,
      unit: "K",
      sensitivity: 1,
      because: "that of the subcooling at the near end",
    },
    {
      input: "friction",
      standardUncertainty: halfWidthUncertainty(frictionHalfWidth),
      unit: "Pa",
      sensitivity: -top.slope,
      because: `friction known to ± ${shown(frictionHalfWidth)} Pa`,
    },
  ]);
  const U = uncertainty.expandedUncertainty;
  const { verdict, because } = decide(left, U, { minimum: 0 }, { quantity: "subcooling left", unit: "K" });
  return {
    ...uncertainty,
    verdict,
    subcooling: left,
    subcoolingAtInlet,
    density,
    head,
    pressureDrop,
    pressureAtTop,
    bubbleTemperatureAtTop: top.temperature,
    warnings: warningsOf(subcoolingAtInlet, verdict),
    assumptions: [
      "The liquid keeps its temperature on the way: the pipe neither gains nor loses heat.",
      "The line is full of liquid of one density.",
      ...(riser.frictionHalfWidth === undefined ? ["The friction is taken as exact."] : []),
    ],
    because:
      `${because}: ${shown(subcoolingAtInlet)} K at ${shownKilopascal(pressure)} absolute, less ` +
      `${shownKilopascal(head)} of column (${shown(density)} kg/m³, ${shown(rise)} m) and ${shownKilopascal(friction)} ` +
      `of friction; bubble point there ${shownCelsius(top.temperature)}`,
  };
}

/** As {@link liquidRiser}, without throwing. */
export function tryLiquidRiser(riser: LiquidRiser): Outcome<LiquidRiserResult> {
  return attempt(() => liquidRiser(riser));
}

function densityOf({ refrigerant, pressure, liquidTemperature }: LiquidRiser, isSubcooled: boolean): Density {
  if (isSubcooled) {
    const state = refrigerant.state({ temperature: liquidTemperature, pressure });
    // The last bits of a reading on the bubble point itself may fall on the other side.
    if (state.phase === "liquid") return state.density;
  }
  // A pipe that is no colder than saturation carries saturated liquid, with bubbles in it.
  return refrigerant.bubble({ pressure }).liquid.density;
}

function warningsOf(atInlet: TemperatureDifference, verdict: Verdict): Warning<RiserWarningCode>[] {
  const warnings: Warning<RiserWarningCode>[] = [];
  if (atInlet <= 0) {
    warnings.push({
      code: "flash-gas-at-inlet",
      message: "no subcooling at the near end already: flash gas, or the wrong port, probe or refrigerant",
    });
  }
  if (verdict === "fail") {
    warnings.push({
      code: "flash-gas-expected",
      message: "part of the liquid boils before the far end: the expansion device gets gas and starves",
    });
  } else if (verdict === "inconclusive") {
    warnings.push({
      code: "saturated-within-uncertainty",
      message: "no subcooling can be told at the far end: the line may carry flash gas",
    });
  }
  return warnings;
}

function examine(riser: LiquidRiser): void {
  requireObject("", riser, "a liquid line that goes up or down");
  const check = new InputCheck();
  checkRefrigerant(check, "refrigerant", riser.refrigerant);
  check.positive("pressure", riser.pressure);
  check.positive("liquidTemperature", riser.liquidTemperature);
  check.notNegative("subcoolingUncertainty", riser.subcoolingUncertainty);
  check.finite("rise", riser.rise);
  check.notNegative("friction", riser.friction);
  if (riser.frictionHalfWidth !== undefined) check.notNegative("frictionHalfWidth", riser.frictionHalfWidth);
  check.finish();
}
