import { DewlineError } from "../units/index.js";

/** A refrigerant that was asked for by a name the catalogue does not know, or that fits several refrigerants. */
export class UnknownRefrigerantError extends DewlineError {
  /** The name as it was asked for. */
  readonly asked: string;
  /** Designations that may have been meant, nearest first; empty when nothing is near. */
  readonly near: readonly string[];

  /**
   * @param asked - The name as it was asked for.
   * @param near - Designations that may have been meant.
   * @param reason - Why none was taken; goes on from the name.
   */
  constructor(asked: string, near: readonly string[], reason: string = "is not in the catalogue") {
    super(
      "unknown-refrigerant",
      `"${asked}" ${reason}${near.length === 0 ? "" : `; near: ${near.join(", ")}`}`,
    );
    this.asked = asked;
    this.near = near;
  }
}
