import {
  type BlendModel,
  type BoundaryLine,
  boundaryPointsAt,
  type SearchRange,
} from "../equilibrium/index.js";
import { lowestPressure } from "./input.js";
import { denseReach, hotReach, nothingAbove, type Range, requireInside, rounding } from "./range-check.js";
import type { StateOptions } from "./types.js";

/** Where a blend's model may be asked: the range its components share, and the ends of its bubble and dew lines. */
export class BlendRanges {
  readonly #model: BlendModel;
  readonly #lowestPressures: Partial<Record<BoundaryLine, number>> = {};

  constructor(model: BlendModel) {
    this.#model = model;
  }

  /** Where a search may look. */
  search({ extrapolate = false }: StateOptions): Omit<SearchRange, "inputs"> {
    const { minimumTemperature, maximumTemperature } = this.#model.limits;
    const highestPressure = this.#highestPressure;
    const followed = this.#followed;
    return extrapolate
      ? {
          minimum: followed,
          maximum: hotReach * maximumTemperature,
          highestPressure: denseReach * highestPressure,
        }
      : { minimum: Math.max(followed, minimumTemperature), maximum: maximumTemperature, highestPressure };
  }

  /** Refuses a temperature outside the range. */
  requireTemperature(value: number, options: StateOptions): void {
    const { minimum, maximum } = this.search(options);
    requireInside(this.#model.name, "temperature", value, { minimum, maximum, unit: "K" }, options);
  }

  /** Refuses a pressure outside the range. */
  requirePressure(value: number, options: StateOptions): void {
    const maximum = this.search(options).highestPressure;
    requireInside(
      this.#model.name,
      "pressure",
      value,
      { minimum: lowestPressure, maximum, unit: "Pa" },
      options,
    );
  }

  /** Refuses a temperature or pressure at which a line has no point. */
  requireOnLine(
    line: BoundaryLine,
    what: "temperature" | "pressure",
    value: number,
    options: StateOptions,
  ): void {
    const range = this.#lineRange(line, what);
    const minimum = options.extrapolate === true ? range.minimum : this.#lowest(line, what, range.minimum);
    requireInside(this.#model.name, what, value, { ...range, minimum }, options, nothingAbove);
  }

  /** Whether a temperature lies below the range of the components' equations. */
  isTooCold(temperature: number): boolean {
    return temperature < this.#model.limits.minimumTemperature * (1 - rounding);
  }

  /** Whether a state lies inside the range. */
  isInside({ temperature, pressure }: { readonly temperature: number; readonly pressure: number }): boolean {
    return (
      !this.isTooCold(temperature) &&
      temperature <= this.#model.limits.maximumTemperature &&
      pressure * (1 - rounding) <= this.#highestPressure
    );
  }

  get #highestPressure(): number {
    return Math.max(this.#model.limits.maximumPressure, this.#model.envelope.cricondenbar.pressure);
  }

  /** The lowest temperature to which both lines were followed. */
  get #followed(): number {
    const { bubble, dew } = this.#model.envelope.coldest;
    return Math.max(bubble, dew);
  }

  /** Where a line ends: one of them passes the critical point's temperature, one its pressure, before it turns. */
  #lineRange(line: BoundaryLine, what: "temperature" | "pressure"): Range {
    const { critical, cricondentherm, cricondenbar, coldest } = this.#model.envelope;
    if (what === "temperature") {
      const turning = cricondentherm.pressure < critical.pressure ? "dew" : "bubble";
      const maximum = line === turning ? cricondentherm.temperature : critical.temperature;
      return { minimum: this.#followed, maximum, unit: "K" };
    }
    const turning = cricondenbar.temperature > critical.temperature ? "dew" : "bubble";
    const maximum = line === turning ? cricondenbar.pressure : critical.pressure;
    const minimum = line === "bubble" ? coldest.bubblePressure : coldest.dewPressure;
    return { minimum, maximum, unit: "Pa" };
  }

  /** The lower end of a line inside the range of the components' equations. */
  #lowest(line: BoundaryLine, what: "temperature" | "pressure", followed: number): number {
    const { minimumTemperature } = this.#model.limits;
    if (what === "temperature") return Math.max(followed, minimumTemperature);
    if (this.#followed >= minimumTemperature) return followed;
    this.#lowestPressures[line] ??=
      boundaryPointsAt(this.#model, "temperature", minimumTemperature).find((found) => found.line === line)
        ?.point.pressure ?? followed;
    return this.#lowestPressures[line] * (1 - rounding);
  }
}
