import {
  applyStep,
  conditionsOf,
  copyPoint,
  evaluatePoint,
  type IncipientPoint,
  solveIncipient,
} from "./incipient.js";
import { solveLinear } from "./linear.js";
import type { MixtureModel } from "./mixture-model.js";

/** A stretch of a phase boundary between two solved points, along which one component's ratio moves steadily. */
export interface Stretch {
  /** The component whose ln(concentration in the incipient phase over that in the parent) is the coordinate. */
  readonly component: number;
  readonly from: IncipientPoint;
  readonly to: IncipientPoint;
  /** The coordinate at both ends. */
  readonly start: number;
  readonly end: number;
  /** Derivatives of (ln ρ, ln ρᵢ…, ln T, ln p) by the coordinate at both ends. */
  readonly startSlope: Float64Array;
  readonly endSlope: Float64Array;
}

/** Length of a step in the coordinate: at first, at most, and too short to go on with. */
const firstStep = 0.3;
const longestStep = 0.6;
const shortestStep = 1e-5;
/** A step is shortened when its end lies farther than this from where it was expected, in logarithms. */
const farOff = 0.05;
/** Never solve nearer than this to the critical point, where both phases are one. */
const critical = 0.03;
/** The critical point is crossed from here to there: beside it lie turning points, which a longer cubic would misplace. */
const beside = 0.12;

/**
 * Follows a phase boundary from a solved point, through the critical point if it comes to one, where the parent changes
 * sides: stretch after stretch, until the caller has enough or the path cannot be followed.
 *
 * @param direction - +1 towards larger ratios of the incipient phase (from a bubble point: upwards), −1 the other way.
 */
export function* followBoundary(
  model: MixtureModel,
  first: IncipientPoint,
  direction: 1 | -1,
): Generator<Stretch> {
  const { count } = model;
  const width = count + 2;
  let from = copyPoint(first);
  let component = 0;
  let slope = slopeBy(model, from, component);
  if (slope === undefined) return;
  // Which way the path goes, as a change of all variables.
  let heading = Float64Array.from(slope, (value) => value * direction);
  let length = firstStep;
  for (;;) {
    const fastest = fastestRatio(heading, count);
    if (fastest !== component) {
      component = fastest;
      slope = slopeBy(model, from, component);
      if (slope === undefined) return;
    }
    const sign = Math.sign(heading[1 + component]! - heading[0]!);
    const start = ratioOf(from, component);
    let to: IncipientPoint | undefined;
    let end = start;
    let rough = 0;
    while (to === undefined) {
      end = start + sign * length;
      if (start * sign < -1.5 * beside) end = sign * Math.min(end * sign, -beside);
      else if (start * sign < 0) end = sign * Math.min(Math.max(end * sign, critical), beside);
      if (Math.abs(end) < critical) end = sign * critical;
      const expected = copyPoint(from);
      applyStep(expected, slope!, start - end);
      const candidate = copyPoint(expected);
      const solved = solveIncipient(model, candidate, { what: "ratio", component, value: end });
      rough = solved ? distance(expected, candidate) : Number.POSITIVE_INFINITY;
      if (rough <= farOff) to = candidate;
      else length /= rough > 4 * farOff ? 4 : 2;
      if (length < shortestStep) return;
    }
    const endSlope: Float64Array | undefined = slopeBy(model, to, component);
    if (endSlope === undefined) return;
    yield { component, from, to, start, end, startSlope: slope!, endSlope };
    heading = Float64Array.from({ length: width }, (_, k) => endSlope[k]! * sign);
    slope = endSlope;
    from = to;
    if (rough < farOff / 4) length = Math.min(1.6 * length, longestStep);
  }
}

/** ln of a component's concentration in the incipient phase over that in the parent. */
export function ratioOf(point: IncipientPoint, component: number): number {
  return Math.log(point.concentrations[component]! / (point.parent[component]! * point.density));
}

function fastestRatio(heading: Float64Array, count: number): number {
  let best = 0;
  for (let i = 1; i < count; i++) {
    if (Math.abs(heading[1 + i]! - heading[0]!) > 1.05 * Math.abs(heading[1 + best]! - heading[0]!)) best = i;
  }
  return best;
}

/** Derivatives of (ln ρ, ln ρᵢ…, ln T, ln p) by one component's ratio along the boundary, at a solved point. */
export function slopeBy(
  model: MixtureModel,
  point: IncipientPoint,
  component: number,
): Float64Array | undefined {
  const width = model.count + 2;
  const jacobian = new Float64Array(width * width);
  const right = new Float64Array(width);
  conditionsOf(model, point, right, jacobian);
  right.fill(0);
  const row = (width - 1) * width;
  jacobian[row] = -1;
  jacobian[row + 1 + component] = 1;
  right[width - 1] = 1;
  if (!solveLinear(jacobian, right, width)) return undefined;
  return Float64Array.of(...right, pressureSlope(model, point, right));
}

