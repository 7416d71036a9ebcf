import { findPairIn, type Pair, type PairData } from "../../src/catalogue/index.js";
import { compare, type FitResult } from "./fit.js";
import {
  type FitDescription,
  type FreePair,
  type Parameters,
  parametersIn,
  parametersOf,
} from "./fit-schema.js";
import type { EquilibriumPoint, EquilibriumSet } from "./points.js";

/** How a fitted pair is filed. */
export interface FiledPair {
  /** Below `data/pairs/`. */
  readonly file: string;
  readonly text: string;
}

/**
 * The files of the pairs of a fit.
 *
 * What a file says of departure function and notes is kept, and its deviation where that is larger: how a fit meets its own
 * data says little about how far it may be off.
 *
 * @param sets - Where the data are from, the first most of all.
 * @param existing - What a file holds, if there is one.
 */
export function pairFiles(
  { free, notes }: FitDescription,
  result: FitResult,
  sets: readonly EquilibriumSet[],
  existing: (file: string) => PairData | undefined,
): readonly FiledPair[] {
  return free.map(({ between, form }) => {
    const file = `${between.join("+")}.json`;
    const before = existing(file);
    const data: PairData = {
      between,
      grade: "regressed",
      reducing: {
        ...digitsOf(form, parametersIn(findPairIn(result.pairs, ...between)!)),
        source: "own-regression",
        status: "computed",
      } as PairData["reducing"],
      ...(before?.departure && { departure: before.departure }),
      fittedTo: fittedTo(between, result, sets),
      deviation: deviationOf(between, result, before),
      notes: before?.notes ?? notes,
    };
    return { file, text: pairText(data) };
  });
}

/** The text of a pair file, laid out as in `data/pairs/`. */
export function pairText(data: PairData): string {
  return `${textOf(data, "", 0)}\n`;
}

const lineWidth = 110;

/** Lists and deviations take one line if they fit into it, quantities always do, other objects never. */
function textOf(value: unknown, key: string, depth: number): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const indent = "  ".repeat(depth);
  const isList = Array.isArray(value);
  const items = isList
    ? value.map((item) => JSON.stringify(item))
    : Object.entries(value).map(
        ([name, inner]) => `${JSON.stringify(name)}: ${textOf(inner, name, depth + 1)}`,
      );
  const inline = isList ? `[${items.join(", ")}]` : `{ ${items.join(", ")} }`;
  const fits = `${indent}"${key}": ${inline},`.length <= lineWidth;
  if ("unit" in value || (fits && (isList || key === "deviation"))) return inline;
  const [open, close] = isList ? "[]" : "{}";
  return `${open}\n${items.map((item) => `${indent}  ${item}`).join(",\n")}\n${indent}${close}`;
}

function digitsOf(form: FreePair["form"], parameters: Parameters): object {
  const units: Readonly<Record<string, string>> = { zeta: "K", xi: "dm3/mol" };
  const texts = parametersOf[form].map(({ name, decimals }) => {
    const text = String(Number(parameters[name]!.toFixed(decimals)));
    const unit = units[name];
    return [name, unit === undefined ? text : { value: text, unit }] as const;
  });
  return { form, ...Object.fromEntries(texts) };
}

/** The points that tell of a pair. */
function pointsWith(between: Pair["between"], { comparisons }: FitResult): readonly EquilibriumPoint[] {
  const points = [...new Set(comparisons.map(({ point }) => point))];
  return points.filter(({ fluids }) =>
    between.every((name) => fluids.some(({ designation }) => designation === name)),
  );
}

function fittedTo(
  between: Pair["between"],
  result: FitResult,
  sets: readonly EquilibriumSet[],
): NonNullable<PairData["fittedTo"]> {
  const points = pointsWith(between, result);
  const names = [...new Set(points.map(({ name }) => name))];
  const [first, ...others] = sets;
  const also = others.map(({ title }) => `; ${title}`).join("");
  const { source, status } = first!;
  return { source, status, remark: `${names.join(", ")}: ${kindsOf(points)}${also}` };
}

/** `bubble and dew points at 101.325 kPa, azeotropes`. */
function kindsOf(points: readonly EquilibriumPoint[]): string {
  const boundaries = points.filter(({ kind }) => kind === "bubble" || kind === "dew");
  const words = [...new Set(boundaries.map(({ kind }) => kind))].join(" and ");
  const [pressure, ...otherPressures] = new Set(boundaries.map((point) => point.pressure));
  const at = otherPressures.length > 0 ? "" : ` at ${Number((pressure! / 1000).toPrecision(6))} kPa`;
  return [
    ...(boundaries.length > 0 ? [`${words} points${at}`] : []),
    ...(points.some(({ kind }) => kind === "vle") ? ["both phases in equilibrium"] : []),
    ...(points.some(({ kind }) => kind === "azeotrope") ? ["azeotropes"] : []),
  ].join(", ");
}

function deviationOf(
  between: Pair["between"],
  result: FitResult,
  before: PairData | undefined,
): PairData["deviation"] {
  const inPressure = compare(result.models, pointsWith(between, result), true).filter(
    ({ what }) => what === "pressure",
  );
  const worst = Math.max(0, ...inPressure.map(({ value }) => Math.abs(value)));
  const uncertain = Math.max(0, ...inPressure.map(({ uncertainty }) => uncertainty));
  const relative = upInSecondDigit(Math.max(worst, uncertain, 1e-4));
  if (before !== undefined && Number(before.deviation.relative) >= relative) return before.deviation;
  const percent = (share: number): string => `${Number((100 * share).toPrecision(2))} %`;
  return {
    relative: String(relative),
    basis: `The pressures it was fitted to are missed by up to ${percent(worst)} and known to ${percent(uncertain)}.`,
  };
}

function upInSecondDigit(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Number((Math.ceil(value / step - 1e-9) * step).toPrecision(2));
}
