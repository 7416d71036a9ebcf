import type { BlendCheck } from "../tests/handbook/blend-checks.js";
import type { Comparison } from "../tests/handbook/comparisons.js";
import { roundedUp, sizeOf } from "../tests/handbook/limits.js";
import type { Listed, ListingRole } from "../tests/handbook/listings.js";
import { isPrinted } from "../tests/handbook/printed.js";
import { grouped, markdownTable, percent, signed } from "./accuracy-text.js";

/** What is said of blends apart from the tables in print. */
export interface BlendFindings {
  /** Bubble and dew pressures beside the curves of the equations as one fluid. */
  readonly curves: readonly Comparison[];
  /** Tables in print of blends from their components, with the exceptions. */
  readonly tables: readonly Comparison[];
  /** Those of them that lie outside the tolerance of their source. */
  readonly exceptions: readonly Comparison[];
  readonly listings: readonly Listed[];
  readonly glides: readonly Listed[];
  readonly checks: readonly BlendCheck[];
}

/** The section on blends of `docs/accuracy.md`. */
export function blendsText({ curves, tables, exceptions, listings, glides, checks }: BlendFindings): string {
  return [
    "## Blends from their components",
    introduction,
    "### Curves of the equations as one fluid",
    curvesText(curves),
    "### Tables of blends in print",
    tablesText(tables, exceptions),
    "### Listed bubble and dew points: independent",
    independentText,
    listingTable(listings, "independent"),
    "### Listed bubble and dew points: fitted, proves nothing",
    fittedText,
    listingTable(listings, "fitted"),
    "### Listed bubble and dew points: older",
    olderText,
    listingTable(listings, "older"),
    "### Glide",
    glideText(glides),
    "### Blends by another program",
    checksText(checks),
  ].join("\n\n");
}

const introduction = `A blend is computed from the equations of its components and a few parameters for each pair of them. Some of
those parameters are published, some were fitted by us to listed bubble and dew points, because no measurements were
at hand, and some are estimates; \`refrigerant(…).mixing\` says which, and by how much pressures may be off. Where a
parameter was fitted, agreement with what it was fitted to proves nothing, and the tables here keep such numbers apart.`;

function curvesText(curves: readonly Comparison[]): string {
  const rows = grouped(curves, ({ fluid, region }) => `${fluid}|${region}`).map(([, group]) => {
    const [first] = group as [Comparison];
    const worst = group.reduce((left, right) => (sizeOf(right) > sizeOf(left) ? right : left));
    const mean = group.reduce((sum, one) => sum + sizeOf(one), 0) / group.length;
    const at = worst.inputs["temperature"] ?? Number.NaN;
    return [
      first.fluid,
      first.region,
      `${group.length}`,
      percent(roundedUp(sizeOf(worst))),
      `${Number(at.toFixed(2))} K`,
      percent(mean),
    ];
  });
  return [
    `Lemmon, Int. J. Thermophys. 24 (2003) 991, gives bubble and dew pressures of four blends as curves (recalled). Beside
them the pressures from the components, from −60 °C to 98 % of the critical temperature, every 0.25 K. All of these
blends' pairs are published, and none was fitted by us to anything. R-507A's bubble line lies up to 0.09 % above its dew
line, in both.`,
    markdownTable(["blend", "line", ">points", ">worst", ">at", ">mean"], rows),
  ].join("\n\n");
}

function tablesText(tables: readonly Comparison[], exceptions: readonly Comparison[]): string {
  const rows = grouped(tables, ({ fluid }) => fluid).map(([fluid, group]) => [
    fluid,
    `${group.length}`,
    `${group.filter(({ isFitted }) => isFitted).length}`,
    `${exceptions.filter((one) => one.fluid === fluid).length}`,
  ]);
  return [
    `The deviations stand [above](#tables-in-print), under each blend with \`multi-fluid\`. They are held to the tolerance
of each source alone: nothing is added for how well the mixing is known. Table 34 of ISO 17584, R-404A from 0.01 to
0.08 MPa, is met in every digit: 90 numbers, among them enthalpies, heat capacities and speeds of sound.`,
    markdownTable(["blend", ">numbers", ">fitted", ">outside: exceptions"], rows),
  ].join("\n\n");
}

const independentText = `ANSI/ASHRAE 34 and ISO 817, at 101.325 kPa, to 0.1 K, from memory. No parameter of these blends saw its listing. 0.1 K is
0.5 % in pressure. The tests want each deviation to stay what was stated when the parameters were settled.`;

const fittedText = `The same of blends whose listing was used to fit a parameter of a pair. What is left is how far the fits, each to
several listings, could not follow them all; it says nothing about the real blend.`;

const olderText = `R-32 with R-1234yf was fitted to newer values of R-454B and R-454C. The listings from before contradict them, and
R-454A's is of the same time: no fit sees them any more. Which are right is not known.`;

function listingTable(listings: readonly Listed[], wanted: ListingRole): string {
  const rows = grouped(
    listings.filter(({ role }) => role === wanted),
    ({ blend }) => blend,
  ).map(([blend, points]) => [
    blend,
    ...points.flatMap((point) => [
      signed(Number(point.printed), 1),
      signed(point.computed, 2),
      deviationOf(point),
    ]),
    points[0]?.remark?.replace(/(?<![\dA-Za-z])-(?=\d)/g, "−") ?? "",
  ]);
  const heads = ["bubble", "dew"].flatMap((line) => [`>${line}, listed °C`, ">computed", ">deviation K"]);
  return markdownTable(["blend", ...heads, "remark"], rows);
}

function deviationOf({ computed, printed }: Listed): string {
  return signed(computed - Number(printed), 2);
}

function glideText(glides: readonly Listed[]): string {
  const rows = glides.map((one) => [
    one.blend,
    one.printed,
    signed(one.computed, 2),
    deviationOf(one),
    one.role,
    `${one.source} (${one.status})`,
  ]);
  return [
    "Dew less bubble temperature at 101.325 kPa. Both ends of a listed glide are rounded to 0.1 K.",
    markdownTable(["blend", ">published K", ">computed K", ">deviation K", "role", "source"], rows),
  ].join("\n\n");
}

function checksText(checks: readonly BlendCheck[]): string {
  const blends = new Set(checks.map(({ fluid }) => fluid)).size;
  const missed = checks.filter(({ asShipped, printed }) => !isPrinted(asShipped, printed)).length;
  const pressures = checks.filter(({ unit }) => unit === "kPa");
  const shift = Math.max(...pressures.map(({ asShipped, computed }) => Math.abs(asShipped / computed - 1)));
  return `The ${blends} designated blends were also evaluated by another program, with the same parameters and a solver of its
own: bubble and dew points, pressures and densities at −40, 0, 25 and 50 °C. It took one gas constant, 8.314472 J/(mol K),
for all components, as far as can be told: with that, all ${checks.length} numbers are met to half a unit of their last digit,
four to seven of them. With each component's own, as Dewline computes, pressures shift by up to ${roundedUp(shift).toExponential()}, and ${missed} differ
in their last digit. This says that the model is evaluated rightly, not that its parameters are right.`;
}