/** d ln p along a change of all variables, from the thinner phase; both phases have just been evaluated. */
function pressureSlope(model: MixtureModel, point: IncipientPoint, change: Float64Array): number {
  const { parent, incipient } = evaluatePoint(model, point);
  const isParent = parent.rho < incipient.rho;
  const at = isParent ? parent : incipient;
  let sum = (at.pressureT + at.pressure) * change[1 + model.count]!;
  for (let j = 0; j < model.count; j++) {
    sum += at.x[j]! * at.rho * at.pressureBy[j]! * (isParent ? change[0]! : change[1 + j]!);
  }
  return sum / at.pressure;
}

function distance(left: IncipientPoint, right: IncipientPoint): number {
  let size = Math.max(
    Math.abs(Math.log(left.density / right.density)),
    // A change of temperature moves pressure ten times as much.
    10 * Math.abs(Math.log(left.temperature / right.temperature)),
  );
  for (let i = 0; i < left.parent.length; i++) {
    size = Math.max(size, Math.abs(Math.log(left.concentrations[i]! / right.concentrations[i]!)));
  }
  return size;
}

/** The point of a stretch at a fraction of its length, by the cubic through both ends and their slopes. */
export function pointOn(stretch: Stretch, fraction: number): IncipientPoint {
  const { from, to } = stretch;
  const count = from.parent.length;
  const point = copyPoint(from);
  point.density = Math.exp(cubic(stretch, from.density, to.density, 0, fraction));
  for (let i = 0; i < count; i++) {
    point.concentrations[i] = Math.exp(
      cubic(stretch, from.concentrations[i]!, to.concentrations[i]!, 1 + i, fraction),
    );
  }
  point.temperature = Math.exp(logarithmOn(stretch, "temperature", fraction));
  point.pressure = Math.exp(logarithmOn(stretch, "pressure", fraction));
  return point;
}

/** ln of temperature or pressure at a fraction of a stretch. */
export function logarithmOn(stretch: Stretch, what: "temperature" | "pressure", fraction: number): number {
  return cubic(stretch, stretch.from[what], stretch.to[what], slopeIndex(stretch, what), fraction);
}

/** Fractions of a stretch at which temperature or pressure turns, in order. */
export function turningsOn(stretch: Stretch, what: "temperature" | "pressure"): readonly number[] {
  const index = slopeIndex(stretch, what);
  const h = stretch.end - stretch.start;
  const leave = h * stretch.startSlope[index]!;
  const arrive = h * stretch.endSlope[index]!;
  const rise = Math.log(stretch.to[what] / stretch.from[what]);
  // The cubic's derivative, a f² + b f + c.
  const a = 3 * (leave + arrive - 2 * rise);
  const b = 2 * (3 * rise - 2 * leave - arrive);
  const c = leave;
  const discriminant = b * b - 4 * a * c;
  if (!(discriminant > 0)) return [];
  // The form without cancellation.
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  return [q / a, c / q].filter((f) => f > 0 && f < 1).sort((left, right) => left - right);
}

/** Points of a stretch at which temperature or pressure has a value: close enough to solve from. */
export function crossingsOn(
  stretch: Stretch,
  what: "temperature" | "pressure",
  value: number,
): readonly IncipientPoint[] {
  const wanted = Math.log(value);
  const bounds = [0, ...turningsOn(stretch, what), 1];
  const isAbove = (f: number): boolean => logarithmOn(stretch, what, f) >= wanted;
  return bounds.slice(1).flatMap((end, index) => {
    let low = bounds[index]!;
    let high = end;
    const startsAbove = isAbove(low);
    if (startsAbove === isAbove(high)) return [];
    for (let halving = 0; halving < 40; halving++) {
      const middle = (low + high) / 2;
      if (isAbove(middle) === startsAbove) low = middle;
      else high = middle;
    }
    return [pointOn(stretch, (low + high) / 2)];
  });
}

function slopeIndex({ from }: Stretch, what: "temperature" | "pressure"): number {
  return from.parent.length + (what === "temperature" ? 1 : 2);
}

/** ln of a quantity by Hermite's cubic. */
function cubic(stretch: Stretch, left: number, right: number, index: number, f: number): number {
  const h = stretch.end - stretch.start;
  const low = Math.log(left);
  const rise = f * f * (3 - 2 * f) * (Math.log(right) - low);
  const leave = h * f * (1 - f) * (1 - f) * stretch.startSlope[index]!;
  const arrive = -h * f * f * (1 - f) * stretch.endSlope[index]!;
  return low + rise + leave + arrive;
}
