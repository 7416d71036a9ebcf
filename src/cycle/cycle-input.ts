import type { Refrigerant } from "../state/index.js";
import { InputCheck, requireObject, type TemperatureDifference } from "../units/index.js";
import { type CycleSize, checkSize } from "./cycle-size.js";
import { checkEfficiency } from "./efficiency-check.js";
import {
  CONDENSING_POINTS,
  checkLevel,
  EVAPORATING_POINTS,
  type GlidePoint,
  type SaturationLevel,
} from "./saturation-level.js";

/** A basic vapour-compression cycle: compressor, condenser, expansion device, evaporator. */
export interface CycleInput {
  /** The refrigerant. */
  readonly refrigerant: Refrigerant;
  /** Evaporation, by pressure or temperature. Of a blend, `at` says which temperature is meant. */
  readonly evaporating: SaturationLevel;
  /** Condensation, likewise; it has no inlet that boils. */
  readonly condensing: SaturationLevel<Exclude<GlidePoint, "inlet-midpoint">>;
  /** How far the vapour at the compressor is above its dew point, K, 0 or above. */
  readonly superheat: TemperatureDifference;
  /** How far the liquid at the expansion device is below its bubble point, K, 0 or above. */
  readonly subcooling: TemperatureDifference;
  /** Work without losses over work done, above 0 and at most 1. There is no default. */
  readonly isentropicEfficiency: number;
  /** Size of the machine; left out, the result is for each kilogram only. */
  readonly size?: CycleSize;
}

/** Judges the input of a cycle, all problems at once. */
export function checkCycleInput(input: CycleInput): void {
  requireObject("", input, "a cycle");
  const { refrigerant, evaporating, condensing, size } = input;
  const check = new InputCheck();
  check.require(isRefrigerant(refrigerant), "refrigerant", refrigerant, "a refrigerant");
  const isBlend = isRefrigerant(refrigerant) && refrigerant.blend !== undefined;
  checkLevel(check, "evaporating", evaporating, EVAPORATING_POINTS, isBlend);
  checkLevel(check, "condensing", condensing, CONDENSING_POINTS, isBlend);
  check.notNegative("superheat", input.superheat);
  check.notNegative("subcooling", input.subcooling);
  checkEfficiency(check, "isentropicEfficiency", input.isentropicEfficiency);
  if (size !== undefined) checkSize(check, size);
  check.finish();
}

function isRefrigerant(value: unknown): value is Refrigerant {
  return (
    typeof value === "object" &&
    value !== null &&
    ["bubble", "dew", "state"].every(
      (name) => typeof (value as Readonly<Record<string, unknown>>)[name] === "function",
    )
  );
}
