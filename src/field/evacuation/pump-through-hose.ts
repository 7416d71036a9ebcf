import data from "../../../data/field/evacuation.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import {
  attempt,
  InputCheck,
  type Outcome,
  type Pressure,
  requireObject,
  type VolumeFlow,
} from "../../units/index.js";
import { shown } from "../measurement/shown.js";
import { MOLAR_GAS_CONSTANT } from "../molar-gas-constant.js";
import { type HoseConductance, type HoseElement, type HoseGas, hoseConductance } from "./hose.js";
import { checkHoseChain } from "./hose-checks.js";
import { pressureAtPump, pressuresUpstream, resistanceOf } from "./hose-resistance.js";

/** A pump and all that stands between it and the system. */
export interface PumpAndHose {
  /** Pieces in order, the one at the system first. A valve core that was left in is a piece of its own: ask for it. */
  readonly hose: readonly HoseElement[];
  /** Gas in them; {@link airAt20Celsius} for air. */
  readonly gas: HoseGas;
  /** Displacement of the pump, m3/s. */
  readonly pumpingSpeed: VolumeFlow;
  /** Pressure that the pump reaches with its inlet shut, Pa absolute; 0 for a perfect one. */
  readonly ultimatePressure: Pressure;
}

/** A pump and a hose on a system at a pressure. */
export interface PumpThroughHoseQuestion extends PumpAndHose {
  /** Pressure in the system, Pa absolute, above the ultimate pressure of the pump. */
  readonly systemPressure: Pressure;
}

/** Codes of the warnings of a pump behind a hose. */
export type HoseWarningCode = "short-element" | "turbulent";

