import { boundaryAtTemperature } from "./boundary.js";
import {
  crossingsOn,
  followBoundary,
  logarithmOn,
  pointOn,
  ratioOf,
  type Stretch,
  slopeBy,
  turningsOn,
} from "./boundary-path.js";
import { copyPoint, type Incipient, type IncipientPoint, solveIncipient } from "./incipient.js";
import { type MixtureCriticalPoint, solveMixtureCritical } from "./mixture-critical.js";
import type { MixtureModel } from "./mixture-model.js";
import { densityOf } from "./phase-split.js";
import { findTrial, isSplitLiquid, maySplit } from "./stability.js";

/** Which side of the critical point a point of the boundary lies on. */
export type BoundaryLine = "bubble" | "dew";

/** A bubble or dew point of a given composition. */
export interface BoundaryPoint {
  readonly line: BoundaryLine;
  readonly point: IncipientPoint;
}

/** Where the two-phase region ends in one direction: K and Pa. */
export interface Extreme {
  readonly temperature: number;
  readonly pressure: number;
  /** On which line it lies; undefined where it is the critical point itself. */
  readonly line?: BoundaryLine;
}

/** A boundary that goes on for longer than this is not one that closes. */
const mostStretches = 400;
/** Starts that are tried, as ratios to the lowest temperature, where two liquids or the guess may be in the way. */
const starts = [1, 1.05, 1.1, 1.2, 1.3, 1.5];
/** The boundary reaches a little below its lowest temperature, so that this itself lies on it. */
const beyond = 0.999;
/** Phases nearer to each other than this, in the logarithm of a concentration, are not told apart. */
const tooAlike = 3e-3;
/** A temperature or pressure this near, relative, is the one that was asked for. */
const met = 1e-12;
/** The ends themselves lie a rounding inside what was followed. */
const inside = 1 + 1e-9;
/** Rounds of the search for a turning point. */
const refinements = 12;

/**
 * The boundary of the two-phase region of one composition, followed from its coldest bubble point through the critical
 * point to its coldest dew point, every end of a stretch a solved point.
 */
export class Envelope {
  /** The critical point; where the lines do not meet, the highest temperature and pressure that they reach. */
  readonly critical: MixtureCriticalPoint;
  /**
   * Where the lines do not meet, K and Pa up to which both are known. Beside its critical point a mixture model can have a
   * false third phase, from features that an equation has at its own: R-744 among brings one.
   */
  readonly openFrom: Extreme | undefined;
  /** Highest temperature at which liquid and vapour coexist. */
  readonly cricondentherm: Extreme;
  /** Highest pressure at which they do. */
  readonly cricondenbar: Extreme;
  readonly #model: MixtureModel;
  readonly #stretches: readonly Stretch[];
  /** Index of the stretch on which both phases become one; between two indices where there is none. */
  readonly #crossing: number;
  #splitFrom = 0;
  /** Cold points that were not tested yet, the hottest last. */
  #suspects: IncipientPoint[] | undefined;

  private constructor(
    model: MixtureModel,
    stretches: readonly Stretch[],
    crossing: number,
    critical: MixtureCriticalPoint,
    openFrom: Extreme | undefined,
  ) {
    this.openFrom = openFrom;
    this.#model = model;
    this.#stretches = stretches;
    this.#crossing = crossing;
    this.critical = critical;
    this.cricondentherm = this.#highest("temperature");
    this.cricondenbar = this.#highest("pressure");
  }

  /**
   * Follows the boundary of a composition from a lowest temperature, K, through the critical point and back; where that
   * does not lead through, both lines as far as each goes. Undefined where there is nothing to follow.
   */
  static of(model: MixtureModel, z: Float64Array, minimumTemperature: number): Envelope | undefined {
    for (const ratio of starts) {
      const first = boundaryAtTemperature(model, "vapour", z, beyond * ratio * minimumTemperature);
      if (first === undefined) continue;
      const stretches: Stretch[] = [];
      let isDone = false;
      for (const stretch of followBoundary(model, first, 1)) {
        stretches.push(stretch);
        isDone = stretch.end > 0 && stretch.to.temperature < beyond * minimumTemperature;
        if (isDone || stretches.length >= mostStretches) break;
      }
      if (!isDone) continue;
      const index = stretches.findIndex(({ start, end }) => start < 0 && end > 0);
      const crossing = stretches[index];
      if (crossing === undefined) continue;
      const start = pointOn(crossing, crossing.start / (crossing.start - crossing.end));
      const critical = solveMixtureCritical(model, z, start);
      if (critical !== undefined) return new Envelope(model, stretches, index, critical, undefined);
    }
    return Envelope.#open(model, z, minimumTemperature);
  }

