import { localAtmosphere } from "../../units/index.js";
import { fieldCautions } from "../cautions.js";
import { nitrogenHold } from "../nitrogen-hold.js";
import type { JobContext } from "./context.js";
import type { JobNitrogenHold } from "./job.js";
import type { RecordStep } from "./record.js";
import { fact, shownDuration, shownNumber, shownUncertain, shownUnits } from "./shown-entry.js";

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
      fact("first", `${first.pressure.text}, pipes ${first.pipeTemperature.text}`),
      fact("last", `${last.pressure.text}, pipes ${last.pipeTemperature.text}`),
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
    ],
    found: [
      shownUncertain(
        "deviation",
        result.deviation,
        result.expandedUncertainty,
        shownUnits.kilopascalDifference,
      ),
      shownNumber(
        "smallest drop this test can show",
        result.smallestVisibleDrop,
        shownUnits.kilopascalDifference,
        1,
      ),
      ...(leak === undefined
        ? []
        : [
            {
              label: "smallest leak this test can show",
              si: leak.smallestVisible,
              unit: "Pa m3/s",
              text: `${leak.smallestVisible.toExponential(1)} Pa m³/s`,
            },
          ]),
    ],
    because: result.because,
    warnings: result.warnings,
    assumptions: result.assumptions,
    cautions: fieldCautions("pressure-test", safetyClass),
  };
}
