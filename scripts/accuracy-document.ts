import type { Comparison } from "../tests/handbook/comparisons.js";
import type { Exceptions } from "../tests/handbook/exceptions.js";
import { roundedUp, sizeOf } from "../tests/handbook/limits.js";
import type { Recorded } from "../tests/handbook/reference-library.js";
import type { Check, PublishedCheck } from "../tests/handbook/verification.js";
import { type BlendFindings, blendsText } from "./accuracy-blends.js";
import { grouped, percent } from "./accuracy-text.js";

/** Everything that the document is made of. */
export interface Findings {
  /** Tables in print, without the exceptions. */
  readonly comparisons: readonly Comparison[];
  readonly exceptions: Exceptions;
  /** Numbers of the evaluation in many digits. */
  readonly evaluated: readonly Check[];
  readonly published: readonly PublishedCheck[];
  /** Numbers of the reference library. */
  readonly recorded: readonly Recorded[];
  /** Which library that is. */
  readonly recordedFrom: string;
  readonly blends: BlendFindings;
}

/** The text of `docs/accuracy.md`. */
export function accuracyDocument(findings: Findings): string {
  const sources = sourcesOf(findings.comparisons);
  return `${[
    "# Accuracy",
    introduction,
    "## Tables in print",
    tablesAbout,
    ...byFluid(findings.comparisons).flatMap(([fluid, comparisons]) => [
      `### ${fluid}`,
      deviationTable(comparisons, sources),
    ]),
    "### Sources",
    sourceList(sources),
    blendsText(findings.blends),
    "## The same equations in many digits",
    evaluatedText(findings.evaluated),
    "## Published values",
    publishedText(findings),
    "## Another program",
    recordedText(findings),
    "## Exceptions",
    exceptionsText(findings.exceptions),
  ].join("\n\n")}\n`;
}

const introduction = `How far Dewline lies from numbers that others published. Each line takes one property of one fluid in one
region and compares it with every row of one source: *points* is how many rows there are, *worst* the largest deviation
of Dewline from the print and *mean* the average of its size. A deviation holds three things at once: the rounding of
the print, the difference between the equation behind the print and the one used here, and errors of Dewline. So it
does not say how near either is to the real fluid: for that see the uncertainty given in the paper of each equation.
*Read* means that the page was in view when the number was written down, *recalled* that it is from memory. The numbers
here are rounded to two digits, the worst ones up; the tests fail when one of them is exceeded. Written by
\`npm run accuracy\`.`;

const tablesAbout = `Saturation from 98 % of the critical temperature up is called near critical. Constants of one refrigerant
are those of the equation: its own critical point, found where two derivatives of pressure vanish, and its lowest
temperature as triple point. A blend stands here by its components, \`multi-fluid\`, with the critical point of the mixture,
and, where it was published as one fluid, also by that equation, with the critical point as published; *fitted* marks
numbers that one of its mixing parameters was fitted to, so that it proves nothing that they are met. Less than 0.0001 %,
or 0.00001 of another unit, is shown as 0. Values that lie outside the tolerance of their source are not in these lines:
they are [exceptions](#exceptions), each with its cause.`;

function byFluid(comparisons: readonly Comparison[]): readonly (readonly [string, readonly Comparison[]])[] {
  return grouped(comparisons, ({ fluid, equation }) => `${fluid}, ${equation}`);
}

function deviationTable(comparisons: readonly Comparison[], sources: readonly string[]): string {
  const lines = grouped(comparisons, (one) => `${regionOf(one)}|${one.property}|${one.source}`).map(
    ([, group]) => {
      const [first] = group as [Comparison];
      const sizes = group.map(sizeOf);
      const worst = roundedUp(Math.max(...sizes));
      const mean = sizes.reduce((sum, size) => sum + size, 0) / sizes.length;
      const cells = [
        regionOf(first),
        words(first.property),
        String(group.length),
        shownDeviation(worst, first),
        shownDeviation(mean, first),
        `${sources.indexOf(sourceOf(first)) + 1}`,
      ];
      return `| ${cells.join(" | ")} |`;
    },
  );
  return [
    "| region | property | points | worst | mean | source |",
    "| --- | --- | ---: | ---: | ---: | ---: |",
    ...lines,
  ].join("\n");
}

function regionOf({ region, isFitted }: Comparison): string {
  return isFitted ? `${region}, fitted` : region;
}

/** Unit that readers expect, and its size in SI, of a property with an absolute tolerance. */
function unitOf(property: string): readonly [unit: string, size: number] {
  if (/enthalpy$/i.test(property)) return ["kJ/kg", 1e3];
  if (/entropy$/i.test(property)) return ["J/(kg K)", 1];
  if (/temperature$|point$/i.test(property)) return ["K", 1];
  throw new Error(`no unit for ${property}`);
}

