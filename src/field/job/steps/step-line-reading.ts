import { fieldCautions } from "../../cautions.js";
import { decide, type Verdict } from "../../measurement/decision.js";
import type { ServicePort } from "../../running/line-reading.js";
import { subcooling } from "../../running/subcooling.js";
import { superheat } from "../../running/superheat.js";
import type { JobLineReading } from "../form/running.js";
import { asRead, shownNumber, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordStep } from "../record/record.js";
import type { JobContext } from "./context.js";
import { pairsOf, readEntries, type SeriesOutcome, seriesEntries, withScatter } from "./reading-series.js";

const titles = {
  superheat: "Superheat in steady running",
  subcooling: "Subcooling in steady running",
} as const;

const portNames: Readonly<Record<ServicePort, string>> = {
  "compressor-suction": "suction of the compressor",
  "gas-line": "gas line",
  "liquid-line": "liquid line",
  "after-expansion": "line after the expansion device",
};

/** What superheat or subcooling came out as, of one reading or of a series. */
export interface LineOutcome extends SeriesOutcome {
  /** Result at the last reading: of a series everything but the value is taken from it. */
  readonly last: ReturnType<typeof superheat>;
}

/** Superheat or subcooling of the readings of a job. */
export function lineOutcome(
  name: "superheat" | "subcooling",
  reading: JobLineReading,
  { job, refrigerant, atmosphere }: JobContext,
): LineOutcome {
  const { ambientTemperature } = reading;
  const evaluate = name === "superheat" ? superheat : subcooling;
  const results = pairsOf(reading.readings, reading.pressure, reading.lineTemperature).map(
    ({ pressure, temperature }) =>
      evaluate({
        refrigerant,
        mode: job.unit.mode,
        port: reading.port,
        pressure: pressure.si,
        lineTemperature: temperature.si,
        atmosphere,
        gauge: job.instruments.gauges[reading.gauge]!,
        thermometer: job.instruments.thermometers[reading.thermometer]!,
        ...(ambientTemperature === undefined ? {} : { ambientTemperature: ambientTemperature.si }),
      }),
  );
  const last = results[results.length - 1]!;
  const values = results.map(({ value }) => value);
  return { last, ...withScatter(values, reading, last.expandedUncertainty) };
}

/** Superheat or subcooling against the target of the manual. */
export function lineReadingStep(
  name: "superheat" | "subcooling",
  reading: JobLineReading,
  context: JobContext,
): RecordStep {
  const { target, port, readings } = reading;
  const outcome = lineOutcome(name, reading, context);
  const { last, value, expandedUncertainty, series } = outcome;
  const { minimum, maximum } = target;
  const decision = decide(
    value,
    expandedUncertainty,
    {
      ...(minimum === undefined ? {} : { minimum: minimum.si }),
      ...(maximum === undefined ? {} : { maximum: maximum.si }),
    },
    { quantity: name, unit: "K" },
  );
  const isSteady = series === undefined || series.steady === "pass";
  const verdict: Verdict = isSteady ? decision.verdict : "inconclusive";
  const unsteady = isSteady ? "" : `; the readings did not keep still: ${series.because}`;
  // Both begin with the value: once is enough.
  const rule = last.because.slice(last.because.indexOf(": ") + 2);
  return {
    name,
    title: titles[name],
    verdict,
    read: readEntries(`gauge on the ${portNames[port]}`, "pipe", reading, readings),
    expected: [
      ...(minimum === undefined ? [] : [asRead("at least", minimum)]),
      ...(maximum === undefined ? [] : [asRead("at most", maximum)]),
    ],
    found: [
      shownUncertain(name, value, expandedUncertainty, shownUnits.kelvinDifference),
      ...seriesEntries(series),
      shownNumber(`${last.saturationEnd} point`, last.saturationTemperature, shownUnits.celsius, 1),
      shownNumber("pressure", last.pressure, shownUnits.megapascal, 3),
    ],
    because: `${decision.because}: ${rule}${unsteady}`,
    next: nextOf(name, verdict, isSteady, value, minimum?.si),
    warnings: last.warnings,
    assumptions: last.assumptions,
    cautions: fieldCautions("gauge-reading", context.safetyClass),
  };
}

function nextOf(
  name: "superheat" | "subcooling",
  verdict: Verdict,
  isSteady: boolean,
  value: number,
  minimum: number | undefined,
): string[] {
  if (verdict === "pass") return [];
  if (!isSteady) return [`Let the unit run until the readings keep still, and read the ${name} again.`];
  if (verdict === "inconclusive")
    return [`Read the ${name} again with finer or better fixed instruments: it is too close to tell.`];
  const side = minimum !== undefined && value < minimum ? "low" : "high";
  return [
    `The ${name} is too ${side}: search for leaks and look at air flow and coils before touching the charge.`,
  ];
}
