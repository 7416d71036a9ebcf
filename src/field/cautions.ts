import {
  type Caution,
  certifiedPersonsOnly,
  isFlammable,
  SAFETY_CLASSES,
  type SafetyClass,
  toxicityClass,
} from "../safety/index.js";
import { InputCheck } from "../units/index.js";

/** A step of work on site. */
export type FieldStep =
  | "gauge-reading"
  | "pressure-test"
  | "evacuation"
  | "opening-valves"
  | "charging"
  | "recovery"
  | "brazing";

/** Every step, for lists and forms. */
export const FIELD_STEPS: readonly FieldStep[] = [
  "gauge-reading",
  "pressure-test",
  "evacuation",
  "opening-valves",
  "charging",
  "recovery",
  "brazing",
];

/** Codes of the cautions of field work. */
export type FieldCautionCode =
  | "certified-persons-only"
  | "nitrogen-with-regulator"
  | "no-oxygen-no-air"
  | "never-above-lowest-pressure"
  | "flammable-refrigerant"
  | "toxic-refrigerant"
  | "do-not-vent"
  | "trapped-liquid"
  | "evacuate-before-opening"
  | "cold-and-suffocating"
  | "limit-of-the-test"
  | "isolate-electricity"
  | "check-charge-limit"
  | "calibrate-instruments";

/** When a caution is shown: at these steps, and if named only for refrigerants that burn or are toxic. */
interface CautionRule extends Caution<FieldCautionCode> {
  readonly steps: readonly FieldStep[];
  readonly only?: "flammable" | "toxic";
}

const RULES: readonly CautionRule[] = [
  {
    code: "certified-persons-only",
    steps: FIELD_STEPS,
    text: certifiedPersonsOnly,
  },
  {
    code: "nitrogen-with-regulator",
    steps: ["pressure-test", "brazing"],
    text:
      "Use dry nitrogen from an upright, secured cylinder through a pressure regulator, with a relief valve and hoses " +
      "rated above the test pressure. Never connect a cylinder without a regulator. Let it off into the open: it takes " +
      "the place of the air you breathe.",
  },
  {
    code: "no-oxygen-no-air",
    steps: ["pressure-test", "brazing", "recovery"],
    text:
      "Never pressurise with oxygen, compressed air, acetylene or refrigerant mixed with air: oxygen and oil explode. " +
      "Never look for leaks with a flame.",
  },
  {
    code: "never-above-lowest-pressure",
    steps: ["pressure-test"],
    text:
      "Never go above the lowest pressure marked on any part. Compressed gas stores enough energy to kill: protect " +
      "your eyes, raise the pressure in steps, keep out of line with fittings, vent before you loosen anything.",
  },
  {
    code: "flammable-refrigerant",
    steps: FIELD_STEPS,
    only: "flammable",
    text:
      "This refrigerant burns. No flame, no smoking, no tools that are not rated for it. Ventilate, and watch with a " +
      "suitable detector before and during work; the gas is mostly heavier than air and lies in pits, on floors and " +
      "in vehicles. Recover, purge with nitrogen and evacuate before any brazing.",
  },
  {
    code: "toxic-refrigerant",
    steps: FIELD_STEPS,
    only: "toxic",
    text: "This refrigerant is of higher toxicity (class B): work only with the protection and the detector it asks for.",
  },
  {
    code: "do-not-vent",
    steps: ["charging", "recovery", "opening-valves", "gauge-reading"],
    text:
      "Do not release refrigerant. Recover it with equipment rated for it into a cylinder made for it, on a scale, " +
      "never above its limit. Keep cylinders out of the sun and of hot closed vehicles; never warm one with a flame.",
  },
  {
    code: "trapped-liquid",
    steps: ["charging", "recovery", "opening-valves"],
    text: "Liquid shut in between two valves bursts the pipe or hose when it warms: always leave it a way out.",
  },
  {
    code: "evacuate-before-opening",
    steps: ["evacuation", "opening-valves", "recovery"],
    text:
      "Evacuate before you open the stop valves, and open them slowly. Never run the compressor under vacuum or " +
      "against shut valves. Stop a pump-down if you suspect a leak: air in a running compressor can explode.",
  },
  {
    code: "cold-and-suffocating",
    steps: ["charging", "recovery", "opening-valves", "gauge-reading", "brazing"],
    text:
      "Liquid refrigerant freezes skin and eyes, its gas takes the place of the air you breathe, and in a flame or on " +
      "hot metal fluorinated refrigerants make hydrogen fluoride.",
  },
  {
    code: "limit-of-the-test",
    steps: ["pressure-test", "evacuation"],
    text:
      "A hold or vacuum test that passes means that no leak larger than the stated one was seen. State that size, and " +
      "check every joint with bubbles or a detector as well.",
  },
  {
    code: "isolate-electricity",
    steps: ["opening-valves", "brazing", "gauge-reading"],
    text:
      "Switch off and lock out the supply before you touch wiring; the capacitors of an inverter stay charged for " +
      "minutes.",
  },
  {
    code: "check-charge-limit",
    steps: ["charging"],
    only: "flammable",
    text: "How much may be charged depends on the size of the room: check the limit before you add any.",
  },
  {
    code: "calibrate-instruments",
    steps: ["gauge-reading", "pressure-test", "evacuation", "charging", "recovery"],
    text:
      "Gauges, scales, detectors and thermometers need a valid calibration; without one this answer is only " +
      "indicative.",
  },
];

/**
 * The cautions to show with a step of work.
 *
 * @param step - What is being done.
 * @param safetyClass - Of the refrigerant in the system or about to be charged. `undefined` if unknown: then those of
 * flammable and toxic refrigerants are shown too.
 * @returns In the order in which to show them; never empty.
 * @throws {@link InputError} `malformed-input`.
 * @source our own wording; the duty to show them is this library's, no standard's
 */
export function fieldCautions(
  step: FieldStep,
  safetyClass: SafetyClass | undefined,
): readonly Caution<FieldCautionCode>[] {
  const check = new InputCheck();
  check.oneOf("step", step, FIELD_STEPS);
  if (safetyClass !== undefined) check.oneOf("safetyClass", safetyClass, SAFETY_CLASSES);
  check.finish();
  const applies: Readonly<Record<NonNullable<CautionRule["only"]>, boolean>> = {
    flammable: safetyClass === undefined || isFlammable(safetyClass),
    toxic: safetyClass === undefined || toxicityClass(safetyClass) === "B",
  };
  return RULES.filter(({ steps, only }) => steps.includes(step) && (only === undefined || applies[only])).map(
    ({ code, text }) => ({ code, text }),
  );
}
