import { localAtmosphere } from "../../../units/index.js";
import { fieldCautions } from "../../cautions.js";
import { type HoldState, nitrogenHold } from "../../pressure-test/nitrogen-hold.js";
import type { JobNitrogenHold } from "../form/pressure.js";
import {
  asRead,
  fact,
  shownDuration,
  shownNumber,
  shownThroughput,
  shownUncertain,
  shownUnits,
} from "../print/shown-entry.js";
import type { RecordStep } from "../record/record.js";
import type { JobContext } from "./context.js";

const meanings: Readonly<Record<HoldState, string>> = {
  drop: "a drop that temperature does not explain: look for the leak",
  "no-drop-seen": "no drop seen: not the same as tight",
  invalid:
    "a rise that temperature does not explain: supply not closed, pipes not settled, or wrong air pressure",
  "too-short": "nothing seen in less than the time asked for: go on",
  blind: "the instruments are too coarse for this test",
  "strength-only": "above PS: for a strength test only, release it to PS and hold there",
};

const next: Readonly<Record<HoldState, readonly string[]>> = {
  drop: [
    "Find the leak with bubbles at every joint, let the nitrogen off, mend it, and repeat the hold test.",
  ],
  "no-drop-seen": [],
  invalid: ["Shut off and disconnect the supply, let the pipes settle, and repeat the hold test."],
  "too-short": ["Leave the nitrogen in for the time asked for, and read again."],
  blind: ["Repeat the hold test with a finer gauge or for longer."],
  "strength-only": ["Release the nitrogen to the maximum allowable pressure and hold there."],
};

/** Did the pressure hold, or did the weather change? */
export function nitrogenHoldStep(hold: JobNitrogenHold, context: JobContext): RecordStep {
  const { job, nitrogen, atmosphere, safetyClass } = context;
  const result = nitrogenHold({
    nitrogen,
    readings: hold.readings.map(({ time, pressure, pipeTemperature, barometer }) => ({
      time: time.si,
      pressure: pressure.si,
      pipeTemperature: pipeTemperature.si,
      ...(barometer === undefined
        ? {}
        : { atmosphere: localAtmosphere({ from: "station-barometer", pressure: barometer.si }) }),
    })),
    gauge: job.instruments.gauges[hold.gauge]!,
    thermometer: job.instruments.thermometers[hold.thermometer]!,
    atmosphere,
    maximumAllowablePressure: job.unit.maximumAllowablePressure.si,
    requiredDuration: hold.requiredDuration.si,
    ...(hold.internalVolume === undefined ? {} : { internalVolume: hold.internalVolume.si }),
  });
  const first = hold.readings[0]!;
  const last = hold.readings[hold.readings.length - 1]!;
  const { leak } = result;
  return {
    name: "nitrogenHold",
    title: "Pressure test with nitrogen",
    verdict: result.verdict,
    read: [
      asRead("first", first.pressure),
      asRead("pipes then", first.pipeTemperature),
      asRead("last", last.pressure),
      asRead("pipes then", last.pipeTemperature),
      fact(
        "readings",
        hold.log === undefined ? `${hold.readings.length}` : `${hold.readings.length} in ${hold.log}`,
      ),
      shownDuration("duration", result.duration),
    ],
    expected: [
      shownNumber("with nothing leaking", result.expectedPressure, shownUnits.megapascalGauge, 3),
      shownNumber(
        "the printed rule, 0.01 MPa per °C, would say",
        result.comparison.printedRule,
        shownUnits.megapascalGauge,
        3,
      ),
      asRead("at least for", hold.requiredDuration),
    ],
    found: [
      shownUncertain(
        result.method === "series"
          ? `deviation by a line through ${hold.readings.length} readings`
          : "deviation",
        result.deviation,
        result.expandedUncertainty,
        shownUnits.kilopascalDifference,
      ),
      fact("which means", meanings[result.state]),
      shownNumber(
        "smallest drop this test can show",
        result.smallestVisibleDrop,
        shownUnits.kilopascalDifference,
        1,
      ),
      ...(leak === undefined || result.state !== "drop"
        ? []
        : [shownThroughput("leak of nitrogen", leak.throughput)]),
      ...(leak === undefined
        ? []
        : [shownThroughput("smallest leak this test can show", leak.smallestVisible)]),
    ],
    because: result.because,
    next: next[result.state],
    warnings: result.warnings,
    assumptions: result.assumptions,
    cautions: fieldCautions("pressure-test", safetyClass),
  };
}
