import type { Warning } from "../../../safety/index.js";
import { glide, type Refrigerant } from "../../../state/index.js";
import {
  formatNumber,
  InputCheck,
  type Mass,
  type Pressure,
  type Temperature,
} from "../../../units/index.js";
import { type ComponentShift, type TopUpCase, topUp } from "../../leak/index.js";
import { mostLost } from "../../leak/situation.js";
import type { Verdict } from "../../measurement/decision.js";
import { mixtureModelWords } from "../../measurement/mixture-model.js";
import { shownCelsius } from "../../measurement/shown.js";
import type { JobTopUp } from "../form/service.js";
import { asRead, fact, shownNumber, shownUnits } from "../print/shown-entry.js";
import type { RecordEntry, RecordStep } from "../record/record.js";
import type { JobContext } from "./context.js";

const meanings: Readonly<Record<Verdict, string>> = {
  pass: "within the tolerance of the designation",
  fail: "outside the tolerance of the designation",
  inconclusive: "not to be told: the tolerance of the designation is not known",
};

/** Refrigerant was lost: may the system be topped up, or has its blend shifted too far? */
export function topUpStep(leak: JobTopUp, context: JobContext): RecordStep {
  const { refrigerant } = context;
  const { charge, lost, leaving, internalVolume, restTemperature } = leak;
  checkMasses(leak, refrigerant);
  const result = topUp({
    refrigerant,
    charge: charge.si,
    volume: internalVolume.si,
    temperature: restTemperature.si,
    lostFraction: lost.si / charge.si,
    leaving,
  });
  const { expected, found } =
    refrigerant.blend === undefined
      ? ofPure(refrigerant, restTemperature.si)
      : ofBlend(refrigerant, restTemperature.si, result.cases);
  return {
    name: "topUp",
    title: "Leak and top-up",
    verdict: result.verdict,
    read: [
      asRead("full charge", charge),
      asRead("lost", lost),
      fact("escaped as", leaving),
      asRead("volume of the circuit", internalVolume),
      asRead("at rest at", restTemperature),
    ],
    expected,
    found: [
      ...found,
      shownNumber("to be added, if it is topped up", result.added, shownUnits.gram, 0),
      fact("what to do", result.advice),
    ],
    because: result.because,
    next: result.verdict === "pass" ? [] : [result.advice],
    warnings: warningsOf(leak, context),
    assumptions: [
      ...result.assumptions,
      "Charge, loss and volume are taken as exact, and so are the compositions of the mixture model.",
    ],
    cautions: result.cautions,
  };
}

/** What a leak cannot be, in words that fit the job. */
function checkMasses(
  { charge, lost, internalVolume, restTemperature }: JobTopUp,
  refrigerant: Refrigerant,
): void {
  const check = new InputCheck();
  check.require(
    lost.si <= mostLost * charge.si,
    "lost",
    lost.text,
    `less than the charge, at most ${100 * mostLost} % of it`,
  );
  const full = refrigerant.tryBubble({ temperature: restTemperature.si });
  // Where there is no bubble point, the leak itself says so.
  if (full.ok) {
    const smallest = charge.si / full.value.liquid.density;
    check.require(
      internalVolume.si > smallest,
      "internalVolume",
      internalVolume.text,
      `more than the charge takes up as liquid, ${formatNumber(1000 * smallest, 2)} L`,
    );
  }
  check.finish();
}

interface Entries {
  readonly expected: readonly RecordEntry[];
  readonly found: readonly RecordEntry[];
}

function ofPure(refrigerant: Refrigerant, temperature: Temperature): Entries {
  const { pressure } = refrigerant.bubble({ temperature });
  return {
    expected: [
      shownNumber(`pressure with liquid at ${shownCelsius(temperature)}`, pressure, shownUnits.megapascal, 3),
    ],
    found: [fact("composition", "one substance: a leak cannot shift it")],
  };
}

function ofBlend(refrigerant: Refrigerant, temperature: Temperature, cases: readonly TopUpCase[]): Entries {
  const bubble = refrigerant.bubble({ temperature }).pressure;
  const dew = refrigerant.dew({ temperature }).pressure;
  const at = shownCelsius(temperature);
  const [{ check: first }] = cases as readonly [TopUpCase];
  return {
    expected: [
      ...first.shifts.map(designated),
      shownNumber(`bubble pressure at ${at}`, bubble, shownUnits.megapascal, 3),
      shownNumber(`dew pressure at ${at}`, dew, shownUnits.megapascal, 3),
      shownNumber(
        "glide at that dew pressure",
        glide(refrigerant, { pressure: dew }).glide,
        shownUnits.kelvinDifference,
        1,
      ),
    ],
    found: [
      ...cases.flatMap((each) => caseEntries(each, bubble, dew)),
      ...(refrigerant.mixing === undefined
        ? []
        : [fact("by a mixture model", mixtureModelWords(refrigerant.mixing))]),
    ],
  };
}

/** What a designation says of a component. */
function designated({ component, nominal, tolerance }: ComponentShift): RecordEntry {
  const label = `${component} by mass, designated`;
  const entry = shownNumber(label, nominal, shownUnits.percentByMass, 1);
  if (tolerance === undefined) return { ...entry, text: `${entry.text}, tolerance not known` };
  const { above, below } = tolerance;
  return {
    ...entry,
    text: `${entry.text}, from ${percent(nominal - below)} to ${percent(nominal + above)} %`,
  };
}

function caseEntries({ leaving, left, check }: TopUpCase, bubble: Pressure, dew: Pressure): RecordEntry[] {
  const escaped = `${leaving as JobTopUp["leaving"]} escaped`;
  return [
    ...check.shifts.map(({ component, fraction }) =>
      shownNumber(`${component} after topping up, ${escaped}`, fraction, shownUnits.percentByMass, 2),
    ),
    fact(`which is, ${escaped}`, meanings[check.verdict]),
    ...Object.entries(left.composition).map(([component, fraction]) =>
      shownNumber(`${component} before topping up, ${escaped}`, fraction, shownUnits.percentByMass, 2),
    ),
    shifted(`bubble pressure before topping up, ${escaped}`, left.bubblePressure, bubble),
    shifted(`dew pressure before topping up, ${escaped}`, left.dewPressure, dew),
  ];
}

/** A pressure of what is left, beside that of the designation. */
function shifted(label: string, pressure: Pressure, nominal: Pressure): RecordEntry {
  const entry = shownNumber(label, pressure, shownUnits.megapascal, 3);
  const shift = pressure / nominal - 1;
  const percentage = formatNumber(100 * Math.abs(shift), 1);
  const compared = percentage === "0.0" ? "as" : `${percentage} % ${shift < 0 ? "below" : "above"}`;
  return { ...entry, text: `${entry.text}, ${compared} nominal` };
}

function percent(fraction: number): string {
  return formatNumber(100 * fraction, 1);
}

/** A full charge that is not what the rest of the job says. */
function warningsOf({ charge }: JobTopUp, { job }: JobContext): Warning[] {
  const { lineSet, unit } = job;
  if (lineSet === undefined) return [];
  const weighed: Mass = unit.nameplateCharge.si + lineSet.added.si;
  if (Math.abs(charge.si - weighed) <= lineSet.tolerance.si) return [];
  return [
    {
      code: "charge-differs",
      message: `the full charge of the leak is ${charge.text}, nameplate and line set make ${formatNumber(weighed, 3)} kg`,
    },
  ];
}