function shownDeviation(size: number, { property, isRelative }: Comparison): string {
  const [unit, scale] = isRelative ? ["%", 1e-2] : unitOf(property);
  const isNothing = size <= (isRelative ? 1.1e-6 : 1e-5 * scale);
  return isNothing ? `0 ${unit}` : `${Number((size / scale).toPrecision(2))} ${unit}`;
}

function words(property: string): string {
  const spaced = property.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`).trim();
  return spaced.replace("joule thomson", "Joule–Thomson coefficient");
}

function sourceOf({ source, status }: Comparison): string {
  return `${source} (${status})`;
}

function sourcesOf(comparisons: readonly Comparison[]): readonly string[] {
  return [...new Set(comparisons.map(sourceOf))];
}

function sourceList(sources: readonly string[]): string {
  return sources.map((source, index) => `${index + 1}. ${source}`).join("\n");
}

function evaluatedText(checks: readonly Check[]): string {
  const lines = grouped(checks, ({ fluid, equation }) => `${fluid} | ${equation}`).map(
    ([name, group]) => `| ${name} | ${group.length} |`,
  );
  return [
    `Every equation was also evaluated independently, by another program in 25 to 40 digits: saturation from −60 to
100 °C, boiling points, acentric factors, ideal heat capacities, and the residuals that the equation leaves at its
published critical point. Dewline reproduces all ${checks.length} numbers to half a unit of their last printed digit (four to
ten of them), the residuals to that or 1e-13, whichever is larger. This says that the equations are evaluated rightly,
not that their coefficients are right.`,
    ["| fluid | equation | numbers |", "| --- | --- | ---: |", ...lines].join("\n"),
  ].join("\n\n");
}

function publishedText({ published, exceptions }: Findings): string {
  const loose = published.filter((check) => check.loose);
  const strict = published.length - loose.length;
  const deviating = exceptions.published.flatMap(({ values }) => values).length;
  const lines = loose.map(
    ({ id, printed, unit, computed }) =>
      `| ${readable(id)} | ${unit === "1" ? printed : `${printed} ${unit}`} | ${percent(computed / Number(printed) - 1)} |`,
  );
  return [
    `${published.length} values were remembered before the equations were evaluated: boiling points, vapour pressures, densities,
acentric factors, and the states of R-290 that its paper gives for checking programs. ${strict} of them were remembered
exactly: ${strict - deviating} are met to the last digit, among them all 20 numbers of the five states of R-290, in eight digits each, and
${deviating} deviate for reasons given among the [exceptions](#exceptions). The others were remembered loosely, or belong to another
equation:`,
    ["| value | remembered | deviation |", "| --- | ---: | ---: |", ...lines].join("\n"),
  ].join("\n\n");
}

function recordedText({ recorded, recordedFrom }: Findings): string {
  const lines = grouped(recorded, ({ substance, group }) => `${substance} | ${group}`).map(
    ([name, group]) => `| ${name} | ${group.length} |`,
  );
  return [
    `Numbers recorded from a general-purpose library of steam properties written by other people
(${recordedFrom}): ammonia by the equation of 1993 (pressure, heat capacities and speed of sound in ten
digits, saturation in seven) and the vapour pressure of water and ice (in eleven). All are met to half a unit of the
last digit.`,
    ["| substance | what | numbers |", "| --- | --- | ---: |", ...lines].join("\n"),
  ].join("\n\n");
}

function exceptionsText({ tables, published }: Exceptions): string {
  const inTables = tables.map(({ cause, values }) => {
    const rows = values.map(
      ({ row, equation, property, deviation }) =>
        `\`${row}\` ${words(property)} by ${equation} (${deviation})`,
    );
    return `- ${rows.join("; ")}. ${cause}`;
  });
  const remembered = published.map(({ cause, values }) => {
    const names = values.map(({ check, deviation }) => `${readable(check)} (${deviation})`);
    return `- ${names.join("; ")}. ${cause}`;
  });
  return [
    `Values that are not met, with the deviation (computed less printed; relative, or in SI units where the tolerance is
absolute) and the cause as far as it was found. The tests want each of them to stay what it is.`,
    "In tables in print:",
    inTables.join("\n"),
    "Among the published values:",
    remembered.join("\n"),
  ].join("\n\n");
}

/** A check's name as a reader would put it: `R-12 marx-1992 saturation pressure at 298.15 K`. */
function readable(id: string): string {
  return id
    .replace(/([a-z])([A-Z])/g, (_, before: string, letter: string) => `${before} ${letter.toLowerCase()}`)
    .replace(/ temperature ([\d.]+)/, " at $1 K")
    .replace(/ pressure [\d.]+$/, "");
}
