import { type BlendModel, type BoundaryLine, linePointAt, type SearchRange } from "../equilibrium/index.js";
import { attempt } from "../units/index.js";
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

  /** Refuses a pressure at which no mixture of liquid and vapour lies inside the range. */
  requireBoiling(pressure: number, options: StateOptions): void {
    const { cricondenbar, coldest } = this.#model.envelope;
    const minimum =
      options.extrapolate === true
        ? coldest.dewPressure
        : this.#lowest("dew", "pressure", coldest.dewPressure);
    const range = { minimum, maximum: cricondenbar.pressure, unit: "Pa" };
    requireInside(this.#model.name, "pressure", pressure, range, options, nothingAbove);
  }

  /** Whether a temperature lies outside the range of the components' equations. */
  isOutside(temperature: number): boolean {
    const { minimumTemperature, maximumTemperature } = this.#model.limits;
    return (
      temperature < minimumTemperature * (1 - rounding) || temperature > maximumTemperature * (1 + rounding)
    );
  }

  /** Refuses a temperature that was found, not given: on a limit it may lie a rounding outside. */
  requireFound(temperature: number, options: StateOptions): void {
    if (options.extrapolate !== true && this.isOutside(temperature))
      this.requireTemperature(temperature, options);
  }

  /** Whether a state lies inside the range. */
  isInside({ temperature, pressure }: { readonly temperature: number; readonly pressure: number }): boolean {
    return !this.isOutside(temperature) && pressure * (1 - rounding) <= this.#highestPressure;
  }

  get #highestPressure(): number {
    return Math.max(this.#model.limits.maximumPressure, this.#model.envelope.cricondenbar.pressure);
  }

  /** The lowest temperature to which both lines were followed. */
  get #followed(): number {
    const { bubble, dew } = this.#model.envelope.coldest;
    return Math.max(bubble, dew);
  }

  /** Where a line ends: at the critical point, or beyond it where it is the one that turns there. */
  #lineRange(line: BoundaryLine, what: "temperature" | "pressure"): Range {
    const { critical, cricondentherm, cricondenbar, coldest } = this.#model.envelope;
    const { [what]: highest, line: highestLine } = what === "temperature" ? cricondentherm : cricondenbar;
    const maximum = line === highestLine ? highest : critical[what];
    if (what === "temperature") return { minimum: this.#followed, maximum, unit: "K" };
    const minimum = line === "bubble" ? coldest.bubblePressure : coldest.dewPressure;
    return { minimum, maximum, unit: "Pa" };
  }

  /** The lower end of a line inside the range of the components' equations. */
  #lowest(line: BoundaryLine, what: "temperature" | "pressure", followed: number): number {
    const { minimumTemperature } = this.#model.limits;
    if (what === "temperature") return Math.max(followed, minimumTemperature);
    if (this.#followed >= minimumTemperature) return followed;
    this.#lowestPressures[line] ??= this.#pressureAt(line, minimumTemperature) ?? followed;
    return this.#lowestPressures[line] * (1 - rounding);
  }

  /** Undefined where the liquid would split in two: the line is not known from there on, which its own search says. */
  #pressureAt(line: BoundaryLine, temperature: number): number | undefined {
    const found = attempt(() => linePointAt(this.#model, line, "temperature", temperature));
    return found.ok ? found.value.point.pressure : undefined;
  }
}
