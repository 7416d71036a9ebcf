import { attempt, type InputError, type Outcome } from "./errors.js";
import type { Duration, Speed, VolumeFlow } from "./flavour.js";
import { type ParseOptions, parse } from "./parse.js";
import { type FormatOptions, format } from "./print.js";
import { from, into, type Quantity, type Unit, type Units } from "./unit.js";

const DURATION: Quantity = { name: "a duration", si: "s", minimum: 0, example: "30 min", compound: true };

const SECOND: Unit = { symbol: "s", factor: 1, spellings: ["s", "sec", "secs", "seconds"] };
const MINUTE: Unit = { symbol: "min", factor: 60, spellings: ["min", "mins", "minutes"] };
const HOUR: Unit = { symbol: "h", factor: 3600, spellings: ["h", "hr", "hrs", "hours"] };
const DAY: Unit = { symbol: "d", factor: 86400, spellings: ["d", "days"] };
// The Julian year of 365.25 d, in which leak rates in grams per year are counted.
const YEAR: Unit = { symbol: "a", factor: 31557600, spellings: ["a", "yr", "yrs", "years"] };

/** A unit of duration, by the name of its converter. */
export type DurationUnit = "second" | "minute" | "hour" | "day" | "year";

const DURATION_UNITS: Units<DurationUnit> = {
  second: SECOND,
  minute: MINUTE,
  hour: HOUR,
  day: DAY,
  year: YEAR,
};

/** Duration, s, from s, 0 or more. */
export const second: (value: number) => Duration = /* @__PURE__ */ from(DURATION, SECOND);
/** Duration, s, from min, 0 or more. */
export const minute: (value: number) => Duration = /* @__PURE__ */ from(DURATION, MINUTE);
/** Duration, s, from h, 0 or more. */
export const hour: (value: number) => Duration = /* @__PURE__ */ from(DURATION, HOUR);
/** Duration, s, from d, 0 or more. */
export const day: (value: number) => Duration = /* @__PURE__ */ from(DURATION, DAY);
/** Duration, s, from years (of 365.25 d), 0 or more. */
export const year: (value: number) => Duration = /* @__PURE__ */ from(DURATION, YEAR);

/** Duration in s. */
export const inSecond: (duration: Duration) => number = /* @__PURE__ */ into(DURATION, SECOND);
/** Duration in min. */
export const inMinute: (duration: Duration) => number = /* @__PURE__ */ into(DURATION, MINUTE);
/** Duration in h. */
export const inHour: (duration: Duration) => number = /* @__PURE__ */ into(DURATION, HOUR);
/** Duration in d. */
export const inDay: (duration: Duration) => number = /* @__PURE__ */ into(DURATION, DAY);
/** Duration in years of 365.25 d. */
export const inYear: (duration: Duration) => number = /* @__PURE__ */ into(DURATION, YEAR);

/**
 * Reads a duration with its unit, such as `30 min`. Several units after each other are added: `1 h 30 min`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseDuration(text: string, options?: ParseOptions): Duration {
  return parse(DURATION, DURATION_UNITS, text, options);
}

/** As {@link parseDuration}, without throwing. */
export function tryParseDuration(text: string, options?: ParseOptions): Outcome<Duration> {
  return attempt(() => parseDuration(text, options));
}

/**
 * Prints a duration with its unit; {@link parseDuration} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatDuration(duration: Duration, options: FormatOptions<DurationUnit>): string {
  return format(DURATION, DURATION_UNITS, duration, options);
}

const SPEED: Quantity = { name: "a speed", si: "m/s", example: "7.5 m/s" };

const METRE_PER_SECOND: Unit = {
  symbol: "m/s",
  factor: 1,
  spellings: ["meter per second", "meters per second", "metres per second"],
  exactSpellings: ["m/sec"],
};
const FOOT_PER_MINUTE: Unit = {
  symbol: "ft/min",
  factor: 0.3048 / 60,
  spellings: ["ft/min", "fpm", "feet per minute"],
};

/** A unit of speed, by the name of its converter. */
export type SpeedUnit = "metrePerSecond" | "footPerMinute";

const SPEED_UNITS: Units<SpeedUnit> = {
  metrePerSecond: METRE_PER_SECOND,
  footPerMinute: FOOT_PER_MINUTE,
};

/** Speed, m/s, from m/s. */
export const metrePerSecond: (value: number) => Speed = /* @__PURE__ */ from(SPEED, METRE_PER_SECOND);
/** Speed, m/s, from ft/min. */
export const footPerMinute: (value: number) => Speed = /* @__PURE__ */ from(SPEED, FOOT_PER_MINUTE);

/** Speed in m/s. */
export const inMetrePerSecond: (speed: Speed) => number = /* @__PURE__ */ into(SPEED, METRE_PER_SECOND);
/** Speed in ft/min. */
export const inFootPerMinute: (speed: Speed) => number = /* @__PURE__ */ into(SPEED, FOOT_PER_MINUTE);

/**
 * Reads a speed with its unit, such as `7.5 m/s`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseSpeed(text: string, options?: ParseOptions): Speed {
  return parse(SPEED, SPEED_UNITS, text, options);
}

/** As {@link parseSpeed}, without throwing. */
export function tryParseSpeed(text: string, options?: ParseOptions): Outcome<Speed> {
  return attempt(() => parseSpeed(text, options));
}

