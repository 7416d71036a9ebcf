import {
  attempt,
  type DewlineError,
  InputCheck,
  type Outcome,
  type TemperatureDifference,
} from "../../units/index.js";
import { shown } from "../measurement/shown.js";
import { type LinePressureDrop, type RefrigerantLine, tryLinePressureDrop } from "./line-pressure-drop.js";
import { checkLineVelocity, type LineKind } from "./line-velocity.js";
import { listTubes, type Tube, tubeBore } from "./tube.js";

/** A line whose tube is to be chosen. */
export interface LineToSize extends Omit<RefrigerantLine, "tube" | "carries"> {
  /** Kind of the line, which decides the velocities that are usual. */
  readonly kind: Extract<LineKind, "gas" | "gas-riser" | "liquid">;
  /** Most that the line may cost, K of saturation; 1 K is usual, common practice. */
  readonly allowedLoss: TemperatureDifference;
  /** Smallest mass flow that the compressor runs at, kg/s: the velocity has to be enough there too. */
  readonly smallestMassFlow: number;
}

/** One tube of the list, tried. */
export interface TriedTube {
  /** The tube. */
  readonly tube: Tube;
  /** What it costs; undefined where it is too thin for that flow. */
  readonly drop: LinePressureDrop | undefined;
  /** Whether it may be used. */
  readonly accepted: boolean;
  /** Why, or why not. */
  readonly because: string;
}

/** Every tube of the list, and the smallest that may be used. */
export interface LineSize {
  /** The smallest tube that may be used; undefined where none may. */
  readonly smallest: Tube | undefined;
  /** All of them, from the thinnest bore. */
  readonly tried: readonly TriedTube[];
}

/**
 * Tries every listed tube for a line: loss of saturation temperature and velocities, at full and at smallest flow.
 *
 * @throws As `linePressureDrop`, for a line that no tube can make right.
 * @source `data/field/tubes.json`, `data/field/piping.json`
 */
export function sizeLine(line: LineToSize): LineSize {
  const check = new InputCheck();
  check.oneOf("kind", line?.kind, ["gas", "gas-riser", "liquid"]);
  check.positive("allowedLoss", line?.allowedLoss);
  if (
    check.positive("smallestMassFlow", line?.smallestMassFlow) &&
    check.positive("massFlow", line?.massFlow)
  ) {
    check.require(
      line.smallestMassFlow <= line.massFlow,
      "smallestMassFlow",
      line.smallestMassFlow,
      `at most the full flow, ${line.massFlow} kg/s`,
    );
  }
  check.finish();
  const tried = [...listTubes()]
    .sort((one, other) => tubeBore(one).area - tubeBore(other).area)
    .map((tube) => tryTube(line, tube));
  const widest = tried[tried.length - 1]!;
  // What is wrong with every tube is wrong with the line.
  if (widest.refusal !== undefined && tried.every(({ refusal }) => refusal !== undefined))
    throw widest.refusal;
  return {
    smallest: tried.find(({ accepted }) => accepted)?.tube,
    tried: tried.map(({ refusal: _, ...each }) => each),
  };
}

/** As {@link sizeLine}, without throwing. */
export function trySizeLine(line: LineToSize): Outcome<LineSize> {
  return attempt(() => sizeLine(line));
}

function tryTube(line: LineToSize, tube: Tube): TriedTube & { readonly refusal?: DewlineError } {
  const carries = line.kind === "liquid" ? "liquid" : "gas";
  const outcome = tryLinePressureDrop({ ...line, carries, tube });
  if (!outcome.ok) {
    const { error } = outcome;
    return { tube, drop: undefined, accepted: false, because: error.message, refusal: error };
  }
  const drop = outcome.value;
  const slowest = (drop.velocity * line.smallestMassFlow) / line.massFlow;
  const speed = checkLineVelocity({ kind: line.kind, velocities: [drop.outletVelocity, slowest] });
  const isCheap = drop.temperatureLoss <= line.allowedLoss;
  return {
    tube,
    drop,
    accepted: isCheap && speed.verdict === "pass",
    because: `costs ${shown(drop.temperatureLoss)} K, ${shown(line.allowedLoss)} K allowed; ${speed.because}`,
  };
}
