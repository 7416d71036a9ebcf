import { describe, expect, it } from "vitest";
import {
  canProveVacuum,
  checkStandingPressure,
  commission,
  decide,
  evaluateVacuum,
  findTube,
  gaugeUncertainty,
  lineCharge,
  nitrogenHold,
  readJob,
  riseTest,
  standingPressure,
  subcooling,
  superheat,
  thermometerUncertainty,
  tubeBore,
} from "../../src/field/index.js";
import { unventilatedRoom } from "../../src/safety/index.js";
import { isDewlineError, localAtmosphere } from "../../src/units/index.js";

/** Callers without types may hand in anything: it has to end in a typed error. */
const functions: Readonly<Record<string, (input: never) => unknown>> = {
  canProveVacuum,
  checkStandingPressure,
  commission,
  decide: (limits) => decide(1, 1, limits),
  evaluateVacuum,
  findTube: (size) => findTube(size),
  gaugeUncertainty: (gauge) => gaugeUncertainty(gauge, 1),
  lineCharge,
  localAtmosphere,
  nitrogenHold,
  readJob: (job) => readJob(job),
  riseTest,
  standingPressure,
  subcooling,
  superheat,
  thermometerUncertainty,
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