/**
 * Prints a speed with its unit; {@link parseSpeed} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatSpeed(speed: Speed, options: FormatOptions<SpeedUnit>): string {
  return format(SPEED, SPEED_UNITS, speed, options);
}

const VOLUME_FLOW: Quantity = { name: "a volume flow", si: "m3/s", example: "1.4 L/s" };

const CUBIC_METRE_PER_SECOND: Unit = {
  symbol: "m³/s",
  factor: 1,
  spellings: ["cubic meter per second"],
  exactSpellings: ["m3/s"],
};
const CUBIC_METRE_PER_HOUR: Unit = {
  symbol: "m³/h",
  factor: 1 / 3600,
  spellings: ["cubic meter per hour"],
  exactSpellings: ["m3/h", "m3/hr"],
};
const LITRE_PER_SECOND: Unit = {
  symbol: "L/s",
  factor: 1e-3,
  spellings: ["L/s", "L/sec", "lps", "liter per second"],
};
const LITRE_PER_MINUTE: Unit = {
  symbol: "L/min",
  factor: 1e-3 / 60,
  spellings: ["L/min", "lpm", "liter per minute"],
};
const CUBIC_FOOT_PER_MINUTE: Unit = {
  symbol: "CFM",
  factor: (0.3048 * 0.3048 * 0.3048) / 60,
  spellings: ["cfm", "ft3/min", "cu ft/min", "cubic feet per minute"],
};

/** A unit of volume flow, by the name of its converter. */
export type VolumeFlowUnit =
  | "cubicMetrePerSecond"
  | "cubicMetrePerHour"
  | "litrePerSecond"
  | "litrePerMinute"
  | "cubicFootPerMinute";

const VOLUME_FLOW_UNITS: Units<VolumeFlowUnit> = {
  cubicMetrePerSecond: CUBIC_METRE_PER_SECOND,
  cubicMetrePerHour: CUBIC_METRE_PER_HOUR,
  litrePerSecond: LITRE_PER_SECOND,
  litrePerMinute: LITRE_PER_MINUTE,
  cubicFootPerMinute: CUBIC_FOOT_PER_MINUTE,
};

/** Volume flow, m3/s, from m3/s. */
export const cubicMetrePerSecond: (value: number) => VolumeFlow = /* @__PURE__ */ from(
  VOLUME_FLOW,
  CUBIC_METRE_PER_SECOND,
);
/** Volume flow, m3/s, from m3/h. */
export const cubicMetrePerHour: (value: number) => VolumeFlow = /* @__PURE__ */ from(
  VOLUME_FLOW,
  CUBIC_METRE_PER_HOUR,
);
/** Volume flow, m3/s, from L/s. */
export const litrePerSecond: (value: number) => VolumeFlow = /* @__PURE__ */ from(
  VOLUME_FLOW,
  LITRE_PER_SECOND,
);
/** Volume flow, m3/s, from L/min. */
export const litrePerMinute: (value: number) => VolumeFlow = /* @__PURE__ */ from(
  VOLUME_FLOW,
  LITRE_PER_MINUTE,
);
/** Volume flow, m3/s, from CFM (cubic feet per minute). */
export const cubicFootPerMinute: (value: number) => VolumeFlow = /* @__PURE__ */ from(
  VOLUME_FLOW,
  CUBIC_FOOT_PER_MINUTE,
);

/** Volume flow in m3/s. */
export const inCubicMetrePerSecond: (flow: VolumeFlow) => number = /* @__PURE__ */ into(
  VOLUME_FLOW,
  CUBIC_METRE_PER_SECOND,
);
/** Volume flow in m3/h. */
export const inCubicMetrePerHour: (flow: VolumeFlow) => number = /* @__PURE__ */ into(
  VOLUME_FLOW,
  CUBIC_METRE_PER_HOUR,
);
/** Volume flow in L/s. */
export const inLitrePerSecond: (flow: VolumeFlow) => number = /* @__PURE__ */ into(
  VOLUME_FLOW,
  LITRE_PER_SECOND,
);
/** Volume flow in L/min. */
export const inLitrePerMinute: (flow: VolumeFlow) => number = /* @__PURE__ */ into(
  VOLUME_FLOW,
  LITRE_PER_MINUTE,
);
/** Volume flow in CFM. */
export const inCubicFootPerMinute: (flow: VolumeFlow) => number = /* @__PURE__ */ into(
  VOLUME_FLOW,
  CUBIC_FOOT_PER_MINUTE,
);

/**
 * Reads a volume flow with its unit, such as `1.4 L/s`.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseVolumeFlow(text: string, options?: ParseOptions): VolumeFlow {
  return parse(VOLUME_FLOW, VOLUME_FLOW_UNITS, text, options);
}

/** As {@link parseVolumeFlow}, without throwing. */
export function tryParseVolumeFlow(text: string, options?: ParseOptions): Outcome<VolumeFlow> {
  return attempt(() => parseVolumeFlow(text, options));
}

/**
 * Prints a volume flow with its unit; {@link parseVolumeFlow} reads it back.
 *
 * @throws {@link InputError} `malformed-input`, for a value that cannot be, an unknown unit or digits out of range.
 */
export function formatVolumeFlow(flow: VolumeFlow, options: FormatOptions<VolumeFlowUnit>): string {
  return format(VOLUME_FLOW, VOLUME_FLOW_UNITS, flow, options);
}
