import type { Fluid } from "../../src/catalogue/index.js";
import { Equation, noEvaluation } from "../../src/equation/index.js";
import { refrigerantFrom, type SinglePhaseState } from "../../src/state/index.js";
import { exponentialsOf } from "./exponentials.js";

/** What is timed: one call of it works through every input, in a loop inside, and returns a sum that must be kept. */
export interface Case {
  readonly inputs: number;
  run(): number;
}

/** Inputs of a case: enough that no branch and no cached temperature is met twice in a row. */
const count = 1024;

/** Makers of the cases by name, in the order of the report; the first is the floor the others are compared with. */
export const makers: Readonly<Record<string, (fluid: Fluid) => Case>> = {
  floor,
  evaluation,
  "saturation by temperature": saturationByTemperature,
  "state (T, p)": stateByPressure,
  "state (p, h)": stateByEnthalpy,
};

/** As many calls of `Math.exp` as the equation has exponentials, on arguments such as they have. */
function floor(fluid: Fluid): Case {
  const exponentials = exponentialsOf(fluid);
  const random = randomNumbers();
  const x = Float64Array.from({ length: count }, () => -2 * random());
  return {
    inputs: count,
    run: () => {
      let sum = 0;
      for (let i = 0; i < count; i++) {
        for (let k = 0; k < exponentials; k++) sum += Math.exp(x[(i + k) % count]!);
      }
      return sum;
    },
  };
}

/** One evaluation: ideal and residual part with all derivatives, at a new temperature each time. */
function evaluation(fluid: Fluid): Case {
  const equation = new Equation(fluid);
  const at = noEvaluation();
  const states = statesOf(fluid);
  const T = Float64Array.from(states, (state) => state.temperature);
  const rho = Float64Array.from(states, (state) => state.density / fluid.molarMass);
  return {
    inputs: count,
    run: () => {
      let sum = 0;
      for (let i = 0; i < count; i++) {
        equation.evaluate(T[i]!, rho[i]!, at);
        sum += at.residual.phi_dt + at.ideal.phi_tt;
      }
      return sum;
    },
  };
}

/** Both saturated states with all their properties. */
function saturationByTemperature(fluid: Fluid): Case {
  const refrigerant = refrigerantFrom(fluid);
  const random = randomNumbers();
  const lowest = fluid.limits.minimumTemperature;
  const highest = 0.99 * refrigerant.critical.temperature;
  const inputs = Array.from({ length: count }, () => ({
    temperature: lowest + random() * (highest - lowest),
  }));
  return {
    inputs: count,
    run: () => {
      let sum = 0;
      for (const input of inputs) sum += refrigerant.saturation(input).pressure;
      return sum;
    },
  };
}

/** A state in one phase with all its properties. */
function stateByPressure(fluid: Fluid): Case {
  const refrigerant = refrigerantFrom(fluid);
  const inputs = statesOf(fluid).map(({ temperature, pressure }) => ({ temperature, pressure }));
  return {
    inputs: count,
    run: () => {
      let sum = 0;
      for (const input of inputs) sum += refrigerant.state(input).enthalpy;
      return sum;
    },
  };
}

/** The same states, found by pressure and enthalpy, and as many in two phases at their pressures below the critical. */
function stateByEnthalpy(fluid: Fluid): Case {
  const refrigerant = refrigerantFrom(fluid);
  const inputs = statesOf(fluid).map(({ pressure, enthalpy }, index) => {
    if (index % 2 === 0 || pressure > 0.95 * refrigerant.critical.pressure) return { pressure, enthalpy };
    const found = refrigerant.trySaturation({ pressure });
    if (!found.ok) return { pressure, enthalpy };
    const { liquid, latentHeat } = found.value;
    return { pressure, enthalpy: liquid.enthalpy + ((index % 97) / 97) * latentHeat };
  });
  return {
    inputs: count,
    run: () => {
      let sum = 0;
      for (const input of inputs) sum += refrigerant.state(input).temperature;
      return sum;
    },
  };
}

/** States where a split air conditioner works and around: −60 °C to 120 °C, 50 kPa to 15 MPa. */
function statesOf(fluid: Fluid): SinglePhaseState[] {
  const refrigerant = refrigerantFrom(fluid);
  const random = randomNumbers();
  const states: SinglePhaseState[] = [];
  while (states.length < count) {
    const temperature = Math.max(fluid.limits.minimumTemperature, 213.15 + 180 * random());
    const found = refrigerant.tryState({ temperature, pressure: 5e4 * 300 ** random() });
    if (found.ok && found.value.phase !== "two-phase") states.push(found.value);
  }
  return states;
}

/**
 * The same numbers from 0 to 1 in every process, so that runs can be compared: a linear congruential generator.
 *
 * @source Multiplier and increment of Knuth, D. E., The Art of Computer Programming, vol. 2, 3.3.4, table 1.
 */
function randomNumbers(): () => number {
  let seed = 20261124;
  return () => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
}