/** What a pump behind a hose does to a system. */
export interface PumpThroughHoseResult {
  /** Throughput over the pressure in the system, m3/s. */
  readonly effectiveSpeed: VolumeFlow;
  /** Pressure at the inlet of the pump, Pa absolute. */
  readonly pumpInletPressure: Pressure;
  /** S (p₂ − p_u): gas carried off, Pa m3/s at the temperature of the gas. */
  readonly throughput: number;
  /** Each piece at the mean of the pressures at its ends, in order. */
  readonly elements: readonly HoseConductance[];
  /** What is odd; either way less flows than is said here. */
  readonly warnings: readonly Warning<HoseWarningCode>[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
  /** The numbers that decided. */
  readonly because: string;
}

/**
 * What a pump behind a hose carries off: hose and pump see the same throughput,
 * S (p₂ − p_u) = (k/2) (p² − p₂²) + C_m (p − p₂) with k = π d⁴/(128 η L), a quadratic in the pressure p₂ at the pump.
 *
 * In low vacuum nearly all of p is lost in the hose: then a wider or shorter hose helps, a bigger pump does not.
 *
 * @param question - Pieces (m), gas, pump (m3/s, Pa) and the pressure in the system (Pa absolute).
 * @returns Upper bounds: laminar flow in long pieces.
 * @throws {@link InputError} `malformed-input`, all problems at once; also for a system at or below the ultimate
 * pressure of the pump.
 * @source as {@link hoseConductance}; the mean pressure of each piece enters, so the flow is exact for its formula
 *
 * @example
 * ```ts
 * const { effectiveSpeed, pumpInletPressure } = pumpThroughHose({
 *   systemPressure: micron(500),
 *   hose: [{ innerDiameter: millimetre(4.8), length: 1.5 }],
 *   gas: airAt20Celsius(),
 *   pumpingSpeed: litrePerSecond(1.416),
 *   ultimatePressure: 0,
 * });
 * inLitrePerSecond(effectiveSpeed); // → 0.02468
 * pumpInletPressure; // → 1.162 Pa
 * ```
 */
export function pumpThroughHose(question: PumpThroughHoseQuestion): PumpThroughHoseResult {
  requireObject("", question, "a pump, a hose and a pressure");
  const { systemPressure, ultimatePressure, pumpingSpeed, gas, hose } = question;
  const check = new InputCheck();
  checkPumpAndHose(check, question);
  if (check.positive("systemPressure", systemPressure)) {
    check.require(
      !(systemPressure <= ultimatePressure),
      "systemPressure",
      systemPressure,
      `above the ultimate pressure of the pump, ${ultimatePressure} Pa`,
    );
  }
  check.finish();
  const chain = chainOf(question);
  const above = pressureAtPump(chain, systemPressure);
  const throughput = pumpingSpeed * above;
  const pumpInletPressure = ultimatePressure + above;
  const ends = [...pressuresUpstream(chain, above).pressures, pumpInletPressure];
  const effectiveSpeed = throughput / systemPressure;
  return {
    effectiveSpeed,
    pumpInletPressure,
    throughput,
    elements: hose.map((element, index) =>
      hoseConductance({ element, gas, meanPressure: (ends[index]! + ends[index + 1]!) / 2 }),
    ),
    warnings: warningsOf(question, throughput),
    assumptions: [VALVE_CORES, PUMP_KEEPS_ITS_SPEED],
    because:
      `${shown(systemPressure)} Pa in the system, ${shown(pumpInletPressure)} Pa at the pump: of ` +
      `${shown(1000 * pumpingSpeed)} L/s at most ${shown(1000 * effectiveSpeed)} L/s arrive`,
  };
}

/** As {@link pumpThroughHose}, without throwing. */
export function tryPumpThroughHose(question: PumpThroughHoseQuestion): Outcome<PumpThroughHoseResult> {
  return attempt(() => pumpThroughHose(question));
}

/** Valve cores are easily forgotten, and hold back more than the hose. */
export const VALVE_CORES =
  "Valve cores are out, or stand among the pieces as short bores of their own; the same for ball valves and core tools.";

/** A pump slows down before it stops. */
export const PUMP_KEEPS_ITS_SPEED = "The pump keeps its displacement down to its ultimate pressure.";

/** Records what is wrong with a pump and its hose. */
export function checkPumpAndHose(check: InputCheck, { hose, gas, ...pump }: PumpAndHose): void {
  checkHoseChain(check, hose, gas);
  check.positive("pumpingSpeed", pump.pumpingSpeed);
  check.notNegative("ultimatePressure", pump.ultimatePressure);
}

/** The pieces and the pump as resistances. */
export function chainOf({ hose, gas, pumpingSpeed, ultimatePressure }: PumpAndHose): {
  readonly resistances: readonly ReturnType<typeof resistanceOf>[];
  readonly speed: number;
  readonly ultimate: number;
} {
  return {
    resistances: hose.map((element) => resistanceOf(element, gas)),
    speed: pumpingSpeed,
    ultimate: ultimatePressure,
  };
}

/** Pieces whose ends count: the formulas are for long ones. */
export function shortElementWarnings({ hose }: PumpAndHose): Warning<HoseWarningCode>[] {
  return hose.flatMap(({ innerDiameter, length }, index) =>
    length < data.shortElement.lengthOverDiameter * innerDiameter
      ? [
          {
            code: "short-element" as const,
            message:
              `piece ${index + 1}, ${shown(1000 * innerDiameter)} mm wide and ${shown(1000 * length)} mm long, is short ` +
              "for its bore: its ends hold back too, so it lets less through than counted",
          },
        ]
      : [],
  );
}

/** Throughput at which flow in the narrowest piece ceases to be laminar, Pa m3/s: Re = 4 q M/(R T π d η). */
export function laminarThroughput({ hose, gas }: PumpAndHose): number {
  const narrowest = Math.min(...hose.map(({ innerDiameter }) => innerDiameter));
  const massFlow = (data.laminar.reynolds * Math.PI * narrowest * gas.viscosity) / 4;
  return (massFlow * MOLAR_GAS_CONSTANT * gas.temperature) / gas.molarMass;
}

function warningsOf(question: PumpAndHose, throughput: number): Warning<HoseWarningCode>[] {
  const warnings = shortElementWarnings(question);
  const part = throughput / laminarThroughput(question);
  if (part > 1) {
    warnings.push({
      code: "turbulent",
      message:
        `the Reynolds number in the narrowest piece is ${shown(part * data.laminar.reynolds)}: flow is turbulent or ` +
        "choked, and less than counted",
    });
  }
  return warnings;
}
