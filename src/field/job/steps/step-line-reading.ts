import { fieldCautions } from "../../cautions.js";
import { decide } from "../../measurement/decision.js";
import type { ServicePort } from "../../running/line-reading.js";
import { subcooling } from "../../running/subcooling.js";
import { superheat } from "../../running/superheat.js";
import type { JobLineReading } from "../form/job.js";
import { asRead, shownNumber, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordStep } from "../record/record.js";
import type { JobContext } from "./context.js";

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

/** Superheat or subcooling against the target of the manual. */
export function lineReadingStep(
  name: "superheat" | "subcooling",
  reading: JobLineReading,
  context: JobContext,
): RecordStep {
  const { job, refrigerant, atmosphere, safetyClass } = context;
  const { pressure, lineTemperature, ambientTemperature, target, port } = reading;
  const evaluate = name === "superheat" ? superheat : subcooling;
  const result = evaluate({
    refrigerant,
    mode: job.unit.mode,
    port,
    pressure: pressure.si,
    lineTemperature: lineTemperature.si,
    atmosphere,
    gauge: job.instruments.gauges[reading.gauge]!,
    thermometer: job.instruments.thermometers[reading.thermometer]!,
    ...(ambientTemperature === undefined ? {} : { ambientTemperature: ambientTemperature.si }),
  });
  const { minimum, maximum } = target;
  const decision = decide(
    result.value,
    result.expandedUncertainty,
    {
      ...(minimum === undefined ? {} : { minimum: minimum.si }),
      ...(maximum === undefined ? {} : { maximum: maximum.si }),
    },
    { quantity: name, unit: "K" },
  );
  return {
    name,
    title: titles[name],
    verdict: decision.verdict,
    read: [asRead(`gauge on the ${portNames[port]}`, pressure), asRead("pipe", lineTemperature)],
    expected: [
      ...(minimum === undefined ? [] : [asRead("at least", minimum)]),
      ...(maximum === undefined ? [] : [asRead("at most", maximum)]),
    ],
    found: [
      shownUncertain(name, result.value, result.expandedUncertainty, shownUnits.kelvinDifference),
      shownNumber(`${result.saturationEnd} point`, result.saturationTemperature, shownUnits.celsius, 1),
      shownNumber("pressure", result.pressure, shownUnits.megapascal, 3),
    ],
    // Both begin with the value: once is enough.
    because: `${decision.because}: ${result.because.slice(result.because.indexOf(": ") + 2)}`,
    warnings: result.warnings,
    assumptions: result.assumptions,
    cautions: fieldCautions("gauge-reading", safetyClass),
  };
}
