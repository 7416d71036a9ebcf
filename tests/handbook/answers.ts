import { listBlends, listFluids } from "../../src/catalogue/index.js";
import { type Refrigerant, refrigerant, type SinglePhaseState } from "../../src/state/index.js";
import { constantOf, type Point, pseudoPureConstantOf, saturationValue, stateValue } from "./named-values.js";
import { curvePressure, curveTemperature, onCurve, pseudoPure, pseudoPureBlends } from "./pseudo-pure.js";
import type { Row, Values } from "./rows.js";

/** Parts of the plane of states that are as good as each other, roughly. */
export type Region =
  | "saturation"
  | "saturated liquid"
  | "saturated vapour"
  | "bubble line"
  | "dew line"
  | "liquid"
  | "gas"
  | "supercritical"
  | "near critical"
  | "constants";

/** What Dewline answers where a table has a row. */
export interface Answer {
  readonly equation: string;
  /** Where a property of the row lies. */
  region(property: string): Region;
  /** The value of a property by its name in the tables, SI. */
  value(property: string): number;
}

/** Saturation from this share of the critical temperature up is called near critical: equations part there. */
const nearCritical = 0.98;

/**
 * Answers a row as a user would ask: by name, in the reference state of the table; once by every equation. A blend is
 * computed from its components, and where it was published as one fluid also that way.
 */
export function answers(row: Row): readonly Answer[] {
  const { fluid, referenceState } = row;
  const options = referenceState === null ? {} : { referenceState };
  if (listBlends().some(({ designation }) => designation === fluid)) {
    const fromComponents = answerOfBlend(refrigerant(fluid, options), row);
    return pseudoPureBlends.includes(fluid) ? [answerOfPseudoPure(row), fromComponents] : [fromComponents];
  }
  const equations = listFluids().filter(({ designation }) => designation === fluid);
  return equations.map(({ equation }) => answerOfPure(refrigerant(fluid, { equation, ...options }), row));
}

function answerOfPure(asked: Refrigerant, { kind, inputs }: Row): Answer {
  const { equation } = asked;
  switch (kind) {
    case "constants":
      return { equation, region: () => "constants", value: (name) => constantOf(asked, name) };
    case "single-phase": {
      const state = asked.state(stateInput(inputs));
      if (state.phase === "two-phase") throw new Error("the row lies in two phases");
      const region = state.phase === "vapour" ? "gas" : state.phase;
      return { equation, region: () => region, value: (name) => stateValue(state, name) };
    }
    case "saturation": {
      const point = asked.saturation(saturationInput(inputs));
      const isNear = point.temperature > nearCritical * asked.critical.temperature;
      return {
        equation,
        region: (name) => (isNear ? "near critical" : saturationRegion(name)),
        value: (name) => saturationValue(point, name),
      };
    }
    default:
      throw new Error(`a ${kind} row of a pure fluid`);
  }
}

function answerOfBlend(asked: Refrigerant, { kind, inputs }: Row): Answer {
  const { equation } = asked;
  if (kind === "constants") {
    return { equation, region: () => "constants", value: (name) => constantOf(asked, name) };
  }
  if (kind === "single-phase") throw new Error("a single-phase row of a blend");
  const at = saturationInput(inputs);
  const { temperature, pressure } =
    kind === "saturation" ? asked.saturation(at) : kind === "dew" ? asked.dew(at) : asked.bubble(at);
  const point = bothLines(temperature, pressure, (line) =>
    line === "bubble" ? asked.bubble({ temperature }).liquid : asked.dew({ temperature }).vapour,
  );
  return { equation, region: regionOn(kind), value: (name) => saturationValue(point, name) };
}

function answerOfPseudoPure({ fluid, kind, inputs, referenceState }: Row): Answer {
  const blend = pseudoPure(fluid, referenceState ?? "iir");
  const { equation } = blend.fluid;
  if (kind === "constants") {
    return { equation, region: () => "constants", value: (name) => pseudoPureConstantOf(blend, name) };
  }
  if (kind === "single-phase") throw new Error("a single-phase row of a blend");
  const curve = kind === "dew" ? blend.dew : blend.bubble;
  const at = saturationInput(inputs);
  const temperature = "temperature" in at ? at.temperature : curveTemperature(curve, at.pressure);
  const point = bothLines(temperature, curvePressure(curve, temperature), (line) =>
    onCurve(blend, temperature, line === "bubble" ? "liquid" : "vapour"),
  );
  return { equation, region: regionOn(kind), value: (name) => saturationValue(point, name) };
}

/** The liquid of a blend's bubble line and the vapour of its dew line at one temperature, as the tables have them. */
function bothLines(
  temperature: number,
  pressure: number,
  on: (line: "bubble" | "dew") => SinglePhaseState,
): Point {
  return {
    temperature,
    pressure,
    get liquid() {
      return on("bubble");
    },
    get vapour() {
      return on("dew");
    },
    get latentHeat() {
      return this.vapour.enthalpy - this.liquid.enthalpy;
    },
  };
}

function regionOn(kind: "bubble" | "dew" | "saturation"): Answer["region"] {
  return kind === "saturation" ? saturationRegion : () => `${kind} line`;
}

function saturationRegion(property: string): Region {
  if (property.startsWith("liquid")) return "saturated liquid";
  return property.startsWith("vapour") ? "saturated vapour" : "saturation";
}

function stateInput({ temperature, pressure, density }: Values) {
  if (temperature !== undefined && pressure !== undefined) return { temperature, pressure };
  if (temperature !== undefined && density !== undefined) return { temperature, density };
  throw new Error("a single-phase row wants a temperature and a pressure or density");
}

function saturationInput({ temperature, pressure }: Values) {
  if (temperature !== undefined && pressure === undefined) return { temperature };
  if (pressure !== undefined && temperature === undefined) return { pressure };
  throw new Error("a saturation row wants a temperature or a pressure");
}
