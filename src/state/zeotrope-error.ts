import { DewlineError } from "../units/index.js";

/** A zeotropic blend was asked for its saturation: at one pressure it boils over a range of temperatures. */
export class ZeotropeError extends DewlineError {
  /** The blend that was asked. */
  readonly designation: string;

  constructor(designation: string) {
    super(
      "zeotrope",
      `${designation} is a zeotropic blend and boils over a range of temperatures: ask dew(...) for superheat and vapour, bubble(...) for subcooling and liquid, or state({ pressure, quality }) for a point between`,
    );
    this.designation = designation;
  }
}
