import { attempt, type Outcome } from "../units/index.js";
import { usual } from "./input.js";
import type { Saturation, SaturationInput, State, StateInput, StateOptions } from "./types.js";

/** What pure refrigerants and blends share: the twins that do not throw, and a name instead of equations in JSON. */
export abstract class Face {
  abstract readonly designation: string;
  abstract saturation(at: SaturationInput, options?: StateOptions): Saturation;
  abstract bubble(at: SaturationInput, options?: StateOptions): Saturation;
  abstract dew(at: SaturationInput, options?: StateOptions): Saturation;
  abstract state(at: StateInput, options?: StateOptions): State;

  trySaturation(at: SaturationInput, options: StateOptions = usual): Outcome<Saturation> {
    return attempt(() => this.saturation(at, options));
  }

  tryBubble(at: SaturationInput, options: StateOptions = usual): Outcome<Saturation> {
    return attempt(() => this.bubble(at, options));
  }

  tryDew(at: SaturationInput, options: StateOptions = usual): Outcome<Saturation> {
    return attempt(() => this.dew(at, options));
  }

  tryState(at: StateInput, options: StateOptions = usual): Outcome<State> {
    return attempt(() => this.state(at, options));
  }

  /** The designation alone: states name their refrigerant, they do not carry its equations. */
  toJSON(): string {
    return this.designation;
  }
}
