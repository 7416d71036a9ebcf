import { NoSuchStateError, NotConvergedError } from "../../units/index.js";
import type { BlendModel } from "./blend-model.js";
import type { BoundaryPoint } from "./envelope.js";
import type { IncipientPoint } from "./incipient.js";
import { densityOf, type PhaseSplit, phaseSplit } from "./phase-split.js";
import { maySplit } from "./stability.js";

/** Both ends of the two-phase region on an isotherm (the denser first) or an isobar (the colder first). */
export interface Edges {
  readonly dense: BoundaryPoint;
  readonly thin: BoundaryPoint;
}

/** So near the ends of the two-phase region, relative, both phases are too alike to tell apart. */
const tooNear = 1e-5;

/** Refuses a state at which the model has two liquids. */
export function refuseTwoLiquids(inputs: Readonly<Record<string, number>>): never {
  throw new NoSuchStateError(
    inputs,
    "the mixture model has two liquids there, which is outside what this library answers",
  );
}

/** Whether the liquids of a boundary at a temperature may split in two. */
export function mayHaveTwoLiquids(model: BlendModel, T: number): boolean {
  const { envelope } = model;
  return maySplit(model.system, T) && envelope.splitsAt(T);
}

/** All bubble and dew points at a temperature or a pressure, none of them of a liquid that would split in two. */
function boundaryPointsAt(
  model: BlendModel,
  what: "temperature" | "pressure",
  value: number,
): readonly BoundaryPoint[] {
  const { envelope } = model;
  const found = what === "temperature" ? envelope.atTemperature(value) : envelope.atPressure(value);
  return found.filter(({ point }) => !mayHaveTwoLiquids(model, point.temperature));
}

/**
 * The bubble or dew point at a temperature or a pressure. Beyond the critical point a line turns back: of two points the
 * one that continues the line from below.
 */
export function linePointAt(
  model: BlendModel,
  line: BoundaryPoint["line"],
  what: "temperature" | "pressure",
  value: number,
): BoundaryPoint {
  const { envelope } = model;
  refuseOpen(model, what, value);
  const other = what === "temperature" ? "pressure" : "temperature";
  const [found] = (what === "temperature" ? envelope.atTemperature(value) : envelope.atPressure(value))
    .filter((each) => each.line === line)
    .sort((left, right) => left.point[other] - right.point[other]);
  if (found === undefined) return refuse(model, { [what]: value }, 0);
  if (mayHaveTwoLiquids(model, found.point.temperature)) refuseTwoLiquids({ [what]: value });
  return found;
}

/** Whether a temperature is so near the critical one that liquid and vapour are not told apart: all is one phase there. */
export function isBesideCritical({ envelope }: BlendModel, T: number): boolean {
  return Math.abs(T / envelope.critical.temperature - 1) < tooNear;
}

/** Beyond the highest point that was reached of lines that do not meet, by this factor, all is one phase again. */
const surelyAbove = { temperature: 1.05, pressure: 1.3 } as const;

/** Refuses what lies between the ends of lines that do not meet. */
function refuseOpen(model: BlendModel, what: "temperature" | "pressure", value: number): void {
  const { openFrom, critical } = model.envelope;
  if (openFrom === undefined || value <= openFrom[what] || value > surelyAbove[what] * critical[what]) return;
  throw new NoSuchStateError(
    { [what]: value },
    `the bubble and dew lines of this mixture model are known up to ${openFrom[what]} only: they do not meet`,
  );
}

/** The edges at a temperature, K; undefined above the highest at which two phases exist. */
export function edgesAtTemperature(model: BlendModel, T: number): Edges | undefined {
  const { envelope } = model;
  refuseOpen(model, "temperature", T);
  if (T > envelope.cricondentherm.temperature) return undefined;
  const lowest = Math.max(envelope.coldest.bubble, envelope.coldest.dew);
  if (T < lowest) {
    throw new NoSuchStateError({ temperature: T }, `bubble and dew lines are known down to ${lowest} K only`);
  }
  if (mayHaveTwoLiquids(model, T)) refuseTwoLiquids({ temperature: T });
  const found = boundaryPointsAt(model, "temperature", T);
  const edges = pairOf(found, (left, right) => right.point.density - left.point.density);
  if (edges === undefined) {
    if (isBesideCritical(model, T) || T > envelope.cricondentherm.temperature * (1 - tooNear))
      return undefined;
    refuse(model, { temperature: T }, found.length);
  }
  return edges;
}

/** The edges at a pressure, Pa; the dense one is undefined where it is too cold to be known. */
export interface PressureEdges {
  readonly dense: BoundaryPoint | undefined;
  readonly thin: BoundaryPoint | undefined;
}

/** The edges at a pressure, Pa; undefined above the highest at which two phases exist. */
export function edgesAtPressure(model: BlendModel, pressure: number): PressureEdges | undefined {
  const { envelope } = model;
  refuseOpen(model, "pressure", pressure);
  if (pressure > envelope.cricondenbar.pressure) return undefined;
  const found = boundaryPointsAt(model, "pressure", pressure);
  const edges = pairOf(found, (left, right) => left.point.temperature - right.point.temperature);
  if (edges !== undefined) return edges;
  const isBeside = Math.abs(pressure / envelope.critical.pressure - 1) < tooNear;
  if (isBeside || pressure > envelope.cricondenbar.pressure * (1 - tooNear)) return undefined;
  const isCold = pressure < envelope.critical.pressure / 2 && found.every(({ line }) => line === "dew");
  if (isCold && found.length <= 1) return { dense: undefined, thin: found[0] };
  return refuse(model, { pressure }, found.length);
}

/** Refuses a state that is colder than the lines are known. */
export function refuseTooCold(model: BlendModel, inputs: Readonly<Record<string, number>>): never {
  const lowest = lowestKnown(model);
  if (mayHaveTwoLiquids(model, lowest)) refuseTwoLiquids(inputs);
  throw new NoSuchStateError(inputs, `its temperature would lie below ${lowest} K`);
}

/** The lowest temperature at which both lines are known and no liquid splits in two, K. */
export function lowestKnown(model: BlendModel): number {
  const { coldest, oneLiquidFrom } = model.envelope;
  return Math.max(coldest.bubble, coldest.dew, oneLiquidFrom);
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
