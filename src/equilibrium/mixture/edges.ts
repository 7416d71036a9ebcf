import { NoSuchStateError, NotConvergedError } from "../../units/index.js";
import type { BlendModel } from "./blend-model.js";
import type { BoundaryPoint } from "./envelope.js";
import type { IncipientPoint } from "./incipient.js";
import { densityOf, type PhaseSplit, phaseSplit } from "./phase-split.js";

/** Both ends of the two-phase region on an isotherm (the denser first) or an isobar (the colder first). */
export interface Edges {
  readonly dense: BoundaryPoint;
  readonly thin: BoundaryPoint;
}

/** So near the ends of the two-phase region, relative, both phases are too alike to tell apart. */
const tooNear = 1e-5;

/**
 * Above this reduced temperature no pair with parameters has two liquids, so nothing needs to be tested; the highest
 * seen in a sweep of all pairs is 0.66.
 */
const mayHaveTwoLiquids = 0.75;

/** Refuses a state at which the model has two liquids. */
export function refuseTwoLiquids(inputs: Readonly<Record<string, number>>): never {
  throw new NoSuchStateError(
    inputs,
    "the mixture model has two liquids there, which is outside what this library answers",
  );
}

/** All bubble and dew points at a temperature or a pressure, none of them of a liquid that would split in two. */
export function boundaryPointsAt(
  model: BlendModel,
  what: "temperature" | "pressure",
  value: number,
): readonly BoundaryPoint[] {
  const { envelope } = model;
  const found = what === "temperature" ? envelope.atTemperature(value) : envelope.atPressure(value);
  const suspect = mayHaveTwoLiquids * envelope.critical.temperature;
  if (found.some(({ point }) => point.temperature < suspect && point.temperature <= envelope.oneLiquidFrom)) {
    refuseTwoLiquids({ [what]: value });
  }
  return found;
}

/** The edges at a temperature, K; undefined above the highest at which two phases exist. */
export function edgesAtTemperature(model: BlendModel, T: number): Edges | undefined {
  const { envelope } = model;
  if (T > envelope.cricondentherm.temperature) return undefined;
  const lowest = Math.max(envelope.coldest.bubble, envelope.coldest.dew);
  if (T < lowest) {
    throw new NoSuchStateError({ temperature: T }, `bubble and dew lines are known down to ${lowest} K only`);
  }
  const found = boundaryPointsAt(model, "temperature", T);
  const edges = pairOf(found, (left, right) => right.point.density - left.point.density);
  if (edges === undefined) {
    if (T > envelope.cricondentherm.temperature * (1 - tooNear)) return undefined;
    refuse(model, { temperature: T }, found.length);
  }
  return edges;
}

/** The edges at a pressure, Pa; of a pressure below the coldest bubble point that is known, the dew point alone. */
export type PressureEdges = Edges | { readonly dense: undefined; readonly thin: BoundaryPoint | undefined };

/** The edges at a pressure, Pa; undefined above the highest at which two phases exist. */
export function edgesAtPressure(model: BlendModel, pressure: number): PressureEdges | undefined {
  const { envelope } = model;
  if (pressure > envelope.cricondenbar.pressure) return undefined;
  const found = boundaryPointsAt(model, "pressure", pressure);
  if (pressure < envelope.coldest.bubblePressure) {
    return { dense: undefined, thin: found.find(({ line }) => line === "dew") };
  }
  const edges = pairOf(found, (left, right) => left.point.temperature - right.point.temperature);
  if (edges === undefined) {
    if (pressure > envelope.cricondenbar.pressure * (1 - tooNear)) return undefined;
    refuse(model, { pressure }, found.length);
  }
  return edges;
}

function pairOf(
  found: readonly BoundaryPoint[],
  order: (left: BoundaryPoint, right: BoundaryPoint) => number,
): Edges | undefined {
  const [dense, thin, ...more] = [...found].sort(order);
  return dense === undefined || thin === undefined || more.length > 0 ? undefined : { dense, thin };
}

function refuse(model: BlendModel, inputs: Readonly<Record<string, number>>, count: number): never {
  const { critical } = model.envelope;
  const near =
    Math.abs((inputs["temperature"] ?? critical.temperature) / critical.temperature - 1) < 10 * tooNear &&
    Math.abs((inputs["pressure"] ?? critical.pressure) / critical.pressure - 1) < 10 * tooNear;
  if (near) {
    throw new NoSuchStateError(inputs, "so near the critical point liquid and vapour are not told apart");
  }
  if (count > 2) {
    throw new NoSuchStateError(inputs, "the lines of this mixture model have more than two points there");
  }
  throw new NotConvergedError(`the bubble and dew points of ${model.name}`, inputs);
}

/** An edge as a split: all of the blend is in its parent phase, the other has no volume. */
export function splitAtEdge(model: BlendModel, { line, point }: BoundaryPoint): PhaseSplit {
  const split = phaseSplit(model.z);
  const parent = model.z.map((zi) => zi * point.density);
  split.temperature = point.temperature;
  split.pressure = point.pressure;
  split.liquid.set(line === "bubble" ? parent : point.concentrations);
  split.vapour.set(line === "bubble" ? point.concentrations : parent);
  split.liquidVolume = line === "bubble" ? 1 / point.density : 0;
  split.vapourVolume = line === "bubble" ? 0 : 1 / point.density;
  return split;
}

/** Mole fractions of the incipient phase. */
export function incipientFractions({ concentrations }: IncipientPoint): Float64Array {
  const rho = densityOf(concentrations);
  return concentrations.map((c) => c / rho);
}
