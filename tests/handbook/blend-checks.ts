import { readFileSync } from "node:fs";
import { type Blend, listBlends } from "../../src/catalogue/index.js";
import { blendFrom, glide, type Refrigerant } from "../../src/state/index.js";
import { atmosphere } from "./named-values.js";
import type { Check } from "./verification.js";

/** A number that another program made of a blend, with one gas constant for all its components. */
export interface BlendCheck extends Check {
  /** The same with the gas constant of each component's own equation, as {@link Check.computed} is not. */
  readonly asShipped: number;
}

interface BlendsFile {
  readonly gasConstant: string;
  readonly columns: readonly (readonly [property: string, unit: string])[];
  readonly entries: readonly {
    readonly blend: string;
    readonly bubblePoint: string;
    readonly dewPoint: string;
    readonly glide: string;
    readonly molarMass: string;
    readonly rows: readonly (readonly string[])[];
  }[];
}

/** 0 °C, K. */
const zeroCelsius = 273.15;

/** Every number of `blends.json`. */
export function blendChecks(): readonly BlendCheck[] {
  const { gasConstant, columns, entries } = JSON.parse(
    readFileSync(new URL("verification/blends.json", import.meta.url), "utf8"),
  ) as BlendsFile;
  return entries.flatMap(({ blend, rows, ...points }) => {
    const literal = listBlends().find(({ designation }) => designation === blend);
    if (literal === undefined) throw new Error(`no blend ${blend}`);
    const shipped = blendFrom(literal);
    const asked = blendFrom(withGasConstant(literal, Number(gasConstant)));
    const check = (
      property: string,
      unit: string,
      printed: string,
      value: (of: Refrigerant) => number,
    ): BlendCheck => ({
      id: `${blend} ${property}`,
      ...{ fluid: blend, equation: shipped.equation, unit, printed },
      computed: value(asked),
      asShipped: value(shipped),
    });
    return [
      check("bubble point", "°C", points.bubblePoint, (of) => of.bubble(normal).temperature - zeroCelsius),
      check("dew point", "°C", points.dewPoint, (of) => of.dew(normal).temperature - zeroCelsius),
      check("glide", "K", points.glide, (of) => glide(of, normal).glide),
      check("molar mass", "g/mol", points.molarMass, (of) => of.molarMass * 1e3),
      ...rows.flatMap(([celsius, ...values]) =>
        values.map((printed, index) => {
          const [property, unit] = columns[index + 1] as readonly [string, string];
          const temperature = Number(celsius) + zeroCelsius;
          return check(`${property} at ${temperature} K`, unit, printed, (of) =>
            lineValue(of, property, temperature),
          );
        }),
      ),
    ];
  });
}

const normal = { pressure: atmosphere };

function withGasConstant({ components, ...blend }: Blend, gasConstant: number): Blend {
  return {
    ...blend,
    components: components.map(({ fluid, ...component }) => ({
      ...component,
      fluid: { ...fluid, gasConstant },
    })),
  };
}

function lineValue(of: Refrigerant, property: string, temperature: number): number {
  switch (property) {
    case "bubblePressure":
      return of.bubble({ temperature }).pressure / 1e3;
    case "dewPressure":
      return of.dew({ temperature }).pressure / 1e3;
    case "liquidDensity":
      return of.bubble({ temperature }).liquid.density;
    case "vapourDensity":
      return of.dew({ temperature }).vapour.density;
    default:
      throw new Error(`no ${property} of a blend`);
  }
}
