import { crossingsOn, followBoundary } from "./boundary-path.js";
import { guessAtTemperature, raoultTemperature } from "./guess.js";
import { copyPoint, type Incipient, type IncipientPoint, solveIncipient } from "./incipient.js";
import type { MixtureModel } from "./mixture-model.js";

/** Rounds of correction before Newton's method is tried: few suffice far from the critical point. */
const fewRounds = 3;
const manyRounds = 12;
/** Paths to a point near the critical one start here, as fractions of its temperature: where a direct start is sure. */
const sureStarts = [0.85, 0.75, 0.65, 0.55];
/** A path to a point takes some ten stretches. */
const mostStretches = 100;

/**
 * The bubble point (incipient vapour) or dew point (incipient liquid) of a composition at a temperature below the critical
 * one, from nothing but the pure components' curves. Undefined where there is none.
 */
export function boundaryAtTemperature(
  model: MixtureModel,
  incipient: Incipient,
  parent: Float64Array,
  T: number,
): IncipientPoint | undefined {
  const direct = directAt(model, incipient, parent, T);
  if (direct !== undefined) return direct;
  for (const fraction of sureStarts) {
    const first = directAt(model, incipient, parent, fraction * T);
    if (first === undefined) continue;
    const found = followTo(model, first, "temperature", T);
    if (found !== undefined) {
      const point = copyPoint(found);
      point.temperature = T;
      if (solveIncipient(model, point, { what: "temperature" }) && isOnSide(point)) return point;
    }
  }
  return undefined;
}

/** As {@link boundaryAtTemperature}, at a pressure. */
export function boundaryAtPressure(
  model: MixtureModel,
  incipient: Incipient,
  parent: Float64Array,
  pressure: number,
): IncipientPoint | undefined {
  const held = { what: "pressure", value: pressure } as const;
  const T = raoultTemperature(model, incipient, parent, pressure);
  for (const fraction of [1, 0.97, ...sureStarts]) {
    const first = directAt(model, incipient, parent, fraction * T);
    if (first === undefined) continue;
    const near = copyPoint(first);
    if (solveIncipient(model, near, held) && isOnSide(near)) return near;
    const found = followTo(model, first, "pressure", pressure);
    if (found !== undefined && solveIncipient(model, found, held) && isOnSide(found)) return found;
  }
  return undefined;
}

function directAt(
  model: MixtureModel,
  incipient: Incipient,
  parent: Float64Array,
  T: number,
): IncipientPoint | undefined {
  for (const rounds of [fewRounds, manyRounds]) {
    const point = guessAtTemperature(model, incipient, parent, T, rounds);
    if (point === undefined) return undefined;
    if (solveIncipient(model, point, { what: "temperature" }) && isOnSide(point)) return point;
  }
  return undefined;
}

/** Follows a boundary upwards to where temperature or pressure has a value; a point near that. */
function followTo(
  model: MixtureModel,
  first: IncipientPoint,
  what: "temperature" | "pressure",
  value: number,
): IncipientPoint | undefined {
  if (first[what] > value) return undefined;
  let steps = 0;
  for (const stretch of followBoundary(model, first, first.incipient === "vapour" ? 1 : -1)) {
    const [found] = crossingsOn(stretch, what, value);
    if (found !== undefined) return found;
    // Where the model has two liquids a path may turn back, and run to and fro for ever.
    if (stretch.start * stretch.end < 0 || stretch.to[what] < first[what] || ++steps > mostStretches) break;
  }
  return undefined;
}

/** Below the critical point the liquid is the denser phase, whichever of the two is the parent. */
function isOnSide({ incipient, density, concentrations }: IncipientPoint): boolean {
  let sum = 0;
  for (const concentration of concentrations) sum += concentration;
  return incipient === "vapour" ? sum < density : sum > density;
}
