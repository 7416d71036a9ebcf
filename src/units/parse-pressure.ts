import { attempt, InputError, type Outcome } from "./errors.js";
import type { GaugePressure, Pressure } from "./flavour.js";
import type { toAbsolute, toGauge } from "./gauge.js";
import { expectation, findUnit, normalUnit, type ParseOptions, readNumber } from "./parse.js";
import { ABSOLUTE_PRESSURE, GAUGE_PRESSURE, GAUGE_PRESSURE_UNITS, PRESSURE_UNITS } from "./pressure-unit.js";
import { type Quantity, toSi, type Unit } from "./unit.js";

/** A pressure that was read from text, with the kind that the text, or the caller, said it is. */
export type PressureReading =
  | { readonly kind: "absolute"; readonly pressure: Pressure }
  | { readonly kind: "gauge"; readonly pressure: GaugePressure };

/** Options of {@link parsePressure}. */
export interface PressureParseOptions extends ParseOptions {
  /** What a bare `9.5 bar` is; without this it is refused. A kind written in the text goes first. */
  readonly bare?: PressureReading["kind"];
}

/** What {@link parsePressure} reads; no converter has this, because it is either of two quantities. */
const PRESSURE: Quantity = { name: "a pressure", si: "Pa", example: "9.5 bar gauge or 9.5 bar abs" };

/** What a dial or a colleague may say, and what should be written instead; never guessed. */
const HINTS: Readonly<Record<string, string>> = {
  kg: "kgf/cm²: a kg is no pressure, even if a dial says so",
  kilo: "kgf/cm²: a kilo is no pressure, even if a dial says so",
  kilos: "kgf/cm²: a kilo is no pressure, even if a dial says so",
  mpa: "MPa with capitals M and P: mPa is a thousandth of a pascal",
  mbar: "mbar with a small m: Mbar is a million bar",
  lb: "psi: a pound is no pressure",
  lbs: "psi: a pound is no pressure",
  pounds: "psi: a pound is no pressure",
  mm: "mmHg: a millimetre is no pressure",
  cm: "cmHg: a centimetre is no pressure",
  in: "inHg or inH2O: an inch is no pressure",
  inches: "inHg or inH2O: an inch is no pressure",
  '"': "inHg or inH2O: an inch is no pressure",
};

const KIND = /^(.+?)[-_]?(absolute|abs|a|gauge|ga|g|vacuum|vac)$/i;

/**
 * Reads a pressure whose text says which kind it is: `9.5 bar gauge`, `9.5 barg`, `115 psig`, `14.7 psia`,
 * `0.8 MPa(G)`, or a vacuum as a positive number, `59 cmHg vac`, which is the gauge pressure −59 cmHg.
 *
 * A bare `9.5 bar` is refused unless `bare` says what it is. Torr and micron need no word: they are absolute. `kg/cm2`,
 * as many dials print it, is read as kgf/cm².
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 * @example
 * ```ts
 * parsePressure("115 psig").kind // → "gauge"
 * parsePressure("115 psig").pressure // → 792897 Pa
 * ```
 */
export function parsePressure(text: string, options?: PressureParseOptions): PressureReading {
  const path = options?.path ?? "";
  const refuse = (expected: string): InputError => new InputError([{ path, value: text, expected }]);
  const understood = expectation(PRESSURE, PRESSURE_UNITS);
  const { number, unitText } = readNumber(text, path, understood);
  const { unit, kind = options?.bare, rest } = readKind(unitText);
  if (unit === undefined) {
    const hint = rest.toLowerCase();
    throw refuse(Object.hasOwn(HINTS, hint) ? `${HINTS[hint]}` : understood);
  }
  const onGauges = Object.values<Unit>(GAUGE_PRESSURE_UNITS).includes(unit);
  if (kind === "absolute" || (kind === undefined && !onGauges)) {
    return { kind: "absolute", pressure: toSi(ABSOLUTE_PRESSURE, unit, number, path, text) };
  }
  if (kind === undefined) {
    const bare = `${number} ${unit.symbol}`;
    throw refuse(`a pressure that says what it is: ${bare} gauge or ${bare} abs`);
  }
  if (!onGauges) throw refuse(`an absolute pressure, because a scale in ${unit.symbol} begins at nothing`);
  if (kind === "vacuum" && number < 0)
    throw refuse("a vacuum as a positive number, or a negative gauge pressure");
  return {
    kind: "gauge",
    pressure: toSi(GAUGE_PRESSURE, unit, kind === "vacuum" ? 0 - number : number, path, text),
  };
}

/** As {@link parsePressure}, without throwing. */
export function tryParsePressure(text: string, options?: PressureParseOptions): Outcome<PressureReading> {
  return attempt(() => parsePressure(text, options));
}

/**
 * Reads an absolute pressure; a bare `9.5 bar` is taken as absolute, because the caller asked for it by name. A text
 * that says gauge is refused: {@link toAbsolute} needs the local atmosphere.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseAbsolutePressure(text: string, options?: ParseOptions): Pressure {
  const reading = parsePressure(text, { ...options, bare: "absolute" });
  if (reading.kind === "absolute") return reading.pressure;
  throw new InputError([
    { path: options?.path ?? "", value: text, expected: "an absolute pressure, not a gauge reading" },
  ]);
}

/** As {@link parseAbsolutePressure}, without throwing. */
export function tryParseAbsolutePressure(text: string, options?: ParseOptions): Outcome<Pressure> {
  return attempt(() => parseAbsolutePressure(text, options));
}

/**
 * Reads a gauge pressure; a bare `9.5 bar` is taken as gauge, because the caller asked for it by name. A text that says
 * absolute, or is in Torr or micron, is refused: {@link toGauge} needs the local atmosphere.
 *
 * @throws {@link InputError} `malformed-input`, with the units that are understood.
 */
export function parseGaugePressure(text: string, options?: ParseOptions): GaugePressure {
  const reading = parsePressure(text, { ...options, bare: "gauge" });
  if (reading.kind === "gauge") return reading.pressure;
  throw new InputError([
    { path: options?.path ?? "", value: text, expected: "a gauge pressure, not an absolute one" },
  ]);
}

/** As {@link parseGaugePressure}, without throwing. */
export function tryParseGaugePressure(text: string, options?: ParseOptions): Outcome<GaugePressure> {
  return attempt(() => parseGaugePressure(text, options));
}

interface UnitAndKind {
  readonly unit: Unit | undefined;
  readonly kind?: PressureReading["kind"] | "vacuum";
  /** What was looked up as a unit. */
  readonly rest: string;
}

/** The whole text goes first, because mmHg ends in g and Pa in a. */
function readKind(unitText: string): UnitAndKind {
  const plain = normalUnit(unitText);
  const whole = findUnit(PRESSURE_UNITS, unitText);
  const found = KIND.exec(plain);
  if (whole !== undefined || found === null) return { unit: whole, rest: plain };
  const [, rest = "", mark = ""] = found;
  const kind = /^a/i.test(mark) ? "absolute" : /^g/i.test(mark) ? "gauge" : "vacuum";
  const unit = findUnit(PRESSURE_UNITS, rest);
  // "kg" and the like are not a "k" with a "g" behind it.
  return unit === undefined && Object.hasOwn(HINTS, plain.toLowerCase())
    ? { unit, rest: plain }
    : { unit, kind, rest };
}
