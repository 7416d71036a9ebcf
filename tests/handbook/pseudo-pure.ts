import { readFileSync } from "node:fs";
import { type CurveData, type Fluid, parseReferenceData } from "../../src/catalogue/index.js";
import {
  type ReferenceState,
  type Refrigerant,
  refrigerantFrom,
  type SinglePhaseState,
} from "../../src/state/index.js";

/** A designated blend by its equation as one fluid, with the bubble and dew curves published beside it. */
export interface PseudoPure {
  /** The literal: critical point and so on as published. */
  readonly fluid: Fluid;
  /** The equation as one fluid: right in one phase, but it knows nothing of bubble and dew. */
  readonly refrigerant: Refrigerant;
  readonly bubble: CurveData;
  readonly dew: CurveData;
}

/** The four blends that were published this way. */
export const pseudoPureBlends: readonly string[] = ["R-404A", "R-407C", "R-410A", "R-507A"];

/**
 * Reads a blend of `data/references/`. Enthalpy and entropy of a blend count from its bubble point, which is not where
 * the equation as one fluid puts its saturated liquid; `iir` is 0 °C, `ashrae` −40 °C.
 */
export function pseudoPure(designation: string, reference: "iir" | "ashrae" = "iir"): PseudoPure {
  const file = new URL(`../../data/references/${designation}.json`, import.meta.url);
  const { fluid, bubblePressure, dewPressure } = parseReferenceData(JSON.parse(readFileSync(file, "utf8")));
  const temperature = reference === "iir" ? 273.15 : 233.15;
  const referenceState: ReferenceState = {
    at: { temperature, pressure: curvePressure(bubblePressure, temperature) },
    enthalpy: reference === "iir" ? 200e3 : 0,
    entropy: reference === "iir" ? 1e3 : 0,
  };
  return {
    fluid,
    refrigerant: refrigerantFrom(fluid, { referenceState }),
    bubble: bubblePressure,
    dew: dewPressure,
  };
}

/** Liquid on the bubble line or vapour on the dew line: the equation as one fluid at the pressure of the curve. */
export function onCurve(
  blend: PseudoPure,
  temperature: number,
  wanted: "liquid" | "vapour",
): SinglePhaseState {
  const pressure = curvePressure(wanted === "liquid" ? blend.bubble : blend.dew, temperature);
  // Some tables begin below the 200 K of the equations.
  const state = blend.refrigerant.state({ temperature, pressure }, { extrapolate: true });
  if (state.phase !== wanted) throw new Error(`${wanted} is not the stable phase at ${temperature} K`);
  return state;
}

/** Pressure of a published curve, Pa: ln(p/p₀) = (T₀/T) Σ n θ^t with θ = 1 − T/T₀. */
export function curvePressure(curve: CurveData, temperature: number): number {
  if (curve.form !== "log-over-temperature")
    throw new Error(`no pressure curve is of the form ${curve.form}`);
  const end = Number(curve.temperature);
  const theta = 1 - temperature / end;
  let sum = 0;
  for (const [n, t] of curve.terms) sum += Number(n) * theta ** Number(t);
  return Number(curve.pressure) * Math.exp((end / temperature) * sum);
}

/** Temperature at which a published curve has a pressure, K, by halving from 100 K to the end of the curve. */
export function curveTemperature(curve: CurveData, pressure: number): number {
  let low = 100;
  let high = Number(curve.temperature);
  if (!(curvePressure(curve, low) < pressure && pressure < Number(curve.pressure))) {
    throw new Error(`${pressure} Pa is not on the curve`);
  }
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (curvePressure(curve, middle) < pressure) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
