import data from "../../../data/field/instruments.json" with { type: "json" };
import type { Warning } from "../../safety/index.js";
import {
  attempt,
  InputError,
  type Outcome,
  type PressureDifference,
  type PressureReading,
  type parsePressure,
  tryParsePressure,
} from "../../units/index.js";

/** A unit that a dial may count in. */
export interface DialUnit {
  /** As {@link parsePressure} reads it behind a number. */
  readonly unit: string;
  /** Size of one unit, Pa. */
  readonly size: PressureDifference;
  /** What the label says of the kind of pressure; undefined where it says nothing. Torr and micron are absolute. */
  readonly kind: PressureReading["kind"] | undefined;
}

/** Codes of the warnings of a dial label. */
export type DialWarningCode =
  | "ambiguous-label"
  | "mass-label"
  | "length-label"
  | "second-scale"
  | "small-numbers"
  | "near-bar";

/** What the label of a dial may mean. */
export interface DialLabel {
  /** As given. */
  readonly label: string;
  /** The unit, where it can be only one; undefined for an ambiguous label, which nobody should guess. */
  readonly unit: DialUnit | undefined;
  /** Every unit it may stand for; never empty. */
  readonly meanings: readonly DialUnit[];
  /** What to look at before a number is written down. */
  readonly warnings: readonly Warning<DialWarningCode>[];
}

/**
 * What the label on a dial may mean: `bar`, `MPa`, `kgf/cm²`, but also `kg`, `kilos`, `lbs` or `in`, which name no
 * pressure. What can be two units is not guessed: then `unit` is undefined and `meanings` has both.
 *
 * @param label - As printed on the dial or said; capitals count only where {@link parsePressure} says so.
 * @throws {@link InputError} `malformed-input` for a label that is no unit of pressure.
 * @source units: as {@link parsePressure}; what labels mean: common practice, no source, `data/field/instruments.json`
 *
 * @example
 * ```ts
 * dialUnit("kg").unit?.size; // → 98066.5 Pa
 * dialUnit("kilos").unit; // → undefined
 * dialUnit("kilos").meanings.length; // → 2
 * ```
 */
export function dialUnit(label: string): DialLabel {
  if (typeof label !== "string") {
    throw new InputError([{ path: "label", value: label, expected: "the text on the dial" }]);
  }
  const plain = label.trim().toLowerCase();
  const listed = data.dialLabels.labels.find(({ labels }) => labels.includes(plain));
  if (listed !== undefined) {
    const meanings = listed.meanings.map(unitOf);
    return {
      label,
      unit: meanings.length === 1 ? meanings[0] : undefined,
      meanings,
      warnings: [warning(listed)],
    };
  }
  const unit = unitOf(label.trim());
  const warnings = data.dialLabels.units.filter((each) => unitOf(each.unit).size === unit.size).map(warning);
  return { label, unit, meanings: [unit], warnings };
}

/** As {@link dialUnit}, without throwing. */
export function tryDialUnit(label: string): Outcome<DialLabel> {
  return attempt(() => dialUnit(label));
}

/** JSON knows no literal types; tests/field/measurement/dial-label.test.ts checks every entry. */
function warning({ code, message }: { readonly code: string; readonly message: string }) {
  return { code: code as DialWarningCode, message };
}

function unitOf(text: string): DialUnit {
  const one = `1 ${text}`;
  const asAbsolute = tryParsePressure(one, { bare: "absolute" });
  if (!asAbsolute.ok) {
    const expected = "a unit of pressure as dials carry it, such as bar, MPa, kgf/cm², psi or cmHg";
    throw new InputError([{ path: "label", value: text, expected }]);
  }
  const { kind, pressure } = asAbsolute.value;
  // A label that says nothing of its kind is taken as whatever it is asked to be.
  const asGauge = tryParsePressure(one, { bare: "gauge" });
  const saysKind = !(asGauge.ok && asGauge.value.kind !== kind);
  return { unit: text, size: Math.abs(pressure), kind: saysKind ? kind : undefined };
}
