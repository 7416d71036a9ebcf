import data from "../../../data/field/pressure-test.json" with { type: "json" };
import {
  attempt,
  InputCheck,
  type Length,
  type Outcome,
  requireObject,
  type Volume,
} from "../../units/index.js";
import { checkTubeSize, type TubeSize, tubeBore } from "../line/tube.js";
import { halfWidthUncertainty } from "../measurement/instrument.js";
import { COVERAGE_FACTOR } from "../measurement/uncertainty.js";

/** What is under test: tubes, and the coil at their end. */
export interface TestedParts {
  /** The tubes. */
  readonly tubes: readonly { readonly tube: TubeSize; readonly length: Length }[];
  /** Volume of the indoor coil, m3, and how far it may be off; ask the maker, there is no default. */
  readonly coil: { readonly volume: Volume; readonly halfWidth: Volume };
}

/** The volume under test. */
export interface TestVolume {
  /** m3. */
  readonly volume: Volume;
  /** Its expanded uncertainty, m3, k = 2: walls of the tubes within their tolerance, and the coil. */
  readonly expandedUncertainty: Volume;
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
}

/**
 * Volume of a line set with the coil at its end. The stop valves of the outdoor unit are taken to be shut.
 *
 * @throws {@link InputError} `malformed-input`, all problems at once.
 * @source geometry; tolerance of the walls: EN 12735-1 (recalled)
 */
export function testVolume(parts: TestedParts): TestVolume {
  requireObject("", parts, "the tubes and the coil");
  const { tubes, coil } = parts;
  const check = new InputCheck();
  check.notNegative("coil.volume", coil?.volume);
  check.notNegative("coil.halfWidth", coil?.halfWidth);
  if (check.require(Array.isArray(tubes), "tubes", tubes, "a list of tubes with their lengths")) {
    for (const [index, each] of tubes.entries()) {
      checkTubeSize(check, `tubes[${index}].tube`, each?.tube);
      check.notNegative(`tubes[${index}].length`, each?.length);
    }
  }
  check.finish();
  let volume: number = coil.volume;
  // Tubes come from one mill: their walls are off together.
  let wallHalfWidth = 0;
  for (const { tube, length } of tubes) {
    const { area, innerDiameter } = tubeBore(tube);
    volume += area * length;
    // dA = π d dw for a bore that loses twice the wall.
    wallHalfWidth += Math.PI * innerDiameter * data.wall.fraction * tube.wall * length;
  }
  const u = Math.hypot(halfWidthUncertainty(wallHalfWidth), halfWidthUncertainty(coil.halfWidth));
  return {
    volume,
    expandedUncertainty: COVERAGE_FACTOR * u,
    assumptions: [
      "The stop valves of the outdoor unit are shut: only the line set and the indoor unit are under test.",
    ],
  };
}

/** As {@link testVolume}, without throwing. */
export function tryTestVolume(parts: TestedParts): Outcome<TestVolume> {
  return attempt(() => testVolume(parts));
}
