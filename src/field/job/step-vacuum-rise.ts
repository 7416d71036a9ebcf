import { fieldCautions } from "../cautions.js";
import { riseTest } from "../rise-test.js";
import type { JobContext } from "./context.js";
import type { JobVacuumRise } from "./job.js";
import type { RecordStep } from "./record.js";
import { asRead, fact, shownUncertain, shownUnits } from "./shown-entry.js";

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
  const U = 2 * Math.SQRT2 * rise.repeatability.si;
  return {
    name: "vacuumRise",
    title: "Vacuum with the pump shut off",
    verdict: result.verdict,
    read: [
      fact("first", `${first.pressure.text} at ${first.time.text}`),
      fact("last", `${last.pressure.text} at ${last.time.text}`),
      fact("readings", rise.log === undefined ? `${readings.length}` : `${readings.length} in ${rise.log}`),
    ],
    expected: [
      asRead("start at most", rise.startMaximum),
      ...(limit === undefined ? [] : [fact("at most", `${limit.pressure.text} after ${limit.after.text}`)]),
    ],
    found: [
      shownUncertain("rise after settling", result.rise, U, shownUnits.pascalDifference),
      fact("curve", result.state),
      ...(result.throughput === undefined || !(result.rise > U)
        ? []
        : [
            {
              label: "if it were a leak",
              si: result.throughput,
              unit: "Pa m3/s",
              text: `${result.throughput.toExponential(1)} Pa m³/s`,
            },
          ]),
    ],
    because: result.because,
    warnings: result.warnings,
    assumptions: [],
    cautions: fieldCautions("evacuation", safetyClass),
  };
}
