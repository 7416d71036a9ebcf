import { describe, expect, it } from "vitest";
import {
  canProveVacuum,
  checkComposition,
  checkStandingPressure,
  commission,
  decide,
  drawFromCylinder,
  evaluateVacuum,
  findTube,
  gaugeUncertainty,
  leakAndRefill,
  leakFlammability,
  lineCharge,
  nitrogenHold,
  readJob,
  riseTest,
  simulateLeak,
  standingPressure,
  subcooling,
  superheat,
  thermometerUncertainty,
  topUp,
  tubeBore,
} from "../../src/field/index.js";
import { mixtureFlammability, unventilatedRoom } from "../../src/safety/index.js";
import { isDewlineError, localAtmosphere } from "../../src/units/index.js";

/** Callers without types may hand in anything: it has to end in a typed error. */
const functions: Readonly<Record<string, (input: never) => unknown>> = {
  canProveVacuum,
  checkComposition: (refrigerant) => checkComposition(refrigerant, {}),
  checkStandingPressure,
  commission,
  decide: (limits) => decide(1, 1, limits),
  drawFromCylinder,
  evaluateVacuum,
  findTube: (size) => findTube(size),
  gaugeUncertainty: (gauge) => gaugeUncertainty(gauge, 1),
  leakAndRefill,
  leakFlammability,
  lineCharge,
  localAtmosphere,
  mixtureFlammability,
  nitrogenHold,
  readJob: (job) => readJob(job),
  riseTest,
  simulateLeak,
  standingPressure,
  subcooling,
  superheat,
  thermometerUncertainty,
  topUp,
  tubeBore,
  unventilatedRoom,
};

describe.each(Object.entries(functions))("%s", (_name, call) => {
  it.each([undefined, null, 7, "text", {}, [], { from: "altitude" }, { gauge: null }])(
    "refuses %j by name",
    (input) => {
      let caught: unknown;
      try {
        call(input as never);
      } catch (error) {
        caught = error;
      }
      expect(isDewlineError(caught)).toBe(true);
    },
  );
});
