import type { Fluid } from "../catalogue/index.js";
import {
  entropy,
  isochoricHeatCapacity,
  noDerivatives,
  pressureSlope,
  soundSpeedSquared,
} from "../equation/index.js";
import { InputError, isDewlineError, type Problem } from "../units/index.js";
import { criticalResidual } from "./critical.js";
import { evaluate } from "./flash.js";
import { criticalMargin, modelFor } from "./model.js";
import { saturationAtTemperature } from "./saturation.js";

/**
 * How far an equation may miss the conditions at its published critical point. Published equations miss them by up
 * to 3e-3, 5e-4 and 5e-3 (those fitted without the constraint); one wrong digit or exponent mostly misses by more.
 */
const criticalTolerance = { pressure: 0.01, first: 0.02, second: 0.05 };
/** Acentric factors of one fluid differ between sources in the third decimal; this is beyond that. */
const acentricTolerance = 0.01;
/** Reduced temperature at which Pitzer defined the acentric factor. */
const acentricTemperature = 0.7;
/** What a residual part may keep at zero density: terms of δ⁰ that cancel leave 1e-9 in the converted equations. */
const idealTolerance = 1e-6;
/** A reduced density so small that every other term is gone. */
const thin = 1e-12;
/** Points of the saturation curve that are looked at. */
const stations = 40;

/**
 * Checks that an equation behaves like one: the conditions at its critical point, an ideal gas at zero density, a
 * saturation curve over its whole range, positive heat capacities and squared sound speeds along it, the stated
 * acentric factor.
 *
 * @throws {@link InputError} `malformed-input`, with all that is wrong.
 */
export function checkEquation(fluid: Fluid): void {
  // Where the critical point is wrong the curve that starts there means nothing.
  const critical = [...criticalProblems(fluid), ...idealProblems(fluid)];
  const problems = critical.length > 0 ? critical : saturationProblems(fluid);
  if (problems.length > 0) throw new InputError(problems);
}

function criticalProblems(fluid: Fluid): Problem[] {
  const { equation } = modelFor(fluid);
  const { temperature, density, pressure } = fluid.critical;
  const at = criticalResidual(equation, equation.Tr / temperature, density / equation.rhor);
  const deviation = (at.pressure * equation.rhor * equation.R * temperature) / pressure - 1;
  const found = [
    { path: "critical.pressure", what: "p/pc − 1", value: deviation, limit: criticalTolerance.pressure },
    { path: "residual", what: "(∂p/∂ρ)/(RT)", value: at.first, limit: criticalTolerance.first },
    { path: "residual", what: "ρr(∂²p/∂ρ²)/(RT)", value: at.second, limit: criticalTolerance.second },
  ];
  return found
    .filter(({ value, limit }) => !(Math.abs(value) <= limit))
    .map(({ path, what, value, limit }) => ({
      path,
      value,
      expected: `|${what}| at the critical point no larger than ${limit}`,
    }));
}

/** At zero density the residual part must vanish at every temperature: nothing else sees terms of δ⁰. */
function idealProblems(fluid: Fluid): Problem[] {
  const { equation } = modelFor(fluid);
  const { minimumTemperature, maximumTemperature } = fluid.limits;
  const at = noDerivatives();
  const left = [minimumTemperature, fluid.critical.temperature, maximumTemperature].map((T) => {
    equation.evaluateResidual(equation.Tr / T, thin, at);
    return Math.abs(at.phi);
  });
  const worst = Math.max(...left);
  if (worst <= idealTolerance) return [];
  return [
    { path: "residual", value: worst, expected: `no more than ${idealTolerance} of φ left at zero density` },
  ];
}

function saturationProblems(fluid: Fluid): Problem[] {
  const model = modelFor(fluid);
  const { minimumTemperature } = fluid.limits;
  const hottest = model.critical.temperature - criticalMargin;
  if (!(minimumTemperature < hottest)) {
    return [
      {
        path: "limits.minimumTemperature",
        value: minimumTemperature,
        expected: `a temperature below the equation's own critical one, ${model.critical.temperature} K`,
      },
    ];
  }
  const problems: Problem[] = [];
  try {
    for (let k = 0; k <= stations; k++) {
      const T = minimumTemperature + ((hottest - minimumTemperature) * k) / stations;
      const { liquidDensity, vapourDensity } = saturationAtTemperature(model, T);
      for (const [phase, density] of [
        ["liquid", liquidDensity],
        ["vapour", vapourDensity],
      ] as const) {
        const at = evaluate(model, T, density);
        const sound = isochoricHeatCapacity(at) > 0 && pressureSlope(at) > 0 && soundSpeedSquared(at) > 0;
        // A Planck–Einstein term of negative θ has a heat capacity but no entropy.
        if (!sound || !Number.isFinite(entropy(at))) {
          problems.push({
            path: "residual",
            value: T,
            expected: `an entropy, and positive heat capacity, compressibility and sound speed of saturated ${phase}`,
          });
        }
      }
    }
    const T = acentricTemperature * fluid.critical.temperature;
    if (T > minimumTemperature) {
      const factor = -Math.log10(saturationAtTemperature(model, T).pressure / fluid.critical.pressure) - 1;
      if (!(Math.abs(factor - fluid.acentricFactor) <= acentricTolerance)) {
        problems.push({
          path: "acentricFactor",
          value: fluid.acentricFactor,
          expected: `what the equation gives, ${factor.toFixed(4)}, within ${acentricTolerance}`,
        });
      }
    }
  } catch (error) {
    if (!isDewlineError(error)) throw error;
    problems.push({
      path: "residual",
      value: fluid.designation,
      expected: `a saturation curve: ${error.message}`,
    });
  }
  return problems;
}
