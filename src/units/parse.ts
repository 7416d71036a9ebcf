import { InputError } from "./errors.js";
import { type Quantity, toSi, type Unit, type Units } from "./unit.js";

/** Options of every function that reads a quantity from text. */
export interface ParseOptions {
  /** Where the text came from, such as `readings.suction`; stands in the error. Default: the input itself. */
  readonly path?: string;
}

/** A text taken apart: the number, and whatever stood behind it. */
interface Written {
  readonly number: number;
  readonly unitText: string;
}

/**
 * Reads one quantity with its unit and gives SI.
 *
 * @throws {@link InputError} `malformed-input`: no number, no unit, an unknown unit, a decimal comma, below what
 * nature allows.
 */
export function parse<Name extends string>(
  quantity: Quantity,
  units: Units<Name>,
  text: string,
  options?: ParseOptions,
): number {
  const path = options?.path ?? "";
  const expected = expectation(quantity, units);
  const { number, unitText } = readNumber(text, path, expected, quantity.fractions);
  const unit = findUnit(units, unitText);
  if (unit !== undefined) return toSi(quantity, unit, number, path, text);
  const sum = quantity.compound ? readCompound(quantity, units, text, path) : undefined;
  if (sum === undefined) throw new InputError([{ path, value: text, expected }]);
  return toSi(quantity, { symbol: quantity.si, factor: 1, spellings: [] }, sum, path, text);
}

/** What a quantity's text must look like, with all its units. */
export function expectation<Name extends string>(quantity: Quantity, units: Units<Name>): string {
  const symbols = Object.values<Unit>(units).map(({ symbol }) => symbol);
  return `${quantity.name} with its unit, one of ${symbols.join(", ")}, such as ${quantity.example}`;
}

/**
 * Takes the number off the front of a text. A decimal comma is refused, not read: in "1,500" nobody can tell a
 * thousand and a half from one and a half.
 */
export function readNumber(text: string, path: string, expected: string, fractions?: boolean): Written {
  if (typeof text !== "string") throw new InputError([{ path, value: text, expected }]);
  const plain = normalNumber(text);
  if (/\d\s*,\s*\d/.test(plain)) {
    throw new InputError([
      { path, value: text, expected: `a decimal point and no other mark among the digits; ${expected}` },
    ]);
  }
  const broken = fractions ? FRACTION.exec(plain) : null;
  if (broken !== null) {
    const [, sign, whole, above, below, unitText] = broken;
    const magnitude = Number(whole ?? 0) + Number(above) / Number(below);
    return { number: sign === "-" ? -magnitude : magnitude, unitText: unitText ?? "" };
  }
  const found = DECIMAL.exec(plain);
  if (found === null) throw new InputError([{ path, value: text, expected }]);
  return { number: Number(found[1]), unitText: found[2] ?? "" };
}

/**
 * The unit that a text spells, if any. Blanks do not count, "in Hg" is inHg, unless the first word alone is another
 * unit: "m m" may be a slip for m, and is not mm.
 */
export function findUnit<Name extends string>(units: Units<Name>, unitText: string): Unit | undefined {
  const [firstWord = "", ...others] = unitText.trim().split(/\s+/);
  const unit = lookUp(units, unitText);
  const alone = others.length > 0 ? lookUp(units, firstWord) : undefined;
  return alone === undefined || alone === unit ? unit : undefined;
}

function lookUp<Name extends string>(units: Units<Name>, unitText: string): Unit | undefined {
  const exact = normalUnit(unitText);
  if (exact === "") return undefined;
  const folded = exact.toLowerCase();
  for (const [name, unit] of Object.entries<Unit>(units)) {
    const exactly = [unit.symbol, ...(unit.exactSpellings ?? [])];
    const loosely = [name, ...unit.spellings];
    if (exactly.some((spelling) => normalUnit(spelling) === exact)) return unit;
    if (loosely.some((spelling) => normalUnit(spelling).toLowerCase() === folded)) return unit;
  }
  return undefined;
}

/**
 * One spelling for all the ways of typing the same unit: superscripts and special letters become plain, and blanks,
 * dots, brackets and the hat are dropped, so that "kgf / cm²" and "kgf/cm^2" are equal, and "bar (g)" and "barg".
 */
export function normalUnit(unitText: string): string {
  return unitText
    .replace(/[“”″]|''|′′/g, '"')
    .replace(/[’′]/g, "'")
    .replace(/º/g, "°")
    .normalize("NFKC")
    .replace(/[\s.·⋅*^()]/g, "");
}

const DECIMAL = /^\s*([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)(?![\d.])(.*)$/s;
const FRACTION = /^\s*([+-])?(?:(\d+)[\s-]+)?(\d+)\/(\d+)(?![\d./])(.*)$/s;
const PART = /\s*((?:\d+[\s-]+)?\d+\/\d+|\d+(?:\.\d+)?)\s*([^\d\s.,+-][^\d,+-]*)/y;

/** Full-width digits and the typographic minus become plain. */
function normalNumber(text: string): string {
  return text.replace(/[−－]/g, "-").replace(/[０-９．]/g, (wide) => wide.normalize("NFKC"));
}

/** Reads `2 lb 3 oz`: parts without sign, each in a smaller unit than the one before it. */
function readCompound<Name extends string>(
  quantity: Quantity,
  units: Units<Name>,
  text: string,
  path: string,
): number | undefined {
  const plain = normalNumber(text).trim();
  const part = new RegExp(PART);
  let sum = 0;
  let previous = Number.POSITIVE_INFINITY;
  while (part.lastIndex < plain.length) {
    const found = part.exec(plain);
    if (found === null) return undefined;
    const { number, unitText } = readNumber(found[0], path, "", quantity.fractions);
    const unit = findUnit(units, unitText);
    if (unit === undefined || !(unit.factor < previous)) return undefined;
    sum += number * unit.factor;
    previous = unit.factor;
  }
  return toSi(quantity, { symbol: quantity.si, factor: 1, spellings: [] }, sum, path, text);
}
