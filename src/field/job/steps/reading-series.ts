import type { GaugePressure, Temperature, TemperatureDifference } from "../../../units/index.js";
import { type SteadySeries, steadySeries } from "../../measurement/steady-series.js";
import { COVERAGE_FACTOR } from "../../measurement/uncertainty.js";
import type { JobPairReading } from "../form/running.js";
import type { Stated } from "../form/stated.js";
import { asRead, fact, shownDuration, shownUncertain, shownUnits } from "../print/shown-entry.js";
import type { RecordEntry } from "../record/record.js";

/** Parts of a reading that say whether it is one or a series. */
interface SeriesParts {
  readonly readings?: readonly JobPairReading[];
  readonly log?: string;
  readonly allowedDrift?: Stated<TemperatureDifference>;
}

/** A value with its uncertainty, and the series behind it if there is one. */
export interface SeriesOutcome {
  /** The reading, or the mean of the series. */
  readonly value: number;
  /** Of instruments and scatter together, k = 2. */
  readonly expandedUncertainty: number;
  /** What the series says of itself. */
  readonly series: SteadySeries | undefined;
}

type Pair = Omit<JobPairReading, "time">;

/** The readings of a step: a series as it is, or the one reading. `readJob` has seen to it that there is one of them. */
export function pairsOf(
  readings: readonly JobPairReading[] | undefined,
  pressure: Stated<GaugePressure> | undefined,
  temperature: Stated<Temperature> | undefined,
): readonly Pair[] {
  return readings ?? [{ pressure: pressure!, temperature: temperature! }];
}

/** The value of one reading, or the mean of a series with its scatter added to what the instruments leave open. */
export function withScatter(
  values: readonly number[],
  { readings, allowedDrift }: SeriesParts,
  instruments: number,
): SeriesOutcome {
  if (readings === undefined) {
    return { value: values[0]!, expandedUncertainty: instruments, series: undefined };
  }
  const samples = readings.map(({ time }, index) => ({ time: time.si, value: values[index]! }));
  const series = steadySeries({ samples, allowedDrift: allowedDrift!.si });
  const scatter = COVERAGE_FACTOR * series.standardUncertainty;
  return { value: series.mean, expandedUncertainty: Math.hypot(instruments, scatter), series };
}

/** What was read: the one pair, or the ends of a series. */
export function readEntries(
  pressureLabel: string,
  temperatureLabel: string,
  single: SeriesParts & {
    readonly pressure?: Stated<GaugePressure>;
    readonly lineTemperature?: Stated<Temperature>;
    readonly temperature?: Stated<Temperature>;
  },
  readings: readonly JobPairReading[] | undefined,
): RecordEntry[] {
  if (readings === undefined) {
    return [
      asRead(pressureLabel, single.pressure!),
      asRead(temperatureLabel, (single.lineTemperature ?? single.temperature)!),
    ];
  }
  const first = readings[0]!;
  const last = readings[readings.length - 1]!;
  const count = `${readings.length}`;
  return [
    asRead(`${pressureLabel}, first`, first.pressure),
    asRead(`${temperatureLabel}, first`, first.temperature),
    asRead(`${pressureLabel}, last`, last.pressure),
    asRead(`${temperatureLabel}, last`, last.temperature),
    fact("readings", single.log === undefined ? count : `${count} in ${single.log}`),
    shownDuration("duration", last.time.si - first.time.si),
  ];
}

/** How far a series drifted. */
export function seriesEntries(series: SteadySeries | undefined): RecordEntry[] {
  if (series === undefined) return [];
  const { drift, driftExpandedUncertainty } = series;
  return [
    shownUncertain("drift during the series", drift, driftExpandedUncertainty, shownUnits.kelvinDifference),
  ];
}