  /** Both lines, each from its own cold end to where it turns or its liquid is no longer stable. */
  static #open(model: MixtureModel, z: Float64Array, minimumTemperature: number): Envelope | undefined {
    const bubble = risingLine(model, z, "vapour", beyond * minimumTemperature);
    const dew = risingLine(model, z, "liquid", beyond * minimumTemperature);
    const tops = [bubble, dew].flatMap((line) => line.slice(-1).map(({ to }) => to));
    if (tops.length < 2) return undefined;
    model.liquid.mixture.setComposition(z);
    const ends = (pick: (...values: number[]) => number): Extreme => ({
      temperature: pick(...tops.map(({ temperature }) => temperature)),
      pressure: pick(...tops.map(({ pressure }) => pressure)),
    });
    const critical = { ...ends(Math.max), density: model.liquid.mixture.rhor };
    const stretches = [...bubble, ...dew.map(reversed).reverse()];
    return new Envelope(model, stretches, bubble.length - 0.5, critical, ends(Math.min));
  }

  /** All points of the boundary at a temperature, K, solved, in the order in which the boundary was followed. */
  atTemperature(T: number): readonly BoundaryPoint[] {
    return this.#crossings("temperature", T);
  }

  /** All points of the boundary at a pressure, Pa, likewise. */
  atPressure(pressure: number): readonly BoundaryPoint[] {
    return this.#crossings("pressure", pressure);
  }

  /** The coldest points that were followed to, K and Pa. */
  get coldest(): {
    readonly bubble: number;
    readonly dew: number;
    readonly bubblePressure: number;
    readonly dewPressure: number;
  } {
    const { from } = this.#stretches[0]!;
    const { to } = this.#stretches[this.#stretches.length - 1]!;
    return {
      bubble: from.temperature * inside,
      dew: to.temperature * inside,
      bubblePressure: from.pressure * inside,
      dewPressure: to.pressure * inside,
    };
  }

  /**
   * The temperature from which on downwards the model may let liquids of the lines split in two, K; 0 where it never does.
   * Found by the tangent-plane test at the solved points; exact to the distance between them.
   */
  get oneLiquidFrom(): number {
    this.splitsAt(0);
    return this.#splitFrom;
  }

  /** Whether liquids of the lines may split in two at a temperature. Only points that are hotter need to be tested. */
  splitsAt(T: number): boolean {
    this.#suspects ??= this.points
      .map(({ point }) => point)
      .filter(({ temperature }) => maySplit(this.#model, temperature))
      .sort((left, right) => left.temperature - right.temperature);
    const suspects = this.#suspects;
    while (this.#splitFrom === 0 && suspects.length > 0 && suspects[suspects.length - 1]!.temperature >= T) {
      const point = suspects.pop()!;
      if (this.#hasSplitLiquid(point)) this.#splitFrom = point.temperature;
    }
    return T <= this.#splitFrom;
  }

  #hasSplitLiquid({ temperature, pressure, parent, density, concentrations }: IncipientPoint): boolean {
    const model = this.#model;
    const P = pressure / (model.R * temperature);
    const incipient = densityOf(concentrations);
    if (density > incipient) return isSplitLiquid(model, parent, temperature, P, density);
    const x = concentrations.map((c) => c / incipient);
    return isSplitLiquid(model, x, temperature, P, incipient);
  }

  /** The solved points along the boundary. */
  get points(): readonly BoundaryPoint[] {
    const { from } = this.#stretches[0]!;
    return [
      { line: "bubble", point: labelled(from, "bubble") },
      ...this.#stretches.map(({ to, end }) => {
        const line = end < 0 ? ("bubble" as const) : ("dew" as const);
        return { line, point: labelled(to, line) };
      }),
    ];
  }

  #crossings(what: "temperature" | "pressure", value: number): readonly BoundaryPoint[] {
    const held = what === "temperature" ? ({ what } as const) : ({ what, value } as const);
    return this.#stretches.flatMap((stretch, index) =>
      crossingsOn(stretch, what, value).flatMap((guess) => {
        const point = labelled(guess, this.#lineOf(stretch, index, guess));
        if (what === "temperature") point.temperature = value;
        const isSolved =
          solveIncipient(this.#model, point, held) || this.#solveByRatio(point, stretch, guess, what, value);
        if (!isSolved) return [];
        // Only now is it sure on which side of the critical point it lies; too near to it there are no sides.
        if (Math.abs(ratioOf(point, stretch.component)) < tooAlike) return [];
        const line = this.#lineOf(stretch, index, point);
        return [{ line, point: labelled(point, line) }];
      }),
    );
  }

  /**
   * Beside the critical point temperature and pressure hardly tell one point from the next: there the ratio is held, and
   * moved until the value is met.
   */
  #solveByRatio(
    point: IncipientPoint,
    stretch: Stretch,
    guess: IncipientPoint,
    what: "temperature" | "pressure",
    value: number,
  ): boolean {
    const { component } = stretch;
    const index = guess.parent.length + (what === "temperature" ? 1 : 2);
    let ratio = ratioOf(guess, component);
    setPoint(point, guess);
    for (let round = 0; round < refinements; round++) {
      if (!solveIncipient(this.#model, point, { what: "ratio", component, value: ratio })) return false;
      const miss = Math.log(point[what] / value);
      if (Math.abs(miss) < met) return true;
      const slope = slopeBy(this.#model, point, component)?.[index];
      if (slope === undefined || slope === 0) return false;
      ratio = Math.min(Math.max(ratio - miss / slope, stretch.start), stretch.end);
    }
    return false;
  }

  #lineOf({ component }: Stretch, index: number, point: IncipientPoint): BoundaryLine {
    if (index !== this.#crossing) return index < this.#crossing ? "bubble" : "dew";
    return ratioOf(point, component) < 0 ? "bubble" : "dew";
  }

  #highest(what: "temperature" | "pressure"): Extreme {
    const { critical } = this;
    let best: Extreme = { temperature: critical.temperature, pressure: critical.pressure };
    this.#stretches.forEach((stretch, index) => {
      for (const fraction of turningsOn(stretch, what)) {
        if (logarithmOn(stretch, what, fraction) < Math.log(best[what]) - 1e-4) continue;
        const found = this.#turning(stretch, what, fraction);
        const { temperature, pressure } = found;
        const line = this.#lineOf(stretch, index, found);
        if (best[what] < found[what]) best = { temperature, pressure, line };
      }
    });
    return best;
  }

  /** Solves for the point at which temperature or pressure turns, by secants on its slope. */
  #turning(stretch: Stretch, what: "temperature" | "pressure", fraction: number): IncipientPoint {
    const { component, start, end } = stretch;
    const guess = pointOn(stretch, fraction);
    const index = guess.parent.length + (what === "temperature" ? 1 : 2);
    let before = { at: start, slope: stretch.startSlope[index]! };
    let at = start + fraction * (end - start);
    let found = guess;
    for (let round = 0; round < refinements; round++) {
      const point = copyPoint(found);
      // Beside the critical point both phases are too alike to solve; the cubic is good to a millionth there.
      if (!solveIncipient(this.#model, point, { what: "ratio", component, value: at })) return found;
      found = point;
      const slope = slopeBy(this.#model, point, component)?.[index];
      if (slope === undefined || slope === before.slope) return found;
      const next = at - (slope * (at - before.at)) / (slope - before.slope);
      before = { at, slope };
      if (!(Math.abs(next - at) > 1e-9)) return found;
      at = Math.min(Math.max(next, Math.min(start, end)), Math.max(start, end));
    }
    return found;
  }
}

/** A line from its cold end up, as far as temperature rises and the liquid passes the tangent-plane test. */
function risingLine(
  model: MixtureModel,
  z: Float64Array,
  incipient: Incipient,
  lowest: number,
): readonly Stretch[] {
  const first = boundaryAtTemperature(model, incipient, z, lowest);
  if (first === undefined) return [];
  const line: Stretch[] = [];
  for (const stretch of followBoundary(model, first, incipient === "vapour" ? 1 : -1)) {
    const { from, to } = stretch;
    const rises = to.temperature > from.temperature && turningsOn(stretch, "temperature").length === 0;
    if (!rises || line.length >= mostStretches) break;
    line.push(stretch);
  }
  while (line.length > 0 && !hasStableLiquid(model, line[line.length - 1]!.to)) line.pop();
  return line;
}

/** Whether the liquid of a solved point passes the tangent-plane test. */
function hasStableLiquid(
  model: MixtureModel,
  { temperature, pressure, parent, density, concentrations }: IncipientPoint,
): boolean {
  const incipientDensity = densityOf(concentrations);
  const isLiquid = density > incipientDensity;
  const x = isLiquid ? parent : concentrations.map((c) => c / incipientDensity);
  const P = pressure / (model.R * temperature);
  return findTrial(model, x, temperature, P, isLiquid ? density : incipientDensity) === undefined;
}

function reversed({ component, from, to, start, end, startSlope, endSlope }: Stretch): Stretch {
  return {
    component,
    from: to,
    to: from,
    start: end,
    end: start,
    startSlope: endSlope,
    endSlope: startSlope,
  };
}

function setPoint(point: IncipientPoint, from: IncipientPoint): void {
  point.temperature = from.temperature;
  point.pressure = from.pressure;
  point.density = from.density;
  point.concentrations.set(from.concentrations);
}

function labelled(point: IncipientPoint, line: BoundaryLine): IncipientPoint {
  return { ...copyPoint(point), incipient: line === "bubble" ? "vapour" : "liquid" };
}
