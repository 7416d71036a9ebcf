import type { Comparison, FitResult, FittedParameter } from "./fit.js";
import type { Reproduction } from "./reproduction.js";

/** A table as lines of text: so many columns to the left, the others to the right. */
function table(toTheLeft: number, rows: readonly (readonly string[])[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows.map((row) =>
    row
      .map((cell, column) =>
        column < toTheLeft ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!),
      )
      .join("  "),
  );
}

/** What a fit came to. */
export function reportOf(title: string, result: FitResult, reproduction: Reproduction | undefined): string {
  const { parameters, comparisons, against, scatter } = result;
  const lines = [
    title,
    "",
    ...table(2, [
      ["pair", "parameter", "fitted", "error", "filed", "difference", "in errors"],
      ...(reproduction?.parameters ?? parameters).map(parameterRow),
    ]),
    "",
    "fitted to",
    ...comparisonTable(comparisons),
    `root mean square: ${rootMeanSquares(comparisons)}; squares per degree of freedom: ${scatter.toPrecision(2)}`,
  ];
  if (scatter > 1) {
    lines.push(
      `The data scatter more than they should: errors are ${Math.sqrt(scatter).toPrecision(2)} times as large.`,
    );
  }
  if (against.length > 0) lines.push("", "not fitted to", ...comparisonTable(against));
  if (reproduction !== undefined) lines.push("", changeOf(reproduction));
  return lines.join("\n");
}

/** How far several fits come out from what is filed. */
export function checkReport(checked: readonly (readonly [name: string, Reproduction | undefined])[]): string {
  const rows = checked.flatMap(([name, reproduction]) =>
    (reproduction?.parameters ?? []).map((parameter) => [name, ...parameterRow(parameter)]),
  );
  return [
    ...table(3, [
      ["fit", "pair", "parameter", "fitted", "error", "filed", "difference", "in errors"],
      ...rows,
    ]),
    "",
    ...checked.flatMap(([name, reproduction]) =>
      reproduction === undefined ? [`${name}: not filed`] : [`${name}: ${changeOf(reproduction)}`],
    ),
  ].join("\n");
}

function changeOf({ change, isReproduced }: Reproduction): string {
  const size = `${signed(change.uncertainties, 2)} of its uncertainty at ${change.where}`;
  return `what is filed is ${isReproduced ? "" : "NOT "}reproduced; the largest change is ${size}`;
}

function parameterRow(
  parameter: FittedParameter & { readonly filed?: number; readonly errors?: number },
): readonly string[] {
  const { between, name, value, error, filed, errors } = parameter;
  const places = name === "xi" ? 7 : name === "zeta" ? 3 : 5;
  return [
    between.join("/"),
    name,
    value.toFixed(places),
    error.toFixed(places),
    filed?.toFixed(places) ?? "",
    filed === undefined ? "" : signed(value - filed, places),
    errors === undefined ? "" : signed(errors, 2),
  ];
}

/** Factor and unit in which each comparison is printed. */
const printed = {
  temperature: { factor: 1, unit: "K", places: 3 },
  pressure: { factor: 100, unit: "%", places: 3 },
  vapour: { factor: 100, unit: "mol %", places: 3 },
} as const;

function comparisonTable(comparisons: readonly Comparison[]): readonly string[] {
  return table(1, [
    ["point", "given", "computed less given", "of its uncertainty"],
    ...comparisons.map(({ point, what, component, value, uncertainty }) => {
      const { factor, unit, places } = printed[what];
      const pressure =
        point.pressure === undefined ? "" : ` at ${(point.pressure / 1000).toPrecision(6)} kPa`;
      return [
        `${point.name} ${point.kind}${component === undefined ? "" : `, ${component} in the vapour`}`,
        `${minus((point.temperature - 273.15).toFixed(2))} °C${pressure}`,
        `${signed(factor * value, places)} ${unit}`,
        signed(value / uncertainty, 2),
      ];
    }),
  ]);
}

function rootMeanSquares(comparisons: readonly Comparison[]): string {
  return (Object.keys(printed) as (keyof typeof printed)[])
    .flatMap((what) => {
      const values = comparisons.filter((comparison) => comparison.what === what).map(({ value }) => value);
      if (values.length === 0) return [];
      const { factor, unit, places } = printed[what];
      const mean = Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
      return [`${(factor * mean).toFixed(places)} ${unit}`];
    })
    .join(", ");
}

function signed(value: number, places: number): string {
  const sign = Number(value.toFixed(places)) < 0 ? "−" : "+";
  return sign + Math.abs(value).toFixed(places);
}

function minus(text: string): string {
  return text.replace("-", "−");
}
