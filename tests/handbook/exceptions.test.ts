import { expect, test } from "vitest";
import { findFluid } from "../../src/catalogue/index.js";
import {
  compressibility,
  type Evaluation,
  enthalpy,
  entropy,
  noEvaluation,
  pressureSlope,
} from "../../src/equation/index.js";
import { modelFor } from "../../src/equilibrium/index.js";
import { refrigerant } from "../../src/state/index.js";
import { readTables } from "./rows.js";

/*
 * Çengel, Y. A., Boles, M. A., Thermodynamics: An Engineering Approach, 6th ed., McGraw-Hill 2008, table A-11: the
 * explanation of r-134a-saturation-024. Vapour at the printed pressure is supersaturated, so it is not to be had from
 * the state room.
 */
const fluid = findFluid("R-134a");
const { equation } = modelFor(fluid);
const perMass = equation.R / fluid.molarMass;
const asked = refrigerant("R-134a", { referenceState: "ashrae" });

function evaluate(temperature: number, molarDensity: number): Evaluation {
  const at = noEvaluation();
  equation.evaluate(temperature, molarDensity, at);
  return at;
}

/** Vapour at a pressure just above saturation: Newton's method from the saturated vapour. */
function vapourBeyond(temperature: number, pressure: number) {
  const { vapour } = asked.saturation({ temperature });
  const RT = equation.R * temperature;
  let density = vapour.density / fluid.molarMass;
  for (let step = 0; step < 30; step++) {
    const at = evaluate(temperature, density);
    density += (pressure - density * RT * compressibility(at)) / (RT * pressureSlope(at));
  }
  const [here, saturated] = [density, vapour.density / fluid.molarMass].map((rho) =>
    evaluate(temperature, rho),
  ) as [Evaluation, Evaluation];
  return {
    density: density * fluid.molarMass,
    enthalpy: vapour.enthalpy + perMass * temperature * (enthalpy(here) - enthalpy(saturated)),
    entropy: vapour.entropy + perMass * (entropy(here) - entropy(saturated)),
  };
}

const rows = readTables()
  .filter(({ source }) => source.includes("tables A-11 and A-12"))
  .flatMap((table) => table.rows)
  .filter(({ inputs }) => (inputs["temperature"] ?? 0) > 340);

test("hot rows of the table there are, up to 100 °C", () => {
  expect(rows.map(({ inputs }) => inputs["temperature"])).toEqual([343.15, 353.15, 363.15, 373.15]);
});

// Printed: pressure to 0.1 kPa, so the pressure meant lies within 0.05 kPa; volume to 1e-6 m3/kg in the vapour,
// enthalpy to 0.01 kJ/kg, entropy to 1e-5 kJ/(kg K). One unit of the last digit is allowed, not half of one: the
// vapour's entropy at 70 °C needs 0.9.
test.each(rows)("$id is the equation at the printed pressure", ({ inputs, expected }) => {
  const temperature = inputs["temperature"] ?? Number.NaN;
  const pressure = expected["pressure"] ?? Number.NaN;
  const [low, high] = [vapourBeyond(temperature, pressure - 50), vapourBeyond(temperature, pressure + 50)];
  const between = (ends: readonly [number, number], printed: number | undefined, unit: number): void => {
    expect(printed).toBeGreaterThanOrEqual(Math.min(...ends) - unit);
    expect(printed).toBeLessThanOrEqual(Math.max(...ends) + unit);
  };
  between([1 / low.density, 1 / high.density], 1 / (expected["vapourDensity"] ?? Number.NaN), 1e-6);
  between([low.enthalpy, high.enthalpy], expected["vapourEnthalpy"], 10);
  between([low.entropy, high.entropy], expected["vapourEntropy"], 0.01);
  const [thin, dense] = [pressure - 50, pressure + 50].map((p) => asked.state({ temperature, pressure: p }));
  if (thin === undefined || dense === undefined) throw new Error("unreachable");
  between([thin.enthalpy, dense.enthalpy], expected["liquidEnthalpy"], 10);
  between([thin.entropy, dense.entropy], expected["liquidEntropy"], 0.01);
  expect(pressure).toBeGreaterThan(asked.saturation({ temperature }).pressure + 50);
});
