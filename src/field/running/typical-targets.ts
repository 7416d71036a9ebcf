import data from "../../../data/field/running.json" with { type: "json" };
import { attempt, InputCheck, type Outcome, requireObject } from "../../units/index.js";
import type { DecisionLimits } from "../measurement/decision.js";
import type { OperatingMode } from "./line-reading.js";
import { METERING_DEVICES, type MeteringDevice } from "./metering-device.js";

/** What a usual range is a range of. */
export type TypicalQuantity =
  | "superheat"
  | "subcooling"
  | "condensing-split"
  | "evaporating-split"
  | "air-temperature-drop"
  | "discharge-temperature"
  | "drier-temperature-drop";

/** A system, as far as usual ranges depend on it. */
export interface TypicalSystem {
  /** What feeds the evaporator; no default. */
  readonly meteringDevice: MeteringDevice;
  /** What the unit is doing; no default. The ranges are known for cooling only. */
  readonly mode: OperatingMode;
}

/** A usual range. */
export interface TypicalTarget {
  /** What it is a range of. */
  readonly quantity: TypicalQuantity;
  /** Where it is read, or from what it is counted, in words. */
  readonly at: string;
  /** Lowest and highest usual value, in the unit; {@link decide} takes them as they are. */
  readonly limits: DecisionLimits;
  /** SI unit of the limits: `K`. A discharge temperature is a temperature, all others are differences. */
  readonly unit: "K";
  /** What else to know. */
  readonly note?: string;
  /** Where it is from. */
  readonly source: string;
  /** `recalled`, `read` or `computed`. */
  readonly status: string;
}

/** Usual ranges for a system. */
export interface TypicalTargets {
  /** The ranges; a quantity may come twice, at two places. */
  readonly targets: readonly TypicalTarget[];
  /** What always holds, and has to be shown with any of the ranges. */
  readonly precedence: string;
  /** Quantities that have no usual range on this device, with what stands in its place. */
  readonly without: readonly { readonly quantity: TypicalQuantity; readonly instead: string }[];
}

/**
 * Usual ranges of what a running system shows in cooling: superheat, subcooling, splits and the rest. They are common
 * practice without a source, for when neither nameplate nor manual says anything.
 *
 * @param system - Metering device and mode.
 * @throws {@link InputError} `malformed-input`, all problems at once; heating has the reason `no-target-in-heating`.
 * @source common practice, no source: `data/field/running.json`
 *
 * @example
 * ```ts
 * const { targets, precedence } = typicalTargets({ meteringDevice: "thermostatic-valve", mode: "cooling" });
 * targets.find(({ quantity }) => quantity === "subcooling")?.limits.maximum; // → 8 K
 * precedence; // → "The nameplate and the manual of the unit win over every usual range."
 * ```
 */
export function typicalTargets(system: TypicalSystem): TypicalTargets {
  requireObject("", system, "a metering device and a mode");
  const { meteringDevice, mode } = system;
  const check = new InputCheck();
  check.oneOf("meteringDevice", meteringDevice, METERING_DEVICES);
  if (check.oneOf("mode", mode, ["cooling", "heating"]) && mode === "heating") {
    check.problems.push({
      path: "mode",
      value: mode,
      expected: "cooling: no usual ranges are known for heating, the manual has them",
      reason: "no-target-in-heating",
    });
  }
  check.finish();
  const rows = data.typical.filter(({ devices }) => devices.includes(meteringDevice));
  return {
    targets: rows.map(({ quantity, at, minimum, maximum, note, source, status }) => ({
      // JSON knows no literal types; tests/field/running/typical-targets.test.ts checks every entry.
      quantity: quantity as TypicalQuantity,
      at,
      limits: minimum === undefined ? { maximum } : { minimum, maximum },
      unit: "K",
      ...(note === undefined ? {} : { note }),
      source,
      status,
    })),
    precedence: "The nameplate and the manual of the unit win over every usual range.",
    without: withoutOf(meteringDevice),
  };
}

/** As {@link typicalTargets}, without throwing. */
export function tryTypicalTargets(system: TypicalSystem): Outcome<TypicalTargets> {
  return attempt(() => typicalTargets(system));
}

const BY_WEIGHT = "charge by weight, or in the test mode of the maker" as const;

function withoutOf(meteringDevice: MeteringDevice): TypicalTargets["without"] {
  if (meteringDevice === "thermostatic-valve") return [];
  if (meteringDevice === "electronic-valve") return [{ quantity: "subcooling", instead: BY_WEIGHT }];
  return [
    { quantity: "superheat", instead: "it depends on the air on both coils: targetSuperheat" },
    { quantity: "subcooling", instead: BY_WEIGHT },
  ];
}
