import type { Fluid, IdealPart, ResidualPart } from "./fluid.js";
import type { Fact, FluidData, IdealData, ReferenceData, ResidualData, TextRows } from "./fluid-data.js";

/** Full citations by key. */
export type Bibliography = Readonly<Record<string, string>>;

/** Source keys of what we computed or estimated ourselves; they mark a fact in a data file and are no citations. */
const NO_CITATIONS: readonly string[] = ["own-computation", "own-estimate"];

/** Turns a checked data file into the literal that computations take. */
export function literalOf(
  data: FluidData | ReferenceData,
  identity: Pick<Fluid, "synonyms" | "formula" | "cas">,
  bibliography: Bibliography | undefined,
): Fluid {
  const { reducing, critical, limits } = data;
  return {
    designation: data.designation,
    equation: data.equation,
    name: data.name,
    ...identity,
    // g/mol to kg/mol in the text, so that the number is the nearest one to the digits; a division is not.
    molarMass: Number(`${data.molarMass.value}e-3`),
    gasConstant: numberOf(data.gasConstant),
    reducing: { temperature: numberOf(reducing.temperature), density: numberOf(reducing.density) },
    critical: {
      temperature: numberOf(critical.temperature),
      density: numberOf(critical.density),
      pressure: numberOf(critical.pressure),
    },
    limits: {
      minimumTemperature: numberOf(limits.minimumTemperature),
      maximumTemperature: numberOf(limits.maximumTemperature),
      maximumPressure: numberOf(limits.maximumPressure),
    },
    acentricFactor: numberOf(data.acentricFactor),
    referenceState: data.referenceState,
    ideal: idealOf(data.ideal),
    residual: residualOf(data.residual),
    sources: citationsOf([data.residual.source, ...sourceKeysOf(data)], bibliography),
    notes: data.notes,
  };
}

/** The citations of source keys, each once; without a bibliography the keys themselves. */
export function citationsOf(keys: readonly string[], bibliography: Bibliography | undefined): string[] {
  const citable = keys.filter((key) => !NO_CITATIONS.includes(key));
  return [...new Set(citable)].map((key) => bibliography?.[key] ?? key);
}

/** Every source key of a data file, each once, in the order of its fields. */
export function sourceKeysOf(data: unknown): string[] {
  return [...new Set(sourcesIn(data))];
}

function sourcesIn(value: unknown): string[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === "source" && typeof inner === "string" ? [inner] : sourcesIn(inner),
  );
}

function idealOf(data: IdealData): IdealPart {
  const tables = {
    power: rows<[number, number]>(data.power),
    planckEinstein: rows<[number, number]>(data.planckEinstein),
  };
  return data.form === "alpha0"
    ? { form: "alpha0", logTau: Number(data.logTau), ...tables }
    : { form: "cp0", constant: Number(data.constant), ...tables };
}

type Row<Table extends keyof ResidualPart> = NonNullable<ResidualPart[Table]>[number];

/** The residual part of a data file as numbers. */
export function residualOf({
  power,
  doubleExp,
  gaussian,
  reciprocalBell,
  nonAnalytic,
}: ResidualData): ResidualPart {
  return {
    // A row without l has no exponential, one without g and k has both 1.
    power: rows<Row<"power">>(power, [0, 0, 0, 0]),
    ...(doubleExp && { doubleExp: rows<Row<"doubleExp">>(doubleExp, [0, 0, 0, 0, 0, 1, 1]) }),
    ...(gaussian && { gaussian: rows<Row<"gaussian">>(gaussian) }),
    ...(reciprocalBell && { reciprocalBell: rows<Row<"reciprocalBell">>(reciprocalBell) }),
    ...(nonAnalytic && { nonAnalytic: rows<Row<"nonAnalytic">>(nonAnalytic) }),
  };
}

/** Text rows as numbers; columns missing at the end of a row are taken from `full`. The schema has checked widths. */
function rows<R>(table: TextRows, full: readonly number[] = []): readonly R[] {
  return table.map((row) => [...row.map(Number), ...full.slice(row.length)] as unknown as R);
}

function numberOf(fact: Fact): number {
  return Number(fact.value);
}
