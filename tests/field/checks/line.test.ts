import { describe } from "vitest";
import {
  DRAWN_COPPER_ROUGHNESS,
  frictionFactor,
  oilReturn,
  pipeFlow,
  turbulentFrictionFactor,
  twoPhaseGradient,
} from "../../../src/field/index.js";
import { millimetre } from "../../../src/units/index.js";
import { fieldCheck } from "../../support/field-check.js";

const computed = "computed for this check by another implementation";

describe("refrigerant lines", () => {
  fieldCheck(
    "FP-095",
    "friction factors at Re 1e5, ε/d 1e-4",
    `${computed} of Churchill (1977) and Haaland (1983)`,
    { rel: 1e-4 },
    { churchill: 0.0184626, haaland: 0.0182651 },
    () => ({ churchill: frictionFactor(1e5, 1e-4), haaland: turbulentFrictionFactor(1e5, 1e-4) }),
  );

  fieldCheck(
    "FP-096",
    "laminar friction factor at Re 1000",
    "64/Re",
    { rel: 1e-4 },
    { churchill: 0.064 },
    () => ({
      churchill: frictionFactor(1000, 0),
    }),
  );

  fieldCheck(
    "FP-097",
    "gas line of 5 m and 7.92 mm",
    computed,
    { rel: 0.002 },
    { velocity: 10.2375, reynolds: 183164, kilopascal: 15.7441 },
    () => {
      const { velocity, reynolds, pressureDrop } = pipeFlow({
        massFlow: 0.0139,
        density: 27.56,
        viscosity: 12.2e-6,
        innerDiameter: millimetre(7.92),
        length: 5,
        roughness: DRAWN_COPPER_ROUGHNESS,
      });
      return { velocity, reynolds, kilopascal: pressureDrop / 1000 };
    },
  );

  fieldCheck(
    "FP-098",
    "least flow that carries oil up 11.1 mm",
    `${computed} of Jacobs et al. (1976), recalled`,
    { rel: 0.002 },
    { massFlux: 41.2331, velocity: 1.36398, massFlow: 0.00399008 },
    () => {
      const { massFlux, velocity, massFlow } = oilReturn({
        gasDensity: 30.23,
        oilDensity: 1020,
        innerDiameter: millimetre(11.1),
      });
      return { massFlux, velocity, massFlow };
    },
  );

  fieldCheck(
    "FP-099",
    "two-phase loss at quality 0.2",
    `${computed} of Müller-Steinhagen and Heck (1986), recalled`,
    { rel: 0.002 },
    { kilopascalPerMetre: 1.16778 },
    () => ({
      kilopascalPerMetre:
        twoPhaseGradient({
          massFlux: 200,
          innerDiameter: millimetre(4.75),
          quality: 0.2,
          liquidDensity: 1030,
          vapourDensity: 27.6,
          liquidViscosity: 130e-6,
          vapourViscosity: 12.2e-6,
          roughness: 0,
        }).gradient / 1000,
    }),
  );
});
