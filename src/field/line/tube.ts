import data from "../../../data/field/tubes.json" with { type: "json" };
import {
  type Area,
  attempt,
  InputCheck,
  InputError,
  type Length,
  type Outcome,
  type Volume,
} from "../../units/index.js";

/** Size of a tube. */
export interface TubeSize {
  /** Outer diameter, m. */
  readonly outerDiameter: Length;
  /** Wall thickness, m. */
  readonly wall: Length;
}

/** A tube as listed. */
export interface Tube extends TubeSize {
  /** Nominal size in inches, where the trade uses one. */
  readonly nominal: string | null;
  /** Standard it is made to. */
  readonly standard: string;
  /** Coil, straight or annealed. */
  readonly temper: string;
  /** Where the size comes from. */
  readonly source: string;
  /** `read` or `recalled`. */
  readonly status: "read" | "recalled";
}

/** Inside of a tube. */
export interface Bore {
  /** Inner diameter, m. */
  readonly innerDiameter: Length;
  /** Cross-section, m2, which is also the volume for each metre, m3/m. */
  readonly area: Area;
}

/** Outer diameters this close are one size: 9.52 and 9.53 mm, 15.87 and 15.88 mm. */
const DIAMETER_TOLERANCE = 3e-5;
/** Walls this close are one: the lists print hundredths of a millimetre. */
const WALL_TOLERANCE = 2e-6;

/** Every tube of the list, by outer diameter and wall. */
export function listTubes(): readonly Tube[] {
  // JSON knows no literal types; tests/field/line/tube.test.ts checks every entry.
  return data.tubes as readonly Tube[];
}

/**
 * Inside of a tube: d = D − 2 w, A = π d²/4.
 *
 * @param size - Outer diameter and wall, m.
 * @throws {@link InputError} `malformed-input`, also for a wall of half the diameter or more.
 * @source geometry
 *
 * @example
 * ```ts
 * tubeBore({ outerDiameter: millimetre(6.35), wall: millimetre(0.8) }).area; // → 17.72e-6 m2: 17.72 mL for each metre
 * ```
 */
export function tubeBore(size: TubeSize): Bore {
  const check = new InputCheck();
  checkTubeSize(check, "", size);
  check.finish();
  const innerDiameter = size.outerDiameter - 2 * size.wall;
  return { innerDiameter, area: (Math.PI / 4) * innerDiameter * innerDiameter };
}

/** As {@link tubeBore}, without throwing. */
export function tryTubeBore(size: TubeSize): Outcome<Bore> {
  return attempt(() => tubeBore(size));
}

/**
 * Volume inside a length of tube.
 *
 * @param size - Outer diameter and wall, m.
 * @param length - m, 0 or above.
 * @throws {@link InputError} `malformed-input`.
 */
export function tubeVolume(size: TubeSize, length: Length): Volume {
  const check = new InputCheck();
  check.notNegative("length", length);
  check.finish();
  return tubeBore(size).area * length;
}

/** As {@link tubeVolume}, without throwing. */
export function tryTubeVolume(size: TubeSize, length: Length): Outcome<Volume> {
  return attempt(() => tubeVolume(size, length));
}

/**
 * Finds a tube in the list by its outer diameter and, where several walls are made, its wall.
 *
 * @param outerDiameter - m; 0.03 mm off is taken as the same size.
 * @param wall - m; may be left out where only one is listed.
 * @throws {@link InputError} `malformed-input` with the sizes that are listed.
 *
 * @example
 * ```ts
 * findTube(millimetre(9.52), millimetre(0.8)).nominal; // → "3/8"
 * ```
 */
export function findTube(outerDiameter: Length, wall?: Length): Tube {
  const check = new InputCheck();
  check.positive("outerDiameter", outerDiameter);
  if (wall !== undefined) check.positive("wall", wall);
  check.finish();
  const sized = listTubes().filter((tube) => isSameDiameter(tube.outerDiameter, outerDiameter));
  if (sized.length === 0) {
    const sizes = [...new Set(listTubes().map((tube) => inMillimetres(tube.outerDiameter)))];
    throw new InputError([
      { path: "outerDiameter", value: outerDiameter, expected: `a listed size: ${sizes.join(", ")} mm` },
    ]);
  }
  const found =
    wall === undefined ? sized : sized.filter((tube) => Math.abs(tube.wall - wall) <= WALL_TOLERANCE);
  if (found.length !== 1) {
    const walls = sized.map((tube) => inMillimetres(tube.wall));
    throw new InputError([
      {
        path: "wall",
        value: wall,
        expected: `one of the walls listed for this size: ${walls.join(", ")} mm`,
      },
    ]);
  }
  return found[0]!;
}

/** As {@link findTube}, without throwing. */
export function tryFindTube(outerDiameter: Length, wall?: Length): Outcome<Tube> {
  return attempt(() => findTube(outerDiameter, wall));
}

/** Whether two outer diameters are one size under two roundings. */
export function isSameDiameter(one: Length, other: Length): boolean {
  return Math.abs(one - other) <= DIAMETER_TOLERANCE;
}

/** Records what is wrong with the size of a tube. */
export function checkTubeSize(check: InputCheck, path: string, size: TubeSize): void {
  const at = path === "" ? "" : `${path}.`;
  const isDiameter = check.positive(`${at}outerDiameter`, size?.outerDiameter);
  if (check.positive(`${at}wall`, size?.wall) && isDiameter) {
    check.require(
      size.wall < size.outerDiameter / 2,
      `${at}wall`,
      size.wall,
      `less than half the outer diameter, ${size.outerDiameter / 2} m`,
    );
  }
}

function inMillimetres(length: number): string {
  return String(Number((length * 1000).toFixed(3)));
}
