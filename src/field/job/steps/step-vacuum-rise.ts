import { fieldCautions } from "../../cautions.js";
import { type RiseState, riseTest } from "../../evacuation/rise-test.js";
import { COVERAGE_FACTOR } from "../../measurement/uncertainty.js";
import type { JobVacuumRise } from "../form/pressure.js";
import { asRead, fact, shownThroughput, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordStep } from "../record/record.js";
import type { JobContext } from "./context.js";

const meanings: Readonly<Record<RiseState, string>> = {
  "not-evacuated": "not deep enough to begin: pump on",
  "tight-dry": "no rise beyond the noise of the gauge",
  "leak-or-gas": "more than water can make: a leak, or gas boiling out",
  "leak-suspected": "rising in a straight line, as through a leak",
  "free-water": "levelling off near the vapour pressure of water: liquid water inside",
  "moisture-or-outgassing": "levelling off low: moisture, or refrigerant out of the oil",
  falling: "falling: the pump is not shut off, or the system grows colder",
  blind: "the gauge is too noisy for this test",
  inconclusive: "between the patterns: go on with the test",
  unclassified: "a rise whose shape two readings do not show: log a series",
};

const dry = [
  "Break the vacuum with dry nitrogen and evacuate again, two or three times, then repeat the rise test.",
];
const tight = ["Look for the leak under nitrogen, mend it, evacuate again and repeat the rise test."];

const next: Readonly<Record<RiseState, readonly string[]>> = {
  "not-evacuated": ["Pump on to the pressure that the rise test may start from."],
  "tight-dry": [],
  "leak-or-gas": tight,
  "leak-suspected": tight,
  "free-water": [
    "Blow the water out with dry nitrogen, warm the coldest part, evacuate again and repeat the rise test.",
  ],
  "moisture-or-outgassing": dry,
  falling: ["Shut the valve to the pump, let the temperatures settle and repeat the rise test."],
  blind: ["Repeat the rise test with a steadier vacuum gauge."],
  inconclusive: ["Go on logging the rise until its shape shows."],
  unclassified: ["Repeat the rise test and log a series: two readings do not show a shape."],
};

/** What does the vacuum do when the pump is shut off? */
export function vacuumRiseStep(rise: JobVacuumRise, { job, safetyClass }: JobContext): RecordStep {
  const { readings, limit, internalVolume } = rise;
  const result = riseTest({
    samples: readings.map(({ time, pressure }) => ({ time: time.si, pressure: pressure.si })),
    gauge: job.instruments.gauges[rise.gauge]!,
    repeatability: rise.repeatability.si,
    startMaximum: rise.startMaximum.si,
    settlingTime: rise.settlingTime.si,
    coldestTemperature: rise.coldestTemperature.si,
    warmestTemperature: rise.warmestTemperature.si,
    ...(limit === undefined ? {} : { limit: { pressure: limit.pressure.si, after: limit.after.si } }),
    ...(internalVolume === undefined ? {} : { internalVolume: internalVolume.si }),
  });
  const first = readings[0]!;
  const last = readings[readings.length - 1]!;
  // The rise is a difference of two readings of one gauge.
  const U = COVERAGE_FACTOR * Math.SQRT2 * rise.repeatability.si;
  return {
    name: "vacuumRise",
    title: "Vacuum with the pump shut off",
    verdict: result.verdict,
    read: [
      asRead(`first, at ${first.time.text}`, first.pressure),
      asRead(`last, at ${last.time.text}`, last.pressure),
      fact("readings", rise.log === undefined ? `${readings.length}` : `${readings.length} in ${rise.log}`),
    ],
    expected: [
      asRead("start at most", rise.startMaximum),
      ...(limit === undefined ? [] : [asRead(`after ${limit.after.text} at most`, limit.pressure)]),
    ],
    found: [
      shownUncertain("rise after settling", result.rise, U, shownUnits.pascalDifference),
      fact("which means", meanings[result.state]),
      ...(result.throughput === undefined || !(result.rise > U)
        ? []
        : [shownThroughput("if it were a leak", result.throughput)]),
    ],
    because: result.because,
    next: next[result.state],
    warnings: result.warnings,
    assumptions: result.assumptions,
    cautions: fieldCautions("evacuation", safetyClass),
  };
}
