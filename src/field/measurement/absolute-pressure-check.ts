import { InputCheck, requireObject } from "../../units/index.js";
import type { GaugeReference, ShownPressure } from "./absolute-pressure.js";
import { checkGauge, checkReading } from "./instrument-checks.js";
import { checkAtmosphere } from "./site.js";

/** Reading above the zero of the gauge, Pa, negative in a vacuum. */
export function signedReading(shown: ShownPressure): number {
  return shown.kind === "vacuum" ? -shown.reading : shown.reading;
}

/** Judges what an instrument shows, all problems at once. */
export function checkShownPressure(shown: ShownPressure): void {
  requireObject("", shown, "what an instrument shows");
  const check = new InputCheck();
  const { kind, gauge } = shown;
  const isKindKnown = check.oneOf("kind", kind, ["gauge", "vacuum", "absolute"]);
  if (kind === "gauge") check.finite("reading", shown.reading);
  else if (isKindKnown) check.notNegative("reading", shown.reading);
  checkGauge(check, "gauge", gauge);
  if (kind === "absolute") {
    check.require(
      gauge?.accuracy?.kind !== "accuracy-class",
      "gauge.accuracy.kind",
      gauge?.accuracy?.kind,
      "the error of an absolute sensor: a class of EN 837-1 belongs to a scale in gauge pressure",
    );
    const { reference } = shown as { readonly reference?: unknown };
    check.require(
      reference === undefined,
      "reference",
      reference,
      "none: an absolute sensor has no other zero",
    );
  } else if (isKindKnown) {
    checkReference(check, shown.reference);
  }
  check.finish();
  checkReading(check, "reading", signedReading(shown), gauge);
  check.finish();
}

function checkReference(check: InputCheck, reference: GaugeReference): void {
  if (!check.oneOf("reference.to", reference?.to, ["open-air", "sealed"])) return;
  if (reference.to === "open-air") {
    checkAtmosphere(check, "reference.atmosphere", reference.atmosphere);
  } else {
    check.positive("reference.sealingPressure", reference.sealingPressure);
    check.notNegative("reference.halfWidth", reference.halfWidth);
  }
}
