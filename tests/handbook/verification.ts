import { readFileSync } from "node:fs";
import { type Refrigerant, refrigerant, refrigerantFrom } from "../../src/state/index.js";
import {
  acentricFactor,
  constantOf,
  pseudoPureConstantOf,
  saturationValue,
  stateValue,
} from "./named-values.js";
import { curvePressure, onCurve, type PseudoPure, pseudoPure, pseudoPureBlends } from "./pseudo-pure.js";

/** One printed number of `verification/` beside what Dewline gives, both in the unit of the print. */
export interface Check {
  /** Fluid, equation, property and inputs: names the check in messages and among the exceptions. */
  readonly id: string;
  readonly fluid: string;
  readonly equation: string;
  /** The digits. */
  readonly printed: string;
  /** Upper end, where a range was printed. */
  readonly printedTo?: string;
  readonly unit: string;
  readonly computed: number;
}

/** A remembered value. */
export interface PublishedCheck extends Check {
  /** Remembered roughly, or of another equation: not expected to agree in its last digit. */
  readonly loose: boolean;
  /** What the evaluation in many digits made of it, where it was asked. */
  readonly evaluated?: string;
  readonly source: string;
}

/** Size of each unit of print in SI, for a molar mass in kg/mol. */
function unitSize(unit: string, molarMass: number): number {
  const sizes: Readonly<Record<string, number>> = {
    K: 1,
    "1": 1,
    "kg/m3": 1,
    "m/s": 1,
    kPa: 1e3,
    MPa: 1e6,
    "kJ/kg": 1e3,
    "kJ/(kg K)": 1e3,
    "J/(mol K)": 1 / molarMass,
  };
  const size = sizes[unit];
  if (size === undefined) throw new Error(`no unit ${unit}`);
  return size;
}

/** Who is asked: a refrigerant by one of its equations, or a blend as one fluid in equilibrium with itself. */
interface Subject {
  readonly asked: Refrigerant;
  readonly blend?: PseudoPure;
}

function subjectOf(fluid: string, equation: string): Subject {
  if (!pseudoPureBlends.includes(fluid)) return { asked: refrigerant(fluid, { equation }) };
  const blend = pseudoPure(fluid);
  return { asked: refrigerantFrom(blend.fluid), blend };
}

interface Block {
  readonly fluid: string;
  readonly equation: string;
  readonly columns: readonly (readonly [property: string, unit: string])[];
  readonly rows: readonly (readonly string[])[];
}

/** Every number of `saturation.json`. */
export function evaluatedChecks(): readonly Check[] {
  const { saturation, curves, bubbleLiquid, constants } = read("saturation") as {
    readonly saturation: readonly Block[];
    readonly curves: readonly Block[];
    readonly bubbleLiquid: readonly Block[];
    readonly constants: readonly Readonly<Record<string, string>>[];
  };
  return [
    ...saturation.flatMap((block) => {
      const { asked } = subjectOf(block.fluid, block.equation);
      return blockChecks(block, (temperature, property) =>
        saturationValue(asked.saturation({ temperature }), property),
      );
    }),
    ...[...curves, ...bubbleLiquid].flatMap((block) => {
      const blend = pseudoPure(block.fluid);
      return blockChecks(block, (temperature, property) => curveValue(blend, temperature, property));
    }),
    ...constants.flatMap(({ fluid = "", equation = "", ...values }) =>
      Object.entries(values).map(([property, printed]): Check => {
        const { unit, computed } = constantValue(subjectOf(fluid, equation), property);
        return { id: `${fluid} ${equation} ${property}`, fluid, equation, printed, unit, computed };
      }),
    ),
  ];
}

function blockChecks(
  { fluid, equation, columns, rows }: Block,
  value: (temperature: number, property: string) => number,
): Check[] {
  const { molarMass } = subjectOf(fluid, equation).asked;
  return rows.flatMap((row) => {
    const [first = "", ...others] = row;
    const temperature = columns[0]?.[1] === "°C" ? Number(first) + 273.15 : Number(first);
    return others.map((printed, index): Check => {
      const [property, unit] = columns[index + 1] as readonly [string, string];
      return {
        id: `${fluid} ${equation} ${property} at ${temperature} K`,
        fluid,
        equation,
        printed,
        unit,
        computed: value(temperature, property) / unitSize(unit, molarMass),
      };
    });
  });
}

function curveValue(blend: PseudoPure, temperature: number, property: string): number {
  switch (property) {
    case "bubblePressure":
      return curvePressure(blend.bubble, temperature);
    case "dewPressure":
      return curvePressure(blend.dew, temperature);
    case "liquidDensity":
      return onCurve(blend, temperature, "liquid").density;
    default:
      throw new Error(`no ${property} on a curve`);
  }
}

function constantValue({ asked, blend }: Subject, property: string): { unit: string; computed: number } {
  switch (property) {
    // The ideal gas knows no pressure: any low one does.
    case "cp0At298":
      return {
        unit: "J/(mol K)",
        computed: asked.state({ temperature: 298.15, pressure: 1e3 }).cp0 * asked.molarMass,
      };
    case "equalGibbsBoilingPoint":
      return { unit: "K", computed: constantOf(asked, "normalBoilingPoint") };
    case "acentricFactor":
      return {
        unit: "1",
        computed:
          blend === undefined ? constantOf(asked, property) : acentricFactor(asked, blend.fluid.critical),
      };
    default:
      return {
        unit: "K",
        computed: blend === undefined ? constantOf(asked, property) : pseudoPureConstantOf(blend, property),
      };
  }
}

interface PublishedEntry {
  readonly fluid: string;
  readonly equation: string;
  readonly property: string;
  readonly inputs: Readonly<Record<string, string>>;
  readonly printed: string;
  readonly printedTo?: string;
  readonly unit: string;
  readonly computed?: string;
  readonly loose?: boolean;
  readonly source: string;
}

/** Every number of `published.json`. */
export function publishedChecks(): readonly PublishedCheck[] {
  const { entries } = read("published") as { readonly entries: readonly PublishedEntry[] };
  return entries.map((entry) => {
    const { fluid, equation, property, inputs, printed, printedTo, unit, loose = false, source } = entry;
    const subject = subjectOf(fluid, equation);
    const where = Object.entries(inputs).map(([name, value]) => ` ${name} ${value}`);
    return {
      id: `${fluid} ${equation} ${property}${where.join("")}`,
      fluid,
      equation,
      printed,
      ...(printedTo === undefined ? {} : { printedTo }),
      unit,
      loose,
      source,
      ...(entry.computed === undefined ? {} : { evaluated: entry.computed }),
      computed: publishedValue(subject, property, inputs) / unitSize(unit, subject.asked.molarMass),
    };
  });
}

function publishedValue(
  subject: Subject,
  property: string,
  inputs: Readonly<Record<string, string>>,
): number {
  const { asked, blend } = subject;
  const { temperature, molarDensity } = inputs;
  if (temperature === undefined) return constantValue(subject, property).computed;
  const T = Number(temperature);
  if (molarDensity !== undefined) {
    const state = asked.state({ temperature: T, density: Number(molarDensity) * asked.molarMass });
    if (state.phase === "two-phase") throw new Error("a check value in two phases");
    return stateValue(state, property);
  }
  if (blend !== undefined) return curveValue(blend, T, property);
  return saturationValue(
    asked.saturation({ temperature: T }),
    property === "saturationPressure" ? "pressure" : property,
  );
}

function read(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`verification/${name}.json`, import.meta.url), "utf8"));
}
